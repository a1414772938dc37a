"""The states of ability that prerequisites allow, on a few drills that are looked at.

A lifter holds a set of drills closed under prerequisites: of every group of what is held, one member is held
too. Such sets, learnt one drill at a time from nothing, form an antimatroid (a learning space), and so do their
traces on any few of the drills, the items here. A set of items is an integer, bit n for the nth item.

References
----------
Doignon and Falmagne, Knowledge Spaces (1999), ch. 2 and 3: closed states, AND/OR by clauses.
Eppstein, "Learning Sequences" (2008), arXiv:0803.4030: an antimatroid's states come from nothing by what is ready.
"""

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple, TypeVar

from kb.terms import DrillId

__all__ = ["Structure", "clauses_of", "inner", "outer", "ready", "states_of", "structure", "trace"]

Id = TypeVar("Id", bound=str)
Clauses = tuple[tuple[int, ...], ...]


class Structure(NamedTuple):
    """Items and every state on them, smaller first; `clauses[n]` are the sets of which one must come before item n."""

    items: tuple[DrillId, ...]
    clauses: Clauses
    states: tuple[int, ...]


def structure(groups: Mapping[Id, Sequence[Sequence[Id]]], items: Sequence[Id]) -> Structure:
    """The states on `items`, from all drills' prerequisite groups.

    An item that can't be learnt at all, because a circle or a drill that isn't there stands before it, is in no state.
    """
    clauses = clauses_of(groups, items)
    return Structure(tuple(DrillId(item) for item in items), clauses, tuple(states_of(clauses)))


def clauses_of(groups: Mapping[Id, Sequence[Sequence[Id]]], items: Sequence[Id]) -> Clauses:
    """For each item the least sets of other items of which one has to be held before it.

    What stands between two items is left out: of a group any member will do, so its choices are joined; of
    several groups all are needed, so their choices are combined. Worked out until nothing changes, from what can't
    be learnt, so that a circle with no way in stays out.
    """
    bit = {item: 1 << n for n, item in enumerate(items)}
    asks: dict[Id, tuple[int, ...]] = dict.fromkeys(groups, ())
    waiting = list(groups)
    used_by: dict[Id, list[Id]] = {}
    for drill, needed in groups.items():
        for member in {member for group in needed for member in group}:
            used_by.setdefault(member, []).append(drill)
    while waiting:
        drill = waiting.pop()
        found: tuple[int, ...] = (0,)
        for group in groups[drill]:
            choices = {mask for member in group for mask in _choices(member, bit, asks)}
            found = _least({a | b for a in found for b in choices})
        if found != asks[drill]:
            asks[drill] = found
            waiting += [] if drill in bit else used_by.get(drill, [])
    return tuple(tuple(mask for mask in asks.get(item, ()) if not mask & bit[item]) for item in items)


def _choices(member: Id, bit: Mapping[Id, int], asks: Mapping[Id, tuple[int, ...]]) -> tuple[int, ...]:
    """What of the items holding `member` takes: itself if it is one, else what it asks."""
    return (bit[member],) if member in bit else asks.get(member, ())


def _least(masks: set[int]) -> tuple[int, ...]:
    """Those that hold no other, in order."""
    kept: list[int] = []
    for mask in sorted(masks, key=lambda each: (each.bit_count(), each)):
        if not any(less & mask == less for less in kept):
            kept.append(mask)
    return tuple(kept)


def ready(clauses: Clauses, state: int, item: int) -> bool:
    """Whether what item number `item` asks is held; true of what is held itself."""
    return any(mask & state == mask for mask in clauses[item])


def outer(clauses: Clauses, state: int) -> int:
    """The outer fringe: the items that may be learnt next."""
    found = 0
    for n, masks in enumerate(clauses):
        if not state >> n & 1 and any(mask & state == mask for mask in masks):
            found |= 1 << n
    return found


def inner(clauses: Clauses, state: int) -> int:
    """The inner fringe: the items that may have been learnt last, without which what is left is a state still."""
    return sum(1 << n for n in range(len(clauses)) if state >> n & 1 and _learnable(clauses, state & ~(1 << n)))


def _learnable(clauses: Clauses, state: int) -> bool:
    """Whether a set can be learnt one item at a time from nothing."""
    held = 0
    while more := outer(clauses, held) & state:
        held |= more
    return held == state


def _bits(items: int) -> Iterator[int]:
    """The items of a set, each as a set of its own."""
    while items:
        yield items & -items
        items &= items - 1


def states_of(clauses: Clauses) -> Iterator[int]:
    """Every state once, smaller first, then by the number that it is.

    From nothing, whatever is ready is added to each state of one size to make those of the next: every state is come
    to so, since one can be learnt item by item. The work is a look at the clauses for each state and item; subsets
    that are no states are never met.
    """
    level = {0}
    while level:
        yield from sorted(level)
        level = {state | bit for state in level for bit in _bits(outer(clauses, state))}


def trace(held: Sequence[str], items: Sequence[DrillId]) -> int:
    """A set of drills as a set of items."""
    there = set(held)
    return sum(1 << n for n, item in enumerate(items) if item in there)
