"""A path: from what a lifter holds (nothing, when new) to the full lift, everything in order."""

from collections.abc import Mapping
from typing import Literal, NamedTuple

from kb import dose
from kb.ask.field import Band, Field
from kb.ask.owed import Groups, Needs, comes_first, reached, some_list, things_owed
from kb.ask.search import Found, Limits, search
from kb.ask.shelf import Shelf, profile_key
from kb.ask.tour import Passed, Tour
from kb.dials import Change, Dials, at_load, changes, spans
from kb.errors import NoAnswer
from kb.kit import Fit, fit, lacking, loads
from kb.terms import Drill, DrillId, ItemId, Load, Stage

__all__ = ["PATH_BUDGET", "Order", "Path", "PathEntry", "closure", "path"]

Order = Literal["up", "down", "either"]

PATH_BUDGET = 18_000
"""States the search may meet before a path comes with a gap."""

Node = tuple[Drill, Load]


class PathEntry(NamedTuple):
    """One drill of a path at one load; the first has no step."""

    drill: Drill
    load: Load
    dials: Dials
    seconds: int
    step: int | None
    changes: tuple[Change, ...]


class Path(NamedTuple):
    """An ordered list of drills to a lift; `gap` as in a route."""

    shelf: Shelf
    entries: tuple[PathEntry, ...]
    cost: int
    gap: float

    @property
    def optimal(self) -> bool:
        """Whether it is proved that no lawful list is cheaper."""
        return self.gap == 0


def closure(shelf: Shelf, fits: Mapping[DrillId, Fit], holds: frozenset[DrillId]) -> dict[DrillId, int]:
    """The drills that can be reached with this kit from what is held, with the round in which each first can."""
    orderly = {drill_id for drill_id in fits if shelf.drills[drill_id].stage is not Stage.FINISH}
    done = dict.fromkeys(orderly & holds, 0)
    waiting = orderly - set(done)
    for turn in range(1, len(orderly) + 2):
        ready = {
            drill_id
            for drill_id in waiting
            if all(any(m in done or m in holds for m in group) for group in shelf.drills[drill_id].groups)
        }
        if not ready:
            break
        done |= dict.fromkeys(ready, turn)
        waiting -= ready
    return done


def _relevant(shelf: Shelf, there: set[DrillId], holds: frozenset[DrillId]) -> set[DrillId]:
    """Drills that could be needed: the lift's, and whatever could serve a group of one of these."""
    found, waiting = set[DrillId](), [shelf.lift.drill]
    while waiting:
        drill_id = waiting.pop()
        if drill_id in found:
            continue
        found.add(drill_id)
        for group in shelf.drills[drill_id].groups:
            if not any(member in holds for member in group):
                waiting.extend(member for member in group if member in there)
    return found


CAUGHT_AT = ("receive", "split")
"""Where the bar is caught. What begins there is the squat or the split that every catch stands on, and comes
early whichever way the lift is put together: an order binds only the drills that begin before it."""


def _band(drill: Drill, dials: Dials, points: tuple[str, ...], order: Order) -> Band | None:
    """The stretch of the timeline by which an order binds a drill, None when it doesn't; downwards its start counts."""
    if drill.stage not in (Stage.SEGMENT, Stage.JOIN) or points[dials.first] in CAUGHT_AT:
        return None
    return (dials.first, dials.last if order == "up" else dials.first)


