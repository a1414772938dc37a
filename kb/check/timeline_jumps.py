"""Two neighbouring points of a timeline lie further apart than one movement goes.

From one point to the next no joint of the legs or the trunk turns by more than 140 degrees, and the bar moves at most
15 cm forward or back (over level feet) and at most 0.4 of the stature up or down. The largest in the library are
137 degrees and 0.35 (into and out of the full catch) and 11 cm.

Why it matters: a timeline that jumps has lost a position on the way, or has two in the wrong order, and the steps
between drills are reckoned along it.

Wrong:

    timeline:
      - {at: start, position: clean-start}
      - {at: stand, position: clean-stand}

Right:

    timeline:
      - {at: start, position: clean-start}
      - {at: knee, position: clean-knee}
      - {at: hip, position: clean-hip}
"""

from collections.abc import Iterator
from itertools import pairwise

from kb.body.pose import Pose, drawable, forward
from kb.body.proportions import USUAL
from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import Position

__all__ = ["CODE", "rule"]

CODE = "timeline-jumps"

MOST_DEG = 140.0
"""What a joint of legs or trunk may turn."""

MOST_ASIDE_M = 0.15
"""What the bar may move forward or back: its loop in published lifts is some 3 to 9 cm, and this is no measurement."""

MOST_UP = 0.40
"""What the bar may move up or down, share of stature."""


def rule(library: Library) -> Iterator[Problem]:
    """Every step along a lift's own timeline that is too far."""
    for lift in library.lifts.values():
        if lift.parts:  # its points are its parts', and they are told there
            continue
        for n, (before, after) in enumerate(pairwise(lift.timeline), 1):
            ends = [library.positions.get(timed.position) for timed in (before, after)]
            known = [position for position in ends if position is not None and drawable(position)]
            far = _far(*known) if len(known) == 2 else ""
            if far:
                message = f"From `{before.at}` to `{after.at}` {far}."
                help_ = "Put the position in between, or mend the angles of one."
                yield at(library, lift.id, f"timeline.{n}", CODE, message, help_)


def _far(before: Position, after: Position) -> str:
    """What goes too far between two positions; nothing if nothing does."""
    first, second = forward(USUAL, before), forward(USUAL, after)
    turned = max(
        (abs(degrees - _same(before, joint)), joint)
        for joint, degrees in after.angles.items()
        if joint.rpartition("_")[2] in ("ankle", "knee", "hip", "trunk")
    )
    if turned[0] > MOST_DEG:
        return f"`{turned[1]}` turns by {turned[0]:.0f} degrees"
    up = abs(second.bar.y - first.bar.y)
    if up > MOST_UP * USUAL.stature:
        return f"the bar moves {up * 100:.0f} cm up or down"
    aside = abs(second.bar.x - first.bar.x) if _level(first) and _level(second) else 0.0
    return f"the bar moves {aside * 100:.0f} cm forward or back" if aside > MOST_ASIDE_M else ""


def _level(pose: Pose) -> bool:
    return len(pose.legs) == 1


def _same(before: Position, joint: str) -> float:
    """The angle before: of a leg of a split that of both legs, and the other way about."""
    plain = joint.rpartition("_")[2]
    for name in (joint, plain, f"front_{plain}"):
        if name in before.angles:
            return before.angles[name]
    raise KeyError(joint)
