"""I go, you go: two to four lifters at one bar, and the bar's way up to the day's weight.

All times are whole seconds, each without the change-over and the setting up that come before.
"""

from collections.abc import Sequence
from itertools import groupby

from kb.dose import round_seconds
from kb.loading import LOADING_S
from kb.terms import Dose

__all__ = [
    "JUMP_KG",
    "MOST_AT_A_BAR",
    "MOST_STEPS",
    "by_turns",
    "loading_seconds",
    "may_share",
    "ready_at",
    "steps_up",
    "way_up",
]

JUMP_KG = 10.0
"""The most that goes on the bar between two steps, kg. Common practice, no source."""

MOST_STEPS = 4
"""Steps up to the day's weight, however heavy: the jumps grow instead. Common practice, no source."""


MOST_AT_A_BAR = 4
"""Lifters who take turns at one bar, at most. Common practice, no source."""


def may_share(dose: Dose, people: int = 2, *, check: bool) -> bool:
    """Whether so many can do a dose on one set of gear without any of them resting longer than it says.

    Each rest must be at least the others' rounds; in an interval dose all rounds must fit the interval. Of a
    check there is one round each: one after the other.
    """
    if check:
        return True
    one = round_seconds(dose)
    return people * one <= dose.every_s if dose.every_s else dose.rest_s >= (people - 1) * one


def by_turns(dose: Dose, before: int = 1) -> int:
    """How much later than the first one begins whose turn comes after so many others, s: when their rounds are done.

    >>> by_turns(Dose(rounds=3, reps=4, tempo=(3, 1, 3, 1), rest_s=60))
    32
    """
    return before * round_seconds(dose)


def ready_at(bar_kg: float, weights: Sequence[float], dose: Dose, work_s: int) -> tuple[int, ...]:
    """When the bar is at each one's weight, and it is their turn, s from its first step; the lightest weight first.

    It only goes up: who has done theirs is done, and the others do a round at each step on the way. Those of one weight
    take turns, if that costs them no rest, else one comes after the other; each takes `work_s`.

    >>> ready_at(20, [30, 30, 40], Dose(rounds=4, reps=2, rest_s=60), 270)
    (30, 38, 338)
    """
    now, at, found = 0, bar_kg, list[int]()
    for weight, same in groupby(weights):
        alike = len(list(same))
        now += loading_seconds(len(steps_up(at, weight)), dose, len(weights) - len(found))
        each = by_turns(dose) if may_share(dose, alike, check=False) else work_s
        found += [now + n * each for n in range(alike)]
        now, at = found[-1] + work_s, weight
    return tuple(found)


def way_up(bar_kg: float, weights: Sequence[float]) -> tuple[float, ...]:
    """The weights that a bar has on its way to the last of those it stops at, kg, the bar itself left out.

    >>> way_up(15, [26, 26, 40])
    (20.0, 26, 33.0, 40)
    """
    found: list[float] = []
    for weight in sorted(weights):
        found += steps_up(found[-1] if found else bar_kg, weight)
    return tuple(found)


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
