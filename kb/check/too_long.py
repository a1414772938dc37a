"""A text is longer than can be read between two groups.

A drill's body has at most 260 words and its standard 20; what a regression eases takes 12, `turn_up` 30; of a fault,
*Looks like* has 90 words, *Look first* 160 and *Mistaken for* 60; `gone` has 14, a cause's `throughout` 45.

Why it matters: it is read on a phone, standing up, with people waiting. Past a screen or two it isn't read.

Wrong:

    standard: {count: 3, of: 3, seen: "the bar stays over the middle of the foot from the moment that it leaves
      the floor until the hips are straight, and the heels are down until then, and the arms are long"}

Right:

    standard: {count: 3, of: 3, seen: "bar over mid-foot and arms long until the hips are straight"}
"""

from collections.abc import Iterator

from kb.check.long_cue import words
from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import Drill, Lift

__all__ = ["CODE", "MOST_WORDS", "rule"]

CODE = "too-long"

MOST_WORDS = {
    "body": 260,
    "standard": 20,
    "eases": 12,
    "turn_up": 30,
    "Looks like": 90,
    "Look first": 160,
    "Mistaken for": 60,
    "gone": 14,
    "throughout": 45,
}
"""Words at most. 260 are two screens of a phone; the others a line or a few. Common practice, no source."""


def rule(library: Library) -> Iterator[Problem]:
    """Every text that is too long."""
    judged: tuple[Lift | Drill, ...] = (*library.lifts.values(), *library.drills.values())
    for record in judged:
        yield from _judged(library, record.id, "standard", "The standard", "standard", record.standard.seen)
    for drill in library.drills.values():
        whole = " ".join(text for heading, text in drill.sections.items() if heading != "Sources")
        first = next((f"## {heading}" for heading in drill.sections), "")
        yield from _judged(library, drill.id, first, "The body", "body", whole)
        for n, easier in enumerate(drill.regressions):
            yield from _judged(library, drill.id, f"regressions.{n}", "`eases`", "eases", easier.eases)
        yield from _judged(library, drill.id, "turn_up", "`turn_up`", "turn_up", drill.turn_up or "")
    for fault in library.faults.values():
        yield from _judged(library, fault.id, "gone", "`gone`", "gone", fault.gone)
        for n, cause in enumerate(fault.causes):
            yield from _judged(library, fault.id, f"causes.{n}", "`throughout`", "throughout", cause.throughout)
        for heading in ("Looks like", "Look first", "Mistaken for"):
            text = fault.sections.get(heading, "")
            yield from _judged(library, fault.id, f"## {heading}", f"`## {heading}`", heading, text)


def _judged(library: Library, owner: str, path: str, what: str, limit: str, text: str) -> Iterator[Problem]:
    count, most = len(words(text)), MOST_WORDS[limit]
    if count > most:
        message = f"{what} has {count} words, and {most} are the most that are read."
        yield at(library, owner, path, CODE, message, "Keep what changes what the reader does next.")
