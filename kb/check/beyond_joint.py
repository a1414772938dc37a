"""A position bends a joint further than any joint goes.

The limits are wide: published norms of supple people, and a little more (`kb/body/limits.py`). The shoulder overhead is
counted from the trunk and includes the upper back, so it may pass 180.

Why it matters: an included angle (straight is 180) written where flexion is meant (straight is 0) draws a figure that
nobody can copy.

Wrong:

    angles: {ankle: 4, knee: 180, hip: 180, trunk: 0, shoulder: 180, elbow: 0, wrist: 30}

Right:

    angles: {ankle: 4, knee: 0, hip: -4, trunk: 0, shoulder: 180, elbow: 0, wrist: 30}
"""

from collections.abc import Iterator

from kb.body.limits import NOBODY
from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "beyond-joint"


def rule(library: Library) -> Iterator[Problem]:
    """Every angle that lies outside what a joint does."""
    for position in library.positions.values():
        for joint, degrees in position.angles.items():
            least, most = NOBODY[joint.rpartition("_")[2]]
            if not least <= degrees <= most:
                message = f"`{joint}` is {degrees:g} degrees; no joint goes outside {least:g} to {most:g}."
                help_ = "Degrees count from standing straight, bending positive."
                yield at(library, position.id, f"angles.{joint}", CODE, message, help_)
