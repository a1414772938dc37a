"""How text is set: the width there is, which characters can be shown, and lines that hang together."""

import sys
from collections.abc import Iterable, Sequence
from typing import NamedTuple

__all__ = ["Setting", "aside", "hanging", "labelled", "packed", "rows", "setting_of", "titled", "wrapped"]

NARROWEST, WIDEST = 40, 100
"""Columns: narrower than this nothing reads, wider the eye loses its line."""


LEAST_COLUMN = 18
"""Columns that a last column needs, or it stands under the others."""


class Setting(NamedTuple):
    """Columns to fill; `fine` when the terminal can show more than plain ASCII; `ink` when it shows emphasis."""

    width: int = 80
    fine: bool = False
    ink: bool = False

    def strong(self, text: str) -> str:
        """A text that stands out, where that can be shown."""
        return f"\x1b[1m{text}\x1b[0m" if self.ink else text

    def faint(self, text: str) -> str:
        """A text that stands back, where that can be shown."""
        return f"\x1b[2m{text}\x1b[0m" if self.ink else text

    @property
    def times(self) -> str:
        """The sign between rounds and repetitions."""
        return "\N{MULTIPLICATION SIGN}" if self.fine else "x"

    @property
    def between(self) -> str:
        """What stands between short facts on one line."""
        return " \N{MIDDLE DOT} " if self.fine else ", "


def setting_of() -> Setting:
    """The setting for standard output; plain ASCII and 80 columns (or COLUMNS) where it isn't a terminal."""
    from shutil import get_terminal_size

    terminal = sys.stdout.isatty()
    encoding = (sys.stdout.encoding or "ascii").lower().replace("-", "")
    width = max(NARROWEST, min(get_terminal_size((80, 24)).columns, WIDEST))
    return Setting(width, terminal and encoding == "utf8", terminal)


def wrapped(text: str, width: int) -> list[str]:
    """A paragraph in lines of at most `width` columns, one at least; it isn't broken at a no-break space."""
    from textwrap import wrap

    lines = wrap(text, max(width, 12), break_on_hyphens=False) or [""]
    return [line.replace("\N{NO-BREAK SPACE}", " ") for line in lines]


def packed(parts: Sequence[str], width: int, gap: str = "   ") -> list[str]:
    """Short texts side by side, none broken, on as many lines as they need.

    >>> packed(["one", "two", "three"], 9)
    ['one   two', 'three']
    """
    lines: list[str] = []
    for part in parts:
        if lines and len(lines[-1]) + len(gap) + len(part) <= width:
            lines[-1] += gap + part
        else:
            lines.append(part)
    return lines


def hanging(mark: str, text: str, setting: Setting, *, indent: int = 0, hang: int | None = None) -> list[str]:
    """A paragraph that begins with a mark, its further lines under its text.

    `hang` is the column of the text, counted from `indent`; as wide as the mark if nothing is said.
    """
    hang = len(mark) if hang is None else max(hang, len(mark))
    first, *more = wrapped(text, setting.width - indent - hang)
    lead = " " * indent
    return [f"{lead}{mark:<{hang}}{first}", *(f"{lead}{'':<{hang}}{line}" for line in more)]


def labelled(said: Iterable[tuple[str, str]], setting: Setting, *, indent: int = 0, hang: int) -> list[str]:
    """Texts that each hang from their label; those with nothing to say left out."""
    return [line for label, text in said if text for line in hanging(label, text, setting, indent=indent, hang=hang)]


def aside(left: str, right: str, setting: Setting, *, indent: int = 0) -> list[str]:
    """Two texts at either end of a line; under each other where it is too short for both."""
    lead = " " * indent
    room = setting.width - indent
    if len(left) + len(right) + 2 <= room:
        return [f"{lead}{setting.strong(left)}{' ' * (room - len(left) - len(right))}{right}"]
    lines = [*(setting.strong(line) for line in wrapped(left, room)), *wrapped(right, room)]
    return [lead + line for line in lines]


def titled(title: str, lines: Sequence[str], setting: Setting) -> list[str]:
    """Lines under a heading with white above it; nothing if there are no lines."""
    return ["", setting.strong(title), *lines] if lines else []


def rows(columns: Iterable[Sequence[str]], setting: Setting, *, indent: int = 2) -> list[str]:
    """Rows in columns as wide as they must be, two apart; the last column wraps under itself.

    Where too little room is left for that, it stands under the others.
    """
    table = [tuple(row) for row in columns]
    if not table:
        return []
    widths = [max(len(row[n]) for row in table) for n in range(len(table[0]) - 1)]
    found: list[str] = []
    for row in table:
        if setting.width - indent - sum(widths) - 2 * len(widths) < LEAST_COLUMN:
            found += hanging("", "  ".join(row[:-1]), setting, indent=indent)
            found += hanging("", row[-1], setting, indent=indent + 2)
            continue
        mark = "".join(f"{cell:<{width + 2}}" for cell, width in zip(row[:-1], widths, strict=True))
        found += [line.rstrip() for line in hanging(mark, row[-1], setting, indent=indent)]
    return found
