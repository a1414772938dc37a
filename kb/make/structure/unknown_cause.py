"""A drill or a tell names a cause that its fault doesn't have.

Why it matters: a drill said to act on a cause that isn't there acts on none, so the chain for the real
cause lacks it; a tell that points to nothing separates nothing.

Wrong:

    faults: [{fault: hips-rise-first, cause: weak-legs}]

Right:

    faults: [{fault: hips-rise-first, cause: weak-legs-off-floor}]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.files import nearest
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import Fault

__all__ = ["CODE", "rule"]

CODE = "unknown-cause"


def rule(library: Library) -> Iterator[Problem]:
    """Every cause that is named and that its fault doesn't have."""
    for owner, path, fault, cause in _named(library):
        causes = [known.id for known in fault.causes]
        if cause not in causes:
            help_ = nearest(cause, causes) or f"Its causes are {', '.join(causes)}."
            yield at(library, owner, path, CODE, f"The fault `{fault.id}` has no cause `{cause}`.", help_)


def _named(library: Library) -> Iterator[tuple[str, str, Fault, str]]:
    for fault in library.faults.values():
        for n, tell in enumerate(fault.tells):
            yield from ((fault.id, f"tells.{n}.yes.{i}", fault, cause) for i, cause in enumerate(tell.yes))
            yield from ((fault.id, f"tells.{n}.no.{i}", fault, cause) for i, cause in enumerate(tell.no))
    for drill in library.drills.values():
        for n, said in enumerate(drill.faults):
            if said.cause is not None and said.fault in library.faults:
                yield drill.id, f"faults.{n}.cause", library.faults[said.fault], said.cause
