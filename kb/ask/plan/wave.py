"""What should go from week to week: two steps up and a week level, so that no block is an unbroken climb."""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.plan.weeks import Weeks

__all__ = ["BELOW", "RISES", "by_then"]

RISES = (1, 1, 0)
"""Steps that the weeks after a light one go up, by turns. Common practice, no source."""

BELOW = 0.5
"""How many steps below where the last block ended the week after a light one begins. Common practice, no source."""


class _Step(NamedTuple):
    """Steps up that a week's heavy day has behind it, and those of its other days."""

    heavy: float
    others: float


def by_then(begin: float, end: float, loaded: Sequence[int], weeks: Weeks, n: int) -> float:
    """What should go by the loaded session `n`, kg: from `begin` in even steps to `end` on the last of them, the day.

    >>> week = Weeks(2, 10, 30, 15)
    >>> [round(by_then(50, 60, [1, 2, 3, 4, 5, 6, 9, 10, 11, 12], week, n), 2) for n in (2, 4, 6, 9, 10, 12)]
    [52.5, 55.0, 55.0, 53.75, 57.5, 60]
    """
    day = loaded[-1]
    if n == day:
        return end
    steps = _steps(loaded, weeks)
    step = (end - begin) / (max(each.heavy for each in steps.values()) + 1)
    here = steps[weeks.week(n)]
    own = [each for each in loaded if weeks.week(each) == weeks.week(n) and each != day]
    return begin + step * (here.heavy if n == own[-1] and weeks.week(n) != weeks.week(day) else here.others)


def _steps(loaded: Sequence[int], weeks: Weeks) -> dict[int, _Step]:
    """Steps for each week. That of the day stays where the last ended: the day is the step after it.

    The first week back from one away goes no higher than the last before it.
    """
    found: dict[int, _Step] = {}
    at, last, place = 0.0, 0, 0
    for week in dict.fromkeys(weeks.week(n) for n in loaded):
        after_light = bool(found) and week != last + 1
        place = 0 if after_light else place
        back = any(last < each < week for each in weeks.away) and bool(found)
        rise = 0 if back or week == weeks.week(loaded[-1]) else RISES[place % len(RISES)]
        others = at - BELOW if after_light else at + rise
        at += rise
        found[week] = _Step(at, others)
        last, place = week, place + (not back)
    return found
