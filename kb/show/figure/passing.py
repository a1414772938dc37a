"""The postures that a drill passes through on a lift's timeline, in order."""

from collections.abc import Mapping, Sequence

from kb.body.pose import forward
from kb.body.proportions import USUAL
from kb.terms import Catch, Drill, Lift, LiftId, Position, PositionId

__all__ = ["passed", "serving"]


def passed(drill: Drill, lift: Lift, positions: Mapping[PositionId, Position]) -> tuple[Position, ...]:
    """The positions of the points that a drill visits; none if it has no reach on that lift.

    A catch in the quarter squat is drawn as one. A target position that is no point of the timeline, such as the
    hang, comes where the height of its bar puts it.
    """
    reach = _reach(drill, lift)
    if reach is None:
        return ()
    points = lift.points
    if reach[0] not in points or reach[1] not in points:
        return ()
    within = lift.timeline[points.index(reach[0]) : points.index(reach[1]) + 1]
    found = [
        positions[_caught(drill, timed.position, positions)]
        for timed in within
        if timed.at not in drill.leaves_out and timed.position in positions
    ]
    target = next((drill.target_position[each] for each in lift.serves if each in drill.target_position), None)
    off = target is not None and target in positions and all(target != timed.position for timed in lift.timeline)
    if target is not None and off and not target.endswith("-power-receive"):
        found = _with(found, positions[target])
        if positions[target].bar == "neck":
            found = [_behind(position, positions[target]) for position in found]
    return tuple(found)


def _behind(position: Position, neck: Position) -> Position:
    """A position with the bar on the shoulders, with it behind the neck instead."""
    if position.bar != "shoulders":
        return position
    arms = {joint: neck.angles[joint] for joint in ("shoulder", "elbow", "wrist")}
    return position._replace(bar="neck", angles={**position.angles, **arms})


def _reach(drill: Drill, lift: Lift) -> tuple[str, str] | None:
    return next((drill.reach[each] for each in lift.serves if each in drill.reach), None)


def _caught(drill: Drill, position: PositionId, positions: Mapping[PositionId, Position]) -> PositionId:
    """The quarter squat instead of the lift's own catch, for a drill that is caught there."""
    lift, _, point = position.partition("-")
    higher = PositionId(f"{lift}-power-receive")
    return higher if drill.catch is Catch.POWER and point in ("receive", "split") and higher in positions else position


def _with(found: Sequence[Position], target: Position) -> list[Position]:
    """The positions with one more, where its bar lies between two; first, if below all."""
    heights = [forward(USUAL, position).bar.y for position in found]
    own = forward(USUAL, target).bar.y
    if not found or own <= heights[0]:
        return [target, *found]
    for n in range(1, len(found)):
        if heights[n - 1] < own <= heights[n]:
            return [*found[:n], target, *found[n:]]
    return list(found)


def serving(drill: Drill, lifts: Mapping[LiftId, Lift]) -> Lift | None:
    """The first lift that a drill names and has a reach on."""
    return next((lifts[each] for each in drill.lifts if each in lifts and _reach(drill, lifts[each])), None)
