"""Instead of a drill: as it is with a stand-in, easier, harder, or the nearest others that what is there allows."""

from collections.abc import Mapping
from itertools import zip_longest
from typing import NamedTuple

from kb import kit
from kb.ask.harder import Harder, harder
from kb.dials import Dials, at_load, dials_of, spans, step
from kb.terms import Catch, Drill, DrillId, FaultId, Item, ItemId, Lift, LiftId, Load, Stage

__all__ = ["Easier", "Near", "Opens", "Swap", "swap"]

MOST = 5
"""Swaps, easier and harder versions and further items named at most."""


MOST_STRENGTH = 4
"""Drills that strengthen named at most. Ours."""

FAULT_LOST = 4
"""How far off a fault that is no longer worked on puts a drill; half of it where it is, for another cause. Ours."""

STANDS_IN = 2
"""How far off a stand-in puts a drill, as much as a fault worked on for another cause. Ours."""

OTHER_USE = 40
"""How far off a drill that strengthens is from one that does not: farther than nearly any step of the dials."""


class Near(NamedTuple):
    """A drill that can be done instead: faults it works on too and faults it leaves, what else, and how far off."""

    drill: Drill
    works_on: tuple[FaultId, ...]
    leaves: tuple[FaultId, ...]
    keeps: tuple[str, ...]
    loses: tuple[str, ...]
    distance: int


class Easier(NamedTuple):
    """An easier version that can be done, what it eases, and the drill it is easier than."""

    drill: Drill
    eases: str
    than: DrillId


class Opens(NamedTuple):
    """One more item, and the drills it would let be done."""

    item: ItemId
    drills: tuple[DrillId, ...]


class Swap(NamedTuple):
    """Whether a drill can be done with what is there, what is lost; what is easier, harder or serves as well.

    `with_one` are the single items with any of which a drill that can't be done could be; `have` is what is there.
    `strength` is what keeps a drill's lift strong meanwhile, where it can't be done at its own weight.
    """

    drill: Drill
    doable: bool
    gear: tuple[kit.Gear, ...]
    load: Load | None
    lost: tuple[str, ...]
    easier: tuple[Easier, ...]
    harder: tuple[Harder, ...]
    swaps: tuple[Near, ...]
    one_more: tuple[Opens, ...]
    with_one: tuple[ItemId, ...] = ()
    have: frozenset[ItemId] = frozenset()
    strength: tuple[Drill, ...] = ()


def swap(
    drill: Drill,
    have: frozenset[ItemId],
    *,
    drills: Mapping[DrillId, Drill],
    items: Mapping[ItemId, Item],
    lifts: Mapping[LiftId, Lift],
) -> Swap:
    """What `drill` comes to with exactly the items in `have`.

    The nearest others are ranked by what they lose: a step there and back on the dials, faults no
    longer addressed, positions no longer aimed at. The easier versions are those that entries name: the
    drill's own first, then theirs.
    """
    fitted = kit.fit(drill, have, items)
    gear = fitted.gear if fitted else ()
    lost = [each.lost for each in gear if each.lost]
    load = min(drill.load[1], fitted.load) if fitted else None
    if load is not None and load < drill.load[1]:
        lost.append(f"no more than {load.word} load")
    near = [
        _near(drill, other, fit_there, lifts)
        for other in drills.values()
        if other.id != drill.id
        and _alike(drill, other, lifts)
        and (fit_there := kit.fit(other, have, items)) is not None
    ]
    ranked = sorted(near, key=lambda each: (each.distance, each.drill.id))[:MOST]
    return Swap(
        drill=drill,
        doable=fitted is not None,
        gear=gear,
        load=load,
        lost=tuple(dict.fromkeys(lost)),
        easier=_easier(drill, have, drills, items),
        harder=harder(drill, _doable(have, drills, items), lifts)[:MOST],
        swaps=tuple(ranked),
        one_more=_one_more(have, drills, items),
        with_one=() if fitted else _with_one(drill, have, items),
        have=have,
        strength=() if load == drill.load[1] else _strength(drill, have, drills, items),
    )


def _strength(
    drill: Drill, have: frozenset[ItemId], drills: Mapping[DrillId, Drill], items: Mapping[ItemId, Item]
) -> tuple[Drill, ...]:
    """What strengthens for the drill's lifts at some weight here: legs, a press or a hinge, a hold, and round again."""
    groups: tuple[list[Drill], ...] = ([], [], [])
    for _, other in sorted(drills.items()):
        if other.stage is not Stage.FINISH or other.id == drill.id or not set(drill.lifts) & set(other.lifts):
            continue
        fitted = kit.fit(other, have, items)
        if fitted is not None and min(other.load[1], fitted.load) >= Load.LIGHT:
            held = not other.dose.reps
            groups[2 if held else 0 if other.catch >= Catch.POWER else 1].append(other)
    turns = [other for turn in zip_longest(*groups) for other in turn if other is not None]
    return tuple(turns[:MOST_STRENGTH])


