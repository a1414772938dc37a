"""Where a plan of so many lessons ends."""

from typing import NamedTuple

from kb.terms import Drill

__all__ = ["Ends"]


class Ends(NamedTuple):
    """So many `lessons` end in a `part` of the lift, None for all of it, with `new` new drills in one at most.

    `short` lessons are missing for even that to be held. The whole lift takes `whole` sessions, with as many new drills
    in each as were asked for.
    """

    lessons: int
    part: Drill | None
    new: int
    short: int
    whole: int
