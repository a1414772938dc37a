"""What sessions lead through, in one sitting or several: a chain for a fault, a path, or drills a coach names."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import NamedTuple

from kb.ask.route import Entry
from kb.ask.session.warm_up import asked_positions, raises
from kb.ask.session.worth import WORTH, one_round
from kb.ask.shelf import Shelf
from kb.dose import CHANGE_OVER_S, dose_seconds
from kb.kit import Fit, Gear
from kb.loading import LOADING_S
from kb.terms import Cause, Dose, Drill, DrillId, Fault, ItemId, Load, Stage

__all__ = [
    "Course",
    "Whole",
    "cut_course",
    "entry_seconds",
    "held",
    "least_raise_s",
    "needs",
    "on_bar",
    "overhead_s",
]

Whole = Callable[[Sequence[int]], bool]
"""Whether the entries kept, by place, are still lawful together."""


class Course(NamedTuple):
    """Entries in order and the sittings they are cut into, half-open, each beginning with the last one's last entry.

    `unsure` holds the drills that the lifter isn't taken to hold; `keeps` says what may be dropped (None: nothing).
    `proved` is whether it is known that no lawful list is better. `worked` and `worked_cause` are what the entries
    work on: an earlier fault where the cause is one. `finishes` are the drills to finish with, each at a load, with
    what it is worth; `must_finish` where nothing else works on the cause.
    """

    shelf: Shelf
    have: frozenset[ItemId]
    fits: Mapping[DrillId, Fit]
    entries: tuple[Entry, ...]
    sittings: tuple[tuple[int, int], ...]
    unsure: frozenset[DrillId]
    proved: bool = True
    keeps: Whole | None = None
    fault: Fault | None = None
    cause: Cause | None = None
    worked: Fault | None = None
    worked_cause: Cause | None = None
    finishes: tuple[tuple[Drill, Load, int], ...] = ()
    must_finish: bool = False


def held(drill: Drill, unsure: frozenset[DrillId], done: frozenset[DrillId] = frozenset()) -> bool:
    """Whether nothing that must come before a drill is missing: one of each group is held or done."""
    return all(any(member not in unsure or member in done for member in group) for group in drill.groups)


def needs(course: Course, drill: Drill) -> str:
    """What a drill that can't be done needs and isn't there, as words."""
    items = course.shelf.items
    missing = [items[each].name.lower() for each in drill.equipment if each not in course.have]
    return " and ".join(missing)


def on_bar(gear: Sequence[Gear], load: Load) -> bool:
    """Whether discs are put on a bar for a drill at a load."""
    return load >= Load.LIGHT and any(each.using == "discs" for each in gear)


def overhead_s(drill: Drill) -> int:
    """What a drill takes besides its dose, s: changing over and setting up."""
    return CHANGE_OVER_S + drill.set_up_s


def entry_seconds(drill: Drill, dose: Dose, *, discs: bool, teach: bool) -> int:
    """What an entry takes at most with a dose, s: discs are taken to go on anew, the drill to be shown anew."""
    return overhead_s(drill) + LOADING_S * discs + drill.teach_s * teach + dose_seconds(dose)


def light_finishes(
    shelf: Shelf, fits: Mapping[DrillId, Fit], unsure: frozenset[DrillId], entries: Sequence[Entry]
) -> Iterator[tuple[Drill, Load, int]]:
    """Strengthening for a posture that entries go to, no heavier than light, where all that comes before is held."""
    positions = {each for entry in entries for each in asked_positions(entry.drill, shelf.lift)}
    for drill in sorted(shelf.drills.values(), key=lambda each: each.id):
        if drill.stage is not Stage.FINISH or drill.id not in fits or not held(drill, unsure):
            continue
        if drill.load[0] <= Load.LIGHT and asked_positions(drill, shelf.lift) & positions:
            yield drill, min(Load.LIGHT, drill.load[1], fits[drill.id].load), WORTH["finish_any"][0]


def least_raise_s(shelf: Shelf, fits: Mapping[DrillId, Fit], unsure: frozenset[DrillId], *, teach: bool) -> int:
    """The least that raising warmth takes with what is there, s; 0 if no drill does."""
    return min(
        (
            entry_seconds(drill, one_round(drill.dose), discs=False, teach=teach)
            for drill in shelf.drills.values()
            if raises(drill) and drill.id in fits and held(drill, unsure)
        ),
        default=0,
    )


def cut_course(
    seconds: Sequence[int],
    shared: Sequence[int],
    limit: int,
    fits: Callable[[int, int], bool],
    ends_well: Sequence[bool],
) -> tuple[tuple[int, int], ...] | None:
    """Entries of these `seconds` cut into sittings of at most `limit` s, or None where two neighbours don't fit.

    Each is as long as the limit and `fits(first, end)` allow, ending after an entry that `ends_well` where there is
    one, and begins with the last entry of the one before, which then takes its `shared` seconds.
    """
    count, first = len(seconds), 0
    found: list[tuple[int, int]] = []
    while not found or found[-1][1] < count:
        spent, ends = shared[first] if first else seconds[first], []
        for end in range(first + 1, count + 1):
            spent += seconds[end - 1] if end > first + 1 else 0
            if spent <= limit and fits(first, end) and end >= min(first + 2, count):
                ends.append(end)
        if not ends:
            return None
        tested = [end for end in ends if ends_well[end - 1]]
        end = count if ends[-1] == count else (tested or ends)[-1]
        found.append((first, end))
        first = end - 1
    return tuple(found)
