"""The lifts as timelines: the way in for a new lifter."""

from typing import NamedTuple

from kb.show.page.content.timelines import Timeline, timeline_of
from kb.show.page.page import Page
from kb.show.page.stock import Stock

__all__ = ["Lifts", "lifts_page"]


class Lifts(NamedTuple):
    """Each lift's timeline."""

    timelines: tuple[Timeline, ...]


def lifts_page(stock: Stock) -> Page:
    """The page of the lifts."""
    return Page(
        "lifts", "A new lifter", "lifts", Lifts(tuple(timeline_of(lift, stock) for lift in stock.lifts.values()))
    )
