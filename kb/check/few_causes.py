"""A fault has fewer than two causes, or all its causes are of one kind.

Why it matters: the same fault is seen in a lifter who is stiff, one who is weak and one who never understood.
A fault with one cause sends all three to the same drill, and a coach learns nothing by looking closer.

Wrong:

    causes:
      - {id: stiff-ankles, kind: mobility, text: "The ankles stop short."}

Right:

    causes:
      - {id: stiff-ankles, kind: mobility, text: "The ankles stop short."}
      - {id: lost-mid-foot, kind: position-sense, text: "The weight runs to the toes unnoticed."}
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "few-causes"


def rule(library: Library) -> Iterator[Problem]:
    """Every fault that has only one cause, or only one kind of cause."""
    for fault in library.faults.values():
        kinds = {cause.kind for cause in fault.causes}
        if len(fault.causes) < 2:
            message = "There is only one cause, and no fault has only one."
            yield at(library, fault.id, "causes", CODE, message, "Add the next commonest, of another kind.")
        elif len(kinds) < 2:
            message = f"Every cause is of kind {fault.causes[0].kind}."
            yield at(library, fault.id, "causes", CODE, message, "Add one of another kind.")
