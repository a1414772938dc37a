"""The catalogue, read-only: the records and prepared tables that questions are answered from."""

import json
import os
import sqlite3
from array import array
from collections.abc import Iterable, Mapping
from typing import Any

from kb import plain
from kb.ask.shelf import Shelf, Steps, shelf_of
from kb.errors import BadInput, DrillpathError
from kb.terms import Drill, DrillId, Fault, FaultId, Item, ItemId, Lift, LiftId, Position, PositionId

__all__ = [
    "SCHEMA_VERSION",
    "drills",
    "fault",
    "faults",
    "gateways",
    "items",
    "kits",
    "lift",
    "lifts",
    "meta",
    "open_catalogue",
    "position",
    "positions",
    "sections",
    "shelf",
    "with_text",
]

SCHEMA_VERSION = "4"


def open_catalogue(path: "str | os.PathLike[str]") -> sqlite3.Connection:
    """The catalogue at `path`, read-only and taken as unchanging while open.

    Raises DrillpathError if it is missing, is no catalogue, or is of another schema version.
    """
    db = sqlite3.connect(f"file:{_escaped(str(path))}?mode=ro&immutable=1", uri=True)
    try:
        version = meta(db).get("schema_version")
    except sqlite3.DatabaseError as error:
        db.close()
        raise DrillpathError(f"{path} can't be read as a catalogue ({error})") from None
    if version != SCHEMA_VERSION:
        db.close()
        raise DrillpathError(f"{path} has schema version {version}, this drillpath reads {SCHEMA_VERSION}")
    return db


def _escaped(path: str) -> str:
    """A path as it may stand in a file: address; urllib would take longer to import than a question to answer."""
    return path.replace("%", "%25").replace("?", "%3f").replace("#", "%23")


def meta(db: sqlite3.Connection) -> dict[str, str]:
    """What the catalogue says of itself: schema_version, content_hash, version."""
    return dict(db.execute("select key, value from meta"))


def _entry(db: sqlite3.Connection, table: str, entry_id: str, what: str) -> dict[str, Any]:
    row = db.execute(f"select entry, sections from {table} where id = ?", (entry_id,)).fetchone()
    if row is None:
        raise BadInput(f"there is no {what} {entry_id!r}")
    found: dict[str, Any] = json.loads(row[0])
    return {**found, "sections": json.loads(row[1])}


def lift(db: sqlite3.Connection, lift_id: LiftId) -> Lift:
    """One lift; BadInput if there is none of that id."""
    return plain.lift_from(_entry(db, "lift", lift_id, "lift"))


def lifts(db: sqlite3.Connection) -> dict[LiftId, Lift]:
    """Every lift, without its text, in id order."""
    rows = db.execute("select entry from lift order by id")
    return {found.id: found for found in (plain.lift_from(json.loads(row[0])) for row in rows)}


def position(db: sqlite3.Connection, position_id: PositionId) -> Position:
    """One position; BadInput if there is none of that id."""
    return plain.position_from(_entry(db, "position", position_id, "position"))


def positions(db: sqlite3.Connection) -> dict[PositionId, Position]:
    """Every position, without its text, in id order."""
    rows = db.execute("select entry from position order by id")
    return {found.id: found for found in (plain.position_from(json.loads(row[0])) for row in rows)}


def fault(db: sqlite3.Connection, fault_id: FaultId) -> Fault:
    """One fault with its text; BadInput if there is none of that id."""
    return plain.fault_from(_entry(db, "fault", fault_id, "fault"))


def faults(db: sqlite3.Connection) -> dict[FaultId, Fault]:
    """Every fault, without its text, in id order."""
    rows = db.execute("select entry from fault order by id")
    return {found.id: found for found in (plain.fault_from(json.loads(row[0])) for row in rows)}


def items(db: sqlite3.Connection) -> dict[ItemId, Item]:
    """Every item of equipment, without its text, in id order."""
    rows = db.execute("select entry from equipment order by id")
    return {found.id: found for found in (plain.item_from(json.loads(row[0])) for row in rows)}


def kits(db: sqlite3.Connection) -> dict[str, frozenset[ItemId]]:
    """Each kit's items; `full` is every item."""
    found: dict[str, set[ItemId]] = {}
    for kit, item in db.execute("select kit, item from kit_item order by kit, item"):
        found.setdefault(kit, set()).add(ItemId(item))
    return {kit: frozenset(held) for kit, held in found.items()}


def drills(db: sqlite3.Connection, serving: Iterable[str] | None = None) -> dict[DrillId, Drill]:
    """Every drill, or those that name one of the lifts `serving`, without their text, in id order."""
    if serving is None:
        rows = db.execute("select entry from drill order by id")
    else:
        named = list(serving)
        marks = ",".join("?" * len(named))
        rows = db.execute(
            f"select entry from drill where id in (select drill from drill_lift where lift in ({marks})) order by id",
            named,
        )
    return {found.id: found for found in (plain.drill_from(json.loads(row[0])) for row in rows)}


def sections(db: sqlite3.Connection, kind: str, ids: Iterable[str]) -> dict[str, Mapping[str, str]]:
    """The text of entries of one kind (a table of the catalogue), by id and heading."""
    named = list(ids)
    marks = ",".join("?" * len(named))
    rows = db.execute(f"select id, sections from {kind} where id in ({marks})", named)
    return {row[0]: json.loads(row[1]) for row in rows}


def with_text(db: sqlite3.Connection, drill: Drill) -> Drill:
    """A drill with its text."""
    return drill._replace(sections=sections(db, "drill", [drill.id]).get(drill.id, {}))


def gateways(db: sqlite3.Connection, lift_id: LiftId) -> frozenset[DrillId]:
    """The drills that every way from nothing to a lift passes."""
    return frozenset(DrillId(row[0]) for row in db.execute("select drill from gateway where lift = ?", (lift_id,)))


def _steps(db: sqlite3.Connection, lift_id: LiftId) -> Steps:
    number = {
        tuple(row[1:]): row[0]
        for row in db.execute(
            "select n, stage, first, last, left_out, speed, load, catch, helped from profile where lift = ? order by n",
            (lift_id,),
        )
    }
    sizes: list[array[int]] = []
    least: list[array[int]] = []
    for size_row, least_row in db.execute("select sizes, least from step_row where lift = ? order by n", (lift_id,)):
        sizes.append(array("H", size_row))
        least.append(array("H", least_row))
    return Steps(number, sizes, least)


def _with_earlier(db: sqlite3.Connection, fault_id: FaultId) -> dict[FaultId, Fault]:
    """A fault and the faults that may make it, without their text."""
    rows = db.execute(
        "select entry from fault where id = ?1 or id in (select earlier from cause where fault = ?1) order by id",
        (fault_id,),
    )
    return {found.id: found for found in (plain.fault_from(json.loads(row[0])) for row in rows)}


def shelf(db: sqlite3.Connection, lift_id: LiftId, fault_id: FaultId | None = None) -> Shelf:
    """All that questions about one lift need; BadInput if there is no such lift.

    With `fault_id`, of the lift's faults only that one and those that may make it: enough for its chain.
    """
    found = lift(db, lift_id)
    there = faults(db) if fault_id is None else _with_earlier(db, fault_id)
    return shelf_of(
        lift=found,
        drills=drills(db, found.serves),
        faults={each.id: each for each in there.values() if any(served in each.lifts for served in found.serves)},
        items=items(db),
        kits=kits(db),
        steps=_steps(db, lift_id),
    )
