"""The shipped library as worlds for the independent checker, and every question that can be asked of it."""

from collections.abc import Iterable, Iterator, Mapping

from reading import World

from kb.ask.question import ChainQuestion
from kb.ask.shelf import Shelf
from kb.make.library import Library
from kb.terms import LiftId

__all__ = ["questions", "worlds"]


_MADE: dict[str, dict[LiftId, World]] = {}


def worlds(library: Library) -> dict[LiftId, World]:
    """One world a lift, made once for each content of a library."""
    if library.content_hash not in _MADE:
        _MADE[library.content_hash] = {
            lift.id: World(
                lift=lift, drills=dict(library.drills), faults=dict(library.faults), items=dict(library.items)
            )
            for lift in library.lifts.values()
        }
    return _MADE[library.content_hash]


def questions(
    shelves: Mapping[LiftId, Shelf], kits: Iterable[str], **more: object
) -> Iterator[tuple[Shelf, ChainQuestion]]:
    """Every fault and cause of every lift in each kit, in order."""
    for kit in kits:
        for shelf in shelves.values():
            for fault in shelf.faults.values():
                for cause in fault.causes:
                    asked = ChainQuestion(fault=fault.id, cause=cause.id, have=shelf.kits[kit], **more)  # type: ignore[arg-type]
                    yield shelf, asked
