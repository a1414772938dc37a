"""Small AND/OR structures of prerequisites, and what can be learnt in them by listing every subset."""

from itertools import combinations

from hypothesis import strategies as st

from kb.terms import DrillId

__all__ = ["Groups", "and_or", "as_bits", "founded", "learnable", "some_items", "traces"]

Groups = dict[DrillId, list[list[DrillId]]]
State = frozenset[DrillId]


@st.composite
def and_or(draw: st.DrawFn, *, most: int = 6, circles: bool = False) -> Groups:
    """Up to `most` drills, each with groups of earlier ones; with `circles` of any."""
    names = [DrillId(each) for each in "abcdef"[: draw(st.integers(1, most))]]
    groups: Groups = {}
    for n, name in enumerate(names):
        others = [each for each in (names if circles else names[:n]) if each != name]
        group = st.lists(st.sampled_from(others), min_size=1, max_size=3, unique=True) if others else st.nothing()
        groups[name] = draw(st.lists(group, max_size=2)) if others else []
    return groups


def some_items(groups: Groups) -> st.SearchStrategy[list[DrillId]]:
    """Some of the drills, at least one, in any order."""
    return st.lists(st.sampled_from(list(groups)), min_size=1, unique=True)


def learnable(groups: Groups, allowed: State) -> State:
    """What of `allowed` can be learnt from nothing, one at a time."""
    held: set[DrillId] = set()
    for _ in allowed:
        held |= {q for q in allowed if all(any(member in held for member in group) for group in groups[q])}
    return frozenset(held)


def founded(groups: Groups) -> set[State]:
    """Every set that can be learnt from nothing, by trying each subset."""
    every = [frozenset(some) for many in range(len(groups) + 1) for some in combinations(groups, many)]
    return {some for some in every if learnable(groups, some) == some}


def traces(groups: Groups, items: list[DrillId]) -> set[State]:
    """What of these sets is seen on the items."""
    return {state & frozenset(items) for state in founded(groups)}


def as_bits(state: State, items: list[DrillId]) -> int:
    """A set of items as an integer, bit n for the nth."""
    return sum(2**n for n, item in enumerate(items) if item in state)
