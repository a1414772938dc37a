"""The catalogue's rows for lifts, postures, faults and equipment, in the order of the columns of tables.sql."""

import json
from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import Any

from kb.make.body_text import SECTIONS
from kb.make.files import Kind
from kb.make.library import Library
from kb.plain import to_plain
from kb.terms import Drill, Fault, Item, Lift, Position

__all__ = ["ENTRY_ROWS", "Entry", "Row", "Rows", "compact", "sections_of", "stored"]

Entry = Lift | Position | Fault | Item | Drill
Row = tuple[Any, ...]
Rows = Mapping[str, Callable[[Library], Iterable[Row]]]


def compact(value: object) -> str:
    """A value as JSON on one line, letters as they are."""
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


def sections_of(kind: Kind, sections: Mapping[str, str]) -> dict[str, str]:
    """Sections in the order in which they are usually written, whatever order they come in."""
    usual = SECTIONS[kind]
    place = {heading: n for n, heading in enumerate(usual)}
    return dict(sorted(sections.items(), key=lambda each: (place.get(each[0], len(usual)), each[0])))


def stored(kind: Kind, record: Entry) -> tuple[str, str]:
    """An entry as the catalogue keeps it: its front matter and its sections, each as JSON.

    Equal records give equal text: what has no order of its own is put in one.
    """
    plain = to_plain(record)
    sections = sections_of(kind, plain.pop("sections", {}))
    ordered = {name: dict(sorted(value.items())) if isinstance(value, dict) else value for name, value in plain.items()}
    return compact(ordered), compact(sections)


def _lift(library: Library) -> Iterator[Row]:
    for lift in library.lifts.values():
        standard = lift.standard
        yield (
            *(lift.id, lift.name, compact(lift.also), lift.drill),
            *(standard.count, standard.of, standard.seen, *stored("lift", lift)),
        )


def _lift_part(library: Library) -> Iterator[Row]:
    for lift in library.lifts.values():
        for n, part in enumerate(lift.parts):
            yield lift.id, n, part


def _lift_point(library: Library) -> Iterator[Row]:
    for lift in library.lifts.values():
        parts = lift.parts or (lift.id,)
        part_of = [part for part, points in zip(parts, lift.part_points, strict=True) for _ in points]
        for n, (timed, part) in enumerate(zip(lift.timeline, part_of, strict=True)):
            yield lift.id, n, timed.at, timed.position, part


def _lift_checkpoint(library: Library) -> Iterator[Row]:
    return ((lift.id, n, drill) for lift in library.lifts.values() for n, drill in enumerate(lift.checkpoints))


def _position(library: Library) -> Iterator[Row]:
    for position in library.positions.values():
        yield (
            position.id,
            position.name,
            compact(position.also),
            position.bar,
            position.contact,
            *stored("position", position),
        )


def _position_angle(library: Library) -> Iterator[Row]:
    for position in library.positions.values():
        for joint, degrees in sorted(position.angles.items()):
            yield position.id, joint, float(degrees)


def _fault(library: Library) -> Iterator[Row]:
    for fault in library.faults.values():
        least = fault.shows_at
        yield (
            *(fault.id, fault.name, compact(fault.also), fault.view, fault.gone),
            *(least.speed.word, least.load.word, least.catch.word, *stored("fault", fault)),
        )


def _fault_lift(library: Library) -> Iterator[Row]:
    return ((fault.id, lift) for fault in library.faults.values() for lift in _once(fault.lifts))


def _fault_phase(library: Library) -> Iterator[Row]:
    for fault in library.faults.values():
        for n, (first, last) in enumerate(fault.phases):
            yield fault.id, n, first, last


def _look_alike(library: Library) -> Iterator[Row]:
    return ((fault.id, other) for fault in library.faults.values() for other in _once(fault.look_alikes))


def _cause(library: Library) -> Iterator[Row]:
    for fault in library.faults.values():
        for n, cause in enumerate(fault.causes):
            least = cause.shows_at
            yield (
                *(fault.id, cause.id, n, cause.kind, cause.text, cause.throughout, cause.earlier),
                *(least.speed.word, least.load.word, least.catch.word),
            )


def _made_earlier(library: Library) -> Iterator[Row]:
    for fault in library.faults.values():
        for cause in fault.causes:
            if cause.earlier is not None:
                yield fault.id, cause.id, cause.earlier


def _tell(library: Library) -> Iterator[Row]:
    for fault in library.faults.values():
        for n, tell in enumerate(fault.tells):
            yield fault.id, n, tell.do, tell.look, tell.seconds, tell.drill


def _tell_cause(library: Library) -> Iterator[Row]:
    for fault in library.faults.values():
        for n, tell in enumerate(fault.tells):
            for answer, causes in (("yes", tell.yes), ("no", tell.no)):
                for cause in _once(causes):
                    yield fault.id, n, cause, answer


def _equipment(library: Library) -> Iterator[Row]:
    return ((item.id, item.name, compact(item.also), *stored("equipment", item)) for item in library.items.values())


def _kit(library: Library) -> Iterator[Row]:
    return ((kit,) for kit in sorted(library.kits))


def _kit_item(library: Library) -> Iterator[Row]:
    return ((kit, item) for kit, held in sorted(library.kits.items()) for item in sorted(held))


def _stand_in(library: Library) -> Iterator[Row]:
    for item in library.items.values():
        for stand_in in item.stand_ins:
            yield (
                *(item.id, stand_in.item, stand_in.lost),
                *(stand_in.speed.word, stand_in.load.word, stand_in.catch.word),
            )


def _once(values: Iterable[str]) -> Iterable[str]:
    """Values without repeats, in their order."""
    return dict.fromkeys(values)


ENTRY_ROWS: Rows = {
    "lift": _lift,
    "lift_part": _lift_part,
    "lift_checkpoint": _lift_checkpoint,
    "position": _position,
    "lift_point": _lift_point,
    "position_angle": _position_angle,
    "fault": _fault,
    "fault_lift": _fault_lift,
    "fault_phase": _fault_phase,
    "look_alike": _look_alike,
    "cause": _cause,
    "made_earlier": _made_earlier,
    "tell": _tell,
    "tell_cause": _tell_cause,
    "equipment": _equipment,
    "kit": _kit,
    "kit_item": _kit_item,
    "stand_in": _stand_in,
}
"""Table to the function that gives its rows, in the order in which they are written."""
