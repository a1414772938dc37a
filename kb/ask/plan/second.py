"""A second lift for a day with two: it begins each session, at its own wave of weights, in its part of the minutes."""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.path import Path
from kb.ask.plan.beside import Beside
from kb.ask.plan.block import LIMITS, SQUAT, Limits, family
from kb.ask.plan.fill import Slot
from kb.ask.plan.forms import Form, forms_of
from kb.ask.plan.kilograms import Goal
from kb.ask.plan.numbered import beside_of
from kb.ask.plan.until import Until, practised, until
from kb.ask.plan.weeks import Weeks, warm_up
from kb.ask.shelf import Shelf
from kb.errors import BadInput, NoAnswer
from kb.terms import DrillId, ItemId, Lift, LiftId

__all__ = [
    "SECOND_SHARE",
    "Also",
    "Beyond",
    "Own",
    "Second",
    "built_up",
    "check_second",
    "main_room",
    "second_room",
    "with_second",
]

SECOND_SHARE = 0.4
"""The share of a session's minutes, the warm-up aside, that the second lift and its parts have. Common practice, no
source."""


class Also(NamedTuple):
    """A second lift that is held today: the path to it, and what is wished for on the day of the plan."""

    path: Path
    goal: Goal


class Second(NamedTuple):
    """A second lift in a plan: what the day comes to for it."""

    lift: Lift
    until: Until


class Beyond(NamedTuple):
    """What is asked for beyond a lift that is held.

    What there is to `have`, whether it is `held` today, what lags behind, how much may strengthen, and a second lift.
    """

    have: frozenset[ItemId]
    held: bool
    weak: DrillId | None
    limits: Limits
    also: Also | None


class Own(NamedTuple):
    """What the sessions up to the day are made of for one lift, as `practised` has it."""

    forms: tuple[Form, ...]
    what: Until
    seen: Sequence[Sequence[Slot]]
    begun: int
    beside: Beside
    lift: Lift

    def sessions(self, weeks: Weeks) -> list[list[Slot]]:
        """The sessions from the lift held to the day."""
        return practised(self.forms, weeks, self.what, self.seen, self.begun, self.beside, self.lift)


def second_room(room: int) -> int:
    """Minutes of the second lift, of so many for drills.

    >>> second_room(50), main_room(50)
    (20, 30)
    """
    return int(SECOND_SHARE * room)


def main_room(room: int) -> int:
    """Minutes of the plan's own lift beside a second, of so many for drills."""
    return room - second_room(room)


def check_second(also: Also | None, lift: Lift, *, held: bool, goal: Goal | None) -> None:
    """Raise BadInput, in one sentence, for a second lift that can't stand beside the plan's own."""
    if also is None:
        return
    other = also.path.shelf.lift
    if {other.id, *other.parts} & {lift.id, *lift.parts}:
        raise BadInput(f"{other.name} and {lift.name.lower()} are no two lifts: one is part of the other")
    if lift.id == LiftId("snatch"):
        raise BadInput(f"the snatch comes first on the day: ask for the {other.name.lower()} with --also snatch")
    if goal is None or goal.weight_kg is None or not held:
        raise BadInput(
            "a second lift needs a day, a weight for each lift, and both held today: say --weeks or --by, --weight,"
            f" and --holds {lift.drill}"
        )


def built_up(
    shelf: Shelf,
    forms: tuple[Form, ...],
    weeks: Weeks,
    what: Until,
    seen: Sequence[Sequence[Slot]],
    begun: int,
    minutes: int,
    beyond: Beyond,
) -> tuple[list[list[Slot]], Second | None]:
    """The sessions from the lift held to the day, those of a second lift with them."""
    have, held, weak, limits, also = beyond
    part = main_room if also is not None else int
    beside = beside_of(shelf, have, forms, minutes, held=held, weak=weak, limits=limits, part=part)
    own = Own(forms, what, seen, begun, beside, shelf.lift)
    return (own.sessions(weeks), None) if also is None else with_second(also, own, weeks, minutes, have)


def with_second(
    also: Also, own: Own, weeks: Weeks, minutes: int, have: frozenset[ItemId]
) -> tuple[list[list[Slot]], Second]:
    """The sessions up to the day, each begun by the second lift and gone on with by the plan's own.

    The second has its parts at weight, no squat, and nothing that strengthens for it. Raises NoAnswer, with the least
    minutes that would do, where one of the lifts doesn't fit its part of them.
    """
    shelf, begun = also.path.shelf, own.begun
    forms = forms_of(also.path, known=True)
    _fit(forms[-1], own.forms[-1], minutes)
    its = weeks._replace(room=second_room(weeks.room), light_room=second_room(weeks.light_room))
    rest = weeks._replace(room=main_room(weeks.room), light_room=main_room(weeks.light_room))
    what = until(also.goal, forms, its, [], begun)
    limits = LIMITS._replace(spares=own.beside.limits.spares)
    beside = _no_squat(beside_of(shelf, have, forms, minutes, held=True, limits=limits))
    firsts = Own(forms, what, [], begun, beside, shelf.lift).sessions(its)
    found = []
    for first, then in zip(firsts, own.sessions(rest), strict=True):
        there = {slot.form.drill.id for slot in then}
        found.append([*(_after(slot, own.forms) for slot in first if slot.form.drill.id not in there), *then])
    return found, Second(shelf.lift, what)


def _after(slot: Slot, own: Sequence[Form]) -> Slot:
    """A slot of the second lift, numbered so that none of the plan's own forms has its number."""
    return slot._replace(form=slot.form._replace(n=-1 - len(own) - slot.form.n, lighter=None, heavier=None))


def _no_squat(beside: Beside) -> Beside:
    def kept(forms: Sequence[Form]) -> tuple[Form, ...]:
        return tuple(form for form in forms if family(form.drill) != SQUAT)

    return Beside((), kept(beside.parts), kept(beside.others))


def _fit(second: Form, own: Form, minutes: int) -> None:
    def fits(each: int) -> bool:
        room = each - warm_up(each)
        return second.work <= second_room(room) and own.work <= main_room(room)

    if fits(minutes):
        return
    least = next(each for each in range(minutes, 100 * minutes) if fits(each))
    raise NoAnswer(
        f"{second.drill.name} takes {second.work} min and {own.drill.name.lower()} {own.work}, so a session of"
        f" {minutes} min is too short for both: the least that will do is {least}"
    )
