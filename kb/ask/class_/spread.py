"""Bars that nobody uses, given to those who take turns at one: the same plan at the same times, fewer to a bar."""

from collections.abc import Callable, Sequence

from kb.ask.class_.build import Matter
from kb.ask.class_.rotation import Mode, Plan, Rotation, Unit

__all__ = ["spread"]


def spread(sparing: Matter, plan: Plan, free: Matter, worse: Callable[[Plan], bool]) -> Plan | None:
    """A plan of a class that spares bars, with fewer to a bar where bars stand idle all the while.

    `free` is the same class without sparing: what it may choose from. Unit by unit, the largest first, as many bars
    as there are; `worse` says of a plan whether somebody loses by it, who would have had the bar later. No start moves.
    None where the two aren't the same lists, or nothing can be had.
    """
    pairs = list(zip(sparing.rotation.units, free.rotation.units, strict=False))
    if len(sparing.rotation.units) != len(free.rotation.units) or not all(_same(a, b) for a, b in pairs):
        return None
    modes = _taken_over(sparing.rotation, plan, free.rotation)
    if modes is None:
        return None
    found = None
    for u in sorted(range(len(modes)), key=lambda u: (-free.rotation.units[u].size, u)):
        for sets in range(free.rotation.units[u].size, 1, -1):
            tried = [list(each) for each in modes]
            tried[u] = [_nearest(free.rotation, u, k, mode, sets) for k, mode in enumerate(modes[u])]
            if tried[u] == modes[u] or not _holds(free.rotation, plan.starts, tried):
                continue
            wider = plan._replace(modes=tuple(map(tuple, tried)), bound=None)
            if not worse(wider):
                modes, found = tried, wider
                break
    return found


def _same(one: Unit, other: Unit) -> bool:
    """Whether two units are the same people with the same drills."""
    tasks = [[(task.drill, task.load) for task in unit.tasks] for unit in (one, other)]
    return one.lifters == other.lifters and tasks[0] == tasks[1]


def _taken_over(sparing: Rotation, plan: Plan, free: Rotation) -> list[list[int]] | None:
    """The plan's modes by their numbers among all that there are; None where one isn't among them."""
    found = []
    for u, unit in enumerate(free.units):
        here = []
        for k, task in enumerate(unit.tasks):
            mode = plan.mode(sparing, u, k)
            if mode not in task.modes:
                return None
            here.append(task.modes.index(mode))
        found.append(here)
    return found


def _sets(mode: Mode) -> int:
    return max((count for _, count in mode.gear), default=0)


def _nearest(rotation: Rotation, unit: int, task: int, now: int, sets: int) -> int:
    """The mode with more sets than now, so many at most, the most; what it is done with stays."""
    modes = rotation.units[unit].tasks[task].modes
    old = modes[now]
    more = [
        n
        for n, mode in enumerate(modes)
        if (mode.light, mode.training) == (old.light, old.training)
        and {item for item, _ in mode.gear} == {item for item, _ in old.gear}
        and _sets(old) < _sets(mode) <= sets
        and mode.length <= old.length
    ]
    return max(more, key=lambda n: _sets(modes[n]), default=now)


def _holds(rotation: Rotation, starts: Sequence[Sequence[int]], modes: Sequence[Sequence[int]]) -> bool:
    """Whether at no time more of anything is in use than there is."""
    uses: list[tuple[int, int, str, int]] = []
    for u, unit in enumerate(rotation.units):
        for k, task in enumerate(unit.tasks):
            mode = task.modes[modes[u][k]]
            uses += [(starts[u][k], starts[u][k] + mode.length, item, count) for item, count in mode.gear]
    return all(
        sum(count for begin, end, item, count in uses if item == short and begin <= at < end) <= there
        for short, there in rotation.have.items()
        for at in {begin for begin, _, item, _ in uses if item == short}
    )
