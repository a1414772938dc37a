"""The body's parts from a pose: legs with shoes, a trunk with some body, neck and head, arms with fists.

The joints are the pose's own; only the flesh about them is drawn here, for an adult of no particular sex.
"""

import math

from kb.body.pose import Leg, Point, Pose
from kb.show.figure.outline import Round, between, chain, circle

__all__ = ["arm", "head", "leg", "trunk"]


def _between(one: Point, other: Point, share: float) -> Point:
    return Point(one.x + (other.x - one.x) * share, one.y + (other.y - one.y) * share)


def _beside(point: Point, along: Point, forward: float) -> Point:
    """A point moved at a right angle to a direction that goes up, forward positive, m."""
    length = math.hypot(along.x, along.y) or 1.0
    return Point(point.x + along.y / length * forward, point.y - along.x / length * forward)


def _direction(one: Point, other: Point) -> Point:
    return Point(other.x - one.x, other.y - one.y)


def leg(of: Leg) -> tuple[str, str, str]:
    """Shoe, shank and thigh, in the order in which they are drawn."""
    up = _direction(of.ankle, of.knee)
    calf = _beside(_between(of.ankle, of.knee, 0.66), up, -0.012)
    shank = chain([Round(of.ankle, 3.7), Round(calf, 5.5), Round(of.knee, 5.0)])
    along = _direction(of.knee, of.hip)
    front = _beside(_between(of.knee, of.hip, 0.62), along, 0.004)
    thigh = chain([Round(of.knee, 5.6), Round(front, 8.2), Round(of.hip, 9.2)])
    return _shoe(of), shank, thigh


def _shoe(of: Leg) -> str:
    """A shoe with a heel: flat, or bent at the ball when the heel is up."""
    sole = _direction(of.heel, of.ball)
    heel = _beside(_between(of.heel, of.ball, 0.12), sole, -0.030)
    ball = Point(of.ball.x, of.ball.y + 0.030)
    toe = Point(of.toe.x - 0.022, of.toe.y + 0.022)
    around = [Round(of.ankle, 3.9), Round(heel, 3.0), Round(ball, 3.0), Round(toe, 2.2)]
    return chain(around) + between(around[0], around[2])


def trunk(pose: Pose) -> str:
    """Seat, waist, chest and shoulder; `back` among the angles rounds it (or hollows it, if negative), degrees."""
    up = _direction(pose.hip, pose.shoulder)
    length = math.hypot(up.x, up.y)
    bow = length / 2 * math.tan(math.radians(pose.angles.get("back", 0.0)) / 4)

    def spine(share: float, forward: float) -> Point:
        return _beside(_between(pose.hip, pose.shoulder, share), up, forward - bow * 4 * share * (1 - share))

    return chain(
        [
            Round(spine(0.0, -0.022), 11.0),
            Round(spine(0.40, 0.004), 9.2),
            Round(spine(0.74, 0.006), 11.2),
            Round(spine(0.96, -0.004), 8.0),
        ]
    )


def head(pose: Pose) -> str:
    """Neck and head, with enough of a nose to see where it faces."""
    up = _direction(pose.shoulder, pose.vertex)
    top = math.hypot(up.x, up.y) or 1.0
    middle = _beside(_between(pose.shoulder, pose.vertex, 1 - 0.098 / top), up, 0.026)
    jaw = _beside(_between(pose.shoulder, pose.vertex, 1 - 0.170 / top), up, 0.064)
    nose = _beside(_between(pose.shoulder, pose.vertex, 1 - 0.125 / top), up, 0.124)
    nape = _beside(_between(pose.shoulder, pose.vertex, 0.10), up, -0.004)
    neck, skull = [Round(nape, 5.6), Round(middle, 5.6)], [Round(middle, 9.8), Round(jaw, 4.4), Round(nose, 1.3)]
    return chain(neck) + chain(skull)


def arm(pose: Pose) -> tuple[str, str]:
    """Upper arm; forearm with the fist about the bar."""
    upper = chain([Round(pose.shoulder, 6.4), Round(pose.elbow, 4.3)])
    fore = chain([Round(pose.elbow, 4.2), Round(pose.wrist, 3.0), Round(pose.bar, 3.6)])
    return upper, fore + circle(pose.bar, 3.9)
