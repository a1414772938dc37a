"""The library as a graph with typed edges, for networkx and for other programs.

Each edge reads as a sentence, its kind the verb: a drill *builds-on* a drill, or on a node of kind any-of
that is *any-of* several; an easier drill *eases* a drill; a drill *addresses* a fault and *needs* equipment;
a fault is *made-earlier-by* a fault. Any-of groups stay nodes: flattened, "one of these" would read "all".
"""

import hashlib
import json
from collections.abc import Iterator
from io import BytesIO
from typing import TYPE_CHECKING, Any

from kb.make.library import Library
from kb.make.unimported import unimported
from kb.terms import Drill

if TYPE_CHECKING:
    import networkx as nx

__all__ = ["built_on", "fingerprint", "graphml", "node_link", "whole"]

Node = tuple[str, dict[str, str]]
Edge = tuple[str, str, str, dict[str, Any]]


def whole(library: Library) -> "nx.MultiDiGraph[str]":
    """Every drill, fault and piece of equipment, and what joins them; an edge's key is its kind, then its cause."""
    import networkx as nx

    graph: nx.MultiDiGraph[str] = nx.MultiDiGraph(name="drillpath")
    for node, says in _nodes(library):
        graph.add_node(node, **says)
    for start, end, kind, says in _edges(library):
        key = f"{kind} {says['cause']}" if "cause" in says else kind
        graph.add_edge(start, end, key, kind=kind, **says)
    return graph


def fingerprint(library: Library) -> str:
    """A name for all that `whole` draws: libraries that share it have the same graph."""
    return hashlib.sha256(repr((list(_nodes(library)), list(_edges(library)))).encode()).hexdigest()


def _nodes(library: Library) -> Iterator[Node]:
    for drill in library.drills.values():
        says = {"kind": "drill", "name": drill.name, "stage": drill.stage.word, "lifts": " ".join(drill.lifts)}
        yield drill.id, says
        for n, group in enumerate(drill.groups):
            if len(group) > 1:
                yield _any_of(drill, n), {"kind": "any-of", "name": "any of"}
    for fault in library.faults.values():
        yield fault.id, {"kind": "fault", "name": fault.name, "lifts": " ".join(fault.lifts)}
    for item in library.items.values():
        yield item.id, {"kind": "equipment", "name": item.name}


def _any_of(drill: Drill, n: int) -> str:
    return f"{drill.id} any-of {n}"


def _edges(library: Library) -> Iterator[Edge]:
    for drill in library.drills.values():
        yield from _drill_edges(drill)
    for fault in library.faults.values():
        for cause in fault.causes:
            if cause.earlier is not None:
                yield fault.id, cause.earlier, "made-earlier-by", {"cause": cause.id}


def _drill_edges(drill: Drill) -> Iterator[Edge]:
    for n, group in enumerate(drill.groups):
        made_of = {"part": True} if n >= len(drill.prerequisites) else {}
        if len(group) == 1:
            yield drill.id, group[0], "builds-on", made_of
            continue
        yield drill.id, _any_of(drill, n), "builds-on", made_of
        for member in group:
            yield _any_of(drill, n), member, "any-of", {}
    for regression in drill.regressions:
        yield regression.drill, drill.id, "eases", {"eases": regression.eases}
    for said in drill.faults:
        yield drill.id, said.fault, "addresses", {"cause": said.cause} if said.cause else {}
    for item in drill.equipment:
        yield drill.id, item, "needs", {}


def built_on(graph: "nx.MultiDiGraph[str]") -> "nx.DiGraph[str]":
    """What comes before what alone: an edge from each drill or any-of node to whatever builds on it."""
    import networkx as nx

    before: nx.DiGraph[str] = nx.DiGraph()
    before.add_nodes_from(
        (node, dict(data)) for node, data in graph.nodes(data=True) if data.get("kind") in ("drill", "any-of")
    )
    before.add_edges_from(
        (end, start) for start, end, says in graph.edges(data=True) if says.get("kind") in ("builds-on", "any-of")
    )
    return before


def graphml(graph: "nx.MultiDiGraph[str]") -> str:
    """A graph as GraphML, which most programs for graphs read."""
    import networkx as nx

    data = BytesIO()
    with unimported("numpy"):
        nx.write_graphml_xml(graph, data, prettyprint=False)
    return data.getvalue().decode() + "\n"


def node_link(graph: "nx.MultiDiGraph[str]") -> str:
    """A graph as JSON: its nodes, and its edges as pairs of them."""
    import networkx as nx

    return json.dumps(nx.node_link_data(graph, edges="edges"), ensure_ascii=False) + "\n"
