"""What lessons are made of: a lift, what there is, the minutes, and a body that is stiff somewhere."""

from collections.abc import Mapping
from typing import NamedTuple

from kb.ask.path import Order
from kb.ask.shelf import Shelf
from kb.kit import BAR, BARS, Fit, loads
from kb.terms import Drill, DrillId, ItemId, Load, Regression, Speed, Stage

__all__ = ["MOST_FOR_AFRAID", "MOST_IN_LESSON", "MOST_MOVING", "Teaching", "at_stick", "easier", "lightest_bar"]

MOST_IN_LESSON, MOST_MOVING = 6, 4
"""New drills in a lesson at most, and how many of them may move: the others are held a few seconds. Common practice,
no source."""


MOST_FOR_AFRAID = 3
"""New drills in a lesson at most for who is afraid. Common practice, no source."""


class Teaching(NamedTuple):
    """What so many lessons of a lift are made of.

    `openers` are the drills that open the `stiff` joints; `misses` are drills whose entry says how to get out;
    `fits` says of each drill that can be done here how it can. `steps` is what the library has against fear, for who is
    afraid; None for who isn't.
    """

    shelf: Shelf
    have: frozenset[ItemId]
    fits: Mapping[DrillId, Fit]
    minutes: int
    most: int
    order: Order
    stiff: tuple[str, ...]
    openers: tuple[Drill, ...]
    misses: frozenset[DrillId]
    steps: tuple[Drill, ...] | None = None

    @property
    def most_moving(self) -> int:
        """How many of a lesson's new drills may move."""
        return min(self.most, MOST_MOVING)


def at_stick(teaching: Teaching, drill: Drill) -> Load:
    """How a drill is shown: with a stick, or with empty hands where it makes no sense with one."""
    able = loads(drill, teaching.fits[drill.id], Load.STICK)
    return able[-1] if able else drill.load[0]


def lightest_bar(teaching: Teaching, drill: Drill) -> ItemId | None:
    """The lightest bar here with which a drill can be done; None without one, or where its entry knows none."""
    if BAR not in drill.equipment or Load.LIGHT not in loads(drill, teaching.fits[drill.id], Load.LIGHT):
        return None
    return next((bar for bar in BARS if bar in teaching.have), None)


def easier(teaching: Teaching, drill: Drill) -> Regression | None:
    """The first easier version of a drill that can be done here; None without one.

    Nothing that is quicker or stands further on in the lift is taken for easier.
    """
    for each in drill.regressions:
        found = teaching.shelf.drills.get(each.drill)
        if found is None or each.drill not in teaching.fits:
            continue
        if found.stage <= max(drill.stage, Stage.POSITION) and found.speed <= max(drill.speed, Speed.SLOW):
            return each
    return None
