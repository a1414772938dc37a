"""A plan in minutes and names: what each lifter does when and where, what each coach does, how much gear is out."""

from collections.abc import Mapping, Sequence
from typing import Literal, NamedTuple

from kb.ask.class_.bar_turns import BarTurns, bar_turns_of, taken_back
from kb.ask.class_.build import LOOK_S, Matter
from kb.ask.class_.doing import PARTNER, Doing
from kb.ask.class_.going_on import more_of
from kb.ask.class_.more import Again, again_of
from kb.ask.class_.people import PLENTY
from kb.ask.class_.rotation import TICK_S, Mode, Plan, idle_of, ticks
from kb.ask.class_.slot import Duty, GearUse, LifterPlan, Part, Slot
from kb.ask.class_.stations import Place, places_of, station_of, strong_at, turn_at
from kb.ask.class_.strength import Strong, strength_of
from kb.dose import check_seconds, work_seconds
from kb.kit import RACK
from kb.terms import Drill, DrillId, ItemId, Load

__all__ = ["ClassPlan", "Duty", "GearUse", "LifterPlan", "Slot", "plan_of"]


class ClassPlan(NamedTuple):
    """A class planned. `gap` is the share of the idle time that a better plan might save, None where unknown.

    `drills_at_once` is the most different drills at once, `drills_least` what is proved of it.
    """

    matter: Matter
    idle_s: int
    gap: float | None
    lifters: tuple[LifterPlan, ...]
    duties: tuple[Duty, ...]
    gear: tuple[GearUse, ...]
    drills_at_once: int
    drills_least: int | None

    @property
    def optimal(self) -> bool:
        """Whether it is proved that no plan of these groups has less idle time."""
        return self.gap == 0

    @property
    def end_s(self) -> int:
        """When the last lifter has ended their own list."""
        return max(slot.end_s for each in self.lifters for slot in each.slots)

    @property
    def until_s(self) -> int:
        """When nobody does anything any more, what there is more with it."""
        return max(each.until_s for each in self.lifters)


class _Told(NamedTuple):
    """What slots are written from."""

    matter: Matter
    plan: Plan
    places: Mapping[tuple[int, int], tuple[Place, ...]]

    def at(self, tick: int) -> int:
        """A tick as seconds from the class's start."""
        return self.matter.asked.warm_up_s + tick * TICK_S

    def name(self, lifter: int) -> str:
        return self.matter.owns[lifter].lifter.name


def plan_of(matter: Matter, plan: Plan) -> ClassPlan:
    """A plan told."""
    rotation = matter.rotation
    strong = strength_of(matter, plan)
    again = again_of(matter, plan, strong)
    bars = bar_turns_of(matter, plan, strong, again)
    again = taken_back(matter, plan, strong, again, bars)
    told = _Told(matter, plan, places_of(matter, plan, again, strong, bars))
    slots: dict[int, list[Slot]] = {n: [] for n in range(len(matter.owns))}
    for u, unit in enumerate(rotation.units):
        for k in range(len(unit.tasks)):
            _tell(told, u, k, slots)
    drills = {doing.drill.id: doing.drill for doings in matter.doings for doing in doings}
    for showing, start in zip(rotation.showings, plan.shown, strict=True):
        for u in {each for each, _ in showing.needs}:
            for n in rotation.units[u].lifters:
                at, end = told.at(start), told.at(start + showing.ticks)
                slots[n].append(Slot(at, end, drills[showing.drill], Load.NONE, "shown", "coach"))
    group = {n: unit.group for unit in rotation.units for n in unit.lifters}
    more, after = more_of(matter, plan, told.places, again), _strength(told, strong)
    at_bar = _at_bar(told, bars)
    idle = idle_of(rotation, plan)
    gap = None if plan.bound is None else (idle - max(plan.bound, 0)) / idle if idle else 0.0
    return ClassPlan(
        matter,
        idle * TICK_S,
        gap,
        tuple(
            _lifter(told, n, group[n], sorted(slots[n], key=_begins))._replace(
                more=more[n][0] if more[n] else None, then=tuple(more[n][1:]), strength=after[n], at_bar=at_bar.get(n)
            )
            for n in range(len(matter.owns))
        ),
        _duties(told, drills, strong, bars),
        _gear(told, again, strong, bars),
        _drills_at_once(told),
        plan.drills_bound,
    )


