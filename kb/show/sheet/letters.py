"""How many lines a text takes: the widths of a wide common face's letters, and words put on lines one by one."""

from functools import cache

__all__ = ["PT_MM", "STRONG", "lines_of", "wide"]

PT_MM = 25.4 / 72
"""A point, mm."""

_BY_WIDTH = {
    28: "ijl'",
    32: " ,.:;|/\\fIJ\u00b7\u2019",
    39: "()[]t-!r\u2011",
    53: '*_`sz?"c\u201c\u201d',
    57: "LFk",
    63: "vxyPTYaoeESbdghnpqu$0123456789{}",
    70: "KVBRXZCA",
    78: "UHNDG&OQ",
    85: "w#+<=>^~M\u00d7",
    100: "%mW@",
}
"""Widths in hundredths of the size, rounded up: of DejaVu Sans, as wide as any face that systems use for text."""

WIDTHS = {letter: width / 100 for width, letters in _BY_WIDTH.items() for letter in letters}

STRONG = 1.14
"""How much wider letters are that stand out."""

SURE = 0.97
"""Share of a line that is reckoned with: no two printers set alike."""

OTHER = 1.0
"""Width of any other letter, ems: of the widest scripts."""


@cache
def wide(word: str) -> float:
    """The width of some letters, ems.

    >>> wide("ill"), wide("")
    (0.84, 0)
    """
    return round(sum(WIDTHS.get(letter, OTHER if letter > "\u024f" else 0.7) for letter in word), 2)


def lines_of(text: str, width_mm: float, size: float, strong: str = "") -> int:
    """Lines that a paragraph takes at a size in points, words put on each as long as they fit; 0 for none.

    `strong` stands before the text, in letters that stand out.

    >>> lines_of("word " * 40, 91, 9.0), lines_of("", 91, 9.0)
    (5, 0)
    """
    room = width_mm / (size * PT_MM) * SURE
    lines, used = 0, room
    words = [wide(word) * STRONG for word in strong.split()] + [wide(word) for word in text.split()]
    for length in words:
        if used + WIDTHS[" "] + length <= room:
            used += WIDTHS[" "] + length
            continue
        # a word longer than a line is broken
        lines += 1 + int(length // room)
        used = length % room
    return lines
