"""A drill leaves out a point that isn't inside its reach, or every point that is.

Why it matters: to leave out is to pass over a point on the way from the first to the last. Outside the
reach there is nothing to pass over, and a drill that leaves out everything is nowhere.

Wrong:

    reach: [extension, receive]
    leaves_out: [knee]

Right:

    reach: [extension, receive]
    leaves_out: [extension]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.make.structure.visits import visited, within

__all__ = ["CODE", "rule"]

CODE = "leaves-out"


def rule(library: Library) -> Iterator[Problem]:
    """Every point left out that can't be, and every drill that leaves out all there is."""
    for drill in library.drills.values():
        inside = {lift: within(drill, lift, library) for lift in drill.lifts}
        # where a lift or a reach isn't sound, that is what must be mended first
        if not drill.leaves_out or not all(inside.values()):
            continue
        for n, point in enumerate(drill.leaves_out):
            if not any(point in names for names in inside.values()):
                message = f"`{point}` isn't inside the reach, so it can't be left out."
                yield at(library, drill.id, f"leaves_out.{n}", CODE, message, "Take it out, or mend `reach`.")
        for lift in drill.lifts:
            if not visited(drill, lift, library):
                message = f"Everything inside the reach on `{lift}` is left out."
                yield at(library, drill.id, "leaves_out", CODE, message, "Leave out less.")
