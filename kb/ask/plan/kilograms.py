"""Kilograms from the lift held to a day: what should go grows in a wave, and sessions are a share of it, by turns."""

from collections.abc import Sequence
from math import ceil, floor
from typing import NamedTuple

from kb.ask.plan.wave import by_then
from kb.ask.plan.weeks import Weeks

__all__ = [
    "BEGIN_AT",
    "EASY",
    "FIRST",
    "MOST_MORE_KG",
    "OF_A_WEEK",
    "Goal",
    "begins_at",
    "from_best",
    "reached",
    "rounded",
    "session_kg",
]

BEGIN_AT = 0.6
"""The share of the weight wished for that should go today, where nothing is said. Common practice, no source."""

MOST_MORE_KG = 2.5
"""By how many kilograms what should go grows a session at most, on average. Common practice, no source."""

MORE_THAN_BEST, OF_BEST = 1.02, 0.9
"""Shares of the best so far: what is wished for, and what goes today, done well. Common practice, no source."""

FIRST = 0.8
"""The share of what goes today at which the lift is done at working weight first. Common practice, no source."""

OF_A_WEEK: dict[int, tuple[float, ...]] = {1: (0.85,), 2: (0.8, 0.9), 3: (0.8, 0.7, 0.9)}
"""Shares of what should go by then, for the sessions of a week: the heavy day last, an easy one before it; with more
than three sessions middle and easy days take turns. Common practice, no source."""

EASY = 0.7
"""The share of what should go by then at which the lift is kept up in a light week, in few. Common practice, no
source."""

BEFORE_THE_DAY = (0.8, 0.7)
"""The same for the week of the day, before it: fresh for it. Common practice, no source."""


class Goal(NamedTuple):
    """A day, so many days after the next session's, and what is wished for on it: kilograms, from what goes today.

    `opener` is the share of the wish at which the first try is taken, `best_kg` what the wish and what goes today were
    reckoned from; None where nothing is said. In a plan for several, all is in per cent of each one's best: `unit`.
    """

    days: int
    weight_kg: float | None = None
    from_kg: float | None = None
    bar_kg: float = 20.0
    opener: float | None = None
    best_kg: float | None = None
    unit: str = "kg"


def begins_at(goal: Goal) -> float | None:
    """What goes today, kg: as was said, or a share of what is wished for, the bar at least; None without a wish."""
    if goal.weight_kg is None:
        return None
    return goal.from_kg if goal.from_kg is not None else rounded(goal, BEGIN_AT * goal.weight_kg)


def from_best(best_kg: float) -> tuple[float, float]:
    """What to wish for after a best, and what goes on an ordinary day, kg. Common practice, no source.

    >>> from_best(58), from_best(110)
    ((60, 52), (113, 99))
    """
    return ceil(max(best_kg + 1, MORE_THAN_BEST * best_kg)), floor(OF_BEST * best_kg)


def rounded(goal: Goal, kg: float) -> float:
    """Down to what the smallest discs make, half a kilogram a side: whole kilograms from the bar up."""
    return goal.bar_kg + max(floor(kg - goal.bar_kg + 1e-9), 0)


def reached(goal: Goal, begin: float, loaded: Sequence[int]) -> float:
    """What should go on the day, kg, growing over the `loaded` sessions: the wish, or as far as small steps lead."""
    return rounded(goal, min(goal.weight_kg or begin, begin + max(len(loaded), 1) * MOST_MORE_KG))


def session_kg(goal: Goal, begin: float, end: float, loaded: Sequence[int], weeks: Weeks, n: int) -> float:
    """Kilograms of the loaded session `n`: on the last, the day, all of it; before, a share of what should go by then.

    What should go grows from `begin` to `end` in a wave. Rounded down to what discs make.
    """
    return rounded(goal, by_then(begin, end, loaded, weeks, n) * _share(loaded, weeks, n))


def _share(loaded: Sequence[int], weeks: Weeks, n: int) -> float:
    day = loaded[-1]
    if n == day:
        return 1.0
    week = [each for each in loaded if weeks.week(each) == weeks.week(n) and each != day]
    at = week.index(n)
    if weeks.week(n) == weeks.week(day):
        return BEFORE_THE_DAY[min(at, 1)]
    if len(week) in OF_A_WEEK:
        return OF_A_WEEK[len(week)][at]
    return 0.9 if at == len(week) - 1 else BEFORE_THE_DAY[at % 2]
