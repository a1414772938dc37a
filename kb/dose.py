"""How long a dose takes. All times are whole seconds, and the parts sum exactly to the whole.

A dose is one of three: rounds with rest between them; repetitions that must count, in sets (`good`); or
intervals, in which a round starts every so many seconds (`every_s`). What follows holds for a dose that can
be done, as `kb/make/structure/impossible_dose.py` asks.
"""

from typing import Literal, NamedTuple

from kb.terms import Dose, Drill

__all__ = [
    "CHANGE_OVER_S",
    "REP_S",
    "Piece",
    "check_seconds",
    "dose_seconds",
    "minutes",
    "pieces",
    "round_seconds",
    "sets",
    "shorter",
    "tries",
    "work_seconds",
]

CHANGE_OVER_S = 30
"""Between one drill and the next: walk, drink, listen. Common practice, no source."""

REP_S = 4
"""One repetition with no tempo given, s: down, up and settle. Common practice, no source."""


class Piece(NamedTuple):
    """A stretch of a dose: one side's repetitions and hold (`work`), or the rest after a round.

    `round` and `side` count from 1; a rest has the round before it, and no side, repetitions or hold.
    """

    kind: Literal["work", "rest"]
    seconds: int
    round: int
    side: int = 0
    reps: int = 0
    hold_s: int = 0


def tries(dose: Dose) -> int:
    """The repetitions to be expected, a side: of a dose of good ones as many as it takes at its rate.

    >>> tries(Dose(good=30, success=80, reps=3))
    38
    >>> tries(Dose(rounds=4, reps=6))
    24
    """
    if dose.good:
        return -(-dose.good * 100 // dose.success)
    return dose.rounds * dose.reps


def sets(dose: Dose) -> tuple[int, ...]:
    """The repetitions of each round or set, a side, in order.

    Tries are shared out as evenly as can be over the least number of sets, the larger ones first.

    >>> sets(Dose(good=30, success=80, reps=3))
    (3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 2)
    >>> sets(Dose(rounds=2, reps=8))
    (8, 8)
    """
    if not dose.good:
        return (dose.reps,) * dose.rounds
    in_all = tries(dose)
    count = -(-in_all // dose.reps)
    least, larger = divmod(in_all, count)
    return (least + 1,) * larger + (least,) * (count - larger)


def _set_seconds(dose: Dose, reps: int) -> int:
    rep = sum(dose.tempo) if dose.tempo else REP_S
    return dose.sides * (reps * rep + dose.hold_s)


def round_seconds(dose: Dose) -> int:
    """One round (or the first set) without its rest, s: each side's repetitions at tempo, then its hold.

    >>> round_seconds(Dose(reps=6, tempo=(4, 0, 1, 0)))
    30
    >>> round_seconds(Dose(reps=8, hold_s=10, sides=2))
    84
    """
    return _set_seconds(dose, sets(dose)[0])


def dose_seconds(dose: Dose) -> int:
    """The dose alone, s: every round and the rests between them, or its intervals, the last one whole.

    >>> dose_seconds(Dose(rounds=4, reps=6, tempo=(4, 0, 1, 0), rest_s=60))
    300
    >>> dose_seconds(Dose(rounds=10, reps=2, every_s=120))
    1200
    """
    if dose.every_s:
        return dose.rounds * dose.every_s
    done = sets(dose)
    return sum(_set_seconds(dose, reps) for reps in done) + dose.rest_s * (len(done) - 1)


def pieces(dose: Dose) -> tuple[Piece, ...]:
    """A dose second by second: what is done on each side, and the rests; they sum to `dose_seconds`.

    An interval's rest is what is left of it when the round is done, also after the last round. A piece that
    takes no time is left out.
    """
    found: list[Piece] = []
    done = sets(dose)
    for n, reps in enumerate(done, 1):
        one_side = _set_seconds(dose, reps) // dose.sides
        found += (Piece("work", one_side, n, side, reps, dose.hold_s) for side in range(1, dose.sides + 1))
        if dose.every_s:
            found.append(Piece("rest", dose.every_s - one_side * dose.sides, n))
        elif n < len(done):
            found.append(Piece("rest", dose.rest_s, n))
    return tuple(piece for piece in found if piece.seconds)


def shorter(dose: Dose) -> tuple[Dose, ...]:
    """The same with ever less, a round, set or interval fewer each time, down to one; longest first.

    >>> [less.rounds for less in shorter(Dose(rounds=3, reps=5))]
    [2, 1]
    >>> [less.good for less in shorter(Dose(good=6, success=50, reps=4))]
    [4, 2]
    """
    if not dose.good:
        return tuple(dose._replace(rounds=rounds) for rounds in range(dose.rounds - 1, 0, -1))
    found, least = [], len(sets(dose))
    for good in range(dose.good - 1, 0, -1):
        less = dose._replace(good=good)
        if len(sets(less)) < least:
            found.append(less)
            least = len(sets(less))
    return tuple(found)


def work_seconds(drill: Drill) -> int:
    """The full dose, s: change-over, set-up, every round and the rests between rounds."""
    return CHANGE_OVER_S + drill.set_up_s + dose_seconds(drill.dose)


def check_seconds(drill: Drill) -> int:
    """A check, s: change-over, set-up and one round."""
    return CHANGE_OVER_S + drill.set_up_s + round_seconds(drill.dose)


def minutes(seconds: int) -> int:
    """Seconds as whole minutes for people, rounded up so that a plan never promises too little time.

    >>> minutes(60), minutes(61), minutes(0)
    (1, 2, 0)
    """
    return -(-seconds // 60)
