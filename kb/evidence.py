"""What addresses a fault, and what tests it: when the fault is there, a test shows it."""

from collections.abc import Mapping

from kb.dials import Dials, at_load, dials_of
from kb.terms import Catch, Cause, Drill, DrillId, Fault, Lift, Load, ShowsAt, Speed, Stage

__all__ = ["addresses", "phase_masks", "shows_at", "shows_in", "tests"]


def shows_at(fault: Fault, cause: Cause) -> ShowsAt:
    """The least dials at which a fault shows for this cause: the cause's raises the fault's, dial by dial."""
    a, b = fault.shows_at, cause.shows_at
    return ShowsAt(speed=max(a.speed, b.speed), load=max(a.load, b.load), catch=max(a.catch, b.catch))


def addresses(drill: Drill, fault: Fault, cause: Cause, load: Load) -> bool:
    """Whether a drill done at `load` works on a fault for this cause.

    Its front matter says so, for this cause or for the fault whatever its cause; a cause of strength
    is worked on only at load light or more.
    """
    if cause.kind == "strength" and load < Load.LIGHT:
        return False
    return any(said.fault == fault.id and said.cause in (None, cause.id) for said in drill.faults)


def phase_masks(fault: Fault, lift: Lift) -> tuple[int, ...]:
    """Each phase of a fault that lies on a lift's timeline, as a bit set over its points."""
    points = lift.points
    masks = []
    for first, last in fault.phases:
        if first in points and last in points:
            low, high = points.index(first), points.index(last)
            masks.append(((1 << (high + 1)) - 1) & ~((1 << low) - 1))
    return tuple(masks)


def shows_in(dials: Dials, phases: tuple[int, ...], least: ShowsAt) -> bool:
    """Whether a fault of these phases would show at these dials.

    One phase lies wholly inside the reach with nothing left out there, and speed, load and catch are
    at or above `least`. Preparation and strengthening show nothing.
    """
    if dials.stage in (Stage.PREPARE, Stage.FINISH):
        return False
    if dials.speed < least.speed or dials.load < least.load or dials.catch < least.catch:
        return False
    visited = ((1 << (dials.last + 1)) - 1) & ~((1 << dials.first) - 1) & ~dials.left_out
    return any(phase & ~visited == 0 for phase in phases)


def tests(
    drill: Drill,
    load: Load,
    fault: Fault,
    cause: Cause,
    lift: Lift,
    drills: Mapping[DrillId, Drill],
    *,
    speed: Speed = Speed.FULL,
    catch: Catch = Catch.FULL,
) -> bool:
    """Whether a drill done at `load`, `speed` and `catch` capped by the gear, tests a fault for a cause.

    A complex tests what one of its parts tests, at the complex's load (or the part's most) and caps.
    """
    if not drill.made_of:
        least = shows_at(fault, cause)
        if load < least.load or min(drill.speed, speed) < least.speed or min(drill.catch, catch) < least.catch:
            return False  # most end here, before where on the lift they are is worked out
        return shows_in(at_load(dials_of(drill, lift), load, speed, catch), phase_masks(fault, lift), least)
    parts = (drills[part] for part in drill.made_of if part in drills)
    return any(
        tests(part, min(load, part.load[1]), fault, cause, lift, drills, speed=speed, catch=catch) for part in parts
    )
