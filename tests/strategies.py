"""Small lawful libraries and questions put to them: from a seed, or drawn by Hypothesis.

Both use one builder that takes a `random.Random`; Hypothesis hands it one whose every call is drawn, so that
failures shrink.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from random import Random
from typing import Literal

from hypothesis import strategies as st
from reading import World

from kb.ask.question import ChainQuestion
from kb.terms import (
    Addressed,
    Catch,
    Cause,
    CauseKind,
    Dose,
    Drill,
    DrillId,
    Fault,
    FaultId,
    Item,
    ItemId,
    Lift,
    LiftId,
    Load,
    PositionId,
    ShowsAt,
    Speed,
    Stage,
    Standard,
    StandIn,
    Timed,
)

__all__ = ["PathQuestion", "path_questions", "questions", "random_path", "random_world"]

SEEN = Standard(count=3, of=3, seen="as it should be")
FAULT, EARLIER, OTHER = FaultId("fault"), FaultId("earlier-fault"), FaultId("other-fault")
KINDS: tuple[CauseKind, ...] = ("mobility", "strength", "position-sense", "position-sense", "timing", "understanding")
STICK, BAR, DISCS, BLOCKS, WALL = (ItemId(i) for i in ("stick", "bar", "discs", "blocks", "wall"))
ITEMS = {
    STICK: Item(id=STICK, name="stick", stand_ins=(StandIn(item=ItemId("broom"), lost="stiffness"),)),
    ItemId("broom"): Item(id=ItemId("broom"), name="broom"),
    BAR: Item(
        id=BAR,
        name="bar",
        stand_ins=(
            StandIn(item=STICK, lost="weight", load=Load.STICK),
            StandIn(item=ItemId("junior-bar"), lost="sleeves", load=Load.LIGHT),
            StandIn(item=ItemId("axle"), lost="spin", load=Load.LIGHT, speed=Speed.PAUSED),
        ),
    ),
    ItemId("junior-bar"): Item(id=ItemId("junior-bar"), name="junior bar"),
    ItemId("axle"): Item(id=ItemId("axle"), name="axle"),
    DISCS: Item(id=DISCS, name="discs", stand_ins=(StandIn(item=BAR, lost="height", load=Load.LIGHT),)),
    BLOCKS: Item(id=BLOCKS, name="blocks", stand_ins=(StandIn(item=ItemId("bench"), lost="room", catch=Catch.POWER),)),
    ItemId("bench"): Item(id=ItemId("bench"), name="bench"),
    WALL: Item(id=WALL, name="wall"),
}


def _some(rng: Random, of: Sequence[DrillId], most: int) -> tuple[DrillId, ...]:
    return tuple(rng.sample(list(of), min(len(of), rng.randint(1, most))))


@dataclass(frozen=True)
class _Style:
    """How a library is knit: how often drills address, how they build on each other, how much one covers."""

    says: float
    groups: tuple[int, ...]
    members: int
    lately: int
    widest: int
    most_points: int


STYLES = (
    _Style(says=0.22, groups=(0, 0, 0, 1, 1, 2), members=3, lately=99, widest=9, most_points=6),
    # much in doubt, each built on what was there just before: long chains, and some too long for one sitting
    _Style(says=0.45, groups=(1, 1, 2), members=1, lately=3, widest=4, most_points=7),
    # nearly all in doubt, so that any-of groups count
    _Style(says=0.75, groups=(0, 1, 1, 2), members=3, lately=6, widest=5, most_points=6),
    # a long timeline in short pieces: bridges pay
    _Style(says=0.12, groups=(0, 0, 1), members=2, lately=5, widest=3, most_points=8),
)


def _lift(rng: Random, style: _Style) -> Lift:
    of: tuple[LiftId, ...] = ()
    if rng.random() < 0.25:
        parts = (("clean", rng.randint(2, 4)), ("jerk", rng.randint(2, style.most_points - 3)))
        part_points = tuple(tuple(f"{part}-{n}" for n in range(count)) for part, count in parts)
        lift_id = LiftId("clean-and-jerk")
        of = (LiftId("clean"), LiftId("jerk"))
    else:
        part_points = (tuple(f"point-{n}" for n in range(rng.randint(style.most_points - 3, style.most_points))),)
        lift_id = LiftId("snatch")
    timeline = tuple(Timed(at=point, position=PositionId(point)) for points in part_points for point in points)
    return Lift(
        id=lift_id,
        name=lift_id,
        parts=of,
        timeline=timeline,
        part_points=part_points,
        drill=DrillId("lift"),
        standard=SEEN,
    )


def _shows_at(rng: Random, often: float) -> ShowsAt:
    return ShowsAt(
        speed=Speed(rng.choice((1, 2, 3))) if rng.random() < often else Speed.HELD,
        load=Load(rng.choice((1, 1, 2, 2, 3))) if rng.random() < often else Load.NONE,
        catch=Catch(rng.choice((1, 2, 3))) if rng.random() < often else Catch.NONE,
    )


def _fault(rng: Random, fault: FaultId, lift: Lift, *, by_earlier: bool) -> Fault:
    phases, points = [], lift.points
    for _ in range(rng.randint(1, 2)):
        first = rng.randrange(len(points))
        phases.append((points[first], points[min(len(points) - 1, first + rng.choice((0, 0, 1, 2)))]))
    causes = [
        Cause(id=f"cause-{n}", kind=rng.choice(KINDS), text="why", shows_at=_shows_at(rng, 0.1))
        for n in range(rng.randint(1, 3))
    ]
    if by_earlier:
        made = Cause(id="made", kind="earlier", text="why", earlier=EARLIER, shows_at=_shows_at(rng, 0.1))
        causes.insert(rng.randint(0, len(causes)), made)
    return Fault(
        id=fault,
        name=fault,
        lifts=lift.serves,
        phases=tuple(phases),
        shows_at=_shows_at(rng, 0.25),
        causes=tuple(causes),
    )


@dataclass
class _Builder:
    rng: Random
    style: _Style
    lift: Lift
    faults: dict[FaultId, Fault]
    drills: dict[DrillId, Drill] = field(default_factory=dict)

    def dose(self) -> Dose:
        rng = self.rng
        dose = Dose(
            rounds=rng.randint(1, 4),
            reps=rng.randint(0, 6),
            tempo=(3, rng.randint(0, 2), 1, 0) if rng.random() < 0.2 else None,
            hold_s=rng.choice((0, 0, 5, 10, 20)),
            sides=rng.choice((1, 1, 1, 2)),
            rest_s=rng.choice((0, 20, 40, 60)),
        )
        # no further draws, so that a seed keeps its library: some of one round count good ones, some go by the clock
        if dose.rounds == 1 and dose.reps:
            return dose._replace(good=2 * dose.reps, success=70)
        if dose.reps and not dose.rest_s:
            return dose._replace(every_s=150)
        return dose

    def says(self, often: float) -> tuple[Addressed, ...]:
        found = []
        for fault in self.faults.values():
            if self.rng.random() < often:
                causes = [None, *(c.id for c in fault.causes)]
                found.append(Addressed(fault=fault.id, cause=self.rng.choice([*causes, None])))
        return tuple(found)

    def gear(self, most: Load) -> tuple[ItemId, ...]:
        rng, needed = self.rng, []
        if most > Load.NONE:
            needed.append(STICK if most == Load.STICK else BAR)
        if most == Load.WORKING and rng.random() < 0.3:
            needed.append(DISCS)
        if rng.random() < 0.2:
            needed.append(rng.choice((BLOCKS, WALL)))
        return tuple(needed)

    def prerequisites(self, stage: Stage) -> tuple[tuple[DrillId, ...], ...]:
        rng, style = self.rng, self.style
        earlier = [
            i
            for i, d in self.drills.items()
            if d.stage <= min(stage, Stage.WHOLE) and (stage is not Stage.PREPARE or d.stage is Stage.PREPARE)
        ][-style.lately :]
        count = rng.choice(style.groups) if earlier else 0
        return tuple(_some(rng, earlier, style.members) for _ in range(count))

    def add(self, drill_id: DrillId, stage: Stage) -> None:
        """One drill of a stage, built on drills that are there already."""
        rng, lift = self.rng, self.lift
        strange = rng.random() < 0.04
        points: tuple[str, ...]
        whole = {lift.id: (lift.points[0], lift.points[-1])}
        if strange:
            reach, points, of = {LiftId("other"): ("there", "there")}, ("there",), LiftId("other")
        else:
            reach, points, of = self.reach(whole)
        low = Load(rng.choice((0, 0, 1, 1, 1, 2)))
        most = Load(rng.randint(low, rng.choice((2, 2, 3)))) if stage is not Stage.FINISH else Load.WORKING
        inside = points[1:-1]
        common = {
            "id": drill_id,
            "name": drill_id,
            "lifts": (of,),
            "stage": stage,
            "standard": SEEN,
            "dose": self.dose(),
            "set_up_s": rng.choice((0, 10, 15, 30)),
            "prerequisites": self.prerequisites(stage),
            "faults": self.says(0.5 if stage in (Stage.PREPARE, Stage.FINISH) else self.style.says),
        }
        if stage is Stage.PREPARE:
            wall = (WALL,) if rng.random() < 0.2 else ()
            self.drills[drill_id] = Drill(**common, equipment=wall)  # type: ignore[arg-type]
            return
        made_of: tuple[DrillId, ...] = ()
        parts = [i for i, d in self.drills.items() if Stage.PREPARE < d.stage < Stage.WHOLE]
        if stage is Stage.JOIN and len(parts) > 1 and rng.random() < 0.25:
            made_of = tuple(rng.sample(parts, 2))
        self.drills[drill_id] = Drill(
            **common,  # type: ignore[arg-type]
            reach=reach,
            leaves_out=tuple(rng.sample(inside, 1)) if inside and rng.random() < 0.15 else (),
            speed=Speed(rng.choice((0, 1, 2, 2, 3, 3, 3))) if stage > Stage.POSITION else Speed.HELD,
            load=(min(low, most), most),
            catch=Catch(rng.choice((0, 0, 1, 2, 2, 3, 3))),
            aid=("wall",) if rng.random() < 0.15 else (),
            made_of=made_of,
            equipment=self.gear(most),
            bridge=rng.random() > 0.1,
        )

    def reach(
        self, whole: dict[LiftId, tuple[str, str]]
    ) -> tuple[dict[LiftId, tuple[str, str]], tuple[str, ...], LiftId]:
        """A stretch of the lift, or of one part under the part's id."""
        rng, lift, of, points = self.rng, self.lift, self.lift.id, self.lift.points
        if lift.parts and rng.random() < 0.7:
            n = rng.randrange(len(lift.parts))
            of, points = lift.parts[n], lift.part_points[n]
        if rng.random() < 0.1 and of == lift.id:
            return whole, points, of
        first = rng.randrange(len(points))
        last = min(len(points) - 1, first + rng.randrange(min(len(points), self.style.widest)))
        return {of: (points[first], points[last])}, points[first : last + 1], of

    def add_lift(self) -> None:
        """L's own drill; of a lift of parts sometimes a complex of the parts."""
        rng, lift = self.rng, self.lift
        wholes = [i for i, d in self.drills.items() if d.stage is Stage.JOIN]
        self.drills[lift.drill] = Drill(
            id=lift.drill,
            name="lift",
            lifts=(lift.id,),
            stage=Stage.WHOLE,
            reach={lift.id: (lift.points[0], lift.points[-1])},
            speed=Speed.FULL,
            load=(
                rng.choice((Load.NONE, Load.STICK, Load.STICK, Load.LIGHT)),
                rng.choice((Load.LIGHT, Load.WORKING, Load.WORKING)),
            ),
            catch=Catch.FULL,
            prerequisites=self.prerequisites(Stage.WHOLE),
            made_of=tuple(rng.sample(wholes, 2)) if lift.parts and len(wholes) > 1 and rng.random() < 0.2 else (),
            equipment=(BAR, DISCS) if rng.random() < 0.4 else (BAR,),
            faults=self.says(0.15),
            dose=self.dose(),
            standard=SEEN,
        )


