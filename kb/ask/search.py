"""The best ordered list of drills from a start to a goal, by best-first search.

States are (last node, prerequisites held, whether the cause has been addressed). The bound on what
remains is the cheapest way to the goal that ignores prerequisites, raised by the detour still owed to
drills that must come first.

A state forgets which drills were only passed through, so the list found may come back to one of them;
then that drill is remembered too and the search runs again. That is decremental state-space relaxation
(Righini & Salani 2008, "New dynamic programming algorithms for the resource constrained elementary
shortest path problem", Networks 51(3):155-170): each run is a relaxation of the next, so the first list
that comes back to nothing is the best. Its cost grows with the states met; the budget counts them.
"""

from collections.abc import Callable, Iterator
from heapq import heappop, heappush
from typing import NamedTuple

from kb.ask.bound import INFINITE, detour, rest
from kb.ask.field import Band, Field

__all__ = ["BUDGET", "Found", "Limits", "search"]

BUDGET = 60_000
"""States a search may meet before it settles for a gap: a count, never a clock."""

START = -1


class Limits(NamedTuple):
    """The most entries, entries of work besides the goal's drill, and seconds; None is no limit."""

    entries: int | None = None
    work: int | None = None
    seconds: int | None = None

    @property
    def any(self) -> bool:
        """Whether anything is limited."""
        return not (self.entries is None and self.work is None and self.seconds is None)


class Found(NamedTuple):
    """A list of nodes and its cost; `bound` is the least any list could cost, equal when proved best."""

    nodes: tuple[int, ...]
    cost: int
    bound: int

    @property
    def optimal(self) -> bool:
        """Whether no list can be cheaper."""
        return self.bound >= self.cost


class _Label:
    """A partial list: its last node, what it cost and used, and the label it grew from."""

    __slots__ = ("addressed", "band", "bound", "cost", "entries", "held", "node", "parent", "seconds", "used", "work")

    def __init__(self, node: int, parent: "_Label | None") -> None:
        self.node = node
        self.parent = parent
        self.cost = self.held = self.used = self.entries = self.work = self.seconds = self.bound = 0
        self.addressed = False
        self.band: Band | None = None

    def nodes(self) -> tuple[int, ...]:
        """Its nodes from first to last."""
        found = []
        label: _Label | None = self
        while label is not None and label.node != START:
            found.append(label.node)
            label = label.parent
        return tuple(reversed(found))


Owed = Callable[[int, Band | None, int], int]
"""From a node, the last stretch an order bound, and the bits held: the least of the rest that passes every
drill still owed."""


def search(
    field: Field, limits: Limits, must: dict[int, tuple[int, ...]], *, budget: int, owed: Owed | None = None
) -> Found | None:
    """The cheapest lawful list within `limits`; None if there is none.

    `must` maps the bit of each drill that every list needs to its nodes. `owed` is a bound of the
    caller's, instead of the detour to the farthest of these. After `budget` states the search leans
    towards the goal instead, and what it then finds comes with the bound proved so far; None then too
    if that finds nothing.
    """
    run = _Search(field, limits, must, owed)
    tracked: dict[int, int] = {}
    while True:
        found, label = run.once(tracked, budget, lean=1)
        if label is None:
            if found < INFINITE:
                return run.leaning(tracked, budget, bound=found)
            return None
        nodes = label.nodes()
        again = _come_back_to(field, nodes)
        if not again:
            return Found(nodes=nodes, cost=label.cost, bound=label.cost)
        for drill in again:
            tracked.setdefault(drill, len(tracked))


def _come_back_to(field: Field, nodes: tuple[int, ...]) -> list[int]:
    """Drills that a list does again without a higher load."""
    most: dict[int, int] = {}
    again = []
    for node in nodes:
        drill, load = field.drill[node], field.load[node]
        if most.get(drill, -1) >= load:
            again.append(drill)
        most[drill] = max(load, most.get(drill, -1))
    return sorted(set(again))


