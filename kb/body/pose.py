"""Joint angles to coordinates: where every joint and the bar are when a body takes a posture.

What it gives: `forward(body, position)`, a `Pose` in metres, seen from the lifter's right side: x forward, y up,
y = 0 the floor. x = 0 lies under the middle of the foot (between heel and toe, when flat); in a split, halfway
between the middle of the front foot and the ball of the back foot. `legs` holds one `Leg` that stands for both, or
in a split the front one, then the back one; each has heel, ball, toe, ankle, knee and hip. Then hip, shoulder, chin,
vertex (top of the head), elbow, wrist, and the bar's centre. Every point is a `Point(x, y)`.

How the angles are read. Ankle, knee and hip build up from a flat foot, so that lean of the trunk = hip - knee +
ankle; on the toes the foot turns about its ball until the lean is the position's own. In a split the front foot is
flat; the back leg hangs from the hip at its own angles, and its ball is brought to the floor by the least change of
them (`Pose.angles` has the angles as taken, `Pose.closed` the largest change, degrees). The shoulder is counted from
the trunk: past 180 in overhead positions, where the upper back supplies the rest. Arms go out to the side by `spread`,
which shortens them as seen from the side. With the bar on the floor, `spread` is what brings the hands to it, if
any does. With the bar on the shoulders or behind the neck, the bar lies on the body and the hands go to it.
"""

import math
from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from kb.body.legs import Leg, Point, along, beside, closed_back_leg, leg_up, legs_of, turned_out
from kb.body.proportions import GRIP, PALM, Body
from kb.terms import Position

__all__ = [
    "BAR_RADIUS", "DISC_RADIUS", "NARROW", "NECK", "RACK", "SPREADS", "WIDE", "Leg", "Point", "Pose", "drawable",
    "forward", "place", "spread_of",
]  # fmt: skip

DISC_RADIUS = 0.225
"""Of the largest disc, m: 450 mm across (the sport's rules for equipment)."""

BAR_RADIUS = 0.014
"""Of a bar, m: 28 mm across, the men's bar (the sport's rules for equipment)."""

WIDE, NARROW = 26.0, 8.0
"""How far a straight arm goes out to the side in the snatch's grip and in the clean's and jerk's, degrees: hands
some 100 cm and 58 cm apart for a stature of 175 cm. Common practice, no source."""

SPREADS: Mapping[str, float] = MappingProxyType({"shoulders": 25.0, "neck": 50.0})
"""How far the upper arm goes out to the side when the bar lies on the body, degrees. Common practice, no source."""

RACK = (0.040, 0.020)
"""Centre of a racked bar from the shoulder joint, shares of stature, forward of and up along the trunk. No source."""

NECK = (-0.040, 0.030)
"""The same for a bar behind the neck."""

HEAD_FOLLOWS = 0.5
"""The head leans this share of the trunk's lean: eyes stay up. Common practice, no source."""

CHIN = (0.035, 0.052)
"""From the shoulder, shares of stature: forward of and up along neck and head (height: Winter 2009, fig. 4.1)."""


class Pose(NamedTuple):
    """Where everything is. Angles in degrees as taken, `lean` the trunk's, `spread` the arms'."""

    legs: tuple[Leg, ...]
    hip: Point
    shoulder: Point
    chin: Point
    vertex: Point
    elbow: Point
    wrist: Point
    bar: Point
    angles: Mapping[str, float]
    lean: float
    spread: float
    closed: float = 0.0
    reach_short: float = 0.0


def _racked(body: Body, shoulder: Point, upper: float, spread: float, bar: Point) -> tuple[Point, Point, float]:
    """Elbow, wrist and what the arm is short of the bar, m, with the bar on the body.

    The forearm turns out to the side here, so the hand is drawn on the line from elbow to bar.
    """
    elbow = along(shoulder, body.upper_arm * math.cos(math.radians(spread)), upper)
    far = math.dist(elbow, bar)
    share = max(0.0, 1 - PALM * body.hand / far) if far else 0.0
    wrist = Point(elbow.x + share * (bar.x - elbow.x), elbow.y + share * (bar.y - elbow.y))
    return elbow, wrist, max(0.0, far * share - body.forearm)


