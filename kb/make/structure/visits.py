"""Which points of a lift a drill visits."""

from kb.make.library import Library
from kb.make.structure.known import points
from kb.terms import Drill, LiftId

__all__ = ["visited", "within"]


def within(drill: Drill, lift: LiftId, library: Library) -> tuple[str, ...]:
    """The points inside a drill's reach on a lift that it names; empty if its reach isn't sound there."""
    names = points(library, lift)
    first, last = drill.reach.get(lift, ("", ""))
    if first not in names or last not in names:
        return ()
    return names[names.index(first) : names.index(last) + 1]


def visited(drill: Drill, lift: LiftId, library: Library) -> tuple[str, ...]:
    """The points inside its reach that it doesn't leave out."""
    return tuple(point for point in within(drill, lift, library) if point not in drill.leaves_out)
