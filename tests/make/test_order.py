"""What comes before what: gateways, implied prerequisites, layers, causes too few drills act on."""

from itertools import combinations
from typing import Any

import networkx as nx
from handmade import bare, drill, drills_of, library
from hypothesis import given
from hypothesis import strategies as st

from kb.make import order
from kb.make.graph import built_on, whole
from kb.terms import DrillId, Stage

NODES = "abcdefgh"


@st.composite
def and_or(
    draw: st.DrawFn, *, most_groups: int = 3, most_members: int = 3, circles: bool = False
) -> dict[str, list[Any]]:
    """Ids and the groups of each; without `circles` each builds only on ids before it."""
    count = draw(st.integers(1, len(NODES)))
    groups: dict[str, list[Any]] = {}
    for n, node in enumerate(NODES[:count]):
        earlier = NODES[:count].replace(node, "") if circles else NODES[:n]
        member = st.lists(st.sampled_from(earlier or "?"), min_size=1, max_size=most_members, unique=True).map(tuple)
        groups[node] = draw(st.lists(member, max_size=most_groups)) if earlier else []
    return groups


def reachable(groups: dict[str, list[Any]], without: str = "") -> set[str]:
    """What can be held, round after round, once `without` is taken away."""
    held: set[str] = set()
    while True:
        more = {n for n, needed in groups.items() if n not in without and all(held & set(g) for g in needed)}
        if more <= held:
            return held
        held |= more


@given(st.booleans().flatmap(lambda circles: and_or(circles=circles)), st.sets(st.sampled_from(NODES)))
def test_reached_is_the_least_closed_set(groups: dict[str, list[Any]], without: set[str]) -> None:
    """From nothing: all of a drill's groups, one member of each."""
    assert order.reached(groups, without) == reachable(groups, "".join(without))


@given(st.booleans().flatmap(lambda circles: and_or(circles=circles)))
def test_a_gateway_is_what_the_lift_cannot_be_reached_without(groups: dict[str, list[Any]]) -> None:
    """A drill is a gateway of L if L becomes unreachable when it is removed: checked by removing each."""
    passed = order.must_pass(groups, groups)
    for goal in groups:
        if goal in reachable(groups):
            assert passed[goal] == {n for n in groups if n != goal and goal not in reachable(groups, n)}
        else:
            assert passed[goal] == frozenset()


@given(and_or(most_members=1))
def test_without_any_of_every_ancestor_is_a_gateway(groups: dict[str, list[Any]]) -> None:
    """Where every group has one member, all that a drill builds on is passed on every way to it."""
    graph = built_on(whole(bare(drills_of(groups))))
    passed = order.must_pass(groups, groups)
    assert passed == {node: frozenset(nx.ancestors(graph, node)) for node in groups}


@given(and_or(most_groups=1, most_members=4, circles=True))
def test_with_one_group_each_gateways_are_dominators(groups: dict[str, list[Any]]) -> None:
    """Only OR edges: what networkx calls dominators, followed up its tree."""
    graph = nx.DiGraph([("", node) for node, needed in groups.items() if not needed])
    graph.add_edges_from((member, node) for node, needed in groups.items() for group in needed for member in group)
    graph.add_node("")
    above = nx.immediate_dominators(graph, "")
    passed = order.must_pass(groups, groups)
    for node in groups:
        found, up = set(), above.get(node)
        while up:
            found.add(up)
            up = above.get(up)
        assert passed[node] == found


def test_gateways_of_what_is_not_there() -> None:
    """An unknown goal, one that builds on an unknown drill, and one on an empty group can't be reached."""
    groups: dict[str, list[Any]] = {"a": [("gone",)], "b": [()], "c": [("gone", "d")], "d": []}
    assert order.must_pass(groups, ["a", "b", "c", "?"]) == {
        "a": frozenset(), "b": frozenset(), "c": frozenset("d"), "?": frozenset()
    }  # fmt: skip


@given(and_or(most_members=1))
def test_implied_leaves_the_transitive_reduction(groups: dict[str, list[Any]]) -> None:
    """Without any-of groups: what isn't implied is networkx's transitive reduction."""
    distinct = {node: list(dict.fromkeys(needed)) for node, needed in groups.items()}
    drills = drills_of(distinct)
    implied = set(order.implied(drills))
    left = {(n, g[0]) for n, needed in distinct.items() for g in needed if (n, g[0]) not in implied}
    reduced = nx.transitive_reduction(built_on(whole(bare(drills))))
    assert {(before, after) for after, before in left} == set(reduced.edges)


