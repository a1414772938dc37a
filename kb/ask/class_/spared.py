"""Where the bars don't go round: the same class with some, or all, doing without."""

from collections.abc import Collection, Iterator
from itertools import accumulate

from kb.ask.class_.people import Class, Lifter
from kb.ask.class_.turns import MOST_AT_A_BAR as MOST
from kb.kit import BAR, TRAINING_BAR

__all__ = ["crowded", "spared"]

SHARES = (4.0, 3.0, 2.0, 1.5, 1.25, 1.0, 0.5)
"""Lifters to a bar, tried in turn: from four at each down to half the bars. Ours."""


def crowded(asked: Class) -> Iterator[Class]:
    """The class with three, then four to a bar; none where each has one, or there is none."""
    if 0 < asked.have.get(BAR, 0) < len(asked.lifters):
        yield from (asked._replace(to_a_bar=count) for count in range(3, MOST + 1))


def spared(asked: Class, held: Collection[int] = ()) -> Iterator[Class]:
    """The class with fewer lifters at the bars, the most who keep one first.

    From four at each down to half the bars, and whole chains as they
    come: so many of these as four at each bar would hold. At last nobody; but who has a day's weight always keeps one,
    as it needs a bar. Of the others first those who hold what is done (`held`, by number), then those of one chain
    together, in the order in which they are listed. Whoever doesn't does their whole chain with what else there is: a
    training bar while there are any, then a stick. None where each has a bar.
    """
    bars = asked.have.get(BAR, 0)
    if not 0 < bars < len(asked.lifters):
        return
    lifters = asked.lifters
    kinds = [_kind(lifter) for lifter in lifters]
    by_need = sorted(
        range(len(kinds)), key=lambda n: (lifters[n].weight_kg is None, n not in held, kinds.index(kinds[n]), n)
    )
    heavy = sum(lifter.weight_kg is not None for lifter in lifters)
    # whole chains: keeping them apart from others of their own would make more chains for the coach to run
    order = [kinds[n] for n in by_need[heavy:]]
    whole = [heavy + count for count in accumulate(order.count(kind) for kind in dict.fromkeys(order))]
    keeps = {max(keep, heavy) for keep in (*(int(share * bars) for share in SHARES), *whole) if keep <= MOST * bars}
    both = frozenset({BAR, TRAINING_BAR} if asked.have.get(TRAINING_BAR) else {BAR})
    ways = [(keep, frozenset({BAR})) for keep in sorted(keeps | {heavy}, reverse=True)]
    for keep, without in dict.fromkeys([*ways, (heavy, both)]):
        leave = set(by_need[keep:])
        if leave:
            yield asked._replace(
                to_a_bar=min(max(2, -(-keep // bars)), MOST),
                lifters=tuple(
                    lifter._replace(without=without) if n in leave else lifter for n, lifter in enumerate(lifters)
                ),
            )


def _kind(lifter: Lifter) -> tuple[object, ...]:
    """What makes a chain."""
    return lifter.lift, lifter.fault, lifter.cause, lifter.holds, lifter.today
