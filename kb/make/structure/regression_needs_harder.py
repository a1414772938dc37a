"""An easier version can't be done before the drill that it eases: it needs it, at whatever remove.

Why it matters: the easier version is what a lifter does who can't do the drill yet. If it needs the drill,
it is no way down.

Wrong:

    # snatch/overhead-squat.md
    regressions: [{drill: box-overhead-squat, eases: "less depth"}]
    # snatch/box-overhead-squat.md
    prerequisites: [overhead-squat]

Right:

    # snatch/box-overhead-squat.md
    prerequisites: [overhead-hold]
"""

from collections.abc import Iterator, Mapping, Sequence

from kb.errors import Problem
from kb.make.library import Library
from kb.make.order import reached
from kb.make.structure.known import at
from kb.make.structure.prerequisite_circle import needs

__all__ = ["CODE", "rule"]

CODE = "regression-needs-harder"


def rule(library: Library) -> Iterator[Problem]:
    """Every easier version that can't be reached without the drill that it eases."""
    groups = needs(library)
    open_ = reached(groups)
    for drill in library.drills.values():
        for n, said in enumerate(drill.regressions):
            if said.drill == drill.id or said.drill not in open_:  # circles are told by their own rules
                continue
            before = _before(said.drill, groups)
            if drill.id in before and said.drill not in reached({id_: groups[id_] for id_ in before}, (drill.id,)):
                message = f"`{said.drill}` is to be easier, and can't be done before `{drill.id}`, which it needs."
                help_ = f"Take `{drill.id}` out of what `{said.drill}` needs, or this easier version away."
                yield at(library, drill.id, f"regressions.{n}", CODE, message, help_)


def _before(start: str, groups: Mapping[str, Sequence[Sequence[str]]]) -> set[str]:
    """A drill and all that may come before it, at whatever remove."""
    found, todo = {start}, [start]
    while todo:
        for group in groups[todo.pop()]:
            todo += (member for member in group if member not in found)
            found.update(group)
    return found
