"""Published knowledge structures (8.01, 8.02, 8.09 to 8.14) and counts (9.04, 9.05), by what our search calls ready.

An item is a drill, a state what a lifter may hold. Two functions of ours are asked. `ready` is the path search: may
q come next for one who holds K? `reached` (kb.make.order) is what can be learnt from nothing within K. Families,
fringes and orders are built on these two here, so that a wrong one gives a wrong table.

8.03 to 8.08 (errors, estimators, posterior, the answers of `endm`) are in tests/published/test_placement.py.
"""

from collections.abc import Callable, Iterable, Iterator
from functools import cache
from itertools import combinations, pairwise, product
from typing import Any

import networkx as nx
import pytest
from handmade import bare, drill, drills_of, library
from reading import World
from worlds import shelf_of

from kb.ask.path import path
from kb.ask.shelf import Shelf
from kb.errors import NoAnswer
from kb.make.graph import built_on, whole
from kb.make.order import in_order, must_pass, reached
from kb.terms import DrillId, Item, ItemId, LiftId, Load

Groups = dict[str, list[tuple[str, ...]]]
State = frozenset[str]
Family = frozenset[State]
Ready = Callable[[State, str], bool]


def family(words: str) -> Family:
    """ "0 a ab" as states; 0 is the empty one."""
    return frozenset(frozenset(word.replace("0", "")) for word in words.split())


def subsets(items: Iterable[str]) -> list[State]:
    """All of them, smaller first."""
    there = sorted(items)
    return [frozenset(some) for many in range(len(there) + 1) for some in combinations(there, many)]


# --- our two functions ---


def shelf(groups: Groups) -> Shelf:
    """The items as drills of the clean, each with a piece of equipment of its own."""
    at, load = {LiftId("clean"): ("hip", "receive")}, (Load.STICK, Load.STICK)
    drills = {DrillId(i): drill(i, *groups[i], reach=at, load=load, equipment=(i,)) for i in groups}
    items = {ItemId(i): Item(id=ItemId(i), name=i) for i in groups}
    found: Shelf = shelf_of(World(lift=library().lifts[LiftId("clean")], drills=drills, faults={}, items=items))
    return found


def way(on: Shelf, goal: str, held: State, have: State) -> list[str] | None:
    """What the path search does, in order, to get to `goal` from what is held with what there is."""
    on = on._replace(lift=on.lift._replace(drill=DrillId(goal)))
    try:
        found = path(on, have=frozenset(map(ItemId, have)), holds=frozenset(map(DrillId, held)))
    except NoAnswer:
        return None
    return [entry.drill.id for entry in found.entries]


def ready_of(groups: Groups) -> Ready:
    """Whether an item may come next after a state: there is gear for it alone, and the search gets to it."""
    on = shelf(groups)
    return cache(lambda state, item: way(on, item, state, frozenset({item})) is not None)


def fringe(ready: Ready, items: Iterable[str], state: State) -> State:
    """The outer fringe: what may come next."""
    return frozenset(item for item in items if item not in state and ready(state, item))


def inner(states: Family, state: State) -> State:
    """The inner fringe: what may have come last."""
    return frozenset(item for item in state if state - {item} in states)


def learnt(groups: Groups) -> dict[State, int]:
    """Every state that is come to one item at a time from nothing, and in how many orders."""
    ready, ways = ready_of(groups), {frozenset[str](): 1}
    for size in range(len(groups)):
        for state in [state for state in ways if len(state) == size]:
            for item in fringe(ready, groups, state):
                ways[state | {item}] = ways.get(state | {item}, 0) + ways[state]
    return ways


def closed(groups: Groups) -> Family:
    """States each of whose items is ready after the others: circles are closed, though nobody can enter them."""
    ready = ready_of(groups)
    return frozenset(state for state in subsets(groups) if all(ready(state - {item}, item) for item in state))


def founded(groups: Groups) -> Family:
    """States that can be learnt from nothing without help from outside them."""
    return frozenset(state for state in subsets(groups) if reached(groups, groups.keys() - state) == state)


def tightest(states: Family) -> Groups:
    """The most that prerequisites can ask if every one of `states` is to be closed: all groups each state meets."""
    items = sorted(frozenset[str]().union(*states))
    asked: Groups = {}
    for item in items:
        having = [state - {item} for state in states if item in state]
        meeting = [some for some in subsets(set(items) - {item}) if all(some & state for state in having)]
        asked[item] = [tuple(sorted(some)) for some in meeting if not any(less < some for less in meeting)]
    return asked


