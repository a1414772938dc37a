"""A lift's timeline as pages show it: its points in order, each with its position and figure."""

from typing import NamedTuple

from kb.show.coach_words import human
from kb.show.page.stock import Stock
from kb.terms import Lift

__all__ = ["Point", "Timeline", "timeline_of"]


SHORT = {"extension": "ext."}
"""Points whose name is too long to stand beside its neighbours on a phone; as the reach chart has them."""


class Point(NamedTuple):
    """One point: its name as it is said, and the position taken there."""

    at: str
    position: str
    name: str


class Timeline(NamedTuple):
    """A lift and its points."""

    lift: str
    name: str
    points: tuple[Point, ...]


def timeline_of(lift: Lift, stock: Stock) -> Timeline:
    """A lift's timeline."""
    return Timeline(
        lift.id,
        lift.name,
        tuple(
            Point(SHORT.get(timed.at, human(timed.at)), timed.position, stock.name(timed.position))
            for timed in lift.timeline
        ),
    )
