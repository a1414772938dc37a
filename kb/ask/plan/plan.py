"""A plan: sessions from now to the lift, each drill of a path coming back ever further apart until it is held."""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.path import Path
from kb.ask.plan.away import Away
from kb.ask.plan.block import LIMITS, Limits
from kb.ask.plan.fill import Slot
from kb.ask.plan.forms import Form, forms_of
from kb.ask.plan.kilograms import Goal
from kb.ask.plan.least import Least, least
from kb.ask.plan.past import Done, Past, past_of
from kb.ask.plan.second import Also, Beyond, Second, built_up, check_second
from kb.ask.plan.spare import gone_over, once_more
from kb.ask.plan.spread import spread
from kb.ask.plan.turns import PerWeek, check_away, turns_of, week_of_day
from kb.ask.plan.until import Until, last_by, until, weighed
from kb.ask.plan.weeks import LONGEST, MOST_A_WEEK, MOST_LOOKED_AT, MOST_NEW, Weeks, weeks_of
from kb.errors import BadInput
from kb.terms import DrillId, ItemId

__all__ = ["Home", "Plan", "Session", "plan"]


class Home(NamedTuple):
    """Sessions a week that a lifter does alone at home, and what is there."""

    sessions: int
    have: frozenset[ItemId]


class Session(NamedTuple):
    """A session, counted from 1 with those that were done; `light`, `at_home` and `places` as in `Weeks`.

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
    at_home: bool = False

    @property
    def minutes(self) -> int:
        """Its minutes, warm-up included."""
        return self.warm_up + sum(slot.minutes for slot in self.slots)


NOWHERE = Away(())


class Plan(NamedTuple):
    """Sessions to the lift, and on to a day if one was named (`until`). `begun` were done before.

    `least` is the number of the session in which any plan has the lift held, at least; `others` are drills done that
    are not in it. `weak` is the part that lags behind, if one was named; `away` are weeks without sessions.
    `second` is a second lift for the day.
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
    until: Until | None = None
    weak: DrillId | None = None
    away: Away = NOWHERE
    second: Second | None = None

    @property
    def to_held(self) -> int:
        """Sessions still to come in this plan until the lift is held."""
        return len(self.sessions) if self.until is None else self.until.held_in - self.begun

    @property
    def lower_bound(self) -> int:
        """Sessions still to come in any plan at least."""
        return self.least.sessions - self.begun


def _known_by(forms: Sequence[Form], past: Sequence[Past], before: Sequence[Sequence[Slot]]) -> list[Form]:
    """The forms met once at least in the sessions before."""
    met = {form.n for form in forms if past[form.n].met} | {slot.form.n for slots in before for slot in slots}
    return [form for form in forms if form.n in met]


def _session(n: int, slots: Sequence[Slot], weeks: Weeks, minutes: int, known: Sequence[Form]) -> Session:
    """A session; at home, where nothing is due, what is known is gone over."""
    light = weeks.light(n)
    session = Session(n, weeks.week(n), light, weeks.places(n), weeks.warm_up, tuple(slots), at_home=weeks.at_home(n))
    spare = 0 if light else minutes - session.minutes
    more = once_more(slots, spare) or (gone_over(known, spare) if weeks.at_home(n) else ())
    return session._replace(spare=spare, more=more)


class _Asked(NamedTuple):
    """A plan's question, as `plan` has it."""

    path: Path
    per_week: tuple[int, ...]
    minutes: int
    done: tuple[Done, ...]
    new: int
    known: bool
    home: Home | None
    held: bool
    away: tuple[int, ...] = ()
    goal: Goal | None = None

    @property
    def a_week(self) -> tuple[int, ...]:
        """Sessions of each week by turns, those at home among them."""
        return tuple(each + (self.home.sessions if self.home else 0) for each in self.per_week)


def plan(
    path: Path,
    *,
    per_week: PerWeek,
    minutes: int,
    done: Sequence[Done] = (),
    new: int = MOST_NEW,
    known: bool = False,
    home: Home | None = None,
    goal: Goal | None = None,
    have: frozenset[ItemId] = frozenset(),
    held: bool = False,
    weak: DrillId | None = None,
    away: Away = NOWHERE,
    limits: Limits = LIMITS,
    also: Also | None = None,
) -> Plan:
    """The sessions from a path to its lift held, and on to a day.

    Parameters
    ----------
    path
        What is new, in order.
    per_week
        Sessions a week with a coach, 1 to 7 with those at home; or those of each week by turns.
    minutes
        Of each session, min, warm-up included; 1 to 240.
    done
        What was done so far. A drill met counts as a day towards being held; not met takes one back.
    new
        New drills in one session at most, 1 to 6.
    known
        Whether the lifter has done the lift before: each drill is then looked at, and held where its standard is met.
    home
        Sessions alone at home besides, and what is there: nothing new, nothing at working weight.
    goal
        A day to be ready by, and what is wished for on it.
    have
        What there is, for what strengthens once the lift is held.
    held
        Whether the lift, and all that its path leads through, is held today.
    weak
        The part that lags behind: it begins each week but the light ones, up to the day of a goal.
    away
        Weeks without sessions, counted from 1, and what there is in them.
    limits
        How many sessions a week may have a squat, and how many drills may strengthen in one, up to a day.
    also
        A second lift for the day, held today too: it begins each session.

    Raises
    ------
    BadInput
        If a number or a week is out of its range, or a weight can't be reached with what there is.
    NoAnswer
        If some drill doesn't fit a session; the text has the least minutes.
    """
    asked = _Asked(path, turns_of(per_week), minutes, tuple(done), new, known or held, home, held, away.weeks, goal)
    found = _planned(asked, Beyond(have, held, weak, limits, also))
    return found._replace(weak=weak, away=away)


