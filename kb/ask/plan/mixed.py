"""Known drills in mixed order, another one in each session: what is mixed is kept longer than what is done in blocks.

Shea & Morgan 1979, J Exp Psychol Hum Learn Mem 5:179-187: random order beat blocked after 10 minutes and 10 days. The
effect on transfer outside laboratories is modest (meta-analysis of 2024, PMID 39205981: 0.34, not significant).
"""

from collections.abc import Sequence

__all__ = ["mixed"]

STRIDES = (5, 3, 7, 2)
"""Steps by which a list is walked round, a different one in each pair of sessions; primes, so that lists mix."""


def mixed(known: Sequence[int], before: Sequence[Sequence[int]], n: int) -> list[int]:
    """Drills by number in the order for session `n`.

    `before` are the orders of earlier sessions: what came together with another of today's drills last time comes in
    another order now. Worked out from the numbers alone, so that the same plan always has the same orders.

    >>> mixed([1, 2, 3], [], 1), mixed([1, 2, 4], [[3, 2, 1], [1, 3]], 2)
    ([3, 2, 1], [1, 4, 2])
    """
    stride = STRIDES[n % len(STRIDES)]
    modulus = max(known, default=0) + 1
    while modulus % stride == 0:
        modulus += 1
    order = sorted(known, key=lambda each: ((each + n) * stride % modulus, each))
    last = next((each for each in reversed(before) if sum(one in order for one in each) > 1), ())
    if last and [each for each in order if each in last] == [each for each in last if each in order]:
        order.reverse()
    return order
