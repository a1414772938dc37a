"""How long a dose takes. All times are whole seconds, and the parts sum exactly to the whole."""

from kb.terms import Dose, Drill

__all__ = ["CHANGE_OVER_S", "REP_S", "check_seconds", "minutes", "round_seconds", "work_seconds"]

CHANGE_OVER_S = 30
"""Between one drill and the next: walk, drink, listen. Common practice, no source."""

REP_S = 4
"""One repetition with no tempo given, s: down, up and settle. Common practice, no source."""


def round_seconds(dose: Dose) -> int:
    """One round without its rest, s: each side's repetitions at tempo, then its hold.

    >>> round_seconds(Dose(reps=6, tempo=(4, 0, 1, 0)))
    30
    >>> round_seconds(Dose(reps=8, hold_s=10, sides=2))
    84
    """
    rep = sum(dose.tempo) if dose.tempo else REP_S
    return dose.sides * (dose.reps * rep + dose.hold_s)


def work_seconds(drill: Drill) -> int:
    """The full dose, s: change-over, set-up, every round and the rests between rounds."""
    dose = drill.dose
    rest = dose.rest_s * (dose.rounds - 1)
    return CHANGE_OVER_S + drill.set_up_s + dose.rounds * round_seconds(dose) + rest


def check_seconds(drill: Drill) -> int:
    """A check, s: change-over, set-up and one round."""
    return CHANGE_OVER_S + drill.set_up_s + round_seconds(drill.dose)


def minutes(seconds: int) -> int:
    """Seconds as whole minutes for people, rounded up so that a plan never promises too little time.

    >>> minutes(60), minutes(61), minutes(0)
    (1, 2, 0)
    """
    return -(-seconds // 60)
