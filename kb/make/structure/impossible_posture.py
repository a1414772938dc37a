"""A fault's posture turns a joint its position hasn't got, leans the trunk where the legs don't, or differs in nothing.

Why it matters: the posture is drawn beside the position as it should be. Drawn from angles that no body takes,
or from the same ones, it teaches the wrong thing or none.

Wrong:

    posture: {position: jerk-split, angles: {knee: 20}}

Right:

    posture: {position: jerk-split, angles: {front_knee: 20, front_hip: 18}}
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.files import nearest
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import Angles, Fault, Position, Posture

__all__ = ["CODE", "rule"]

CODE = "impossible-posture"

ALWAYS = ("trunk", "shoulder", "elbow", "wrist", "back")
TOGETHER = ("ankle", "knee", "hip")
SPLIT = ("front_ankle", "front_knee", "front_hip", "back_ankle", "back_knee", "back_hip")

NEARLY = 1.0
"""How far the trunk may be from what the legs make it, degrees."""


def rule(library: Library) -> Iterator[Problem]:
    """Every posture of a fault that its position can't be turned into."""
    for fault in library.faults.values():
        if fault.posture is not None and fault.posture.position in library.positions:
            yield from _judged(library, fault, fault.posture, library.positions[fault.posture.position])


def _judged(library: Library, fault: Fault, posture: Posture, position: Position) -> Iterator[Problem]:
    contact = posture.contact or position.contact
    split = position.contact == "split"
    if posture.contact is not None and (contact == "split") != split:
        message = f"`{position.id}` is {'a split' if split else 'no split'}, and its posture's feet aren't the same."
        yield at(library, fault.id, "posture.contact", CODE, message, "Leave `contact` out.")
        return
    joints = (SPLIT if split else TOGETHER) + ALWAYS
    strange = [joint for joint in posture.angles if joint not in joints]
    for joint in strange:
        message = f"`{position.id}` has no joint `{joint}` of its own."
        yield at(library, fault.id, f"posture.angles.{joint}", CODE, message, nearest(joint, joints))
    if strange:
        return
    if _same(posture, position):
        message = f"The posture says nothing that `{position.id}` doesn't."
        yield at(library, fault.id, "posture", CODE, message, "Say what differs, or leave it out.")
    lean = _lean({**position.angles, **posture.angles})
    said = posture.angles.get("trunk", lean)
    if contact != "toes" and abs(said - lean) > NEARLY:
        message = f"The trunk leans {said:g} degrees, and the legs make it {lean:g}."
        yield at(library, fault.id, "posture.angles.trunk", CODE, message, "Leave `trunk` out, or mend the hip.")


def _same(posture: Posture, position: Position) -> bool:
    moved = any(degrees != position.angles.get(joint, 0.0) for joint, degrees in posture.angles.items())
    elsewhere = posture.at not in (None, position.bar) or posture.contact not in (None, position.contact)
    return not moved and not elsewhere


def _lean(angles: Angles) -> float:
    """The trunk's lean as the standing leg makes it from a flat foot up, degrees."""
    leg = "front_" if "front_knee" in angles else ""
    return angles[f"{leg}hip"] - angles[f"{leg}knee"] + angles[f"{leg}ankle"]
