"""I go, you go: two lifters at one bar, and the bar's way up to the day's weight.

All times are whole seconds, each without the change-over and the setting up that come before.
"""

from kb.dose import round_seconds
from kb.loading import LOADING_S
from kb.terms import Dose

__all__ = ["JUMP_KG", "MOST_STEPS", "by_turns", "loading_seconds", "may_share", "steps_up"]

JUMP_KG = 10.0
"""The most that goes on the bar between two steps, kg. Common practice, no source."""

MOST_STEPS = 4
"""Steps up to the day's weight, however heavy: the jumps grow instead. Common practice, no source."""


def may_share(dose: Dose, *, check: bool) -> bool:
    """Whether two can do a dose on one set of gear without either resting longer than it says.

    Each rest must be at least the other's round; in an interval dose both rounds must fit the interval. Of a
    check there is one round each: one after the other.
    """
    if check:
        return True
    one = round_seconds(dose)
    return 2 * one <= dose.every_s if dose.every_s else dose.rest_s >= one


def by_turns(dose: Dose) -> int:
    """How much later the second of two begins, s: when the first one's round is done.

    >>> by_turns(Dose(rounds=3, reps=4, tempo=(3, 1, 3, 1), rest_s=60))
    32
    """
    return round_seconds(dose)


def steps_up(bar_kg: float, weight_kg: float) -> tuple[float, ...]:
    """The weights from the bar up to the day's, kg, the bar itself left out; even jumps, to the next 1 kg down.

    >>> steps_up(20, 45)
    (28.0, 36.0, 45)
    >>> steps_up(20, 20)
    ()
    """
    if weight_kg <= bar_kg:
        return ()
    count = min(MOST_STEPS, -int(-(weight_kg - bar_kg) // JUMP_KG))
    jump = (weight_kg - bar_kg) / count
    return (*(float(int(bar_kg + n * jump)) for n in range(1, count)), weight_kg)


def loading_seconds(steps: int, dose: Dose, people: int) -> int:
    """Warming a bar up, s: at each step the discs go on and everyone at it does a round; the last is the dose's own.

    >>> loading_seconds(3, Dose(rounds=4, reps=2, tempo=(2, 2, 4, 2), rest_s=60), 1)
    130
    """
    if not steps:
        return 0
    return steps * LOADING_S + (steps - 1) * people * round_seconds(dose)
