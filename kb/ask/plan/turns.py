"""Sessions a week, the same every week or by turns, and which week and day of it a session falls on."""

from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import TYPE_CHECKING, NamedTuple

from kb.errors import BadInput

if TYPE_CHECKING:
    from datetime import date

__all__ = ["PerWeek", "Place", "check_away", "dates_of", "day_of", "place_of", "turns_of", "week_of", "week_of_day"]

PerWeek = int | Sequence[int]
"""Sessions a week: one number for every week, or one for each week by turns, counted from week 1."""


class Place(NamedTuple):
    """Where a session lies: its `week`, counted from 1, its place `at` from 0, and how many there are `of` them."""

    week: int
    at: int
    of: int


def turns_of(per_week: PerWeek) -> tuple[int, ...]:
    """Sessions of each week by turns.

    >>> turns_of(2), turns_of([2, 3])
    ((2,), (2, 3))
    """
    return (per_week,) if isinstance(per_week, int) else tuple(per_week)


@lru_cache(maxsize=1 << 14)
def _place_of(n: int, turns: tuple[int, ...], away: tuple[int, ...]) -> Place:
    week = 1
    while True:
        here = 0 if week in away else turns[(week - 1) % len(turns)]
        if n <= here:
            return Place(week, n - 1, here)
        n, week = n - here, week + 1


def place_of(n: int, per_week: PerWeek, away: Sequence[int] = ()) -> Place:
    """Where session `n` lies, counted from 1, weeks `away` passed over; these take their turn all the same.

    >>> [place_of(n, (2, 3)).week for n in range(1, 8)]
    [1, 1, 2, 2, 2, 3, 3]
    """
    return _place_of(n, turns_of(per_week), tuple(away))


def week_of(n: int, per_week: PerWeek, away: Sequence[int] = ()) -> int:
    """The week of session `n`, both counted from 1, those `away` passed over.

    >>> [week_of(n, 2, away=(2,)) for n in range(1, 6)]
    [1, 1, 3, 3, 4]
    """
    return place_of(n, per_week, away).week


def day_of(n: int, per_week: PerWeek, away: Sequence[int] = ()) -> int:
    """The day of session `n`, counted from the Monday, as it were, of session 1's week; evenly spread.

    Where weeks differ the days are those of the fullest, of which the last fall out in the others.

    >>> [day_of(n, 2) for n in range(1, 5)], [day_of(n, 3) for n in range(1, 5)]
    ([0, 3, 7, 10], [0, 2, 4, 7])
    >>> [day_of(n, (2, 3)) for n in range(1, 7)]
    [0, 2, 7, 9, 11, 14]
    """
    week, at, _ = place_of(n, per_week, away)
    return 7 * (week - 1) + at * 7 // max(turns_of(per_week))


def dates_of(
    numbers: Iterable[int], begun: int, begins: "date | None", per_week: PerWeek, away: Sequence[int] = ()
) -> "dict[int, date]":
    """Each session's date by its number, the one after `begun` on the day they begin; empty without such a day."""
    if begins is None:
        return {}
    from datetime import timedelta

    origin = day_of(begun + 1, per_week, away)
    return {n: begins + timedelta(days=day_of(n, per_week, away) - origin) for n in numbers}


def week_of_day(begun: int, per_week: PerWeek, away: Sequence[int], days: int) -> int:
    """The week of a day so many days after the session that follows `begun`, counted with those away."""
    return (day_of(begun + 1, per_week, away) + days) // 7 + 1


def check_away(away: Sequence[int], per_week: PerWeek, begun: int, day_week: int | None) -> None:
    """Raise BadInput, in one sentence, for a week away that can't be: before the next session, or from the day on."""
    for week in away:
        if week == week_of(begun + 1, per_week, [each for each in away if each < week]):
            raise BadInput(f"week {week} can't be away: the next session is in it, so begin after it")
        if day_week is not None and week >= day_week:
            raise BadInput(f"week {week} can't be away: the day is in week {day_week}")
