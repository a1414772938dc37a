"""From the lists of all lifters to the rotation that is to be planned."""

from collections.abc import Mapping, Sequence
from contextlib import suppress
from itertools import accumulate
from typing import NamedTuple

from kb.ask.class_.doing import PARTNER, Doing, Own, counted
from kb.ask.class_.groups import CHAINS_A_COACH, Group, groups_of
from kb.ask.class_.people import Class
from kb.ask.class_.rotation import LOOK_AFTER, TICK_S, Mode, Rotation, Showing, Task, Unit, ticks
from kb.ask.class_.sharing import by_weight, evenly, placed
from kb.ask.class_.turns import by_turns, loading_seconds, may_share, ready_at, steps_up
from kb.dose import CHANGE_OVER_S, check_seconds, round_seconds, work_seconds
from kb.errors import NoAnswer
from kb.kit import BAR, TRAINING_BAR, Gear
from kb.terms import Drill, DrillId, ItemId, Load

__all__ = ["LOOK_S", "Matter", "matter_of"]

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
    """Lifters grouped, put together in units (unless told otherwise, or where they can't move together), with tasks.

    Raises NoAnswer where a single drill needs more of a thing than there is.
    """
    groups = groups_of(asked, owns)
    bars = asked.have.get(BAR, 0)
    hall = _Hall(asked, asked.have, bars < len(asked.lifters))
    units: list[Unit] = []
    doings: list[tuple[Doing, ...]] = []
    for number, group in enumerate(groups):
        for members in _units(hall, owns, group):
            # whoever takes it from a rack has the others do so: one bar, one place
            first = next((n for n in members if owns[n].lifter.from_rack), members[0])
            unit_doings = (*group.doings, *_working(owns[first]))
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
    """Those who move together as one unit, or half of them, where the gear for all at once isn't there."""
    if not pairs:
        return [(each,) for each in members]
    if len(members) == 1:
        return [members]
    partners = any(PARTNER in doing.drill.equipment for doing in doings)
    if len(members) == 2 or not partners:
        with suppress(NoAnswer):
            _tasks(hall, owns, members, doings)
            return [members]
    half = (len(members) + 1) // 2
    return [
        unit for part in (members[:half], members[half:]) for unit in _together(hall, owns, part, doings, pairs=pairs)
    ]


def _tasks(hall: _Hall, owns: Sequence[Own], members: tuple[int, ...], doings: Sequence[Doing]) -> tuple[Task, ...]:
    return tuple(
        _task(hall, [owns[n] for n in members], doing, look)
        for doing, look in zip(doings, _looked_at(doings), strict=True)
    )


def _working(own: Own) -> tuple[Doing, ...]:
    return tuple(doing for doing in own.doings if doing.load is Load.WORKING)


def _units(hall: _Hall, owns: Sequence[Own], group: Group) -> list[tuple[int, ...]]:
    """A group in units as even as can be, of as many as share a bar; whoever has a day's weight by like weights."""
    most = hall.asked.to_a_bar
    light = [n for n in group.lifters if not _working(owns[n])]
    heavy = [n for n in group.lifters if _working(owns[n])]
    heavy.sort(key=lambda n: (owns[n].lifter.weight_kg or 0.0, n))
    bars = hall.have.get(BAR, 0) if hall.scarce else len(heavy)
    weights = [owns[n].lifter.weight_kg or 0.0 for n in heavy]
    found = []
    for members, sizes in ((light, evenly(len(light), most)), (heavy, by_weight(weights, most, bars))):
        for at, size in zip(accumulate(sizes, initial=0), sizes, strict=False):
            found.append(tuple(members[at : at + size]))
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
        if doing.training_gear is not None and hall.scarce:
            modes += [mode._replace(training=True) for mode in _ways(hall, len(owns), doing, doing.training_gear)]
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
        look=ticks(max(LOOK_S, _first_rounds(doing, len(owns)))) if look else 0,
        look_at=loading + LOOK_AFTER,
        loading=loading,
        helped=helped and len(owns) == 1,
    )


