"""A position's angles put the bar inside a limb or the trunk.

The bar may press into flesh: only the core counts, half the way from the middle of thigh, trunk or neck to the skin,
and the shin's whole front, which is bone (`kb/body/touch.py`).

Why it matters: a bar drawn through the shin or the thigh shows a path that no bar can take.

Wrong:

    angles: {ankle: 22, knee: 46, hip: 32, trunk: 8, shoulder: 8, elbow: 0, wrist: 0}     # bar: thigh

Right:

    angles: {ankle: 22, knee: 46, hip: 32, trunk: 8, shoulder: 15, elbow: 0, wrist: 0}
"""

from collections.abc import Iterator

from kb.body.pose import drawable, forward
from kb.body.proportions import USUAL
from kb.body.touch import through
from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "bar-through-body"

PARTS = {"shank": "shin", "thigh": "thigh", "trunk": "trunk", "head": "neck or head"}


def rule(library: Library) -> Iterator[Problem]:
    """Every position whose bar lies in a part of the body."""
    for position in filter(drawable, library.positions.values()):
        for near in through(USUAL, forward(USUAL, position)):
            message = (
                f"The bar's centre is {near.distance * 100:.1f} cm from the middle of the {PARTS[near.part]}; nearer"
                f" than {near.least * 100:.1f} it would be inside."
            )
            help_ = "Bring the arms forward (`shoulder`), or that part of the body back."
            yield at(library, position.id, "angles", CODE, message, help_)