STAGES = (
    *(Stage.PREPARE,) * 2,
    *(Stage.POSITION,) * 2,
    *(Stage.SEGMENT,) * 4,
    *(Stage.JOIN,) * 4,
    Stage.WHOLE,
    Stage.FINISH,
)


def _world(rng: Random, size: int) -> World:
    style = rng.choice(STYLES)
    lift = _lift(rng, style)
    faults = {
        FAULT: _fault(rng, FAULT, lift, by_earlier=rng.random() < 0.3),
        EARLIER: _fault(rng, EARLIER, lift, by_earlier=False),
        OTHER: _fault(rng, OTHER, lift, by_earlier=False),
    }
    builder = _Builder(rng, style, lift, faults)
    # in the order of the stages, mostly, so that what is built on is easier
    stages = sorted(rng.choice(STAGES) for _ in range(size - 1))
    for n, stage in enumerate(stages):
        builder.add(DrillId(f"d{n:02}-{stage.word}"), stage)
    builder.add_lift()
    ids = list(builder.drills)
    rng.shuffle(ids)
    return World(lift=lift, drills={i: builder.drills[i] for i in ids}, faults=faults, items=ITEMS)


def _have(rng: Random) -> frozenset[ItemId]:
    chance = rng.random()
    if chance < 0.6:
        return frozenset(ITEMS)
    if chance < 0.7:
        return frozenset({STICK, WALL})
    have = {item for item in ITEMS if rng.random() < 0.75}
    return frozenset(have | {STICK} if rng.random() < 0.8 else have)


