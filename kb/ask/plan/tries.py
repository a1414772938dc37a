"""The day: three tries that rise, the first lifted in training before; and the singles that lead there.

Every number here is common practice, no source.
"""

from typing import NamedTuple

from kb.ask.plan.kilograms import rounded
from kb.ask.plan.rise import Rise

__all__ = ["OPENER", "REHEARSED_WITHIN", "SECOND", "SINGLES_MIN", "SINGLES_OF", "Singles", "opener", "singles", "tries"]

OPENER, SECOND = 0.92, 0.965
"""The shares of the wish at which the first and the second try of the day are taken; the third is the wish."""

SINGLES_OF = (0.92, 0.95)
"""The shares of the wish for two singles on the heavy days before the last, which rehearses the opener. The last of
these is some two weeks before the day."""

REHEARSED_WITHIN = 2
"""Within how many weeks of the day the opener is rehearsed."""

SINGLES_MIN = 3
"""Minutes that one or two singles after the dose take."""


class Singles(NamedTuple):
    """Singles after the dose of a session: how many, what they weigh, and whether they rehearse the opener."""

    number: int
    kg: float
    rehearses: bool = False


def _rehearsal(rise: Rise) -> int | None:
    """The session that rehearses the opener; None if there is none before the day.

    The last heavy day, or, if that is too long before, the first session of the week of the day.
    """
    week = rise.weeks.week(rise.day)
    heavy = [n for n in rise.heavy() if week - rise.weeks.week(n) <= REHEARSED_WITHIN]
    own = [n for n in rise.loaded[:-1] if rise.weeks.week(n) == week]
    return heavy[-1] if heavy else next(iter(own), next(reversed(rise.heavy()), None))


def opener(rise: Rise) -> float | None:
    """What the first try of the day weighs, kg: no more than should go by the session that rehearses it."""
    if rise.end is None:
        return None
    at = _rehearsal(rise)
    goes = rise.goes(at) if at is not None else None
    share = OPENER if rise.goal.opener is None else rise.goal.opener
    return rounded(rise.goal, min(share * rise.end, goes if goes is not None else rise.end))


def tries(rise: Rise) -> tuple[float, ...]:
    """The tries of the day, kg, each heavier than the one before; none without a wish, fewer where the bar is near it.

    >>> from kb.ask.plan.kilograms import Goal
    >>> from kb.ask.plan.weeks import Weeks
    >>> tries(Rise(Goal(13, 62.0, 58.0), Weeks(2, 10, 30, 15), (1, 2, 3, 4), 58.0, 62.0))
    (57.0, 59.0, 62.0)
    """
    first = opener(rise)
    if first is None or rise.end is None:
        return ()
    # half-way up from an opener of one's own
    share = SECOND if rise.goal.opener is None else (rise.goal.opener + 1) / 2
    second = rounded(rise.goal, share * rise.end)
    return tuple(sorted({each for each in (first, second, rise.end) if first <= each <= rise.end}))


def singles(rise: Rise, n: int) -> Singles | None:
    """The singles after the dose of session `n`: on the last heavy days up to 95 % of the wish, then the opener once.

    Never more than should go by then, and none where the dose is as heavy, save to rehearse. None on any other, and
    without a wish.
    """
    goes, kg, at = rise.goes(n), rise.kg(n), _rehearsal(rise)
    if goes is None or kg is None or rise.end is None or at is None:
        return None
    found: Singles | None = None
    if n == at:
        found = Singles(1, opener(rise) or 0.0, rehearses=True)
    else:
        before = [each for each in rise.heavy() if each < at][-len(SINGLES_OF) :]
        shares = dict(zip(before, SINGLES_OF[-len(before) :] if before else (), strict=True))
        if n in shares:
            found = Singles(2, rounded(rise.goal, min(shares[n] * rise.end, goes)))
    return found if found is not None and (found.rehearses or found.kg > kg) else None
