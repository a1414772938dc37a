"""What is at hand: what can be done with it, what stands in, what one more thing would open."""

from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

from kb.kit import fit
from kb.show.as_json import kits_json
from kb.show.coach_words import listed
from kb.show.page.page import Link, Page
from kb.show.page.stock import Stock
from kb.terms import Drill, DrillId, ItemId, Stage

__all__ = ["AtHand", "Room", "Ticked", "at_hand_page", "kit_page"]

MOST = 8
"""Things named that would open something."""

STAGES = {
    Stage.PREPARE: "Prepare",
    Stage.POSITION: "Positions",
    Stage.SEGMENT: "Parts",
    Stage.JOIN: "Parts together",
    Stage.WHOLE: "Whole lifts",
    Stage.FINISH: "Strengthen",
}


class Ticked(NamedTuple):
    """An item, whether it is there, and the kits that have it."""

    id: str
    name: str
    there: bool


class Room(NamedTuple):
    """What can be done with some items: by stage its drills, with what stands in; faults; what would open more."""

    name: str
    doable: int
    stages: tuple[tuple[str, tuple[Link, ...]], ...]
    faults: int
    one_more: tuple[Link, ...]


class AtHand(NamedTuple):
    """The list to tick, and what can be done with what is ticked or with a kit; the kits, each with its page."""

    items: tuple[Ticked, ...]
    room: Room | None
    kits: tuple[Link, ...]


def at_hand_page(stock: Stock, have: frozenset[ItemId] | None, kit: str = "") -> Page:
    """The page of what is at hand; with `have` None, only the list to tick and the kits."""
    kits = (Link(each, "at-hand", each, f"{len(_doable(stock, held))} drills") for each, held in _by_size(stock))
    held = AtHand(
        tuple(
            Ticked(item.id, item.name, item.id in (have or ()))
            for item in sorted(stock.items.values(), key=lambda item: item.name)
        ),
        None if have is None else _room(stock, kit, have),
        tuple(kits),
    )
    path, title = (f"at-hand/{kit}", f"With the {kit} kit") if kit else ("at-hand", "What is at hand")
    data = _counted(stock, stock.kits if have is None else {kit: have})
    return Page(path, title, "at_hand", held, data=data, scripts=("index.js", "at-hand.js"))


def _counted(stock: Stock, kits: Mapping[str, frozenset[ItemId]]) -> Mapping[str, Any]:
    """How far each kit goes, for programs; what is only ticked is a kit without a name."""
    found = {}
    for kit, have in kits.items():
        doable = _doable(stock, have)
        found[kit] = (have, len(doable), len({said.fault for drill in doable.values() for said in drill.faults}))
    return kits_json(found)


def kit_page(stock: Stock, kit: str) -> Page:
    """The page of what can be done with a named kit; KeyError if there is none of that name."""
    return at_hand_page(stock, stock.kits[kit], kit)


def _by_size(stock: Stock) -> list[tuple[str, frozenset[ItemId]]]:
    return [(kit, stock.kits[kit]) for kit in stock.kits_by_size()]


def _doable(stock: Stock, have: frozenset[ItemId]) -> dict[DrillId, Drill]:
    return {drill.id: drill for drill in stock.drills.values() if fit(drill, have, stock.items) is not None}


def _room(stock: Stock, name: str, have: frozenset[ItemId]) -> Room:
    doable = _doable(stock, have)
    stages = tuple(
        (said, tuple(Link(each.name, "drill", each.id, _using(each, have, stock)) for each in _of(stage, doable)))
        for stage, said in STAGES.items()
    )
    faults = {said.fault for drill in doable.values() for said in drill.faults}
    return Room(name, len(doable), tuple(each for each in stages if each[1]), len(faults), tuple(_more(stock, have)))


def _of(stage: Stage, doable: dict[DrillId, Drill]) -> list[Drill]:
    return sorted((drill for drill in doable.values() if drill.stage is stage), key=lambda drill: drill.name)


def _using(drill: Drill, have: frozenset[ItemId], stock: Stock) -> str:
    """What stands in for what, of what isn't there."""
    fitted = fit(drill, have, stock.items)
    instead: dict[str, list[str]] = {}
    for gear in fitted.gear if fitted else ():
        if gear.using != gear.item and gear.item not in have:
            instead.setdefault(stock.name(gear.using).lower(), []).append(stock.name(gear.item).lower())
    return "; ".join(f"{using} for {listed(items)}" for using, items in instead.items())


def _more(stock: Stock, have: frozenset[ItemId]) -> Iterator[Link]:
    """Things that one by one would let more be done, the most first."""
    now = len(_doable(stock, have))
    gains = []
    for item in stock.items.values():
        if item.id not in have:
            more = len(_doable(stock, have | {item.id})) - now
            if more:
                gains.append((-more, item.name, item.id, more))
    for _, name, item_id, more in sorted(gains)[:MOST]:
        yield Link(name, "equipment", item_id, f"{more} more drills" if more > 1 else "1 more drill")