class _Search:
    """One field and its bounds, searched as often as the relaxation needs."""

    def __init__(
        self, field: Field, limits: Limits, must: dict[int, tuple[int, ...]], owed: Owed | None = None
    ) -> None:
        self.field = field
        self.owed = owed or self.farthest
        self.limits = limits
        self.must = must
        self.rest = rest(field)
        self.must_seconds = {bit: min(field.seconds[node] for node in nodes) for bit, nodes in must.items()}
        self.must_bits = sum(must)
        self._order: dict[tuple[int, bool], list[tuple[int, int]]] = {}
        self._detours: dict[tuple[int, int], int] = {}

    # -- what may follow ------------------------------------------------------------------------

    def order(self, node: int, addressed: bool) -> list[tuple[int, int]]:
        """The nodes that may follow, as (least cost of the rest through it, node), cheapest first."""
        key = (node, addressed)
        if key not in self._order:
            self._order[key] = sorted(self._following(node, addressed))
        return self._order[key]

    def _following(self, node: int, addressed: bool) -> Iterator[tuple[int, int]]:
        field = self.field
        for to in range(len(field.drill)):
            if node == START:
                if not self._may_start(to):
                    continue
                cost = field.enter[to]
            else:
                if not field.allows(node, to):
                    continue
                cost = field.step_cost(node, to)
            after = addressed or field.addresses[to]
            if to == field.goal and not (after or not field.must_address):
                continue
            left = 0 if field.prepares[to] else self.rest[0 if after else 1][to]
            if to == field.goal:
                left = 0
            if left < INFINITE:
                yield cost + left, to

    def _may_start(self, node: int) -> bool:
        field = self.field
        if field.prepares[node]:
            return field.addresses[node] or not field.must_prepare
        if field.must_prepare or not field.may_open[node]:
            return False
        return node != field.goal or field.goal_may_open

    def farthest(self, node: int, _: Band | None, held: int) -> int:
        """The least of the rest that passes the drills still owed."""
        most = 0
        for bit, nodes in self.must.items():
            if not held & bit:
                key = (node, bit)
                if key not in self._detours:
                    self._detours[key] = detour(self.field, self.rest[0], node, nodes)
                most = max(most, self._detours[key])
        return most

    # -- growing a list -------------------------------------------------------------------------

    def grow(self, label: _Label, to: int, tracked: dict[int, int]) -> _Label | None:
        """The label with one node more, or None if a rule or a limit forbids it."""
        field = self.field
        for group in field.groups[to]:
            if not group & label.held:
                return None
        if to == field.goal and self.must_bits & ~label.held:
            return None
        bit = 0
        if field.drill[to] in tracked:
            base = 4 * tracked[field.drill[to]]
            if label.used >> (base + field.load[to]) & 1:
                return None
            bit = ((1 << (field.load[to] + 1)) - 1) << base
        band = field.band[to] if field.band else None
        if band is not None and label.band is not None and not field.in_order(label.band, band):
            return None
        child = _Label(to, label)
        child.cost = label.cost + (field.enter[to] if label.node == START else field.step_cost(label.node, to))
        child.held = label.held | field.gains[to]
        child.used = label.used | bit
        child.addressed = label.addressed or field.addresses[to]
        child.entries = label.entries + 1
        child.work = label.work + field.work[to]
        child.seconds = label.seconds + field.seconds[to]
        child.band = band or label.band
        return None if self.limits.any and self._past_limits(child) else child

    def _past_limits(self, label: _Label) -> bool:
        limits, field = self.limits, self.field
        missing = [bit for bit in self.must if not label.held & bit]
        ended = label.node == field.goal
        if limits.entries is not None and label.entries + len(missing) + (not ended) > limits.entries:
            return True
        if limits.work is not None and label.work > limits.work:
            return True
        if limits.seconds is None:
            return False
        left = sum(self.must_seconds[bit] for bit in missing) + (0 if ended else field.seconds[field.goal])
        return label.seconds + left > limits.seconds

    # -- searching ------------------------------------------------------------------------------

    def once(self, tracked: dict[int, int], budget: int, lean: int) -> tuple[int, _Label | None]:
        """One run: (bound, the best complete label), or (INFINITE, None) if there is none.

        Out of budget it gives (the bound so far, None). `lean` times the rest is added to the cost so
        far: 1 proves the best, more finds something sooner.
        """
        start = _Label(START, None)
        heap: list[tuple[int, int, int, _Label]] = [(0, 0, -1, start)]
        met: dict[tuple[object, ...], list[tuple[int, int, int]]] = {}
        count = states = 0
        while heap:
            bound, _, index, label = heappop(heap)
            if index < 0:
                if self._dominated(label, met):
                    continue
                if label.node == self.field.goal:
                    return label.cost, label
                states += 1
                if states > budget:
                    return bound, None
                index = 0
            order = self.order(label.node, label.addressed)
            while index < len(order):
                through, to = order[index]
                at_least = max(label.bound, label.cost + lean * through)
                if heap and at_least > heap[0][0]:
                    count += 1
                    heappush(heap, (at_least, count, index, label))
                    break
                index += 1
                child = self.grow(label, to, tracked)
                if child is not None:
                    owed = self.owed(to, child.band, child.held) if to != self.field.goal else 0
                    left = max(through - (child.cost - label.cost), owed)
                    child.bound = max(label.bound, child.cost + lean * left)
                    count += 1
                    heappush(heap, (child.bound, count, -1, child))
        return INFINITE, None

    def _dominated(self, label: _Label, met: dict[tuple[object, ...], list[tuple[int, int, int]]]) -> bool:
        key = (label.node, label.held, label.used, label.addressed, label.band)
        spent = (
            label.entries if self.limits.entries is not None else 0,
            label.work if self.limits.work is not None else 0,
            label.seconds if self.limits.seconds is not None else 0,
        )
        seen = met.setdefault(key, [])
        if any(all(a <= b for a, b in zip(old, spent, strict=True)) for old in seen):
            return True
        seen.append(spent)
        return False

    def leaning(self, tracked: dict[int, int], budget: int, bound: int) -> Found | None:
        """Something good when the best could not be proved: the rest weighs three times as much."""
        tracked = dict(tracked)
        while True:
            _, label = self.once(tracked, budget, lean=3)
            if label is None:
                return None
            nodes = label.nodes()
            again = _come_back_to(self.field, nodes)
            if not again:
                return Found(nodes=nodes, cost=label.cost, bound=min(bound, label.cost))
            for drill in again:
                tracked.setdefault(drill, len(tracked))
