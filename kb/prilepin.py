"""Prilepin's table: how many repetitions of the lifts belong to a share of a best, in a set and in a session.

Two prints of it are about, and both stand: what either allows is inside.

References
----------
Prilepin 1974, from the training of weightlifters at several meets; 3.09, and 3.10 as Medvedyev prints it (recalled).
"""

from typing import NamedTuple

__all__ = ["FIRST_PRINT", "OTHER_PRINT", "Row", "most", "rows"]


class Row(NamedTuple):
    """Shares of a best `low` to `high`, per cent, both included: repetitions of a set, best total, and its range."""

    low: int
    high: int
    reps: tuple[int, int]
    best: int
    total: tuple[int, int]


FIRST_PRINT = (
    Row(55, 65, (3, 6), 24, (18, 30)),
    Row(70, 80, (3, 6), 18, (12, 24)),
    Row(80, 90, (2, 4), 15, (10, 20)),
    Row(90, 150, (1, 2), 4, (2, 10)),
)
"""3.09. What lies between its first two rows it leaves open."""

OTHER_PRINT = (
    Row(0, 69, (3, 6), 24, (18, 30)),
    Row(70, 79, (3, 6), 18, (12, 24)),
    Row(80, 89, (2, 4), 15, (10, 20)),
    Row(90, 150, (1, 2), 7, (4, 10)),
)
"""3.10, recalled."""


def rows(percent: int) -> tuple[Row, ...]:
    """The rows of both prints that a share of a best falls in, without repeats."""
    found = (row for row in (*FIRST_PRINT, *OTHER_PRINT) if row.low <= percent <= row.high)
    return tuple(dict.fromkeys(found))


def most(percent: int) -> tuple[int, int]:
    """The most repetitions of a set, and of all sets, that a print allows at a share of a best of 70 % or more.

    >>> most(70), most(80), most(85), most(95)
    ((6, 24), (6, 24), (4, 20), (2, 10))
    """
    there = rows(percent)
    return max(row.reps[1] for row in there), max(row.total[1] for row in there)
