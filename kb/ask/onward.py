"""What may follow a node, cheapest first, and how far it is to the goal from there."""

from collections.abc import Iterator

from kb.ask.bound import INFINITE, detour, rest
from kb.ask.field import Band, Field
from kb.ask.label import START

__all__ = ["Onward"]


class Onward:
    """One field's nodes in the order worth trying, worked out once for each node and each set of bits.

    `must` maps the bit of each drill that every list needs to its nodes.
    """

    def __init__(self, field: Field, must: dict[int, tuple[int, ...]]) -> None:
        self.field = field
        self.must = must
        self.must_bits = sum(must)
        self.rest = rest(field)
        least: dict[int, int] = {}
        for drill, load in zip(field.drill, field.load, strict=True):
            least[drill] = min(load, least.get(drill, load))
        self.once_only = [
            gain if load == least[drill] else 0
            for drill, load, gain in zip(field.drill, field.load, field.gains, strict=True)
        ]
        self._order: dict[tuple[int, bool], list[tuple[int, int, int]]] = {}
        self._ready: dict[int, list[bool]] = {}
        self._detours: dict[tuple[int, int], int] = {}

    def order(self, node: int, addressed: bool) -> list[tuple[int, int, int]]:
        """The nodes that may follow, cheapest first: (least cost of the rest through it, node, cost of going there)."""
        key = (node, addressed)
        if key not in self._order:
            self._order[key] = sorted(self._following(node, addressed))
        return self._order[key]

    def _following(self, node: int, addressed: bool) -> Iterator[tuple[int, int, int]]:
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
                yield cost + left, to, cost

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

    def ready(self, held: int) -> list[bool]:
        """For each node, whether what must come before it is held; not a drill's least load where its own bit is."""
        if held not in self._ready:
            ready = [
                not own & held and (not groups or all(group & held for group in groups))
                for own, groups in zip(self.once_only, self.field.groups, strict=True)
            ]
            ready[self.field.goal] &= not self.must_bits & ~held
            self._ready[held] = ready
        return self._ready[held]
