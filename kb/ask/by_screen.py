"""A fault's causes in the light of a screen: a stiffness that was measured moves up, one that was ruled out moves down.

Only causes of mobility are judged, by the joints that the drills for them open, at the positions where the fault
shows. What wasn't measured is left where it stood. Nothing here is a diagnosis: it says which cause to try first.
"""

from collections import Counter
from collections.abc import Collection, Iterable, Mapping
from typing import Literal, NamedTuple

from kb.ask.screen import MORE_LEAN, Reached, reached_of
from kb.body.limits import Limits
from kb.body.tape import JOINT_OF, Tape, body_of, limits_of
from kb.terms import Cause, Drill, Fault, Lift, Position, PositionId, Stage

__all__ = ["Verdict", "by_screen"]

Moved = Literal["up", "down", ""]


class Verdict(NamedTuple):
    """A cause and where the screen moves it.

    Up: `joint` lacks `degrees` at `position`, or, where it lacks nothing, makes the trunk lean that much more. Down:
    the joint reaches `degrees`, and `position` is within reach. Else `joint` is what would have to be measured, if
    that is known.
    """

    cause: Cause
    moved: Moved = ""
    joint: str = ""
    position: PositionId | None = None
    degrees: float = 0.0
    lacks: bool = False


def _joint(part: str, position: Position) -> str | None:
    """The limit that a stiff part shows in, at a position; None where no test of the screen shows it."""
    if part in ("ankle", "calf"):
        return "ankle"
    if part in ("wrist", "elbow"):
        return "rack" if position.bar == "shoulders" else None
    if part in ("shoulder", "lat", "upper-back"):
        return {"overhead": "shoulder", "shoulders": "rack"}.get(position.bar)
    if part == "hamstring" or (part in ("hip", "adductor") and position.bar not in ("overhead", "shoulders", "neck")):
        return "hinge"
    return "depth" if part in ("hip", "adductor") and position.contact == "feet-flat" else None


def _parts(fault: Fault, cause: Cause, drills: Iterable[Drill]) -> set[str]:
    """What is stiff, by a cause: the parts that at least half of the drills for it open."""
    acting = [
        drill
        for drill in drills
        if drill.stage is Stage.PREPARE and any(said == (fault.id, cause.id) for said in drill.faults)
    ]
    counts = Counter(part for drill in acting for part in drill.opens)
    return {part for part, count in counts.items() if 2 * count >= len(acting)}


def _where(fault: Fault, lift: Lift, positions: Mapping[PositionId, Position]) -> list[Position]:
    """The positions of a lift at which a fault shows."""
    points = lift.points
    found: dict[PositionId, Position] = {}
    for first, last in fault.phases:
        if first in points and last in points:
            for timed in lift.timeline[points.index(first) : points.index(last) + 1]:
                found[timed.position] = positions[timed.position]
    return list(found.values())


def _verdict(
    cause: Cause, parts: Collection[str], reached: Collection[Reached], limits: Limits, measured: Collection[str]
) -> Verdict:
    tested = [(each, joint) for each in reached for part in sorted(parts) if (joint := _joint(part, each.position))]
    known = [(each, joint) for each, joint in tested if joint in measured]
    if not known:
        return Verdict(cause, joint=tested[0][1] if tested else "")
    short = [(each.short[joint], each.position.id, joint) for each, joint in known if joint in each.short]
    if short:
        degrees, position, joint = max(short)
        return Verdict(cause, "up", joint, position, degrees, lacks=True)
    leaning = [(each.leans_more, each.position.id) for each, joint in known if joint == "ankle"]
    if leaning and max(leaning)[0] >= MORE_LEAN:
        degrees, position = max(leaning)
        return Verdict(cause, "up", "ankle", position, degrees)
    if {joint for _, joint in tested} <= set(measured):
        each, joint = known[0]
        return Verdict(cause, "down", joint, each.position.id, getattr(limits, joint))
    return Verdict(cause, joint=next(joint for _, joint in tested if joint not in measured))


def by_screen(
    fault: Fault, lift: Lift, tape: Tape, *, positions: Mapping[PositionId, Position], drills: Collection[Drill]
) -> tuple[Verdict, ...]:
    """The fault's causes, those moved up first (what lacks most before the rest), those ruled out last.

    Within each they stand as the fault has them, commonest first. Raises BadInput where measurements don't fit.
    """
    body = body_of(tape)
    limits = limits_of(body, tape)
    measured = {joint for name, joint in JOINT_OF.items() if getattr(tape, name) is not None}
    reached = [reached_of(body, position, limits) for position in _where(fault, lift, positions)]
    verdicts = [
        _verdict(cause, _parts(fault, cause, drills), reached, limits, measured)
        if cause.kind == "mobility"
        else Verdict(cause)
        for cause in fault.causes
    ]
    rank = {"up": 0, "": 1, "down": 2}
    return tuple(sorted(verdicts, key=lambda each: (rank[each.moved], not each.lacks, -each.degrees * each.lacks)))
