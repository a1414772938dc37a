"""Paths that a class's lists are made of, each searched once however often the class is planned anew."""

from typing import Protocol

from kb.ask.path import Path, path
from kb.ask.shelf import Shelf
from kb.terms import DrillId, ItemId, LiftId

__all__ = ["Walk", "remembering"]


class Walk(Protocol):
    """The path to a shelf's lift, with this gear, from what is held; NoAnswer where there is none."""

    def __call__(self, shelf: Shelf, *, have: frozenset[ItemId], holds: frozenset[DrillId] = ...) -> Path:
        """The path."""


def remembering() -> Walk:
    """`path`, for shelves of one library: what was asked before is answered at once."""
    known: dict[tuple[LiftId, DrillId, frozenset[ItemId], frozenset[DrillId]], Path] = {}

    def walk(shelf: Shelf, *, have: frozenset[ItemId], holds: frozenset[DrillId] = frozenset()) -> Path:
        key = (shelf.lift.id, shelf.lift.drill, have, holds)
        if key not in known:
            known[key] = path(shelf, have=have, holds=holds)
        return known[key]

    return walk
