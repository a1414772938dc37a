"""When no chain exists: what can still be rehearsed, and the smallest thing that would open one."""

from collections.abc import Iterator
from itertools import combinations
from typing import NamedTuple

from kb.ask.choices import choices_of, why_not
from kb.ask.matter import Matter, matter_of
from kb.ask.search import BUDGET, Limits, search
from kb.terms import Drill, DrillId, ItemId, Load, Stage

__all__ = ["Opener", "Rehearsal", "rehearsable", "rehearse"]


class Opener(NamedTuple):
    """What would open a chain: an item (or two together), or a prerequisite to hold first."""

    items: tuple[ItemId, ...] = ()
    prerequisite: DrillId | None = None


class Rehearsal(NamedTuple):
    """Drills that work on the cause though nothing here tests the fault, and what would open a chain."""

    drills: tuple[Drill, ...]
    would_open: tuple[Opener, ...]


def rehearse(matter: Matter) -> Rehearsal:
    """What the kit allows when `why_not` forbids a chain.

    Rehearsal: drills for the cause that can be done, preparation first, then by stage; when there are
    none, drills for any other cause of the fault. What would open a chain: every single missing item,
    else every single prerequisite, else the first pair of items that does.
    """
    return Rehearsal(rehearsable(matter), tuple(_openers(matter)))


def rehearsable(matter: Matter) -> tuple[Drill, ...]:
    """The drills of a rehearsal alone: what would open a chain costs a search for each item there isn't."""
    doable = [matter.shelf.drills[drill_id] for drill_id in sorted(matter.doable)]
    found = [
        drill
        for drill in doable
        if drill.stage is not Stage.FINISH and matter.addresses(drill, _highest(matter, drill))
    ]
    if not found:
        found = [
            drill
            for drill in doable
            if drill.stage is not Stage.FINISH and any(said.fault == matter.worked.id for said in drill.faults)
        ]
    return tuple(sorted(found, key=lambda drill: (drill.stage, drill.id)))


def _highest(matter: Matter, drill: Drill) -> Load:
    return min(drill.load[1], matter.fits[drill.id].load, matter.limit)


def _openers(matter: Matter) -> Iterator[Opener]:
    question, shelf = matter.question, matter.shelf
    missing = sorted(set(shelf.items) - question.have)
    singles = [Opener((item,)) for item in missing if _opens(matter, frozenset({item}))]
    if singles:
        yield from singles
        return
    waiting = sorted(matter.doubt - matter.doable)
    first = [Opener(prerequisite=drill_id) for drill_id in waiting if _opens(matter, frozenset(), drill_id)]
    if first:
        yield from first
        return
    for pair in combinations(missing, 2):
        if _opens(matter, frozenset(pair)):
            yield Opener(pair)
            return


def _opens(matter: Matter, items: frozenset[ItemId], holds: DrillId | None = None) -> bool:
    """Whether a chain exists with more items, or with one more drill held."""
    question = matter.question._replace(
        have=matter.question.have | items,
        holds=matter.question.holds | ({holds} if holds else set()),
    )
    other = matter_of(matter.shelf, question)
    if why_not(other) is not None:
        return False
    choices = choices_of(other)
    return search(choices.field, Limits(), choices.must, budget=BUDGET) is not None
