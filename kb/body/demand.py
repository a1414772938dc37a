"""What a position asks of one body: the angles it would take with joints that never stop.

The shoulder overhead is counted from the trunk; what it has past 180 degrees the upper back must give.
"""

from collections.abc import Mapping
from typing import NamedTuple

from kb.body.inverse import inverse, least_ankle
from kb.body.limits import Limits
from kb.body.proportions import Body
from kb.terms import Position

__all__ = ["Demand", "demand"]

_ENDLESS = Limits(*(400.0 for _ in Limits._fields))
"""Limits that nothing reaches."""


class Demand(NamedTuple):
    """What a position asks, degrees.

    `lean` is the trunk's; `upper_back` what the arms need beyond 180; `least_ankle` the least dorsiflexion with which
    a supple lifter of these lengths can do, or None in a split and on the toes, where nothing is traded.
    """

    angles: Mapping[str, float]
    lean: float
    upper_back: float
    least_ankle: float | None


def demand(body: Body, position: Position, *, wedge: float = 0.0, turn_out: float = 0.0) -> Demand:
    """The angles that the position asks of this body, with what is under and beside the feet.

    Parameters
    ----------
    wedge
        How far a wedge raises the heels, degrees.
    turn_out
        How much further than usual the feet turn out, degrees.
    """
    taken = inverse(body, position, _ENDLESS, wedge=wedge, turn_out=turn_out)
    past = max(0.0, taken.angles["shoulder"] - 180) if position.bar == "overhead" else 0.0
    return Demand(taken.angles, taken.lean, past, least_ankle(body, position, wedge=wedge, turn_out=turn_out))
