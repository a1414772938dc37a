"""All the ways of one body into a position: what the position fixes, and the one choice that is then left.

A position fixes, in shares of the lifter's own lengths as its angles give them on the usual body:

- the bar over the same part of the foot, and the feet as they are (flat, or the heels as high);
- the direction of the arms from the floor's point of view: upright overhead, hanging as far back in the pull. With
  the bar racked the elbows may be up to `ELBOWS_DROP` degrees lower;
- with the bar on the body or overhead, the slope of the thighs (the depth); otherwise the height of the bar: on the
  floor half a disc, else the same share of the way up the standing leg.

What is left is the lean of the shank. Each lean gives all other angles in closed form: with the thighs' slope fixed,
the trunk leans until the bar is over the foot; else the hip is where the thigh's circle about the knee meets the
trunk's about the shoulder.
"""

import math
from collections.abc import Mapping
from typing import NamedTuple

from kb.body.legs import foot_up
from kb.body.limits import Limits
from kb.body.pose import DISC_RADIUS, NECK, RACK, SPREADS, forward, place
from kb.body.proportions import Body
from kb.terms import Position

__all__ = ["ELBOWS_DROP", "LEAN_MORE", "TOUCH", "Family", "excess", "family_of", "untradable"]

LEAN_MORE = 15.0
"""A position is still itself while the trunk leans no more than this beyond its own, degrees. Common practice, no
source."""

ELBOWS_DROP = 25.0
"""How much lower than the position's own the elbows may be with the bar racked, degrees. Common practice, no source."""

TOUCH = 1e-6
"""Degrees: what a search leaves beyond a limit is no excess."""


class Family(NamedTuple):
    """All ways of a body into a position. Lengths in m, angles in degrees, points as (forward, up).

    `own` are the position's angles; `ankle` and `bar_x` say where the joint and the bar are. `hangs` is the arm's
    angle from straight down, `slope` the thighs' from the vertical. With the bar on the body or overhead (`carried`)
    `trunk` and `tilt` are the line from hip to what has to be over `bar_x`; else `shoulder` is where the shoulder is.
    `aside` is what turned-out legs look like from the side, `most_rack` how far the shoulder goes in the rack.
    """

    body: Body
    own: Mapping[str, float]
    pitch: float
    ankle: tuple[float, float]
    bar_x: float
    hangs: float
    slope: float
    carried: bool
    racked: bool
    trunk: float
    tilt: float
    shoulder: tuple[float, float]
    aside: float
    most_rack: float

    def angles(self, shank: float) -> dict[str, float] | None:
        """All angles at a lean of the shank; None where the body can't close."""
        return _under_the_bar(self, shank) if self.carried else _over_the_bar(self, shank)


def _arm(body: Body, own: Mapping[str, float], hangs: float, bar: str, spread: float) -> tuple[float, float]:
    """From shoulder to bar, m, for an arm that hangs at that angle from straight down."""
    still = {**own, "ankle": 0.0, "knee": 0.0, "hip": 0.0, "trunk": 0.0, "shoulder": hangs}
    pose = place(body, still, "feet-flat", bar, spread=spread)
    return pose.bar.x - pose.shoulder.x, pose.bar.y - pose.shoulder.y


def _standing(body: Body, bar: str) -> float:
    """The height, standing, of the part of the leg at which a bar is measured, m."""
    return body.ankle_height + body.shank + (body.thigh if bar in ("thigh", "hip") else 0.0)


def family_of(body: Body, position: Position, limits: Limits, reference: Body, wedge: float, turn_out: float) -> Family:
    """All the ways of a body into a position (the module says which); wedge and turn-out in degrees.

    `reference` is the body on which the position's own angles are read.
    """
    ref = forward(reference, position)
    own = {**position.angles, "trunk": ref.lean}
    pitch = ref.legs[0].pitch + wedge
    carried = position.bar in ("shoulders", "neck", "overhead")
    racked = position.bar in SPREADS
    ankle_at = foot_up(body, pitch)[3]
    aside = math.cos(math.radians(turn_out)) if carried else 1.0
    bar_x = ref.bar.x / reference.foot * body.foot * aside
    hangs = own["shoulder"] - ref.lean
    ahead, up = (RACK if position.bar == "shoulders" else NECK) if racked else (0.0, 0.0)
    arm = (0.0, 0.0) if racked else _arm(body, own, hangs, position.bar, ref.spread)
    height = DISC_RADIUS
    if position.bar != "floor":
        height = ref.bar.y / _standing(reference, position.bar) * _standing(body, position.bar)
    return Family(
        body=body,
        own=own,
        pitch=pitch,
        ankle=(ankle_at.x * aside, ankle_at.y),
        bar_x=bar_x,
        hangs=hangs,
        slope=own["knee"] - own["ankle"] - ref.legs[0].pitch,
        carried=carried,
        racked=racked,
        trunk=math.hypot(body.trunk + up * body.stature, ahead * body.stature),
        tilt=math.atan2(ahead * body.stature, body.trunk + up * body.stature),
        shoulder=(bar_x - arm[0], height - arm[1]),
        aside=aside,
        most_rack=limits.rack,
    )


