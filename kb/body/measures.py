"""What a tape measure and a wall say of joints, and what is put under or beside the feet: plain geometry.

Nothing here scales one test by another's ratio. "3.6 degrees a centimetre" for the lunge is a ratio at some ten
centimetres and no slope: at 0 cm the ankle is already bent some 20 degrees.
"""

import math

from kb.body.proportions import GRIP, Body
from kb.errors import BadInput

__all__ = [
    "KNEECAP",
    "UPPER_BACK",
    "ankle_from_wall",
    "depth_from_squat",
    "hinge_from_shoulder",
    "rack_from_elbow",
    "reach_from_wall",
    "wall_from_ankle",
    "wedge_degrees",
]

KNEECAP = 0.025
"""Centre of the knee to the front of the kneecap, share of stature. No source; with it the lunge's published mean
distance gives the published mean angle within two degrees."""

UPPER_BACK = 20.0
"""What the upper back adds to the shoulder once the hands reach the wall, degrees. Common practice, no source; a wall
can't show what lies beyond it."""

ELBOWS_OUT = 25.0
"""How far the upper arms go out to the side in a rack, degrees (as in `kb.body.pose`)."""


def _angle(share: float, what: str, turn: float = 0.0) -> float:
    if not abs(share) <= 1:
        raise BadInput(f"{what} can't be on a body of these lengths: measure again, or give its inseam and span")
    return math.degrees(math.asin(share)) + turn


def ankle_from_wall(body: Body, toe_to_wall_cm: float) -> float:
    """How far the shank leans, degrees, when the knee just touches a wall so far from the toes, heel down.

    >>> from kb.body.proportions import USUAL
    >>> round(ankle_from_wall(USUAL, 11.7), 1)
    39.3
    """
    ahead = body.foot - body.heel + toe_to_wall_cm / 100 - KNEECAP * body.stature
    return _angle(ahead / body.shank, f"{toe_to_wall_cm:g} cm from toe to wall")


def wall_from_ankle(body: Body, ankle: float) -> float:
    """The other way: the distance from toe to wall, cm, at that lean of the shank."""
    ahead = body.shank * math.sin(math.radians(ankle))
    return (ahead - body.foot + body.heel + KNEECAP * body.stature) * 100


def reach_from_wall(body: Body, gap_cm: float) -> float:
    """How far the shoulder goes overhead, degrees, the upper back included.

    Seat, upper back and head against the wall, arms straight up beside the ears, thumbs towards the wall: `gap_cm`
    is from the wall to the nearest knuckle.
    """
    arm = body.upper_arm + body.forearm + GRIP * body.hand
    return 180 - _angle(gap_cm / 100 / arm, f"{gap_cm:g} cm from wall to knuckles") + UPPER_BACK


def rack_from_elbow(body: Body, below_cm: float) -> float:
    """How far the shoulder goes in the rack, degrees, standing upright with the elbows as high as they go.

    `below_cm` is how far the point of the elbow is below the bony top of the shoulder; above it, negative.
    """
    arm = body.upper_arm * math.cos(math.radians(ELBOWS_OUT))
    return 90 - _angle(below_cm / 100 / arm, f"elbows {below_cm:g} cm below the shoulder")


def hinge_from_shoulder(body: Body, shoulder_cm: float) -> float:
    """How far the hip bends in a hinge with the back flat and the knees a little bent, degrees.

    `shoulder_cm` is the height of the bony top of the shoulder at the lowest point. Shanks stay upright, knees bend
    by `kb.body.limits.HINGE_KNEE`, so that hip = lean + that bend.
    """
    from kb.body.limits import HINGE_KNEE

    hip = body.ankle_height + body.shank + body.thigh * math.cos(math.radians(HINGE_KNEE))
    share = (shoulder_cm / 100 - hip) / body.trunk
    return 90 - _angle(share, f"a shoulder {shoulder_cm:g} cm high in the hinge") + HINGE_KNEE


def depth_from_squat(body: Body, above_cm: float) -> float:
    """How deep the thighs go, degrees from the vertical, in the deepest squat with the heels down.

    `above_cm` is how far the hip joint (the knob at the side) is above the middle of the knee; below, negative.
    """
    return 90 - _angle(above_cm / 100 / body.thigh, f"a hip {above_cm:g} cm above the knee")


def wedge_degrees(body: Body, height_mm: float) -> float:
    """How far a wedge under the heels turns the foot, degrees: its height over heel to ball.

    >>> from kb.body.proportions import USUAL
    >>> round(wedge_degrees(USUAL, 25), 2)
    7.4
    """
    return _angle(height_mm / 1000 / body.ball, f"a wedge of {height_mm:g} mm")