def _question(rng: Random, world: World) -> ChainQuestion:
    causes = [None, *(c.id for c in world.faults[FAULT].causes)]
    some = [i for i in sorted(world.drills) if rng.random() < 0.15]
    return ChainQuestion(
        fault=FAULT,
        have=_have(rng),
        cause=rng.choice(causes),
        load=Load(rng.choice((1, 2, 2, 3))) if rng.random() < 0.3 else None,
        seconds=rng.randint(200, 2000) if rng.random() < 0.35 else None,
        holds=frozenset(some) if rng.random() < 0.4 else frozenset(),
        at_most=8 if rng.random() < 0.6 else rng.randint(2, 7),
    )


Order = Literal["up", "down", "either"]


@dataclass(frozen=True, kw_only=True)
class PathQuestion:
    """What a path is asked from: the drills held, what is there, and which way up."""

    holds: frozenset[DrillId]
    have: frozenset[ItemId]
    order: Order


def random_world(seed: int, size: int) -> tuple[World, ChainQuestion]:
    """A library of `size` drills and a question to it, the same for the same seed."""
    rng = Random(seed)
    world = _world(rng, size)
    return world, _question(rng, world)


def random_path(seed: int, size: int) -> tuple[World, PathQuestion]:
    """A library of `size` drills and a question for a path through it, the same for the same seed."""
    rng = Random(seed)
    return _path(rng, size)


