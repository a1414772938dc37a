"""How near another drill is to one: what it works on too, what it leaves, and how far off that puts it."""

from collections.abc import Mapping
from typing import NamedTuple

from kb.dials import Dials, at_load, dials_of, spans, step
from kb.kit import Fit
from kb.terms import Drill, DrillId, FaultId, Lift, LiftId, Stage

__all__ = ["Near", "alike", "near", "order"]

FAULT_LOST = 4
"""How far off a fault that is no longer worked on puts a drill; half of it where it is, for another cause. Ours."""

STANDS_IN = 2
"""How far off a stand-in puts a drill, as much as a fault worked on for another cause. Ours."""

LOAD_LOST = 5
"""How far off each notch of weight below the drill's own puts a drill: more than a fault that is no longer worked on.

Who can have a bar is not helped by a stick, however like the form is. Ours.
"""

OTHER_USE = 40
"""How far off a drill that strengthens is from one that does not: farther than nearly any step of the dials."""

SAME_STRETCH = "covers the same stretch of the lift"
"""What is said to be kept where reach is the same."""


class Near(NamedTuple):
    """A drill that can be done instead: faults it works on too and faults it leaves, what else, and how far off."""

    drill: Drill
    works_on: tuple[FaultId, ...]
    leaves: tuple[FaultId, ...]
    keeps: tuple[str, ...]
    loses: tuple[str, ...]
    distance: int


def order(drill: Drill, each: Near) -> tuple[int, int, bool, bool, DrillId]:
    """What a drill's substitutes are ordered by: nearest first.

    Of those as far off, first what works on more of its faults, then what covers the same stretch, then what puts as
    much of the lift together (the whole lift is no substitute for a piece of it), then by id.
    """
    elsewhere = SAME_STRETCH not in each.keeps
    return each.distance, -len(each.works_on), elsewhere, each.drill.stage != drill.stage, each.drill.id


def alike(drill: Drill, other: Drill, lifts: Mapping[LiftId, Lift]) -> bool:
    """Whether another drill could stand for this one: a lift in common, and something done alike.

    That is a fault, a position aimed at, a joint opened, or at least two points of the same stretch.
    """
    lift = next((lifts[lift_id] for lift_id in drill.lifts if lift_id in other.lifts), None)
    if lift is None or (drill.stage is Stage.PREPARE) != (other.stage is Stage.PREPARE):
        return False
    if {said.fault for said in drill.faults} & {said.fault for said in other.faults}:
        return True
    if set(drill.target_position.values()) & set(other.target_position.values()) or set(drill.opens) & set(other.opens):
        return True
    if {Stage.PREPARE, Stage.FINISH} & {drill.stage, other.stage}:
        return False
    here, there = dials_of(drill, lift), dials_of(other, lift)
    return min(here.last, there.last) > max(here.first, there.first)


def _kept_faults(drill: Drill, other: Drill) -> set[FaultId]:
    """The faults both work on for the same cause, or either whatever the cause."""
    return {
        mine.fault
        for mine in drill.faults
        for theirs in other.faults
        if mine.fault == theirs.fault and (mine.cause == theirs.cause or None in (mine.cause, theirs.cause))
    }


def near(drill: Drill, other: Drill, fitted: Fit, lifts: Mapping[LiftId, Lift]) -> Near:
    """What another drill keeps and loses; each thing lost puts it further off, as does the step between them."""
    mine = {said.fault for said in drill.faults}
    both = _kept_faults(drill, other)
    opened = [joint for joint in drill.opens if joint in other.opens]
    targets, theirs = set(drill.target_position.values()), set(other.target_position.values())
    keeps = [f"opens {joint}" for joint in opened]
    keeps += [f"aims at {position}" for position in sorted(targets & theirs)]
    loses = [f"{joint} is not opened" for joint in drill.opens if joint not in opened]
    loses += [f"{position} is not aimed at" for position in sorted(targets) if not targets & theirs]
    any_cause = {said.fault for said in other.faults}
    distance = FAULT_LOST * len(mine - both) - (FAULT_LOST - 2) * len((mine - both) & any_cause)
    distance += 2 * (len(drill.opens) - len(opened)) + 3 * bool(targets and not targets & theirs)
    distance += STANDS_IN * sum(gear.using != gear.item for gear in fitted.gear)
    lift = next(lifts[lift_id] for lift_id in drill.lifts if lift_id in other.lifts)
    if not {Stage.PREPARE, Stage.FINISH} & {drill.stage, other.stage}:
        here, there = dials_of(drill, lift), _as_fitted(other, lift, fitted)
        distance += _apart(here, there, lift)
        if (here.first, here.last) == (there.first, there.last):
            keeps.append(SAME_STRETCH)
        distance += LOAD_LOST * max(0, here.load - there.load)
        if there.load < here.load:
            loses.append(f"no more than {there.load.word} load" if there.load else "no load at all")
        elif there.speed < here.speed:
            loses.append(f"{there.speed.word} instead of {here.speed.word} speed")
    elif drill.stage != other.stage:
        distance += OTHER_USE
        loses.append("it strengthens" if other.stage is Stage.FINISH else "it is no strengthening")
    return Near(other, tuple(sorted(both)), tuple(sorted(mine - both)), tuple(keeps), tuple(loses), distance)


def _as_fitted(drill: Drill, lift: Lift, fitted: Fit) -> Dials:
    return at_load(dials_of(drill, lift), min(drill.load[1], fitted.load), fitted.speed, fitted.catch)


def _apart(a: Dials, b: Dials, lift: Lift) -> int:
    """The smaller of the steps there and back: how unlike two drills are, whichever way round."""
    return min(step(a, b, spans(lift)), step(b, a, spans(lift)))
