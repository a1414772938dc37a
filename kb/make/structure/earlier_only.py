"""Every cause of a fault is that another fault comes earlier.

Why it matters: the chain for an earlier cause is built for the first cause of the earlier fault that isn't
itself earlier. A fault that has none sends the question on and on.

Wrong:

    causes:
      - {id: made-by-loop, kind: earlier, earlier: bar-loops-out, text: "The bar swings out first."}

Right:

    causes:
      - {id: late-under, kind: timing, text: "The pull under starts late."}
      - {id: made-by-loop, kind: earlier, earlier: bar-loops-out, text: "The bar swings out first."}
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "earlier-only"


def rule(library: Library) -> Iterator[Problem]:
    """Every fault without a cause of its own."""
    for fault in library.faults.values():
        if all(cause.kind == "earlier" for cause in fault.causes):
            message = "Every cause of this fault is another fault, so there is nothing to work on."
            yield at(library, fault.id, "causes", CODE, message, "Add a cause that isn't of kind earlier.")
