"""What addresses a fault, and what tests it: when the fault is there, a test shows it."""

from collections.abc import Mapping
from typing import NamedTuple

from kb.dials import Dials
from kb.terms import Catch, Cause, Drill, DrillId, Fault, Lift, Load, ShowsAt, Speed, Stage

__all__ = ["Shown", "addresses", "enough", "phase_masks", "shown", "shows_at", "tests"]


class Shown(NamedTuple):
    """Where a fault shows: its phases as bit sets over a lift's points, and the least dials."""

    phases: tuple[int, ...]
    least: ShowsAt


def shows_at(fault: Fault, cause: Cause) -> ShowsAt:
    """The least dials at which a fault shows for this cause: the cause's raises the fault's, dial by dial."""
    a, b = fault.shows_at, cause.shows_at
    return ShowsAt(speed=max(a.speed, b.speed), load=max(a.load, b.load), catch=max(a.catch, b.catch))


def enough(cause: Cause, load: Load) -> bool:
    """Whether a load can work on a cause: for strength it takes light or more."""
    return cause.kind != "strength" or load >= Load.LIGHT


def addresses(drill: Drill, fault: Fault, cause: Cause, load: Load) -> bool:
    """Whether a drill done at `load` works on a fault for this cause.

    Its front matter says so, for this cause or for the fault whatever its cause; a cause of strength
    is worked on only at load light or more.
    """
    return enough(cause, load) and any(
        said.fault == fault.id and said.cause in (None, cause.id) for said in drill.faults
    )


def phase_masks(fault: Fault, lift: Lift) -> tuple[int, ...]:
    """Each phase of a fault that lies on a lift's timeline, as a bit set over its points."""
    points = lift.points
    masks = []
    for first, last in fault.phases:
        if first in points and last in points:
            low, high = points.index(first), points.index(last)
            masks.append(((1 << (high + 1)) - 1) & ~((1 << low) - 1))
    return tuple(masks)


def shown(fault: Fault, cause: Cause, lift: Lift) -> Shown:
    """Where on a lift, and at which dials, a fault shows for this cause."""
    return Shown(phase_masks(fault, lift), shows_at(fault, cause))


def tests(
    drill: Drill,
    load: Load,
    where: Shown,
    drills: Mapping[DrillId, Drill],
    dials: Mapping[DrillId, Dials],
    *,
    speed: Speed = Speed.FULL,
    catch: Catch = Catch.FULL,
) -> bool:
    """Whether a drill done at `load`, `speed` and `catch` capped by the gear, shows a fault that is there.

    One phase lies wholly inside the reach with nothing left out there, and speed, load and catch are at or above
    the least. Preparation and strengthening show nothing. A complex shows what one of its parts shows, at the
    complex's load (or the part's most) and caps. `dials` are the drills' own on this lift's timeline.
    """
    if drill.made_of:
        parts = (drills[part] for part in drill.made_of if part in drills)
        return any(
            tests(part, min(load, part.load[1]), where, drills, dials, speed=speed, catch=catch) for part in parts
        )
    least, here = where.least, dials[drill.id]
    if load < least.load or min(here.speed, speed) < least.speed or min(here.catch, catch) < least.catch:
        return False
    if here.stage in (Stage.PREPARE, Stage.FINISH):
        return False
    visited = ((1 << (here.last + 1)) - 1) & ~((1 << here.first) - 1) & ~here.left_out
    return any(phase & ~visited == 0 for phase in where.phases)
