"""What each lifter of a class is to do, in order: a chain for a fault, or the next drills of a path for who is new."""

from collections.abc import Callable

from kb.ask.ability.standing import standing
from kb.ask.chain import chain
from kb.ask.class_.doing import (
    PARTNER,
    Doing,
    Own,
    alone_s,
    gear_of,
    light_gear_of,
    with_bar,
    with_stick,
    with_training_bar,
)
from kb.ask.class_.people import Class, Lifter
from kb.ask.class_.strength import strengthens
from kb.ask.class_.today import goals_of, today_of
from kb.ask.class_.walks import Walk
from kb.ask.class_.working_up import lift_up, taken_from_rack
from kb.ask.ending import within_ending
from kb.ask.path import path
from kb.ask.question import ChainQuestion
from kb.ask.route import Entry
from kb.ask.shelf import Shelf, ending_in
from kb.errors import NoAnswer
from kb.kit import BARS, loads
from kb.terms import Catch, DrillId, FaultId, ItemId, LiftId, Load, Stage

__all__ = ["Shelves", "have_of", "own_of"]

LEADING_IN = 2
"""Drills that lead into a lift which is held."""

Shelves = Callable[[LiftId], Shelf]


def have_of(asked: Class) -> frozenset[ItemId]:
    """What there is at all; a partner where two or more come."""
    there = {item for item, count in asked.have.items() if count > 0}
    return frozenset(there - {PARTNER} | ({PARTNER} if len(asked.lifters) > 1 else set()))


def own_of(asked: Class, shelves: Shelves, walk: Walk = path) -> tuple[Own, ...]:
    """Every lifter's own list of drills with the hall's gear; `walk` finds the paths that lists are made of.

    Raises NoAnswer, with the lifter and the reason, where this gear leads nobody to the lift.
    """
    have, seen = have_of(asked), dict[object, Own]()
    found = []
    for lifter in asked.lifters:
        # lifters who ask the same get the same: a chain is searched once
        key = (
            lifter.lift,
            lifter.fault,
            lifter.cause,
            lifter.holds,
            lifter.weight_kg is None,
            lifter.without,
            lifter.today,
            lifter.light,
            lifter.from_rack,
            lifter.to,
        )
        if key not in seen:
            try:
                shelf, there = _shelf(shelves, lifter), have - lifter.without
                own = with_stick(_own(asked, lifter, shelf, there, walk), there, shelf)
                own = with_training_bar(own, there, shelf)
                seen[key] = with_bar(own, have, shelf, BARS)
            except NoAnswer as none:
                said = f"{lifter.where}: {lifter.name}" if lifter.where else lifter.name
                raise NoAnswer(f"{said} can't be given a chain in this hall: {none}") from None
        found.append(seen[key]._replace(lifter=lifter))
    return tuple(found)


def _shelf(shelves: Shelves, lifter: Lifter) -> Shelf:
    """The lifter's lift, or the part of it that they end in, with nothing beyond that."""
    shelf = shelves(lifter.lift)
    return shelf if lifter.to is None else within_ending(ending_in(shelf, lifter.to))


def _own(asked: Class, lifter: Lifter, shelf: Shelf, have: frozenset[ItemId], walk: Walk) -> Own:
    if lifter.fault is None:
        return _learning(asked, lifter._replace(holds=standing(shelf, lifter.holds)), shelf, have, walk)
    return _mending(asked, lifter, lifter.fault, shelf, have)


def _mending(asked: Class, lifter: Lifter, fault: FaultId, shelf: Shelf, have: frozenset[ItemId]) -> Own:
    """The first sitting of the chain for a fault, then the lift at the day's weight if there is one.

    Where that doesn't fit the class with what must be shown, less time is asked for until it does or can't.
    """
    there = 60 * asked.minutes - asked.warm_up_s
    seconds, own = there, None
    while True:
        try:
            found = _sitting(asked, lifter, fault, shelf, have, seconds)
        except NoAnswer:
            # too short even for a first sitting: how much it takes is said where that is looked at
            return own or _sitting(asked, lifter, fault, shelf, have, None)
        own, over = found, alone_s(asked, found) - there
        if over <= 0:
            return own
        seconds -= over


def _sitting(
    asked: Class, lifter: Lifter, fault: FaultId, shelf: Shelf, have: frozenset[ItemId], seconds: int | None
) -> Own:
    question = ChainQuestion(
        fault,
        have,
        cause=lifter.cause,
        seconds=None if seconds is None else max(seconds, 1),
        holds=lifter.holds,
        load=None if lifter.weight_kg is None else Load.WORKING,
    )
    found = chain(shelf, question)
    route, matter = found.routes[0], found.matter
    if lifter.weight_kg is not None and matter.load < Load.WORKING:
        raise NoAnswer(
            f"{lifter.weight_kg:g} kg needs a bar, and what is there takes no more than a {matter.load.word}"
        )
    entries = route.entries[: route.sittings[0][1]]

    def light(entry: Entry) -> bool:
        """Whether a stick would do: for a check that shows with it what it shows with a bar; never for work."""
        return (
            not entry.work
            and matter.tests(entry.drill, Load.STICK) >= entry.tests
            and matter.tests_worked(entry.drill, Load.STICK) >= matter.tests_worked(entry.drill, entry.load)
        )

    doings = tuple(
        Doing(
            entry.drill,
            entry.load,
            entry.work,
            entry.gear,
            light_gear_of(entry.drill, entry.load, have, shelf) if light(entry) else None,
            entry.load >= Load.LIGHT and entry.dials.catch is Catch.FULL,
        )
        for entry in entries
    )
    knows = asked.known | lifter.holds | {shelf.lift.drill}
    stiff = matter.worked_cause.kind == "mobility"
    return Own(lifter, doings, knows, len(route.entries) - len(entries), stiff=stiff)


