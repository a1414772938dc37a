"""A phase of a fault doesn't lie on the timeline of any of its lifts, runs backwards, or a lift has none.

Why it matters: a drill tests a fault when a phase lies within its reach. A phase that is nowhere is never
tested, and for a lift without one no chain could be built.

Wrong:

    lifts: [clean]
    phases: [[dip, drive]]

Right:

    lifts: [clean]
    phases: [[extension, receive]]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.files import nearest
from kb.make.library import Library
from kb.make.structure.known import at, points
from kb.terms import Fault

__all__ = ["CODE", "rule"]

CODE = "phase-off-timeline"


def rule(library: Library) -> Iterator[Problem]:
    """Every phase that is on no timeline of its fault's lifts, and every lift that none is on."""
    for fault in library.faults.values():
        timelines: dict[str, tuple[str, ...]] = {lift: points(library, lift) for lift in fault.lifts}
        # with a lift that isn't known, a phase that seems nowhere may well be there
        if all(timelines.values()):
            for path, message, help_ in _wrong(fault, timelines):
                yield at(library, fault.id, path, CODE, message, help_)


def _wrong(fault: Fault, timelines: dict[str, tuple[str, ...]]) -> Iterator[tuple[str, str, str]]:
    served: set[str] = set()
    for n, (first, last) in enumerate(fault.phases):
        on = [lift for lift, names in timelines.items() if first in names and last in names]
        if not on:
            yield (
                f"phases.{n}",
                f"No lift of this fault has both `{first}` and `{last}`.",
                _hint(first, last, timelines),
            )
        elif any(timelines[lift].index(first) > timelines[lift].index(last) for lift in on):
            yield f"phases.{n}", f"`{last}` comes before `{first}`.", f"Write [{last}, {first}]."
        served.update(on)
    if served:
        for n, lift in enumerate(fault.lifts):
            if lift not in served:
                yield f"lifts.{n}", f"No phase lies on the timeline of `{lift}`.", "Add one, or take the lift out."


def _hint(first: str, last: str, timelines: dict[str, tuple[str, ...]]) -> str:
    names = sorted({point for each in timelines.values() for point in each})
    wrong = [point for point in (first, last) if point not in names]
    return (
        nearest(wrong[0], names) if len(wrong) == 1 else ""
    ) or f"The points are {', '.join(dict.fromkeys(sum(timelines.values(), ())))}."
