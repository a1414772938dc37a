"""From the lists of all lifters to the rotation that is to be planned."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from kb.ask.class_.doing import PARTNER, Doing, Own, counted
from kb.ask.class_.groups import CHAINS_A_COACH, Group, groups_of
from kb.ask.class_.people import Class
from kb.ask.class_.rotation import LOOK_AFTER, TICK_S, Mode, Rotation, Showing, Task, Unit, ticks
from kb.ask.class_.turns import by_turns, loading_seconds, may_share, steps_up
from kb.dose import CHANGE_OVER_S, check_seconds, round_seconds, work_seconds
from kb.errors import NoAnswer
from kb.kit import Gear
from kb.loading import LOADING_S
from kb.terms import Drill, DrillId, ItemId, Load

__all__ = ["Matter", "matter_of"]

FRESH_S = 60
"""The longest from a drill's showing to its first doers' start, s: it is shown when it is to be done. Ours."""

LOOK_S = 60
"""How long a coach stands by at a risky first try: setting up and the first round, of both where two share. Ours."""


class Matter(NamedTuple):
    """A class understood: the rotation, and for each unit's task how each of its lifters does it."""

    asked: Class
    owns: tuple[Own, ...]
    groups: tuple[Group, ...]
    rotation: Rotation
    doings: tuple[tuple[Doing, ...], ...]


class _Hall(NamedTuple):
    """What units are built with: `scarce` where bars don't go round."""

    asked: Class
    have: Mapping[ItemId, int]
    scarce: bool


def matter_of(asked: Class, owns: Sequence[Own], *, pairs: bool = True) -> Matter:
    """Lifters grouped, paired (unless told otherwise, or where two can't move together), and their drills as tasks.

    Raises NoAnswer where a single drill needs more of a thing than there is.
    """
    groups = groups_of(asked, owns)
    bars = asked.have.get(ItemId("bar"), 0)
    hall = _Hall(asked, asked.have, bars < len(asked.lifters))
    units: list[Unit] = []
    doings: list[tuple[Doing, ...]] = []
    for number, group in enumerate(groups):
        for members in _units(owns, group):
            unit_doings = (*group.doings, *_working(owns[members[0]]))
            for each in _together(hall, owns, members, unit_doings, pairs=pairs):
                units.append(Unit(each, number, _tasks(hall, owns, each, unit_doings)))
                doings.append(unit_doings)
    have = _may_run_short(units, asked.have)
    rotation = Rotation(
        units=tuple(unit._replace(tasks=tuple(_pruned(task, have) for task in unit.tasks)) for unit in units),
        showings=_showings(owns, units),
        have=have,
        coaches=asked.coaches,
        at_once=CHAINS_A_COACH * asked.coaches,
        by_themselves=frozenset(number for number, group in enumerate(groups) if group.by_themselves),
        last=(60 * asked.minutes - asked.warm_up_s) // TICK_S,
        wait=asked.most_wait_s // TICK_S,
        fresh=FRESH_S // TICK_S,
    )
    return Matter(asked, tuple(owns), groups, rotation, tuple(doings))


def _together(
    hall: _Hall, owns: Sequence[Own], members: tuple[int, ...], doings: Sequence[Doing], *, pairs: bool
) -> list[tuple[int, ...]]:
    """Two as one unit, or each alone where the gear for both at once isn't there."""
    alone = [(each,) for each in members]
    if not pairs:
        return list(alone)
    try:
        _tasks(hall, owns, members, doings)
    except NoAnswer:
        return list(alone)
    return [members]


def _tasks(hall: _Hall, owns: Sequence[Own], members: tuple[int, ...], doings: Sequence[Doing]) -> tuple[Task, ...]:
    return tuple(
        _task(hall, [owns[n] for n in members], doing, look)
        for doing, look in zip(doings, _looked_at(doings), strict=True)
    )


def _working(own: Own) -> tuple[Doing, ...]:
    return tuple(doing for doing in own.doings if doing.load is Load.WORKING)


def _units(owns: Sequence[Own], group: Group) -> list[tuple[int, ...]]:
    """A group two by two, those of like weights together; who is over is alone."""
    found: list[tuple[int, ...]] = []
    for loaded in (False, True):
        members = [n for n in group.lifters if bool(_working(owns[n])) is loaded]
        members.sort(key=lambda n: (owns[n].lifter.weight_kg or 0.0, n))
        # like weights first, so that as few as can be change discs between turns
        alone: list[int] = []
        while members:
            if len(members) > 1 and owns[members[0]].lifter.weight_kg == owns[members[1]].lifter.weight_kg:
                found.append((members.pop(0), members.pop(0)))
            else:
                alone.append(members.pop(0))
        found += [tuple(alone[n : n + 2]) for n in range(0, len(alone), 2)]
    return found


def _looked_at(doings: Sequence[Doing]) -> list[bool]:
    """Which first tries a coach stands by: the first at full depth under a bar, and the first at the day's weight."""
    found, deep, heavy = [], False, False
    for doing in doings:
        is_heavy = doing.load is Load.WORKING
        found.append((doing.deep and not deep) or (is_heavy and not heavy))
        deep, heavy = deep or doing.deep, heavy or is_heavy
    return found


