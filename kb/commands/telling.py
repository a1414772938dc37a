"""How the answer of `drillpath chain` is told to one lifter: in kilograms, over weeks, with what else was seen."""

import sqlite3
from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

from kb.ask import read
from kb.ask.chain import Chain
from kb.ask.shelf import Shelf
from kb.ask.together import Together
from kb.commands.beside_asked import besides
from kb.commands.leading import Leading
from kb.commands.said import SaidOf
from kb.kit import BARS
from kb.terms import FaultId, ItemId, Lift

if TYPE_CHECKING:
    from kb.show.heavy import Heavy
    from kb.show.telling import Telling

DISCS = frozenset(map(ItemId, ("discs", "light-discs")))

__all__ = ["Lifter", "heavy_of", "telling_json", "telling_of"]


class Lifter(NamedTuple):
    """What was said of one lifter: the fault asked about, what leads, what was seen too, bests, their bar, weeks left.

    `named` says whether the cause was named, by the coach or by a screen; `beside` is what came of other words.
    """

    asked: FaultId
    leads: Leading
    seen: Sequence[Together]
    best: tuple[str, ...]
    bar: str
    weeks: int | None
    named: bool
    shows_from: float | None = None
    beside: SaidOf = SaidOf()

    @classmethod
    def of(
        cls,
        asked: FaultId,
        leads: Leading,
        seen: Sequence[Together],
        typed: Mapping[str, Any],
        *,
        named: bool,
        beside: SaidOf,
    ) -> "Lifter":
        """From the options as they were typed."""
        options = (typed["best"], typed["bar"], typed["weeks"])
        return cls(asked, leads, seen, *options, named, typed["shows_from"], beside)


def heavy_of(
    db: sqlite3.Connection,
    lift: Lift,
    best: Sequence[str],
    bar: str,
    shows_from: float | None,
    have: frozenset[ItemId],
) -> "Heavy":
    """How heavy each drill is told to be: shares of a best, or kilograms; without discs no more than the bar.

    Raises BadInput for a best that is none.
    """
    from kb.show.heavy import bare, in_kilograms, shares

    if have.isdisjoint(DISCS):
        return bare
    if not best and shows_from is None:
        return shares
    from kb.commands.load_asked import bests_of
    from kb.discs import iron_of

    bests = bests_of(db, best, "kg")
    iron = iron_of(bar)
    heavy = in_kilograms(bests, iron) if best else shares
    if shows_from is None:
        return heavy
    from kb.show.where_it_shows import from_where_it_shows

    its_best = bests.get(lift.id)
    lifts = frozenset(map(str, (lift.id, *lift.parts)))
    return from_where_it_shows(shows_from, its_best.kg if its_best else None, lifts, heavy, iron.least)


def telling_of(db: sqlite3.Connection, found: Chain, lifter: Lifter) -> "Telling":
    """All of it. Raises BadInput for a best that is none."""
    from kb.show.telling import Telling

    return Telling(
        lifter.leads.text,
        lifter.leads.number,
        heavy=heavy_of(
            db, found.matter.shelf.lift, lifter.best, lifter.bar, lifter.shows_from, found.matter.question.have
        ),
        numbers=_numbers(db, found.matter.shelf, found.matter.question.have, lifter),
        weeks=lifter.weeks,
        besides=besides(db, found, lifter.seen, lifter.asked, named=lifter.named),
        caution=lifter.beside.caution,
        minds=lifter.beside.minds,
        cause_named=lifter.named,
        shows_from=lifter.shows_from is not None,
    )


def _numbers(db: sqlite3.Connection, shelf: Shelf, have: frozenset[ItemId], lifter: Lifter) -> tuple[str, ...]:
    """What the bests say of one another, and what it means that it shows from some weight on; nothing without them."""
    said: tuple[str, ...] = ()
    if lifter.shows_from is not None and not have.isdisjoint(BARS):
        from kb.commands.load_asked import bests_of
        from kb.show.where_it_shows import passed_said

        its_best = bests_of(db, lifter.best, "kg").get(shelf.lift.id) if lifter.best else None
        said = (passed_said(lifter.shows_from, its_best.kg if its_best else None),)
    if not lifter.best:
        return said
    from kb.commands.load_asked import bests_of
    from kb.show.by_numbers import by_numbers

    drills = read.drills(db)
    names = {str(each.id): each.name for group in (read.lifts(db), drills) for each in group.values()}
    return (*said, *by_numbers(shelf.lift, bests_of(db, lifter.best, "kg", drills), names))


def telling_json(db: sqlite3.Connection, found: Chain, lifter: Lifter) -> dict[str, Any]:
    """What was asked for of the telling, for programs: nothing where nothing was."""
    more: dict[str, Any] = {}
    if lifter.best or lifter.shows_from is not None:
        more["numbers"] = list(_numbers(db, found.matter.shelf, found.matter.question.have, lifter))
    if lifter.weeks is not None:
        from kb.show.over_weeks import over_weeks

        more["weeks"] = over_weeks(lifter.weeks, found.matter.fault.gone)
    if lifter.beside.caution:
        more["caution"] = lifter.beside.caution
    if lifter.beside.minds:
        more["minds"] = list(lifter.beside.minds)
    if lifter.seen:
        from kb.show.beside import beside_json

        told = besides(db, found, lifter.seen, lifter.asked, named=lifter.named)
        more["also_seen"] = [beside_json(each) for each in told]
    return more
