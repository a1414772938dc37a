"""A drill lacks a dial: `reach`, `speed`, `load`, `catch` or `target_position`.

Only preparation has none of them. A finish drill strengthens rather than rehearses, and may go without a
reach and a target. `aid` left out means free.

Why it matters: steps between drills are measured on the dials, so one without them stands nowhere.

Wrong:

    stage: segment
    reach: [start, knee]
    load: stick

Right:

    stage: segment
    target_position: clean-knee
    reach: [start, knee]
    speed: slow
    load: stick
    catch: none
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at, written
from kb.terms import Stage

__all__ = ["CODE", "rule"]

CODE = "missing-dial"

_ALL = ("target_position", "reach", "speed", "load", "catch")
_FINISH = ("speed", "load")


def rule(library: Library) -> Iterator[Problem]:
    """Every dial that a drill of its stage needs and doesn't say."""
    for drill in library.drills.values():
        if drill.stage is Stage.PREPARE:
            continue
        for field in _FINISH if drill.stage is Stage.FINISH else _ALL:
            if not written(library, drill.id, field):
                message = f"`{field}` is missing: a drill of stage {drill.stage.word} needs it."
                yield at(library, drill.id, "stage", CODE, message)
