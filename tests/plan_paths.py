"""Paths from nothing through the shipped library, found once for all tests of plans."""

from collections.abc import Mapping

from kb.ask.path import Path, path
from kb.ask.shelf import Shelf
from kb.terms import DrillId, LiftId, Load

__all__ = ["KITS", "LIFTS", "found_path", "nodes"]

KITS = ("stick", "home", "hall", "full")
LIFTS = ("clean", "clean-and-jerk", "jerk", "snatch")

_FOUND: dict[tuple[str, str], Path] = {}


def found_path(shelves: Mapping[LiftId, Shelf], lift: str, kit: str) -> Path:
    """The path to a lift with a kit, found once."""
    if (lift, kit) not in _FOUND:
        shelf = shelves[LiftId(lift)]
        _FOUND[lift, kit] = path(shelf, have=shelf.kits[kit])
    return _FOUND[lift, kit]


def nodes(found: Path) -> list[tuple[DrillId, Load]]:
    """A path as the judge of plans reads it."""
    return [(entry.drill.id, entry.load) for entry in found.entries]
