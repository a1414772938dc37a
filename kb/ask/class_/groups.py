"""Who is on the same chain; where there are more chains than coaches can run, those that share most are joined."""

from collections.abc import Mapping, Sequence
from functools import reduce
from itertools import combinations
from typing import NamedTuple

from kb.ask.class_.doing import Doing, Own, alone_s
from kb.ask.class_.people import Class
from kb.dose import check_seconds, work_seconds
from kb.terms import DrillId, Load

__all__ = ["CHAINS_A_COACH", "Group", "groups_of", "joined"]

CHAINS_A_COACH = 2
"""Different chains that one coach runs at once (issue: "at most two different chains at once")."""

Key = tuple[DrillId, Load]


class Group(NamedTuple):
    """Lifters (by number) on one chain. A working lift at its end is each lifter's own, and not in `doings`.

    `by_themselves` says that they practise what they hold, and need no coach to run it.
    """

    lifters: tuple[int, ...]
    doings: tuple[Doing, ...]
    by_themselves: bool = False


def _shared(own: Own) -> tuple[Doing, ...]:
    return tuple(doing for doing in own.doings if doing.load < Load.WORKING)


def groups_of(asked: Class, owns: Sequence[Own]) -> tuple[Group, ...]:
    """Lifters by chain, in the order in which they are listed; joined while there are more chains than can be run.

    Who practises what they hold runs that by themselves, and stays apart.

    Each time the two chains are joined to which that adds least time. Chains of different lifts, chains that can't
    be joined, and those that would not fit the class then stay apart; so do those with and without a bar.
    """
    by_chain: dict[tuple[object, ...], list[int]] = {}
    for n, own in enumerate(owns):
        chain = (own.lifter.without, own.by_themselves, *((doing.key, doing.work) for doing in _shared(own)))
        by_chain.setdefault(chain, []).append(n)
    groups = [
        Group(
            tuple(members),
            tuple(reduce(_both, same) for same in zip(*(_shared(owns[n]) for n in members), strict=True)),
            owns[members[0]].by_themselves,
        )
        for members in by_chain.values()
    ]
    while sum(not group.by_themselves for group in groups) > CHAINS_A_COACH * asked.coaches:
        ways = []
        for a, b in combinations(range(len(groups)), 2):
            members = groups[a].lifters + groups[b].lifters
            if groups[a].by_themselves or groups[b].by_themselves:
                continue
            if len({(owns[n].lifter.lift, owns[n].lifter.without) for n in members}) > 1:
                continue
            both = joined(groups[a].doings, groups[b].doings)
            if both is not None and all(_may(owns[n], both) and _fits(asked, owns[n], both) for n in members):
                ways.append((_added(groups[a], both) + _added(groups[b], both), a, b, both))
        if not ways:
            break
        _, a, b, both = min(ways, key=lambda way: way[:3])
        joint = Group(tuple(sorted(groups[a].lifters + groups[b].lifters)), both)
        groups = [joint if n == a else group for n, group in enumerate(groups) if n != b]
    return tuple(groups)


def _both(one: Doing, other: Doing) -> Doing:
    """A drill as two lifters do it together: work if it is work for either, with a stick only if that does for both."""
    work = one.work or other.work
    light = None if work or other.light_gear is None else one.light_gear
    training = None if other.training_gear is None else one.training_gear
    return one._replace(work=work, light_gear=light, training_gear=training)


def _seconds(doings: Sequence[Doing]) -> int:
    return sum(work_seconds(each.drill) if each.work else check_seconds(each.drill) for each in doings)


def _added(group: Group, both: tuple[Doing, ...]) -> int:
    return len(group.lifters) * (_seconds(both) - _seconds(group.doings))


def joined(one: Sequence[Doing], other: Sequence[Doing]) -> tuple[Doing, ...] | None:
    """Two chains as one that keeps the order of both, what they share once; None if their orders contradict.

    What is work in either is work. The first chain's drills come first where the order leaves a choice, what
    is done at an earlier stage before that.
    """
    doings: dict[Key, Doing] = {}
    after: dict[Key, set[Key]] = {}
    for chain in (one, other):
        for n, doing in enumerate(chain):
            doings[doing.key] = _both(doings.get(doing.key, doing), doing)
            after.setdefault(doing.key, set()).update(each.key for each in chain[:n])
    _built_on(doings, after)
    place = {key: n for n, key in enumerate(doings)}
    found: list[Doing] = []
    done: set[Key] = set()
    while len(done) < len(doings):
        ready = [key for key in doings if key not in done and after[key] <= done]
        if not ready:
            return None
        key = min(ready, key=lambda each: (doings[each].drill.stage, place[each]))
        found.append(doings[key])
        done.add(key)
    return tuple(found)


def _built_on(doings: Mapping[Key, Doing], after: dict[Key, set[Key]]) -> None:
    """What a drill is built on comes before it too, unless one of the chains has it after."""
    for key, doing in doings.items():
        needed = {member for group in doing.drill.groups for member in group}
        after[key] |= {each for each in doings if each[0] in needed and key not in after[each]}


def _fits(asked: Class, own: Own, chain: tuple[Doing, ...]) -> bool:
    """Whether a lifter gets through a joint chain in the time there is."""
    working = own.doings[len(_shared(own)) :]
    return alone_s(asked, own._replace(doings=(*chain, *working))) <= 60 * asked.minutes - asked.warm_up_s


def _may(own: Own, chain: Sequence[Doing]) -> bool:
    """Whether a lifter may do a joint chain: who is new, only what everything needed for is held or comes earlier."""
    if own.lifter.fault is not None:
        return True
    held = set(own.lifter.holds)
    for doing in chain:
        if not all(any(member in held for member in group) for group in doing.drill.groups):
            return False
        held.add(doing.drill.id)
    mine = {each.drill.id for each in own.doings}
    return all(each.drill.id in mine or each.drill.id in own.lifter.holds for each in chain)
