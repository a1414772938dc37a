"""Drills at one load each as nodes to choose from, and what binds them: the search's only input."""

from array import array
from collections.abc import Sequence
from typing import NamedTuple

__all__ = ["STEP_WEIGHT", "Band", "Field"]

STEP_WEIGHT = 300
"""What one unit of step costs, in seconds of a lifter's time."""

Band = tuple[int, int]
"""A stretch of the timeline by which an order binds a drill."""


class Field(NamedTuple):
    """Nodes to choose from, in a fixed order, and what binds them.

    For each node: `drill` and `load` (a drill comes again only at a higher load), `profile` (its row in
    the table of steps), `enter` (seconds and penalties of doing it), `seconds`, `work` (counts against
    the work limit), `addresses`, `prepares`, `may_open` (may be the first past preparation),
    `before_goal`, `groups` (bit sets of which one bit each must be held) and `gains` (bits it gives).
    `band` is a stretch of the timeline for nodes that an order binds, else None.
    """

    drill: Sequence[int]
    load: Sequence[int]
    profile: Sequence[int]
    enter: Sequence[int]
    seconds: Sequence[int]
    work: Sequence[bool]
    addresses: Sequence[bool]
    prepares: Sequence[bool]
    may_open: Sequence[bool]
    before_goal: Sequence[bool]
    groups: Sequence[tuple[int, ...]]
    gains: Sequence[int]
    goal: int
    goal_may_open: bool
    must_prepare: bool
    must_address: bool
    sizes: Sequence["array[int]"]
    least: Sequence["array[int]"]
    band: Sequence[Band | None] = ()
    order: str = "either"

    def step_cost(self, before: int, after: int) -> int:
        """What going from one node to another costs: the step, and doing the second."""
        return STEP_WEIGHT * self.sizes[self.profile[before]][self.profile[after]] + self.enter[after]

    def allows(self, before: int, after: int) -> bool:
        """Whether a node may come right after another, whatever came earlier."""
        if self.drill[before] == self.drill[after] and self.load[after] <= self.load[before]:
            return False
        if self.prepares[after]:
            return self.prepares[before]
        if after == self.goal and not self.before_goal[before]:
            return False
        return self.may_open[after] if self.prepares[before] else True

    def in_order(self, before: Band, after: Band) -> bool:
        """Whether a stretch may follow another: `up`, neither end goes back; `down`, the start never goes on."""
        if self.order == "up":
            return after[0] >= before[0] and after[1] >= before[1]
        return after[0] <= before[0] if self.order == "down" else True

    def stretches(self) -> list[Band]:
        """The stretches that the order binds, none before one that it may follow."""
        found = {band for band in self.band if band is not None}
        return sorted(found, reverse=self.order == "down")
