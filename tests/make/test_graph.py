"""The graph as networkx and other programs read it."""

import json
import os
import subprocess
import sys
from io import StringIO
from pathlib import Path

import networkx as nx
import pytest
from handmade import library

from kb.make.graph import built_on, fingerprint, graphml, node_link, whole
from kb.make.mermaid import texts


def test_the_graph_keeps_any_of_and_types_its_edges() -> None:
    """Each edge is a sentence; an any-of group is a node, so that "one of" isn't read as "all"."""
    graph = whole(library())
    assert graph.nodes["rack-hold any-of 0"] == {"kind": "any-of", "name": "any of"}
    edges = {(start, end): says for start, end, says in graph.edges(data=True)}
    assert edges["rack-hold", "rack-hold any-of 0"] == {"kind": "builds-on"}
    assert edges["rack-hold any-of 0", "reach-up"] == {"kind": "any-of"}
    assert edges["tall-clean", "rack-hold"] == {"kind": "builds-on"}
    assert edges["full-clean-and-jerk", "full-jerk"] == {"kind": "builds-on", "part": True}
    assert edges["wrist-rock", "rack-hold"] == {"kind": "eases", "eases": "no bar"}
    assert edges["squat", "bar-crashes"] == {"kind": "addresses", "cause": "weak"}
    assert edges["rack-hold", "stick"] == {"kind": "needs"}
    assert edges["bar-crashes", "hips-rise"] == {"kind": "made-earlier-by", "cause": "made-by-hips"}
    # for a cause and for the fault whatever its cause: two edges
    assert set(graph["tall-clean"]["bar-crashes"]) == {"addresses drops-away", "addresses"}
    assert graph.nodes["tall-clean"] == {"kind": "drill", "name": "Tall clean", "stage": "segment", "lifts": "clean"}


def test_built_on_leads_from_the_easier_to_what_builds_on_it() -> None:
    """Drills and any-of nodes alone, arrows forward."""
    graph = built_on(whole(library()))
    assert nx.has_path(graph, "wrist-rock", "full-clean-and-jerk")
    assert not set(graph) & {"bar", "bar-crashes"}
    assert list(graph.predecessors("rack-hold")) == ["rack-hold any-of 0"]


def test_exports_are_read_back_the_same() -> None:
    """GraphML and node-link JSON lose nothing that networkx can read."""
    graph = whole(library())
    data = json.loads(node_link(graph))
    back = nx.node_link_graph(data, edges="edges")
    assert (sorted(back.edges(keys=True)), dict(back.nodes)) == (sorted(graph.edges(keys=True)), dict(graph.nodes))
    by_xml = nx.read_graphml(StringIO(graphml(graph)), force_multigraph=True)
    assert dict(by_xml.nodes) == dict(graph.nodes)
    assert sorted(by_xml.edges(data="kind")) == sorted(graph.edges(data="kind"))


def test_the_fingerprint_tells_graphs_apart_and_passes_words_over() -> None:
    """Another prerequisite is another graph; other words in the body are not."""
    made = library()
    tall = made.drills["tall-clean"]
    words = library(drills={**made.drills, tall.id: tall._replace(sections={"Say": "other"})})
    needs = library(drills={**made.drills, tall.id: tall._replace(prerequisites=())})
    assert fingerprint(made) == fingerprint(words) != fingerprint(needs)


SCRIPT = """
from handmade import library
from kb.make.graph import graphml, node_link, whole
from kb.make.mermaid import texts
graph = whole(library())
print(graphml(graph), node_link(graph), texts(library()))
"""


@pytest.mark.parametrize("seed", ["0", "77"])
def test_the_same_library_gives_the_same_graphs(seed: str) -> None:
    """Whatever the hash seed."""
    here = Path(__file__).parent.parent
    environment = {**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": os.pathsep.join(map(str, (here, here.parent)))}
    run = subprocess.run([sys.executable, "-c", SCRIPT], env=environment, capture_output=True, text=True, check=True)
    graph = whole(library())
    assert run.stdout == f"{graphml(graph)} {node_link(graph)} {texts(library())}\n"
