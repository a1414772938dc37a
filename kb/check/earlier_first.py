"""The first cause of a fault is an earlier fault, though it has causes of its own.

Why it matters: the causes stand commonest first, and where none is named the first one is answered. That
answer should be about what was asked, not about another fault.

Wrong:

    causes:
      - {id: made-by-loop, kind: earlier, earlier: bar-loops-out, text: "The bar swings out first."}
      - {id: late-under, kind: timing, text: "The pull under starts late."}

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

CODE = "earlier-first"


def rule(library: Library) -> Iterator[Problem]:
    """Every fault whose first cause is another fault, when it needn't be."""
    for fault in library.faults.values():
        own = next((cause.id for cause in fault.causes if cause.kind != "earlier"), None)
        if own is not None and fault.causes[0].kind == "earlier":
            message = f"The first cause is another fault, `{fault.causes[0].earlier}`."
            yield at(library, fault.id, "causes.0", CODE, message, f"Put `{own}` first.")
