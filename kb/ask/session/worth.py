"""What each thing in a session is worth: one table, with the reason for each weight, and what follows from it.

Points are compared, never shown as if they measured anything. They decide what gives way when the minutes are
short and what comes in when they aren't. Common practice, no source, but for the warm-up's order and lengths.
"""

from typing import NamedTuple

from kb.dose import sets, shorter
from kb.terms import Dose

__all__ = [
    "MOST_FINISHES",
    "OPENING_S",
    "WORTH",
    "Amount",
    "amounts",
    "at_least_half",
    "in_part",
    "in_passing",
    "longer",
    "one_round",
]

WORTH: dict[str, tuple[int, str]] = {
    "work": (1000, "a drill for the cause at its full dose: what the session is for"),
    "lift": (1000, "the lift at its full dose: it shows whether the rest carries over"),
    "check": (60, "a check kept: it shows on which drill the fault begins"),
    "step": (150, "lost for each unit by which the steps grow when a drill between them is dropped"),
    "raise": (500, "warm and a little out of breath before anything is stretched or fast: the R of RAMP"),
    "joint": (80, "a joint opened that some drill of the session will ask for"),
    "asked": (15, "more for each drill that asks for that joint"),
    "opener": (-80, "lost for each drill of the warm-up: all must be shown and set up, so few that open much are best"),
    "dose_of_opener": (60, "a warm-up drill at its full dose rather than in part"),
    "finish_cause": (500, "strengthening for the cause itself, which no drill mends in a day"),
    "finish_fault": (150, "strengthening for another cause of the same fault"),
    "finish_any": (40, "strengthening for a posture of the lift, where nothing for the fault itself is left to do"),
    "round_more": (12, "a round beyond what is asked, a point less with each: what minutes left over are good for"),
    "check_more": (8, "a check done for more than its one round, likewise: a drill that is held needs no more"),
}
"""Points, and why."""

OPENING_S = 300
"""The longest that activating and mobilising take, changing over included, s. 4.05 Jeffreys 2007: about 5 min."""

MOST_FINISHES = 2
"""Strengthening drills after the lift."""


class Amount(NamedTuple):
    """One way to dose a drill: what it is worth, and whether it is less than the entry asks."""

    dose: Dose
    worth: int
    cut: bool = False


def in_part(whole: int, done: int, of: int) -> int:
    """What `done` of `of` rounds are worth where all are worth `whole`: the first count most.

    A parabola with its top at the full dose, so that of S rounds the k-th adds (2(S - k) + 1) / S^2.

    >>> [in_part(1000, done, 4) for done in (1, 2, 3, 4)]
    [437, 750, 937, 1000]
    """
    return whole * done * (2 * of - done) // of**2


def one_round(dose: Dose) -> Dose:
    """The first round or set alone, as a check is done; it takes `kb.dose.round_seconds`."""
    return dose._replace(rounds=1, reps=sets(dose)[0], good=0, every_s=0)


def longer(dose: Dose) -> tuple[Dose, ...]:
    """The same with a round more each time, up to half as many again; none of a dose of good repetitions.

    >>> [more.rounds for more in longer(Dose(rounds=4, reps=5))]
    [5, 6]
    """
    if dose.good:
        return ()
    most = dose.rounds + dose.rounds // 2
    return tuple(dose._replace(rounds=rounds) for rounds in range(dose.rounds + 1, most + 1))


def at_least_half(dose: Dose) -> Dose:
    """The shortest that is still half of a dose's rounds or sets."""
    whole = len(sets(dose))
    return [less for less in (dose, *shorter(dose)) if 2 * len(sets(less)) >= whole][-1]


def _beyond(first: int, rounds: int) -> int:
    """What so many rounds more are worth, the first `first` - 1 and each next one less, none less than nothing."""
    return sum(max(0, first - n) for n in range(1, rounds + 1))


def amounts(dose: Dose, whole: int, *, least: Dose | None = None, more: tuple[Dose, ...] = ()) -> tuple[Amount, ...]:
    """The full dose, worth `whole`, ever less of it down to one round (or to `least`), and what goes beyond it."""
    count = len(sets(dose))
    floor = 1 if least is None else len(sets(least))
    less = tuple(
        Amount(each, in_part(whole, len(sets(each)), count), cut=True)
        for each in shorter(dose)
        if len(sets(each)) >= floor
    )
    beyond = tuple(Amount(each, whole + _beyond(WORTH["round_more"][0], n)) for n, each in enumerate(more, 1))
    return (Amount(dose, whole), *less, *beyond)


def in_passing(dose: Dose) -> tuple[Amount, ...]:
    """A check: one round, and where minutes are left more of them, up to the entry's dose."""
    kept = WORTH["check"][0]
    more = [each for each in (*reversed(shorter(dose)), dose) if len(sets(each)) > 1]
    return (
        Amount(one_round(dose), kept),
        *(Amount(each, kept + _beyond(WORTH["check_more"][0], n)) for n, each in enumerate(more, 1)),
    )
