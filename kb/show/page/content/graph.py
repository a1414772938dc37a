"""How a lift's drills hang together: layered by stage along the timeline, and the same as a list."""

from collections.abc import Iterator
from typing import Any, NamedTuple

from kb.dials import dials_of
from kb.show.page.content.at_hand import STAGES
from kb.show.page.inert import inert
from kb.show.page.page import Link, Page
from kb.show.page.stock import Stock
from kb.show.setting import wrapped
from kb.terms import Drill, DrillId, Lift, LiftId, Stage

__all__ = ["Graph", "GraphNode", "graph_page", "graph_script", "graphs_page"]

COLUMN, ROW, BAND = 210, 64, 70
"""Between columns, between drills of one column, between stages, in the drawing's units."""

ASIDE = 34
"""How far every second drill of a column stands aside, in the same units."""

LETTERS = 18
"""Letters of a line of a label."""


class GraphNode(NamedTuple):
    """A drill in a lift's graph, with what it builds on and what builds on it."""

    drill: Link
    first: tuple[tuple[Link, ...], ...]
    leads_to: tuple[Link, ...]


class Graph(NamedTuple):
    """A lift's drills by stage."""

    lift: Link
    others: tuple[Link, ...]
    stages: tuple[tuple[str, tuple[GraphNode, ...]], ...]
    script: str
    drills: int


def graphs_page(stock: Stock) -> Page:
    """The way in: one graph a lift."""
    held = tuple(
        Link(lift.name, "graph", lift.id, f"{len(_drills(lift, stock))} drills") for lift in stock.lifts.values()
    )
    return Page("graph", "How the drills hang together", "graphs", held)


def graph_page(stock: Stock, lift_id: str) -> Page:
    """A lift's graph; KeyError if there is no such lift."""
    lift = stock.lifts[LiftId(lift_id)]
    drills = _drills(lift, stock)
    after = _after(drills)
    held = Graph(
        lift=Link(lift.name, "lift", lift.id),
        others=tuple(Link(other.name, "graph", other.id) for other in stock.lifts.values() if other.id != lift.id),
        stages=tuple(
            (said, tuple(_node(drill, after, stock) for drill in drills.values() if drill.stage is stage))
            for stage, said in STAGES.items()
        ),
        script=f"graph-{lift.id}.js",
        drills=len(drills),
    )
    scripts = ("vis-network.min.js", held.script, "graph.js")
    return Page(f"graph/{lift.id}", f"{lift.name}: how its drills hang together", "graph", held, scripts=scripts)


def _drills(lift: Lift, stock: Stock) -> dict[DrillId, Drill]:
    return {
        drill.id: stock.drills[drill.id]
        for drill in sorted(stock.shelves[lift.id].drills.values(), key=lambda drill: (drill.stage, drill.name))
    }


def _after(drills: dict[DrillId, Drill]) -> dict[DrillId, list[Drill]]:
    """What builds on each drill, in their order."""
    found: dict[DrillId, list[Drill]] = {}
    for drill in drills.values():
        for member in dict.fromkeys(member for group in drill.groups for member in group):
            found.setdefault(member, []).append(drill)
    return found


def _node(drill: Drill, after: dict[DrillId, list[Drill]], stock: Stock) -> GraphNode:
    return GraphNode(
        Link(drill.name, "drill", drill.id),
        tuple(tuple(Link(stock.name(member), "drill", member) for member in group) for group in drill.groups),
        tuple(Link(other.name, "drill", other.id) for other in after.get(drill.id, ())),
    )


def graph_script(stock: Stock, lift_id: LiftId) -> str:
    """The drawing's data as a plain script: drills with their places, and what builds on what.

    The places are ours, so that the drawing is the same each time and nothing has to settle.
    """
    from pyvis.network import Network

    lift = stock.lifts[lift_id]
    drills = _drills(lift, stock)
    net = Network(directed=True)
    for drill, x, y in _places(lift, drills):
        label = "\n".join(wrapped(drill.name, LETTERS))
        net.add_node(drill.id, label=label, x=x, y=y, group=drill.stage.word, title=drill.name)
    for drill in drills.values():
        for group in drill.groups:
            for member in group:
                if member in drills:
                    net.add_edge(member, drill.id, dashes=len(group) > 1)
    nodes, edges, *_ = net.get_network_data()
    kept: dict[str, Any] = {
        "nodes": [{key: node[key] for key in ("id", "label", "x", "y", "group", "title")} for node in nodes],
        "edges": [{"from": edge["from"], "to": edge["to"], "dashes": edge.get("dashes", False)} for edge in edges],
        "points": [{"x": COLUMN * n, "name": timed.at} for n, timed in enumerate(lift.timeline)],
    }
    return f"window.drillpathGraph = {inert(kept, sort_keys=True)};\n"


def _places(lift: Lift, drills: dict[DrillId, Drill]) -> Iterator[tuple[Drill, int, int]]:
    """Each drill's place: across by where its reach begins, down by stage, under each other where they meet."""
    top = 0
    for stage in Stage:
        columns: dict[int, list[Drill]] = {}
        spread = 0
        for drill in drills.values():
            if drill.stage is stage:
                aside = stage in (Stage.PREPARE, Stage.FINISH)
                column = spread % len(lift.timeline) if aside else dials_of(drill, lift).first
                columns.setdefault(column, []).append(drill)
                spread += 1
        for column, stacked in sorted(columns.items()):
            # what builds on another stands below it, and a little aside, so that no arrow hides behind a name
            deep = _depths(stacked)
            for n, drill in enumerate(sorted(stacked, key=lambda each: (deep[each.id], each.name))):
                yield drill, COLUMN * column + ASIDE * (n % 2), top + ROW * n
        top += ROW * max((len(stacked) for stacked in columns.values()), default=0) + (BAND if columns else 0)


def _depths(among: list[Drill]) -> dict[DrillId, int]:
    """How many of the others each builds on, one after another; the build refuses rings."""
    there, found = {drill.id: drill for drill in among}, dict[DrillId, int]()

    def depth(drill: Drill) -> int:
        if drill.id not in found:
            below = {member for group in drill.groups for member in group if member in there}
            found[drill.id] = max((1 + depth(there[member]) for member in below), default=0)
        return found[drill.id]

    for drill in among:
        depth(drill)
    return found
