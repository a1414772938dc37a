"""What must come before what: gateways, prerequisites that others imply, layers, causes too few drills act on.

Drills with their prerequisite groups are an AND/OR graph: of every group (AND) any one member (OR). Here it
is a mapping from each id to its groups. Sets of ids are bits of one integer, which Python adds and
intersects thousands at a time; networkx draws and exports the graph (kb.make.graph), and is the tests'
second opinion.
"""

from collections.abc import Collection, Iterable, Mapping, Sequence
from heapq import heapify, heappop, heappush

from kb.dials import serves
from kb.evidence import addresses
from kb.make.library import Library
from kb.terms import Drill, DrillId, FaultId, Lift, Stage

__all__ = [
    "ENOUGH",
    "groups_of",
    "implied",
    "in_order",
    "layers",
    "must_pass",
    "reached",
    "thin",
    "with_what_they_need",
]

ENOUGH = 2
"""Drills that should address each cause, so that one that doesn't suit a lifter isn't the only one."""

Groups = Mapping[str, Sequence[Sequence[str]]]
ALL = -1
"""Every bit set: what must be passed on the way to what can't be reached."""


def groups_of(drills: Mapping[DrillId, Drill]) -> dict[str, tuple[tuple[str, ...], ...]]:
    """Each drill's prerequisite groups, the parts of a complex as groups of one."""
    return {drill.id: drill.groups for drill in drills.values()}


def reached(groups: Groups, without: Collection[str] = ()) -> set[str]:
    """All that can be reached from nothing when the ids `without` are taken away: the least closed set."""
    waits = {node: len(needed) for node, needed in groups.items() if node not in without}
    used_by: dict[str, list[tuple[str, int]]] = {}
    for node in waits:
        for n, group in enumerate(groups[node]):
            for member in group:
                used_by.setdefault(member, []).append((node, n))
    ready = [node for node, count in waits.items() if not count]
    found = set(ready)
    met: set[tuple[str, int]] = set()
    while ready:
        for node, n in used_by.get(ready.pop(), ()):
            if (node, n) not in met:
                met.add((node, n))
                waits[node] -= 1
                if not waits[node]:
                    found.add(node)
                    ready.append(node)
    return found


def _after_what_it_needs(groups: Groups) -> list[str]:
    """The ids, each after its groups' members as far as circles allow (depth first, without recursion)."""
    done: dict[str, None] = {}
    for start in groups:
        trail = [(start, iter([member for group in groups[start] for member in group]))]
        on_trail = {start}
        while trail and start not in done:
            node, members = trail[-1]
            onward = next((m for m in members if m in groups and m not in done and m not in on_trail), None)
            if onward is None:
                done[node] = None
                trail.pop()
            else:
                on_trail.add(onward)
                trail.append((onward, iter([member for group in groups[onward] for member in group])))
    return list(done)


def _passed(groups: Groups, bit_of: Mapping[str, int]) -> dict[str, int]:
    """Per id, the bits of all that every way to it passes, itself included; `ALL` if there is no way.

    Taking g away makes d unreachable if d is g, or all members of one of d's groups become so. That holds
    for the largest sets that agree with one another, which are found from `ALL` downwards: in one sweep
    where there is no circle.
    """
    passed = dict.fromkeys(groups, ALL)
    order = _after_what_it_needs(groups)
    changed = True
    while changed:
        changed = False
        for node in order:
            now = bit_of[node]
            for group in groups[node]:
                shared = ALL
                for member in group:
                    shared &= passed.get(member, ALL)
                now |= shared
            if now != passed[node]:
                passed[node] = now
                changed = True
    return passed


def must_pass(groups: Groups, goals: Iterable[str]) -> dict[str, frozenset[str]]:
    """Per goal, its gateways: what every way from nothing to it passes, itself aside; none if it can't be reached.

    Where each id has at most one group these are its dominators; where every group has one member, all
    that it builds on.

    Examples
    --------
    >>> must_pass({"a": [], "b": [["a"]], "c": [["a"]], "d": [["b", "c"]]}, ["d"])
    {'d': frozenset({'a'})}

    References
    ----------
    T. Lengauer and R. E. Tarjan, "A fast algorithm for finding dominators in a flowgraph", ACM Transactions
    on Programming Languages and Systems 1(1), 1979, pp. 121-141 (dominators; the tests use its figure 1).
    """
    bit_of = {node: 1 << n for n, node in enumerate(groups)}
    passed = _passed(groups, bit_of)
    found = {}
    for goal in goals:
        bits = passed.get(goal, ALL)
        found[goal] = frozenset(node for node, bit in bit_of.items() if bits & bit and node != goal and bits != ALL)
    return found


