"""What a chain was asked for, from the options as they were typed: its shelf, its fault and cause, its question."""

import sqlite3
from collections.abc import Mapping
from contextlib import suppress
from typing import Any, NamedTuple

from kb.ask.barred import quiet_part, quiet_shelf
from kb.ask.chain import Chain, NoChain, chain
from kb.ask.ending import within_ending
from kb.ask.matter import known_fault
from kb.ask.question import ChainQuestion
from kb.ask.shelf import Shelf
from kb.ask.together import Together
from kb.ask.under_weight import under_weight
from kb.commands.asked import Room, drills_named, shelf_to
from kb.commands.beside_asked import explains, seen_beside
from kb.commands.by_screen_asked import ByScreen, judged
from kb.commands.fault_meant import cause_meant
from kb.commands.leading import Leading, leading
from kb.errors import BadInput
from kb.terms import Fault, FaultId, LiftId, Load

__all__ = ["About", "about_of", "question_of", "shelf_asked", "sought", "unsure_said"]

QUIETLY = (
    "Quiet: it ends in the {part}, as the {lift} itself comes down with a bang; what shows only in the whole lift is"
    " looked at again where there may be noise. Rubber soles that grip, bare feet with a stick only, never socks; what"
    " is held is put down by hand, and a lost bar is let go all the same."
)
"""What is minded where nothing may bang. Common practice, no source."""


def shelf_asked(db: sqlite3.Connection, lift: LiftId, to: str | None, *, quiet: bool) -> tuple[Shelf, tuple[str, ...]]:
    """What the chain is made of, and what is to be said of where it ends."""
    shelf, said = shelf_to(db, lift, to), tuple[str, ...]()
    part = quiet_part(shelf) if quiet and not to else None
    if part is not None:
        said = (QUIETLY.format(lift=shelf.lift.name.lower(), part=shelf.drills[part].name.lower()),)
        shelf = shelf_to(db, lift, part)
    shelf = within_ending(shelf) if to or part else shelf
    return (quiet_shelf(shelf) if quiet else shelf), said


class About(NamedTuple):
    """The fault that is answered about, what leads there, what was seen too, what a screen says, the causes named."""

    fault: Fault
    leads: Leading
    too: tuple[Together, ...]
    judged_by: ByScreen | None
    cause: str | None
    also: frozenset[str] = frozenset()


def about_of(db: sqlite3.Connection, shelf: Shelf, fault_id: FaultId, asked: Mapping[str, Any]) -> About:
    """What the options say the answer is about. Raises BadInput for a cause, a fault or a number that there isn't."""
    leads = leading(db, shelf, fault_id, asked["first"], stays=asked["cause"] is not None)
    fault = known_fault(shelf, leads.fault)
    too = seen_beside(db, shelf, fault.id, fault_id, asked["also_seen"])
    judged_by = judged(db, fault, shelf.lift, asked["screen"]) if asked["screen"] else None
    named = cause_meant(fault, asked["cause"]) or (judged_by.cause if judged_by else None)
    also = {cause_meant(fault, each) for each in asked["also_cause"]}
    return About(fault, leads, too, judged_by, named, frozenset(filter(None, also)) - {named or fault.causes[0].id})


def sought(shelf: Shelf, fault: Fault, question: ChainQuestion, asked: Mapping[str, Any]) -> Chain:
    """The chain; for a cause that needs weight, where it shows only from some weight on and nobody named one.

    Raises NoChain where there is none for the question as it was asked.
    """
    heavy = under_weight(fault) if asked["shows_from"] or asked["load"] == Load.WORKING.word else None
    if question.cause is None and heavy is not None:
        with suppress(NoChain):
            return chain(shelf, question._replace(cause=heavy))
    return chain(shelf, question)


def unsure_said(said: str | None) -> bool:
    """Whether what was said asks for the cause."""
    if said is None:
        return False
    from kb.ask.unsure import unsure

    return unsure(said)


def question_of(
    db: sqlite3.Connection, shelf: Shelf, about: About, room: Room, asked: Mapping[str, Any]
) -> ChainQuestion:
    """The question for the chain. Raises BadInput for a drill or a joint that there isn't."""
    load = Load[asked["load"].upper()] if asked["load"] else Load.WORKING if asked["shows_from"] else None
    return ChainQuestion(
        fault=about.fault.id,
        have=room.have,
        cause=about.cause or explains(about.fault, about.too),
        load=load,
        seconds=60 * asked["minutes"] if asked["minutes"] else None,
        holds=drills_named(db, asked["holds"]),
        at_most=asked["at_most"],
        routes=asked["routes"],
        stiff=_stiff(about.fault, shelf, asked["stiff"]),
        least=Load.LIGHT if asked["shows_from"] else Load.NONE,
    )


def _stiff(fault: Fault, shelf: Shelf, typed: str | None) -> frozenset[str]:
    """The joints that were typed; BadInput for one that no drill for this fault opens."""
    named = frozenset(each.strip() for each in (typed or "").split(",") if each.strip())
    known = {
        joint
        for drill in shelf.drills.values()
        for joint in drill.opens
        if any(said.fault == fault.id for said in drill.faults)
    }
    for each in sorted(named - known):
        raise BadInput(f"no drill for {fault.name.lower()} opens a joint {each!r}", nearest=tuple(sorted(known)))
    return named
