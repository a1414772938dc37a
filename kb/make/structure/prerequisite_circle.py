"""Drills wait for one another, so that none of them can ever come first.

Prerequisites, and the parts of a complex, must all be held; of an inner list any one will do. A circle
is harmless where an inner list has another member; it is a problem where no way in is left. The shortest
circle is shown.

Why it matters: nobody could ever begin any of them, nor anything built on them.

Wrong:

    # pull/slow-lift-off.md
    prerequisites: [floor-pull]
    # pull/floor-pull.md
    prerequisites: [slow-lift-off]

Right:

    # pull/slow-lift-off.md
    prerequisites: [start-hold]
    # pull/floor-pull.md
    prerequisites: [slow-lift-off]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.order import reached
from kb.make.structure.circles import circles
from kb.make.structure.known import at
from kb.terms import Drill, DrillId

__all__ = ["CODE", "needs", "rule"]

CODE = "prerequisite-circle"


def needs(library: Library) -> dict[str, list[tuple[DrillId, ...]]]:
    """What each drill needs first; a group with a member that isn't known well enough counts as met."""
    drills = library.drills
    return {
        drill.id: [group for group in drill.groups if all(member in drills for member in group)]
        for drill in drills.values()
    }


def rule(library: Library) -> Iterator[Problem]:
    """Every circle of drills that no way leads into, each drill in at most one."""
    groups = needs(library)
    stuck = groups.keys() - reached(groups)
    waits = {
        id_: {member for group in groups[id_] if stuck.issuperset(group) for member in group} for id_ in sorted(stuck)
    }
    for circle in circles(waits):
        first, then = circle[0], circle[1 % len(circle)]
        told = ", which needs ".join(f"`{drill}`" for drill in (*circle[1:], first))
        message = f"`{first}` needs {told}: none of them can ever come first."
        help_ = "Take one of these prerequisites away, or give it an alternative in an inner list."
        yield at(library, first, _where(library.drills[DrillId(first)], then), CODE, message, help_)


def _where(drill: Drill, member: str) -> str:
    """The path at which a drill says that it needs another."""
    for n, group in enumerate(drill.prerequisites):
        for i, name in enumerate(group):
            if name == member:
                return f"prerequisites.{n}.{i}"
    return f"made_of.{drill.made_of.index(DrillId(member))}"
