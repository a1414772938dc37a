"""What every structural rule asks: what is known by name, where a part of an entry stands, a lift's points.

An entry that couldn't be used is still known by name, so that what names it isn't called wrong as well.
"""

from collections.abc import Mapping
from functools import lru_cache
from typing import Any

from kb.errors import Problem
from kb.make.files import FOLDERS, Kind, nearest
from kb.make.library import Library, Record
from kb.terms import LiftId

__all__ = ["at", "known", "points", "unknown", "written"]


@lru_cache(maxsize=8)
def _named(files: tuple[str, ...]) -> dict[str, frozenset[str]]:
    """The ids of each kind by what the files are called."""
    found: dict[str, set[str]] = {}
    for file in files:
        _, folder, name = file.split("/")
        found.setdefault(FOLDERS[folder], set()).add(name.removesuffix(".md"))
    return {kind: frozenset(ids) for kind, ids in found.items()}


def known(library: Library, kind: Kind) -> frozenset[str]:
    """Every id of a kind, also of entries that couldn't be used."""
    return _named(library.files).get(kind, frozenset()) | frozenset(_records(library, kind))


def _records(library: Library, kind: Kind) -> Mapping[str, Record]:
    by_kind: dict[Kind, Mapping[Any, Record]] = {
        "lift": library.lifts,
        "position": library.positions,
        "fault": library.faults,
        "equipment": library.items,
        "drill": library.drills,
    }
    return by_kind[kind]


def at(library: Library, owner: str, path: str, code: str, message: str, help_: str = "") -> Problem:
    """A problem of the entry `owner`, at the line where the part `path` of its front matter stands."""
    source = library.sources.get(owner)
    if source is None:
        return Problem(file=owner, line=1, code=code, message=message, help=help_)
    return Problem(file=source.file, line=source.line(path), code=code, message=message, help=help_)


def unknown(library: Library, owner: str, path: str, code: str, kind: Kind, name: str) -> Problem:
    """The problem that `owner` names, at `path`, something of a kind that isn't in the library."""
    field = path.split(".")[0]
    message = f"`{field}` names `{name}`, and there is no {kind} of that id."
    renamed = _renamed(library, kind, name)
    help_ = f"It is called `{renamed}` now." if renamed else nearest(name, sorted(known(library, kind)))
    return at(library, owner, path, code, message, help_)


def _renamed(library: Library, kind: Kind, name: str) -> str:
    """The entry that keeps `name` as an old id."""
    return next((id_ for id_, record in _records(library, kind).items() if name in record.also), "")


def points(library: Library, lift_id: LiftId) -> tuple[str, ...]:
    """The points of a lift's timeline; empty if the lift, or a part of it, isn't known well enough."""
    lift = library.lifts.get(lift_id)
    return lift.points if lift else ()


def written(library: Library, owner: str, field: str) -> bool:
    """Whether an entry says a field itself rather than leaving it at its default."""
    source = library.sources.get(owner)
    return source is None or field in source.lines
