"""A dose can't be done: nothing is done in it, or a number is out of bounds.

Rounds 1 to 6, repetitions up to 12, a hold of 5 to 60 s, rest up to 180 s, 1 or 2 sides. There is a
repetition or a hold, or both; a tempo needs repetitions, takes some time, and no part of it over 30 s.

Why it matters: sessions are reckoned to the second from doses. One slip of a digit, and a class runs over.

Wrong:

    dose: {rounds: 3, hold_s: 200}

Right:

    dose: {rounds: 3, hold_s: 20, rest_s: 40}
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.limits import LIMITS, LONGEST_BEAT_S, SHORTEST_HOLD_S
from kb.make.structure.known import at
from kb.terms import Dose, Drill

__all__ = ["CODE", "rule"]

CODE = "impossible-dose"


def rule(library: Library) -> Iterator[Problem]:
    """Every number of a dose that can't be."""
    for drill in library.drills.values():
        for path, message in (*_numbers(drill), *_together(drill.dose)):
            yield at(library, drill.id, path, CODE, message)


def _numbers(drill: Drill) -> Iterator[tuple[str, str]]:
    for name, (least, most) in LIMITS.items():
        inside = name not in ("set_up_s", "teach_s")
        value = getattr(drill.dose if inside else drill, name)
        if not least <= value <= most:
            yield (f"dose.{name}" if inside else name), f"`{name}` must be {least} to {most}, not {value}."


def _together(dose: Dose) -> Iterator[tuple[str, str]]:
    if dose.reps == 0 and dose.hold_s == 0:
        yield "dose", "The dose has neither `reps` nor `hold_s`, so nothing is done."
    if 0 < dose.hold_s < SHORTEST_HOLD_S:
        yield "dose.hold_s", f"A hold lasts {SHORTEST_HOLD_S} s or more; a shorter one is a pause in the tempo."
    if dose.tempo is None:
        return
    if not all(0 <= beat <= LONGEST_BEAT_S for beat in dose.tempo):
        yield "dose.tempo", f"Each part of a tempo is 0 to {LONGEST_BEAT_S} s."
    elif not any(dose.tempo):
        yield "dose.tempo", "A repetition takes some time."
    if dose.reps == 0:
        yield "dose.tempo", "A tempo is of repetitions, and there are none."
