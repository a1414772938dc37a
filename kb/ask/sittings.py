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

    Raises NoAnswer with the least minutes when no sitting can hold an entry and the one after it.
    """
    entries = route.entries
    found: list[tuple[int, int]] = []
    first = 0
    while True:
        ends = [
            end
            for end in range(first + (2 if first else 1), len(entries) + 1)
            if _fits(entries, first, end, limits, lift_drill)
        ]
        if not ends:
            least = max(sitting_seconds(entries, at, at + 2) for at in range(len(entries) - 1))
            raise NoAnswer(f"one sitting can't hold a drill and the next; it takes at least {dose.minutes(least)} min")
        if ends[-1] == len(entries):
            found.append((first, len(entries)))
            return route._replace(sittings=tuple(found))
        later = [end for end in ends if end > first + 1]
        tested = [end for end in later if entries[end - 1].tests]
        end = tested[-1] if tested else (later or ends)[-1]
        if end - 1 == first:
            raise NoAnswer(
                "one sitting can't hold a drill and the next; it takes at least "
                f"{dose.minutes(sitting_seconds(entries, first, first + 2))} min"
            )
        found.append((first, end))
        first = end - 1
