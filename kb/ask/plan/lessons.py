"""So many lessons and no more: the part of a lift that is furthest on the way and can be held by the last of them."""

from collections.abc import Callable, Collection, Sequence

from kb import dials
from kb.ask.plan.ends import Ends
from kb.ask.plan.plan import Plan
from kb.ask.shelf import Shelf
from kb.errors import NoAnswer
from kb.terms import Catch, Drill, DrillId, ItemId, Stage

__all__ = ["MOST_LESSONS", "MOST_NEW_TRIED", "in_lessons", "parts_by_nearness"]

MOST_LESSONS = 52
"""Lessons that can be asked for at most: with more the whole lift is held."""

MOST_NEW_TRIED = 4
"""New drills in a lesson that are tried at most, where fewer don't do. Common practice, no source."""

Ask = Callable[[DrillId | None, int], Plan]
"""The plan to a part of the lift, or to all of it, with so many new drills in a lesson."""


def parts_by_nearness(shelf: Shelf, have: frozenset[ItemId], holds: Collection[DrillId]) -> tuple[DrillId, ...]:
    """The parts of a lift that a plan can end in, not held yet: the smallest step from the whole lift first."""
    fits, whole = shelf.fits(have), shelf.dials[shelf.lift.drill]
    parts = [
        drill
        for drill in shelf.drills.values()
        if drill.stage in (Stage.JOIN, Stage.WHOLE)
        and drill.id in fits
        and drill.id not in holds
        and drill.id != shelf.lift.drill
    ]
    spans = dials.spans(shelf.lift)

    def nearness(drill: Drill) -> tuple[int, DrillId]:
        return dials.step(shelf.dials[drill.id], whole, spans), drill.id

    return tuple(drill.id for drill in sorted(parts, key=nearness))


def in_lessons(ask: Ask, parts: Sequence[DrillId], lessons: int, new: int) -> Plan:
    """The plan to what is nearest to the whole lift and held within so many lessons.

    The whole lift and then its parts are tried, first with as many new drills in a lesson as were asked for, then with
    up to `MOST_NEW_TRIED`. Where none will do, the part that takes fewest sessions, of these the one caught highest, as
    far as the lessons go. Raises NoAnswer where there is no path to the lift.
    """
    whole = ask(None, new)
    tried: list[tuple[Plan, DrillId | None, int]] = []
    for most in range(new, max(new, MOST_NEW_TRIED) + 1):
        for part in (None, *parts):
            try:
                found = whole if part is None and most == new else ask(part, most)
            except NoAnswer:
                continue
            if found.to_held <= lessons:
                return found._replace(ends=Ends(lessons, _drill(found, part), most, 0, whole.to_held))
            tried.append((found, part, most))
    found, part, most = min(tried, key=lambda each: (each[0].to_held, _catch(each[0])))
    ends = Ends(lessons, _drill(found, part), most, found.to_held - lessons, whole.to_held)
    return found._replace(sessions=found.sessions[:lessons], ends=ends)


def _catch(plan: Plan) -> Catch:
    """How deep the last drill of a plan is caught."""
    return plan.forms[-1].drill.catch


def _drill(plan: Plan, part: DrillId | None) -> Drill | None:
    return plan.path.shelf.drills[part] if part is not None else None