def _path(rng: Random, size: int) -> tuple[World, PathQuestion]:
    world = _world(rng, size)
    held = frozenset(i for i in sorted(world.drills) if rng.random() < 0.3) if rng.random() < 0.5 else frozenset()
    # a lifter holds a set that is closed under prerequisites
    closed = {i for i in held if all(set(group) & held for group in world.drills[i].groups)}
    while closed != held:
        held = frozenset(closed)
        closed = {i for i in held if all(set(group) & held for group in world.drills[i].groups)}
    orders: tuple[Order, ...] = ("either", "either", "up", "down")
    order = rng.choice(orders)
    return world, PathQuestion(holds=held - {world.lift.drill}, have=_have(rng), order=order)


@st.composite
def questions(draw: st.DrawFn, least: int = 3, most: int = 12) -> tuple[World, ChainQuestion]:
    """A small lawful library and a question for a chain."""
    rng = draw(st.randoms(use_true_random=False))
    world = _world(rng, draw(st.integers(least, most)))
    return world, _question(rng, world)


@st.composite
def path_questions(draw: st.DrawFn, least: int = 3, most: int = 12) -> tuple[World, PathQuestion]:
    """A small lawful library and a question for a path."""
    return _path(draw(st.randoms(use_true_random=False)), draw(st.integers(least, most)))
