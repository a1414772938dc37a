"""A lift's timeline, parts or drill don't make a lift.

A lift has either a timeline of two or more points, no name twice, or two or more parts that have none
themselves and share no point. Its drill is of stage `whole`, names the lift, and reaches from the first
point to the last.

Why it matters: everything is measured along the timeline, and every chain ends in the lift's drill.

Wrong:

    timeline: [{at: rack, position: jerk-rack}, {at: dip, position: jerk-dip}]
    drill: push-press

Right:

    timeline: [{at: rack, position: jerk-rack}, {at: dip, position: jerk-dip}, {at: drive, position: jerk-drive}]
    drill: full-jerk
"""

from collections.abc import Iterator

from kb.dials import reach_on
from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at, written
from kb.terms import Lift, Stage

__all__ = ["CODE", "rule"]

CODE = "unsound-lift"


def rule(library: Library) -> Iterator[Problem]:
    """Every lift that isn't one."""
    for lift in library.lifts.values():
        found = list(_parts(lift, library) if lift.parts else _timeline(lift))
        # the drill of a lift that isn't sound itself can't be judged
        for path, message in found or _drill(lift, library):
            yield at(library, lift.id, path, CODE, message)


def _timeline(lift: Lift) -> Iterator[tuple[str, str]]:
    if len(lift.timeline) < 2:
        yield "timeline", "A lift needs a `timeline` of at least two points, or `parts`."
    for n, point in enumerate(lift.points):
        if point in lift.points[:n]:
            yield f"timeline.{n}", f"The point `{point}` stands on the timeline twice."


def _parts(lift: Lift, library: Library) -> Iterator[tuple[str, str]]:
    if lift.id in library.sources and written(library, lift.id, "timeline"):
        yield "timeline", "A lift of `parts` has no `timeline` of its own: it is theirs in order."
    if len(lift.parts) < 2:
        yield "parts", "A lift of parts needs at least two."
    seen: dict[str, str] = {}
    for n, part_id in enumerate(lift.parts):
        part = library.lifts.get(part_id)
        if part_id == lift.id:
            yield f"parts.{n}", "A lift can't be a part of itself."
        elif part is not None and part.parts:
            yield f"parts.{n}", f"`{part_id}` has parts itself: name those."
        elif part is not None:
            for point in part.points:
                if seen.setdefault(point, part_id) != part_id:
                    yield f"parts.{n}", f"`{part_id}` and `{seen[point]}` both have a point `{point}`."


def _drill(lift: Lift, library: Library) -> Iterator[tuple[str, str]]:
    drill = library.drills.get(lift.drill)
    if drill is None or not lift.timeline:
        return
    if drill.stage is not Stage.WHOLE:
        yield "drill", f"The drill of a lift is of stage `whole`; `{drill.id}` is of stage `{drill.stage.word}`."
    elif lift.id not in drill.lifts:
        yield "drill", f"`{drill.id}` doesn't name `{lift.id}` among its lifts."
    elif (reach := reach_on(drill, lift)) and reach != (lift.points[0], lift.points[-1]):
        yield "drill", f"`{drill.id}` covers {reach[0]} to {reach[1]}, not {lift.points[0]} to {lift.points[-1]}."
