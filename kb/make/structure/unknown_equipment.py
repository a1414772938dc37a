"""A field names equipment that isn't in the library: `equipment`, `aid`, or a stand-in's `item`.

Why it matters: what isn't known is in no kit and has no stand-in, so the drill could never be done.

Wrong:

    aid: [wal]

Right:

    aid: [wall]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import known, unknown

__all__ = ["CODE", "HAND", "rule"]

CODE = "unknown-equipment"

HAND = "hand"
"""The one aid that is no equipment: one's own hand."""


def rule(library: Library) -> Iterator[Problem]:
    """Every item that is named and isn't there."""
    items = known(library, "equipment")
    for owner, path, name in _named(library):
        if name not in items:
            yield unknown(library, owner, path, CODE, "equipment", name)


def _named(library: Library) -> Iterator[tuple[str, str, str]]:
    for item in library.items.values():
        yield from ((item.id, f"stand_ins.{n}.item", other.item) for n, other in enumerate(item.stand_ins))
    for drill in library.drills.values():
        yield from ((drill.id, f"equipment.{n}", name) for n, name in enumerate(drill.equipment))
        yield from ((drill.id, f"aid.{n}", name) for n, name in enumerate(drill.aid) if name != HAND)
