"""The characters that a chart is drawn with: one table in plain ASCII, one finer.

A bar says four things without words: its line is the speed, its weight the load (a check is one weight
lighter than work), its right-hand end the catch, its left-hand end whether anything helps.
"""

from collections.abc import Mapping
from typing import NamedTuple

from kb.terms import Catch, Load, Speed

__all__ = ["FINE", "PLAIN", "Glyphs", "glyphs_of", "weight"]


class Glyphs(NamedTuple):
    """Characters of a chart. `lines` holds, by speed, a pattern for each weight from 0 (lightest) to 3."""

    lines: Mapping[Speed, tuple[str, str, str, str]]
    ends: Mapping[Catch, str]
    start: str
    helped: str
    band: str
    gateway: str


PLAIN = Glyphs(
    lines={
        Speed.HELD: (". ", ". ", "o ", "O "),
        Speed.SLOW: ("-  ", "-- ", "== ", "## "),
        Speed.PAUSED: ("-+", "--+", "==+", "##+"),
        Speed.FULL: ("-", "-", "=", "#"),
    },
    ends={Catch.NONE: "", Catch.STANDING: ">", Catch.POWER: ")", Catch.FULL: "]"},
    start="|",
    helped="^",
    band=":",
    gateway="*",
)

FINE = Glyphs(
    lines={
        Speed.HELD: ("┈", "┈", "┉", "▌"),
        Speed.SLOW: ("╌", "╌", "╍", "█ "),
        Speed.PAUSED: ("──┼", "──┼", "━━┿", "██▌"),
        Speed.FULL: ("─", "─", "━", "█"),
    },
    ends={Catch.NONE: "", Catch.STANDING: "╮", Catch.POWER: "┤", Catch.FULL: "╣"},
    start="├",
    helped="╥",
    band="░",
    gateway="◆",
)


def glyphs_of(*, fine: bool) -> Glyphs:
    """The table for a terminal that can show the finer characters, or for one that may not."""
    return FINE if fine else PLAIN


def weight(load: Load, *, work: bool) -> int:
    """How heavy a bar's line is drawn: its load, one less for a check.

    Empty hands and a stick are drawn alike.

    >>> weight(Load.LIGHT, work=True), weight(Load.LIGHT, work=False), weight(Load.STICK, work=False)
    (2, 1, 0)
    """
    return max(Load.STICK, load) - (not work)
