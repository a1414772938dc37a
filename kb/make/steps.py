"""Step sizes between every two places where a drill of a lift can stand, worked out once.

Drills that share dials share a row, so the tables are small: a search looks a step up instead of working
it out, and the shortest sums of steps give it a bound on what is still owed.
"""

import sys
from array import array
from collections.abc import Iterator, Mapping, Sequence
from typing import TypeVar

from kb.dials import Dials, at_load, dials_of, serves, step
from kb.terms import Catch, Drill, DrillId, Item, ItemId, Lift, Load, Speed, Stage

__all__ = ["profiles", "step_rows"]

LANE = 16
"""Bits of each number in a packed row."""

_AT = Dials(Stage.WHOLE, 0, 0, 0, Speed.FULL, Load.LIGHT, Catch.FULL, False)
_VALUES: Mapping[str, Sequence[int]] = {
    "stage": list(Stage),
    "speed": list(Speed),
    "load": list(Load),
    "catch": list(Catch),
    "helped": [False, True],
}

T = TypeVar("T")
_Caps = tuple[Speed, Load, Catch]


def _caps(drill: Drill, items: Mapping[ItemId, Item]) -> set[_Caps]:
    """The highest speed, load and catch under every choice of each item or one of its stand-ins."""
    found: set[_Caps] = {(Speed.FULL, Load.WORKING, Catch.FULL)}
    for item_id in drill.equipment:
        stand_ins = items[item_id].stand_ins if item_id in items else ()
        found |= {
            (min(speed, stand_in.speed), min(load, stand_in.load), min(catch, stand_in.catch))
            for speed, load, catch in found
            for stand_in in stand_ins
        }
    return found


def _stands_at(drill: Drill, lift: Lift, items: Mapping[ItemId, Item]) -> Iterator[Dials]:
    dials = dials_of(drill, lift)
    least, most = drill.load
    for speed, cap, catch in _caps(drill, items):
        for load in Load:
            if least <= load <= min(most, cap):
                yield at_load(dials, load, speed, catch)


def profiles(lift: Lift, drills: Mapping[DrillId, Drill], items: Mapping[ItemId, Item]) -> list[Dials]:
    """Every distinct place where a drill that counts for a lift can stand, in order of its numbers.

    Each load of a drill's range, under every cap that stand-ins for its equipment can impose.
    Strengthening (finish) is never in a chain and has none.
    """
    found = {
        dials
        for drill in drills.values()
        if drill.stage is not Stage.FINISH and serves(drill, lift)
        for dials in _stands_at(drill, lift, items)
    }
    return sorted(found)


def _sizes(found: Sequence[Dials], parts: Sequence[tuple[int, int]]) -> list["array[int]"]:
    """The step from each profile to each.

    A step is a sum over dials, so that of the timeline (reach and points left out) and that of all other
    dials are each worked out once for the few values they take. Out of preparation the timeline counts
    for nothing.
    """
    line_at = [(dials.first, dials.last, dials.left_out) for dials in found]
    rest_at = [dials._replace(first=0, last=0, left_out=0) for dials in found]
    lines, rests = sorted(set(line_at)), sorted(set(rest_at))
    on_line = [_AT._replace(first=first, last=last, left_out=left_out) for first, last, left_out in lines]
    line_steps = [[step(a, b, parts) for b in on_line] for a in on_line]
    along = dict(zip(lines, _packed(line_steps, _members(line_at, lines)), strict=True))
    across = dict(zip(rests, _packed(_rest_steps(rests), _members(rest_at, rests)), strict=True))
    return [
        _unpacked((0 if dials.stage is Stage.PREPARE else along[line]) + across[rest], len(found))
        for dials, line, rest in zip(found, line_at, rest_at, strict=True)
    ]


def _turns(dial: str, values: Sequence[int]) -> list[list[int]]:
    """The step from each value of one dial to each, all others left as they are."""
    turned: list[Dials] = [_AT._replace(**{dial: value}) for value in values]  # type: ignore[arg-type]  # its own dial's
    return [[step(a, b) for b in turned] for a in turned]


def _rest_steps(rests: Sequence[Dials]) -> list[list[int]]:
    """The step between places that differ in anything but the timeline, each dial's turns worked out once."""
    stage, speed, load, catch, helped = (_turns(dial, values) for dial, values in _VALUES.items())
    return [
        [step(a, b) for b in rests]
        if a.stage is Stage.PREPARE
        else [
            stage[a.stage][b.stage]
            + speed[a.speed][b.speed]
            + load[a.load][b.load]
            + catch[a.catch][b.catch]
            + helped[a.helped][b.helped]
            for b in rests
        ]
        for a in rests
    ]


