"""A cause names an earlier fault that isn't seen in every lift in which this fault is.

Why it matters: for a cause of kind earlier the chain is that of the earlier fault, in the same lift. Where
that fault isn't seen in the lift there is nothing to lead back to.

Wrong:

    # faults/jerk-rack-slips.md
    lifts: [jerk]
    causes:
      - {id: made-by-loop, kind: earlier, earlier: bar-loops-out, text: "..."}   # seen in the snatch and clean

Right:

    causes:
      - {id: made-by-dip, kind: earlier, earlier: jerk-dips-forward, text: "..."}
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "earlier-elsewhere"


def rule(library: Library) -> Iterator[Problem]:
    """Every earlier fault that is missing from a lift, or from the parts of one."""
    for fault in library.faults.values():
        for n, cause in enumerate(fault.causes):
            earlier = library.faults.get(cause.earlier) if cause.earlier else None
            if earlier is None:
                continue
            lifts = [library.lifts[lift] for lift in fault.lifts if lift in library.lifts]
            lacking = [lift.name.lower() for lift in lifts if not set(lift.serves) & set(earlier.lifts)]
            if lacking:
                message = f"`{earlier.id}` is no fault of the {' or the '.join(lacking)}, so it can't come first there."
                help_ = "Name a fault of the same lift, or add the lift to that fault."
                yield at(library, fault.id, f"causes.{n}.earlier", CODE, message, help_)
