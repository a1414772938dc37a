"""Names and words as they are compared: case, accents and punctuation don't count."""

from unicodedata import combining, normalize

__all__ = ["fold"]

_ASCII = {code: " " for code in range(128) if not chr(code).isalnum()}


def fold(text: str) -> str:
    """Lower case, without accents; whatever is no letter or digit becomes a single space.

    >>> fold("  High-Hang  CLEAN: épaulé ")
    'high hang clean epaule'
    """
    if text.isascii():  # nearly all there is, and many times as fast
        return " ".join(text.lower().translate(_ASCII).split())
    plain = "".join(char for char in normalize("NFKD", text) if not combining(char)).casefold()
    return " ".join("".join(char if char.isalnum() else " " for char in plain).split())
