"""How a fault looks as a position: the one it is compared with, with what differs put in."""

from kb.terms import Angles, Position, Posture

__all__ = ["taken"]


def taken(posture: Posture, position: Position) -> Position:
    """The position as the fault takes it.

    The trunk leans as the legs make it, unless the posture says its lean; with the heels lifted, the foot turns
    until the trunk has the lean said, or the position's own.
    """
    angles = {**position.angles, **posture.angles}
    contact = posture.contact or position.contact
    if "trunk" not in posture.angles and contact != "toes":
        angles["trunk"] = _lean(angles)
    return position._replace(angles=angles, contact=contact, bar=posture.at or position.bar)


def _lean(angles: Angles) -> float:
    leg = "front_" if "front_knee" in angles else ""
    return angles[f"{leg}hip"] - angles[f"{leg}knee"] + angles[f"{leg}ankle"]
