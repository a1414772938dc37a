"""Who has done the day's weight well before the class ends: what strengthens, dosed, with gear that is free until then.

A pass over a finished plan, which stays as it is: nobody's gear, minute or coach is taken for it.
"""

from collections.abc import Collection, Iterator
from typing import NamedTuple

from kb.ask.class_.build import Matter
from kb.ask.class_.doing import Doing, Own, counted, gear_of
from kb.ask.class_.ended import WORTH_S, Ended, ended
from kb.ask.class_.handing_on import first_at_a_bar
from kb.ask.class_.rotation import Mode, Plan, ticks
from kb.ask.class_.turns import MOST_AT_A_BAR, by_turns, may_share
from kb.ask.class_.working_up import coaching, look_in, ways_up
from kb.ask.plan.block import family, queue
from kb.ask.plan.finishing import finishing
from kb.ask.shelf import Shelf
from kb.dose import round_seconds, work_seconds
from kb.kit import BAR
from kb.loading import LOADING_S
from kb.terms import DrillId, ItemId, Load

__all__ = ["MOST", "Strong", "strength_of", "strengthens"]

MOST = 3
"""Drills that strengthen, after the day's weight, at most. Common practice, no source."""


TOGETHER_S = 60
"""Who ends at most so much later than another of their unit, s, goes on together with them. Ours."""


class Strong(NamedTuple):
    """A drill that strengthens, the `k`-th of some of a unit, in full from tick `start`; by turns as its mode says.

    `member` is which of the unit the first of these lifters is. Where they work up to a weight it is the lift, in so
    many `rounds`, one every so many ticks, and a coach looks on from tick `look`.
    """

    unit: int
    member: int
    lifters: tuple[int, ...]
    k: int
    doing: Doing
    mode: Mode
    start: int
    rounds: int = 0
    every: int = 0
    look: int | None = None

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
    """What comes at weight after whose lists, those first who have ended first: working up, then what strengthens.

    Those of a unit who end together go on together. What strengthens is in full, one after the other, no family twice;
    of each list the first of which the gear is free when they come to it, and which still fits; three at most.
    """
    units = matter.rotation.units
    if not any(own.after for own in matter.owns):
        return ()
    hall = ended(matter, plan)
    found = list(_up(matter, plan, hall))
    keep = _kept(matter, plan, hall)
    parts = [(u, part) for u, unit in enumerate(units) for part in _parts(hall, unit.lifters, 2, TOGETHER_S)]
    up = {n for each in found for n in each.lifters}
    ready = [(u, part) for u, part in parts if all(n in up or _at_weight(matter.owns[n]) for n in part)]
    for u, part in sorted(ready, key=lambda each: (max(map(hall.ends.__getitem__, each[1])), each)):
        now, left = max(map(hall.ends.__getitem__, part)), list(matter.owns[part[0]].after)
        for k in range(1, MOST + 1):
            begun = Strong(u, units[u].lifters.index(part[0]), part, k, left[0], Mode(0), now) if left else None
            chosen = next(_possible(matter, hall, begun, left, keep), None) if begun else None
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


def _up(matter: Matter, plan: Plan, hall: Ended) -> Iterator[Strong]:
    """Who works up to a weight, up to four of a unit together: only where a coach can look on after the first round."""
    units, looks = matter.rotation.units, list[int]()
    parts = [
        (not racked, max(map(hall.ends.__getitem__, part)), u, part)
        for u, unit in enumerate(units)
        for racked in (True, False)
        if (able := tuple(n for n in unit.lifters if matter.owns[n].up and matter.owns[n].lifter.from_rack is racked))
        for part in _parts(hall, able, MOST_AT_A_BAR, WORTH_S)
    ]
    for cleaned, now, u, part in sorted(parts):
        doing = matter.owns[part[0]].up
        if doing is None:
            continue
        busy = coaching(matter, plan, looks)
        for way, mode, rounds, every in ways_up(matter, part, doing, matter.rotation.last - now, must=not cleaned):
            end = now + mode.length
            look = look_in(busy, matter.rotation.coaches, now + every + max(mode.later), end)
            if look is not None and hall.free(matter, mode.gear, now, end):
                hall.take(mode.gear, now, end)
                hall.ends.update(dict.fromkeys(part, end))
                looks.append(look)
                yield Strong(u, units[u].lifters.index(part[0]), part, 0, way, mode, now, rounds, every, look)
                break


def _kept(matter: Matter, plan: Plan, hall: Ended) -> tuple[int, tuple[tuple[ItemId, int], ...]]:
    """The bar that is left, and from which tick on, to those who learn and have had none: what strengthens can wait."""
    learn = [n for n in first_at_a_bar(matter, plan) if not matter.owns[n].by_themselves]
    return max((hall.ends[n] for n in learn), default=0), ((BAR, 1),) if learn else ()


def _at_weight(own: Own) -> bool:
    return bool(own.after) and own.lifter.weight_kg is not None


def _parts(hall: Ended, lifters: tuple[int, ...], most: int, together_s: int) -> Iterator[tuple[int, ...]]:
    """Those of a unit, so many at most, who end within so many seconds of one another."""
    part: tuple[int, ...] = ()
    for n in sorted(lifters, key=lambda each: (hall.ends[each], lifters.index(each))):
        if part and (len(part) == most or hall.ends[n] - hall.ends[part[0]] > ticks(together_s)):
            yield part
            part = ()
        part = tuple(sorted((*part, n), key=lifters.index))
    yield part


def _possible(
    matter: Matter, hall: Ended, begun: Strong, left: list[Doing], keep: tuple[int, tuple[tuple[ItemId, int], ...]]
) -> Iterator[Strong]:
    since, kept = keep
    for doing in left:
        for mode in _modes(matter, begun.lifters, doing):
            end = begun.start + mode.length
            if end > matter.rotation.last or not hall.free(matter, mode.gear, begun.start, end):
                continue
            spared = tuple((item, count + dict(kept).get(item, 0)) for item, count in mode.gear)
            if hall.free(matter, spared, max(begun.start, since), end):
                yield begun._replace(doing=doing, mode=mode)


def _modes(matter: Matter, lifters: tuple[int, ...], doing: Doing) -> Iterator[Mode]:
    """Each with their own, or by turns where that costs none of them rest; unlike weights change the discs."""
    dose = doing.drill.dose
    items, length = counted(doing.gear, matter.asked.have), ticks(work_seconds(doing.drill))
    yield Mode(length, tuple((item, len(lifters)) for item in items))
    weights = {matter.owns[n].lifter.weight_kg for n in lifters}
    alike = len(weights) == 1 and None not in weights
    count = len(lifters)
    rests = alike or dose.rest_s >= (count - 1) * round_seconds(dose) + count * LOADING_S
    if count > 1 and items and may_share(dose, count, check=False) and rests:
        later = tuple(ticks(by_turns(dose, n)) for n in range(count))
        yield Mode(length, tuple((item, 1) for item in items), (0,) * count, later)
