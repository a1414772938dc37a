"""Words misspelt: letters changed about, left out, doubled or run together, and how near a known word is."""

from collections.abc import Collection, Mapping
from string import ascii_lowercase

__all__ = ["near", "one_edit_apart", "parted"]

SWAPPED, MISSED, CHANGED, SOUNDS = 0.9, 0.85, 0.6, 0.75
"""What a known word is worth: two letters changed about; one too many or too few; one wrong; only sounds so."""

_VOWELS = str.maketrans("", "", "aeiouyhw")
_SOUNDS = str.maketrans("ckqzv", "kkksf")


def _sound(word: str) -> str:
    """The consonants of a word as they sound, doubled ones once; its first letter always stands."""
    rest = word.replace("ph", "f").replace("gh", "").translate(_SOUNDS)
    kept = rest[:1] + rest[1:].translate(_VOWELS)
    return "".join(letter for n, letter in enumerate(kept) if n == 0 or kept[n - 1] != letter)


def _one_edit(word: str) -> dict[str, float]:
    """Everything one edit away, and what it is worth."""
    halves = [(word[:n], word[n:]) for n in range(len(word) + 1)]
    found = {a + letter + b[1:]: CHANGED for a, b in halves if b for letter in ascii_lowercase}
    found.update((a + letter + b, MISSED) for a, b in halves for letter in ascii_lowercase)
    found.update((a + b[1:], MISSED) for a, b in halves if b)
    found.update((a + b[1] + b[0] + b[2:], SWAPPED) for a, b in halves if len(b) > 1)
    return found


def near(word: str, known: Collection[str]) -> dict[str, float]:
    """Known words spelt nearly as one that isn't known, each with what it is worth; the three best at most.

    >>> near("kneese", {"knee", "knees", "hips"})
    {'knees': 0.85}
    >>> near("sholdars", {"shoulders", "hips"})
    {'shoulders': 0.75}
    """
    if not 3 < len(word) < 24:
        edits = {a: w for a, w in _one_edit(word).items() if w == MISSED and len(a) == 4} if len(word) == 3 else {}
    else:
        edits = _one_edit(word)
    found = {each: worth for each, worth in edits.items() if each in known and len(each) > 2}
    if not found and 4 < len(word) < 24:
        sound = _sound(word)
        found = {
            each: SOUNDS
            for each in known
            if len(sound) > 2
            and each[0] == word[0]
            and abs(len(each) - len(word)) < 3
            and len(each) > 3
            and _sound(each) == sound
        }
    return dict(sorted(found.items(), key=lambda item: (-item[1], item[0]))[:3])


def parted(word: str, known: Mapping[str, str]) -> tuple[str, ...]:
    """A word run together from two known ones, as those two; else nothing.

    >>> parted("lowerback", {"lower": "low", "back": "back"})
    ('lower', 'back')
    """
    if not 5 < len(word) < 24:
        return ()
    parts = ((word[:n], word[n:]) for n in range(2, len(word) - 1))
    return next((pair for pair in parts if pair[0] in known and pair[1] in known), ())


def one_edit_apart(a: str, b: str) -> bool:
    """Whether two words differ by one letter put in, left out or changed, or by two neighbours changed about.

    >>> one_edit_apart("hurst", "hurts"), one_edit_apart("hurts", "hurts"), one_edit_apart("hips", "hurts")
    (True, False, False)
    """
    if a == b or abs(len(a) - len(b)) > 1:
        return False
    short, long = sorted((a, b), key=len)
    at = next((n for n, letter in enumerate(short) if letter != long[n]), len(short))
    if len(short) < len(long):
        return short[at:] == long[at + 1 :]
    return short[at + 1 :] == long[at + 1 :] or (
        short[at : at + 2] == long[at : at + 2][::-1] and short[at + 2 :] == long[at + 2 :]
    )