def path(
    shelf: Shelf,
    *,
    have: frozenset[ItemId],
    holds: frozenset[DrillId] = frozenset(),
    order: Order = "either",
    budget: int = PATH_BUDGET,
) -> Path:
    """The cheapest lawful list from what is held to the lift, by 300 x step + seconds.

    Every prerequisite is held or comes earlier. With `order` "up" neither end of reach goes back among
    segment and join drills; "down", the start never moves on. After `budget` states the best list found
    so far comes with its gap. Raises NoAnswer when the kit can't get there.
    """
    lift = shelf.lift
    fits = shelf.fits(have)
    there = set(closure(shelf, fits, holds))
    if lift.drill not in there:
        raise NoAnswer(_why_not(shelf, have, there, holds))
    goal_drill = shelf.drills[lift.drill]
    load = loads(goal_drill, fits[lift.drill], Load.WORKING)[-1]
    needed = _relevant(shelf, there, holds)
    # preparation costs its time and no step: it is worth an entry only where something is built on it
    built_on = {member for drill_id in there for group in shelf.drills[drill_id].groups for member in group}
    nodes: list[Node] = [
        (shelf.drills[drill_id], each)
        for drill_id in sorted(there)
        if shelf.drills[drill_id].stage is not Stage.PREPARE or drill_id in built_on
        for each in loads(shelf.drills[drill_id], fits[drill_id], load if drill_id == lift.drill else Load.LIGHT)
        if shelf.drills[drill_id].bridge or drill_id in needed
    ]
    dials = [at_load(shelf.dials[drill.id], each, fits[drill.id].speed, fits[drill.id].catch) for drill, each in nodes]
    groups = _groups(nodes, holds)

    def best(within: Order) -> tuple[Field, Found | None]:
        field = _field(shelf, nodes, dials, groups, load, within)
        needs = _needs(field, nodes, groups, needed, lift.drill)
        spare = _spare(needs, nodes)
        return field, _best(needs, nodes, groups, spare, budget) if spare else None

    field, found = best(order)
    if order == "either" and found is not None and not found.optimal:
        # a list in one of the two orders is a list in either, and each leaves far less to look through
        others = (other for _, other in (best("up"), best("down")) if other is not None)
        found = min((found, *others), key=lambda each: each.cost)._replace(bound=found.bound)
    if found is None:
        raise NoAnswer(f"no order of the drills this kit allows leads to the {lift.name.lower()}")
    entries: list[PathEntry] = []
    for at, n in enumerate(found.nodes):
        before = entries[-1].dials if entries else None
        turned = changes(before, dials[n], lift.points, spans(lift)) if before else ()
        size = field.sizes[field.profile[found.nodes[at - 1]]][field.profile[n]] if before else None
        entries.append(PathEntry(nodes[n][0], nodes[n][1], dials[n], field.seconds[n], size, turned))
    gap = 0.0 if found.optimal else (found.cost - found.bound) / found.cost
    return Path(shelf, tuple(entries), found.cost, gap)


def _groups(nodes: list[Node], holds: frozenset[DrillId]) -> Groups:
    """Per drill, the groups of which nothing is held, of the members that are there."""
    there = {drill.id for drill, _ in nodes}
    return {
        drill.id: tuple(
            tuple(member for member in group if member in there)
            for group in drill.groups
            if not any(member in holds for member in group)
        )
        for drill, _ in nodes
    }


def _bits(groups: Groups) -> dict[DrillId, int]:
    """A bit for each drill that another needs."""
    members = sorted({member for named in groups.values() for group in named for member in group})
    return {member: 1 << n for n, member in enumerate(members)}


def _field(shelf: Shelf, nodes: list[Node], dials: list[Dials], groups: Groups, load: Load, order: Order) -> Field:
    lift_drill, bits = shelf.lift.drill, _bits(groups)
    numbers = {drill_id: n for n, drill_id in enumerate(sorted(groups))}
    count = len(nodes)
    seconds = [dose.work_seconds(drill) for drill, _ in nodes]
    prepares = [drill.stage is Stage.PREPARE for drill, _ in nodes]
    goal = next(n for n, (drill, each) in enumerate(nodes) if drill.id == lift_drill and each == load)
    light_first = load > Load.LIGHT
    return Field(
        drill=[numbers[drill.id] for drill, _ in nodes],
        load=[int(each) for _, each in nodes],
        profile=[shelf.steps.number[profile_key(each)] for each in dials],
        enter=seconds,
        seconds=seconds,
        work=[False] * count,
        addresses=[False] * count,
        prepares=prepares,
        may_open=[not each for each in prepares],
        before_goal=[
            n != goal and (not light_first or (drill.id == lift_drill and each is Load.LIGHT))
            for n, (drill, each) in enumerate(nodes)
        ],
        groups=[tuple(sum(bits[member] for member in group) for group in groups[drill.id]) for drill, _ in nodes],
        gains=[bits.get(drill.id, 0) for drill, _ in nodes],
        goal=goal,
        goal_may_open=not light_first,
        must_prepare=False,
        must_address=False,
        sizes=shelf.steps.sizes,
        least=shelf.steps.least,
        band=[_band(drill, each, shelf.lift.points, order) for (drill, _), each in zip(nodes, dials, strict=True)]
        if order != "either"
        else (),
        order=order,
    )


