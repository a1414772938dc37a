"""A path: from nothing to a lift with a kit, drill by drill, gateways marked."""

from typing import NamedTuple

from kb.ask.path import Path
from kb.ask.towards import towards
from kb.dose import minutes
from kb.show.as_json import path_json
from kb.show.bars import path_bars
from kb.show.chart_svg import chart_figure
from kb.show.coach_words import LOADS, changed, dosed, listed, moved_on
from kb.show.page.page import Link, Page
from kb.show.page.stock import Stock
from kb.show.setting import Setting
from kb.terms import Lift, LiftId, Load

__all__ = ["PathPage", "PathShown", "StepShown", "path_page", "paths_of"]


class StepShown(NamedTuple):
    """One drill of a path; `changed` says how much of it where there is no path but what leads towards it."""

    drill: Link
    changed: str
    move_on: str
    gateway: bool


class PathShown(NamedTuple):
    """The path from nothing with some kits, or why there is none."""

    kits: str
    chart: str
    steps: tuple[StepShown, ...]
    why: str
    beside: str


class PathPage(NamedTuple):
    """What a path's page holds."""

    lift: Link
    way: PathShown
    others: tuple[Link, ...]


def _ways(stock: Stock, lift: Lift) -> dict[str, tuple[list[str], Path | str]]:
    """Each path that differs, under the smallest kit that leads to it, with its kits; a text where there is none."""
    found: dict[object, tuple[list[str], Path | str]] = {}
    for kit in stock.kits_by_size():
        way = stock.way(lift.id, kit)
        key = way if isinstance(way, str) else tuple((entry.drill.id, entry.load) for entry in way.entries)
        found.setdefault(key, ([], way))[0].append(kit)
    return {f"{lift.id}.{kits[0]}": (kits, way) for kits, way in found.values()}


def paths_of(stock: Stock, lift_id: str) -> dict[str, PathShown]:
    """A lift's paths by the name of their page, with the least gear first; KeyError if there is no such lift."""
    lift = stock.lifts[LiftId(lift_id)]
    return {name: _shown(lift, kits, way, stock) for name, (kits, way) in _ways(stock, lift).items()}


def path_page(stock: Stock, name: str) -> Page:
    """The page of a path, by its name; KeyError if there is none of that name."""
    lift = stock.lifts[LiftId(name.partition(".")[0])]
    ways = _ways(stock, lift)
    kits, way = ways[name]
    shown = _shown(lift, kits, way, stock)
    others = tuple(
        Link(f"With {listed(each, 'or')}", "path", other) for other, (each, _) in ways.items() if other != name
    )
    held = PathPage(Link(lift.name, "lift", lift.id), shown, others)
    data = None if isinstance(way, str) else path_json(way, kits[0], stock.gateways[lift.id])
    return Page(f"path/{name}", f"{lift.name} from nothing, with {shown.kits}", "path", held, data=data)


def _shown(lift: Lift, kits: list[str], way: Path | str, stock: Stock) -> PathShown:
    named = f"the {listed(kits, 'or')} kit"
    if isinstance(way, str):
        return PathShown(named, "", _towards(lift, kits[0], stock), way, "no path")
    gateways = stock.gateways[lift.id]
    steps = tuple(
        StepShown(
            Link(entry.drill.name, "drill", entry.drill.id),
            listed([changed(change, lift, entry.drill) for change in entry.changes]),
            moved_on(entry.drill.standard),
            entry.drill.id in gateways,
        )
        for entry in way.entries
    )
    beside = f"{len(steps)} drills, {minutes(sum(entry.seconds for entry in way.entries))} min of work"
    return PathShown(named, chart_figure(lift, path_bars(way, gateways)), steps, "", beside)


def _towards(lift: Lift, kit: str, stock: Stock) -> tuple[StepShown, ...]:
    """The path as far as a kit goes that doesn't lead to the lift: how much of each drill, and when to move on."""
    gateways = stock.gateways[lift.id]
    return tuple(
        StepShown(
            Link(each.drill.name, "drill", each.drill.id),
            f"{dosed(each.drill, Setting(fine=True))}{'' if each.load is Load.NONE else f', {LOADS[each.load]}'}",
            moved_on(each.drill.standard),
            each.drill.id in gateways,
        )
        for each in towards(stock.shelves[lift.id], have=stock.kits[kit])
    )
