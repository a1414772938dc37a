"""What every path must pass: drills that nothing can stand in for, and any-of groups that something owed needs."""

from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

from kb.ask.field import Band, Field
from kb.terms import DrillId

__all__ = ["Groups", "Needs", "Thing", "comes_first", "reached", "some_list", "things_owed"]

Thing = tuple[DrillId, ...]
"""Something owed: any one of these drills will do."""

Groups = Mapping[DrillId, Sequence[Thing]]
"""For each drill, the groups of which one member each must come first."""


class Needs(NamedTuple):
    """The drills that a path could need, by their groups, and what says in which order they may come.

    Preparation comes first; of the drills in `bands` each stretch must be in the field's order after the last.
    """

    goal: DrillId
    groups: Groups
    prepares: frozenset[DrillId]
    bands: Mapping[DrillId, Band]
    field: Field


def _longest(needs: Needs, without: Iterable[DrillId] = ()) -> list[tuple[DrillId, ...]]:
    """Lists that do all that can be done if some drills are never done: every lawful list's drills are in one of them.

    Doing more at one stretch never closes a way, so each does all that can be done there, along every run of
    stretches; of the lists that end at one stretch, those with only some of another's drills are dropped.
    """
    left = frozenset(needs.groups) - frozenset(without)
    bound = left & frozenset(needs.bands)
    free = left - needs.prepares - bound
    first = _grow(_grow((), needs.groups, left & needs.prepares), needs.groups, free)
    at: dict[Band, list[tuple[DrillId, ...]]] = {}
    in_order = needs.field.in_order
    for band in needs.field.stretches():
        here = {each for each in bound if needs.bands[each] == band}
        if here:
            before = [first, *(one for earlier, ended in at.items() if in_order(earlier, band) for one in ended)]
            at[band] = _largest(_grow(one, needs.groups, free | here) for one in _largest(before))
    return [first, *(one for ended in at.values() for one in ended)]


def reached(needs: Needs, without: Iterable[DrillId]) -> frozenset[DrillId]:
    """The drills that can still be come to, in some order, if those named are never done."""
    return frozenset[DrillId]().union(*_longest(needs, without))


def things_owed(needs: Needs) -> list[Thing]:
    """The drills without which the goal can't be reached, then the groups these and the goal need besides."""
    goal, groups = needs.goal, needs.groups
    single = [each for each in sorted(groups) if each != goal and goal not in reached(needs, (each,))]
    alone = set(single)
    several = {
        tuple(sorted(group))
        for each in (*single, goal)
        for group in groups[each]
        if len(group) > 1 and alone.isdisjoint(group)
    }
    least = [group for group in several if not any(set(other) < set(group) for other in several)]
    return [(each,) for each in single] + sorted(least)


def comes_first(needs: Needs, things: Sequence[Thing]) -> list[int]:
    """For each thing owed, those that can't but come before it, as a bit set."""
    without = [reached(needs, thing) for thing in things]
    return [
        sum(1 << n for n, lacking in enumerate(without) if things[n] != thing and lacking.isdisjoint(thing))
        for thing in things
    ]


def some_list(needs: Needs) -> tuple[DrillId, ...] | None:
    """Some order that ends in the goal, whatever it costs; None if there is none at all."""
    ends = [_only_needed(one, needs) for one in _longest(needs) if needs.goal in one]
    return min(ends, key=lambda one: (len(one), one), default=None)


def _grow(done: tuple[DrillId, ...], groups: Groups, among: frozenset[DrillId]) -> tuple[DrillId, ...]:
    """The list with every drill `among` some that can be done after it, in id order as each becomes ready."""
    held, waiting = set(done), sorted(among - set(done))
    found = list(done)
    while True:
        ready = [each for each in waiting if all(not held.isdisjoint(group) for group in groups[each])]
        if not ready:
            return tuple(found)
        found.extend(ready)
        held.update(ready)
        waiting = [each for each in waiting if each not in held]


def _largest(lists: Iterable[tuple[DrillId, ...]]) -> list[tuple[DrillId, ...]]:
    """Of some lists, those whose drills no other has and more besides; one of each set."""
    kept: list[tuple[DrillId, ...]] = []
    sets: list[frozenset[DrillId]] = []
    for one in sorted(lists, key=lambda one: (-len(one), one)):
        drills = frozenset(one)
        if not any(drills <= other for other in sets):
            kept.append(one)
            sets.append(drills)
    return kept


def _only_needed(done: tuple[DrillId, ...], needs: Needs) -> tuple[DrillId, ...]:
    """Of a list, the goal and the first in it to serve each group of what is kept."""
    place = {each: n for n, each in enumerate(done)}
    kept, waiting = {needs.goal}, [needs.goal]
    while waiting:
        for group in needs.groups[waiting.pop()]:
            first = min((each for each in group if each in place), key=place.__getitem__)
            if first not in kept:
                kept.add(first)
                waiting.append(first)
    return tuple(each for each in done if each in kept)
