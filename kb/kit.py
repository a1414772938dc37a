"""What can be done with what is there: stand-ins, one hop, and the dials they cap."""

from collections.abc import Collection, Mapping
from typing import NamedTuple

from kb.terms import Catch, Drill, Item, ItemId, Load, Speed, StandIn

# fmt: off
__all__ = [
    "BAR", "BARS", "RACK", "STICKS", "TRAINING_BAR", "Fit", "Gear", "fit", "gear_at", "lacking", "loads", "missing",
]
# fmt: on

STICKS = (ItemId("stick"), ItemId("broom"))
"""What carries the load `stick`, best first: at that load nothing heavier is picked up."""

BAR, TRAINING_BAR, RACK = ItemId("bar"), ItemId("training-bar"), ItemId("rack")

BARS = (TRAINING_BAR, BAR)
"""Bars, the lightest first: what begins with a stick goes on with that."""

LOADS = tuple(Load)
"""Every load, least first, each at its own number."""


class Gear(NamedTuple):
    """An item a drill needs and what serves for it, itself or a stand-in; `lost` says what that costs."""

    item: ItemId
    using: ItemId
    lost: str = ""


class Fit(NamedTuple):
    """How a drill can be done with a kit: the gear, and the highest each dial can be."""

    gear: tuple[Gear, ...]
    speed: Speed = Speed.FULL
    load: Load = Load.WORKING
    catch: Catch = Catch.FULL


def _best_stand_in(item: Item, have: Collection[ItemId]) -> StandIn | None:
    there = [stand_in for stand_in in item.stand_ins if stand_in.item in have]
    return min(there, key=lambda stand_in: (-stand_in.load, stand_in.item), default=None)


def fit(drill: Drill, have: Collection[ItemId], items: Mapping[ItemId, Item]) -> Fit | None:
    """How `drill` can be done with exactly the items in `have`; None if something is missing.

    Of several stand-ins the one that leaves most load, then id order; over items the lowest cap. Also
    None when the least load the drill makes sense at is above what the gear allows.
    """
    gear: list[Gear] = []
    speed, load, catch = Speed.FULL, Load.WORKING, Catch.FULL
    for item_id in drill.equipment:
        if item_id in have:
            gear.append(Gear(item_id, item_id))
            continue
        stand_in = _best_stand_in(items[item_id], have)
        if stand_in is None:
            return None
        gear.append(Gear(item_id, stand_in.item, stand_in.lost))
        speed, load, catch = min(speed, stand_in.speed), min(load, stand_in.load), min(catch, stand_in.catch)
    return Fit(tuple(gear), speed, load, catch) if drill.load[0] <= load else None


def missing(drill: Drill, have: Collection[ItemId], items: Mapping[ItemId, Item]) -> tuple[ItemId, ...]:
    """What a drill needs that isn't there and that nothing there stands in for."""
    return tuple(
        item_id for item_id in drill.equipment if item_id not in have and _best_stand_in(items[item_id], have) is None
    )


def lacking(drill: Drill, have: Collection[ItemId], items: Mapping[ItemId, Item]) -> list[str]:
    """The names of what is `missing`, as they stand within a sentence."""
    return [items[item].name.lower() for item in missing(drill, have, items)]


def loads(drill: Drill, fitted: Fit, limit: Load) -> tuple[Load, ...]:
    """The loads a fitted drill can be done at, least first, none above `limit`."""
    most = min(drill.load[1], fitted.load, limit)
    return LOADS[drill.load[0] : most + 1]


def gear_at(fitted: Fit, load: Load, have: Collection[ItemId], items: Mapping[ItemId, Item]) -> tuple[Gear, ...]:
    """The gear picked up at one load: a stick takes a bar's place where the load is a stick.

    Items that a stick can stand in for (bar, discs, a floor to drop on) are then one stick, named once.
    """
    if load > Load.STICK:
        return fitted.gear
    stick = next((stick for stick in STICKS if stick in have), None)
    chosen: list[Gear] = []
    for gear in fitted.gear:
        lost = {stand_in.item: stand_in.lost for stand_in in items[gear.item].stand_ins}
        light = stick is not None and stick in lost
        chosen.append(Gear(gear.item, stick, lost[stick]) if light and stick is not None else gear)
    return tuple(chosen)
