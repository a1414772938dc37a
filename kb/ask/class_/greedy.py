"""A plan built minute by minute, in plain Python: where no solver is installed, and for one to start from.

List scheduling: at each tick every unit that is free takes its next drill if all it needs is there, the more
urgent first. Many orders of urgency are tried, always the same ones, and the best plan is kept. It proves nothing,
unless nobody is idle at all.
"""

from collections.abc import Iterator
from itertools import product
from random import Random
from typing import NamedTuple

from kb.ask.class_.hall import Hall
from kb.ask.class_.rotation import Plan, Rotation, idle_of

__all__ = ["TRIES", "greedy"]

TRIES = 8_000
"""Orders tried, times units: a class of twelve takes a second or two."""

SEED = 7


class Order(NamedTuple):
    """An order of urgency: each unit's rank, whether it would rather share than be quick, how late it starts."""

    rank: tuple[int, ...]
    thrift: tuple[bool, ...]
    delay: tuple[int, ...]


def greedy(rotation: Rotation, tries: int | None = None) -> Plan | None:
    """The best of many plans, or None where none of them kept every rule: then there may be one all the same."""
    best: Plan | None = None
    least = 0
    dice = Random(SEED)  # noqa: S311  # for orders to try, not for secrets
    each = max(1, (TRIES // len(rotation.units) if tries is None else tries) // ROUNDS)
    for order in _orders(rotation, dice):
        for _ in range(each):
            found, pressed = _listed(rotation, order)
            if found is not None:
                idle = idle_of(rotation, found)
                if best is None or idle < least:
                    best, least = found, idle
                if least == 0:
                    return found._replace(bound=0)
            order = _pressed(order, pressed, dice)
    return best


ROUNDS = 12
"""Orders begun anew; from each the search goes on by giving way to whoever waited too long."""


def _orders(rotation: Rotation, dice: Random) -> Iterator[Order]:
    """Longest chains first, shortest first, as listed; then shuffled."""
    count = len(rotation.units)
    length = [sum(min(mode.length for mode in task.modes) for task in unit.tasks) for unit in rotation.units]
    by_length = sorted(range(count), key=lambda u: (-length[u], u))
    plain = (by_length, by_length[::-1], list(range(count)))
    for urgent, share in product(plain, (False, True)):
        yield Order(tuple(urgent), (share,) * count, (0,) * count)
    for n in range(ROUNDS - 2 * len(plain)):
        dice.shuffle(by_length)
        thrift = tuple(dice.random() < n / ROUNDS for _ in range(count))
        delay = tuple(dice.randint(0, rotation.wait) if dice.random() < 0.3 else 0 for _ in range(count))
        yield Order(tuple(by_length), thrift, delay)


def _pressed(order: Order, units: set[int], dice: Random) -> Order:
    """The order with some units more urgent, and one unit taken at random the other way about sharing."""
    rank = [u for u in order.rank if u in units] + [u for u in order.rank if u not in units]
    if dice.random() < 0.5:
        a, b = dice.randrange(len(rank)), dice.randrange(len(rank))
        rank[a], rank[b] = rank[b], rank[a]
    thrift = list(order.thrift)
    turned = dice.randrange(len(thrift))
    thrift[turned] = not thrift[turned]
    delay = tuple(0 if u in units else each for u, each in enumerate(order.delay))
    return Order(tuple(rank), tuple(thrift), delay)


def _listed(rotation: Rotation, order: Order) -> tuple[Plan | None, set[int]]:
    """A plan by one order, or None; and the units that waited too long, or longest."""
    hall = Hall(rotation)
    for now in range(rotation.last + 1):
        for u in order.rank:
            if hall.ready(u, now) and now >= order.delay[u]:
                hall.next(u, now, thrift=order.thrift[u])
        if hall.over:
            return hall.plan(), hall.waited_longest()
        late = hall.late(now)
        if late:
            return None, late
    return None, {u for u in order.rank if hall.ready(u, rotation.last)}