def unions(states: Family) -> Family:
    """The least family closed under union that has them."""
    found = set(states)
    while more := {a | b for a in found for b in found} - found:
        found |= more
    return frozenset(found)


# --- 8.01, 8.02: Doignon & Falmagne 1999, ch. 7 ---

FIVE: Groups = {"a": [], "b": [], "c": [("a",), ("b",)], "d": [("a",), ("b",)], "e": [("c",)]}
# state: outer fringe, inner fringe
ROWS = "0: ab 0; a: b a; b: a b; ab: cd ab; abc: de c; abd: c d; abcd: e cd; abce: d e; abcde: 0 de"
TABLE = dict(row.split(": ") for row in ROWS.split("; "))
NINE = family(" ".join(TABLE))


def test_nine_states() -> None:
    """8.01, 8.02: exactly the nine, closed under union and intersection, with a, b, abc, abd and abce as base."""
    assert closed(FIVE) == founded(FIVE) == learnt(FIVE).keys() == NINE
    assert unions(NINE) == NINE
    assert all(a & b in NINE for a in NINE for b in NINE)
    passed = must_pass(FIVE, FIVE)
    assert frozenset(passed[item] | {item} for item in FIVE) == family("a b abc abd abce")
    assert tightest(NINE) == {**FIVE, "e": [("a",), ("b",), ("c",)]}


@pytest.mark.parametrize("state", TABLE)
def test_fringes(state: str) -> None:
    """8.01, 8.02: what may come next, and what may have come last."""
    (here,) = family(state)
    outer, last = TABLE[state].split()
    assert fringe(ready_of(FIVE), FIVE, here) == frozenset(outer.replace("0", ""))
    assert inner(founded(FIVE), here) == frozenset(last.replace("0", ""))


def test_six_learning_paths() -> None:
    """8.02: six; networkx lists as many, and our least-first order is one of them."""
    assert learnt(FIVE)[frozenset("abcde")] == 6
    listed = [tuple(order) for order in nx.all_topological_sorts(built_on(whole(bare(drills_of(dict(FIVE))))))]
    assert len(listed) == 6
    assert tuple(in_order(FIVE)) in listed


@pytest.mark.parametrize("state", TABLE)
def test_a_path_is_the_rest_of_a_learning_path(state: str) -> None:
    """8.02: from each state the search does what is missing, all of it, through states of the family alone."""
    (held,) = family(state)
    goal: Groups = {**FIVE, "z": [("d",), ("e",)]}
    done = way(shelf(goal), "z", held, frozenset(goal))
    assert done is not None
    assert sorted(done) == sorted(goal.keys() - held)
    assert all(held | frozenset(done[:n]) in NINE for n in range(len(done)))


def test_fringes_name_the_state() -> None:
    """8.14 Falmagne 2006: in a learning space no two states share both fringes; here, in every one on three items."""
    for groups in structures("abc"):
        states = founded(groups)
        if frozenset("abc") in states:
            both = {(fringe(ready_of(groups), "abc", state), inner(states, state)) for state in states}
            assert len(both) == len(states)


# --- 8.09 to 8.11: families that prerequisites can't express, or only by a circle ---

ENDM = family("0 bc bd abc abd acd abcd")
DENSITY = family("0 a b e ae be bd ace abe bde acde abde bcde abcde")
KFRINGE = family("0 c ab bc cd de abc bcd cde abcd abde bcde abcde")


@pytest.mark.parametrize(("states", "union"), [(ENDM, "bcd"), (DENSITY, "ab")], ids=["8.09 endm", "8.11 density97"])
def test_not_closed_under_union(states: Family, union: str) -> None:
    """8.09, 8.11: what closes both of two states closes their union, so no prerequisites give such a family.

    The tightest that leave each state closed let in every union, the missing one too.
    """
    asked = closed(tightest(states))
    assert asked == unions(states)
    assert frozenset(union) in asked - states


def steps(states: Family) -> int:
    """In how many ways a family leads from nothing to all, one item at a time."""
    ways = {frozenset[str](): 1}
    for state in sorted(states - ways.keys(), key=len):
        ways[state] = sum(ways.get(before, 0) for before in (state - {item} for item in state) if before in states)
    return ways[max(states, key=len)]


def test_no_step_from_nothing() -> None:
    """8.09: `endm` starts with two items at once, which for us is a circle: nothing can be learnt."""
    assert inner(ENDM, frozenset("bc")) == inner(ENDM, frozenset("bd")) == frozenset()
    assert learnt(tightest(ENDM)).keys() == founded(tightest(ENDM)) == {frozenset()}


