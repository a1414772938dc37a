"""What else was seen in the lift beside the fault asked about: `--also-seen`."""

import sqlite3
from collections import Counter
from collections.abc import Sequence
from typing import TYPE_CHECKING

from kb.ask.chain import Chain
from kb.ask.names import resolve
from kb.ask.shelf import Shelf
from kb.ask.together import Together, together
from kb.ask.with_text import chain_with_text
from kb.terms import Fault, FaultId

if TYPE_CHECKING:
    from kb.show.beside import Beside

__all__ = ["besides", "explains", "seen_beside"]


def seen_beside(
    db: sqlite3.Connection, shelf: Shelf, about: FaultId, asked: FaultId, names: Sequence[str]
) -> tuple[Together, ...]:
    """What each fault that was seen too is to the one that the answer is about, nothing twice.

    Where that isn't the fault `asked`, since what is looked at first sends to another, the asked one is the first of
    these. Raises BadInput for what is no fault of this lift, or is the fault asked about.
    """
    others = dict.fromkeys(FaultId(resolve(db, "fault", name, lift=shelf.lift.id)) for name in names)
    if about != asked:
        others = {each: None for each in (asked, *others) if each != about}
        asked = about
    return tuple(together(shelf.faults, shelf.lift, asked, other) for other in others)


def explains(fault: Fault, seen: Sequence[Together]) -> str | None:
    """The cause that most of what was seen too points to, the commonest of several; None where nothing points."""
    counted = Counter(each.cause.id for each in seen if each.cause is not None)
    return max(
        (cause.id for cause in fault.causes if cause.id in counted), key=lambda each: counted[each], default=None
    )


def besides(
    db: sqlite3.Connection, found: Chain, seen: Sequence[Together], asked: FaultId, *, named: bool
) -> tuple["Beside", ...]:
    """What was seen too as it is told: with a chain of its own in short where the answer doesn't work on it.

    The fault `asked` has its own whatever the answer works on.
    """
    return tuple(_beside(db, found, each, named=named, own=each.other.id == asked) for each in seen)


def _beside(db: sqlite3.Connection, found: Chain, seen: Together, *, named: bool, own: bool) -> "Beside":
    from kb.ask.instead import for_fault
    from kb.show.beside import Beside

    matter = found.matter
    drills = tuple(
        dict.fromkeys(
            entry.drill.name
            for entry in found.routes[0].entries
            if entry.drill.id != matter.shelf.lift.drill
            and any(each.fault == seen.other.id for each in entry.drill.faults)
        )
    )
    fear = matter.cause.kind == "nerve" and any(cause.kind == "nerve" for cause in seen.other.causes)
    taken = not named and seen.cause is not None and seen.cause.id == matter.cause.id
    about = None
    if own or (seen.source is None and seen.relation != "made" and not taken):
        about = seen.other
    elif seen.source is not None and seen.source.id != matter.worked.id:
        about = seen.source
    if about is None:
        return Beside(seen, taken, drills=drills, fear=fear)
    short = for_fault(matter, about)
    if short.chain is not None:
        short = short._replace(chain=chain_with_text(db, short.chain))
    return Beside(seen, taken, about, short, asked=own, drills=drills, fear=fear)