def _easier(
    drill: Drill, have: frozenset[ItemId], drills: Mapping[DrillId, Drill], items: Mapping[ItemId, Item]
) -> tuple[Easier, ...]:
    """The easier versions of a drill that can be done: its own first, then those that these have, and so on."""
    found: dict[DrillId, Easier] = {}
    waiting, seen = [drill], {drill.id}
    for than in waiting:  # grows as it is gone through: the nearest come first
        for said in than.regressions:
            easier = drills.get(said.drill)
            if easier is None or easier.id in seen:
                continue
            seen.add(easier.id)
            waiting.append(easier)
            if kit.fit(easier, have, items) is not None:
                found[easier.id] = Easier(easier, said.eases, than.id)
    return tuple(found.values())[:MOST]


def _doable(have: frozenset[ItemId], drills: Mapping[DrillId, Drill], items: Mapping[ItemId, Item]) -> list[Drill]:
    return [each for each in drills.values() if kit.fit(each, have, items) is not None]


def _alike(drill: Drill, other: Drill, lifts: Mapping[LiftId, Lift]) -> bool:
    """Whether another drill could stand for this one: a lift in common, and something done alike.

    That is a fault, a position aimed at, a joint opened, or at least two points of the same stretch.
    """
    lift = next((lifts[lift_id] for lift_id in drill.lifts if lift_id in other.lifts), None)
    if lift is None or (drill.stage is Stage.PREPARE) != (other.stage is Stage.PREPARE):
        return False
    if {said.fault for said in drill.faults} & {said.fault for said in other.faults}:
        return True
    if set(drill.target_position.values()) & set(other.target_position.values()) or set(drill.opens) & set(other.opens):
        return True
    if {Stage.PREPARE, Stage.FINISH} & {drill.stage, other.stage}:
        return False
    here, there = dials_of(drill, lift), dials_of(other, lift)
    return min(here.last, there.last) > max(here.first, there.first)


def _kept_faults(drill: Drill, other: Drill) -> set[FaultId]:
    """The faults both work on for the same cause, or either whatever the cause."""
    return {
        mine.fault
        for mine in drill.faults
        for theirs in other.faults
        if mine.fault == theirs.fault and (mine.cause == theirs.cause or None in (mine.cause, theirs.cause))
    }


def _near(drill: Drill, other: Drill, fitted: kit.Fit, lifts: Mapping[LiftId, Lift]) -> Near:
    """What another drill keeps and loses; each thing lost puts it further off, as does the step between them."""
    mine = {said.fault for said in drill.faults}
    both = _kept_faults(drill, other)
    opened = [joint for joint in drill.opens if joint in other.opens]
    targets, theirs = set(drill.target_position.values()), set(other.target_position.values())
    keeps = [f"opens {joint}" for joint in opened]
    keeps += [f"aims at {position}" for position in sorted(targets & theirs)]
    loses = [f"{joint} is not opened" for joint in drill.opens if joint not in opened]
    loses += [f"{position} is not aimed at" for position in sorted(targets) if not targets & theirs]
    any_cause = {said.fault for said in other.faults}
    distance = FAULT_LOST * len(mine - both) - (FAULT_LOST - 2) * len((mine - both) & any_cause)
    distance += 2 * (len(drill.opens) - len(opened)) + 3 * bool(targets and not targets & theirs)
    distance += STANDS_IN * sum(gear.using != gear.item for gear in fitted.gear)
    lift = next(lifts[lift_id] for lift_id in drill.lifts if lift_id in other.lifts)
    if not {Stage.PREPARE, Stage.FINISH} & {drill.stage, other.stage}:
        here, there = dials_of(drill, lift), _as_fitted(other, lift, fitted)
        distance += _apart(here, there, lift)
        if (here.first, here.last) == (there.first, there.last):
            keeps.append("covers the same stretch of the lift")
        if there.load < here.load:
            loses.append(f"no more than {there.load.word} load" if there.load else "no load at all")
        elif there.speed < here.speed:
            loses.append(f"{there.speed.word} instead of {here.speed.word} speed")
    elif drill.stage != other.stage:
        distance += OTHER_USE
        loses.append("it strengthens" if other.stage is Stage.FINISH else "it is no strengthening")
    return Near(other, tuple(sorted(both)), tuple(sorted(mine - both)), tuple(keeps), tuple(loses), distance)


def _as_fitted(drill: Drill, lift: Lift, fitted: kit.Fit) -> Dials:
    return at_load(dials_of(drill, lift), min(drill.load[1], fitted.load), fitted.speed, fitted.catch)


def _apart(a: Dials, b: Dials, lift: Lift) -> int:
    """The smaller of the steps there and back: how unlike two drills are, whichever way round."""
    return min(step(a, b, spans(lift)), step(b, a, spans(lift)))


def _with_one(drill: Drill, have: frozenset[ItemId], items: Mapping[ItemId, Item]) -> tuple[ItemId, ...]:
    return tuple(item for item in sorted(set(items) - have) if kit.fit(drill, have | {item}, items) is not None)


def _one_more(
    have: frozenset[ItemId], drills: Mapping[DrillId, Drill], items: Mapping[ItemId, Item]
) -> tuple[Opens, ...]:
    """The single items that would let most further drills be done, most first."""
    shut = [each for each in drills.values() if kit.fit(each, have, items) is None]
    opens = []
    for item in sorted(set(items) - have):
        opened = tuple(each.id for each in shut if kit.fit(each, have | {item}, items) is not None)
        if opened:
            opens.append(Opens(item, opened))
    return tuple(sorted(opens, key=lambda each: (-len(each.drills), each.item))[:MOST])
