"""When no chain exists: what can still be rehearsed, and the smallest thing that would open one."""

from collections.abc import Iterator
from itertools import combinations
from typing import NamedTuple

from kb import evidence, kit
from kb.ask.alone import alone
from kb.ask.choices import choices_of, why_not
from kb.ask.matter import Matter, lift_load, matter_of
from kb.ask.question import ChainQuestion
from kb.ask.route import Entry
from kb.ask.search import BUDGET, Limits, search
from kb.errors import BadInput, NoAnswer
from kb.terms import Drill, DrillId, ItemId, Load, Stage

__all__ = ["MOST_REHEARSED", "SESSION_MINUTES", "Opener", "Rehearsal", "rehearsable", "rehearse"]

MOST_REHEARSED = 5
"""Drills of a rehearsal told in full, for one sitting; the others are named."""

SESSION_MINUTES = 20
"""Minutes of the session that a rehearsal can be made."""


class Opener(NamedTuple):
    """What would open a chain: an item (or two together), or a prerequisite to hold first."""

    items: tuple[ItemId, ...] = ()
    prerequisite: DrillId | None = None


class Rehearsal(NamedTuple):
    """Drills that work on the cause though nothing here tests the fault, and what would open a chain.

    `drills` are all, in the order to do them in; `entries` the first of them as they are to be done with what there
    is to `have`; `session` the same as a session's own drills, empty where no such session can be made.
    """

    drills: tuple[Drill, ...]
    would_open: tuple[Opener, ...]
    entries: tuple[Entry, ...] = ()
    session: tuple[DrillId, ...] = ()
    have: frozenset[ItemId] = frozenset()


def rehearse(matter: Matter) -> Rehearsal:
    """What the kit allows when `why_not` forbids a chain.

    Rehearsal: drills for the cause that can be done, in the order to do them in (`rehearsable`); when there
    are none, drills for any other cause of the fault. What would open a chain: every single missing item,
    else every single prerequisite, else the first pair of items that does.
    """
    drills = rehearsable(matter)
    entries = tuple(alone(matter, drill, _highest(matter, drill)) for drill in drills[:MOST_REHEARSED])
    return Rehearsal(drills, tuple(_openers(matter)), entries, _session(matter, entries), matter.question.have)


def rehearsable(matter: Matter) -> tuple[Drill, ...]:
    """The drills of a rehearsal alone: what would open a chain costs a search for each item there isn't.

    Preparation first; each after what it builds on, where that is rehearsed too; then the gentlest first: held
    before slow, paused and full speed, then less catch, less load, a shorter reach; then in id order.
    """
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
    return tuple(_in_turn(sorted(found, key=lambda drill: _demand(matter, drill))))


def _demand(matter: Matter, drill: Drill) -> tuple[bool, int, int, int, int, DrillId]:
    """How much a drill asks, preparation least."""
    dials = matter.dials(drill, _highest(matter, drill))
    return (
        drill.stage is not Stage.PREPARE,
        dials.speed,
        dials.catch,
        dials.load,
        dials.last - dials.first,
        drill.id,
    )


def _in_turn(drills: list[Drill]) -> Iterator[Drill]:
    """Drills in their order, but each after one of every group it builds on that is among them."""
    waiting, there, done = list(drills), {drill.id for drill in drills}, set[DrillId]()
    while waiting:
        ready = (
            drill for drill in waiting if all(done & set(group) or not there & set(group) for group in drill.groups)
        )
        # where any-of groups wait for each other among these alone, the first begins
        drill = next(ready, waiting[0])
        waiting.remove(drill)
        done.add(drill.id)
        yield drill


def _session(matter: Matter, entries: tuple[Entry, ...]) -> tuple[DrillId, ...]:
    """The drills of entries, where a session of them can be made that does each at the same load."""
    names = tuple(entry.drill.id for entry in entries)
    if not names:
        return ()
    # late: a chain needs no session, and this is read with it
    from kb.ask.session.path_course import named_course
    from kb.ask.session.sessions import has_room

    try:
        course = named_course(matter.shelf, names, matter.question.have)
    except (BadInput, NoAnswer):
        return ()
    if not has_room(course, SESSION_MINUTES):
        return ()
    loads = {entry.drill.id: entry.load for entry in course.entries}
    return names if all(loads[entry.drill.id] == entry.load for entry in entries) else ()


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
    load = lift_load(question, shelf, matter.where, fitted)
    if not evidence.tests(lift, load, matter.where, shelf.drills, shelf.dials, speed=fitted.speed, catch=fitted.catch):
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