def place(
    body: Body,
    angles: Mapping[str, float],
    contact: str,
    bar: str,
    *,
    spread: float,
    pitch: float = 0.0,
    turn_out: float = 0.0,
) -> Pose:
    """The pose at exactly these angles: nothing is mended, so a back foot may stand off the floor.

    Parameters
    ----------
    angles
        Degrees, as a position has them.
    contact, bar
        As a position has them.
    spread
        How far the arms go out to the side, degrees.
    pitch
        How far a wedge raises the heels, degrees (of the front foot in a split).
    turn_out
        How far feet and knees turn out beyond the usual, degrees: of the legs all that lies level shrinks, seen from
        the side, by the cosine.
    """
    legs, lean = legs_of(body, angles, contact, pitch)
    if turn_out:
        seen = math.cos(math.radians(turn_out))
        legs = tuple(turned_out(leg, seen) for leg in legs)
    hip = legs[0].hip
    shoulder = along(hip, body.trunk, lean)
    nod = lean * HEAD_FOLLOWS
    chin = beside(shoulder, CHIN[0] * body.stature, CHIN[1] * body.stature, nod)
    vertex = along(shoulder, body.head, nod)
    # an arm that hangs points straight down; flexion turns it forward and up, towards the lifter's front
    upper = 180 - (angles["shoulder"] - lean)
    short = 0.0
    if bar in SPREADS:
        forward_m, up_m = RACK if bar == "shoulders" else NECK
        at = beside(shoulder, forward_m * body.stature, up_m * body.stature, lean)
        elbow, wrist, short = _racked(body, shoulder, upper, spread, at)
    else:
        seen = math.cos(math.radians(spread))
        fore = upper - angles["elbow"]
        elbow = along(shoulder, body.upper_arm * seen, upper)
        wrist = along(elbow, body.forearm * seen, fore)
        held = PALM if bar == "overhead" else GRIP
        at = along(wrist, held * body.hand * seen, fore - angles["wrist"])
    return Pose(
        legs, hip, shoulder, chin, vertex, elbow, wrist, at, MappingProxyType(dict(angles)), lean, spread, 0.0, short
    )


TOGETHER = ("ankle", "knee", "hip")
APART = tuple(f"{side}_{joint}" for side in ("front", "back") for joint in TOGETHER)


def drawable(position: Position) -> bool:
    """Whether a position has every angle that its figure needs; a broken entry may not."""
    legs = APART if position.contact == "split" else TOGETHER
    return position.angles.keys() >= {*legs, "trunk", "shoulder", "elbow", "wrist"}


def spread_of(position: Position) -> float:
    """How far the arms go out to the side in that position, degrees, before the bar on the floor has its say."""
    if position.bar in SPREADS:
        return SPREADS[position.bar]
    return WIDE if position.id.startswith("snatch-") else NARROW


def forward(body: Body, position: Position, *, spread: float | None = None, pitch: float = 0.0) -> Pose:
    """The position as this body takes it at the position's own angles (the module says how they are read).

    Parameters
    ----------
    spread
        How far the arms go out to the side, degrees; by default the grip of the position's lift, and with the bar
        on the floor what brings the hands to it.
    pitch
        How far a wedge raises the heels, degrees.
    """
    angles, closed = position.angles, 0.0
    if position.contact == "split":
        lean = angles["front_hip"] - angles["front_knee"] + angles["front_ankle"] + pitch
        height = leg_up(body, angles["front_ankle"], angles["front_knee"], pitch).hip.y
        back = dict(
            zip(("back_hip", "back_knee", "back_ankle"), closed_back_leg(body, angles, lean, height), strict=True)
        )
        closed = max(abs(back[joint] - angles[joint]) for joint in back)
        angles = {**angles, **back}
    out = spread_of(position) if spread is None else spread
    pose = place(body, angles, position.contact, position.bar, spread=out, pitch=pitch)
    if position.bar == "floor" and spread is None:
        hangs = pose.shoulder.y - place(body, angles, position.contact, position.bar, spread=0, pitch=pitch).bar.y
        needs = (pose.shoulder.y - DISC_RADIUS) / hangs if hangs > 0 else 0.0
        if 0.5 <= needs <= 1:  # arms go out up to 60 degrees; beyond that the angles are wrong, not the grip
            out = math.degrees(math.acos(needs))
            pose = place(body, angles, position.contact, position.bar, spread=out, pitch=pitch)
    return pose._replace(closed=closed)
