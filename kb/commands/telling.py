"""How the answer of `drillpath chain` is told to one lifter: in kilograms, over weeks, with what else was seen."""

import sqlite3
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

from kb.ask import read
from kb.ask.chain import Chain
from kb.ask.shelf import Shelf
from kb.ask.together import Together
from kb.commands.beside_asked import besides
from kb.commands.leading import Leading

if TYPE_CHECKING:
    from kb.show.heavy import Heavy
    from kb.show.telling import Telling

__all__ = ["Lifter", "heavy_of", "telling_json", "telling_of"]


class Lifter(NamedTuple):
    """What was said of one lifter: what leads, what was seen too, bests and their bar, weeks to a day that counts.

    `named` says whether the cause was named, by the coach or by a screen.
    """

    leads: Leading
    seen: Sequence[Together]
    best: tuple[str, ...]
    bar: str
    weeks: int | None
    named: bool


def heavy_of(db: sqlite3.Connection, best: Sequence[str], bar: str) -> "Heavy":
    """How heavy each drill is told to be: shares of a best, or kilograms. Raises BadInput for a best that is none."""
    from kb.show.heavy import in_kilograms, shares

    if not best:
        return shares
    from kb.commands.load_asked import bests_of
    from kb.discs import iron_of

    return in_kilograms(bests_of(db, best, "kg"), iron_of(bar))


def telling_of(db: sqlite3.Connection, found: Chain, lifter: Lifter) -> "Telling":
    """All of it. Raises BadInput for a best that is none."""
    from kb.show.telling import Telling

    return Telling(
        lifter.leads.text,
        lifter.leads.number,
        heavy=heavy_of(db, lifter.best, lifter.bar),
        numbers=_numbers(db, found.matter.shelf, lifter.best),
        weeks=lifter.weeks,
        besides=besides(db, found, lifter.seen, named=lifter.named),
    )


def _numbers(db: sqlite3.Connection, shelf: Shelf, best: Sequence[str]) -> tuple[str, ...]:
    """What the bests say of one another; nothing without them."""
    if not best:
        return ()
    from kb.commands.load_asked import bests_of
    from kb.show.by_numbers import by_numbers

    drills = read.drills(db)
    names = {str(each.id): each.name for group in (read.lifts(db), drills) for each in group.values()}
    return tuple(by_numbers(shelf.lift, bests_of(db, best, "kg", drills), names))


def telling_json(db: sqlite3.Connection, found: Chain, lifter: Lifter) -> dict[str, Any]:
    """What was asked for of the telling, for programs: nothing where nothing was."""
    more: dict[str, Any] = {}
    if lifter.best:
        more["numbers"] = list(_numbers(db, found.matter.shelf, lifter.best))
    if lifter.weeks is not None:
        from kb.show.over_weeks import over_weeks

        more["weeks"] = over_weeks(lifter.weeks, found.matter.fault.gone)
    if lifter.seen:
        from kb.show.beside import beside_json

        told = besides(db, found, lifter.seen, named=lifter.named)
        more["also_seen"] = [beside_json(each) for each in told]
    return more
