"""A small library made by hand from records, for tests of what is made from one.

Two lifts and the lift of both; a fault each, of which one makes the other; a bar, and a stick that stands in
for it; drills of every stage, with an any-of group, a complex, regressions and a finish drill.
"""

from pathlib import Path
from typing import Any

from kb.make.library import Library, Source
from kb.terms import (
    Addressed,
    Catch,
    Cause,
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
    Position,
    PositionId,
    Regression,
    ShowsAt,
    Speed,
    Stage,
    Standard,
    StandIn,
    Tell,
    Timed,
)

__all__ = ["SEEN", "bare", "drill", "drills_of", "library"]

SEEN = Standard(count=3, of=5, seen="bar over mid-foot")
CLEAN, JERK, BOTH = LiftId("clean"), LiftId("jerk"), LiftId("clean-and-jerk")
POINTS = {CLEAN: ("start", "hip", "receive"), JERK: ("rack", "drive", "split")}
BAR, STICK = ItemId("bar"), ItemId("stick")


def drill(drill_id: str, *needs: str | tuple[str, ...], stage: Stage = Stage.SEGMENT, **rest: Any) -> Drill:
    """A drill that needs each of `needs`: a drill's id, or several of which any one will do."""
    groups = tuple((DrillId(group),) if isinstance(group, str) else tuple(map(DrillId, group)) for group in needs)
    kept: dict[str, Any] = {
        "name": drill_id.replace("-", " ").capitalize(),
        "lifts": (CLEAN,),
        "standard": SEEN,
        **rest,
    }
    return Drill(id=DrillId(drill_id), stage=stage, prerequisites=groups, **kept)


def drills_of(groups: dict[str, list[Any]]) -> dict[DrillId, Drill]:
    """Drills with nothing but ids and what each needs."""
    return {DrillId(node): drill(node, *needed) for node, needed in groups.items()}


def bare(drills: dict[DrillId, Drill], **rest: Any) -> Library:
    """A library of these drills and little else."""
    return Library(root=Path(), drills=drills, **rest)


def _lift(lift: LiftId, points: tuple[str, ...]) -> Lift:
    timeline = tuple(Timed(at=point, position=PositionId(f"{lift}-{point}")) for point in points)
    full = DrillId(f"full-{lift}")
    return Lift(id=lift, name=lift.capitalize(), timeline=timeline, part_points=(points,), drill=full, standard=SEEN)


def _lifts() -> list[Lift]:
    clean, jerk = (_lift(lift, points) for lift, points in POINTS.items())
    both = Lift(
        id=BOTH,
        name="Clean and jerk",
        also=("the C&J",),
        parts=(CLEAN, JERK),
        checkpoints=(DrillId("tall-clean"), DrillId("full-jerk")),
        timeline=clean.timeline + jerk.timeline,
        part_points=tuple(POINTS.values()),
        drill=DrillId("full-clean-and-jerk"),
        standard=SEEN,
    )
    return [clean, both, jerk]


def _faults() -> list[Fault]:
    crash = Fault(
        id=FaultId("bar-crashes"),
        name='The bar "crashes" <hard>',
        also=("Crash cafe", "crash café"),
        lifts=(CLEAN,),
        phases=(("hip", "receive"),),
        shows_at=ShowsAt(speed=Speed.FULL, catch=Catch.POWER),
        look_alikes=(FaultId("hips-rise"),),
        causes=(
            Cause(id="drops-away", kind="understanding", text="Waits at the bottom."),
            Cause(id="made-by-hips", kind="earlier", text="The hips rose.", earlier=FaultId("hips-rise")),
            Cause(id="weak", kind="strength", text="Folds.", shows_at=ShowsAt(load=Load.LIGHT)),
        ),
        tells=(
            Tell(
                do="Two tall cleans.", look="Softly met?", seconds=20, drill=DrillId("tall-clean"), yes=("drops-away",)
            ),
            Tell(do="Three with a bar.", look="Does it fold?", seconds=30, yes=("weak",), no=("drops-away",)),
        ),
        sections={"Looks like": "A bang on the collarbones."},
    )
    hips = Fault(
        id=FaultId("hips-rise"),
        name="Hips rise first",
        lifts=(CLEAN,),
        phases=(("start", "hip"),),
        causes=(Cause(id="lost-angle", kind="position-sense", text="Loses the back angle."),),
    )
    return [crash, hips]


