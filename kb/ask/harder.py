"""What is harder than a drill, once its standard is met: by its entry, by being turned up, by more of the lift."""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from kb.dials import Change, Dials, changes, dials_of, spans, step
from kb.terms import Catch, Drill, Lift, LiftId, Load, Speed, Stage

__all__ = ["Harder", "harder"]

TURNED = ("speed", "catch", "aid")
"""Dials that make the same stretch harder without more weight. A longer reach isn't among them: what a drive adds, it
also makes easier."""

PLANTED = 1
"""How much harder a catch is with feet that may not leave the floor: the hips alone get the lifter down. Ours."""

FEW = 3
"""Below so many, what covers more of the lift is named too: the next steps back to it. Common practice, no source."""


class Harder(NamedTuple):
    """A drill for once this one's standard is met, and what this one eases of it.

    `eased` is "" where it builds on this one, turns it up or takes in more of the lift; then `turned` has the dials
    that go up, if any, on `lift`.
    """

    drill: Drill
    eased: str = ""
    turned: tuple[Change, ...] = ()
    lift: Lift | None = None


def harder(drill: Drill, doable: Iterable[Drill], lifts: Mapping[LiftId, Lift]) -> tuple[Harder, ...]:
    """What is harder of the `doable`: those of which this is an easier version, those built on it, those turned up.

    A complex is built on by one that has all its parts and more. Turned up is what covers the same stretch of the same
    lift for the same fault or posture with more speed, a deeper catch, less help or, at full speed, planted feet,
    nearest first. Where these are few, what covers more of the lift, and is no gentler, follows, nearest first.
    """
    others = [other for other in doable if other.id != drill.id]
    found = {
        other.id: Harder(other, said.eases) for other in others for said in other.regressions if said.drill == drill.id
    }
    for other in others:
        more_parts = bool(drill.made_of) and set(drill.made_of) < set(other.made_of)
        if more_parts or any(drill.id in group for group in other.groups):
            found.setdefault(other.id, Harder(other))
    turned = [each for other in others if (each := _turned(drill, other, lifts)) is not None]
    turned.sort(key=lambda each: (sum(change.size for change in each.turned), each.drill.id))
    for each in turned:
        found.setdefault(each.drill.id, each)
    for each in _further(drill, others, lifts) if len(found) < FEW else ():
        if len(found) < FEW:
            found.setdefault(each.drill.id, each)
    return tuple(found.values())


def _further(drill: Drill, others: Iterable[Drill], lifts: Mapping[LiftId, Lift]) -> list[Harder]:
    """What covers the drill's stretch and more of the same lift, on no dial gentler: the nearest first."""
    found = []
    for other in others:
        lift = next((lifts[lift_id] for lift_id in drill.lifts if lift_id in other.lifts), None)
        if lift is None or {Stage.PREPARE, Stage.FINISH} & {drill.stage, other.stage}:
            continue
        here, there = _unloaded(drill, lift), _unloaded(other, lift)
        covers = there.first <= here.first and here.last <= there.last and there.stage >= here.stage
        gentler = there.speed < here.speed or there.catch < here.catch or there.helped > here.helped
        left_out = there.left_out & ~here.left_out
        if covers and not (gentler or left_out) and (here.first, here.last) != (there.first, there.last):
            turned = changes(here, there, lift.points, spans(lift))
            found.append((step(here, there, spans(lift)), other.id, Harder(other, turned=turned, lift=lift)))
    return [each for _, _, each in sorted(found, key=lambda some: some[:2])]


def _turned(drill: Drill, other: Drill, lifts: Mapping[LiftId, Lift]) -> Harder | None:
    """The other drill if it is this one turned up, with the dials that went up."""
    lift = next((lifts[lift_id] for lift_id in drill.lifts if lift_id in other.lifts), None)
    if lift is None or {Stage.PREPARE, Stage.FINISH} & {drill.stage, other.stage} or not _for_the_same(drill, other):
        return None
    here, there = _unloaded(drill, lift), _unloaded(other, lift)
    same = (here.first, here.last, here.left_out) == (there.first, there.last, there.left_out)
    lower = there.speed < here.speed or there.catch < here.catch or there.helped > here.helped
    if not same or lower:
        return None
    up = tuple(change for change in changes(here, there, lift.points, spans(lift)) if change.dial in TURNED)
    if drill.feet == "land" and other.feet == "still" and there.catch >= Catch.POWER and there.speed is Speed.FULL:
        up += (Change("feet", drill.feet, other.feet, PLANTED),)
    return Harder(other, turned=up, lift=lift) if up else None


def _unloaded(drill: Drill, lift: Lift) -> Dials:
    """A drill's dials, its weight aside."""
    return dials_of(drill, lift)._replace(load=Load.NONE)


def _for_the_same(drill: Drill, other: Drill) -> bool:
    faults = {said.fault for said in drill.faults} & {said.fault for said in other.faults}
    return bool(faults or set(drill.target_position.values()) & set(other.target_position.values()))
