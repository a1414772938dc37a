"""A prerequisite serves no lift that the drill serves: none of its group's members does, for one of the lifts.

Parts of a complex are prerequisites too. Drills to finish, on no path themselves, are left out.

Why it matters: a path to a lift uses only what serves that lift or a part of it. A drill whose prerequisite
doesn't can never be reached there.

Wrong:

    # jerk/push-press.md, lifts: [jerk]
    prerequisites: [overhead-squat]      # lifts: [snatch]

Right:

    prerequisites: [jerk-overhead-hold]
"""

from collections.abc import Iterator

from kb.dials import serves
from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import Stage

__all__ = ["CODE", "rule"]

CODE = "stray-prerequisite"


def rule(library: Library) -> Iterator[Problem]:
    """Every group of prerequisites, and every part, that a lift of its drill can't use."""
    for drill in library.drills.values():
        if drill.stage is Stage.FINISH:
            continue
        paths = [f"prerequisites.{n}" for n in range(len(drill.prerequisites))]
        paths += [f"made_of.{n}" for n in range(len(drill.made_of))]
        lifts = [library.lifts[lift] for lift in drill.lifts if lift in library.lifts]
        for path, group in zip(paths, drill.groups, strict=True):
            members = [library.drills[member] for member in group if member in library.drills]
            lacking = [lift.name.lower() for lift in lifts if not any(serves(member, lift) for member in members)]
            if members and lacking:
                named = " or ".join(f"`{member}`" for member in group)
                message = f"The {' and the '.join(lacking)} can't use {named}, which serves other lifts."
                help_ = "Name a drill that serves the lift, or add the lift to that drill's `lifts`."
                yield at(library, drill.id, path, CODE, message, help_)