def _needs(field: Field, nodes: list[Node], groups: Groups, among: set[DrillId], goal: DrillId) -> Needs:
    chosen = {each: groups[each] for each in groups if each in among}
    bands: dict[DrillId, Band] = {}
    for (drill, _), band in zip(nodes, field.band, strict=False):
        if band is not None and drill.id in chosen:
            bands[drill.id] = band
    prepares = frozenset(drill.id for drill, _ in nodes if drill.stage is Stage.PREPARE and drill.id in chosen)
    return Needs(goal, chosen, prepares, bands, field)


def _best(needs: Needs, nodes: list[Node], groups: Groups, spare: tuple[int, ...], budget: int) -> Found | None:
    field, owed = needs.field, things_owed(needs)
    nodes_of: dict[DrillId, list[int]] = {}
    for n, (drill, _) in enumerate(nodes):
        nodes_of.setdefault(drill.id, []).append(n)
    unordered = Needs(needs.goal, groups, frozenset(), {}, field)
    things = []
    for thing, first in zip(owed, comes_first(needs, owed), strict=True):
        its = [n for member in thing for n in nodes_of[member]]
        without = reached(unordered, thing)
        needed_by = frozenset(n for n, (drill, _) in enumerate(nodes) if drill.id not in without and n not in its)
        things.append(Passed(its, sum({field.gains[n] for n in its}), first, needed_by, len(thing) == 1))
    must = {each.bits: tuple(each.nodes) for each in things if each.alone}
    return search(field, Limits(), must, budget=budget, owed=Tour(field, things).owed, spare=spare)


def _spare(needs: Needs, nodes: list[Node]) -> tuple[int, ...] | None:
    """Some lawful list, however dear, each drill at its least load; None if there is none at all.

    With it a search that runs out of states still has an answer, and an order that leads nowhere is seen at once.
    """
    field, found = needs.field, some_list(needs)
    least = {drill.id: n for n, (drill, _) in reversed(list(enumerate(nodes)))}
    before = [n for n, (drill, _) in enumerate(nodes) if drill.id == needs.goal and field.before_goal[n]]
    light_first = not field.goal_may_open
    if found is None or (light_first and not before):
        return None
    return (*(least[each] for each in found[:-1]), *(before if light_first else ()), field.goal)


def _why_not(shelf: Shelf, have: frozenset[ItemId], there: set[DrillId], holds: frozenset[DrillId]) -> str:
    """The first thing in the way of the lift, as a sentence."""
    name, waiting, seen = shelf.lift.name.lower(), [shelf.lift.drill], set[DrillId]()
    while waiting:
        drill = shelf.drills[waiting.pop()]
        seen.add(drill.id)
        if fit(drill, have, shelf.items) is None:
            what = "itself" if drill.id == shelf.lift.drill else f"needs {drill.name}, which"
            return f"the {name} {what} can't be done with this kit ({drill.name} needs {_lacks(shelf, drill, have)})"
        for group in drill.groups:
            if not any(member in there or member in holds for member in group):
                waiting.extend(m for m in group if m in shelf.drills and m not in seen)
                if not waiting:
                    return f"the {name} needs {' or '.join(group)}, which no drill of this lift gives"
    return f"this kit doesn't lead to the {name}"


def _lacks(shelf: Shelf, drill: Drill, have: frozenset[ItemId]) -> str:
    """What a drill lacks in this kit, each thing: where all are there or stood in for, it is weight."""
    *first, last = lacking(drill, have, shelf.items) or ["more weight"]
    return f"{', '.join(first)} and {last}" if first else last
