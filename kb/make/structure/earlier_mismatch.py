"""A cause says `earlier` without being of kind earlier, or is of that kind and doesn't say which fault.

Why it matters: of an earlier cause the chain is that of the earlier fault; without it there is none.

Wrong:

    - {id: made-by-drift, kind: earlier, text: "The bar is already in front."}

Right:

    - {id: made-by-drift, kind: earlier, earlier: bar-drifts-forward, text: "The bar is already in front."}
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "earlier-mismatch"


def rule(library: Library) -> Iterator[Problem]:
    """Every cause whose kind and `earlier` don't go together."""
    for fault in library.faults.values():
        for n, cause in enumerate(fault.causes):
            if cause.kind == "earlier" and cause.earlier is None:
                message = f"The cause `{cause.id}` is of kind earlier, and doesn't say which fault comes first."
                yield at(library, fault.id, f"causes.{n}.kind", CODE, message, "Add `earlier:` and the fault's id.")
            elif cause.kind != "earlier" and cause.earlier is not None:
                message = f"The cause `{cause.id}` names an earlier fault, and is of kind {cause.kind}."
                help_ = "Make its kind earlier, or leave `earlier` out."
                yield at(library, fault.id, f"causes.{n}.earlier", CODE, message, help_)
