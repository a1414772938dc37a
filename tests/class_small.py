"""Tiny rotations drawn at random, and the best plan of each by trying every one: what the solver is judged by.

The rules are read here tick by tick, from what is said of them in kb/docs/class.md; nothing of the model is used.
"""

from collections.abc import Iterator
from itertools import product
from math import prod
from random import Random

from kb.ask.class_.rotation import Mode, Plan, Rotation, Showing, Task, Unit
from kb.terms import DrillId, ItemId, Load

__all__ = ["drawn", "lawful", "least_idle", "seeds"]

BAR, STICK = ItemId("bar"), ItemId("stick")


def seeds(count: int, *, most: int = 5000) -> list[int]:
    """The first seeds whose rotations have few enough plans, before any rule, for all to be tried."""
    found: list[int] = []
    seed = 0
    while len(found) < count:
        rotation = drawn(seed)
        if prod(sum(1 for _ in _runs(rotation, u)) for u in range(len(rotation.units))) <= most:
            found.append(seed)
        seed += 1
    return found


def drawn(seed: int) -> Rotation:
    """A rotation of two or three units with one to three tasks each, in a hall with little in it."""
    dice = Random(seed)
    groups = []
    for g in range(2):
        tasks = []
        for k in range(dice.randint(1, 3 if g == 0 else 2)):
            ticks = dice.randint(1, 3)
            tasks.append((DrillId(f"d{dice.randint(0, 3)}{k}"), ticks, dice.random() < 0.5, dice.random() < 0.25))
        groups.append(tasks)
    units: list[Unit] = []
    who = 0
    for n in range(dice.randint(2, 3)):
        group = n % 2 if dice.random() < 0.8 else 0
        size = dice.choice((1, 1, 2, 2, 3))
        units.append(Unit(tuple(range(who, who + size)), group, tuple(_task(dice, size, *t) for t in groups[group])))
        who += size
    helped = dice.random() < 0.2
    if helped and units[0].size == 1:
        first = units[0].tasks[0]
        units[0] = units[0]._replace(tasks=(first._replace(helped=True, modes=first.modes[:1]), *units[0].tasks[1:]))
    numbers = sorted({unit.group for unit in units})
    units = [unit._replace(group=numbers.index(unit.group)) for unit in units]
    showings = _showings(dice, units)
    longest = max(
        sum(task.modes[0].ticks for task in unit.tasks) + sum(any(v == u for v, _ in s.needs) for s in showings)
        for u, unit in enumerate(units)
    )
    return Rotation(
        units=tuple(units),
        showings=showings,
        have={BAR: dice.randint(1, 3), STICK: dice.randint(2, 3)},
        coaches=1,
        at_once=dice.choice((2, 2, 2, 2, 1)),
        last=longest + dice.randint(1, 4),
        wait=dice.randint(1, 4),
        fresh=dice.randint(0, 3),
    )


def _task(dice: Random, size: int, drill: DrillId, ticks: int, bar: bool, look: bool) -> Task:
    item = BAR if bar else STICK
    modes = [Mode(ticks, ((item, size),))]
    if size > 1 and dice.random() < 0.6:
        modes.append(_by_turns(dice, size, ticks, item))
    if bar and dice.random() < 0.3:
        modes.append(Mode(ticks, ((STICK, size),), light=True))
    seen = look and ticks > 1
    if seen and len(modes) > 1 and dice.random() < 0.5:
        modes[1] = modes[1]._replace(looks=(0, 1))
    return Task(drill, Load.LIGHT, True, tuple(modes), look=1 if seen else 0, look_at=1)


def _by_turns(dice: Random, size: int, ticks: int, item: ItemId) -> Mode:
    """All at one set, each a tick later or, as where a bar climbs, in it for longer; or three at two sets."""
    if size == 3 and dice.random() < 0.4:
        return Mode(ticks, ((item, 2),), (0, 0, 1), (0, 1, 0))
    if dice.random() < 0.3:
        return Mode(ticks, ((item, 1),), (0,) * size, longer=tuple(range(size)))
    return Mode(ticks, ((item, 1),), (0,) * size, tuple(range(size)))


def _when(mode: Mode, n: int) -> tuple[int, int]:
    """How much later than the first the n-th begins, and has ended."""
    begins = mode.later[n] if mode.later else 0
    return begins, begins + mode.ticks + (mode.longer[n] if mode.longer else 0)