def _back_from(groups: Groups, start: Iterable[str]) -> Groups:
    """The part of the graph that `start` builds on."""
    found: dict[str, Sequence[Sequence[str]]] = {}
    waiting = [node for node in start if node in groups]
    while waiting:
        node = waiting.pop()
        if node not in found:
            found[node] = groups[node]
            waiting += [member for group in groups[node] for member in group if member in groups]
    return found


def implied(drills: Mapping[DrillId, Drill]) -> list[tuple[DrillId, DrillId]]:
    """Prerequisites that another prerequisite of the same drill already brings in, as (drill, prerequisite).

    Leaving them out changes nothing: without any-of groups what remains is the transitive reduction. An
    any-of group is implied when no way to the others avoids all of its members; each member is then
    listed. Parts of a complex bring in, and are never listed.

    References
    ----------
    A. V. Aho, M. R. Garey and J. D. Ullman, "The transitive reduction of a directed graph", SIAM Journal on
    Computing 1(2), 1972, pp. 131-137 (there is exactly one where there is no circle).
    """
    groups = groups_of(drills)
    bit_of = {node: 1 << n for n, node in enumerate(groups)}
    passed = _passed(groups, bit_of)
    found: list[tuple[DrillId, DrillId]] = []
    for drill in drills.values():
        kept = list(drill.groups)
        for group in drill.prerequisites:
            others = list(kept)
            others.remove(group)
            if any(_brings_in(groups, passed, bit_of, other, group) for other in others):
                kept = others
                found += [(drill.id, member) for member in group]
    return found


def _brings_in(
    groups: Groups, passed: Mapping[str, int], bit_of: Mapping[str, int], other: Sequence[str], group: Sequence[str]
) -> bool:
    """Whether every way to every member of `other` passes some member of `group`."""
    shared = ALL
    for member in other:
        shared &= passed.get(member, ALL)
    if shared == ALL:
        return False
    if any(shared & bit_of.get(member, 0) for member in group):
        return True
    return len(group) > 1 and reached(_back_from(groups, other), group).isdisjoint(other)


def in_order(groups: Groups) -> list[str]:
    """The ids so that each stands after every member of its groups, of those ready the least id first.

    Ids on a circle, and what builds on them, come last in id order.
    """
    waits: dict[str, set[str]] = {
        node: {member for group in needed for member in group if member in groups} for node, needed in groups.items()
    }
    used_by: dict[str, list[str]] = {}
    for node, needed in waits.items():
        for member in needed:
            used_by.setdefault(member, []).append(node)
    ready = [node for node, needed in waits.items() if not needed]
    heapify(ready)
    done: dict[str, None] = {}
    left = {node: len(needed) for node, needed in waits.items()}
    while ready:
        node = heappop(ready)
        done[node] = None
        for after in used_by.get(node, ()):
            left[after] -= 1
            if not left[after]:
                heappush(ready, after)
    return [*done, *sorted(node for node in groups if node not in done)]


def with_what_they_need(drills: Mapping[DrillId, Drill], lift: Lift) -> dict[DrillId, Drill]:
    """The drills that count for a lift and all that they build on, in id order."""
    counted = [drill.id for drill in drills.values() if serves(drill, lift)]
    kept = _back_from(groups_of(drills), counted)
    return {drill.id: drill for drill in drills.values() if drill.id in kept}


def layers(drills: Mapping[DrillId, Drill], lift: Lift | None = None) -> dict[Stage, list[DrillId]]:
    """Drills by stage, each after what it builds on; of a lift those that count for it. Empty stages are left out."""
    counted = {drill.id: drill for drill in drills.values() if lift is None or serves(drill, lift)}
    found: dict[Stage, list[DrillId]] = {stage: [] for stage in Stage}
    for node in in_order(groups_of(counted)):
        drill = counted[DrillId(node)]
        found[drill.stage].append(drill.id)
    return {stage: ids for stage, ids in found.items() if ids}


def thin(library: Library, lift: Lift) -> list[tuple[FaultId, str, int]]:
    """Causes of a lift's own faults that fewer than `ENOUGH` drills address, as (fault, cause, how many).

    A drill that counts for the lift is asked at the most load it makes sense at. A cause that is an earlier
    fault is worked on as that fault, so it is not asked about.
    """
    acting: dict[FaultId, list[Drill]] = {}
    for drill in library.drills.values():
        if serves(drill, lift):
            for fault_id in dict.fromkeys(said.fault for said in drill.faults):
                acting.setdefault(fault_id, []).append(drill)
    found = []
    for fault in library.faults.values():
        if lift.id not in fault.lifts:
            continue
        for cause in fault.causes:
            if cause.kind != "earlier":
                count = sum(addresses(drill, fault, cause, drill.load[1]) for drill in acting.get(fault.id, ()))
                if count < ENOUGH:
                    found.append((fault.id, cause.id, count))
    return found
