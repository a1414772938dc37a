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


TOGETHER_S = 60
"""Who ends at most so much later than another of their unit, s, goes on together with them. Ours."""


class Strong(NamedTuple):
    """A drill that strengthens, the `k`-th of some of a unit, in full from tick `start`; by turns as its mode says.

    `member` is which of the unit the first of these lifters is.
    """

    unit: int
    member: int
    lifters: tuple[int, ...]
    k: int
    doing: Doing
    mode: Mode
    start: int

    @property
    def end(self) -> int:
        """When all of them have done it, a tick."""
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

    Those of a unit who end together go on together. Of each list the first of which the gear is free when they come to
    it, and which still fits; three at most.
    """
    units = matter.rotation.units
    if not any(own.after for own in matter.owns):
        return ()
    hall = ended(matter, plan)
    parts = [(u, part) for u, unit in enumerate(units) for part in _parts(hall, unit.lifters) if _may(matter, part)]
    found: list[Strong] = []
    for u, part in sorted(parts, key=lambda each: (max(map(hall.ends.__getitem__, each[1])), each)):
        now, left = max(map(hall.ends.__getitem__, part)), list(matter.owns[part[0]].after)
        for k in range(MOST):
            begun = Strong(u, units[u].lifters.index(part[0]), part, k, left[0], Mode(0), now) if left else None
            chosen = next(_possible(matter, hall, begun, left), None) if begun else None
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


def _parts(hall: Ended, lifters: tuple[int, ...]) -> Iterator[tuple[int, ...]]:
    """Those of a unit, two by two, who end within a minute of one another."""
    part: tuple[int, ...] = ()
    for n in sorted(lifters, key=lambda each: (hall.ends[each], lifters.index(each))):
        if part and (len(part) == 2 or hall.ends[n] - hall.ends[part[0]] > ticks(TOGETHER_S)):
            yield part
            part = ()
        part = tuple(sorted((*part, n), key=lifters.index))
    yield part


def _possible(matter: Matter, hall: Ended, begun: Strong, left: list[Doing]) -> Iterator[Strong]:
    for doing in left:
        for mode in _modes(matter, begun.lifters, doing):
            end = begun.start + mode.length
            if end <= matter.rotation.last and hall.free(matter, mode.gear, begun.start, end):
                yield begun._replace(doing=doing, mode=mode)


def _modes(matter: Matter, lifters: tuple[int, ...], doing: Doing) -> Iterator[Mode]:
    """Each with their own, or by turns where that costs none of them rest; unlike weights change the discs."""
    dose = doing.drill.dose
    items, length = counted(doing.gear, matter.asked.have), ticks(work_seconds(doing.drill))
    yield Mode(length, tuple((item, len(lifters)) for item in items))
    alike = len({matter.owns[n].lifter.weight_kg for n in lifters}) == 1
    count = len(lifters)
    rests = alike or dose.rest_s >= (count - 1) * round_seconds(dose) + count * LOADING_S
    if count > 1 and items and may_share(dose, count, check=False) and rests:
        later = tuple(ticks(by_turns(dose, n)) for n in range(count))
        yield Mode(length, tuple((item, 1) for item in items), (0,) * count, later)
