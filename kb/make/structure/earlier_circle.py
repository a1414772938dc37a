"""Faults make one another in a circle: each is said to come earlier than the next.

Why it matters: earlier means seen before in the lift. Two faults can't each come before the other, and a
coach sent round in a circle mends neither. The shortest circle is shown.

Wrong:

    # faults/bar-loops-out.md
    - {id: made-by-jump, kind: earlier, earlier: jumps-forward, text: "The lifter jumps after it."}
    # faults/jumps-forward.md
    - {id: made-by-loop, kind: earlier, earlier: bar-loops-out, text: "The bar drags the lifter forward."}

Right:

    # faults/jumps-forward.md, and nothing the other way
    - {id: made-by-loop, kind: earlier, earlier: bar-loops-out, text: "The bar drags the lifter forward."}
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.circles import circles
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "earlier-circle"


def rule(library: Library) -> Iterator[Problem]:
    """Every circle of faults that make one another, each fault in at most one."""
    made_by: dict[str, dict[str, str]] = {}
    for fault in library.faults.values():
        edges = {str(cause.earlier): f"causes.{n}.earlier" for n, cause in enumerate(fault.causes) if cause.earlier}
        made_by[fault.id] = {earlier: path for earlier, path in edges.items() if earlier in library.faults}
    for circle in circles(made_by):
        told = ", which is made by ".join(f"`{fault}`" for fault in (*circle, circle[0]))
        message = f"Each comes before the other: {told}."
        path = made_by[circle[0]][circle[1 % len(circle)]]
        yield at(library, circle[0], path, CODE, message, "Take one of these causes away.")
