"""A field names a drill that isn't there: `prerequisites`, `made_of`, `regressions`, `drill` or `checkpoints`.

Why it matters: a prerequisite that doesn't exist can never be held, so nothing built on it could be taught.

Wrong:

    prerequisites: [over-head-squat]

Right:

    prerequisites: [overhead-squat]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import known, unknown

__all__ = ["CODE", "rule"]

CODE = "unknown-drill"


def rule(library: Library) -> Iterator[Problem]:
    """Every drill that is named and isn't there."""
    drills = known(library, "drill")
    for owner, path, name in _named(library):
        if name not in drills:
            yield unknown(library, owner, path, CODE, "drill", name)


def _named(library: Library) -> Iterator[tuple[str, str, str]]:
    for lift in library.lifts.values():
        yield lift.id, "drill", lift.drill
        yield from ((lift.id, f"checkpoints.{n}", drill) for n, drill in enumerate(lift.checkpoints))
    for fault in library.faults.values():
        for n, tell in enumerate(fault.tells):
            if tell.drill:
                yield fault.id, f"tells.{n}.drill", tell.drill
    for drill in library.drills.values():
        for n, group in enumerate(drill.prerequisites):
            yield from ((drill.id, f"prerequisites.{n}.{i}", member) for i, member in enumerate(group))
        yield from ((drill.id, f"made_of.{n}", part) for n, part in enumerate(drill.made_of))
        yield from ((drill.id, f"regressions.{n}.drill", said.drill) for n, said in enumerate(drill.regressions))
