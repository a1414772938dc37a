"""With the full kit there is no chain for a cause of a fault, in a lift that the fault is seen in.

A cause that no drill addresses at all is told by `unaddressed-cause`, and not again here.

Why it matters: this is the question that the library is for. With everything there is in the room, a coach
who has found the cause must get an answer.

Wrong:

    # the only drill for the cause is done at working load, and nothing in a chain but the lift is
    faults: [{fault: cuts-pull-short, cause: in-a-hurry-under}]
    load: working

Right:

    faults: [{fault: cuts-pull-short, cause: in-a-hurry-under}]
    load: [stick, light]
"""

from collections.abc import Iterator

from kb.check.answers import Answers
from kb.check.unaddressed_cause import unaddressed
from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "no-chain"


def rule(library: Library, asked: Answers) -> Iterator[Problem]:
    """Every cause that has no chain with the full kit, once for each lift."""
    told = {(fault.id, cause.id, lift.id) for fault, cause, lifts in unaddressed(library) for lift in lifts}
    for (lift_id, fault, cause, kit), answer in ((each.question, each) for each in asked.chains):
        if kit != "full" or answer.drills or (fault, cause, lift_id) in told:
            continue
        lift = library.lifts[lift_id].name.lower()
        message = f"There is no chain for `{cause}` in the {lift} with the full kit: {answer.why}."
        help_ = "Look at what addresses it, at that drill's prerequisites and at `shows_at`."
        n = [each.id for each in library.faults[fault].causes].index(cause)
        yield at(library, fault, f"causes.{n}", CODE, message, help_)
