"""A position's angles don't fit together, or don't reach what the position says.

With flat feet the trunk leans by hip - knee + ankle; in a split that holds for the front leg, and the back leg must
reach the floor; with the bar on the floor the hands must get to it. Three degrees, five in the back leg and three
centimetres are let pass: so much is lost in writing whole degrees.

Why it matters: the figure is drawn from the legs up, so one of the angles would not be what is drawn.

Wrong:

    angles: {ankle: 40, knee: 137, hip: 119, trunk: 35, shoulder: 200, elbow: 0, wrist: 30}

Right:

    angles: {ankle: 40, knee: 137, hip: 119, trunk: 22, shoulder: 200, elbow: 0, wrist: 30}
"""

from collections.abc import Iterator

from kb.body.pose import DISC_RADIUS, drawable, forward
from kb.body.proportions import USUAL
from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "angles-disagree"

LEAN_DEG, BACK_LEG_DEG, HANDS_M = 3.0, 5.0, 0.03
"""What is let pass."""


def rule(library: Library) -> Iterator[Problem]:
    """Every position whose trunk, back leg or hands are not where its other angles put them."""
    for position in filter(drawable, library.positions.values()):
        pose = forward(USUAL, position)
        own = position.angles["trunk"]
        if abs(pose.lean - own) > LEAN_DEG:
            legs = "the front leg's angles" if position.contact == "split" else "hip - knee + ankle"
            message = f"The trunk leans {own:g} degrees, but {legs} make {pose.lean:.0f}."
            yield at(library, position.id, "angles", CODE, message, "Mend one of the four.")
        if pose.closed > BACK_LEG_DEG:
            message = f"The back foot reaches the floor only if its leg changes by {pose.closed:.0f} degrees."
            yield at(library, position.id, "angles", CODE, message, "Mend back_hip, back_knee or back_ankle.")
        if position.bar == "floor" and abs(off := pose.bar.y - DISC_RADIUS) > HANDS_M:
            message = f"The bar is on the floor, and the hands are {abs(off) * 100:.0f} cm {_side(off)} it."
            yield at(library, position.id, "angles", CODE, message, "Bend or straighten the legs, or lean the trunk.")


def _side(off: float) -> str:
    return "above" if off > 0 else "below"
