"""How few sessions any plan under these rules needs: a bound from below, for judging the plan.

Each part leaves out some of the rules, so no lawful plan has fewer; kb/docs/plan.md proves each.
"""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.plan.forms import Form
from kb.ask.plan.past import Past
from kb.ask.plan.spacing import least_gap
from kb.ask.plan.weeks import Weeks
from kb.terms import Load

__all__ = ["Least", "least"]


UNMET, NEVER = -1, -2
"""Instead of a gap: a form that wasn't met yet, and one that was never tried."""


class Least(NamedTuple):
    """The last session's number that each part allows at least, and the greatest of them."""

    new: int
    chain: int
    minutes: int

    @property
    def sessions(self) -> int:
        """The bound."""
        return max(self)


def _left(form: Form, past: Past) -> int:
    return max(form.exposures - past.met, 0)


def _minutes(form: Form, past: Past) -> int:
    """Minutes that a form still needs."""
    return sum(form.minutes(exposure) for exposure in range(past.met + 1, form.exposures + 1))


def _by_minutes(forms: Sequence[Form], past: Sequence[Past], weeks: Weeks, begun: int) -> int:
    """The session by which the sessions' minutes could have held all that is required."""
    needed, n = sum(_minutes(form, past[form.n]) for form in forms), begun
    while needed > 0:
        n += 1
        needed -= weeks.room_in(n)
    return n


def _tail(form: Form, forms: Sequence[Form], past: Sequence[Past]) -> int:
    """Sessions that must follow a form's first: its own days to come, and those of its heavier forms."""
    days, at = form.exposures - 1, form.heavier
    while at is not None:
        days, at = days + _left(forms[at], past[at]), forms[at].heavier
    return days


def _tails(forms: Sequence[Form], past: Sequence[Past]) -> dict[int, int]:
    """Per form that is still new, sessions after its first at least; a drill's is no less than a later drill's."""
    tails: dict[int, int] = {}
    most = 0
    for form in reversed([form for form in forms if not past[form.n].met]):
        own = _tail(form, forms, past)
        if form.lighter is None:
            most = max(most, own)
            own = most
        tails[form.n] = own
    return tails


def _by_new(forms: Sequence[Form], past: Sequence[Past], weeks: Weeks, begun: int) -> int:
    """The session by which two new a session could have been shown, each with what must follow it."""
    tails, most = _tails(forms, past), begun
    for tail in sorted(set(tails.values())):
        # what was tried and not met may come again in a light week, so it isn't counted
        owed, n = sum(each >= tail and not past[form].tried for form, each in tails.items()), begun
        while owed > 0:
            n += 1
            owed -= weeks.most_new if weeks.shows(n) else 0
        most = max(most, n + tail if n > begun else begun)
    return most


def _firsts(forms: Sequence[Form], past: Sequence[Past], weeks: Weeks, begun: int) -> dict[int, int]:
    """The earliest session of each drill that is still new, were there nothing else to do."""
    found: dict[int, int] = {}
    n, room = begun, 0
    there: list[Form] = []
    for form in forms:
        if form.lighter is not None or past[form.n].met:
            continue
        new = not past[form.n].tried
        while n == begun or not weeks.allows(n, form, new=new) or form.new > room or not weeks.beside(form, there):
            n, room, there = n + 1, weeks.room_in(n + 1), []
        found[form.n] = n
        room -= form.new
        there.append(form)
    return found


class _Spaced:
    """The earliest end of a form's days for one lift day, its gaps kept and nothing else in the way."""

    def __init__(self, weeks: Weeks, last_day: int) -> None:
        self.weeks, self.last_day = weeks, last_day
        self._known: dict[tuple[int, int, int, bool, bool], int | None] = {}

    def end(self, form: Form, after: int, gap: int, days: int) -> int | None:
        """The earliest session in which the last of `days` more can be met after session `after`; None if too late.

        `gap` is the gap before `after`. `UNMET` if the form hasn't been met yet, `NEVER` if it was never tried; `after`
        is then any session.
        """
        if not days:
            return after
        key = (after, gap, days, form.load is Load.WORKING, form.at_home)
        if key not in self._known:
            self._known[key] = self._searched(form, after, gap, days)
        return self._known[key]

    def _searched(self, form: Form, after: int, gap: int, days: int) -> int | None:
        wait = 1 if gap < 0 else least_gap(gap, max(self.last_day - after, 0), self.weeks.on_average)
        best: int | None = None
        for n in range(after + wait, self.last_day - days + 2):
            if best is not None and n + days - 1 >= best:
                break
            if self.weeks.allows(n, form, new=gap == NEVER):
                found = self.end(form, n, 0 if gap < 0 else n - after, days - 1)
                if found is not None and (best is None or found < best):
                    best = found
        return best


def _chain_fits(
    forms: Sequence[Form], past: Sequence[Past], weeks: Weeks, begun: int, last_day: int, firsts: dict[int, int]
) -> bool:
    """Whether each drill alone, from its earliest first session through its weights, could be held by a lift day."""
    spaced, ends = _Spaced(weeks, last_day), dict[int, int]()
    for form in forms:
        stands = past[form.n]
        days = _left(form, stands)
        if not days:
            ends[form.n] = stands.last
            continue
        if stands.met:
            end = _resumed(spaced, form, stands, days, begun)
        else:
            after = firsts.get(form.n, begun + 1) - 1 if form.lighter is None else max(ends[form.lighter], begun)
            end = spaced.end(form, after, UNMET if stands.tried else NEVER, days)
        if end is None:
            return False
        ends[form.n] = end
    return True


def _resumed(spaced: _Spaced, form: Form, stands: Past, days: int, begun: int) -> int | None:
    """As `_Spaced.end`, for a form whose next day is one of the sessions to come."""
    least = 1 if stands.waits else least_gap(stands.gap, max(spaced.last_day - stands.last, 0), spaced.weeks.on_average)
    ends = [
        end
        for n in range(max(stands.last + least, begun + 1), spaced.last_day + 1)
        if spaced.weeks.allows(n, form, new=False)
        and (end := spaced.end(form, n, 0 if stands.waits else n - stands.last, days - 1)) is not None
    ]
    return min(ends, default=None)


def least(forms: Sequence[Form], past: Sequence[Past], weeks: Weeks, *, begun: int) -> Least:
    """The number of the last session of any plan at least, `begun` sessions having been done."""
    by_new, by_minutes = _by_new(forms, past, weeks, begun), _by_minutes(forms, past, weeks, begun)
    firsts, chain = _firsts(forms, past, weeks, begun), begun
    while not _chain_fits(forms, past, weeks, begun, chain, firsts):
        chain += 1
    return Least(by_new, chain, by_minutes)
