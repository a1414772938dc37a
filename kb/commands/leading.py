"""What leads the answer of `drillpath chain`: one of the things to look at first, and the fault that it sends to."""

import sqlite3
from typing import NamedTuple

from kb.ask import read
from kb.ask.shelf import Shelf
from kb.terms import FaultId

__all__ = ["Leading", "leading"]


class Leading(NamedTuple):
    """What leads, in Markdown and plain; its number in the list of the chain's `fault`, None if that is another."""

    fault: FaultId
    text: str = ""
    plain: str = ""
    number: int | None = None


def leading(db: sqlite3.Connection, shelf: Shelf, fault_id: FaultId, number: int | None, *, stays: bool) -> Leading:
    """What was chosen by its number, None for nothing; where it says to start with one other fault, that fault.

    It `stays` with the one that was named where its cause was named too. Raises BadInput for a number that there isn't.
    """
    if number is None or fault_id not in shelf.faults:
        return Leading(fault_id)
    from kb.show.coach_words import plain_markdown
    from kb.show.look_first import first_said, sends_to

    fault = shelf.faults[fault_id]
    fault = fault._replace(sections=read.sections(db, "fault", [fault_id])[fault_id])
    text, others = first_said(fault, number), sends_to(fault, number)
    found = [each for each in shelf.faults.values() if each.name in others]
    if len(found) != 1 or stays:
        return Leading(fault_id, text, plain_markdown(text), number)
    (other,) = found
    text += " So the drills are for that one."
    return Leading(other.id, text, plain_markdown(text))
