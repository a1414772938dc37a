"""How likely each state is after answers: the basic local independence model.

A check of what is held may fail by a careless error, one of what isn't held may pass by luck; given the state,
answers don't depend on one another, nor on their order. Rates are shares of 1, entropies are in bits.

References
----------
Doignon and Falmagne, Knowledge Spaces (1999), ch. 7 (the model) and ch. 10 (the update by Bayes' rule).
Cover and Thomas, Elements of Information Theory, 2nd ed. (2006), ch. 2: I(K; R) = H(R) - H(R | K).
"""

from collections.abc import Iterable, Sequence
from math import log2
from typing import NamedTuple

from kb.ask.ability.structure import Structure
from kb.errors import BadInput

__all__ = [
    "CARELESS",
    "LUCKY",
    "Rates",
    "chance",
    "entropy",
    "even",
    "expected_entropy",
    "gain",
    "held",
    "likely_after",
    "rates_of",
    "updated",
]

CARELESS = 0.05
"""Share of checks that fail though the drill is held: a bad set, a strange bar, nerves."""

LUCKY = 0.05
"""Share of checks that pass though the drill isn't held: a lucky set, a kind eye."""


class Rates(NamedTuple):
    """The careless-error rate and the lucky-guess rate of each item."""

    careless: tuple[float, ...]
    lucky: tuple[float, ...]


def rates_of(count: int, careless: float = CARELESS, lucky: float = LUCKY) -> Rates:
    """The same rates for `count` items.

    Raises BadInput unless both are from 0 to below 1 and together below 1: else a pass would say nothing, or
    the contrary. NaN is refused too.
    """
    if not (0 <= careless < 1 and 0 <= lucky < 1 and careless + lucky < 1):
        raise BadInput(f"error rates are shares from 0 that add up to less than 1, not {careless} and {lucky}")
    return Rates((careless,) * count, (lucky,) * count)


def even(structure: Structure) -> tuple[float, ...]:
    """Every state as likely as any other."""
    count = len(structure.states)
    return (1 / count,) * count


def chance(rates: Rates, state: int, passed: int) -> float:
    """P(R | K): how likely one who holds `state` passes exactly `passed`, every item being checked once."""
    found = 1.0
    for n, (careless, lucky) in enumerate(zip(*rates, strict=True)):
        found *= _one(careless, lucky, bool(state >> n & 1), bool(passed >> n & 1))
    return found


def _one(careless: float, lucky: float, holds: bool, passes: bool) -> float:
    right = 1 - careless if holds else lucky
    return right if passes else 1 - right


def updated(structure: Structure, likely: Sequence[float], item: int, passes: bool, rates: Rates) -> tuple[float, ...]:
    """How likely each state is once item number `item` was passed or failed.

    Raises BadInput where that can't happen in any state that is still possible.
    """
    with_it, without = (_one(rates.careless[item], rates.lucky[item], holds, passes) for holds in (True, False))
    return _shares(
        [was * (with_it if state >> item & 1 else without) for was, state in zip(likely, structure.states, strict=True)]
    )


def _shares(weights: Sequence[float]) -> tuple[float, ...]:
    total = sum(weights)
    if not total > 0:
        raise BadInput("these answers contradict one another, and with no allowance for error no state is left")
    return tuple(weight / total for weight in weights)


def likely_after(
    structure: Structure,
    answers: Iterable[tuple[int, bool]],
    rates: Rates,
    prior: Sequence[float] | None = None,
) -> tuple[float, ...]:
    """How likely each state is after (item, passed) answers, to the last bit whatever their order.

    `prior` weighs the states beforehand, in their order; they are even without it.
    """
    times = [[0, 0] for _ in structure.items]
    for item, passes in answers:
        times[item][passes] += 1
    likely = _shares(prior) if prior is not None else even(structure)
    for item, (failed, passed) in enumerate(times):
        for passes, count in ((False, failed), (True, passed)):
            for _ in range(count):
                likely = updated(structure, likely, item, passes, rates)
    return likely


def held(structure: Structure, likely: Sequence[float], items: int) -> float:
    """How likely all of some items, a set of them as bits, are held."""
    return sum(share for share, state in zip(likely, structure.states, strict=True) if state & items == items)


def entropy(likely: Iterable[float]) -> float:
    """How much isn't known, bits."""
    return -sum(share * log2(share) for share in likely if share > 0)


def gain(rates: Rates, item: int, share: float) -> float:
    """How much a check of an item tells on average, bits, where it is held with likelihood `share`.

    The answer depends on the state through this one item alone, so that nothing else about the states counts.
    """
    careless, lucky = rates.careless[item], rates.lucky[item]
    passes = share * (1 - careless) + (1 - share) * lucky
    return _two(passes) - share * _two(careless) - (1 - share) * _two(lucky)


def _two(share: float) -> float:
    """The entropy of what happens with likelihood `share`."""
    return entropy((share, 1 - share))


def expected_entropy(structure: Structure, likely: Sequence[float], item: int, rates: Rates) -> float:
    """How much will still not be known after a check of an item, bits, on average over its two answers."""
    return entropy(likely) - gain(rates, item, held(structure, likely, 1 << item))