def _planned(asked: _Asked, beyond: Beyond) -> Plan:
    path, goal, minutes = asked.path, asked.goal, asked.minutes
    check_second(beyond.also, path.shelf.lift, held=asked.held, goal=goal)
    forms, weeks, past, others, begun, bound, filled = _learn(asked)
    what = until(goal, forms, weeks, filled, begun) if goal else None
    second: Second | None = None
    if what is not None:
        built, second = built_up(path.shelf, forms, weeks, what, filled, begun, minutes, beyond)
        filled = [*weighed(filled, what), *built]
        if what.goal.unit != "kg":
            filled = [[slot._replace(unit=what.goal.unit) for slot in slots] for slots in filled]
        what = what._replace(in_time=_in_time(asked, what) if what.short else ())
    sessions = _sessions(forms, past, weeks, minutes, begun, filled)
    return Plan(path, forms, past, weeks, minutes, begun, sessions, bound, others, what, second=second)


def _sessions(
    forms: Sequence[Form],
    past: Sequence[Past],
    weeks: Weeks,
    minutes: int,
    begun: int,
    filled: Sequence[Sequence[Slot]],
) -> tuple[Session, ...]:
    return tuple(
        _session(n, slots, weeks, minutes, _known_by(forms, past, filled[: n - begun - 1]))
        for n, slots in enumerate(filled, begun + 1)
    )


class _Learnt(NamedTuple):
    """The sessions until the lift is held."""

    forms: tuple[Form, ...]
    weeks: Weeks
    past: tuple[Past, ...]
    others: tuple[DrillId, ...]
    begun: int
    least: Least
    sessions: list[list[Slot]]


def _learn(asked: _Asked) -> _Learnt:
    at_home, minutes = asked.home.sessions if asked.home else 0, asked.minutes
    wrong = next((each for each in asked.per_week or (0,) if not 1 <= each <= MOST_A_WEEK - at_home), None)
    if wrong is not None:
        beside = f" and {at_home} at home" if at_home else ""
        raise BadInput(f"{wrong} sessions a week{beside}: a plan has from 1 to {MOST_A_WEEK} in all")
    if not 1 <= minutes <= LONGEST:
        raise BadInput(f"{minutes} min a session: a plan's sessions have from 1 to {LONGEST} minutes")
    if not 1 <= asked.new <= MOST_LOOKED_AT:
        raise BadInput(f"{asked.new} new drills a session: a plan has from 1 to {MOST_LOOKED_AT}")
    begun = max((each.session for each in asked.done), default=0)
    day_week = None if asked.goal is None else week_of_day(begun, asked.a_week, asked.away, asked.goal.days)
    check_away(asked.away, asked.a_week, begun, day_week)
    forms = forms_of(asked.path, known=asked.known, home=asked.home.have if asked.home else None)
    past, others = past_of(forms, asked.done)
    new, away = asked.new, asked.away
    weeks = weeks_of(forms, asked.a_week, minutes, home=at_home, most_new=new, away=away, day_week=day_week)
    if asked.held or past[-1].met >= forms[-1].exposures:  # the lift is held, and with it all that led there
        return _Learnt(forms, weeks, past, others, begun, Least(begun, begun, begun), [])
    bound = least(forms, past, weeks, begun=begun)
    filled = spread(forms, past, weeks, begun=begun, least=bound.sessions)
    return _Learnt(forms, weeks, past, others, begun, bound, filled)


def _in_time(asked: _Asked, what: Until) -> tuple[tuple[str, int], ...]:
    """What would have the lift held by the day: more new drills in a session, or more sessions a week."""
    at_home = asked.home.sessions if asked.home else 0
    more_new = () if asked.known else range(asked.new + 1, MOST_LOOKED_AT + 1)
    ways = (
        [("new", new, asked._replace(new=new)) for new in more_new],
        [
            ("per_week", n, asked._replace(per_week=(n,)))
            for n in range(max(asked.per_week) + 1, MOST_A_WEEK - at_home + 1)
        ],
    )
    found = []
    for way in ways:
        for name, value, other in way:
            learnt = _learn(other)
            if learnt.begun + len(learnt.sessions) <= last_by(
                what.goal.days, learnt.begun, learnt.weeks.by_turns, asked.away
            ):
                found.append((name, value))
                break
    return tuple(found)
