"""Points and legs: where foot, ankle, knee and hip are, and how a split's back leg reaches the floor."""

import math
from collections.abc import Mapping
from typing import NamedTuple

from kb.body.proportions import Body

__all__ = ["Leg", "Point", "along", "beside", "closed_back_leg", "foot_up", "leg_up", "legs_of", "turned_out"]


class Point(NamedTuple):
    """A place seen from the side, m: forward, up."""

    x: float
    y: float


class Leg(NamedTuple):
    """One leg; `pitch` is how far the heel is raised about the ball, degrees."""

    heel: Point
    ball: Point
    toe: Point
    ankle: Point
    knee: Point
    hip: Point
    pitch: float

    @property
    def points(self) -> tuple[Point, ...]:
        """Heel, ball, toe, ankle, knee and hip."""
        return self[:6]


def along(start: Point, length: float, degrees: float) -> Point:
    """From `start` along a direction counted from straight up, forward positive."""
    turn = math.radians(degrees)
    return Point(start.x + length * math.sin(turn), start.y + length * math.cos(turn))


def beside(start: Point, forward_m: float, up_m: float, lean: float) -> Point:
    """From `start`, so far forward of and up along a line that leans."""
    return along(along(start, up_m, lean), forward_m, lean + 90)


def foot_up(body: Body, pitch: float) -> tuple[Point, Point, Point, Point]:
    """Heel, ball, toe and ankle of a foot whose heel is raised by `pitch` degrees about the ball; x from mid-foot."""
    ball = Point(body.ball - body.foot / 2, 0.0)
    toe = Point(body.foot / 2, 0.0)
    heel = along(ball, body.ball, pitch - 90)
    ankle = beside(heel, body.heel, body.ankle_height, pitch)
    return heel, ball, toe, ankle


def leg_up(body: Body, ankle: float, knee: float, pitch: float) -> Leg:
    """A leg from the floor up; angles in degrees."""
    heel, ball, toe, joint = foot_up(body, pitch)
    shank = ankle + pitch
    knee_at = along(joint, body.shank, shank)
    return Leg(heel, ball, toe, joint, knee_at, along(knee_at, body.thigh, shank - knee), pitch)


def _moved(leg: Leg, dx: float, dy: float = 0.0) -> Leg:
    heel, ball, toe, ankle, knee, hip = (Point(point.x + dx, point.y + dy) for point in leg.points)
    return Leg(heel, ball, toe, ankle, knee, hip, leg.pitch)


def turned_out(leg: Leg, share: float) -> Leg:
    """A leg turned out: what lies level shrinks to a share, as seen from the side."""
    heel, ball, toe, ankle, knee, hip = (Point(point.x * share, point.y) for point in leg.points)
    return Leg(heel, ball, toe, ankle, knee, hip, leg.pitch)


def _drop(body: Body, back: tuple[float, float, float], lean: float) -> float:
    """How far the ball of a back foot lies below the hip, m, at back hip, knee and ankle."""
    hip, knee, ankle = back
    return leg_up(body, ankle, knee, lean - hip + knee - ankle).hip.y


def _drop_slope(body: Body, back: tuple[float, float, float], lean: float) -> tuple[float, float, float]:
    """How `_drop` changes with back hip, knee and ankle, m a degree."""
    hip, knee, ankle = back
    leg = leg_up(body, ankle, knee, lean - hip + knee - ankle)
    # a joint nearer the hip keeps what is below it stiff; what turns is seen by how far it lies to the side
    turn = math.pi / 180
    return (
        (leg.hip.x - leg.ball.x) * turn,
        -(leg.knee.x - leg.ball.x) * turn,
        (leg.ankle.x - leg.ball.x) * turn,
    )


def closed_back_leg(body: Body, angles: Mapping[str, float], lean: float, height: float) -> tuple[float, float, float]:
    """Back hip, knee and ankle that put the ball on the floor, changed least (sum of squares) from the angles.

    Each turn goes to the nearest point of the constraint's tangent; a few turns reach rounding.
    """
    own = (angles["back_hip"], angles["back_knee"], angles["back_ankle"])
    at = own
    for _ in range(50):
        short = _drop(body, at, lean) - height
        slope = _drop_slope(body, at, lean)
        steep = sum(each * each for each in slope)
        if steep < 1e-15:  # a leg that hangs straight down: no small change moves the ball
            break
        pull = (sum(g * (x - x0) for g, x, x0 in zip(slope, at, own, strict=True)) - short) / steep
        new = (own[0] + pull * slope[0], own[1] + pull * slope[1], own[2] + pull * slope[2])
        done = max(abs(a - b) for a, b in zip(new, at, strict=True)) < 1e-11
        at = new
        if done:
            break
    return at


def legs_of(body: Body, angles: Mapping[str, float], contact: str, pitch: float) -> tuple[tuple[Leg, ...], float]:
    """The legs and the lean of the trunk; `pitch` is a wedge's, degrees."""
    if contact != "split":
        if contact == "toes":
            pitch = angles["trunk"] - angles["hip"] + angles["knee"] - angles["ankle"]
        leg = leg_up(body, angles["ankle"], angles["knee"], pitch)
        return (leg,), angles["hip"] - angles["knee"] + angles["ankle"] + pitch
    front = leg_up(body, angles["front_ankle"], angles["front_knee"], pitch)
    lean = angles["front_hip"] - angles["front_knee"] + angles["front_ankle"] + pitch
    hip, knee, ankle = angles["back_hip"], angles["back_knee"], angles["back_ankle"]
    back = leg_up(body, ankle, knee, lean - hip + knee - ankle)
    back = _moved(back, front.hip.x - back.hip.x, front.hip.y - back.hip.y)
    middle = (0.0 + back.ball.x) / 2
    return (_moved(front, -middle), _moved(back, -middle)), lean
