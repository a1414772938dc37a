"""When each lifter of a class has ended their list, and what is out at each minute: what comes after starts from this.

Whatever comes after takes nothing that a list needs.
"""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.class_.build import Matter
from kb.ask.class_.people import PLENTY
from kb.ask.class_.rotation import Plan
from kb.terms import ItemId

__all__ = ["WORTH_S", "Ended", "ended"]

WORTH_S = 180
"""Who has ended so long before the class, s, is given more to do. Common practice, no source."""


class Ended(NamedTuple):
    """When each lifter (by number) has ended, ticks, and how many of each counted thing are out at each tick.

    Of what isn't counted there is enough. Both are written on by whoever gives a lifter something more.
    """

    ends: dict[int, int]
    out: dict[ItemId, list[int]]

    def free(self, matter: Matter, items: Sequence[tuple[ItemId, int]], start: int, end: int) -> bool:
        """Whether so many of each thing are free from tick `start` to tick `end`."""
        have = matter.asked.have
        counted = [(item, count) for item, count in items if item in self.out]
        return all(self.out[item][tick] + count <= have[item] for item, count in counted for tick in range(start, end))

    def take(self, items: Sequence[tuple[ItemId, int]], start: int, end: int) -> None:
        """Have so many of each thing out from tick `start` to tick `end`."""
        for item, count in items:
            if item in self.out:
                for tick in range(start, end):
                    self.out[item][tick] += count


def ended(matter: Matter, plan: Plan) -> Ended:
    """A plan's lists and nothing more."""
    rotation = matter.rotation
    found = Ended({}, {item: [0] * rotation.last for item, count in matter.asked.have.items() if count < PLENTY})
    for u, unit in enumerate(rotation.units):
        found.ends.update(_ends(matter, plan, u))
        for k in range(len(unit.tasks)):
            found.take(plan.mode(rotation, u, k).gear, plan.starts[u][k], plan.end(rotation, u, k))
    return found


def _ends(matter: Matter, plan: Plan, u: int) -> dict[int, int]:
    """When each lifter of a unit has ended, helping others with it."""
    unit = matter.rotation.units[u]
    k = len(unit.tasks) - 1
    mode = plan.mode(matter.rotation, u, k)
    ends = {n: plan.starts[u][k] + mode.begins(at) + mode.takes(at) for at, n in enumerate(unit.lifters)}
    helped = [plan.end(matter.rotation, *task) for task, helper in plan.helpers.items() if helper == u]
    first = unit.lifters[0]
    return {**ends, first: max([ends[first], *helped])}
