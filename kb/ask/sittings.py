"""A chain that doesn't fit one sitting, cut into several that overlap by one entry."""

from collections.abc import Sequence

from kb import dose
from kb.ask.route import Entry, Route
from kb.ask.search import Limits
from kb.errors import NoAnswer
from kb.terms import DrillId

__all__ = ["cut", "sitting_seconds"]


def sitting_seconds(entries: Sequence[Entry], first: int, end: int) -> int:
    """The time of entries first..end-1 as one sitting, s: the entry shared with the last one is a check."""
    shared = dose.check_seconds(entries[first].drill) if first else entries[first].seconds
    return shared + sum(entry.seconds for entry in entries[first + 1 : end])


def _fits(entries: Sequence[Entry], first: int, end: int, limits: Limits, lift_drill: DrillId) -> bool:
    fresh = entries[first + 1 if first else 0 : end]
    work = sum(entry.work and entry.drill.id != lift_drill for entry in fresh)
    return (
        (limits.entries is None or end - first <= limits.entries)
        and (limits.work is None or work <= limits.work)
        and (limits.seconds is None or sitting_seconds(entries, first, end) <= limits.seconds)
    )


def cut(route: Route, limits: Limits, lift_drill: DrillId) -> Route:
    """The route in sittings, each as late as the limits allow, after an entry that tests where there is one.

    Raises NoAnswer with the least minutes when a sitting can't hold an entry and the one after it.
    """
    entries = route.entries
    found: list[tuple[int, int]] = []
    first = 0
    while not found or found[-1][1] < len(entries):
        ends = [
            end
            for end in range(min(first + 2, len(entries)), len(entries) + 1)
            if _fits(entries, first, end, limits, lift_drill)
        ]
        if not ends:
            raise NoAnswer(_too_short(entries))
        tested = [end for end in ends if entries[end - 1].tests]
        end = len(entries) if ends[-1] == len(entries) else (tested or ends)[-1]
        found.append((first, end))
        first = end - 1
    return route._replace(sittings=tuple(found))


def _too_short(entries: Sequence[Entry]) -> str:
    """Why no cut helps, with the least time one would take."""
    pairs = range(max(1, len(entries) - 1))
    least = max(sitting_seconds(entries, at, min(at + 2, len(entries))) for at in pairs)
    return f"a sitting must hold a drill and the one after it: that takes at least {dose.minutes(least)} min"
