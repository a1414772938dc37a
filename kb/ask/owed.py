"""What every path must pass: drills that nothing can stand in for, and any-of groups that something owed needs."""

from collections.abc import Iterable, Mapping, Sequence

from kb.terms import DrillId

__all__ = ["Thing", "comes_first", "reached", "things_owed"]

Thing = tuple[DrillId, ...]
"""Something owed: any one of these drills will do."""

Groups = Mapping[DrillId, Sequence[Thing]]


def reached(groups: Groups, without: Iterable[DrillId] = ()) -> frozenset[DrillId]:
    """The drills that can still be come to, in some order, if those named are never done.

    `groups` gives for each drill the groups of which one member each must come first.
    """
    barred = frozenset(without)
    waiting = {drill_id: groups[drill_id] for drill_id in groups if drill_id not in barred}
    done = set[DrillId]()
    while True:
        ready = [each for each, needed in waiting.items() if all(not done.isdisjoint(group) for group in needed)]
        if not ready:
            return frozenset(done)
        done.update(ready)
        for each in ready:
            del waiting[each]


def things_owed(groups: Groups, goal: DrillId) -> list[Thing]:
    """The drills without which the goal can't be reached, then the groups these and the goal need besides."""
    single = [each for each in sorted(groups) if each != goal and goal not in reached(groups, (each,))]
    alone = set(single)
    several = {
        tuple(sorted(group))
        for each in (*single, goal)
        for group in groups[each]
        if len(group) > 1 and alone.isdisjoint(group)
    }
    least = [group for group in several if not any(set(other) < set(group) for other in several)]
    return [(each,) for each in single] + sorted(least)


def comes_first(things: Sequence[Thing], without: Sequence[frozenset[DrillId]]) -> list[int]:
    """For each thing owed, those that can't but come before it, as a bit set; `without[n]` is `reached` lacking n."""
    return [
        sum(1 << n for n, lacking in enumerate(without) if things[n] != thing and lacking.isdisjoint(thing))
        for thing in things
    ]
