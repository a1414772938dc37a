"""The states that prerequisites allow: against a listing of every subset, and against the laws of an antimatroid."""

from itertools import combinations

import pytest
from and_or import Groups, and_or, as_bits, learnable, some_items, traces
from hypothesis import given, settings
from hypothesis import strategies as st

from kb.ask.ability.structure import Structure, clauses_of, inner, outer, ready, states_of, structure, trace
from kb.ask.shelf import Shelf
from kb.terms import DrillId, LiftId

A, B, C, D = (DrillId(each) for each in "abcd")


def family(groups: Groups, items: list[DrillId]) -> tuple[Structure, set[int]]:
    """Ours, and every trace by listing subsets."""
    return structure(groups, items), {as_bits(state, items) for state in traces(groups, items)}


@settings(max_examples=150, deadline=None)
@given(st.data(), st.booleans())
def test_states_are_the_traces_of_what_can_be_learnt(data: st.DataObject, circles: bool) -> None:
    """Exactly the traces on the items, each once, smaller first; circles with no way in are in none."""
    groups = data.draw(and_or(circles=circles))
    items = data.draw(some_items(groups))
    found, listed = family(groups, items)
    assert len(found.states) == len(set(found.states))
    assert set(found.states) == listed
    assert list(found.states) == sorted(listed, key=lambda state: (state.bit_count(), state))


@settings(max_examples=100, deadline=None)
@given(st.data(), st.booleans())
def test_an_antimatroid(data: st.DataObject, circles: bool) -> None:
    """Nothing is a state, unions are states, and every other state can be left by one item: by one of its inner fringe.

    Fringes are as defined: K with q is a state, K without q is one (8.01); ready is what may be added or is there.
    """
    groups = data.draw(and_or(circles=circles))
    items = data.draw(some_items(groups))
    found, listed = family(groups, items)
    assert 0 in listed
    assert {a | b for a in found.states for b in found.states} == listed
    for state in found.states:
        last, onward = inner(found.clauses, state), outer(found.clauses, state)
        assert state == 0 or last
        for n in range(len(items)):
            bit = 1 << n
            assert bool(last & bit) == bool(state & bit and state & ~bit in listed)
            assert bool(onward & bit) == bool(not state & bit and state | bit in listed)
            if state & bit or onward & bit:
                assert ready(found.clauses, state, n)
            else:
                assert not ready(found.clauses, state, n)


@settings(max_examples=60, deadline=None)
@given(and_or())
def test_every_state_is_closed(groups: Groups) -> None:
    """Where every drill is an item: of every group of what is held, one member is held."""
    items = list(groups)
    for state in structure(groups, items).states:
        holds = {item for n, item in enumerate(items) if state >> n & 1}
        assert all(any(each in holds for each in group) for drill in holds for group in groups[drill])


def test_what_stands_between_is_left_out() -> None:
    """d needs b or c, b needs a, c nothing: on a and d alone, d may come first; without c it may not."""
    groups: Groups = {A: [], B: [[A]], C: [], D: [[B, C]]}
    assert clauses_of(groups, [A, D]) == ((0,), (0,))
    assert clauses_of({**groups, C: [[A], [B]]}, [A, D]) == ((0,), (1,))
    assert structure({**groups, C: [[A]]}, [A, D]).states == (0, 1, 3)


def test_a_circle_with_a_way_in() -> None:
    """a needs b or c, b needs a: through c both can be learnt; without c neither."""
    groups: Groups = {A: [[B, C]], B: [[A]], C: []}
    assert structure(groups, [A, B, C]).states == (0, 4, 5, 7)
    assert structure({A: [[B]], B: [[A]]}, [A, B]).states == (0,)


def test_an_item_that_is_nowhere() -> None:
    """An item without an entry is in no state."""
    assert structure({A: []}, [A, B]).states == (0, 1)


def test_trace_as_bits() -> None:
    """A set of drills on the items, the others left out."""
    assert trace([C, A, D], [A, B, C]) == 0b101


@pytest.mark.parametrize(("count", "states"), [(1, 2), (4, 16), (12, 4096)])
def test_free_items(count: int, states: int) -> None:
    """Items that need nothing: every subset is a state."""
    assert sum(1 for _ in states_of(((0,),) * count)) == states


def test_a_ladder() -> None:
    """Each item needs the one before: one state more than items, also for many."""
    assert len(list(states_of(((0,), *((1 << n,) for n in range(199)))))) == 201


def all_traces(shelf: Shelf) -> set[int]:
    """The states on a lift's checkpoints by trying each subset of them: held alone of them, can all of it be learnt?"""
    groups = {drill.id: [list(group) for group in drill.groups] for drill in shelf.drills.values()}
    items = list(shelf.lift.checkpoints)
    found = set()
    for many in range(len(items) + 1):
        for some in combinations(items, many):
            allowed = frozenset(groups) - (frozenset(items) - frozenset(some))
            if frozenset(some) <= learnable(groups, allowed):
                found.add(as_bits(frozenset(some), items))
    return found


SHIPPED = [("clean", 57), ("snatch", 57), ("jerk", 63)]


@pytest.mark.exhaustive
@pytest.mark.parametrize(("lift", "count"), [*SHIPPED, ("clean-and-jerk", 381)])
def test_shipped_states_by_trying_each_subset(lift: str, count: int, shelves: dict[LiftId, Shelf]) -> None:
    """The states on the shipped checkpoints, the hard way."""
    shelf = shelves[LiftId(lift)]
    groups = {drill.id: drill.groups for drill in shelf.drills.values()}
    found = structure(groups, shelf.lift.checkpoints)
    assert set(found.states) == all_traces(shelf)
    assert len(found.states) == count
