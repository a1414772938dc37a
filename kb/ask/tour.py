"""What a path still owes: the cheapest tour of all that must still be passed, in an order it allows.

Each thing owed is a drill that the lift can't do without, or an any-of group of them. The tour goes by
the cheapest way from one to the next, whatever drills lie between and whatever those need, so it is never
dearer than the true rest. It is exact over the things owed: a dynamic programme over the sets of them
that can be left, after Held & Karp 1962, "A dynamic programming approach to sequencing problems",
J. SIAM 10(1):196-210, with precedence.
"""

from collections.abc import Sequence

from kb.ask.bound import INFINITE
from kb.ask.field import STEP_WEIGHT, Field

__all__ = ["Tour", "way_to"]


def way_to(field: Field, targets: Sequence[int]) -> list[int]:
    """The cheapest way from each node to any of `targets`, doing it included; 0 for one that is there.

    Prerequisites are ignored; preparation is reached from preparation alone.
    """
    best = [0 if node in targets else INFINITE for node in range(len(field.drill))]
    columns = [list(column) for column in zip(*field.sizes, strict=True)]
    waiting = set(range(len(best)))
    while waiting:
        node = min(waiting, key=best.__getitem__)
        base = best[node]
        if base >= INFINITE:
            break
        waiting.remove(node)
        if node == field.goal:
            continue
        base += field.enter[node]
        column = columns[field.profile[node]]
        prepares = field.prepares[node]
        for before in range(len(best)):
            if prepares and not field.prepares[before]:
                continue
            way = base + STEP_WEIGHT * column[field.profile[before]]
            if way < best[before]:
                best[before] = way
    return best


class Tour:
    """The bound for one path: what is owed, the ways between, and the tours already worked out.

    `nodes`, `bits` and `needs` give for each thing owed its nodes, the bits of which one shows it is
    held, and the things (as a bit set over them) that must come before it.
    """

    def __init__(
        self, field: Field, to_goal: list[int], nodes: list[tuple[int, ...]], bits: list[int], needs: list[int]
    ) -> None:
        self.to_goal = to_goal
        self.bits = bits
        self.needs = needs
        self.ways = [way_to(field, targets) for targets in nodes]
        self.between = [[min(way[node] for node in sources) for way in self.ways] for sources in nodes]
        self.home = [min(to_goal[node] for node in sources) for sources in nodes]
        self._tours: dict[tuple[int, int], int] = {}

    def owed(self, node: int, held: int) -> int:
        """The least from a node to the goal through everything not yet held."""
        left = sum(1 << thing for thing, bits in enumerate(self.bits) if not bits & held)
        if not left:
            return self.to_goal[node]
        return min(
            (self.ways[thing][node] + self._tour(thing, left & ~(1 << thing)) for thing in self._ready(left)),
            default=INFINITE,
        )

    def _ready(self, left: int) -> list[int]:
        return [thing for thing in range(len(self.bits)) if left >> thing & 1 and not self.needs[thing] & left]

    def _tour(self, thing: int, left: int) -> int:
        """The least from a thing just held to the goal through those `left`."""
        if not left:
            return self.home[thing]
        key = (thing, left)
        if key not in self._tours:
            ways = self.between[thing]
            self._tours[key] = min(
                (ways[to] + self._tour(to, left & ~(1 << to)) for to in self._ready(left)), default=INFINITE
            )
        return self._tours[key]
