"""The first page: one field, three doors, and the lifts as timelines."""

from typing import NamedTuple

from kb.show.page.content.timelines import Timeline, timeline_of
from kb.show.page.page import Page
from kb.show.page.stock import Stock

__all__ = ["Home", "home_page"]


class Home(NamedTuple):
    """The lifts, and how much the library holds."""

    timelines: tuple[Timeline, ...]
    drills: int
    faults: int


def home_page(stock: Stock) -> Page:
    """The first page."""
    held = Home(tuple(timeline_of(lift, stock) for lift in stock.lifts.values()), len(stock.drills), len(stock.faults))
    return Page("home", "What did you see?", "home", held, scripts=("index.js", "find.js"))
