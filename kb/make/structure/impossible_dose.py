"""A dose can't be done: nothing is done in it, a number is out of bounds, or two ways of dosing are mixed.

Rounds 1 to 6 (intervals to 12), repetitions up to 12, a hold of 5 to 60 s, rest up to 180 s, 1 or 2 sides.
There is a repetition or a hold, or both; a tempo needs repetitions, takes some time, and no part of it over
30 s. With `good`, repetitions that must count, `reps` is the most a set has, and there is one round;
`success`, the tries expected to count, goes with it. With `every_s` a round starts by the clock: it fits into
its interval, and what is left of that is the rest, so `rest_s` is left out.

Why it matters: sessions are reckoned to the second from doses. One slip of a digit, and a class runs over.

Wrong:

    dose: {rounds: 3, hold_s: 200}
    dose: {rounds: 10, reps: 2, tempo: [20, 5, 20, 5], every_s: 60}

Right:

    dose: {rounds: 3, hold_s: 20, rest_s: 40}
    dose: {rounds: 10, reps: 2, tempo: [2, 1, 3, 2], every_s: 60}
    dose: {good: 30, success: 80, reps: 3, rest_s: 75}
"""

from collections.abc import Iterator

from kb.dose import round_seconds
from kb.errors import Problem
from kb.make.library import Library
from kb.make.limits import LIMITS, LONGEST_BEAT_S, MOST_ROUNDS, SHORTEST_HOLD_S
from kb.make.structure.known import at
from kb.terms import Dose, Drill

__all__ = ["CODE", "rule"]

CODE = "impossible-dose"


def rule(library: Library) -> Iterator[Problem]:
    """Every number of a dose that can't be."""
    for drill in library.drills.values():
        numbers = tuple(_numbers(drill))
        for path, message in (*numbers, *_together(drill.dose)):
            yield at(library, drill.id, path, CODE, message)
        if not numbers:  # what follows reckons with them
            for path, message in (*_counted(drill.dose), *_by_the_clock(drill.dose)):
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


def _counted(dose: Dose) -> Iterator[tuple[str, str]]:
    """What goes with repetitions that must count."""
    if not dose.good:
        if dose.success != Dose().success:
            yield "dose.success", "`success` goes with `good`, the repetitions that must count."
        return
    if dose.reps == 0:
        yield "dose.good", "Good repetitions are done in sets: `reps` says how many a set has at most."
    if dose.rounds > 1:
        yield "dose.rounds", "Good repetitions make their own sets, so there are no `rounds`."
    if dose.every_s:
        yield "dose.every_s", "A dose goes by good repetitions or by the clock, not by both."


def _by_the_clock(dose: Dose) -> Iterator[tuple[str, str]]:
    """What goes with intervals, and with rounds that aren't."""
    if not dose.every_s:
        if dose.rounds > MOST_ROUNDS:
            yield "dose.rounds", f"More than {MOST_ROUNDS} rounds, {dose.rounds}, go by the clock: give `every_s`."
        return
    if dose.rest_s:
        yield "dose.rest_s", "What is left of an interval is its rest, so there is no `rest_s`."
    if not dose.good and round_seconds(dose) > dose.every_s:
        message = f"A round takes {round_seconds(dose)} s and can't start every {dose.every_s} s."
        yield "dose.every_s", message
