"""Instead of a drill: as it is with a stand-in, or the nearest others that what is there allows."""

from collections.abc import Mapping
from typing import NamedTuple

from kb import kit
from kb.dials import Dials, at_load, dials_of, spans, step
from kb.terms import Drill, DrillId, Item, ItemId, Lift, LiftId, Load, Stage

__all__ = ["Near", "Opens", "Swap", "swap"]

MOST = 5
"""Swaps and further items named at most."""


class Near(NamedTuple):
    """A drill that can be done instead: what it keeps, what it loses, and how far off it is."""

    drill: Drill
    keeps: tuple[str, ...]
    loses: tuple[str, ...]
    distance: int


class Opens(NamedTuple):
    """One more item, and the drills it would let be done."""

    item: ItemId
    drills: tuple[DrillId, ...]


class Swap(NamedTuple):
    """Whether a drill can be done with what is there, what is lost, what else would serve, what one item opens."""

    drill: Drill
    doable: bool
    gear: tuple[kit.Gear, ...]
    load: Load | None
    lost: tuple[str, ...]
    swaps: tuple[Near, ...]
    one_more: tuple[Opens, ...]


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
    longer addressed, positions no longer aimed at.
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
        if other.id != drill.id and _alike(drill, other) and (fit_there := kit.fit(other, have, items)) is not None
    ]
    ranked = sorted(near, key=lambda each: (each.distance, each.drill.id))[:MOST]
    return Swap(
        drill, fitted is not None, gear, load, tuple(dict.fromkeys(lost)), tuple(ranked), _one_more(have, drills, items)
    )


def _alike(drill: Drill, other: Drill) -> bool:
    """Whether another drill does some of the same work: a lift in common, and a fault, joint or target."""
    if not set(drill.lifts) & set(other.lifts):
        return False
    if (drill.stage is Stage.PREPARE) != (other.stage is Stage.PREPARE):
        return False
    same_target = set(drill.target_position.values()) & set(other.target_position.values())
    same_fault = {said.fault for said in drill.faults} & {said.fault for said in other.faults}
    return bool(same_target or same_fault or set(drill.opens) & set(other.opens))


def _near(drill: Drill, other: Drill, fitted: kit.Fit, lifts: Mapping[LiftId, Lift]) -> Near:
    keeps, loses = [], []
    mine = {(said.fault, said.cause) for said in drill.faults}
    theirs = {(said.fault, said.cause) for said in other.faults}
    both = {said[0] for said in mine & theirs} | {
        fault
        for fault, cause in mine ^ theirs
        if cause is None and any(said[0] == fault for said in mine) and any(said[0] == fault for said in theirs)
    }
    for fault in sorted(both):
        keeps.append(f"works on {fault}")
    missing = sorted({fault for fault, _ in mine} - both)
    loses += [f"{fault} is not worked on" for fault in missing]
    for joint in drill.opens:
        (keeps if joint in other.opens else loses).append(
            f"opens {joint}" if joint in other.opens else f"{joint} is not opened"
        )
    targets = set(drill.target_position.values())
    if targets & set(other.target_position.values()):
        keeps += [f"aims at {position}" for position in sorted(targets & set(other.target_position.values()))]
    elif targets:
        loses += [f"{position} is not aimed at" for position in sorted(targets)]
    distance = 2 * len(missing) + 2 * len([joint for joint in drill.opens if joint not in other.opens])
    distance += 3 * bool(targets and not targets & set(other.target_position.values()))
    lift = next((lifts[lift_id] for lift_id in drill.lifts if lift_id in other.lifts), None)
    if (
        lift is not None
        and Stage.PREPARE not in (drill.stage, other.stage)
        and Stage.FINISH not in (drill.stage, other.stage)
    ):
        distance += _apart(dials_of(drill, lift), _as_fitted(other, lift, fitted), lift)
        if min(other.load[1], fitted.load) < drill.load[1]:
            loses.append(f"no more than {min(other.load[1], fitted.load).word} load")
        elif other.speed < drill.speed:
            loses.append(f"{other.speed.word} instead of {drill.speed.word} speed")
    return Near(other, tuple(keeps), tuple(loses), distance)


def _as_fitted(drill: Drill, lift: Lift, fitted: kit.Fit) -> Dials:
    return at_load(dials_of(drill, lift), min(drill.load[1], fitted.load), fitted.speed, fitted.catch)


def _apart(a: Dials, b: Dials, lift: Lift) -> int:
    """The smaller of the steps there and back: how unlike two drills are, whichever way round."""
    return min(step(a, b, spans(lift)), step(b, a, spans(lift)))


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