def _members(values: Sequence[T], distinct: Sequence[T]) -> list[list[int]]:
    members: dict[T, list[int]] = {value: [] for value in distinct}
    for n, value in enumerate(values):
        members[value].append(n)
    return list(members.values())


def _packed(steps: Sequence[Sequence[int]], members: Sequence[Sequence[int]]) -> list[int]:
    """From each kind of place, its share of the step to every profile; `members` are each kind's profiles."""
    lanes = [sum(1 << (LANE * n) for n in those) for those in members]
    return [sum(size * lane for size, lane in zip(sizes, lanes, strict=True)) for sizes in steps]


def _unpacked(row: int, count: int) -> "array[int]":
    row_of = array("H", row.to_bytes(2 * count, sys.byteorder))
    if sys.byteorder == "big":  # pragma: no cover
        row_of.reverse()
    return row_of


def _by_size(sizes: "array[int]", ones: Sequence[int]) -> dict[int, int]:
    """The profiles at each size of step, as bit sets; `ones` is each profile's bit."""
    found: dict[int, int] = {}
    for size, one in zip(sizes, ones, strict=True):
        found[size] = found.get(size, 0) | one
    return found


def _closed(direct: Sequence[Mapping[int, int]], through: int) -> list[int]:
    """The profiles that each comes to by steps of size 0, itself among them, by way of `through` alone."""
    free = [row.get(0, 0) | 1 << n for n, row in enumerate(direct)]
    for k, beyond in enumerate(free):
        if through >> k & 1 and beyond != 1 << k:
            free = [bits | free[k] if bits >> k & 1 else bits for bits in free]
    return free


def _bits(bits: int) -> Iterator[int]:
    while bits:
        low = bits & -bits
        yield low.bit_length() - 1
        bits ^= low


def _shortest(direct: Sequence[Mapping[int, int]], through: int) -> list["array[int]"]:
    """All shortest sums of steps by way of the profiles `through` (a bit set) alone.

    Grown outwards one unit at a time from all places at once, as Dial's buckets are, with bit sets for
    buckets: at distance d are those that a link of size w leads to whatever is d - w from its end. A step
    becomes a link only if links found before don't come there as soon; steps are squares of notches, so
    few do. 200 places at random take 40 ms, 1,300 some 1.4 s; Floyd and Warshall's nested loops 180 ms and 50 s.

    References
    ----------
    R. B. Dial, "Algorithm 360: Shortest-path forest with topological ordering", Communications of the ACM
    12(11), 1969, pp. 632-633.
    """
    count = len(direct)
    everywhere = (1 << count) - 1
    free = _closed(direct, through)
    within = list(free)
    exact = [{0: bits} for bits in free]
    links: list[list[tuple[int, int]]] = [[] for _ in direct]
    onward = [[k for k in _bits(bits & through) if k != n] for n, bits in enumerate(free)]
    size = 0
    while any(bits != everywhere for bits in within):
        size += 1
        come: list[int] = []
        for n, known in enumerate(within):
            new = 0
            if known == everywhere:  # then so is whatever comes to it by steps of 0
                come.append(new)
                continue
            for by, end in links[n]:
                new |= exact[end].get(size - by, 0)
            for end in _bits(direct[n].get(size, 0) & ~known & ~new):
                if through >> end & 1:
                    links[n].append((size, end))
                    new |= free[end]
                else:
                    new |= 1 << end
            come.append(new)
        for n, known in enumerate(within):
            new = come[n]
            for k in onward[n]:
                new |= come[k]
            if new := new & ~known:
                exact[n][size] = new
                within[n] |= new
    return [_distances(buckets, count) for buckets in exact]


def _distances(buckets: Mapping[int, int], count: int) -> "array[int]":
    row = array("H", bytes(2 * count))
    for distance, bits in buckets.items():
        for n in _bits(bits):
            row[n] = distance
    return row


def step_rows(
    found: Sequence[Dials], parts: Sequence[tuple[int, int]]
) -> tuple[list["array[int]"], list["array[int]"]]:
    """Two rows of unsigned 16-bit numbers for each profile: steps to every other, and shortest sums of steps.

    A sum never passes through preparation, which only opens a chain. `parts` are the lift's spans.
    """
    sizes = _sizes(found, parts)
    ones = [1 << n for n in range(len(found))]
    through = sum(one for one, dials in zip(ones, found, strict=True) if dials.stage is not Stage.PREPARE)
    return sizes, _shortest([_by_size(row, ones) for row in sizes], through)
