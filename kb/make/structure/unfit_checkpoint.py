"""A checkpoint of a lift doesn't place a lifter in it: it is preparation, or strengthening, or of another lift.

A checkpoint's standard says that part of this lift is held. It is of stage position to whole, and serves the
lift or a part of it.

Why it matters: what a lifter is ready for is reckoned from the checkpoints and what is built on them. Preparation
and strengthening stand outside that order, and a drill of another lift says nothing about this one.

Wrong:

    checkpoints: [wrist-rock, rack-hold, front-squat, full-jerk]    # of the clean

Right:

    checkpoints: [rack-hold, front-squat, hang-clean, full-clean]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import Drill, Lift, Stage

__all__ = ["CODE", "rule"]

CODE = "unfit-checkpoint"

OUTSIDE = {Stage.PREPARE: "is preparation", Stage.FINISH: "is strengthening, outside the order of drills"}


def rule(library: Library) -> Iterator[Problem]:
    """Every checkpoint that says nothing about its lift."""
    for lift in library.lifts.values():
        for n, drill_id in enumerate(lift.checkpoints):
            drill = library.drills.get(drill_id)
            why = _unfit(drill, lift) if drill else None
            if why:
                message = f"The checkpoint `{drill_id}` {why}."
                yield at(
                    library, lift.id, f"checkpoints.{n}", CODE, message, "Name a drill that is a part of the lift."
                )


def _unfit(drill: Drill, lift: Lift) -> str | None:
    """Why a drill is no checkpoint of a lift; None if it may be one."""
    if drill.stage in OUTSIDE:
        return OUTSIDE[drill.stage]
    if not any(served in drill.lifts for served in lift.serves):
        return f"doesn't serve `{lift.id}`" + (" or a part of it" if lift.parts else "")
    return None
