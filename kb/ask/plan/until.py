"""From the lift held to the day that was named: what is kept up, what is built up, and what is missing for it."""

from collections.abc import Sequence
from typing import Literal, NamedTuple

from kb.ask.plan.beside import Beside, Layout
from kb.ask.plan.fill import Slot
from kb.ask.plan.forms import Form
from kb.ask.plan.kilograms import FIRST, Goal, begins_at, reached, rounded
from kb.ask.plan.lagging import OTHER, weak_kg, weak_sets
from kb.ask.plan.parts import is_squat, share_of
from kb.ask.plan.rise import Rise
from kb.ask.plan.tries import SINGLES_MIN, Singles, singles, tries
from kb.ask.plan.turns import PerWeek, day_of
from kb.ask.plan.weeks import Weeks
from kb.errors import BadInput
from kb.terms import Lift, Load, Stage

__all__ = ["Until", "last_by", "practised", "until", "weighed"]

KEPT, KEPT_AT_HOME, FROM_THE_LAST = 2, 4, 6
"""Drills beside the lift in a session, at home, and how many of those nearest the lift they are taken from in turn.
Common practice, no source."""


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


def last_by(days: int, begun: int, per_week: PerWeek, away: Sequence[int] = ()) -> int:
    """The number of the last session within so many days of the next one, `begun` having been done, weeks `away`.

    >>> last_by(41, 0, 3), last_by(6, 4, 2), last_by(0, 0, 1)
    (18, 6, 1)
    """
    origin, n = day_of(begun + 1, per_week, away), begun + 1
    while day_of(n + 1, per_week, away) - origin <= days:
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
    last, held_in = last_by(goal.days, begun, weeks.by_turns, weeks.away), begun + len(learnt)
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
    lift: Lift,
) -> list[list[Slot]]:
    """The sessions from the lift held to the day: drills next to the lift by turns, then the lift, evenly heavier.

    In a light week and at home nothing gets heavier; where a weight is to be reached, a light week has one round of the
    lift and of its parts at an easy weight. `seen` are the sessions before them. With the lift at its heaviest stand
    its parts at weight before it, where there are any, and after it the squat and what strengthens.
    """
    first, last = what.held_in + 1, what.last
    day = _day(weeks, first, last)
    rise = Rise(what.goal, weeks, tuple(_loaded(weeks, first, last)), what.from_kg, what.reached_kg)
    turns, found = _Turns(forms, seen, begun), list[list[Slot]]()
    checks = KEPT * max((form.check for form in turns.near), default=0)
    more = {n: SINGLES_MIN for n in rise.loaded if _singles(rise, n, forms[-1]) is not None}
    layout = Layout(beside, weeks, day, weeks.room - forms[-1].work, checks, more)
    for n in range(first, day + 1):
        at_home, room, easy = weeks.at_home(n), weeks.room_in(n), rise.easy(n)
        main = _main(forms, rise, n)
        room -= sum(slot.minutes for slot in main)
        parts, finish = layout.of(n) if (n in rise.loaded or easy is not None) and n != day else ([], [])
        beside_it = _parts(rise, n, parts, lift, room, beside)
        before = [slot for slot in beside_it if not is_squat(slot.form.drill) or slot.form.drill.id == beside.weak]
        kept: list[Slot] = []
        for form in [] if parts else turns.next(n, at_home=at_home):
            if len(kept) < (KEPT_AT_HOME if at_home else 1 if n == day else KEPT) and form.check <= room:
                kept.append(Slot(form, form.exposures + 1, "keep", form.check))
                room -= form.check
                turns.last[form.n] = n
        after = [slot for slot in beside_it if slot not in before]
        room -= sum(slot.minutes for slot in beside_it)
        after += [Slot(form, 1, "finish", form.work) for form in ([] if easy is not None else _within(finish, room))]
        found.append([*sorted(kept, key=lambda slot: slot.form.n), *before, *main, *after])
    return found


