"""A rotation to be planned, and a plan of it, in whole ticks: what any way of planning takes and gives back.

Time 0 is the end of the common warm-up. A unit is one lifter, or up to four of the same chain who move together.
"""

from collections.abc import Iterable, Mapping
from itertools import zip_longest
from typing import NamedTuple

from kb.terms import DrillId, ItemId, Load

__all__ = [
    "LOOK_AFTER",
    "TICK_S",
    "TOGETHER",
    "Mode",
    "Plan",
    "Rotation",
    "Showing",
    "Task",
    "Unit",
    "alike",
    "idle_of",
    "ticks",
]

TICK_S = 30
"""Times on a class's cards are whole half minutes, s; what takes less is rounded up."""

TOGETHER = 4
"""Lifters who do a drill at the same time, from whom on it is called. Common practice, no source."""

LOOK_AFTER = 1
"""Ticks from a drill's start to its first try: the change-over."""


def ticks(seconds: int) -> int:
    """Seconds in ticks, rounded up.

    >>> ticks(61), ticks(60)
    (3, 2)
    """
    return -(-seconds // TICK_S)


class Mode(NamedTuple):
    """A way of doing a task: how long each lifter takes, and how many of each counted item the unit needs.

    `places` says for each of the unit at which of its sets of gear they are (each at their own, where it is empty), and
    `later` how many ticks after the first they begin, taking turns; `longer` how many more than `ticks` each takes.
    `light` says that a stick serves where a bar was meant, `training` that a training bar does. A coach looks on at a
    task's first try as many times as `looks` has numbers, each so many ticks later.
    """

    ticks: int
    gear: tuple[tuple[ItemId, int], ...] = ()
    places: tuple[int, ...] = ()
    later: tuple[int, ...] = ()
    longer: tuple[int, ...] = ()
    light: bool = False
    training: bool = False
    looks: tuple[int, ...] = (0,)

    @property
    def length(self) -> int:
        """Ticks from the first lifter's start to the last one's end."""
        ends = [a + b for a, b in zip_longest(self.later, self.longer, fillvalue=0)]
        return self.ticks + max(ends, default=0)

    @property
    def shared(self) -> bool:
        """Whether some take turns at one set of gear."""
        return len(set(self.places)) < len(self.places)

    def begins(self, n: int) -> int:
        """Ticks from the first lifter's start to the n-th one's."""
        return self.later[n] if self.later else 0

    def takes(self, n: int) -> int:
        """Ticks that the n-th takes."""
        return self.ticks + (self.longer[n] if self.longer else 0)

    def rests(self, n: int) -> int:
        """Ticks from the n-th one's end to the last one's."""
        return self.length - self.begins(n) - self.takes(n)

    def place(self, n: int) -> int:
        """At which of the unit's sets of gear the n-th is."""
        return self.places[n] if self.places else n

    def with_whom(self, n: int) -> tuple[int, ...]:
        """Who else is at the n-th one's set, in the order of their turns."""
        return tuple(m for m, place in enumerate(self.places) if m != n and place == self.places[n])

    def first(self, n: int) -> bool:
        """Whether the n-th is the first at their set."""
        return not self.places or self.places.index(self.places[n]) == n


class Task(NamedTuple):
    """One drill of a unit's chain. A coach looks on from `look_at` for `look` ticks, if `look` isn't 0 (see `looks`).

    `loading` are the ticks at its beginning in which the bar is warmed up. `helped` says that somebody of
    another unit must be the partner.
    """

    drill: DrillId
    load: Load
    work: bool
    modes: tuple[Mode, ...]
    look: int = 0
    look_at: int = LOOK_AFTER
    loading: int = 0
    helped: bool = False

    def looked_at(self, mode: Mode) -> tuple[tuple[int, int], ...]:
        """From when to when a coach looks on, ticks from its start."""
        begins = (self.look_at + each for each in mode.looks if self.look)
        return tuple((begin, begin + self.look) for begin in begins)


class Unit(NamedTuple):
    """Lifters (by number) who move together, their chain's group, and their tasks in order."""

    lifters: tuple[int, ...]
    group: int
    tasks: tuple[Task, ...]

    @property
    def size(self) -> int:
        """How many they are."""
        return len(self.lifters)


class Showing(NamedTuple):
    """A drill shown once to all who need it: pairs of a unit and the task that must come after."""

    drill: DrillId
    ticks: int
    needs: tuple[tuple[int, int], ...]


class Rotation(NamedTuple):
    """What is to be planned. `have` counts only what could run short; `at_once` is how many chains may run.

    Those of the groups `by_themselves` aren't counted: no coach runs them.

    `last` is the tick by which everyone has ended; `wait` the most ticks that anyone waits at a time;
    `fresh` the most between a drill's showing and the first start of those who needed it.
    """

    units: tuple[Unit, ...]
    showings: tuple[Showing, ...]
    have: Mapping[ItemId, int]
    coaches: int
    at_once: int
    last: int
    wait: int
    fresh: int
    by_themselves: frozenset[int] = frozenset()

    @property
    def led(self) -> tuple[int, ...]:
        """The groups whose chains a coach runs."""
        return tuple(sorted({unit.group for unit in self.units} - self.by_themselves))


class Plan(NamedTuple):
    """When each task starts and in which mode, when each drill is shown, and who helps.

    `helpers` maps (unit, task) to the unit whose first lifter is the partner. `bound` is the least idle time any
    plan can have as far as is proved, in ticks, None where nothing is known; `drills_bound` the same for the most
    different drills at once.
    """

    starts: tuple[tuple[int, ...], ...]
    modes: tuple[tuple[int, ...], ...]
    shown: tuple[int, ...]
    helpers: Mapping[tuple[int, int], int]
    bound: int | None = None
    drills_bound: int | None = None

    def mode(self, rotation: Rotation, unit: int, task: int) -> Mode:
        """The mode in which a task is done."""
        return rotation.units[unit].tasks[task].modes[self.modes[unit][task]]

    def end(self, rotation: Rotation, unit: int, task: int) -> int:
        """When the last lifter of a unit has done a task; task -1 is the warm-up."""
        return self.starts[unit][task] + self.mode(rotation, unit, task).length if task >= 0 else 0

    def looks(self, rotation: Rotation) -> Iterable[tuple[int, int, int, int]]:
        """Each stretch in which a coach looks on: the unit, the task, from when to when."""
        for u, unit in enumerate(rotation.units):
            for k, task in enumerate(unit.tasks):
                for begin, end in task.looked_at(self.mode(rotation, u, k)):
                    yield u, k, self.starts[u][k] + begin, self.starts[u][k] + end


def alike(rotation: Rotation, one: int, other: int) -> bool:
    """Whether two units could be exchanged in any plan: same chain, same size, the same to be shown, no helper."""
    a, b = rotation.units[one], rotation.units[other]
    if (a.group, a.size, a.tasks) != (b.group, b.size, b.tasks) or any(task.helped for task in a.tasks):
        return False
    return all(
        {k for unit, k in showing.needs if unit == one} == {k for unit, k in showing.needs if unit == other}
        for showing in rotation.showings
    )


def idle_of(rotation: Rotation, plan: Plan) -> int:
    """Idle time of all lifters in ticks: from the warm-up to their own end, less doing, being shown and helping."""
    idle = 0
    for u, unit in enumerate(rotation.units):
        last = len(unit.tasks) - 1
        for n in range(unit.size):
            mode = plan.mode(rotation, u, last)
            idle += plan.starts[u][last] + mode.begins(n) + mode.takes(n)
            idle -= sum(plan.mode(rotation, u, k).takes(n) for k in range(len(unit.tasks)))
        idle -= unit.size * sum(s.ticks for s in rotation.showings if u in {each for each, _ in s.needs})
    helping = sum(plan.mode(rotation, u, k).ticks for u, k in plan.helpers)
    return idle - helping
