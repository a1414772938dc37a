"""Every default question for a chain, answered once: one page for each chain that differs, found from each kit.

Two questions share a page when what is printed would be the same: the same fault, cause and lift, and the same
drills at the same loads with the same gear. The page is named after the smallest kit that leads to it.
"""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from kb.ask.chain import Chain, NoChain, chain
from kb.ask.matter import matter_of
from kb.ask.question import ChainQuestion
from kb.ask.rehearse import Rehearsal, rehearse
from kb.ask.route import Entry
from kb.ask.shelf import Shelf
from kb.dose import minutes
from kb.show.page.stock import Stock
from kb.terms import Fault, FaultId, Lift, LiftId

__all__ = ["Asked", "Prepared", "prepare"]


class Asked(NamedTuple):
    """A question and its answer: a chain, or why there is none and what can be rehearsed.

    `kits` are those with which the answer is the same.
    """

    fault: Fault
    cause: str
    lift: Lift
    kits: tuple[str, ...]
    found: Chain | None
    why: str = ""
    rehearsal: Rehearsal | None = None


class Prepared(NamedTuple):
    """A fault's answers by the name of their page, and that name for every question."""

    answers: Mapping[str, Asked]
    names: Mapping[tuple[str, LiftId, str], str]

    def name(self, cause: str, lift: LiftId, kit: str) -> str:
        """The name of the page that answers for a cause, a lift and a kit."""
        return self.names[cause, lift, kit]

    def ways(self, cause: str, lift: LiftId, kits: Iterable[str]) -> dict[str, list[str]]:
        """The pages that answer with some kits, in the kits' order, each with those that lead to it."""
        found: dict[str, list[str]] = {}
        for kit in kits:
            found.setdefault(self.name(cause, lift, kit), []).append(kit)
        return found

    def beside(self, cause: str, lift: LiftId, kit: str) -> str:
        """How long that answer takes, or that there is none."""
        found = self.answers[self.name(cause, lift, kit)].found
        return f"{minutes(found.routes[0].seconds)} min" if found else "no chain"


def prepare(stock: Stock, fault_id: FaultId) -> Prepared:
    """Answer the questions of every cause, lift and kit for one fault; KeyError if there is no such fault."""
    fault = stock.faults[fault_id]
    answers: dict[str, Asked] = {}
    names: dict[tuple[str, LiftId, str], str] = {}
    for lift, cause in ((lift, cause.id) for lift in fault.lifts for cause in fault.causes):
        seen: dict[object, str] = {}
        for kit in stock.kits_by_size():
            asked = _asked(stock.shelves[lift], fault, cause, kit)
            name = seen.setdefault(_printed(asked), ".".join((fault.id, cause, lift, kit)))
            answers[name] = answers[name]._replace(kits=(*answers[name].kits, kit)) if name in answers else asked
            names[cause, lift, kit] = name
    return Prepared(answers, names)


def _asked(shelf: Shelf, fault: Fault, cause: str, kit: str) -> Asked:
    question = ChainQuestion(fault=fault.id, cause=cause, have=shelf.kits[kit])
    try:
        return Asked(fault, cause, shelf.lift, (kit,), chain(shelf, question))
    except NoChain as none:
        found = rehearse(matter_of(shelf, question))
        return Asked(fault, cause, shelf.lift, (kit,), None, str(none), found)


def _printed(asked: Asked) -> object:
    """What would be printed, as far as it can differ between kits."""
    if asked.found is None:
        rehearsal = asked.rehearsal
        if rehearsal is None:
            return asked.why
        drills = tuple(drill.id for drill in rehearsal.drills)
        return asked.why, drills, _done(rehearsal.entries), bool(rehearsal.session), rehearsal.would_open
    return (
        tuple(_done(route.entries) + tuple(route.sittings) for route in asked.found.routes),
        tuple(drill.id for drill in asked.found.finish),
        _done(asked.found.strengthen),
    )


def _done(entries: Iterable[Entry]) -> tuple[object, ...]:
    """Each entry as far as kits can make it differ."""
    return tuple((entry.drill.id, entry.load, entry.work, entry.gear) for entry in entries)