def _task(hall: _Hall, owns: Sequence[Own], doing: Doing, look: bool) -> Task:
    drill = doing.drill
    helped = PARTNER in drill.equipment
    loading = 0
    if doing.load is Load.WORKING:
        modes, loading = _heavy(hall, owns, doing)
    elif helped and len(owns) > 1:
        # they are each other's partner, one after the other
        once = work_seconds(drill) if doing.work else check_seconds(drill)
        both = ticks(once) + ticks(once - CHANGE_OVER_S - drill.set_up_s)
        modes = [Mode(both, _needs(hall, doing.gear, 1))]
    else:
        modes = _ways(hall, len(owns), doing, doing.gear)
        if doing.light_gear is not None and hall.scarce:
            modes += [mode._replace(light=True) for mode in _ways(hall, len(owns), doing, doing.light_gear)]
    able = [mode for mode in modes if all(hall.have[item] >= count for item, count in mode.gear)]
    if not able:
        raise NoAnswer(_short_of(hall, owns, drill, modes))
    return Task(
        drill.id,
        doing.load,
        doing.work,
        tuple(able),
        look=ticks(LOOK_S) if look else 0,
        look_at=loading + LOOK_AFTER,
        loading=loading,
        helped=helped and len(owns) == 1,
    )


def _short_of(hall: _Hall, owns: Sequence[Own], drill: Drill, modes: Sequence[Mode]) -> str:
    names = " and ".join(own.lifter.name for own in owns)
    least = min(modes, key=lambda mode: sum(max(0, count - hall.have[item]) for item, count in mode.gear))
    short = [f"{count - hall.have[item]} more {item}" for item, count in least.gear if count > hall.have[item]]
    return f"{names}: {drill.name} needs {' and '.join(short)} than there is"


def _needs(hall: _Hall, gear: Sequence[Gear], sets: int) -> tuple[tuple[ItemId, int], ...]:
    return tuple((item, sets) for item in counted(tuple(gear), hall.have))


def _ways(hall: _Hall, people: int, doing: Doing, gear: Sequence[Gear]) -> list[Mode]:
    """Each with their own gear, or two by turns where that costs neither of them rest."""
    drill = doing.drill
    alone = ticks(work_seconds(drill) if doing.work else check_seconds(drill))
    found = [Mode(alone, _needs(hall, gear, people))]
    if people > 1 and found[0].gear and may_share(drill.dose, check=not doing.work):
        found.append(Mode(alone, _needs(hall, gear, 1), turns=ticks(by_turns(drill.dose))))
    return found


def _heavy(hall: _Hall, owns: Sequence[Own], doing: Doing) -> tuple[list[Mode], int]:
    """The lift at the day's weight, the bar warmed up before it, and how many ticks that takes.

    Two of different weights at one bar change discs at every turn: their rests are then as long as that takes.
    """
    drill, people = doing.drill, len(owns)
    weights = {own.lifter.weight_kg or 0.0 for own in owns}
    steps = max(len(steps_up(hall.asked.bar_kg, weight)) for weight in weights)
    if people == 1 or not hall.scarce:
        loading = ticks(loading_seconds(steps, drill.dose, 1))
        return [Mode(loading + ticks(work_seconds(drill)), _needs(hall, doing.gear, people))], loading
    loading = ticks(loading_seconds(steps, drill.dose, people))
    if len(weights) == 1:
        ways = _ways(hall, people, doing, doing.gear)
        return [mode._replace(ticks=loading + mode.ticks) for mode in ways], loading
    one, every = round_seconds(drill.dose), 2 * (round_seconds(drill.dose) + LOADING_S)
    rounds = max(drill.dose.rounds, 1)
    length = CHANGE_OVER_S + drill.set_up_s + (rounds - 1) * max(every, one + drill.dose.rest_s) + one
    return [Mode(loading + ticks(length), _needs(hall, doing.gear, 1), turns=ticks(one + LOADING_S))], loading


def _pruned(task: Task, have: Mapping[ItemId, int]) -> Task:
    """A task without the modes that another beats: as quick with as little of what could run short.

    What was meant goes before a stick in its place.
    """

    def worse(mode: Mode, other: Mode) -> bool:
        has = dict(mode.gear)
        return (
            other.ticks <= mode.ticks
            and other.turns <= mode.turns
            and other.light <= mode.light
            and all(has.get(item, 0) >= count for item, count in other.gear if item in have)
        )

    found: list[Mode] = []
    for mode in task.modes:
        if not any(worse(mode, other) for other in found):
            found = [other for other in found if not worse(other, mode)] + [mode]
    return task._replace(modes=tuple(found))


def _showings(owns: Sequence[Own], units: Sequence[Unit]) -> tuple[Showing, ...]:
    """Each drill that somebody doesn't know, with the units that need it shown, in order of drills."""
    drills: dict[DrillId, Drill] = {doing.drill.id: doing.drill for own in owns for doing in own.doings}
    needs: dict[DrillId, list[tuple[int, int]]] = {}
    for u, unit in enumerate(units):
        seen: set[DrillId] = set()
        for k, task in enumerate(unit.tasks):
            if task.drill not in seen and any(task.drill not in owns[n].knows for n in unit.lifters):
                needs.setdefault(task.drill, []).append((u, k))
            seen.add(task.drill)
    return tuple(Showing(each, ticks(drills[each].teach_s), tuple(pairs)) for each, pairs in needs.items())


def _may_run_short(units: Sequence[Unit], have: Mapping[ItemId, int]) -> dict[ItemId, int]:
    """The counted things of which there are fewer than if every unit used its most at once."""
    most: dict[ItemId, int] = {}
    for unit in units:
        used: dict[ItemId, int] = {}
        for task in unit.tasks:
            for mode in task.modes:
                for item, count in mode.gear:
                    used[item] = max(used.get(item, 0), count)
        for item, count in used.items():
            most[item] = most.get(item, 0) + count
    return {item: have[item] for item, count in sorted(most.items()) if count > have[item]}
