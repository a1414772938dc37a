"""One lesson of a few: its drills in order, each with how much, and what to do where it isn't met."""

from typing import Literal, NamedTuple

from kb import dose
from kb.terms import Dose, Drill, ItemId, Load, Regression, Speed, Stage

__all__ = ["MISS_MIN", "Line", "LineKind", "Own", "is_way_out", "line_minutes", "moves", "new_dose"]

LineKind = Literal["open", "check", "new", "again", "miss", "lift", "finish"]
"""What a drill is there for: it opens a stiff joint, is one round of last time's, is new, is gone over once more, is
the way out, is the furthest movement, or strengthens."""

Own = Literal["", "depth", "line"]
"""What a stiff body is judged by instead of the standard: today's own depth, or its own line."""

HOLD_ROUNDS = 2
"""Rounds of a hold the first time: a beginner stands still for no more. Common practice, no source."""

MISS_MIN = 2
"""Minutes to practise a movement's own way out with a stick, three times. Common practice, no source."""


class Line(NamedTuple):
    """A drill of a lesson with its `dose`, at one load, in whole minutes.

    `using` is the bar it is done with, if it is loaded; `easier` what is done instead where it isn't met; `own` and
    `aids` say what holds for a stiff body.
    """

    kind: LineKind
    drill: Drill
    load: Load
    dose: Dose
    minutes: int
    using: ItemId | None = None
    easier: Regression | None = None
    own: Own = ""
    aids: tuple[str, ...] = ()


def is_way_out(drill: Drill) -> bool:
    """Whether a drill practises nothing but the way out of a try that goes wrong."""
    return drill.id.endswith("miss-practice")


def moves(drill: Drill) -> bool:
    """Whether something moves in a drill: it isn't held still, and doesn't only open joints."""
    return drill.stage is not Stage.PREPARE and drill.speed > Speed.HELD


def new_dose(drill: Drill) -> Dose:
    """What is done of a drill when it is new: all of it where something moves, two rounds at most of a hold."""
    whole = drill.dose
    return (
        whole if moves(drill) or drill.stage is Stage.PREPARE else whole._replace(rounds=min(whole.rounds, HOLD_ROUNDS))
    )


def line_minutes(drill: Drill, given: Dose, *, teach: bool = False) -> int:
    """Minutes of a drill with a dose: changing over, setting up, showing it if it is to be shown, and the dose."""
    return dose.minutes(
        dose.CHANGE_OVER_S + drill.set_up_s + (drill.teach_s if teach else 0) + dose.dose_seconds(given)
    )