def _built(family: Family, shank: float, thigh: float, lean: float) -> dict[str, float]:
    """The angles, from the leans of shank, thigh (backward) and trunk."""
    shoulder = family.hangs + lean
    if family.racked:
        shoulder = max(shoulder - ELBOWS_DROP, min(shoulder, family.most_rack))
    return {
        "ankle": shank - family.pitch,
        "knee": shank + thigh,
        "hip": lean + thigh,
        "trunk": lean,
        "shoulder": shoulder,
    }


def _under_the_bar(family: Family, shank: float) -> dict[str, float] | None:
    """With the thighs' slope fixed, the trunk leans until the bar is over the foot."""
    body, turn, fold = family.body, math.radians(shank), math.radians(family.slope)
    hip_x = family.ankle[0] + (body.shank * math.sin(turn) - body.thigh * math.sin(fold)) * family.aside
    sine = (family.shoulder[0] - hip_x) / family.trunk
    if abs(sine) > 1:
        return None
    return _built(family, shank, family.slope, math.degrees(math.asin(sine) - family.tilt))


def _over_the_bar(family: Family, shank: float) -> dict[str, float] | None:
    """With the shoulder fixed over the bar, the hip is where two circles meet."""
    body, turn = family.body, math.radians(shank)
    knee = (family.ankle[0] + body.shank * math.sin(turn), family.ankle[1] + body.shank * math.cos(turn))
    gap_x, gap_y = family.shoulder[0] - knee[0], family.shoulder[1] - knee[1]
    gap = math.hypot(gap_x, gap_y)
    if not abs(body.thigh - body.trunk) <= gap <= body.thigh + body.trunk or gap == 0:
        return None
    along = (body.thigh**2 - body.trunk**2 + gap**2) / (2 * gap)
    # of the two places for the hip, the one behind the line from knee to shoulder, unless the hip is stretched
    off = math.copysign(math.sqrt(max(0.0, body.thigh**2 - along**2)), family.own["hip"])
    hip_x = knee[0] + (along * gap_x - off * gap_y) / gap
    hip_y = knee[1] + (along * gap_y + off * gap_x) / gap
    thigh = math.degrees(math.atan2(knee[0] - hip_x, hip_y - knee[1]))
    lean = math.degrees(math.atan2(family.shoulder[0] - hip_x, family.shoulder[1] - hip_y))
    return _built(family, shank, thigh, lean)


def excess(angles: Mapping[str, float], family: Family, limits: Limits) -> dict[str, float]:
    """How far each joint would go beyond its limit, degrees; nothing below zero.

    `trunk` (it may not lean much more than the position's own) and `straight` (knees don't bend backwards) are limits
    of the posture, not of a joint.
    """
    knee = angles["knee"]
    over = {
        "ankle": angles["ankle"] - limits.ankle,
        "knee": knee - limits.knee,
        "straight": min(0.0, family.own["knee"]) - knee,
        "hip": angles["hip"] - limits.hip_at(knee),
        "trunk": angles["trunk"] - family.own["trunk"] - LEAN_MORE,
    }
    if family.racked:
        over["rack"] = angles["shoulder"] - limits.rack
    else:
        over["shoulder"] = angles["shoulder"] - limits.shoulder
    return {joint: degrees for joint, degrees in over.items() if degrees > 0}


def untradable(position: Position, slope: float, limits: Limits) -> dict[str, float]:
    """What no trading can mend: elbows and wrists as the position has them, and the depth of the squat."""
    over = {"elbow": position.angles["elbow"] - limits.elbow, "wrist": position.angles["wrist"] - limits.wrist}
    if position.bar in ("shoulders", "neck", "overhead"):
        over["depth"] = slope - limits.depth
    return {joint: degrees for joint, degrees in over.items() if degrees > TOUCH}