def _strength(told: _Told, strong: Sequence[Strong]) -> dict[int, tuple[Slot, ...]]:
    """What strengthens for each lifter, by number, in order."""
    found: dict[int, tuple[Slot, ...]] = dict.fromkeys(range(len(told.matter.owns)), ())
    for each in strong:
        places, doing = told.places[strong_at(told.matter, each)], each.doing
        lifters = each.lifters
        for at, n in enumerate(lifters):
            begins = each.start + each.mode.begins(at)
            slot = Slot(
                told.at(begins),
                told.at(begins + each.mode.takes(at)),
                doing.drill,
                doing.load,
                "up" if each.rounds else "work",
                station_of(places, doing.gear, each.mode.place(at)),
                tuple(dict.fromkeys(gear.using for gear in doing.gear)) if each.mode.first(at) else (),
                tuple(told.name(lifters[other]) for other in each.mode.with_whom(at)),
                racked=any(gear.using == RACK for gear in doing.gear),
                rounds=each.rounds,
                every_s=each.every * TICK_S,
            )
            found[n] = (*found[n], slot)
    return found


def _at_bar(told: _Told, bars: BarTurns | None) -> dict[int, Slot]:
    """Each lifter's turn, by number, at the bars that go round."""
    return {
        turn.lifter: Slot(
            told.at(turn.start),
            told.at(turn.end),
            turn.doing.drill,
            Load.LIGHT,
            "check",
            station_of(told.places[turn_at(told.matter, turn.n)], turn.gear, 0),
            tuple(dict.fromkeys(gear.using for gear in turn.gear)),
        )
        for turn in (bars.turns if bars else ())
    }


def _begins(slot: Slot) -> int:
    return slot.start_s


def _lifter(told: _Told, n: int, group: int, slots: list[Slot]) -> LifterPlan:
    own, now, waits = told.matter.owns[n], told.matter.asked.warm_up_s, []
    for slot in slots:
        waits.append(slot.start_s - now)
        now = slot.end_s
    return LifterPlan(own.lifter, group, tuple(slots), sum(waits), max(waits), own.later)


def _tell(told: _Told, u: int, k: int, slots: dict[int, list[Slot]]) -> None:
    """Write a task into its lifters' slots, and into the helper's."""
    unit, doing = told.matter.rotation.units[u], told.matter.doings[u][k]
    task, mode, start = unit.tasks[k], told.plan.mode(told.matter.rotation, u, k), told.plan.starts[u][k]
    if (u, k) in told.plan.helpers:
        helper = told.matter.rotation.units[told.plan.helpers[u, k]].lifters[0]
        station = station_of(told.places[u, k], doing.gear, 0)
        whom = told.name(unit.lifters[0])
        at, end = told.at(start), told.at(start + mode.length)
        slots[helper].append(Slot(at, end, doing.drill, task.load, "helps", station, with_whom=whom))
    if PARTNER in doing.drill.equipment and unit.size > 1:
        _tell_partners(told, u, k, slots)
        return
    gear = doing.gear_in(mode)
    using = tuple(dict.fromkeys(each.using for each in gear if each.using != PARTNER))
    for n, lifter in enumerate(unit.lifters):
        begins = start + mode.begins(n)
        station = station_of(told.places[u, k], gear, mode.place(n))
        slot = Slot(
            told.at(begins),
            told.at(begins + mode.takes(n)),
            doing.drill,
            Load.STICK if mode.light else task.load,
            "work" if task.work else "check",
            station,
            using if mode.first(n) else (),
            tuple(told.name(unit.lifters[other]) for other in mode.with_whom(n)),
            told.name(_helper(told, u, k)) if (u, k) in told.plan.helpers else None,
            watched=task.look > 0,
            light=mode.light,
            racked=any(each.using == RACK for each in gear),
        )
        loading = mode.takes(n) - mode.ticks + task.loading
        if loading:
            ready = told.at(begins + loading)
            slots[lifter].append(slot._replace(end_s=ready, part="loading", watched=False))
            slot = slot._replace(start_s=ready)
        slots[lifter].append(slot)


def _helper(told: _Told, u: int, k: int) -> int:
    return told.matter.rotation.units[told.plan.helpers[u, k]].lifters[0]


