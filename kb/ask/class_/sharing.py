"""Who shares a bar with whom: units as even as can be, and for a day's weight those who are nearest in weight."""

from collections.abc import Sequence
from functools import cache

__all__ = ["APART_KG", "by_weight", "evenly", "placed"]

APART_KG = 10.0
"""Whose weights are further apart than this, kg, share no bar while there are others. Common practice, no source."""


def evenly(people: int, most: int) -> list[int]:
    """How many make each unit, so many at most, as even as can be.

    >>> evenly(7, 4), evenly(5, 2), evenly(0, 4)
    ([4, 3], [2, 2, 1], [])
    """
    units = -(-people // most)
    return [people // units + (n < people % units) for n in range(units)]


def placed(people: int, sets: int) -> tuple[int, ...]:
    """At which of so many sets each of a unit is: neighbours together.

    >>> placed(4, 1), placed(4, 2), placed(3, 2)
    ((0, 0, 0, 0), (0, 0, 1, 1), (0, 0, 1))
    """
    return tuple(n * sets // people for n in range(people))


def by_weight(weights: Sequence[float], most: int, bars: int) -> list[int]:
    """How many of those listed by weight, kg, the lightest first, share each bar, so many at most.

    As few bars as hold them with nobody further apart than `APART_KG`, and where that can't be, all the bars there are;
    for each count of bars the way in which weights differ least.

    >>> by_weight([26, 40, 52, 70, 85], 4, 2), by_weight([40, 45, 50, 52], 2, 4), by_weight([40, 60], 2, 2)
    ([3, 2], [2, 2], [1, 1])
    """
    if not weights:
        return []
    least = -(-len(weights) // most)
    ways = [_parted(tuple(weights), most, count) for count in range(least, max(least, min(bars, len(weights))) + 1)]
    near = (way for way in ways if _apart(weights, way) <= APART_KG)
    return list(next(near, ways[-1]))


def _apart(weights: Sequence[float], sizes: Sequence[int]) -> float:
    """The most that weights at one bar differ, kg."""
    at, found = 0, [0.0]
    for size in sizes:
        found.append(weights[at + size - 1] - weights[at])
        at += size
    return max(found)


def _parted(weights: tuple[float, ...], most: int, count: int) -> tuple[int, ...]:
    """The sizes of so many units, neighbours together, of which the squares of the differences add up to least."""

    @cache
    def best(since: int, units: int) -> tuple[float, tuple[int, ...]]:
        left = len(weights) - since
        if units == 0:
            return (0.0, ()) if left == 0 else (float("inf"), ())
        ways = []
        for size in range(1, min(most, left) + 1):
            rest, sizes = best(since + size, units - 1)
            ways.append((rest + (weights[since + size - 1] - weights[since]) ** 2, (size, *sizes)))
        # of ways that differ as little the one that fills the first bars
        return min(ways, key=lambda way: (way[0], [-size for size in way[1]]), default=(float("inf"), ()))

    return best(0, count)[1]
