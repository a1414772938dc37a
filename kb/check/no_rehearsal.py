"""With one of the library's kits a fault has neither a chain nor anything to rehearse.

Without a chain, what addresses the cause, or else the fault, can still be rehearsed, though nothing there
tests it. The full kit is judged by `no-chain`.

Why it matters: a kit is a promise to whoever has it. Somebody at home with a stick and a fault must be given
at least the nearest thing.

Wrong:

    # every drill for the fault needs a bar at light load
    load: [light, working]
    equipment: [bar]

Right:

    load: [stick, light]
    equipment: [bar]         # a stick stands in, capped at stick
"""

from collections.abc import Iterator

from kb.check.answers import Answers
from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import FaultId, LiftId

__all__ = ["CODE", "rule"]

CODE = "no-rehearsal"


def rule(library: Library, asked: Answers) -> Iterator[Problem]:
    """Every cause and lift for which kits give nothing at all, the kits together."""
    lacking: dict[tuple[FaultId, int, LiftId], list[str]] = {}
    for answer in asked.chains:
        asked_of = answer.question
        if asked_of.kit != "full" and not answer.drills and not answer.rehearsed:
            n = [cause.id for cause in library.faults[asked_of.fault].causes].index(asked_of.cause)
            lacking.setdefault((asked_of.fault, n, asked_of.lift), []).append(asked_of.kit)
    for (fault_id, n, lift_id), kits in lacking.items():
        cause, lift = library.faults[fault_id].causes[n], library.lifts[lift_id].name.lower()
        kit = f"kit {kits[0]}" if len(kits) == 1 else f"kits {', '.join(kits)}"
        message = f"For `{cause.id}` in the {lift} the {kit} give{'s' * (len(kits) == 1)} neither chain nor rehearsal."
        help_ = "Write a drill for this fault that can be done with that kit."
        yield at(library, fault_id, f"causes.{n}", CODE, message, help_)