def _tell_partners(told: _Told, u: int, k: int, slots: dict[int, list[Slot]]) -> None:
    """Two who are each other's partner: the first does it while the second helps, then they swap."""
    unit, doing = told.matter.rotation.units[u], told.matter.doings[u][k]
    task, mode, start = unit.tasks[k], told.plan.mode(told.matter.rotation, u, k), told.plan.starts[u][k]
    swap = start + ticks(work_seconds(doing.drill) if task.work else check_seconds(doing.drill))
    station = station_of(told.places[u, k], doing.gear, 0)
    using = tuple(dict.fromkeys(each.using for each in doing.gear if each.using != PARTNER))
    first, second = unit.lifters
    for begins, ends, does, helps in ((start, swap, first, second), (swap, start + mode.ticks, second, first)):
        at, end = told.at(begins), told.at(ends)
        part: Part = "work" if task.work else "check"
        whom = told.name(helps)
        slots[does].append(Slot(at, end, doing.drill, task.load, part, station, using, with_whom=whom))
        slots[helps].append(Slot(at, end, doing.drill, task.load, "helps", station, with_whom=told.name(does)))


def _duties(
    told: _Told, drills: Mapping[DrillId, Drill], strong: Sequence[Strong], bars: BarTurns | None
) -> tuple[Duty, ...]:
    """What the coaches do, each as soon as one is free; the same coach goes on where it makes no difference."""
    rotation, plan = told.matter.rotation, told.plan
    wanted: list[tuple[int, int, Literal["show", "watch", "up", "stay"], DrillId, tuple[int, ...]]] = []
    for showing, start in zip(rotation.showings, plan.shown, strict=True):
        people = sorted({n for u, _ in showing.needs for n in rotation.units[u].lifters})
        wanted.append((start, start + showing.ticks, "show", showing.drill, tuple(people)))
    for u, k, begin, end in plan.looks(rotation):
        wanted.append((begin, end, "watch", rotation.units[u].tasks[k].drill, _looked_at(told, u, k, begin)))
    for each in strong:
        if each.look is not None:
            wanted.append((each.look, each.look + ticks(LOOK_S), "up", each.doing.drill.id, each.lifters))
    if bars is not None:
        lifters = tuple(turn.lifter for turn in bars.turns)
        wanted.append((bars.start, bars.end, "stay", bars.turns[0].doing.drill.id, lifters))
    free = [0] * rotation.coaches
    found = []
    for begin, end, does, drill, whom in sorted(wanted):
        coach = next(n for n, since in enumerate(free) if since <= begin)
        free[coach] = end
        who = tuple(told.name(n) for n in whom)
        found.append(Duty(coach, told.at(begin), told.at(end), does, drills[drill], who))
    return tuple(found)


def _looked_at(told: _Told, u: int, k: int, begin: int) -> tuple[int, ...]:
    """Whose first try it is that a coach looks at from tick `begin`: all of the unit, or whose weight the bar has."""
    unit, mode = told.matter.rotation.units[u], told.plan.mode(told.matter.rotation, u, k)
    if len(mode.looks) == 1:
        return unit.lifters
    later = begin - told.plan.starts[u][k] - unit.tasks[k].look_at
    kg = {n: told.matter.owns[n].lifter.weight_kg for n in unit.lifters}
    theirs = kg[unit.lifters[mode.longer.index(later)]]
    return tuple(n for n in unit.lifters if kg[n] == theirs)


def _under_way(told: _Told, tick: int) -> list[tuple[Doing, Mode]]:
    rotation, plan = told.matter.rotation, told.plan
    return [
        (told.matter.doings[u][k], plan.mode(rotation, u, k))
        for u, unit in enumerate(rotation.units)
        for k in range(len(unit.tasks))
        if plan.starts[u][k] <= tick < plan.end(rotation, u, k)
    ]


def _gear(told: _Told, again: Sequence[Again], strong: Sequence[Strong], bars: BarTurns | None) -> tuple[GearUse, ...]:
    asked = told.matter.asked
    peaks = {item: 0 for item, count in sorted(asked.have.items()) if count < PLENTY and item != PARTNER}
    for tick in range(told.matter.rotation.last):
        out: dict[ItemId, int] = {}
        for _, mode in _under_way(told, tick):
            for item, count in mode.gear:
                out[item] = out.get(item, 0) + count
        for each in again:
            for item, count in each.form.items if each.start <= tick < each.end else ():
                out[item] = out.get(item, 0) + count
        for step in strong:
            for item, count in step.mode.gear if step.start <= tick < step.end else ():
                out[item] = out.get(item, 0) + count
        for turn in bars.turns if bars else ():
            for item, count in turn.items if turn.start <= tick < turn.end else ():
                out[item] = out.get(item, 0) + count
        for item, count in out.items():
            peaks[item] = max(peaks[item], count)
    return tuple(GearUse(item, asked.have[item], peak) for item, peak in peaks.items())


def _drills_at_once(told: _Told) -> int:
    return max(
        len({doing.drill.id for doing, _ in _under_way(told, tick)}) for tick in range(told.matter.rotation.last)
    )
