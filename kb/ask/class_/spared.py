"""Where the bars don't go round: the same class with some, or all, doing without."""

from collections.abc import Iterator

from kb.ask.class_.people import Class
from kb.terms import ItemId

__all__ = ["spared"]

BAR, TRAINING_BAR = ItemId("bar"), ItemId("training-bar")


def spared(asked: Class) -> Iterator[Class]:
    """The class with fewer lifters at the bars, those who keep one most first; none where each has a bar.

    First two stay at each bar, then nobody; but who has a day's weight always does, as it needs a bar. Of the others
    those listed first stay. Whoever doesn't does their whole chain with what else there is: a training bar while
    there are any, then a stick.
    """
    bars = asked.have.get(BAR, 0)
    if not 0 < bars < len(asked.lifters):
        return
    heavy = sum(lifter.weight_kg is not None for lifter in asked.lifters)
    by_need = sorted(range(len(asked.lifters)), key=lambda n: asked.lifters[n].weight_kg is None)
    both = frozenset({BAR, TRAINING_BAR} if asked.have.get(TRAINING_BAR) else {BAR})
    ways = [(max(2 * bars, heavy), frozenset({BAR})), (heavy, frozenset({BAR})), (heavy, both)]
    for keep, without in dict.fromkeys(ways):
        leave = set(by_need[keep:])
        if leave:
            yield asked._replace(
                lifters=tuple(
                    lifter._replace(without=without) if n in leave else lifter for n, lifter in enumerate(asked.lifters)
                )
            )
