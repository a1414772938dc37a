"""A library small enough to be answered by hand: one lift, one fault of two causes, five drills, two kits.

The lift has four points; the fault is between the first two. In the hall `piece` leads to the lift in one step of 7
(its end goes out two points: 4; it begins to catch, to the full: 3); `slow-piece` in one of 11 (two notches of speed
more: 4). With a stick alone `piece` can't be done. Every drill has the same dose.
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
    Speed,
    Stage,
    Standard,
    StandIn,
    Tell,
    Timed,
)

__all__ = ["FAULT", "POINTS", "SNATCH", "a_drill", "the_library", "without"]

SNATCH, FAULT = LiftId("snatch"), FaultId("bar-swings")
BAR, STICK = ItemId("bar"), ItemId("stick")
POINTS = ("start", "hip", "receive", "stand")
SEEN = Standard(3, 3, "bar close")
DOSE = Dose(rounds=2, reps=3, rest_s=30)


def a_drill(id_: str, first: str, last: str, **rest: Any) -> Drill:
    """A segment at full speed, from light to light, without a catch, for the cause `swings`, unless said otherwise."""
    kept: dict[str, Any] = {
        "name": id_.replace("-", " ").capitalize(),
        "lifts": (SNATCH,),
        "stage": Stage.SEGMENT,
        "standard": SEEN,
        "reach": {SNATCH: (first, last)},
        "speed": Speed.FULL,
        "load": (Load.LIGHT, Load.LIGHT),
        "faults": (Addressed(FAULT, "swings"),),
        "equipment": (BAR,),
        "dose": DOSE,
        **rest,
    }
    return Drill(id=DrillId(id_), **kept)


def _drills() -> list[Drill]:
    light_or_stick = (Load.STICK, Load.LIGHT)
    easier = (Regression(DrillId("slow-piece"), "slower"),)
    return [
        a_drill("piece", "start", "hip", regressions=easier),
        a_drill("slow-piece", "start", "hip", speed=Speed.SLOW, load=light_or_stick),
        # neither is for the fault, nor shows it
        a_drill("stand-tall", "stand", "stand", stage=Stage.POSITION, speed=Speed.HELD, faults=()),
        a_drill("look-at-hands", "receive", "receive", stage=Stage.POSITION, speed=Speed.HELD, faults=()),
        a_drill(
            "full-snatch",
            "start",
            "stand",
            stage=Stage.WHOLE,
            load=light_or_stick,
            catch=Catch.FULL,
            faults=(),
        ),
    ]


def the_library(**changed: Any) -> Library:
    """The library, with any of its fields changed."""
    timeline = tuple(Timed(point, PositionId(f"at-{point}")) for point in POINTS)
    lift = Lift(SNATCH, "Snatch", timeline, (POINTS,), DrillId("full-snatch"), SEEN)
    causes = (Cause("swings", "timing", "Lets it go."), Cause("no-idea", "understanding", "Was never told."))
    tell = Tell("Two slow ones.", "Closer?", 30, drill=DrillId("look-at-hands"), yes=("swings",))
    fault = Fault(FAULT, "Bar swings", (SNATCH,), (("start", "hip"),), causes, tells=(tell,))
    stick = StandIn(STICK, "weight", load=Load.STICK)
    drills = {drill.id: drill for drill in sorted(_drills(), key=lambda each: each.id)}
    positions = [Position(timed.position, timed.at, {"knee": 10.0}, "in the hands", "flat") for timed in timeline]
    whole: dict[str, Any] = {
        "root": Path(),
        "lifts": {SNATCH: lift},
        "positions": {position.id: position for position in positions},
        "faults": {FAULT: fault},
        "items": {
            BAR: Item(BAR, "Bar", kits=("hall",), stand_ins=(stick,)),
            STICK: Item(STICK, "Stick", kits=("hall", "stick")),
        },
        "drills": drills,
        "sources": {each: Source(file=f"drills/family/{each}.md", lines={}) for each in drills},
    }
    return Library(**{**whole, **changed})


def without(library: Library, drill: str, **more: Drill) -> Library:
    """The library without one drill, of which nothing else may speak, and with others."""
    from dataclasses import replace

    kept = {id_: each for id_, each in library.drills.items() if id_ != drill}
    return replace(library, drills={**kept, **{each.id: each for each in more.values()}})
