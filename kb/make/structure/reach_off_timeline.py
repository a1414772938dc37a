"""A point of a drill's reach isn't on the timeline of a lift it serves.

Why it matters: a drill is placed by its reach; off the timeline it stands nowhere.

Wrong:

    lifts: [snatch, jerk]
    reach: [receive, stand]

Right:

    lifts: [snatch, jerk]
    reach: {snatch: [receive, stand], jerk: [split, recovered]}
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.files import nearest
from kb.make.library import Library
from kb.make.structure.known import at, points

__all__ = ["CODE", "rule"]

CODE = "reach-off-timeline"


def rule(library: Library) -> Iterator[Problem]:
    """Every end of a reach that its lift doesn't have."""
    for drill in library.drills.values():
        for lift, reach in drill.reach.items():
            names = points(library, lift)
            for point in dict.fromkeys(reach):
                if names and point not in names:
                    message = f"`reach` says `{point}`, which isn't on the timeline of `{lift}`."
                    help_ = nearest(point, names) or f"Its points are {', '.join(names)}."
                    yield at(library, drill.id, f"reach.{lift}", CODE, message, help_)
