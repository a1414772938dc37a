"""A question as an address asks it: fault, cause, lift, kit or gear, minutes, load, drills held."""

import sqlite3
from collections.abc import Mapping

from kb.ask.chain import NoChain, chain
from kb.ask.matter import matter_of
from kb.ask.names import resolve, resolve_all
from kb.ask.question import ChainQuestion
from kb.ask.rehearse import rehearse
from kb.errors import BadInput
from kb.show.page.prepared import Asked
from kb.show.page.stock import Stock
from kb.terms import DrillId, FaultId, ItemId, LiftId, Load

__all__ = ["LONGEST_MINUTES", "asked_of"]

LONGEST_MINUTES = 600
"""Minutes; a longer session than that is a slip of the finger."""

Query = Mapping[str, str]


def asked_of(db: sqlite3.Connection, stock: Stock, query: Query) -> Asked:
    """The question of an address, answered.

    Raises BadInput, with the nearest right values, for anything that can't be understood.
    """
    fault = stock.faults[FaultId(resolve(db, "fault", query.get("fault", ""), lift=query.get("lift") or None))]
    lift = _lift(db, fault.lifts, query.get("lift", ""))
    kit = query.get("kit") or ("" if query.get("have") else "full")
    have = _have(db, stock, kit, query.get("have", ""))
    question = ChainQuestion(
        fault=fault.id,
        cause=query.get("cause") or None,
        have=have,
        load=_load(query.get("load", "")),
        seconds=_seconds(query.get("minutes", "")),
        holds=frozenset(DrillId(each) for each in resolve_all(db, "drill", query.get("holds", "").split(","))),
    )
    shelf, kits = stock.shelves[lift], (kit,) if kit else ()
    matter = matter_of(shelf, question)
    try:
        return Asked(fault, matter.cause.id, shelf.lift, kits, chain(shelf, question))
    except NoChain as none:
        return Asked(fault, matter.cause.id, shelf.lift, kits, None, str(none), rehearse(matter))


def _lift(db: sqlite3.Connection, lifts: tuple[LiftId, ...], said: str) -> LiftId:
    if not said:
        return lifts[0]
    lift = LiftId(resolve(db, "lift", said))
    if lift not in lifts:
        raise BadInput(f"this fault isn't seen in the {lift}", nearest=lifts)
    return lift


def _have(db: sqlite3.Connection, stock: Stock, kit: str, said: str) -> frozenset[ItemId]:
    if not kit:
        return frozenset(ItemId(item) for item in resolve_all(db, "equipment", said.split(",")))
    if kit not in stock.kits:
        raise BadInput(f"there is no kit {kit!r}", nearest=tuple(sorted(stock.kits)))
    return stock.kits[kit]


def _load(said: str) -> Load | None:
    words = [load.word for load in Load]
    if said and said not in words:
        raise BadInput(f"there is no load {said!r}", nearest=tuple(words))
    return Load[said.upper()] if said else None


def _seconds(said: str) -> int | None:
    if not said:
        return None
    if not (said.isascii() and said.isdigit() and 1 <= int(said[:6]) <= LONGEST_MINUTES):
        raise BadInput(f"minutes must be a whole number from 1 to {LONGEST_MINUTES}")
    return 60 * int(said)
