"""Centre of mass of lifter and bar, and whether it lies over the foot.

A foot's centre lies, as Winter has it, half-way from ankle to ball; in de Leva's tables the given share of the way
from heel to toe, half the ankle's height up. A hand's lies on the line from wrist through the bar.

References
----------
Winter DA (2009). Biomechanics and motor control of human movement, 4th ed., tab. 4.1. Wiley.
de Leva P (1996). Adjustments to Zatsiorsky-Seluyanov's segment inertia parameters. J Biomech 29, tab. 4.
"""

import math
from typing import NamedTuple

from kb.body.pose import Leg, Point, Pose
from kb.body.proportions import Body

__all__ = ["Balance", "balance", "base_of", "centre_of_mass", "segment_centres"]


def _between(near: Point, far: Point, share: float) -> Point:
    return Point(near.x + share * (far.x - near.x), near.y + share * (far.y - near.y))


def _foot_centre(body: Body, leg: Leg, share: float) -> Point:
    if body.table == "winter":
        return _between(leg.ankle, leg.ball, share)
    along = share * body.foot
    # on a raised heel what lies behind the ball turns about it, what lies before stays on the floor
    ahead = max(0.0, along - body.ball)
    turn = math.radians(leg.pitch)
    back = min(along, body.ball) - body.ball
    up = body.ankle_height / 2
    return Point(
        leg.ball.x + ahead + back * math.cos(turn) + up * math.sin(turn),
        leg.ball.y - back * math.sin(turn) + up * math.cos(turn),
    )


def segment_centres(body: Body, pose: Pose) -> list[tuple[str, float, Point]]:
    """Name, mass (kg, both sides together) and centre of each segment; in a split each leg's on its own."""
    shares = body.shares
    found: list[tuple[str, float, Point]] = []

    def put(name: str, times: int, at: Point) -> None:
        found.append((name, times * shares[name].mass / body.whole * body.mass, at))

    each = 2 // len(pose.legs)
    for leg in pose.legs:
        put("foot", each, _foot_centre(body, leg, shares["foot"].centre))
        put("shank", each, _between(leg.knee, leg.ankle, shares["shank"].centre))
        put("thigh", each, _between(leg.hip, leg.knee, shares["thigh"].centre))
    put("trunk", 1, _between(pose.hip, pose.shoulder, shares["trunk"].centre))
    put("head", 1, _between(pose.shoulder, pose.vertex, shares["head"].centre))
    put("upper_arm", 2, _between(pose.shoulder, pose.elbow, shares["upper_arm"].centre))
    put("forearm", 2, _between(pose.elbow, pose.wrist, shares["forearm"].centre))
    grip = math.dist(pose.wrist, pose.bar)
    share = shares["hand"].centre * body.hand * math.cos(math.radians(pose.spread)) / grip if grip else 0.0
    put("hand", 2, _between(pose.wrist, pose.bar, share))
    return found


def centre_of_mass(body: Body, pose: Pose, *, bar_kg: float = 0.0) -> Point:
    """Centre of mass of the lifter and a bar of that mass."""
    parts = [(mass, at) for _, mass, at in segment_centres(body, pose)] + [(bar_kg, pose.bar)]
    whole = sum(mass for mass, _ in parts)
    return Point(sum(mass * at.x for mass, at in parts) / whole, sum(mass * at.y for mass, at in parts) / whole)


def base_of(pose: Pose) -> tuple[float, float]:
    """The stretch of floor under the feet, m: from the hindmost to the foremost point that is down."""
    touching = [
        point for leg in pose.legs for point in (leg.heel, leg.ball, leg.toe) if leg.pitch <= 0 or point.y < 1e-6
    ]
    return min(point.x for point in touching), max(point.x for point in touching)


class Balance(NamedTuple):
    """Where lifter and bar weigh on the floor: `at` m from mid-foot (forward positive), the base, inside or not."""

    at: float
    back: float
    front: float

    @property
    def inside(self) -> bool:
        """Whether the centre of mass lies over the base."""
        return self.back <= self.at <= self.front


def balance(body: Body, pose: Pose, *, bar_kg: float = 0.0) -> Balance:
    """Centre of mass of lifter and bar against the feet."""
    back, front = base_of(pose)
    return Balance(centre_of_mass(body, pose, bar_kg=bar_kg).x, back, front)
