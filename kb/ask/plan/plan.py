"""A plan: sessions from now to the lift, each drill of a path coming back ever further apart until it is held."""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.path import Path
from kb.ask.plan.fill import Slot
from kb.ask.plan.forms import Form, forms_of
from kb.ask.plan.least import Least, least
from kb.ask.plan.past import Done, Past, past_of
from kb.ask.plan.spare import once_more
from kb.ask.plan.spread import spread
from kb.ask.plan.weeks import LONGEST, MOST_A_WEEK, Weeks, weeks_of
from kb.errors import BadInput
from kb.terms import DrillId

__all__ = ["Plan", "Session", "plan"]


class Session(NamedTuple):
    """A session, counted from 1 with those that were done; `light` and `places` as in `Weeks`.

    `spare` minutes are left, in which the forms of `more` can be done once more.
    """

    n: int
    week: int
    light: bool
    places: bool
    warm_up: int
    slots: tuple[Slot, ...]
    spare: int = 0
    more: tuple[Form, ...] = ()

    @property
    def minutes(self) -> int:
        """Its minutes, warm-up included."""
        return self.warm_up + sum(slot.minutes for slot in self.slots)


class Plan(NamedTuple):
    """Sessions to the lift. `begun` were done before; `others` are drills done that are not in it.

    `least` is the number of the last session of any plan at least.
    """

    path: Path
    forms: tuple[Form, ...]
    past: tuple[Past, ...]
    weeks: Weeks
    minutes: int
    begun: int
    sessions: tuple[Session, ...]
    least: Least
    others: tuple[DrillId, ...]

    @property
    def lower_bound(self) -> int:
        """Sessions still to come in any plan at least."""
        return self.least.sessions - self.begun


def _session(n: int, slots: Sequence[Slot], weeks: Weeks, minutes: int) -> Session:
    light = weeks.light(n)
    session = Session(n, weeks.week(n), light, weeks.places(n), weeks.warm_up, tuple(slots))
    spare = 0 if light else minutes - session.minutes
    return session._replace(spare=spare, more=once_more(slots, spare))


def plan(path: Path, *, per_week: int, minutes: int, done: Sequence[Done] = ()) -> Plan:
    """The sessions from a path to its lift held.

    Parameters
    ----------
    path
        What is new, in order.
    per_week
        Sessions a week, 1 to 7.
    minutes
        Of each session, min, warm-up included; 1 to 240.
    done
        What was done so far. A drill met counts as a day towards being held; not met takes one back.

    Raises
    ------
    BadInput
        If a number is out of its range.
    NoAnswer
        If some drill doesn't fit a session; the text has the least minutes.
    """
    if not 1 <= per_week <= MOST_A_WEEK:
        raise BadInput(f"{per_week} sessions a week: a plan has from 1 to {MOST_A_WEEK}")
    if not 1 <= minutes <= LONGEST:
        raise BadInput(f"{minutes} min a session: a plan's sessions have from 1 to {LONGEST} minutes")
    forms = forms_of(path)
    weeks = weeks_of(forms, per_week, minutes)
    past, others = past_of(forms, done)
    begun = max((each.session for each in done), default=0)
    if past[-1].met >= forms[-1].exposures:  # the lift is held, and with it all that led there
        return Plan(path, forms, past, weeks, minutes, begun, (), Least(begun, begun, begun), others)
    bound = least(forms, past, weeks, begun=begun)
    filled = spread(forms, past, weeks, begun=begun, least=bound.sessions)
    sessions = tuple(_session(n, slots, weeks, minutes) for n, slots in enumerate(filled, begun + 1))
    return Plan(path, forms, past, weeks, minutes, begun, sessions, bound, others)
