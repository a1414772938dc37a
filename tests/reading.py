"""DESIGN.md section 5, read for the tests: where a drill stands, what it shows, how a question is understood.

Nothing of the program's arithmetic is used here, only its records, so that program and tests can disagree.
It is written to be read beside DESIGN.md, not to be fast. Where the design leaves something open, a comment
that begins "Convention" says how it is read. The rules themselves are in lawful.py.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache, cached_property, lru_cache
from math import ceil

from kb.ask.question import ChainQuestion
from kb.terms import Catch, Cause, Drill, DrillId, Fault, FaultId, Item, ItemId, Lift, Load, ShowsAt, Speed, Stage

__all__ = [
    "FREE",
    "Caps",
    "Chain",
    "Entry",
    "Reading",
    "Stand",
    "World",
    "addresses",
    "caps",
    "check_s",
    "expected",
    "loads",
    "of_lift",
    "read",
    "round_s",
    "says",
    "shown_at",
    "stand",
    "step",
    "tests",
    "work_s",
]

Entry = tuple[DrillId, Load]
Chain = Sequence[Entry]
Caps = tuple[Speed, Load, Catch]
FREE: Caps = (Speed.FULL, Load.WORKING, Catch.FULL)


@dataclass(frozen=True, kw_only=True, eq=False)
class World:
    """A small library: one lift, drills (of other lifts too), faults, and all equipment that there is."""

    lift: Lift
    drills: Mapping[DrillId, Drill]
    faults: Mapping[FaultId, Fault]
    items: Mapping[ItemId, Item]


# --- where a drill stands, and the step from one to the next ---


@dataclass(frozen=True, kw_only=True)
class Stand:
    """A drill's dials on the lift's timeline, as done."""

    stage: Stage
    first: int
    last: int
    out: frozenset[int]
    speed: Speed
    load: Load
    catch: Catch
    helped: bool

    @property
    def visited(self) -> frozenset[int]:
        """The points of the timeline that it visits."""
        return frozenset(range(self.first, self.last + 1)) - self.out


def of_lift(drill: Drill, lift: Lift) -> bool:
    """Only drills of L, or of a part of L, count."""
    return bool({lift.id, *lift.parts} & set(drill.lifts))


def caps(world: World, drill: Drill, have: Iterable[ItemId]) -> Caps | None:
    """The highest speed, load and catch that what is there leaves; None if something is missing.

    Stand-ins are one hop; of several the one that leaves most load, then id order; over items the lowest cap.
    """
    there = set(have)
    speed, load, catch = FREE
    for needed in drill.equipment:
        if needed in there:
            continue
        can = sorted((s for s in world.items[needed].stand_ins if s.item in there), key=lambda s: (-s.load, s.item))
        if not can:
            return None
        speed, load, catch = min(speed, can[0].speed), min(load, can[0].load), min(catch, can[0].catch)
    return speed, load, catch


def stand(world: World, drill: Drill, load: Load, capped: Caps) -> Stand:
    """Where a drill stands when it is done at `load` under caps."""
    points = world.lift.points
    of = [lift for lift in (world.lift.id, *world.lift.parts) if lift in drill.reach]
    first, last = drill.reach[of[0]] if of else (points[0], points[0])
    return Stand(
        stage=drill.stage,
        first=points.index(first),
        last=points.index(last),
        out=frozenset(points.index(point) for point in drill.leaves_out if point in points),
        speed=min(drill.speed, capped[0]),
        load=load,
        catch=min(drill.catch, capped[2]),
        helped=bool(drill.aid),
    )


def _notches(lift: Lift, passed: set[int]) -> int:
    # Convention: the notch distance of an end is the points between, where taking in (or giving up) a whole part
    # of a lift of parts counts one.
    whole, start = 0, 0
    for points in lift.part_points if lift.parts else ():
        part = set(range(start, start + len(points)))
        if part <= passed:
            whole += 1
            passed = passed - part
        start += len(points)
    return len(passed) + whole


def _turned(before: int, after: int) -> int:
    return (after - before) ** 2 * (2 if after < before else 1)


def step(lift: Lift, a: Stand, b: Stand) -> int:
    """Sum over dials, in notches n turned, of what each turn counts; ValueError for a step into preparation."""
    if a.stage is Stage.PREPARE:
        return 0 if b.stage is Stage.PREPARE else 1
    if b.stage is Stage.PREPARE:
        msg = "no step leads into preparation"
        raise ValueError(msg)
    # Convention: an end let out costs n^2, an end drawn in 2 n.
    first = _notches(lift, set(range(min(a.first, b.first), max(a.first, b.first))))
    last = _notches(lift, set(range(min(a.last, b.last) + 1, max(a.last, b.last) + 1)))
    size = 2 * first if b.first > a.first else first**2
    size += 2 * last if b.last < a.last else last**2
    # Convention: "each point newly left out or taken in" is a point left out by b and not by a, or one left out by a
    # that lies in b's reach and is not left out by b.
    size += len(b.out - a.out) + len({p for p in a.out if b.first <= p <= b.last and p not in b.out})
    size += b.speed - a.speed if a.speed is Speed.HELD else _turned(a.speed, b.speed)
    size += _turned(a.load, b.load)
    # Convention: catch none to x counts x (linear), x to none 1, else n^2, doubled downwards.
    if a.catch is Catch.NONE:
        size += b.catch
    else:
        size += 1 if b.catch is Catch.NONE else _turned(a.catch, b.catch)
    size += {(True, False): 1, (False, True): 2}.get((a.helped, b.helped), 0)
    return size + 4 * max(0, a.stage - b.stage)


# --- what a drill is for, and what it shows ---


def says(drill: Drill, fault: Fault, cause: Cause) -> bool:
    """Front matter says that it addresses the fault, for this cause or for any."""
    return any(said.fault == fault.id and said.cause in {None, cause.id} for said in drill.faults)


def addresses(drill: Drill, load: Load, fault: Fault, cause: Cause) -> bool:
    """Its front matter says so; a cause of strength only at load light or more."""
    return says(drill, fault, cause) and (cause.kind != "strength" or load >= Load.LIGHT)


def shown_at(fault: Fault, cause: Cause) -> ShowsAt:
    """The cause's raises the fault's, dial by dial."""
    a, b = fault.shows_at, cause.shows_at
    return ShowsAt(speed=max(a.speed, b.speed), load=max(a.load, b.load), catch=max(a.catch, b.catch))


def tests(world: World, drill: Drill, load: Load, capped: Caps, fault: Fault, cause: Cause) -> bool:
    """One phase lies wholly inside its reach, nothing left out there, its dials at or above shows_at.

    Prepare and finish drills test nothing; a complex tests what one of its parts tests. Convention: a part is
    judged at the complex's load (its own most, if that is less) and under the complex's caps.
    """
    if drill.stage in {Stage.PREPARE, Stage.FINISH} or not of_lift(drill, world.lift):
        return False
    if drill.made_of:
        parts = [world.drills[part] for part in drill.made_of if part in world.drills]
        return any(tests(world, part, min(load, part.load[1]), capped, fault, cause) for part in parts)
    here, least, points = stand(world, drill, load, capped), shown_at(fault, cause), world.lift.points
    if here.speed < least.speed or here.load < least.load or here.catch < least.catch:
        return False
    return any(
        set(range(points.index(first), points.index(last) + 1)) <= here.visited
        for first, last in fault.phases
        if first in points and last in points
    )


def round_s(drill: Drill) -> int:
    """One round, or the first set of good ones: sides x (reps x tempo, or 4 s, + hold)."""
    dose, reps = drill.dose, drill.dose.reps
    if dose.good:
        reps = ceil(expected(drill) / ceil(expected(drill) / reps))
    return dose.sides * (reps * (sum(dose.tempo) if dose.tempo else 4) + dose.hold_s)


def expected(drill: Drill) -> int:
    """The tries that so many good repetitions take at their rate."""
    return ceil(Fraction(100 * drill.dose.good, drill.dose.success))


def work_s(drill: Drill) -> int:
    """The full dose: 30 s change-over, set-up, and intervals, good repetitions in sets, or rounds with rest between."""
    dose = drill.dose
    if dose.every_s:
        return 30 + drill.set_up_s + dose.rounds * dose.every_s
    if dose.good:
        count = ceil(expected(drill) / dose.reps)
        each = sum(dose.tempo) if dose.tempo else 4
        done = dose.sides * (expected(drill) * each + count * dose.hold_s)
        return 30 + drill.set_up_s + done + dose.rest_s * (count - 1)
    return 30 + drill.set_up_s + dose.rounds * round_s(drill) + dose.rest_s * (dose.rounds - 1)


def check_s(drill: Drill) -> int:
    """Change-over, set-up and one round."""
    return 30 + drill.set_up_s + round_s(drill)


# --- a question as it is read ---


@dataclass(frozen=True, kw_only=True, eq=False)
class Reading:
    """A question understood: what is tested (f), what is worked on (g, the same unless f comes of an earlier fault)."""

    world: World
    question: ChainQuestion
    fault: Fault
    cause: Cause
    worked: Fault
    worked_cause: Cause
    load: Load | None
    caps: Mapping[DrillId, Caps | None]
    doubt: frozenset[DrillId]
    doable: frozenset[DrillId]

    @cached_property
    def testers(self) -> frozenset[DrillId]:
        """Doable drills other than L that test f at a load they can stand at.

        Convention: `bridge: no` does not count at a load where rule 6 bars it, or rules 1 and 6 could bar every chain.
        """
        return frozenset(
            i
            for i in self.doable - {self.world.lift.drill}
            for load in loads(self, self.world.drills[i])
            if self.shows((i, load), self.fault, self.cause)
            and (self.world.drills[i].bridge or self.works_on((i, load)) or self.shows((i, load)))
        )

    def works_on(self, entry: Entry) -> bool:
        """It addresses c (of g) at its load."""
        drill = self.world.drills[entry[0]]
        return addresses(drill, entry[1], self.worked, self.worked_cause)

    def shows(self, entry: Entry, fault: Fault | None = None, cause: Cause | None = None) -> bool:
        """It tests a fault at its load (g, if none is named)."""
        drill, capped = self.world.drills[entry[0]], self.caps[entry[0]]
        if capped is None:
            return False
        return tests(self.world, drill, entry[1], capped, fault or self.worked, cause or self.worked_cause)

    def is_work(self, entry: Entry) -> bool:
        """Convention: any entry that addresses c, and every entry of L's drill, is work."""
        return entry[0] == self.world.lift.drill or self.works_on(entry)

    def prepares(self, entry: Entry) -> bool:
        """It is preparation."""
        return self.world.drills[entry[0]].stage is Stage.PREPARE

    def owed(self, drill: Drill) -> list[tuple[DrillId, ...]]:
        """Groups of which one member comes earlier: those all of whose members are in doubt."""
        return [group for group in (*drill.prerequisites, *((p,) for p in drill.made_of)) if set(group) <= self.doubt]