def _drills() -> list[Drill]:
    stick_to_bar = (Load.STICK, Load.WORKING)
    crash = Addressed(fault=FaultId("bar-crashes"))
    drops = Addressed(fault=FaultId("bar-crashes"), cause="drops-away")
    angle = Addressed(fault=FaultId("hips-rise"), cause="lost-angle")
    at = {CLEAN: PositionId("clean-receive")}
    return [
        drill(
            "wrist-rock", stage=Stage.PREPARE, opens=("wrist",), for_positions=("clean-receive",), cautions=("wrist",)
        ),
        drill("reach-up", stage=Stage.PREPARE, lifts=(CLEAN, JERK)),
        drill(
            "rack-hold",
            ("wrist-rock", "reach-up"),
            stage=Stage.POSITION,
            target_position=at,
            reach={CLEAN: ("receive", "receive")},
            load=(Load.STICK, Load.STICK),
            catch=Catch.POWER,
            aid=("hand", "bar"),
            equipment=(STICK,),
            dose=Dose(rounds=2, hold_s=20, rest_s=40, sides=2),
            regressions=(Regression(drill=DrillId("wrist-rock"), eases="no bar"),),
        ),
        drill(
            "tall-clean",
            "rack-hold",
            also=("Tall one",),
            reach={CLEAN: ("hip", "receive")},
            speed=Speed.FULL,
            load=(Load.STICK, Load.LIGHT),
            catch=Catch.FULL,
            equipment=(BAR,),
            leaves_out=("start",),
            faults=(drops, crash, angle),
            dose=Dose(rounds=3, reps=3, tempo=(2, 0, 1, 1)),
            sections={"Say": '- "Meet the bar"', "Why": "It teaches meeting."},
            not_for="Sore wrists.",
            bridge=False,
        ),
        drill(
            "full-clean",
            "tall-clean",
            stage=Stage.WHOLE,
            reach={CLEAN: ("start", "receive")},
            speed=Speed.FULL,
            load=stick_to_bar,
            catch=Catch.FULL,
            equipment=(BAR,),
        ),
        drill(
            "full-jerk",
            stage=Stage.WHOLE,
            lifts=(JERK,),
            reach={JERK: ("rack", "split")},
            speed=Speed.FULL,
            load=stick_to_bar,
            catch=Catch.FULL,
            equipment=(BAR,),
        ),
        drill(
            "full-clean-and-jerk",
            stage=Stage.WHOLE,
            lifts=(BOTH,),
            made_of=(DrillId("full-clean"), DrillId("full-jerk")),
            reach={BOTH: ("start", "split")},
            speed=Speed.FULL,
            load=stick_to_bar,
            catch=Catch.FULL,
            equipment=(BAR,),
        ),
        drill(
            "squat",
            stage=Stage.FINISH,
            load=stick_to_bar,
            faults=(Addressed(fault=FaultId("bar-crashes"), cause="weak"),),
        ),
    ]


def library(**changed: Any) -> Library:
    """The library, with any of its fields changed."""
    items = [
        Item(
            id=BAR,
            name="Bar",
            kits=("hall",),
            stand_ins=(StandIn(item=STICK, lost="weight", load=Load.STICK, speed=Speed.PAUSED),),
        ),
        Item(id=STICK, name="Stick", kits=("hall", "stick")),
    ]
    drills = {each.id: each for each in sorted(_drills(), key=lambda each: each.id)}
    angles = {"hip": 50, "knee": 90.5}
    whole: dict[str, Any] = {
        "root": Path(),
        "lifts": {lift.id: lift for lift in sorted(_lifts(), key=lambda each: each.id)},
        "positions": {
            timed.position: Position(
                id=timed.position, name=f"At the {timed.at}", angles=angles, bar="in the hands", contact="feet flat"
            )
            for lift in _lifts()
            for timed in lift.timeline
        },
        "faults": {fault.id: fault for fault in _faults()},
        "items": {item.id: item for item in items},
        "drills": drills,
        "sources": {each: Source(file=f"drills/family/{each}.md", lines={}) for each in drills},
        "content_hash": "of-the-handmade",
    }
    return Library(**{**whole, **changed})
