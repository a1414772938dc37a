"""A lift that is practised in one of its parts, and never beyond: a power catch, a jerk without a split."""

from collections.abc import Mapping

from kb.ask.shelf import Shelf, with_drills
from kb.dials import Dials
from kb.terms import Drill, DrillId, Fault, Stage

__all__ = ["within_ending"]


def within_ending(shelf: Shelf) -> Shelf:
    """A shelf that ends in a part of its lift, without what goes beyond that part.

    A drill that is caught deeper, or passes a point of the lift that the part leaves out, is not in it: it is for who
    doesn't squat deep or doesn't split. What shows where the bar is caught shows there too where that point is left
    out: at the next one. Preparation opens joints and stays.
    """
    goal = shelf.dials[shelf.lift.drill]
    within = {each.id: each for each in shelf.drills.values() if _within(each, shelf.dials[each.id], goal)}
    faults = {
        each.id: _told_within(_shown_within(each, shelf.lift.points, goal.left_out), within)
        for each in shelf.faults.values()
    }
    return with_drills(shelf, within)._replace(faults=faults)


def _within(drill: Drill, here: Dials, goal: Dials) -> bool:
    if drill.stage is Stage.PREPARE:
        return True
    reach = (1 << (here.last + 1)) - (1 << here.first)
    return here.catch <= goal.catch and not goal.left_out & reach & ~here.left_out


def _told_within(fault: Fault, within: Mapping[DrillId, Drill]) -> Fault:
    """A fault without the checks that are made in a drill beyond the part."""
    return fault._replace(tells=tuple(tell for tell in fault.tells if tell.drill is None or tell.drill in within))


def _shown_within(fault: Fault, points: tuple[str, ...], left_out: int) -> Fault:
    """A fault whose phases are moved off the points left out: on to the next, or back where they began before it.

    One that is seen in a catch still asks for a catch: by its `shows_at`, wherever its phase ends.
    """
    kept = [n for n in range(len(points)) if not left_out >> n & 1]

    def moved(first: str, last: str) -> tuple[str, str]:
        if first not in points or last not in points:
            return first, last
        low = min((n for n in kept if n >= points.index(first)), default=points.index(first))
        high = max((n for n in kept if low <= n <= points.index(last)), default=low)
        return points[low], points[high]

    return fault._replace(phases=tuple(moved(*phase) for phase in fault.phases)) if left_out else fault
