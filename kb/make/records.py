"""Validated front matter turned into the records that everything else passes about."""

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from kb.make.library import Record
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

if TYPE_CHECKING:
    from kb.make import models, posture_models

__all__ = ["RECORDS"]

Sections = Mapping[str, str]


def _lift(id_: str, said: "models.LiftModel", sections: Sections) -> Lift:
    """A lift; one with parts gets its timeline when they are known."""
    points = tuple(timed.at for timed in said.timeline)
    return Lift(
        id=LiftId(id_),
        name=said.name,
        also=tuple(said.also),
        parts=tuple(map(LiftId, said.parts)),
        checkpoints=tuple(map(DrillId, said.checkpoints)),
        timeline=tuple(Timed(at=timed.at, position=PositionId(timed.position)) for timed in said.timeline),
        part_points=(points,) if points else (),
        drill=DrillId(said.drill),
        standard=_standard(said.standard),
        sections=sections,
    )


def _position(id_: str, said: "models.PositionModel", sections: Sections) -> Position:
    return Position(
        id=PositionId(id_),
        name=said.name,
        also=tuple(said.also),
        angles=said.angles.model_dump(exclude_none=True),
        bar=said.bar,
        contact=said.contact,
        sections=sections,
    )


def _fault(id_: str, said: "models.FaultModel", sections: Sections) -> Fault:
    return Fault(
        id=FaultId(id_),
        name=said.name,
        also=tuple(said.also),
        lifts=tuple(map(LiftId, said.lifts)),
        phases=tuple((first, last) for first, last in said.phases),
        shows_at=_shows_at(said.shows_at),
        view=said.view,
        look_alikes=tuple(map(FaultId, said.look_alikes)),
        gone=said.gone or "",
        causes=tuple(_cause(cause) for cause in said.causes),
        tells=tuple(_tell(tell) for tell in said.tells),
        posture=_posture(said.posture) if said.posture else None,
        sections=sections,
    )


def _cause(said: "models.CauseModel") -> Cause:
    return Cause(
        id=said.id,
        kind=said.kind,
        text=said.text,
        earlier=FaultId(said.earlier) if said.earlier else None,
        shows_at=_shows_at(said.shows_at),
        throughout=said.throughout or "",
    )


def _tell(said: "models.TellModel") -> Tell:
    return Tell(
        do=said.do,
        look=said.look,
        seconds=said.seconds,
        drill=DrillId(said.drill) if said.drill else None,
        yes=tuple(said.yes),
        no=tuple(said.no),
    )


def _posture(said: "posture_models.PostureModel") -> Posture:
    return Posture(
        position=PositionId(said.position),
        angles=said.angles.model_dump(exclude_none=True),
        at=said.at,
        contact=said.contact,
    )


def _shows_at(said: "models.ShowsAtModel") -> ShowsAt:
    return ShowsAt(speed=Speed[said.speed.upper()], load=Load[said.load.upper()], catch=Catch[said.catch.upper()])


def _item(id_: str, said: "models.EquipmentModel", sections: Sections) -> Item:
    return Item(
        id=ItemId(id_),
        name=said.name,
        also=tuple(said.also),
        kits=tuple(said.kits),
        stand_ins=tuple(
            StandIn(
                item=ItemId(stand_in.item),
                lost=stand_in.lost,
                speed=Speed[stand_in.caps.speed.upper()],
                load=Load[stand_in.caps.load.upper()],
                catch=Catch[stand_in.caps.catch.upper()],
            )
            for stand_in in said.stand_ins
        ),
        sections=sections,
    )


def _drill(id_: str, said: "models.DrillModel", sections: Sections) -> Drill:
    lifts = tuple(map(LiftId, said.lifts))
    return Drill(
        id=DrillId(id_),
        name=said.name,
        also=tuple(said.also),
        lifts=lifts,
        stage=Stage[said.stage.upper()],
        target_position=_by_lift(said.target_position, lifts, PositionId),
        reach=_by_lift(said.reach, lifts, lambda pair: (pair[0], pair[1])),
        leaves_out=tuple(said.leaves_out),
        speed=Speed[(said.speed or "held").upper()],
        load=_loads(said.load),
        catch=Catch[(said.catch or "none").upper()],
        feet=said.feet,
        aid=tuple(said.aid) if isinstance(said.aid, list) else (),
        faults=tuple(_addressed(fault) for fault in said.faults),
        prerequisites=tuple(_group(group) for group in said.prerequisites),
        made_of=tuple(map(DrillId, said.made_of)),
        regressions=tuple(Regression(drill=DrillId(easier.drill), eases=easier.eases) for easier in said.regressions),
        equipment=tuple(map(ItemId, said.equipment)),
        opens=tuple(said.opens),
        for_positions=tuple(map(PositionId, said.for_positions)),
        dose=_dose(said.dose),
        set_up_s=said.set_up_s,
        teach_s=said.teach_s,
        standard=_standard(said.standard),
        cautions=tuple(said.cautions),
        bridge=said.bridge,
        load_from=_load_from(said.load_from),
        turn_up=said.turn_up,
        suits=said.suits,
        not_for=said.not_for,
        sections=sections,
    )


def _by_lift(value: Any, lifts: tuple[LiftId, ...], form: Callable[[Any], Any]) -> dict[LiftId, Any]:
    """A map by lift as it is; one value for each lift that the drill names."""
    if value is None:
        return {}
    if isinstance(value, dict):
        return {LiftId(lift): form(said) for lift, said in value.items()}
    return {lift: form(value) for lift in lifts}


def _loads(value: str | list[Any] | None) -> tuple[Load, Load]:
    least, most = value if isinstance(value, list) else (value or "none", value or "none")
    return Load[least.upper()], Load[most.upper()]


def _addressed(value: "str | models.AddressedModel") -> Addressed:
    if isinstance(value, str):
        return Addressed(fault=FaultId(value))
    return Addressed(fault=FaultId(value.fault), cause=value.cause)


def _group(value: str | list[str]) -> tuple[DrillId, ...]:
    return tuple(map(DrillId, [value] if isinstance(value, str) else value))


def _dose(said: "models.DoseModel") -> Dose:
    tempo = said.tempo
    return Dose(
        rounds=said.rounds,
        reps=said.reps,
        tempo=(tempo[0], tempo[1], tempo[2], tempo[3]) if tempo else None,
        hold_s=said.hold_s,
        sides=said.sides,
        rest_s=said.rest_s,
        good=said.good,
        success=said.success,
        every_s=said.every_s,
    )


def _load_from(said: "models.LoadFromModel | None") -> LoadFrom | None:
    return LoadFrom(lift=LiftId(said.lift), percent=(said.percent[0], said.percent[1])) if said else None


def _standard(said: "models.StandardModel") -> Standard:
    return Standard(count=said.count, of=said.of, seen=said.seen)


RECORDS: dict[str, Callable[[str, Any, Sections], Record]] = {
    "lift": _lift,
    "position": _position,
    "fault": _fault,
    "equipment": _item,
    "drill": _drill,
}
"""How front matter of each kind becomes its record: from id, model and sections."""