def _main(forms: Sequence[Form], rise: Rise, n: int) -> list[Slot]:
    """The lift in session `n`, with what it weighs, its singles, and on the day its tries."""
    weeks, loaded, easy = rise.weeks, n in rise.loaded, rise.easy(n)
    own = _lift(forms, at_home=weeks.at_home(n), loaded=loaded or easy is not None)
    if own is None:
        return []
    keeps = weeks.light(n) and not loaded
    slot = Slot(own, own.exposures + 1, "keep" if keeps else "build", own.check if keeps else own.work)
    if n == rise.day:
        return [slot._replace(kind="day", kg=rise.kg(n), tries=tries(rise))]
    more = _singles(rise, n, own)
    slot = slot._replace(kg=easy or rise.kg(n))
    if more is not None:
        minutes = slot.minutes + SINGLES_MIN
        slot = slot._replace(minutes=minutes, singles_kg=more.kg, singles=more.number, rehearses=more.rehearses)
    return [slot]


def _singles(rise: Rise, n: int, own: Form) -> Singles | None:
    """The singles after the dose of session `n`, where the minutes allow them."""
    return singles(rise, n) if own.work + SINGLES_MIN <= rise.weeks.room else None


class _Turns:
    """Whose turn it is of the drills next to the lift: the one that was longest away."""

    def __init__(self, forms: Sequence[Form], seen: Sequence[Sequence[Slot]], begun: int) -> None:
        heaviest: dict[int, Form] = {}
        for form in forms:
            if not form.prepares and not form.is_lift and form.load <= Load.LIGHT:
                heaviest[form.drill_n] = form
        self.near = list(heaviest.values())
        self.last = {slot.form.n: n for n, slots in enumerate(seen, begun + 1) for slot in slots}

    def next(self, n: int, *, at_home: bool) -> list[Form]:
        """Forms in the order in which it is their turn in session `n`."""
        able = [form for form in self.near if form.at_home or not at_home][-FROM_THE_LAST:]
        return sorted(able, key=lambda form: (self.last.get(form.n, 0) - n, -form.n))


def _lift(forms: Sequence[Form], *, at_home: bool, loaded: bool) -> Form | None:
    """The lift at its heaviest where it gets heavier, else below working weight; None if that can't be done at home."""
    own = [form for form in forms if form.is_lift]
    if loaded:
        return own[-1]
    able = [form for form in own if form.load < Load.WORKING and (form.at_home or not at_home)]
    return able[-1] if able else None if at_home else own[0]


def _parts(rise: Rise, n: int, parts: Sequence[Form], lift: Lift, room: int, beside: Beside) -> list[Slot]:
    """The parts of session `n` at their share of what should go; in a light week one round each, of an easy weight."""
    easy = rise.easy(n)
    if easy is not None:
        fits = _within(parts, room, "check")
        return [Slot(form, 1, "keep", form.check, kg=_part_kg(rise, form, lift, easy)) for form in fits]
    kg = {form.n: _part_kg(rise, form, lift, rise.goes(n)) for form in parts}
    own = list(parts)
    if beside.lagging is not None:
        weak, most = beside.lagging.form, share_of(beside.lagging.form.drill, lift, weak=True) or 1.0
        kg[weak.n] = weak_kg(beside.lagging, rise, n, most)
        heavy = weak_sets(beside.lagging, rise, n, kg[weak.n])
        if heavy.work > room:  # beside the singles of a short session it has its easier day
            heavy, kg[weak.n] = weak, weak_kg(beside.lagging, rise, n, min(most, OTHER))
        own = [heavy if form.n == weak.n else form for form in parts]
    return [Slot(form, 1, "part", form.work, kg=kg[form.n]) for form in _within(own, room)]


def _within(forms: Sequence[Form], room: int, minutes: Literal["work", "check"] = "work") -> list[Form]:
    """As many of some forms, in order, as fit so many minutes."""
    found: list[Form] = []
    for form in forms:
        takes = form.check if minutes == "check" else form.work
        if takes <= room:
            found.append(form)
            room -= takes
    return found


def _part_kg(rise: Rise, form: Form, lift: Lift, goes: float | None) -> float | None:
    """What a part weighs, kg: its share of what should go, rounded down, the bar at least."""
    share = share_of(form.drill, lift)
    return None if goes is None or share is None else rounded(rise.goal, share * goes)
