"""A field names a fault that isn't in the library: a drill's `faults`, `look_alikes`, or a cause's `earlier`.

Why it matters: a drill that addresses a fault nobody knows is never offered for it.

Wrong:

    faults: [hips-rise-frist]

Right:

    faults: [hips-rise-first]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import known, unknown

__all__ = ["CODE", "rule"]

CODE = "unknown-fault"


def rule(library: Library) -> Iterator[Problem]:
    """Every fault that is named and isn't there."""
    faults = known(library, "fault")
    for owner, path, name in _named(library):
        if name not in faults:
            yield unknown(library, owner, path, CODE, "fault", name)


def _named(library: Library) -> Iterator[tuple[str, str, str]]:
    for fault in library.faults.values():
        yield from ((fault.id, f"look_alikes.{n}", other) for n, other in enumerate(fault.look_alikes))
        for n, cause in enumerate(fault.causes):
            if cause.earlier:
                yield fault.id, f"causes.{n}.earlier", cause.earlier
    for drill in library.drills.values():
        yield from ((drill.id, f"faults.{n}.fault", said.fault) for n, said in enumerate(drill.faults))
