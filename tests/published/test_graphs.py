"""Published graphs, row by row (9.01 to 9.06), and networkx on random ones."""

from itertools import combinations, pairwise
from math import factorial
from random import Random
from typing import Any

import networkx as nx
import pytest
from handmade import bare, drills_of

from kb.make.graph import built_on, whole
from kb.make.order import implied, in_order, must_pass, reached
from kb.make.structure.circles import circles

Groups = dict[str, list[Any]]


def one_of(edges: str, root: str) -> Groups:
    """A flow graph as drills: what has edges into it needs any one of their starts; the root needs nothing."""
    groups: Groups = {root: []}
    for start, end in (edge.split(">") for edge in edges.split()):
        groups.setdefault(start, [])
        groups[end] = [(*groups.get(end, [()])[0], start)] if groups.get(end) else [(start,)]
    return {**groups, root: []}


def all_of(edges: str, nodes: str = "") -> Groups:
    """A partial order as drills: each needs all that have an edge to it."""
    groups: Groups = {node: [] for node in nodes.split()}
    for start, end in (edge.split(">") for edge in edges.split()):
        groups.setdefault(start, [])
        groups.setdefault(end, []).append((start,))
    return groups


def immediate(groups: Groups) -> dict[str, str]:
    """Of the gateways of each node the last: the one that has all the others as its own."""
    passed = must_pass(groups, groups)
    return {node: max(gates, key=lambda gate: len(passed[gate])) for node, gates in passed.items() if gates}


def said(words: str) -> dict[str, str]:
    """ "A B: R; F: C" as a mapping."""
    pairs = (part.split(":") for part in words.split(";"))
    return {node: above.strip() for nodes, above in pairs for node in nodes.split()}


DOMINATORS = [
    pytest.param(
        # 9.01 Lengauer & Tarjan 1979, fig. 1
        "R>A R>B R>C A>D B>A B>D B>E C>F C>G D>L E>H F>I G>I G>J H>E H>K I>K J>I K>R K>I L>H",
        "R",
        "A B C D E H I K: R; F G: C; J: G; L: D",
        id="9.01",
    ),
    # 9.02 Cooper, Harvey, Kennedy, fig. 2 and fig. 4; Appel, fig. 19.4
    pytest.param("1>2 2>1 3>2 4>1 5>3 5>4", "5", "1 2 3 4: 5", id="9.02 fig. 2"),
    pytest.param("1>2 2>1 2>3 3>2 4>2 4>3 5>1 6>4 6>5", "6", "1 2 3 4 5: 6", id="9.02 fig. 4"),
    pytest.param("0>1 1>2 1>3 2>4 2>5 4>6 5>6 6>1", "0", "1: 0; 2 3: 1; 4 5 6: 2", id="9.02 Appel"),
]


@pytest.mark.parametrize(("edges", "root", "above"), DOMINATORS)
def test_dominators(edges: str, root: str, above: str) -> None:
    """Where a drill needs any one of several, its gateways are its dominators, on circles too."""
    assert immediate(one_of(edges, root)) == said(above)


def test_dominators_at_random() -> None:
    """Against networkx, on flow graphs of up to 30 nodes with circles."""
    draw = Random(901)
    for _ in range(60):
        count = draw.randrange(2, 30)
        graph = nx.gnp_random_graph(count, draw.random() * 3 / count, seed=draw.randrange(10**6), directed=True)
        graph.remove_edges_from([(start, 0) for start in graph.predecessors(0)])
        # a node without edges into it would be a drill that needs nothing
        there = graph.subgraph({0, *nx.descendants(graph, 0)})
        edges = " ".join(f"{start}>{end}" for start, end in there.edges)
        expected = {str(n): str(above) for n, above in nx.immediate_dominators(graph, 0).items() if n != 0}
        assert immediate(one_of(edges, "0")) == expected


REDUCTIONS = [
    # 9.03 networkx test_dag.py
    ("1>2 1>3 1>4 2>3 2>4 3>4", "1>2 2>3 3>4"),
    ("1>2 1>3 1>4 2>3 2>4", "1>2 2>3 2>4"),
]


@pytest.mark.parametrize(("edges", "reduced"), REDUCTIONS)
def test_transitive_reduction(edges: str, reduced: str) -> None:
    """9.03: what is left when implied prerequisites are taken out."""
    taken = {f"{before}>{after}" for after, before in implied(drills_of(all_of(edges)))}
    assert set(edges.split()) - taken == set(reduced.split())


def test_transitive_reduction_is_the_only_one() -> None:
    """9.03 Aho, Garey & Ullman 1972: of all graphs with the same paths one alone has so few edges."""
    draw = Random(903)
    for _ in range(20):
        edges = [(a, b) for a, b in combinations("abcde", 2) if draw.random() < 0.6]
        paths = set(nx.transitive_closure(nx.DiGraph(edges)).edges)
        same = [
            some
            for many in range(len(edges) + 1)
            for some in combinations(edges, many)
            if set(nx.transitive_closure(nx.DiGraph(some)).edges) == paths
        ]
        groups = all_of(" ".join(f"{a}>{b}" for a, b in edges), "a b c d e")
        taken = {(before, after) for after, before in implied(drills_of(groups))}
        least = [some for some in same if len(some) == len(same[0])]
        assert [set(some) for some in least] == [set(edges) - taken]


