"""A position's own angles don't balance: the weight isn't over the feet.

The centre of mass is that of a usual body (`kb/body/proportions.py`), once with empty hands and once with a bar as
heavy as the lifter, and has to stay two centimetres inside heel and toe. On the toes nothing is asked: full extension
and the drive are passed through, faster than one can fall.

Why it matters: a figure that would fall teaches a posture that can't be held.

Wrong:

    angles: {ankle: 4, knee: 0, hip: 26, trunk: 30, shoulder: 180, elbow: 0, wrist: 30}     # overhead, leaning

Right:

    angles: {ankle: 4, knee: 0, hip: -4, trunk: 0, shoulder: 180, elbow: 0, wrist: 30}
"""

from collections.abc import Iterator

from kb.body.balance import balance
from kb.body.pose import drawable, forward
from kb.body.proportions import USUAL
from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "MARGIN_M", "rule"]

CODE = "off-balance"

MARGIN_M = 0.02
"""How far inside heel and toe the weight has to be."""


def rule(library: Library) -> Iterator[Problem]:
    """Every position on flat feet, or in a split, that would fall forward or back."""
    for position in library.positions.values():
        if position.contact == "toes" or not drawable(position):
            continue
        pose = forward(USUAL, position)
        for bar_kg, hands in ((0.0, "empty hands"), (USUAL.mass, "a bar as heavy as the lifter")):
            found = balance(USUAL, pose, bar_kg=bar_kg)
            past = max(found.back + MARGIN_M - found.at, found.at - found.front + MARGIN_M)
            if past > 0:
                end = "heels" if found.at < 0 else "toes"
                message = f"With {hands} the weight is {past * 100:.0f} cm too near the {end} to stand."
                help_ = "Lean the trunk, or bend the legs, until it is over the foot."
                yield at(library, position.id, "angles", CODE, message, help_)
                break
