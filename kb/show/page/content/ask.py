"""The form for a chain with everything that can be said: fault, lift, kit, minutes, load, what is held."""

from collections.abc import Mapping
from typing import NamedTuple

from kb.show.page.page import Page
from kb.show.page.stock import Stock
from kb.terms import Load

__all__ = ["AskForm", "ask_page"]


class AskForm(NamedTuple):
    """What can be chosen, what was said, and what could not be understood."""

    faults: tuple[tuple[str, str], ...]
    lifts: tuple[tuple[str, str], ...]
    kits: tuple[str, ...]
    loads: tuple[str, ...]
    said: Mapping[str, str]
    trouble: str


def ask_page(stock: Stock, said: Mapping[str, str] | None = None, trouble: str = "") -> Page:
    """The form; with what was said before, and one sentence where that can't be understood."""
    held = AskForm(
        faults=tuple(sorted(((fault.id, fault.name) for fault in stock.faults.values()), key=lambda each: each[1])),
        lifts=tuple((lift.id, lift.name) for lift in stock.lifts.values()),
        kits=tuple(stock.kits_by_size()),
        loads=tuple(load.word for load in Load),
        said=said or {},
        trouble=trouble,
    )
    return Page("ask", "Ask for a chain", "ask", held, scripts=("ask.js",), status=400 if trouble else 200)