def _learning(asked: Class, lifter: Lifter, shelf: Shelf, have: frozenset[ItemId], walk: Walk) -> Own:
    """The next drills of the path: what opens them and what is held as checks, and so many new ones in full."""
    if shelf.lift.drill in lifter.holds:
        return _practising(asked, lifter, shelf, have, walk)
    if goals_of(asked, lifter, shelf):
        return today_of(asked, lifter, shelf, have, walk)
    part = ending_in(shelf, asked.to) if asked.to is not None and asked.to in shelf.drills else shelf
    found = walk(part, have=have, holds=lifter.holds)
    doings: list[Doing] = []
    new: set[DrillId] = set()
    for entry in found.entries:
        drill = entry.drill
        held = drill.id in lifter.holds
        if not held and drill.stage is not Stage.PREPARE:
            if drill.id not in new and len(new) == asked.new_at_once:
                break
            new.add(drill.id)
        deep = entry.load >= Load.LIGHT and entry.dials.catch is Catch.FULL
        gear = gear_of(drill, entry.load, have, shelf)
        doings.append(
            Doing(
                drill, entry.load, not held, gear, light_gear_of(drill, entry.load, have, shelf) if held else None, deep
            )
        )
    own = Own(lifter, tuple(doings), asked.known | lifter.holds, len(found.entries) - len(doings))
    room = 60 * asked.minutes - asked.warm_up_s
    while len(own.doings) > 1 and alone_s(asked, own) > room:
        own = own._replace(doings=own.doings[:-1], later=own.later + 1)
    kept = _kept_up(asked, lifter, shelf, have)
    longer = own._replace(doings=(*kept, *own.doings))
    return longer if kept and alone_s(asked, longer) <= room else own


def _kept_up(asked: Class, lifter: Lifter, shelf: Shelf, have: frozenset[ItemId]) -> tuple[Doing, ...]:
    """Of the drills that the file says a learner holds the one furthest along the lift, in full at a light bar.

    Nothing where none of them is done with a bar, or there is none.
    """
    said = next((each.holds for each in asked.lifters if each.name == lifter.name), frozenset())
    fits = shelf.fits(have)
    able = [
        shelf.drills[each]
        for each in said
        if each in fits
        and Stage.PREPARE < shelf.drills[each].stage < Stage.FINISH
        and PARTNER not in shelf.drills[each].equipment
        and Load.LIGHT in loads(shelf.drills[each], fits[each], Load.LIGHT)
    ]
    if not able:
        return ()
    drill = max(able, key=lambda each: (each.stage, len(each.groups), each.id))
    gear = gear_of(drill, Load.LIGHT, have, shelf)
    doing = Doing(drill, Load.LIGHT, True, gear, deep=drill.catch is Catch.FULL)
    return (doing,) if any(each.using in BARS for each in gear) else ()


def _practising(asked: Class, lifter: Lifter, shelf: Shelf, have: frozenset[ItemId], walk: Walk) -> Own:
    """What leads into a lift that is held: the last drills before it on its path, as checks, then the lift in full.

    With a day's weight the lift is a check at a light bar first, and then done at that weight; without one it can be
    worked up to. Raises NoAnswer where what there is doesn't make it.
    """
    whole = walk(shelf, have=have).entries
    entries = [entry for entry in whole if entry.drill.stage in (Stage.JOIN, Stage.WHOLE)]
    last = {entry.drill.id: entry for entry in entries}  # the heaviest of each
    kept = list(last.values())[-LEADING_IN - 1 :]
    doings = [
        Doing(
            entry.drill,
            min(entry.load, Load.LIGHT),
            entry.drill.id == shelf.lift.drill,
            gear_of(entry.drill, min(entry.load, Load.LIGHT), have, shelf),
            deep=entry.load >= Load.LIGHT and entry.dials.catch is Catch.FULL,
        )
        for entry in kept
    ]
    up, after = lift_up(lifter, shelf, have), tuple[Doing, ...]()
    if lifter.weight_kg is not None:
        heavy = _at_weight(lifter.weight_kg, shelf, have)
        doings = [*doings[:-1], doings[-1]._replace(work=False), taken_from_rack(heavy) if lifter.from_rack else heavy]
    if lifter.weight_kg is not None or up is not None:
        after = strengthens(shelf, have, lifter.holds | {entry.drill.id for entry in whole})
    knows = asked.known | lifter.holds | last.keys()
    return Own(lifter, tuple(doings), knows, by_themselves=True, after=after, up=up)


def _at_weight(weight_kg: float, shelf: Shelf, have: frozenset[ItemId]) -> Doing:
    """The lift at the day's weight."""
    drill = shelf.drills[shelf.lift.drill]
    most = loads(drill, shelf.fits(have)[drill.id], Load.WORKING)[-1]
    if most < Load.WORKING:
        raise NoAnswer(f"{weight_kg:g} kg needs a bar, and what is there takes no more than a {most.word}")
    deep = drill.catch is Catch.FULL
    return Doing(drill, Load.WORKING, True, gear_of(drill, Load.WORKING, have, shelf), deep=deep)
