"""The cheapest set of quick checks that separates a fault's causes, as a short decision list."""

from itertools import combinations
from typing import NamedTuple

from kb.terms import Fault, Tell

__all__ = ["Decision", "decide", "separates"]


class Decision(NamedTuple):
    """Checks in the order to make them, and the pairs of causes that none of them puts apart."""

    tells: tuple[Tell, ...]
    seconds: int
    left_together: tuple[tuple[str, str], ...]


def separates(tell: Tell, a: str, b: str) -> bool:
    """Whether a check puts two causes apart: one is met only by a yes, the other only by a no.

    >>> tell = Tell(do="lift the heels", look="is it gone?", seconds=20, yes=("stiff",), no=("timing",))
    >>> separates(tell, "timing", "stiff"), separates(tell, "stiff", "nerve")
    (True, False)
    """

    def side(cause: str) -> int:
        return (cause in tell.yes) - (cause in tell.no)

    return side(a) * side(b) == -1


def decide(fault: Fault) -> Decision:
    """The least seconds of checks that put apart every pair of causes that can be; exact.

    Checks that put most of the remaining pairs apart come first. All subsets are tried, cheapest first:
    a fault has a handful of tells.
    """
    pairs = list(combinations([cause.id for cause in fault.causes], 2))
    parted = [frozenset(pair for pair in pairs if separates(tell, *pair)) for tell in fault.tells]
    possible = frozenset[tuple[str, str]]().union(*parted) if parted else frozenset()
    numbers = range(len(fault.tells))
    subsets = [chosen for size in range(len(fault.tells) + 1) for chosen in combinations(numbers, size)]
    best = min(
        (chosen for chosen in subsets if frozenset[tuple[str, str]]().union(*(parted[n] for n in chosen)) == possible),
        key=lambda chosen: (sum(fault.tells[n].seconds for n in chosen), len(chosen), chosen),
        default=(),
    )
    ordered: list[int] = []
    left = set(possible)
    waiting = list(best)
    while waiting:
        n = max(waiting, key=lambda n: (len(parted[n] & left), -n))
        waiting.remove(n)
        ordered.append(n)
        left -= parted[n]
    return Decision(
        tuple(fault.tells[n] for n in ordered),
        sum(fault.tells[n].seconds for n in ordered),
        tuple(pair for pair in pairs if pair not in possible),
    )
