"""How the answer of `drillpath chain` is told to one lifter: in kilograms, over weeks, with what else was seen."""

import math
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
from kb.commands.shows_from import ShowsFrom, in_kilograms_if_known
from kb.kit import BARS, TRAINING_BAR
from kb.terms import FaultId, ItemId, Lift

if TYPE_CHECKING:
    from kb.show.heavy import Heavy
    from kb.show.telling import Telling

__all__ = ["Lifter", "heavy_of", "telling_json", "telling_of"]

DISCS = frozenset(map(ItemId, ("discs", "light-discs")))
"""What goes on a bar: with none of it there is only the bar."""


class Lifter(NamedTuple):
    """What was said of one lifter: the fault asked about, what leads, what was seen too, bests, their bar, weeks left.

    `named` says whether the cause was named, by the coach or by a screen; `heaviest` is all that a bar there makes, kg;
    `beside` is what came of other words, `said`, and `helped` what made it right at once.
    """

    asked: FaultId
    leads: Leading
    seen: Sequence[Together]
    best: tuple[str, ...]
    bar: str
    weeks: int | None
    named: bool
    shows_from: ShowsFrom | None = None
    heaviest: float | None = None
    beside: SaidOf = SaidOf()
    helped: str = ""
    said: str | None = None

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
        weights = (typed["shows_from"], typed["heaviest"])
        return cls(asked, leads, seen, *options, named, *weights, beside, typed["helped"] or "", typed["said"])


def heavy_of(db: sqlite3.Connection, lift: Lift, lifter: Lifter, have: frozenset[ItemId]) -> "Heavy":
    """How heavy each drill is told to be: shares of a best, or kilograms; without discs no more than the bar.

    Raises BadInput for a best that is none.
    """
    from kb.show.heavy import bare, in_kilograms, no_more_than, shares

    if have.isdisjoint(DISCS):
        return bare
    heaviest = math.inf if lifter.heaviest is None else lifter.heaviest
    if not lifter.best and lifter.shows_from is None:
        return no_more_than(shares, heaviest) if lifter.heaviest else shares
    from kb.bests import RECKONED, reckoned
    from kb.commands.load_asked import bests_of
    from kb.discs import iron_of

    bests = reckoned(bests_of(db, lifter.best, "kg"))
    iron = iron_of(lifter.bar)._replace(most=heaviest)
    training = iron_of("training")._replace(most=heaviest)
    lighter = training if TRAINING_BAR in have and training.bar < iron.bar else None
    heavy = in_kilograms(bests, iron, lighter) if lifter.best else shares
    if lifter.shows_from is None:
        return heavy
    from kb.show.where_it_shows import from_where_it_shows

    known = {name: best.kg for name, best in bests.items() if best.formula != RECKONED}
    shows_from = in_kilograms_if_known(lifter.shows_from, known.get(lift.id))
    if shows_from.percent:
        near = from_where_it_shows(shows_from.amount, lift, {lift.id: 100}, heavy, 0, _of_the_best(lift))
        return no_more_than(near, heaviest) if lifter.heaviest else near
    return from_where_it_shows(min(shows_from.amount, heaviest), lift, known, heavy, (lighter or iron).least)


def _of_the_best(lift: Lift) -> str:
    """What shares of a best that isn't known are told in."""
    return f" % of the best {lift.name.lower()}"


def telling_of(db: sqlite3.Connection, found: Chain, lifter: Lifter) -> "Telling":
    """All of it. Raises BadInput for a best that is none."""
    from kb.show.telling import Telling

    return Telling(
        lifter.leads.text,
        lifter.leads.number,
        heavy=heavy_of(db, found.matter.shelf.lift, lifter, found.matter.question.have),
        numbers=_numbers(db, found.matter.shelf, found.matter.question.have, lifter),
        weeks=lifter.weeks,
        besides=besides(db, found, lifter.seen, lifter.asked, named=lifter.named),
        caution=lifter.beside.caution,
        minds=lifter.beside.minds,
        cause_named=lifter.named,
        shows_from=lifter.shows_from is not None,
        helped=lifter.helped,
        advice=_advice(found, lifter),
    )


def _advice(found: Chain, lifter: Lifter) -> tuple[str, ...]:
    """What is answered to advice in what was said; nothing where nothing was."""
    if lifter.said is None:
        return ()
    from kb.ask.advice import advised

    return advised(lifter.said, found.matter.cause)


def _numbers(db: sqlite3.Connection, shelf: Shelf, have: frozenset[ItemId], lifter: Lifter) -> tuple[str, ...]:
    """What the bests say of one another, and what it means that it shows from some weight on; nothing without them."""
    from kb.commands.load_asked import bests_of

    drills = read.drills(db) if lifter.best else {}
    bests = bests_of(db, lifter.best, "kg", drills)
    said: tuple[str, ...] = ()
    if lifter.shows_from is not None and not have.isdisjoint(BARS):
        from kb.show.where_it_shows import passed_said

        best = bests.get(shelf.lift.id)
        shows_from = in_kilograms_if_known(lifter.shows_from, best.kg if best else None)
        if shows_from.percent:
            said = (passed_said(shows_from.amount, 100, unit=_of_the_best(shelf.lift)),)
        else:
            said = (passed_said(shows_from.amount, best.kg if best else None, lifter.heaviest or math.inf),)
    if not bests:
        return said
    from kb.show.by_numbers import by_numbers

    names = {str(each.id): each.name for group in (read.lifts(db), drills) for each in group.values()}
    return (*said, *by_numbers(shelf.lift, bests, names))


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
    if lifter.helped:
        more["helped"] = lifter.helped
    advice = _advice(found, lifter)
    if advice:
        more["advice"] = list(advice)
    if lifter.beside.minds:
        more["minds"] = list(lifter.beside.minds)
    if lifter.seen:
        from kb.show.beside import beside_json

        told = besides(db, found, lifter.seen, lifter.asked, named=lifter.named)
        more["also_seen"] = [beside_json(each) for each in told]
    return more