def _showings(dice: Random, units: list[Unit]) -> tuple[Showing, ...]:
    drills = sorted({task.drill for unit in units for task in unit.tasks})
    found = []
    for drill in drills:
        if dice.random() < 0.3 and len(found) < 2:
            needs = tuple(
                (u, next(k for k, task in enumerate(unit.tasks) if task.drill == drill))
                for u, unit in enumerate(units)
                if any(task.drill == drill for task in unit.tasks)
            )
            found.append(Showing(drill, 1, needs))
    return tuple(found)


def _runs(rotation: Rotation, u: int) -> Iterator[tuple[tuple[int, ...], tuple[int, ...]]]:
    """Every way one unit can do its tasks in order within the time: starts and modes."""
    tasks = rotation.units[u].tasks
    most = rotation.wait + sum(s.ticks for s in rotation.showings) + max(t.modes[0].ticks for t in _all(rotation))
    for modes in product(*(range(len(task.modes)) for task in tasks)):
        lengths = [task.modes[n].length for task, n in zip(tasks, modes, strict=True)]

        def place(k: int, now: int, lengths: list[int] = lengths) -> Iterator[tuple[int, ...]]:
            if k == len(lengths):
                yield ()
                return
            for start in range(now, min(now + most, rotation.last - lengths[k]) + 1):
                for rest in place(k + 1, start + lengths[k]):
                    yield (start, *rest)

        for starts in place(0, 0):
            yield starts, modes


def _all(rotation: Rotation) -> list[Task]:
    return [task for unit in rotation.units for task in unit.tasks]


def _idle(rotation: Rotation, plan: Plan) -> int:
    """Idle ticks of every lifter, counted one lifter and one stretch at a time."""
    idle = 0
    for u, unit in enumerate(rotation.units):
        for n in range(unit.size):
            busy: set[int] = set()
            for k, task in enumerate(unit.tasks):
                mode = task.modes[plan.modes[u][k]]
                begin, end = (plan.starts[u][k] + each for each in _when(mode, n))
                busy |= set(range(begin, end))
            for showing, at in zip(rotation.showings, plan.shown, strict=True):
                if any(v == u for v, _ in showing.needs):
                    busy |= set(range(at, at + showing.ticks))
            if n == 0:
                for (v, k), helper in plan.helpers.items():
                    if helper == u:
                        mode = rotation.units[v].tasks[k].modes[plan.modes[v][k]]
                        busy |= set(range(plan.starts[v][k], plan.starts[v][k] + mode.ticks))
            idle += end - len([tick for tick in busy if tick < end])
    return idle


def lawful(rotation: Rotation, plan: Plan) -> bool:
    """Whether a plan keeps every rule, tick by tick."""
    units = rotation.units
    end = [
        [s + units[u].tasks[k].modes[plan.modes[u][k]].length for k, s in enumerate(plan.starts[u])]
        for u in range(len(units))
    ]
    away = _away(rotation, plan)
    for u, unit in enumerate(units):
        stretches = [(s, end[u][k]) for k, s in enumerate(plan.starts[u])] + away[u]
        ticks = [tick for a, b in stretches for tick in range(a, b)]
        if len(ticks) != len(set(ticks)) or end[u][-1] > rotation.last or any(a < 0 for a, _ in stretches):
            return False
        if any(b > plan.starts[u][-1] for _, b in away[u]) or not _waits(rotation, plan, u, end[u], away[u]):
            return False
        if sorted(plan.starts[u]) != list(plan.starts[u]) or unit.size < 1:
            return False
    return _hall(rotation, plan, end) and _coaching(rotation, plan) and _told(rotation, plan)


def _away(rotation: Rotation, plan: Plan) -> list[list[tuple[int, int]]]:
    """When each unit is shown something or helps."""
    found: list[list[tuple[int, int]]] = [[] for _ in rotation.units]
    for showing, at in zip(rotation.showings, plan.shown, strict=True):
        for u, _ in showing.needs:
            found[u].append((at, at + showing.ticks))
    for (v, k), helper in plan.helpers.items():
        mode = rotation.units[v].tasks[k].modes[plan.modes[v][k]]
        found[helper].append((plan.starts[v][k], plan.starts[v][k] + mode.length))
    return found


def _waits(rotation: Rotation, plan: Plan, u: int, end: list[int], away: list[tuple[int, int]]) -> bool:
    """Between two of a lifter's own drills the waiting adds up to no more than may be."""
    unit = rotation.units[u]
    helps = [
        (plan.starts[v][k], rotation.units[v].tasks[k].modes[0].length)
        for (v, k), helper in plan.helpers.items()
        if helper == u
    ]
    for n in range(unit.size):
        now = 0
        for k, task in enumerate(unit.tasks):
            mode = task.modes[plan.modes[u][k]]
            begin, end_ = (plan.starts[u][k] + each for each in _when(mode, n))
            out = sum(b - a for a, b in away if now <= a and b <= begin)
            if unit.size > 1:
                # of two who move together one helps, and the other waits
                out -= sum(length for a, length in helps if now <= a and a + length <= begin)
            if begin - now - out > rotation.wait:
                return False
            now = end_
    return len(end) == len(unit.tasks)


