"""An item is said to stand in for itself.

Why it matters: a stand-in is what is picked up when the item isn't there, so it can't be the same.

Wrong:

    # equipment/bench.md
    stand_ins: [{item: bench, lost: "nothing"}]

Right:

    # equipment/bench.md
    stand_ins: [{item: box, lost: "length"}]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "stand-in-of-itself"


def rule(library: Library) -> Iterator[Problem]:
    """Every stand-in that is the item."""
    for item in library.items.values():
        for n, stand_in in enumerate(item.stand_ins):
            if stand_in.item == item.id:
                message = f"`{item.id}` can't stand in for itself."
                yield at(library, item.id, f"stand_ins.{n}.item", CODE, message, "Take it out.")
