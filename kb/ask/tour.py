"""What a path still owes: the cheapest tour of all that must still be passed, in an order it allows.

Each thing owed is a drill that the lift can't do without, or an any-of group of them. The tour goes by
the cheapest way from one to the next, whatever drills lie between and whatever those need, so it is never
dearer than the true rest. It is exact over the things owed: a dynamic programme over the sets of them
that can be left, after Held & Karp 1962, "A dynamic programming approach to sequencing problems",
J. SIAM 10(1):196-210, with precedence. Where an order binds the ways keep to it: a way starts from a node
and a level, the stretch that the last bound drill covered.
"""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.ahead import Ahead
from kb.ask.bound import INFINITE
from kb.ask.field import STEP_WEIGHT, Band, Field

__all__ = ["Passed", "Tour", "Ways"]


class Ways:
    """The cheapest ways through a field to given nodes, keeping to the field's order; what each node needs is ignored.

    A level is the last stretch that an order bound, as a number; 0 is none yet. A node that is bound stands
    at its own level alone.
    """

    def __init__(self, field: Field) -> None:
        self.field = field
        self.bands: list[Band | None] = [None, *field.stretches()]
        self.level = {band: n for n, band in enumerate(self.bands)}
        self.own = [self.level[band] for band in field.band] if field.band else [0] * len(field.drill)
        self.columns = [list(column) for column in zip(*field.sizes, strict=True)]
        self.follows = [
            [before is None or after is None or field.in_order(before, after) for after in self.bands]
            for before in self.bands
        ]

    def to(self, targets: Sequence[int], barred: frozenset[int]) -> list[list[int]]:
        """Per level and node, the cheapest way to any of `targets`, doing it included; 0 for one that is there.

        No way leads through a node that is `barred`.
        """
        field, count = self.field, len(self.field.drill)
        wanted = set(targets)
        found: list[list[int]] = [[] for _ in self.bands]
        # levels are numbered so that an order never leads to a lower one: the last is worked out first
        for level in reversed(range(len(self.bands))):
            best = [0 if node in wanted else INFINITE for node in range(count)]
            waiting = set[int]()
            for node in range(count):
                own = self.own[node]
                if node not in wanted and (node == field.goal or node in barred):
                    continue
                if own in (0, level):
                    waiting.add(node)
                elif own > level and self.follows[level][own] and found[own][node] < INFINITE:
                    self._relax(best, node, found[own][node])
            while waiting:
                node = min(waiting, key=best.__getitem__)
                if best[node] >= INFINITE:
                    break
                waiting.remove(node)
                self._relax(best, node, best[node])
            found[level] = best
        return found

    def _relax(self, best: list[int], node: int, rest: int) -> None:
        """Let every node go to this one next, from which `rest` remains."""
        field = self.field
        base = rest + field.enter[node]
        column = self.columns[field.profile[node]]
        opens, into_goal = field.prepares[node], node == field.goal
        for before, profile in enumerate(field.profile):
            way = base + STEP_WEIGHT * column[profile]
            if way < best[before]:
                if opens and not field.prepares[before]:
                    continue
                if into_goal and not field.before_goal[before]:
                    continue
                best[before] = way


class Passed(NamedTuple):
    """A thing owed: its nodes, the bits of which one shows that it is held, what comes first, and what needs it.

    `first` is a bit set over the things; `needed_by` are nodes; `alone` says that it is one drill, at every
    load from its least.
    """

    nodes: Sequence[int]
    bits: int
    first: int
    needed_by: frozenset[int]
    alone: bool


class Tour:
    """The bound for one path: what is owed, the ways between, and the tours already worked out.

    The way to the thing passed next leads through no node that needs it, nor through the least load of a
    drill that is owed by itself: either that is still owed, and would be the next, or it has been done.
    """

    def __init__(self, field: Field, things: Sequence[Passed]) -> None:
        self.ahead = Ahead(field)
        self.ways = Ways(field)
        self.things = things
        least = frozenset(each.nodes[0] for each in things if each.alone)
        self.home = self.ways.to([field.goal], least)
        self.to = [self.ways.to(each.nodes, least | each.needed_by) for each in things]
        self._left: dict[int, int] = {}
        self._ready: dict[int, tuple[int, ...]] = {}
        self._tours: dict[tuple[int, int, int], int] = {}

    def owed(self, node: int, band: Band | None, held: int) -> int:
        """The least from a node, after a stretch, to the goal through everything not yet held; INFINITE if none is."""
        if not self.ahead.leads(node, band, held):
            return INFINITE
        if held not in self._left:
            self._left[held] = sum(1 << n for n, thing in enumerate(self.things) if not thing.bits & held)
        return self._tour(node, self.ways.level[band], self._left[held])

    def ready(self, left: int) -> tuple[int, ...]:
        """The things left that may come next."""
        if left not in self._ready:
            self._ready[left] = tuple(
                n for n, thing in enumerate(self.things) if left >> n & 1 and not thing.first & left
            )
        return self._ready[left]

    def _tour(self, node: int, level: int, left: int) -> int:
        if not left:
            return self.home[level][node]
        key = (node, level, left)
        known = self._tours.get(key)
        if known is not None:
            return known
        best = INFINITE
        for thing in self.ready(left):
            way = self.to[thing][level][node]
            if way < best:
                after = left & ~(1 << thing)
                best = min(best, way + self._cheapest(thing, level, after))
        self._tours[key] = best
        return best

    def _cheapest(self, thing: int, level: int, left: int) -> int:
        """The least from a thing just held, whichever of its nodes was passed."""
        key = (~thing, level, left)
        known = self._tours.get(key)
        if known is None:
            own, follows = self.ways.own, self.ways.follows[level]
            known = min(
                (self._tour(node, own[node] or level, left) for node in self.things[thing].nodes if follows[own[node]]),
                default=INFINITE,
            )
            self._tours[key] = known
        return known
