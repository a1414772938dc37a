"""A standard can't be met: more must be right than are done, or more are done than the dose holds.

Why it matters: the standard is when to move on. If it can't be met, nobody ever does.

Wrong:

    dose: {rounds: 2, reps: 3}
    standard: {count: 5, of: 8, seen: "bar over mid-foot at the knee"}

Right:

    dose: {rounds: 2, reps: 3}
    standard: {count: 5, of: 6, seen: "bar over mid-foot at the knee"}
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import Drill, Lift

__all__ = ["CODE", "rule"]

CODE = "impossible-standard"


def rule(library: Library) -> Iterator[Problem]:
    """Every standard that nobody can meet."""
    judged: tuple[Lift | Drill, ...] = (*library.lifts.values(), *library.drills.values())
    for record in judged:
        count, of = record.standard.count, record.standard.of
        if count > of:
            message = f"{count} of {of} can't be right."
            yield at(library, record.id, "standard", CODE, message, f"Write {{count: {of}, of: {count}}}.")
    for drill in library.drills.values():
        dose, of = drill.dose, drill.standard.of
        # a hold without repetitions counts as one, each side counts, and of good ones only they do
        done = (dose.good or dose.rounds * max(dose.reps, 1)) * dose.sides
        if of > done:
            message = f"The standard looks at {of}, and the dose has only {done}."
            yield at(library, drill.id, "standard", CODE, message, "Look at fewer, or do more.")