def test_transitive_reduction_at_random() -> None:
    """Against networkx, on acyclic graphs of up to 40 nodes."""
    draw = Random(9030)
    for _ in range(30):
        count = draw.randrange(2, 40)
        share = draw.random()
        names = [f"n{n:02}" for n in range(count)]
        groups: Groups = {b: [(a,) for a in names[:n] if draw.random() < share] for n, b in enumerate(names)}
        drills = drills_of(groups)
        edges = {(member, node) for node, needed in groups.items() for (member,) in needed}
        expected = nx.transitive_reduction(built_on(whole(bare(drills)))).edges
        assert edges - {(before, after) for after, before in implied(drills)} == set(expected)


def closed(groups: Groups) -> list[frozenset[str]]:
    """Every prerequisite-closed set: one that is all reached when nothing outside it is to be had."""
    nodes = frozenset(groups)
    some = (frozenset(held) for many in range(len(nodes) + 1) for held in combinations(sorted(nodes), many))
    return [held for held in some if reached(groups, nodes - held) == held]


def orders(groups: Groups) -> int:
    """In how many orders all can be learnt: ways through the closed sets, one more held each time."""
    ways = {frozenset[str](): 1}
    for held in closed(groups)[1:]:
        ways[held] = sum(ways.get(held - {last}, 0) for last in held)
    return ways[frozenset(groups)]


# 9.04 partial order of eight; ids padded so that they sort as numbers do
EIGHT = "05>11 07>11 07>08 03>08 03>10 11>02 11>09 11>10 08>09"


def test_least_first_order() -> None:
    """9.04: of what is ready the least first."""
    assert [int(node) for node in in_order(all_of(EIGHT))] == [3, 5, 7, 8, 11, 2, 9, 10]


def test_orders_and_closed_sets_of_eight() -> None:
    """9.04: 150 orders in all, 24 closed sets; networkx lists as many orders."""
    groups = all_of(EIGHT)
    assert (orders(groups), len(closed(groups))) == (150, 24)
    assert len(list(nx.all_topological_sorts(built_on(whole(bare(drills_of(groups))))))) == 150


def zigzag(count: int) -> Groups:
    """a < b > c < d and so on."""
    nodes = "abcdef"[:count]
    edges = (f"{a}>{b}" if n % 2 == 0 else f"{b}>{a}" for n, (a, b) in enumerate(pairwise(nodes)))
    return all_of(" ".join(edges), " ".join(nodes))


SMALL = [
    # 9.05 N
    pytest.param(all_of("a>c b>c b>d"), 5, 8, id="N"),
    # 9.05 zigzags: Euler's zigzag numbers, Fibonacci's
    *(
        pytest.param(zigzag(n), up_down, fibonacci, id=f"zigzag of {n}")
        for n, up_down, fibonacci in zip(range(1, 7), (1, 1, 2, 5, 16, 61), (2, 3, 5, 8, 13, 21), strict=True)
    ),
    # 9.05 subsets of three items, each after those it holds; OEIS A046873
    pytest.param(
        all_of(
            " ".join(
                f"s{''.join(small)}>s{''.join(large)}"
                for many in range(3)
                for small in combinations("123", many)
                for large in combinations("123", many + 1)
                if set(small) < set(large)
            )
        ),
        48,
        20,
        id="subsets of 3",
        marks=pytest.mark.from_memory,
    ),
]


@pytest.mark.parametrize(("groups", "many", "sets"), SMALL)
def test_orders_and_closed_sets(groups: Groups, many: int, sets: int) -> None:
    """9.05: how many orders there are, and how many closed sets."""
    assert (orders(groups), len(closed(groups))) == (many, sets)


def test_an_antichain_has_every_order() -> None:
    """9.05: the bound both counts reach where nothing comes before anything."""
    groups = all_of("", "a b c d")
    assert (orders(groups), len(closed(groups))) == (factorial(4), 2**4)


# 9.06 Tarjan 1972
STRONG = "1>2 2>3 2>8 3>4 3>7 4>5 5>3 5>6 7>4 7>6 8>1 8>7"


def test_strong_components() -> None:
    """9.06: what goes round together, by networkx on our graph."""
    graph = built_on(whole(bare(drills_of(all_of(STRONG)))))
    found = {frozenset(component) for component in nx.strongly_connected_components(graph)}
    assert found == {frozenset("128"), frozenset("3457"), frozenset("6")}


def test_circles_lie_in_strong_components() -> None:
    """9.06: each component of several has a circle in it that is found, and 6 is in none."""
    edges: dict[str, list[str]] = {node: [] for node in "12345678"}
    for start, end in (edge.split(">") for edge in STRONG.split()):
        edges[start].append(end)
    found = [frozenset(circle) for circle in circles(edges)]
    assert all(any(circle <= component for component in map(frozenset, ("128", "3457"))) for circle in found)
    assert any(circle <= set("128") for circle in found)
    assert any(circle <= set("3457") for circle in found)
