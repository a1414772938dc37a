"""A drill's reach ends before it begins.

Why it matters: reach is a stretch of the timeline from its first point to its last, in the lift's order.

Wrong:

    reach: [stand, receive]

Right:

    reach: [receive, stand]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at, points

__all__ = ["CODE", "rule"]

CODE = "reach-backwards"


def rule(library: Library) -> Iterator[Problem]:
    """Every reach whose last point comes before its first."""
    for drill in library.drills.values():
        for lift, (first, last) in drill.reach.items():
            names = points(library, lift)
            if first in names and last in names and names.index(first) > names.index(last):
                message = f"`{last}` comes before `{first}` in `{lift}`."
                yield at(library, drill.id, f"reach.{lift}", CODE, message, f"Write [{last}, {first}].")
