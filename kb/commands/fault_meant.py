"""Which fault, lift and cause a question means; when that can't be told, commands ready to paste."""

import sqlite3

import click

from kb.ask.names import resolve
from kb.commands.asked import again
from kb.errors import BadInput
from kb.terms import Fault, FaultId, LiftId
from kb.words import fold

__all__ = ["cause_meant", "fault_meant", "lift_meant"]


def fault_meant(ctx: click.Context, db: sqlite3.Connection, text: str, lift: LiftId | None) -> FaultId:
    """The fault meant by an id, a name or a beginning.

    Raises BadInput otherwise: with the caution where the words are of pain and the like, else with the
    three best faults as commands ready to paste.
    """
    try:
        return FaultId(resolve(db, "fault", text, lift=lift))
    except BadInput as unknown:
        from kb.ask.find import find

        found = find(db, text, lift=lift)
        if found.caution:
            raise BadInput(found.caution) from None
        if not found.faults:
            raise BadInput(f"there is no fault {text!r}, nor any that these words speak of") from None
        commands = []
        for hit in found.faults[:3]:
            which = {"lift": hit.lifts[0]} if lift is None and len(hit.lifts) > 1 else {}
            commands.append(again(ctx, hit.id, without=("cause",), **which))
        raise BadInput(_listed(f"{unknown}. Did you mean:", commands)) from None


def lift_meant(ctx: click.Context, db: sqlite3.Connection, fault: FaultId, lift: LiftId | None) -> LiftId:
    """The lift asked about: as said, or the fault's own when it has but one.

    Raises BadInput, with a command for each lift, when the fault is seen in several.
    """
    if lift is not None:
        return lift
    lifts = [row[0] for row in db.execute("select lift from fault_lift where fault = ? order by rowid", (fault,))]
    if len(lifts) == 1:
        return LiftId(lifts[0])
    commands = [again(ctx, fault, lift=each) for each in lifts]
    raise BadInput(_listed(f"{fault} is seen in more than one lift. Which do you mean?", commands))


def cause_meant(fault: Fault, text: str | None) -> str | None:
    """The cause meant by an id or an unambiguous beginning; BadInput with the fault's causes otherwise."""
    if text is None:
        return None
    key = fold(text)
    ids = [cause.id for cause in fault.causes]
    meant = [each for each in ids if fold(each) == key] or [each for each in ids if fold(each).startswith(key)]
    if len(meant) != 1:
        raise BadInput(f"{fault.id} has no cause {text!r}", nearest=tuple(meant or ids))
    return meant[0]


def _listed(sentence: str, commands: list[str]) -> str:
    return "\n  ".join([sentence, *commands])