def apart(groups: dict[str, list[Any]]) -> dict[str, list[Any]]:
    """The same with no member twice in one drill's groups, so that a member tells its group."""
    left: dict[str, list[Any]] = {}
    for node, needed in groups.items():
        met: set[str] = set()
        left[node] = [group for group in needed if met.isdisjoint(group) and not met.update(group)]
    return left


@given(and_or().map(apart))
def test_leaving_out_what_is_implied_changes_nothing(groups: dict[str, list[Any]]) -> None:
    """Whatever is taken away, the same can be reached without the implied groups; without any other, not."""
    implied = set(order.implied(drills_of(groups)))
    left = {node: [group for group in needed if (node, group[0]) not in implied] for node, needed in groups.items()}
    assert not any((n, m) in implied for n, needed in left.items() for group in needed for m in group)
    some = ["".join(without) for many in range(len(groups)) for without in combinations(groups, many)]
    assert all(reachable(groups, without) == reachable(left, without) for without in some)
    for node, needed in left.items():
        for group in needed:
            less = {**left, node: [other for other in needed if other != group]}
            assert any(reachable(groups, without) != reachable(less, without) for without in some)


def test_implied_by_example() -> None:
    """What another prerequisite brings in, once; by an any-of group, and of one; through the parts of a complex."""
    drills = drills_of(
        {
            "a": [],
            "b": ["a"],
            "c": ["b", "a"],
            "either": [("a", "x")],
            "x": [],
            "again": ["either", ("a", "x")],
            "of-one": ["b", ("a", "x")],
            "by-all": [("b", "c"), "a"],
            "not-by-some": [("b", "x"), "a"],
            "twice": ["a", "a"],
            "lost": ["gone", "a"],
        }
    )
    complex_ = drill("complex", "a", made_of=(DrillId("b"), DrillId("c")))
    assert order.implied({**drills, complex_.id: complex_}) == [
        ("c", "a"),
        ("again", "a"),
        ("again", "x"),
        ("of-one", "a"),
        ("of-one", "x"),
        ("by-all", "a"),
        ("twice", "a"),
        ("complex", "a"),
    ]


@given(and_or())
def test_in_order_is_the_least_of_the_topological_orders(groups: dict[str, list[Any]]) -> None:
    """Each after all members of its groups, of those ready the least id: as networkx sorts them."""
    graph = nx.DiGraph((member, node) for node, needed in groups.items() for group in needed for member in group)
    graph.add_nodes_from(groups)
    assert order.in_order(groups) == list(nx.lexicographical_topological_sort(graph))


def test_in_order_puts_circles_last() -> None:
    """A library with one is refused; to draw it does no harm."""
    assert order.in_order({"a": [("b",)], "b": [("a",)], "d": [], "c": [("a",)], "e": [("gone",)]}) == list("deabc")


def test_layers_and_what_they_need() -> None:
    """Drills by stage, of a lift those that count for it, of a lift of parts its parts' too."""
    made = library()
    assert order.layers(made.drills, made.lifts["clean"]) == {
        Stage.PREPARE: ["reach-up", "wrist-rock"],
        Stage.POSITION: ["rack-hold"],
        Stage.SEGMENT: ["tall-clean"],
        Stage.WHOLE: ["full-clean"],
        Stage.FINISH: ["squat"],
    }
    assert order.layers(made.drills, made.lifts["clean-and-jerk"])[Stage.WHOLE] == [
        "full-jerk",
        "full-clean",
        "full-clean-and-jerk",
    ]
    borrowed = drill("full-jerk", "rack-hold", lifts=("jerk",))
    needed = order.with_what_they_need({**made.drills, borrowed.id: borrowed}, made.lifts["jerk"])
    assert list(needed) == ["full-jerk", "rack-hold", "reach-up", "wrist-rock"]


def test_thin_counts_drills_at_their_most() -> None:
    """A cause of strength counts a drill that may be light; an earlier fault is worked on as that fault."""
    made = library()
    assert order.thin(made, made.lifts["clean"]) == [("bar-crashes", "drops-away", 1), ("hips-rise", "lost-angle", 1)]
    assert order.thin(made, made.lifts["clean-and-jerk"]) == []
    assert order.thin(library(drills={}), made.lifts["clean"])[:2] == [
        ("bar-crashes", "drops-away", 0),
        ("bar-crashes", "weak", 0),
    ]
