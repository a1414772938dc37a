"""A drill's stage and its reach contradict each other.

- `position`: one point, held or returned to; first and last are the same.
- `segment`: from one point to another, and not every point of the timeline is visited.
- `join`: over three points or more; every point visited at full speed is no join, but the lift.
- `whole`: the whole timeline at full speed, nothing left out.

Why it matters: the stage is the coarsest order of teaching, and what a chain may not go back on lightly. If
it says one thing and the reach another, the order comes out wrong.

Wrong:

    stage: position
    reach: [receive, stand]

Right:

    stage: segment
    reach: [receive, stand]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at, points, written
from kb.make.structure.visits import visited, within
from kb.terms import Drill, Speed, Stage

__all__ = ["CODE", "rule"]

CODE = "stage-against-reach"


def rule(library: Library) -> Iterator[Problem]:
    """Every drill whose stage can't have its reach, told once."""
    for drill in library.drills.values():
        for lift in drill.lifts:
            inside, visits = within(drill, lift, library), visited(drill, lift, library)
            if visits and (wrong := _wrong(drill, inside, visits, points(library, lift), library)):
                message = f"Stage `{drill.stage.word}` and the reach on `{lift}` contradict each other: {wrong}."
                yield at(library, drill.id, "stage", CODE, message)
                break


def _wrong(
    drill: Drill, inside: tuple[str, ...], visits: tuple[str, ...], names: tuple[str, ...], library: Library
) -> str:
    whole = visits == names
    full = drill.speed is Speed.FULL or not written(library, drill.id, "speed")
    if drill.stage is Stage.POSITION and len(inside) > 1:
        return f"a position is one point, and this reaches from {inside[0]} to {inside[-1]}"
    if drill.stage is Stage.SEGMENT and len(inside) < 2:
        return f"a segment goes from one point to another, and this is {inside[0]} alone"
    if drill.stage is Stage.SEGMENT and whole:
        return "a segment is a part of the timeline, and this visits all of it"
    if drill.stage is Stage.JOIN and len(inside) < 3:
        return f"a join goes over three points or more, and this over {len(inside)}"
    if drill.stage is Stage.JOIN and whole and full:
        return "all of the timeline at full speed is stage whole"
    if drill.stage is Stage.WHOLE and not whole:
        missing = ", ".join(name for name in names if name not in visits)
        return f"the whole visits every point, and this leaves out {missing}"
    if drill.stage is Stage.WHOLE and not full:
        return f"the whole is done at speed full, and this at {drill.speed.word}"
    return ""
