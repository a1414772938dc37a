"""What a lifter takes home after lessons: a few drills to do alone, and what they hold by then."""

from collections.abc import Iterable

from kb.ask.ability.standing import standing
from kb.ask.plan.lesson import Line, line_minutes, moves
from kb.ask.plan.lessons import Lessons
from kb.ask.plan.stiff import aids, own
from kb.ask.plan.teaching import easier
from kb.kit import STICKS, fit, gear_at, loads
from kb.terms import Drill, DrillId, ItemId, Load, Speed, Stage

__all__ = ["AT_HOME", "MOST_AT_HOME", "holds_after", "take_home"]

AT_HOME = frozenset({ItemId("stick")})
"""What is taken to be at home where nothing is said."""

MOST_AT_HOME = 4
"""Drills to do alone at most. Common practice, no source."""


def take_home(lessons: Lessons, have: frozenset[ItemId]) -> tuple[Line, ...]:
    """Up to four drills of the lessons that can be done alone with what is at home, in the order to do them.

    What opens a stiff joint, a hold, something slow, the furthest movement; then others, the latest first. Nothing new,
    nothing above a stick, nobody else, and nothing quick with a stand-in that doesn't move as a bar does.
    """
    shown = [line.drill for lesson in lessons.lessons for line in lesson.lines if line.kind != "miss"]
    able = [drill for drill in _once(reversed(shown)) if _alone(lessons, drill, have)]
    kinds = (
        [each for each in able if each.stage is Stage.PREPARE],
        [each for each in able if each.stage is not Stage.PREPARE and not moves(each)],
        [each for each in able if moves(each) and each.speed < Speed.FULL],
        [each for each in able if each.speed is Speed.FULL],
    )
    chosen = [kind[0] for kind in kinds if kind]
    chosen += [each for each in able if each not in chosen][: MOST_AT_HOME - len(chosen)]
    order = {kind: n for n, kind in enumerate((Stage.PREPARE, Stage.POSITION, Stage.SEGMENT))}
    chosen.sort(key=lambda each: (order.get(each.stage, 3), each.speed))
    return tuple(_line(lessons, each, have) for each in chosen[:MOST_AT_HOME])


def _once(drills: Iterable[Drill]) -> list[Drill]:
    return list({drill.id: drill for drill in drills}.values())


def _alone(lessons: Lessons, drill: Drill, have: frozenset[ItemId]) -> bool:
    items = lessons.teaching.shelf.items
    fitted = fit(drill, have, items)
    if fitted is None or not loads(drill, fitted, Load.STICK) or "partner" in drill.equipment:
        return False
    gear = gear_at(fitted, Load.STICK, have, items)
    as_it_is = all(each.using == each.item or each.using in STICKS for each in gear)
    return drill.stage is not Stage.FINISH and (as_it_is or drill.speed < Speed.FULL)


def _line(lessons: Lessons, drill: Drill, have: frozenset[ItemId]) -> Line:
    asked = lessons.teaching
    fits = asked.shelf.fits(have)
    load = loads(drill, fits[drill.id], Load.STICK)[-1]
    there = asked._replace(have=have, fits=fits)
    helped = aids(asked.shelf, drill, load, asked.stiff, have)
    judged = own(asked.shelf, drill, asked.stiff)
    return Line(
        "again", drill, load, drill.dose, line_minutes(drill, drill.dose), None, easier(there, drill), judged, helped
    )


def holds_after(lessons: Lessons) -> tuple[DrillId, ...]:
    """What is known after the lessons, in as few drills as say it: what the others are built on goes without saying.

    Drills that only open joints or strengthen are left out.
    """
    shelf = lessons.teaching.shelf
    known = [
        each
        for each in sorted(lessons.known)
        if each in shelf.drills and shelf.drills[each].stage not in (Stage.PREPARE, Stage.FINISH)
    ]
    kept = list(known)
    for each in known:
        less = [other for other in kept if other != each]
        if standing(shelf, less) >= set(known):
            kept = less
    return tuple(kept)
