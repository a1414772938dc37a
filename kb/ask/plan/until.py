"""From the lift held to the day that was named: what is kept up, what is built up, and what is missing for it."""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.plan.beside import Turns, part_of
from kb.ask.plan.fill import Kind, Slot
from kb.ask.plan.forms import Form
from kb.ask.plan.kilograms import FIRST, Goal, begins_at, goes_by, reached, rounded, session_kg
from kb.ask.plan.strength import Day, strengthening
from kb.ask.plan.weeks import Weeks, day_of
from kb.errors import BadInput
from kb.terms import DrillId, Lift, Load, Stage

__all__ = ["Beside", "Until", "last_by", "practised", "until", "weighed"]

KEPT, KEPT_AT_HOME = 2, 4
"""Drills beside the lift in a session, and at home. Common practice, no source."""


class Until(NamedTuple):
    """What a day comes to: `last` is the number of the last session by then, `held_in` that in which the lift is held.

    `short` sessions are missing for that, and `by_then` are the forms held in time, nearest to the lift last; else the
    lift is built up from `from_kg` to `reached_kg`, where a weight was wished for. `in_time` names what would do, each
    by itself: so many sessions a week with a coach (`per_week`), so many new drills in one (`new`).
    """

    goal: Goal
    last: int
    held_in: int
    short: int
    by_then: tuple[Form, ...]
    from_kg: float | None
    reached_kg: float | None
    in_time: tuple[tuple[str, int], ...] = ()

    @property
    def part(self) -> Form | None:
        """Of what is held by then the part of the lift that a plan could end in: that nearest the lift."""
        ends = [form for form in self.by_then if form.drill.stage in (Stage.JOIN, Stage.WHOLE)] or self.by_then
        return ends[-1] if ends else None


class Beside(NamedTuple):
    """What stands beside the lift while it is built up: what strengthens for it, and whether `parts` come at weight.

    They do for who held the lift to begin with; `weak` is the one that has the first day of each week.
    """

    finish: Sequence[Form]
    lift: Lift
    weak: DrillId | None = None
    parts: bool = False


def last_by(days: int, begun: int, per_week: int) -> int:
    """The number of the last session within so many days of the next one, `begun` having been done.

    >>> last_by(41, 0, 3), last_by(6, 4, 2), last_by(0, 0, 1)
    (18, 6, 1)
    """
    origin, n = day_of(begun + 1, per_week), begun + 1
    while day_of(n + 1, per_week) - origin <= days:
        n += 1
    return n


def until(goal: Goal, forms: Sequence[Form], weeks: Weeks, learnt: Sequence[Sequence[Slot]], begun: int) -> Until:
    """What the day comes to, once the sessions in which the lift is learnt are known.

    Raises BadInput for a weight that the bar alone exceeds, that is no more than it begins at, or that this gear can't
    make.
    """
    if goal.weight_kg is not None and forms[-1].load is not Load.WORKING:
        raise BadInput(f"a weight to reach needs a bar and discs, and here the most is a {forms[-1].load.word} load")
    if goal.weight_kg is not None and goal.weight_kg < goal.bar_kg:
        raise BadInput(f"{goal.weight_kg:g} kg is less than the bar, which weighs {goal.bar_kg:g} kg")
    begin = begins_at(goal)
    if begin is not None and not goal.bar_kg <= begin <= (goal.weight_kg or 0):
        raise BadInput(
            f"it can't begin at {begin:g} kg, but between the bar, {goal.bar_kg:g} kg, and {goal.weight_kg:g} kg"
        )
    last, held_in = last_by(goal.days, begun, weeks.per_week), begun + len(learnt)
    end = None
    if begin is not None and last > held_in:
        end = reached(goal, begin, _loaded(weeks, held_in + 1, last))
    return Until(
        goal, last, held_in, max(held_in - last, 0), _by_then(forms, learnt[: max(last - begun, 0)]), begin, end
    )


def _by_then(forms: Sequence[Form], sessions: Sequence[Sequence[Slot]]) -> tuple[Form, ...]:
    """The forms held by the end of some sessions, those nearest the lift last; what only prepares isn't counted."""
    held = {slot.form.n for slots in sessions for slot in slots if slot.exposure >= slot.form.exposures}
    return tuple(form for form in forms if form.n in held and not form.prepares)