def _first_rounds(doing: Doing, people: int) -> int:
    """How long it takes to see the first rounds of more than two who share, s."""
    return doing.drill.set_up_s + people * round_seconds(doing.drill.dose) if people > 2 else 0


def _short_of(hall: _Hall, owns: Sequence[Own], drill: Drill, modes: Sequence[Mode]) -> str:
    names = " and ".join(own.lifter.name for own in owns)
    least = min(modes, key=lambda mode: sum(max(0, count - hall.have[item]) for item, count in mode.gear))
    short = [f"{count - hall.have[item]} more {item}" for item, count in least.gear if count > hall.have[item]]
    return f"{names}: {drill.name} needs {' and '.join(short)} than there is"


def _needs(hall: _Hall, gear: Sequence[Gear], sets: int) -> tuple[tuple[ItemId, int], ...]:
    return tuple((item, sets) for item in counted(tuple(gear), hall.have))


def _ways(hall: _Hall, people: int, doing: Doing, gear: Sequence[Gear]) -> list[Mode]:
    """Each with their own gear, or by turns at fewer sets of it where that costs none of them rest."""
    drill = doing.drill
    alone = ticks(work_seconds(drill) if doing.work else check_seconds(drill))
    found = [Mode(alone, _needs(hall, gear, people))]
    for sets in range(people - 1, 0, -1) if found[0].gear else ():
        most = -(-people // sets)
        if -(-people // most) == sets and may_share(drill.dose, most, check=not doing.work):
            places = placed(people, sets)
            later = tuple(ticks(by_turns(drill.dose, places[:n].count(place))) for n, place in enumerate(places))
            found.append(Mode(alone, _needs(hall, gear, sets), places, later))
    spares = hall.asked.sparing and any(each.using in (BAR, TRAINING_BAR) for each in gear)
    return found[-1:] if spares else found


def _heavy(hall: _Hall, owns: Sequence[Own], doing: Doing) -> tuple[list[Mode], int]:
    """The lift at the day's weight, the bar warmed up before it, and how many ticks that takes at least.

    At one bar it only goes up: whose weight is lightest does theirs first, the others a round at each on the way.
    """
    drill, people = doing.drill, len(owns)
    weights = [own.lifter.weight_kg or 0.0 for own in owns]
    steps = max(len(steps_up(hall.asked.bar_kg, weight)) for weight in weights)
    if people == 1 or not hall.scarce:
        loading = ticks(loading_seconds(steps, drill.dose, 1))
        return [Mode(loading + ticks(work_seconds(drill)), _needs(hall, doing.gear, people))], loading
    if len(set(weights)) == 1:
        loading = ticks(loading_seconds(steps, drill.dose, people))
        return [mode._replace(ticks=loading + mode.ticks) for mode in _ways(hall, people, doing, doing.gear)], loading
    apart = ticks(loading_seconds(steps, drill.dose, 1))
    whole = ticks(work_seconds(drill)) * TICK_S
    ready = [ticks(each) for each in ready_at(hall.asked.bar_kg, weights, drill.dose, whole)]
    loading, work = min(apart, *ready), ticks(work_seconds(drill))
    longer = tuple(at - loading for at in ready)
    looks = tuple(longer[weights.index(weight)] for weight in dict.fromkeys(weights))
    own, later = apart - loading, (0,) * people
    return [
        Mode(loading + work, _needs(hall, doing.gear, people), longer=(own,) * people, looks=(own,)),
        Mode(loading + work, _needs(hall, doing.gear, 1), later, later, longer, looks=looks),
    ], loading


def _pruned(task: Task, have: Mapping[ItemId, int]) -> Task:
    """A task without the modes that another beats: as quick with as little of what could run short.

    What was meant goes before a stick in its place.
    """

    def worse(mode: Mode, other: Mode) -> bool:
        has, unit = dict(mode.gear), range(max(len(mode.places), len(other.places), 1))
        return (
            other.length <= mode.length
            and all(other.begins(n) <= mode.begins(n) and other.takes(n) <= mode.takes(n) for n in unit)
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
