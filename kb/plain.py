"""Records as plain JSON values and back, without loss: how the catalogue stores an entry.

`to_plain` leaves out what stands at its default, so that what is stored stays small and readable.
"""

from collections.abc import Mapping, Sequence
from enum import Enum
from typing import Any, cast

from kb.feet import Feet
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
    LoadFrom,
    Position,
    PositionId,
    Posture,
    Regression,
    ShowsAt,
    Speed,
    Stage,
    Standard,
    StandIn,
    Tell,
    Timed,
)

__all__ = ["drill_from", "fault_from", "item_from", "lift_from", "position_from", "to_plain"]

Plain = Mapping[str, Any]

_AS_IT_IS = frozenset((str, int, float, bool))
"""Most values are of these, and asking whether one is a Mapping takes long. Scales are no plain int."""


def to_plain(record: object) -> Any:
    """A record as dictionaries, lists, strings and numbers; scales by their word, defaults left out."""
    if record is None or type(record) in _AS_IT_IS:
        return record
    if isinstance(record, Enum):
        return record.name.lower()
    if isinstance(record, Mapping):
        return {str(key): to_plain(value) for key, value in record.items()}
    defaults: Mapping[str, Any] | None = getattr(record, "_field_defaults", None)
    if isinstance(record, tuple) and defaults is not None:
        return {
            name: to_plain(value)
            for name, value in zip(record._fields, record, strict=True)  # type: ignore[attr-defined]  # a NamedTuple
            if name not in defaults or (value != defaults[name] and value is not None)
        }
    return [to_plain(value) for value in record] if isinstance(record, (tuple, list)) else record


def _standard(plain: Plain) -> Standard:
    return Standard(**plain)


def _shows_at(plain: Plain) -> ShowsAt:
    return ShowsAt(
        speed=Speed[plain.get("speed", "held").upper()],
        load=Load[plain.get("load", "none").upper()],
        catch=Catch[plain.get("catch", "none").upper()],
    )


def _pair(values: Sequence[str]) -> tuple[str, str]:
    return values[0], values[1]


def lift_from(plain: Plain) -> Lift:
    """The lift that `to_plain` turned into `plain`."""
    return Lift(
        id=LiftId(plain["id"]),
        name=plain["name"],
        also=tuple(plain.get("also", ())),
        parts=tuple(plain.get("parts", ())),
        checkpoints=tuple(plain.get("checkpoints", ())),
        timeline=tuple(Timed(at=timed["at"], position=PositionId(timed["position"])) for timed in plain["timeline"]),
        part_points=tuple(tuple(points) for points in plain["part_points"]),
        drill=DrillId(plain["drill"]),
        standard=_standard(plain["standard"]),
        sections=plain.get("sections", {}),
    )


def position_from(plain: Plain) -> Position:
    """The position that `to_plain` turned into `plain`."""
    return Position(**{**plain, "id": PositionId(plain["id"]), "also": tuple(plain.get("also", ()))})


def _cause(plain: Plain) -> Cause:
    return Cause(
        id=plain["id"],
        kind=plain["kind"],
        text=plain["text"],
        earlier=FaultId(plain["earlier"]) if "earlier" in plain else None,
        shows_at=_shows_at(plain.get("shows_at", {})),
        throughout=plain.get("throughout", ""),
    )


def _tell(plain: Plain) -> Tell:
    return Tell(**{**plain, "yes": tuple(plain.get("yes", ())), "no": tuple(plain.get("no", ()))})


def _posture(plain: Plain) -> Posture:
    return Posture(**{**plain, "position": PositionId(plain["position"])})


def fault_from(plain: Plain) -> Fault:
    """The fault that `to_plain` turned into `plain`."""
    return Fault(
        id=FaultId(plain["id"]),
        name=plain["name"],
        also=tuple(plain.get("also", ())),
        lifts=tuple(plain["lifts"]),
        phases=tuple(_pair(phase) for phase in plain["phases"]),
        shows_at=_shows_at(plain.get("shows_at", {})),
        view=plain.get("view", "side"),
        look_alikes=tuple(plain.get("look_alikes", ())),
        gone=plain.get("gone", ""),
        causes=tuple(_cause(cause) for cause in plain["causes"]),
        tells=tuple(_tell(tell) for tell in plain.get("tells", ())),
        posture=_posture(plain["posture"]) if "posture" in plain else None,
        sections=plain.get("sections", {}),
    )


def _stand_in(plain: Plain) -> StandIn:
    return StandIn(
        item=ItemId(plain["item"]),
        lost=plain["lost"],
        speed=Speed[plain.get("speed", "full").upper()],
        load=Load[plain.get("load", "working").upper()],
        catch=Catch[plain.get("catch", "full").upper()],
    )


def item_from(plain: Plain) -> Item:
    """The item of equipment that `to_plain` turned into `plain`."""
    return Item(
        id=ItemId(plain["id"]),
        name=plain["name"],
        also=tuple(plain.get("also", ())),
        kits=tuple(plain.get("kits", ())),
        stand_ins=tuple(_stand_in(stand_in) for stand_in in plain.get("stand_ins", ())),
        sections=plain.get("sections", {}),
    )


def _dose(plain: Plain) -> Dose:
    tempo = plain.get("tempo")
    return Dose(**{**plain, "tempo": tuple(tempo) if tempo else None})


def _load_from(plain: Plain | None) -> LoadFrom | None:
    if plain is None:
        return None
    least, most = plain["percent"]
    return LoadFrom(lift=LiftId(plain["lift"]), percent=(least, most))


def drill_from(plain: Plain) -> Drill:
    """The drill that `to_plain` turned into `plain`."""
    get = plain.get
    least, most = get("load", ("none", "none"))
    return Drill(
        id=DrillId(plain["id"]),
        name=plain["name"],
        also=tuple(get("also", ())),
        lifts=tuple(plain["lifts"]),
        stage=Stage[plain["stage"].upper()],
        target_position=get("target_position", {}),
        reach={LiftId(lift): _pair(reach) for lift, reach in get("reach", {}).items()},
        leaves_out=tuple(get("leaves_out", ())),
        speed=Speed[get("speed", "held").upper()],
        load=(Load[least.upper()], Load[most.upper()]),
        catch=Catch[get("catch", "none").upper()],
        feet=cast("Feet", get("feet", "still")),
        aid=tuple(get("aid", ())),
        faults=tuple(Addressed(fault=FaultId(said["fault"]), cause=said.get("cause")) for said in get("faults", ())),
        prerequisites=tuple(tuple(group) for group in get("prerequisites", ())),
        made_of=tuple(get("made_of", ())),
        regressions=tuple(Regression(**regression) for regression in get("regressions", ())),
        equipment=tuple(get("equipment", ())),
        opens=tuple(get("opens", ())),
        for_positions=tuple(get("for_positions", ())),
        dose=_dose(get("dose", {})),
        set_up_s=get("set_up_s", 15),
        teach_s=get("teach_s", 60),
        standard=_standard(plain["standard"]),
        cautions=tuple(get("cautions", ())),
        bridge=get("bridge", True),
        load_from=_load_from(get("load_from")),
        turn_up=cast("str | None", get("turn_up")),
        suits=cast("str | None", get("suits")),
        not_for=cast("str | None", get("not_for")),
        sections=get("sections", {}),
    )
