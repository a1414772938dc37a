"""A drill in which a bar can be missed doesn't say how to get out: there is no section *Miss*.

It is due wherever a bar is overhead at load light or more, and wherever it is caught or carried on the
shoulders or the neck at catch power or full. With a stick alone there is nothing to get away from.

Why it matters: the way out has to be known before the first bar is missed, and a coach who reads only the
page in hand must find it there.

Wrong:

    stage: segment
    target_position: snatch-receive     # bar overhead
    load: [stick, light]
    # and no section Miss

Right:

    ## Miss
    In front: push the bar away and step back. Behind: let go and step forward. Nobody reaches for it.
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.make.structure.visits import visited
from kb.terms import Catch, Drill, Load, PositionId, Stage

__all__ = ["CODE", "rule"]

CODE = "no-miss"


def rule(library: Library) -> Iterator[Problem]:
    """Every drill that takes a bar overhead, or under which one gets, without saying how to miss."""
    for drill in library.drills.values():
        if drill.sections.get("Miss") or drill.stage is Stage.PREPARE or drill.load[1] < Load.LIGHT:
            continue
        if not any("bar" in item.split("-") for item in drill.equipment):
            continue
        carried = {library.positions[position].bar for position in _positions(drill, library)}
        if "overhead" in carried:
            where = "is overhead"
        elif drill.catch >= Catch.POWER and carried & {"shoulders", "neck"}:
            where = "is on the shoulders"
        else:
            continue
        message = f"A bar at {drill.load[1].word} load {where}, and there is no `## Miss`."
        before = next((f"## {heading}" for heading in ("Slips", "Say", "Look for") if heading in drill.sections), "")
        yield at(library, drill.id, before, CODE, message, "Say how to get out, in front and behind.")


def _positions(drill: Drill, library: Library) -> set[PositionId]:
    """The positions that a drill is for or passes through, as far as they are known."""
    found = set(drill.target_position.values())
    for lift_id in drill.reach:
        if lift_id in library.lifts:
            points = visited(drill, lift_id, library)
            found |= {timed.position for timed in library.lifts[lift_id].timeline if timed.at in points}
    return {position for position in found if position in library.positions}
