"""A field names a lift that isn't in the library: `lifts`, `parts`, `load_from`, or a map by lift.

Why it matters: a drill or fault that serves a lift nobody knows is never found from it, and nobody notices.

Wrong:

    lifts: [snatch, cleen]

Right:

    lifts: [snatch, clean]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import known, unknown

__all__ = ["CODE", "rule"]

CODE = "unknown-lift"


def rule(library: Library) -> Iterator[Problem]:
    """Every lift that is named and isn't there."""
    lifts = known(library, "lift")
    for owner, path, name in _named(library):
        if name not in lifts:
            yield unknown(library, owner, path, CODE, "lift", name)


def _named(library: Library) -> Iterator[tuple[str, str, str]]:
    for lift in library.lifts.values():
        yield from ((lift.id, f"parts.{n}", part) for n, part in enumerate(lift.parts))
    for fault in library.faults.values():
        yield from ((fault.id, f"lifts.{n}", name) for n, name in enumerate(fault.lifts))
    for drill in library.drills.values():
        yield from ((drill.id, f"lifts.{n}", name) for n, name in enumerate(drill.lifts))
        # a value that stands for all lifts was given to each of them: `lifts` has said those already
        for field, by_lift in (("reach", drill.reach), ("target_position", drill.target_position)):
            yield from ((drill.id, f"{field}.{name}", name) for name in by_lift if name not in drill.lifts)
        if drill.load_from:
            yield drill.id, "load_from.lift", drill.load_from.lift
