"""What entries say of one another: the graph's edges, and which of them came and went."""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from kb.make.library import Library
from kb.terms import Drill

__all__ = ["Edge", "Edges", "edges_between"]


class Edge(NamedTuple):
    """One entry says something of another; where any one of several will do, `end` is all of them.

    `detail` is the cause of a fault that is addressed or made, or what an easier version eases.
    """

    start: str
    kind: str
    end: tuple[str, ...]
    detail: str = ""


class Edges(NamedTuple):
    """Edges of either side alone, in order."""

    added: tuple[Edge, ...]
    removed: tuple[Edge, ...]


def edges_between(before: Library, after: Library, names: Mapping[str, str]) -> Edges:
    """The edges that differ; `names` maps each id that was renamed to the new one."""
    old = {_renamed(edge, names) for edge in _edges(before)}
    new = {_renamed(edge, names) for edge in _edges(after)}
    return Edges(added=tuple(sorted(new - old)), removed=tuple(sorted(old - new)))


def _renamed(edge: Edge, names: Mapping[str, str]) -> Edge:
    end = tuple(sorted(names.get(each, each) for each in edge.end))
    return edge._replace(start=names.get(edge.start, edge.start), end=end)


def _edges(library: Library) -> Iterator[Edge]:
    for drill in library.drills.values():
        yield from _of_drill(drill)
    for fault in library.faults.values():
        for cause in fault.causes:
            if cause.earlier is not None:
                yield Edge(fault.id, "made-earlier-by", (cause.earlier,), cause.id)
        for tell in fault.tells:
            if tell.drill is not None:
                yield Edge(fault.id, "told-by", (tell.drill,))
    for item in library.items.values():
        for stand_in in item.stand_ins:
            yield Edge(stand_in.item, "stands-in-for", (item.id,), stand_in.lost)


def _of_drill(drill: Drill) -> Iterator[Edge]:
    for group in drill.prerequisites:
        yield Edge(drill.id, "builds-on", tuple(group))
    for part in drill.made_of:
        yield Edge(drill.id, "is-made-of", (part,))
    for regression in drill.regressions:
        yield Edge(regression.drill, "eases", (drill.id,), regression.eases)
    for said in drill.faults:
        yield Edge(drill.id, "addresses", (said.fault,), said.cause or "")
    for item in drill.equipment:
        yield Edge(drill.id, "needs", (item,))
