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

from collections.abc import Callable
from heapq import heappop, heappush
from itertools import pairwise
from typing import NamedTuple

from kb.ask.bound import INFINITE
from kb.ask.field import Band, Field
from kb.ask.label import START, Label, come_back_to
from kb.ask.onward import Onward

__all__ = ["BUDGET", "Found", "Limits", "search"]

BUDGET = 60_000
"""States a search may meet before it settles for a gap: a count, never a clock."""

EXACT = 20
GENTLY = 22
LEANS = (60, 40, 26, 22, 21)
"""What the rest weighs, in twentieths: once that proves the best; more finds something sooner and proves nothing."""

FIRST_SHARE = 6
SHARE = 8
"""A run that leans may meet one part in so many of the budget: the gentle one at first, each that comes after."""


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


Owed = Callable[[int, Band | None, int], int]
"""From a node, the last stretch an order bound, and the bits held: the least of the rest that passes every
drill still owed."""


def search(
    field: Field,
    limits: Limits,
    must: dict[int, tuple[int, ...]],
    *,
    budget: int,
    owed: Owed | None = None,
    spare: tuple[int, ...] | None = None,
) -> Found | None:
    """The cheapest lawful list within `limits`; None if there is none.

    `must` maps the bit of each drill that every list needs to its nodes. `owed` is a bound of the
    caller's, instead of the detour to the farthest of these. `spare` is a lawful list known beforehand:
    with one the search leans a little first, to have a ceiling and to know what its lists come back to.
    After `budget` states it leans harder, and the best list so far comes with the bound proved; without a
    spare the answer is None if that finds nothing.
    """
    run = _Search(field, limits, must, owed)
    tracked: dict[int, int] = {}
    found: Found | None = None
    if spare:
        known = Found(spare, _cost(field, spare), 0)
        found = run.better(known, tracked, budget // FIRST_SHARE, GENTLY)
    bound, label = run.unrepeated(tracked, budget, EXACT, found.cost if found else INFINITE)
    if label is not None:
        return Found(nodes=label.nodes(), cost=label.cost, bound=label.cost)
    if found is not None:
        found = found._replace(bound=min(bound, found.cost))
    if bound < INFINITE:
        for lean in LEANS:
            found = run.better(found, dict(tracked), budget // SHARE, lean, bound)
    return found


def _cost(field: Field, nodes: tuple[int, ...]) -> int:
    return field.enter[nodes[0]] + sum(field.step_cost(a, b) for a, b in pairwise(nodes))


Least = dict[tuple[int, int, bool, Band | None], dict[int, int]]
"""By what labels hold, used, addressed and last covered: what one at each node is known to cost at least."""


class _Search:
    """One field and its bounds, searched as often as the relaxation needs."""

    def __init__(
        self, field: Field, limits: Limits, must: dict[int, tuple[int, ...]], owed: Owed | None = None
    ) -> None:
        self.field = field
        self.onward = Onward(field, must)
        self.owed = owed or self.onward.farthest
        self.limits = limits
        self.must = must
        self.must_seconds = {bit: min(field.seconds[node] for node in nodes) for bit, nodes in must.items()}
        self.states = 0

    # -- growing a list -------------------------------------------------------------------------

    def grow(self, label: Label, to: int, cost: int, tracked: dict[int, int], least: Least | None) -> Label | None:
        """The label with one `ready` node more, at `cost`, or None if another rule or a limit forbids it.

        Also None if one that stands the same is known to cost no more; `least` and the label's own keep what each
        cost. Where something is limited that is not asked, for it may have spent more of it: `least` is None.
        """
        field, used, band = self.field, label.used, label.band
        if field.drill[to] in tracked:
            base = 4 * tracked[field.drill[to]]
            if used >> (base + field.load[to]) & 1:
                return None
            used |= ((1 << (field.load[to] + 1)) - 1) << base
        stretch = field.band[to] if field.band else None
        if stretch is not None:
            if band is not None and not field.in_order(band, stretch):
                return None
            band = stretch
        held, addressed = label.held | field.gains[to], label.addressed or field.addresses[to]
        known = label.least
        if least is not None:
            # whatever stands as the label does would stand alike there
            known[to] = cost
            if held != label.held or used != label.used or addressed != label.addressed or band != label.band:
                known = least.setdefault((held, used, addressed, band), {})
                if known.get(to, INFINITE) <= cost:
                    return None
                known[to] = cost
        child = Label(to, label)
        child.cost, child.held, child.used, child.addressed, child.band = cost, held, used, addressed, band
        child.least = known
        child.entries = label.entries + 1
        child.work = label.work + field.work[to]
        child.seconds = label.seconds + field.seconds[to]
        return child if least is not None or not self._past_limits(child) else None

    def _past_limits(self, label: Label) -> bool:
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

    def unrepeated(
        self, tracked: dict[int, int], budget: int, lean: int, below: int = INFINITE
    ) -> tuple[int, Label | None]:
        """`once` until what it finds comes back to no drill; each it came back to joins `tracked`.

        The states of every run count towards the one budget.
        """
        self.states = proved = 0
        while True:
            bound, label = self.once(tracked, budget, lean, below)
            again = come_back_to(self.field, label.nodes()) if label is not None else []
            if not again:
                return max(bound, proved), label
            # a run that allows more is a bound for every later one
            proved = max(bound, proved)
            for drill in again:
                tracked.setdefault(drill, len(tracked))

    def better(
        self, found: Found | None, tracked: dict[int, int], budget: int, lean: int, bound: int = 0
    ) -> Found | None:
        """A cheaper list than `found` from a leaning run, or that one; the bound is the caller's."""
        _, label = self.unrepeated(tracked, budget, lean, found.cost if found else INFINITE)
        return found if label is None else Found(label.nodes(), label.cost, min(bound, label.cost))

    def once(self, tracked: dict[int, int], budget: int, lean: int, below: int) -> tuple[int, Label | None]:
        """One run: (bound, the best complete label that costs less than `below`), or (INFINITE, None) if there is none.

        Out of budget it gives (the bound so far, None). `lean` twentieths of the rest are added to the
        cost so far.
        """
        start = Label(START, None)
        heap: list[tuple[int, int, int, Label]] = [(0, 0, -1, start)]
        met: dict[tuple[object, ...], list[tuple[int, int, int]]] = {}
        limited, count = self.limits.any, 0
        least: Least | None = None if limited else {}
        more: dict[tuple[object, ...], list[tuple[int, int]]] = {}
        while heap:
            bound, _, index, label = heappop(heap)
            if index < 0:
                if self._dominated(label, met) or (not limited and self._outdone(label, more)):
                    continue
                if label.node == self.field.goal:
                    return label.cost, label
                self.states += 1
                if self.states > budget:
                    return bound, None
                index = 0
            known = label.least
            order, ready = self.onward.order(label.node, label.addressed), self.onward.ready(label.held)
            for at in range(index, len(order)):
                through, to, going = order[at]
                if not ready[to]:
                    continue
                at_least = max(label.bound, label.cost + lean * through // EXACT)
                if heap and at_least > heap[0][0]:
                    count += 1
                    heappush(heap, (at_least, count, at, label))
                    break
                cost = label.cost + going
                if known.get(to, INFINITE) <= cost:
                    continue
                child = self.grow(label, to, cost, tracked, least)
                if child is None:
                    continue
                owed = self.owed(to, child.band, child.held) if to != self.field.goal else 0
                left = max(through - (child.cost - label.cost), owed)
                if child.cost + left < below:
                    child.bound = max(label.bound, child.cost + lean * left // EXACT)
                    count += 1
                    heappush(heap, (child.bound, count, -1, child))
        return INFINITE, None

    def _outdone(self, label: Label, more: dict[tuple[object, ...], list[tuple[int, int]]]) -> bool:
        """Whether a label that stands as this one does holds as much and more, and cost less.

        Whatever goes on from the one goes on from the other. Of two that cost the same neither is dropped, so
        that which of two best lists is found doesn't hang on this.
        """
        key = (label.node, label.used, label.addressed, label.band)
        seen = more.setdefault(key, [])
        held, cost = label.held, label.cost
        for other, spent in seen:
            if spent < cost and other & held == held:
                return True
        seen.append((held, cost))
        return False

    def _dominated(self, label: Label, met: dict[tuple[object, ...], list[tuple[int, int, int]]]) -> bool:
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