def _lift_load(world: World, question: ChainQuestion, fault: Fault, cause: Cause) -> Load | None:
    # Convention: l = max(light, least load at which L tests f for the cause), at most what the kit allows for L (if
    # the kit allows only a stick, l = stick), clipped to L's own range; a load asked for is held to the same limits.
    drill = world.drills[world.lift.drill]
    capped = caps(world, drill, question.have)
    if capped is None or capped[1] < drill.load[0]:
        return None
    least, most = drill.load[0], min(drill.load[1], capped[1])
    wanted = question.load
    if wanted is None:
        showing = [x for x in Load if least <= x <= most and tests(world, drill, x, capped, fault, cause)]
        wanted = max(Load.LIGHT, min(showing, default=Load.LIGHT))
    return max(least, min(wanted, most))


@lru_cache(maxsize=256)
def read(world: World, question: ChainQuestion) -> Reading:
    """Fix once what is in doubt and what is doable."""
    fault = world.faults[question.fault]
    cause = fault.causes[0] if question.cause is None else fault.cause(question.cause)
    worked, worked_cause = fault, cause
    if cause.kind == "earlier":
        assert cause.earlier is not None
        worked = world.faults[cause.earlier]
        worked_cause = next(c for c in worked.causes if c.kind != "earlier")
    load = _lift_load(world, question, fault, cause)
    top = Load.LIGHT if load is None else load
    ours = {i: drill for i, drill in world.drills.items() if of_lift(drill, world.lift) and drill.stage != Stage.FINISH}
    capped = {i: caps(world, drill, question.have) for i, drill in world.drills.items()}
    doubt = set()
    for i, drill in ours.items():
        # Convention: for a strength cause a drill whose most load is at least light addresses it.
        if addresses(drill, drill.load[1], worked, worked_cause):
            doubt.add(i)
        under = capped[i]
        if under and drill.load[0] <= (highest := min(drill.load[1], under[1], top)):
            doubt |= {i} if tests(world, drill, highest, under, worked, worked_cause) else set()
    doubt -= question.holds
    doable = _doable(ours, capped, frozenset(doubt), min(top, Load.LIGHT))
    return Reading(
        world=world,
        question=question,
        fault=fault,
        cause=cause,
        worked=worked,
        worked_cause=worked_cause,
        load=load,
        caps=capped,
        doubt=frozenset(doubt),
        doable=doable,
    )


def loads(reading: Reading, drill: Drill) -> list[Load]:
    """Convention: each load from its least to the least of its most, the kit's cap, l and light; L also at l.

    That l bounds every drill, not L alone, follows from "doable" (some load at or under min(l, light)).
    """
    capped = reading.caps[drill.id]
    if capped is None or reading.load is None:
        return []
    top = min(drill.load[1], capped[1], reading.load, Load.LIGHT)
    alone = {reading.load} if drill.id == reading.world.lift.drill else set()
    return [x for x in Load if drill.load[0] <= x <= top or x in alone]


def _doable(
    ours: Mapping[DrillId, Drill], capped: Mapping[DrillId, Caps | None], doubt: frozenset[DrillId], top: Load
) -> frozenset[DrillId]:
    @cache
    def can(i: DrillId) -> bool:
        drill, under = ours[i], capped[i]
        if under is None or drill.load[0] > min(under[1], top):
            return False
        groups = (*drill.prerequisites, *((part,) for part in drill.made_of))
        return all(any(can(m) for m in group) for group in groups if set(group) <= doubt)

    return frozenset(i for i in ours if can(i))
