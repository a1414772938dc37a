"""What comes next for one who holds some drills, and what of it is still fresh: the two fringes of a state.

References
----------
Doignon and Falmagne, Knowledge Spaces (1999), ch. 2: K with q is a state (outer fringe), K without q is one (inner).
"""

from collections.abc import Collection, Iterable, Mapping, Sequence
from typing import NamedTuple

from kb.kit import Gear, fit, gear_at, loads
from kb.terms import Drill, DrillId, Item, ItemId, Lift, LiftId, Load, Stage

__all__ = ["Closed", "Fringe", "Ready", "Shaky", "closed", "fringe"]

Drills = Mapping[DrillId, Drill]
Groups = Mapping[DrillId, Sequence[Sequence[DrillId]]]


class Closed(NamedTuple):
    """A set closed under prerequisites; `granted` was taken for granted because what is held is built on it.

    Of each group in `chosen` any one would do; the first of it was taken.
    """

    held: frozenset[DrillId]
    granted: tuple[DrillId, ...]
    chosen: tuple[tuple[DrillId, ...], ...]


class Ready(NamedTuple):
    """A drill that may be learnt now, at the least load it makes sense at.

    `must` are the lifts to which every way left leads through it, `may` those to which some way does; `opens` is
    ready as soon as it is held, `waiting` counts the drills that can't be come to without it; `met` is what it is
    built on.
    """

    drill: Drill
    load: Load
    gear: tuple[Gear, ...]
    must: tuple[LiftId, ...]
    may: tuple[LiftId, ...]
    opens: tuple[DrillId, ...]
    waiting: int
    met: tuple[DrillId, ...]


class Shaky(NamedTuple):
    """A held drill that nothing else held is built on: learnt last, as far as anyone knows. `opens` waits for it."""

    drill: Drill
    opens: tuple[DrillId, ...]


class Fringe(NamedTuple):
    """What is ready with what is there, the most useful first; what is ready but for gear; what is shaky."""

    closed: Closed
    ready: tuple[Ready, ...]
    other_gear: tuple[Drill, ...]
    shaky: tuple[Shaky, ...]


def closed(groups: Groups, holds: Collection[DrillId]) -> Closed:
    """What is held, and what it is built on, down to the ground.

    Single prerequisites are taken up first, so that a group of several is often met by one of them; else the first
    member stands for it.
    """
    held = set(holds)
    chosen: list[tuple[DrillId, ...]] = []
    while True:
        lacking = [
            group for drill in sorted(held) for group in groups[drill] if not any(each in held for each in group)
        ]
        single = [group for group in lacking if len(group) == 1]
        if not lacking:
            return Closed(frozenset(held), tuple(sorted(held - set(holds))), tuple(chosen))
        if single:
            held.update(group[0] for group in single)
        else:
            chosen.append(tuple(lacking[0]))
            held.add(lacking[0][0])


def fringe(
    drills: Drills,
    holds: Collection[DrillId],
    lifts: Collection[Lift],
    *,
    have: Collection[ItemId],
    items: Mapping[ItemId, Item],
) -> Fringe:
    """What is ready, and what is shaky, towards some lifts, from drills that are held.

    `drills` are all that any of these is built on. Strengthening stands outside the order and is never ready;
    preparation is where something not yet held is built on it. Ready drills come in the order: every way to most
    lifts leads through it, some way does, most drills wait for it, it opens most, the earliest stage, the id.
    """
    groups = {drill.id: drill.groups for drill in drills.values()}
    here = closed(groups, holds)
    left = {
        drill_id: tuple(group for group in needed if not any(each in here.held for each in group))
        for drill_id, needed in groups.items()
        if drill_id not in here.held and drills[drill_id].stage is not Stage.FINISH
    }
    goals = [lift for lift in lifts if lift.drill in left]
    on_a_way = {lift.id: _on_a_way(left, lift.drill) for lift in goals}
    counted = [each for each in left if any(_serves(drills[each], lift) for lift in lifts)]
    can = _reached(left)
    ready: list[Ready] = []
    other_gear: list[Drill] = []
    for drill_id, needed in left.items():
        drill = drills[drill_id]
        wanted = any(drill_id in way for way in on_a_way.values())
        if needed or not (wanted or (drill_id in counted and drill.stage is not Stage.PREPARE)):
            continue
        fitted = fit(drill, have, items)
        if fitted is None:
            other_gear.append(drill)
            continue
        without = _reached(left, drill_id)
        load = loads(drill, fitted, Load.WORKING)[0]
        ready.append(
            Ready(
                drill=drill,
                load=load,
                gear=gear_at(fitted, load, have, items),
                must=tuple(lift.id for lift in goals if lift.drill in can and lift.drill not in without),
                may=tuple(lift.id for lift in goals if drill_id in on_a_way[lift.id]),
                opens=_opened(left, drill_id),
                waiting=sum(each in can and each not in without for each in counted) - (drill_id in counted),
                met=tuple(next(each for each in group if each in here.held) for group in drill.groups),
            )
        )
    ready.sort(key=_most_useful_first)
    shaky = _shaky(drills, here.held, [drills[each] for each in counted], lifts)
    return Fringe(here, tuple(ready), tuple(other_gear), shaky)


def _most_useful_first(each: Ready) -> tuple[int, int, int, int, Stage, DrillId]:
    return -len(each.must), -len(each.may), -each.waiting, -len(each.opens), each.drill.stage, each.drill.id


def _serves(drill: Drill, lift: Lift) -> bool:
    return any(served in drill.lifts for served in lift.serves)


def _reached(left: Groups, without: DrillId | None = None) -> set[DrillId]:
    """The drills not yet held that can be come to, without one of them."""
    found: set[DrillId] = set()
    waiting = set(left) - {without}
    while True:
        more = {each for each in waiting if all(any(member in found for member in group) for group in left[each])}
        if not more:
            return found
        found |= more
        waiting -= more


def _on_a_way(left: Groups, goal: DrillId) -> set[DrillId]:
    """The drills that some way to the goal may lead through: it, and whatever could serve a group of one of these."""
    found: set[DrillId] = set()
    waiting = [goal]
    while waiting:
        each = waiting.pop()
        if each in left and each not in found:
            found.add(each)
            waiting += [member for group in left[each] for member in group]
    return found


def _opened(left: Groups, drill_id: DrillId) -> tuple[DrillId, ...]:
    """What would be ready as soon as this is held too."""
    return tuple(each for each, needed in left.items() if needed and all(drill_id in group for group in needed))


def _shaky(
    drills: Drills, held: Collection[DrillId], unheld: Collection[Drill], lifts: Iterable[Lift]
) -> tuple[Shaky, ...]:
    """Of what is held, what nothing held is built on, most waiting for it first; preparation and strength aside."""
    alone = {
        there[0]
        for drill_id in held
        for group in drills[drill_id].groups
        if len(there := [each for each in group if each in held]) == 1
    }
    found = [
        Shaky(drill, tuple(each.id for each in unheld if any(drill_id in group for group in each.groups)))
        for drill_id, drill in ((each, drills[each]) for each in sorted(held))
        if drill_id not in alone
        and drill.stage not in (Stage.PREPARE, Stage.FINISH)
        and any(_serves(drill, lift) for lift in lifts)
    ]
    return tuple(sorted(found, key=lambda each: (-len(each.opens), -each.drill.stage, each.drill.id)))
