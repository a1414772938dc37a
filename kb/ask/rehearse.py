"""When no chain exists: what can still be rehearsed, and the smallest thing that would open one."""

from collections.abc import Iterator
from itertools import combinations
from typing import NamedTuple

from kb import evidence, kit
from kb.ask.choices import choices_of, why_not
from kb.ask.matter import Matter, lift_load, matter_of
from kb.ask.question import ChainQuestion
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
    missing = sorted(_telling(matter))
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


def _telling(matter: Matter) -> set[ItemId]:
    """Missing items with which some drill could be done otherwise; any other changes nothing, alone or in a pair."""
    have, items = matter.question.have, matter.shelf.items
    wanted = {item for drill in matter.shelf.drills.values() for item in drill.equipment if item not in have}
    return {*wanted, *(stand_in.item for item in wanted for stand_in in items[item].stand_ins)} - have


def _hopeless(matter: Matter, question: ChainQuestion) -> bool:
    """What `why_not` would say in any case, told by the few drills it hangs on: the lift, and those for the cause."""
    shelf = matter.shelf
    lift = shelf.drills[shelf.lift.drill]
    fitted = kit.fit(lift, question.have, shelf.items)
    if fitted is None:
        return True
    load = lift_load(question, shelf, matter.fault, matter.cause, fitted)
    if not evidence.tests(
        lift, load, matter.fault, matter.cause, shelf.lift, shelf.drills, speed=fitted.speed, catch=fitted.catch
    ):
        return True
    kind = matter.worked_cause.kind
    return kind != "strength" and not any(
        matter.addresses(drill, drill.load[1]) and kit.fit(drill, question.have, shelf.items) is not None
        for drill in shelf.drills.values()
        if (drill.stage is Stage.PREPARE if kind == "mobility" else drill.stage is not Stage.FINISH)
    )


def _opens(matter: Matter, items: frozenset[ItemId], holds: DrillId | None = None) -> bool:
    """Whether a chain exists with more items, or with one more drill held."""
    question = matter.question._replace(
        have=matter.question.have | items,
        holds=matter.question.holds | ({holds} if holds else set()),
    )
    if _hopeless(matter, question):
        return False
    other = matter_of(matter.shelf, question)
    if why_not(other) is not None:
        return False
    choices = choices_of(other)
    return search(choices.field, Limits(), choices.must, budget=BUDGET) is not None
