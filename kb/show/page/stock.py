"""All that pages are made from, read once from a catalogue."""

import sqlite3
from collections.abc import Callable, Mapping
from functools import cache
from typing import TYPE_CHECKING, NamedTuple

from kb.ask import read
from kb.ask.class_.people import Class
from kb.ask.path import Path, path
from kb.ask.shelf import Shelf, with_drills
from kb.errors import NoAnswer
from kb.terms import Drill, DrillId, Fault, FaultId, Item, ItemId, Lift, LiftId, Position, PositionId

if TYPE_CHECKING:
    from kb.solve.planning import NoPlan, Planned

__all__ = ["Stock", "stock_of"]

NO_DEMO = "the class that comes with the program asks for what this library doesn't hold"


class Stock(NamedTuple):
    """A catalogue's entries with their text, by id, and each lift's shelf for questions.

    `way` is a lift's path from nothing with a kit, or why there is none: found when it is asked for, and once, for
    a path takes a second and several pages show it. `evening` is the class that comes with the program, planned, or
    why it isn't; found in the same manner.
    """

    lifts: Mapping[LiftId, Lift]
    positions: Mapping[PositionId, Position]
    faults: Mapping[FaultId, Fault]
    drills: Mapping[DrillId, Drill]
    items: Mapping[ItemId, Item]
    kits: Mapping[str, frozenset[ItemId]]
    gateways: Mapping[LiftId, frozenset[DrillId]]
    shelves: Mapping[LiftId, Shelf]
    content_hash: str
    way: Callable[[LiftId, str], Path | str]
    evening: "Callable[[], Planned | NoPlan]"

    def name(self, entry_id: str) -> str:
        """The name of any entry; the id of one that isn't there."""
        for table in (self.drills, self.faults, self.positions, self.items, self.lifts):
            found = table.get(entry_id)  # type: ignore[call-overload]
            if found is not None:
                return str(found.name)
        return entry_id

    def kits_by_size(self) -> list[str]:
        """The kits' names, the smallest first."""
        return sorted(self.kits, key=lambda kit: (len(self.kits[kit]), kit))


def stock_of(db: sqlite3.Connection, demo: Class | None = None) -> Stock:
    """Everything a catalogue holds that a page may show, and the class that comes with the program."""
    drills, faults, items = read.drills(db), read.faults(db), read.items(db)
    positions = [PositionId(row[0]) for row in db.execute("select id from position order by id")]
    lifts = {lift_id: read.lift(db, lift_id) for lift_id in read.lifts(db)}
    texts = {kind: read.sections(db, kind, ids) for kind, ids in (("drill", drills), ("equipment", items))}
    told = {each: drill._replace(sections=texts["drill"].get(each, {})) for each, drill in drills.items()}
    # a chain's drills come with what to say
    shelves = {lift_id: _told(read.shelf(db, lift_id), told) for lift_id in lifts}
    kits = read.kits(db)

    @cache
    def way(lift: LiftId, kit: str) -> Path | str:
        try:
            return path(shelves[lift], have=kits[kit])
        except NoAnswer as none:
            return str(none)

    @cache
    def evening() -> "Planned | NoPlan":
        from kb.solve.planning import NoPlan, planned

        if demo is None:
            return NoPlan(NO_DEMO)
        try:
            return planned(demo, shelves.__getitem__)
        except NoPlan as none:
            return none

    return Stock(
        lifts=lifts,
        positions={each: read.position(db, each) for each in positions},
        faults={each: read.fault(db, each) for each in faults},
        drills=told,
        items={each: item._replace(sections=texts["equipment"].get(each, {})) for each, item in items.items()},
        kits=kits,
        gateways={lift_id: read.gateways(db, lift_id) for lift_id in lifts},
        shelves=shelves,
        content_hash=read.meta(db)["content_hash"],
        way=way,
        evening=evening,
    )


def _told(shelf: Shelf, drills: Mapping[DrillId, Drill]) -> Shelf:
    return with_drills(shelf, {each: drills[each] for each in shelf.drills})
