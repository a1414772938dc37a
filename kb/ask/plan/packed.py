"""A way cut into lessons: how much of it one lesson holds beside what it begins and ends with."""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.plan.goals import furthest
from kb.ask.plan.lesson import line_minutes, moves, new_dose
from kb.ask.plan.teaching import Teaching
from kb.ask.plan.weeks import LEAST_RAISE, warm_up
from kb.dose import shorter
from kb.terms import Dose, Drill, DrillId, Load, Stage

__all__ = ["MOST_CHECKED", "Stand", "checked", "end_of", "opening", "pack", "raised", "room", "round_of", "take"]

MOST_CHECKED = 3
"""Drills of last time that are looked at again, one round each, at most. Common practice, no source."""


class Stand(NamedTuple):
    """Where a lifter stands between two lessons: the drills `known` (shown, or held before), those shown `last`.

    `out` are the ways out that were practised; `n` is the number of lessons had.
    """

    known: frozenset[DrillId]
    last: tuple[Drill, ...] = ()
    out: frozenset[str] = frozenset()
    n: int = 0


def round_of(given: Dose) -> Dose:
    """One round of a dose."""
    less = shorter(given)
    return less[-1] if less else given


def opening(teaching: Teaching, stand: Stand) -> tuple[Drill, ...]:
    """The drills that open the stiff joints in a lesson: the first, and more within a quarter of its minutes."""
    found: list[Drill] = []
    for drill in teaching.openers:
        so_far = sum(_opening_minutes(each, stand) for each in [*found, drill])
        if not found or so_far <= teaching.minutes // 4:
            found.append(drill)
    return tuple(found)


def _opening_minutes(drill: Drill, stand: Stand) -> int:
    return line_minutes(drill, drill.dose, teach=stand.n == 0)


def raised(teaching: Teaching, stand: Stand) -> int:
    """Minutes that raise the pulse: the warm-up less what opens stiff joints, which is its second half."""
    taken = sum(_opening_minutes(each, stand) for each in opening(teaching, stand))
    return max(LEAST_RAISE, warm_up(teaching.minutes) - taken)


def room(teaching: Teaching, stand: Stand) -> int:
    """Minutes of a lesson for all that isn't warm-up."""
    taken = sum(_opening_minutes(each, stand) for each in opening(teaching, stand))
    return teaching.minutes - raised(teaching, stand) - taken


def end_of(teaching: Teaching, stand: Stand, new: Sequence[Drill]) -> Drill | None:
    """The furthest movement known by the end of a lesson; None where nothing moves yet."""
    drills = teaching.shelf.drills
    known = [drills[each] for each in stand.known if each in teaching.fits and drills[each].load[0] <= Load.STICK]
    return furthest(teaching.shelf, [*known, *new])


def checked(stand: Stand, end: Drill | None) -> tuple[Drill, ...]:
    """What was shown last time and is looked at again: the furthest along last, without what the lesson ends with."""
    again = [each for each in stand.last if each.stage is not Stage.PREPARE and each != end]
    return tuple(again[-MOST_CHECKED:])


def _needs(teaching: Teaching, stand: Stand, new: Sequence[Drill], *, short: bool) -> int:
    """The least minutes of a lesson with these new drills; `short`: one round of what it ends with will do."""
    end = end_of(teaching, stand, new)
    minutes = sum(line_minutes(each, new_dose(each), teach=True) for each in new)
    if not short:
        minutes += sum(line_minutes(each, round_of(each.dose)) for each in checked(stand, end))
    if end is not None and not (new and new[-1] == end):
        minutes += line_minutes(end, round_of(end.dose) if short else end.dose)
    return minutes


def take(teaching: Teaching, way: Sequence[Drill], stand: Stand) -> tuple[Drill, ...]:
    """The new drills of the next lesson: as many of the way's first as it holds; none where not even one fits."""
    most = room(teaching, stand)
    for short in (False, True):
        for count in range(min(len(way), teaching.most), 0, -1):
            new = tuple(way[:count])
            if sum(map(moves, new)) <= teaching.most_moving and _needs(teaching, stand, new, short=short) <= most:
                return new
    return ()


def pack(teaching: Teaching, way: Sequence[Drill], stand: Stand, lessons: int) -> list[tuple[Drill, ...]] | None:
    """A way as the new drills of each of so many lessons at most; None where they don't hold it."""
    found: list[tuple[Drill, ...]] = []
    rest = tuple(way)
    while rest:
        new = take(teaching, rest, stand) if len(found) < lessons else ()
        if not new:
            return None
        found.append(new)
        rest = rest[len(new) :]
        stand = stand._replace(known=stand.known | {each.id for each in new}, last=new, n=stand.n + 1)
    return found
