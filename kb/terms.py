"""The words of the trade as types, passed about by everything else: ids, ordered scales and small frozen records."""

from collections.abc import Mapping
from enum import IntEnum
from types import MappingProxyType
from typing import Any, Literal, NamedTuple, NewType, get_args

from kb.feet import Feet
from kb.saying import cues_said

__all__ = [
    "CAUSE_KINDS", "Addressed", "Angles", "Catch", "Cause", "CauseKind", "Dose", "Drill", "DrillId", "Fault",
    "FaultId", "Item", "ItemId", "Lift", "LiftId", "Load", "LoadFrom", "Position", "PositionId", "Posture",
    "Regression", "ShowsAt", "Speed", "Stage", "StandIn", "Standard", "Tell", "Timed",
]  # fmt: skip

DrillId = NewType("DrillId", str)
FaultId = NewType("FaultId", str)
ItemId = NewType("ItemId", str)
LiftId = NewType("LiftId", str)
PositionId = NewType("PositionId", str)

CauseKind = Literal["mobility", "strength", "position-sense", "timing", "understanding", "set-up", "nerve", "earlier"]
CAUSE_KINDS: tuple[CauseKind, ...] = get_args(CauseKind)
NOTHING: Mapping[Any, Any] = MappingProxyType({})  # the default of every field that maps: nobody can write to it
Angles = Mapping[str, float]
"""Joint name to degrees from the anatomical zero, flexion positive; trunk from the vertical."""


class _Scale(IntEnum):
    """An ordered scale whose members are written in lower case in front matter, SQL and JSON."""

    @property
    def word(self) -> str:
        """The member as it is written in an entry."""
        return self.name.lower()


class Stage(_Scale):
    """How much of the lift a drill puts together; `finish` stands outside the order."""

    PREPARE = 0
    POSITION = 1
    SEGMENT = 2
    JOIN = 3
    WHOLE = 4
    FINISH = 5


class Speed(_Scale):
    """How fast it is done."""

    HELD = 0
    SLOW = 1
    PAUSED = 2
    FULL = 3


class Load(_Scale):
    """What is in the hands."""

    NONE = 0
    STICK = 1
    LIGHT = 2
    WORKING = 3


class Catch(_Scale):
    """The depth of receiving posture reached, caught or lowered into; full is the lift's own."""

    NONE = 0
    STANDING = 1
    POWER = 2
    FULL = 3


class Standard(NamedTuple):
    """What must be seen before moving on: `count` of `of` with `seen`."""

    count: int  # type: ignore[assignment]  # hides tuple.count, which no record needs
    of: int
    seen: str


class Timed(NamedTuple):
    """A point of a lift's timeline and the position taken there."""

    at: str
    position: PositionId


class Lift(NamedTuple):
    """A lift. `timeline` is complete: for a lift of parts it is theirs in order.

    `part_points` holds the points of each part in order; a lift without parts is its own only part.
    `checkpoints` are the drills whose standards place a lifter, simplest first.
    """

    id: LiftId
    name: str
    timeline: tuple[Timed, ...]
    part_points: tuple[tuple[str, ...], ...]
    drill: DrillId
    standard: Standard
    also: tuple[str, ...] = ()
    parts: tuple[LiftId, ...] = ()
    checkpoints: tuple[DrillId, ...] = ()
    sections: Mapping[str, str] = NOTHING

    @property
    def points(self) -> tuple[str, ...]:
        """The names of its timeline's points, in order."""
        return tuple(timed.at for timed in self.timeline)

    @property
    def serves(self) -> tuple[LiftId, ...]:
        """The lifts whose drills and faults count for this one: itself and its parts."""
        return (self.id, *self.parts)


class Position(NamedTuple):
    """A posture at, or on the way between, points of a lift."""

    id: PositionId
    name: str
    angles: Angles
    bar: str
    contact: str
    also: tuple[str, ...] = ()
    sections: Mapping[str, str] = NOTHING


class ShowsAt(NamedTuple):
    """The least dials at which a fault shows; 0 (the scale's least) asks for nothing."""

    speed: Speed = Speed.HELD
    load: Load = Load.NONE
    catch: Catch = Catch.NONE


class Cause(NamedTuple):
    """Why a fault happens; `throughout` is what to keep to in every drill. Kind `earlier` alone names a fault."""

    id: str
    kind: CauseKind
    text: str
    earlier: FaultId | None = None
    shows_at: ShowsAt = ShowsAt()
    throughout: str = ""


class Tell(NamedTuple):
    """A quick check: if what `look` asks is seen, the causes in `yes` gain; if not, those in `no`."""

    do: str
    look: str
    seconds: int
    drill: DrillId | None = None
    yes: tuple[str, ...] = ()
    no: tuple[str, ...] = ()


