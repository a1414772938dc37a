"""All faults, by lift and by where on it they show: the way in for who can't put it into words."""

from typing import NamedTuple

from kb.evidence import phase_masks
from kb.show.coach_words import human
from kb.show.page.page import Link, Page
from kb.show.page.stock import Stock
from kb.terms import Lift

__all__ = ["Faults", "Stretch", "faults_page"]


class Stretch(NamedTuple):
    """The faults that are first seen at one point of a lift."""

    at: str
    faults: tuple[Link, ...]


class Faults(NamedTuple):
    """By lift, its stretches in order."""

    lifts: tuple[tuple[Link, tuple[Stretch, ...]], ...]


def faults_page(stock: Stock) -> Page:
    """The page of all faults."""
    lifts = [lift for lift in stock.lifts.values() if any(lift.id in fault.lifts for fault in stock.faults.values())]
    held = tuple((Link(lift.name, "lift", lift.id), _stretches(lift, stock)) for lift in lifts)
    return Page("faults", "Faults, by where they show", "faults", Faults(held))


def _stretches(lift: Lift, stock: Stock) -> tuple[Stretch, ...]:
    by_point: dict[int, list[Link]] = {}
    for fault in stock.faults.values():
        if lift.id in fault.lifts:
            first = min((mask & -mask).bit_length() - 1 for mask in phase_masks(fault, lift))
            by_point.setdefault(first, []).append(Link(fault.name, "fault", fault.id))
    return tuple(Stretch(human(lift.points[at]), tuple(links)) for at, links in sorted(by_point.items()))