def test_kfringe() -> None:
    """8.10: closed under union, so expressible; but ab and de come in pairs, and what can be learnt is fewer."""
    asked = tightest(KFRINGE)
    assert closed(asked) == KFRINGE
    assert fringe(ready_of(asked), asked, frozenset("cde")) == frozenset("b")
    assert inner(KFRINGE, frozenset("cde")) == frozenset("ce")
    assert learnt(asked).keys() == founded(asked) < KFRINGE
    assert learnt(asked)[frozenset("abcde")] == steps(KFRINGE) == 6


def test_density97() -> None:
    """8.11: 14 states, each of them reachable by steps, twelve ways to all."""
    assert (len(DENSITY), steps(DENSITY)) == (14, 12)
    assert all(inner(DENSITY, state) for state in DENSITY if state)


# --- 8.12, 8.13: how many families there are ---


def antichains(items: State) -> Iterator[list[tuple[str, ...]]]:
    """Every set of groups of which none holds another: what one item can ask of the rest."""
    some = [group for group in subsets(items) if group]
    for chosen in product((False, True), repeat=len(some)):
        groups = [group for group, kept in zip(some, chosen, strict=True) if kept]
        if not any(a < b for a in groups for b in groups):
            yield [tuple(sorted(group)) for group in groups]


def structures(items: str) -> Iterator[Groups]:
    """Every AND/OR structure of prerequisites on some items, circles and all."""
    own = [list(antichains(frozenset(items) - {item})) for item in items]
    yield from (dict(zip(items, asked, strict=True)) for asked in product(*own))


@pytest.mark.parametrize(
    ("items", "spaces", "both", "learning"), [("a", 1, 1, 1), ("ab", 4, 4, 3), ("abc", 45, 29, 22)]
)
def test_how_many_families(items: str, spaces: int, both: int, learning: int) -> None:
    """8.12, 8.13: families that prerequisites express, with single groups alone, and without circles."""
    every = list(structures(items))
    families = {closed(groups) for groups in every}
    assert len(families) == spaces
    assert all(unions(states) == states for states in families)
    single = {closed(groups) for groups in every if all(len(group) == 1 for own in groups.values() for group in own)}
    assert len(single) == both
    assert {states for states in families if all(a & b in states for a, b in product(states, states))} == single
    without = {founded(groups) for groups in every if len(reached(groups)) == len(items)}
    assert len(without) == learning
    assert without == {states for states in families if all(inner(states, state) for state in states if state)}


# --- 9.04, 9.05: orders and closed sets, by steps of the search ---


def all_of(edges: str) -> Groups:
    """ "a>b c" as items, each needing all that have an edge to it."""
    groups: Groups = {item: [] for word in edges.split() for item in word.split(">")}
    for before, after in (word.split(">") for word in edges.split() if ">" in word):
        groups[after].append((before,))
    return groups


def zigzag(count: int) -> str:
    """a < b > c < d and so on."""
    nodes = "abcdef"[:count]
    return " ".join([nodes[0], *(f"{a}>{b}" if n % 2 == 0 else f"{b}>{a}" for n, (a, b) in enumerate(pairwise(nodes)))])


PAIRS = [("".join(sorted(b - a)), a, b) for a, b in combinations(subsets("123"), 2) if a < b]
CUBE = " ".join(f"s{''.join(sorted(a))}>s{''.join(sorted(b))}" for new, a, b in PAIRS if len(new) == 1)
COUNTS: list[Any] = [
    pytest.param("5>11 7>11 7>8 3>8 3>10 11>2 11>9 11>10 8>9", 150, 24, id="9.04"),
    pytest.param("a>c b>c b>d", 5, 8, id="9.05 N"),
    *(
        pytest.param(zigzag(n), orders, sets, id=f"9.05 zigzag of {n}")
        for n, orders, sets in zip(range(1, 7), (1, 1, 2, 5, 16, 61), (2, 3, 5, 8, 13, 21), strict=True)
    ),
    pytest.param(CUBE, 48, 20, id="9.05 subsets of 3", marks=pytest.mark.from_memory),
]


@pytest.mark.parametrize(("edges", "orders", "sets"), COUNTS)
def test_orders_and_closed_sets(edges: str, orders: int, sets: int) -> None:
    """9.04, 9.05: as many closed sets, and as many orders to learn all, as the search's steps lead through."""
    groups = all_of(edges)
    ways = learnt(groups)
    assert (ways[frozenset(groups)], len(ways)) == (orders, sets)
    assert ways.keys() == founded(groups)