def _day(weeks: Weeks, first: int, last: int) -> int:
    """The session of the day: the last with a coach."""
    return next((n for n in range(last, first - 1, -1) if not weeks.at_home(n)), last)


def _loaded(weeks: Weeks, first: int, last: int) -> list[int]:
    """The sessions in which the weight goes up, the day among them."""
    day = _day(weeks, first, last)
    return [n for n in range(first, day + 1) if weeks.shows(n) or n == day]


def weighed(sessions: Sequence[Sequence[Slot]], what: Until) -> list[list[Slot]]:
    """The sessions in which the lift is learnt, with what it weighs at working weight: a share of what goes today."""
    kg = None if what.from_kg is None else rounded(what.goal, FIRST * what.from_kg)

    def one(slot: Slot) -> Slot:
        return slot._replace(kg=kg) if slot.form.is_lift and slot.form.load is Load.WORKING else slot

    return [[one(slot) for slot in slots] for slots in sessions]


def practised(
    forms: Sequence[Form],
    weeks: Weeks,
    what: Until,
    seen: Sequence[Sequence[Slot]],
    begun: int,
    beside: Beside,
) -> list[list[Slot]]:
    """The sessions from the lift held to the day: drills next to the lift by turns, then the lift, evenly heavier.

    In a light week and at home nothing gets heavier. `seen` are the sessions before them. What strengthens comes last,
    as much of it as the minutes allow, and none in the last session before the day.
    """
    first, last = what.held_in + 1, what.last
    day, loaded = _day(weeks, first, last), _loaded(weeks, first, last)
    turns, found = Turns(forms, seen, begun, whole=beside.parts), list[list[Slot]]()
    for n in range(first, day + 1):
        at_home, room = weeks.at_home(n), weeks.room_in(n)
        main: list[Slot] = []
        whole = _lift(forms, at_home=at_home, loaded=n in loaded)
        if whole is not None:
            minutes = whole.check if weeks.light(n) and n not in loaded else whole.work
            kind: Kind = "day" if n == day else "keep" if weeks.light(n) and n not in loaded else "build"
            main.append(Slot(whole, whole.exposures + 1, kind, minutes, kg=_kg(what, weeks, loaded, n)))
            room -= minutes
        part: list[Slot] = []
        if beside.parts and n in loaded and n != day and what.from_kg is not None and what.reached_kg is not None:
            by_then = goes_by(what.from_kg, what.reached_kg, loaded, n)
            part = part_of(turns, what.goal, by_then, n, beside.weak if _at(loaded, weeks, n).at == 0 else None)
            part = [slot for slot in part if slot.minutes <= room]
            room -= sum(slot.minutes for slot in part)
        kept: list[Slot] = []
        for form in turns.next(n, at_home=at_home):
            most = KEPT_AT_HOME if at_home else 1 if n == day else KEPT
            if len(kept) + len(part) < most and form.check <= room and form.n not in {slot.form.n for slot in part}:
                kept.append(Slot(form, form.exposures + 1, "keep", form.check))
                room -= form.check
                turns.last[form.n] = n
        last_of_all: list[Slot] = []
        for form in strengthening(beside.finish, beside.lift, _at(loaded, weeks, n)) if n in loaded[:-2] else ():
            if form.work <= room:
                last_of_all.append(Slot(form, 1, "finish", form.work))
                room -= form.work
        found.append([*sorted(kept, key=lambda slot: slot.form.n), *part, *main, *last_of_all])
    return found


def _at(loaded: Sequence[int], weeks: Weeks, n: int) -> Day:
    """Where a session in which the weight goes up lies in its week."""
    week = [each for each in loaded if weeks.week(each) == weeks.week(n)]
    return Day(weeks.week(n), week.index(n), len(week))


def _lift(forms: Sequence[Form], *, at_home: bool, loaded: bool) -> Form | None:
    """The lift at its heaviest where it gets heavier, else below working weight; None if that can't be done at home."""
    own = [form for form in forms if form.is_lift]
    if loaded:
        return own[-1]
    able = [form for form in own if form.load < Load.WORKING and (form.at_home or not at_home)]
    return able[-1] if able else None if at_home else own[0]


def _kg(what: Until, weeks: Weeks, loaded: Sequence[int], n: int) -> float | None:
    if what.from_kg is None or what.reached_kg is None or n not in loaded:
        return None
    return session_kg(what.goal, what.from_kg, what.reached_kg, loaded, weeks, n)