class Posture(NamedTuple):
    """How a fault looks: the position, and what differs there: angles (degrees; `back` rounds it), bar, feet."""

    position: PositionId
    angles: Angles = NOTHING
    at: str | None = None
    contact: str | None = None


class Fault(NamedTuple):
    """Something seen, and what is seen once it's `gone`. `phases` are stretches of the timeline, causes as common."""

    id: FaultId
    name: str
    lifts: tuple[LiftId, ...]
    phases: tuple[tuple[str, str], ...]
    causes: tuple[Cause, ...]
    also: tuple[str, ...] = ()
    shows_at: ShowsAt = ShowsAt()
    view: Literal["side", "front", "back"] = "side"
    look_alikes: tuple[FaultId, ...] = ()
    tells: tuple[Tell, ...] = ()
    posture: Posture | None = None
    gone: str = ""
    sections: Mapping[str, str] = NOTHING

    def cause(self, cause_id: str) -> Cause:
        """The cause of that id; KeyError if there is none."""
        return {cause.id: cause for cause in reversed(self.causes)}[cause_id]


class StandIn(NamedTuple):
    """An item that can serve for another: what is lost, and the highest each dial can then be."""

    item: ItemId
    lost: str
    speed: Speed = Speed.FULL
    load: Load = Load.WORKING
    catch: Catch = Catch.FULL


class Item(NamedTuple):
    """A piece of equipment; space and people are equipment too."""

    id: ItemId
    name: str
    also: tuple[str, ...] = ()
    kits: tuple[str, ...] = ()
    stand_ins: tuple[StandIn, ...] = ()
    sections: Mapping[str, str] = NOTHING


class Dose(NamedTuple):
    """How much: `rounds` of `reps` at `tempo` (down, pause, up, pause; s), then `hold_s`, on each of `sides`.

    `good`: so many must count, in sets of at most `reps`, `success` % of tries do. `every_s`: a round starts so often.
    """

    rounds: int = 1
    reps: int = 0
    tempo: tuple[int, int, int, int] | None = None
    hold_s: int = 0
    sides: int = 1
    rest_s: int = 0
    good: int = 0
    success: int = 80
    every_s: int = 0


class Addressed(NamedTuple):
    """A fault a drill addresses; with a cause, that cause only."""

    fault: FaultId
    cause: str | None = None


class Regression(NamedTuple):
    """An easier version of a drill and what it eases."""

    drill: DrillId
    eases: str


class LoadFrom(NamedTuple):
    """Load as a share (least and most, per cent) of a lifter's best in a lift."""

    lift: LiftId
    percent: tuple[int, int]


class Drill(NamedTuple):
    """Something done. For prepare drills reach is empty and the dials stand at their defaults.

    `reach` and `target_position` are by lift (for a part, under the part's id). `load` is the least and the most it
    makes sense at; `turn_up`: harder without more. Any one of each group of `prerequisites`; empty `aid` is free.
    """

    id: DrillId
    name: str
    lifts: tuple[LiftId, ...]
    stage: Stage
    standard: Standard
    also: tuple[str, ...] = ()
    target_position: Mapping[LiftId, PositionId] = NOTHING
    reach: Mapping[LiftId, tuple[str, str]] = NOTHING
    leaves_out: tuple[str, ...] = ()
    speed: Speed = Speed.HELD
    load: tuple[Load, Load] = (Load.NONE, Load.NONE)
    catch: Catch = Catch.NONE
    feet: Feet = "still"
    aid: tuple[str, ...] = ()
    faults: tuple[Addressed, ...] = ()
    prerequisites: tuple[tuple[DrillId, ...], ...] = ()
    made_of: tuple[DrillId, ...] = ()
    regressions: tuple[Regression, ...] = ()
    equipment: tuple[ItemId, ...] = ()
    opens: tuple[str, ...] = ()
    for_positions: tuple[PositionId, ...] = ()
    dose: Dose = Dose()
    set_up_s: int = 15
    teach_s: int = 60
    cautions: tuple[str, ...] = ()
    bridge: bool = True
    load_from: LoadFrom | None = None
    turn_up: str | None = None
    suits: str | None = None
    not_for: str | None = None
    sections: Mapping[str, str] = NOTHING

    @property
    def cues(self) -> tuple[str, ...]:
        """What to say: the items of the section *Say*, in order, without what each acts on."""
        return tuple(said for _, said in cues_said(self.sections.get("Say", "")))

    @property
    def groups(self) -> tuple[tuple[DrillId, ...], ...]:
        """All that must come before: prerequisite groups, then each part of a complex as a group of one."""
        return self.prerequisites + tuple((part,) for part in self.made_of)
