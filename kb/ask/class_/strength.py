"""Who has done the day's weight well before the class ends: what strengthens, dosed, with gear that is free until then.

A pass over a finished plan, which stays as it is: nobody's gear, minute or coach is taken for it.
"""

from collections.abc import Collection, Iterator
from typing import NamedTuple

from kb.ask.class_.build import Matter
from kb.ask.class_.doing import Doing, counted, gear_of
from kb.ask.class_.ended import Ended, ended
from kb.ask.class_.rotation import Mode, Plan, ticks
from kb.ask.class_.turns import by_turns, may_share
from kb.ask.plan.block import family, queue
from kb.ask.plan.finishing import finishing
from kb.ask.shelf import Shelf
from kb.dose import round_seconds, work_seconds
from kb.loading import LOADING_S
from kb.terms import DrillId, ItemId, Load

__all__ = ["MOST", "Strong", "strength_of", "strengthens"]

MOST = 3
"""Drills that strengthen, after the day's weight, at most. Common practice, no source."""


class Strong(NamedTuple):
    """A drill that strengthens, the `k`-th of a unit's, in full from tick `start`; by turns as its mode says."""

    unit: int
    k: int
    doing: Doing
    mode: Mode
    start: int

    @property
    def end(self) -> int:
        """When all of the unit have done it, a tick."""
        return self.start + self.mode.length


def strengthens(shelf: Shelf, have: frozenset[ItemId], held: Collection[DrillId]) -> tuple[Doing, ...]:
    """What can come after a lift at weight, as a plan takes it: a squat, a hinge, a drive, then what else there is.

    Each at the most it may be done at with what there is, and only what stands on `held`.
    """
    forms = finishing(shelf, have, held)
    return tuple(
        Doing(form.drill, form.load, work=True, gear=gear_of(form.drill, form.load, have, shelf))
        for form in queue(forms, 0, len(forms))
        if form.load >= Load.LIGHT
    )


def strength_of(matter: Matter, plan: Plan) -> tuple[Strong, ...]:
    """What strengthens for whom, those first who have ended first: in full, one after the other, no family twice.

    Of each unit's list the first of which the gear is free when they come to it, and which still fits; three at most.
    """
    units = matter.rotation.units
    if not any(own.after for own in matter.owns):
        return ()
    hall = ended(matter, plan)
    since = {u: max(hall.ends[n] for n in unit.lifters) for u, unit in enumerate(units)}
    found: list[Strong] = []
    for u in sorted((u for u, unit in enumerate(units) if _may(matter, unit.lifters)), key=lambda u: (since[u], u)):
        now, left = since[u], list(matter.owns[units[u].lifters[0]].after)
        for k in range(MOST):
            chosen = next(_possible(matter, hall, u, k, left, now), None)
            if chosen is None:
                break
            hall.take(chosen.mode.gear, chosen.start, chosen.end)
            kind = family(chosen.doing.drill)
            left = [
                each for each in left if each is not chosen.doing and (kind == "aside" or family(each.drill) != kind)
            ]
            found.append(chosen)
            now = chosen.end
    return tuple(found)


def _may(matter: Matter, lifters: tuple[int, ...]) -> bool:
    return all(matter.owns[n].after and matter.owns[n].lifter.weight_kg is not None for n in lifters)


def _possible(matter: Matter, hall: Ended, u: int, k: int, left: list[Doing], now: int) -> Iterator[Strong]:
    for doing in left:
        for mode in _modes(matter, u, doing):
            end = now + mode.length
            if end <= matter.rotation.last and hall.free(matter, mode.gear, now, end):
                yield Strong(u, k, doing, mode, now)


def _modes(matter: Matter, u: int, doing: Doing) -> Iterator[Mode]:
    """Each with their own, or two by turns where that costs neither of them rest; unlike weights change the discs."""
    lifters, dose = matter.rotation.units[u].lifters, doing.drill.dose
    items, length = counted(doing.gear, matter.asked.have), ticks(work_seconds(doing.drill))
    yield Mode(length, tuple((item, len(lifters)) for item in items))
    alike = len({matter.owns[n].lifter.weight_kg for n in lifters}) == 1
    rests = alike or dose.rest_s >= round_seconds(dose) + 2 * LOADING_S
    if len(lifters) > 1 and items and may_share(dose, check=False) and rests:
        yield Mode(length, tuple((item, 1) for item in items), turns=ticks(by_turns(dose)))
