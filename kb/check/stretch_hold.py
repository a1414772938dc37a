"""A stretch is held outside the published position on flexibility: too short, too long, too seldom or too often.

A drill of preparation that is a hold alone, on each side: held 10 to 30 s, two to four times, 60 s or more in
all, so 4 of 15 s, 3 of 20 s or 2 of 30 s. Older adults may hold to 60 s; an entry that means them says "older"
in its text, and then 1 to 4 holds will do. Repetitions with a hold at their end aren't judged by it.

Why it matters: under 60 s in all little is gained; a hold of 60 s and more before lifting costs strength for the
session that follows. The source is the position stand of the American College of Sports Medicine (Garber 2011).

Wrong:

    dose: {rounds: 1, hold_s: 45, sides: 2}

Right:

    dose: {rounds: 2, hold_s: 30, sides: 2, rest_s: 10}
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import Drill, Stage

__all__ = ["CODE", "HELD_S", "IN_ALL_S", "OLDER_S", "TIMES", "rule"]

CODE = "stretch-hold"

HELD_S = (10, 30)
"""How long a stretch is held, s (4.01, Garber 2011)."""

OLDER_S = 60
"""How long older adults hold it at most, s (4.01, Garber 2011)."""

TIMES = (2, 4)
"""How often (4.01, Garber 2011)."""

IN_ALL_S = 60
"""How long in all, each side, s (4.02, on Garber 2011)."""

_SOURCE = "the position stand on flexibility (ACSM, Garber 2011)"


def rule(library: Library) -> Iterator[Problem]:
    """Every stretch that is held otherwise."""
    for drill in library.drills.values():
        dose = drill.dose
        if drill.stage is not Stage.PREPARE or dose.reps or not dose.hold_s:
            continue
        for message in _otherwise(drill):
            yield at(library, drill.id, "dose", CODE, message, "Write 4 of 15 s, 3 of 20 s or 2 of 30 s.")


def _otherwise(drill: Drill) -> Iterator[str]:
    older = any("older" in text.lower() for text in drill.sections.values())
    hold, times = drill.dose.hold_s, drill.dose.rounds
    least, most = HELD_S[0], OLDER_S if older else HELD_S[1]
    fewest = 1 if hold > HELD_S[1] else TIMES[0]
    if not least <= hold <= most:
        yield f"It is held {hold} s, and {_SOURCE} says {least} to {most} s."
    elif not fewest <= times <= TIMES[1]:
        said = "once" if times == 1 else f"{times} times"
        yield f"It is held {said}, and {_SOURCE} says {TIMES[0]} to {TIMES[1]}."
    elif hold * times < IN_ALL_S:
        yield f"It is held {hold * times} s in all, and {_SOURCE} says {IN_ALL_S} s."
