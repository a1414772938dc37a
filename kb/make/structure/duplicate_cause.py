"""Two causes of one fault have the same id.

Why it matters: drills and tells name a cause by its id within the fault; if two share one, a chain acts on
whichever comes first.

Wrong:

    causes:
      - {id: stiff, kind: mobility, text: "The ankles stop short."}
      - {id: stiff, kind: mobility, text: "The shoulders stop short."}

Right:

    causes:
      - {id: stiff-ankles, kind: mobility, text: "The ankles stop short."}
      - {id: stiff-shoulders, kind: mobility, text: "The shoulders stop short."}
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "duplicate-cause"


def rule(library: Library) -> Iterator[Problem]:
    """Every cause whose id an earlier cause of its fault has."""
    for fault in library.faults.values():
        seen: set[str] = set()
        for n, cause in enumerate(fault.causes):
            if cause.id in seen:
                message = f"`{cause.id}` is already the id of another cause of this fault."
                yield at(library, fault.id, f"causes.{n}.id", CODE, message, "Give each cause an id of its own.")
            seen.add(cause.id)