def _hall(rotation: Rotation, plan: Plan, end: list[list[int]]) -> bool:
    """At no tick is more out than there is, and no more chains run than coaches can run."""
    units = rotation.units
    for now in range(rotation.last):
        out: dict[ItemId, int] = {}
        for u, unit in enumerate(units):
            for k, task in enumerate(unit.tasks):
                if plan.starts[u][k] <= now < end[u][k]:
                    for item, count in task.modes[plan.modes[u][k]].gear:
                        out[item] = out.get(item, 0) + count
        if any(out[item] > rotation.have[item] for item in out):
            return False
        running = 0
        for group in {unit.group for unit in units}:
            mine = [u for u, unit in enumerate(units) if unit.group == group]
            running += min(plan.starts[u][0] for u in mine) <= now < max(end[u][-1] for u in mine)
        if running > rotation.at_once:
            return False
    return True


def _coaching(rotation: Rotation, plan: Plan) -> bool:
    for now in range(rotation.last + 2):
        busy = sum(at <= now < at + s.ticks for s, at in zip(rotation.showings, plan.shown, strict=True))
        for u, unit in enumerate(rotation.units):
            for k, task in enumerate(unit.tasks):
                for later in task.modes[plan.modes[u][k]].looks:
                    begin = plan.starts[u][k] + task.look_at + later
                    busy += begin <= now < begin + task.look
        if busy > rotation.coaches:
            return False
    return True


def _told(rotation: Rotation, plan: Plan) -> bool:
    """Shown before anyone does it, and soon before the first; a helper is somebody else, with drills still to do."""
    for showing, at in zip(rotation.showings, plan.shown, strict=True):
        starts = [plan.starts[u][k] for u, k in showing.needs]
        if min(starts) < at + showing.ticks or min(starts) > at + showing.ticks + rotation.fresh:
            return False
    helped = {(u, k) for u, unit in enumerate(rotation.units) for k, task in enumerate(unit.tasks) if task.helped}
    return set(plan.helpers) == helped and all(helper != u for (u, _), helper in plan.helpers.items())


def least_idle(rotation: Rotation) -> int | None:
    """The least idle time of any plan, by trying all; None if there is none.

    Times of being shown and helping are the same in every plan, so of two the one in which all end sooner, added up and
    less what they do, is the less idle: those are tried first.
    """
    helped = [(u, k) for u, unit in enumerate(rotation.units) for k, task in enumerate(unit.tasks) if task.helped]
    spans = [range(rotation.last + 1) for _ in rotation.showings]
    by_end: dict[int, list[Plan]] = {}
    for plan in _bare(rotation, Plan((), (), (), {})):
        by_end.setdefault(_ends(rotation, plan), []).append(plan)
    for _, plans in sorted(by_end.items()):
        for bare in plans:
            for shown in product(*spans):
                for helpers in product(range(len(rotation.units)), repeat=len(helped)):
                    plan = bare._replace(shown=shown, helpers=dict(zip(helped, helpers, strict=True)))
                    if _told(rotation, plan) and lawful(rotation, plan):
                        return _idle(rotation, plan)
    return None


def _bare(rotation: Rotation, begun: Plan) -> Iterator[Plan]:
    """Every choice of starts and modes in which the hall holds: of one unit after the other."""
    u = len(begun.starts)
    if u == len(rotation.units):
        yield begun
        return
    part = rotation._replace(units=rotation.units[: u + 1])
    for starts, modes in _runs(rotation, u):
        plan = begun._replace(starts=(*begun.starts, starts), modes=(*begun.modes, modes))
        ends = [
            [s + unit.tasks[k].modes[plan.modes[v][k]].length for k, s in enumerate(plan.starts[v])]
            for v, unit in enumerate(part.units)
        ]
        if _hall(part, plan, ends):
            yield from _bare(rotation, plan)


def _ends(rotation: Rotation, plan: Plan) -> int:
    """When each lifter ends, added up, less the time of what they do."""
    ends = 0
    for u, unit in enumerate(rotation.units):
        modes = [task.modes[plan.modes[u][k]] for k, task in enumerate(unit.tasks)]
        for n in range(unit.size):
            ends += plan.starts[u][-1] + _when(modes[-1], n)[1]
            ends -= sum(after - before for before, after in (_when(mode, n) for mode in modes))
    return ends
