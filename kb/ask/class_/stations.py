"""Which bar, bench or wall: numbered places, kept by those who stand there as long as may be."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from kb.ask.class_.bar_turns import BarTurns
from kb.ask.class_.build import Matter
from kb.ask.class_.doing import PARTNER
from kb.ask.class_.more import Again
from kb.ask.class_.rotation import Plan
from kb.ask.class_.strength import MOST, Strong
from kb.kit import Gear
from kb.terms import ItemId

__all__ = ["PLACES", "Place", "again_at", "places_of", "station_of", "strong_at", "turn_at"]

PLACES = tuple(map(ItemId, ("bar", "training-bar", "rack", "blocks", "box", "bench", "chair", "wall")))
"""What makes a station, the first of a drill's that is there naming it; whatever else is done on the open floor."""


class Place(NamedTuple):
    """A thing that makes a station and its number; 0 where it isn't counted."""

    item: ItemId
    number: int


class _Claim(NamedTuple):
    """A stretch in which a unit, or a member of it, has things: a task, or what there is more after the last."""

    start: int
    unit: int
    at: int
    end: int
    gear: tuple[tuple[ItemId, int], ...]
    member: int | None = None


def strong_at(matter: Matter, each: Strong) -> tuple[int, int]:
    """Where `places_of` has what strengthens: it counts on from the unit's tasks."""
    return each.unit, len(matter.rotation.units[each.unit].tasks) + each.member * (1 + MOST) + each.k


def again_at(matter: Matter, each: Again) -> tuple[int, int]:
    """Where `places_of` has what there is more: it counts on from what strengthens."""
    unit = matter.rotation.units[each.unit]
    return each.unit, len(unit.tasks) + unit.size * (1 + MOST + each.n) + each.member


def turn_at(matter: Matter, n: int) -> tuple[int, int]:
    """Where `places_of` has the n-th of the bars that go round: after all units."""
    return len(matter.rotation.units) + n, 0


def places_of(
    matter: Matter,
    plan: Plan,
    again: Sequence[Again] = (),
    strong: Sequence[Strong] = (),
    bars: BarTurns | None = None,
) -> dict[tuple[int, int], tuple[Place, ...]]:
    """For each task of each unit, and what comes after (`strong_at` and its like), the numbered things it is done at.

    Taken in order of time, each unit keeps its numbers while they are free, else the lowest. There are always
    enough, as no more are out at once than there are.
    """
    free_at: dict[ItemId, list[int]] = {}
    last: dict[tuple[int, ItemId], list[int]] = {}
    found = {}
    claims = sorted([*_claims(matter, plan, again, strong), *_bar_claims(matter, bars)])
    for claim in claims:
        start, u = claim.start, claim.unit
        places: list[Place] = []
        for item, count in claim.gear:
            if item not in PLACES:
                continue
            free = free_at.setdefault(item, [0] * matter.asked.have[item])
            mine = last.get((u, item), [])
            if claim.member is not None and count == 1:
                mine = mine[claim.member : claim.member + 1] or mine
            theirs = {n for (v, each), numbers in last.items() if v != u and each == item for n in numbers}
            ready = [n for n, since in enumerate(free) if since <= start]
            chosen = sorted(ready, key=lambda n: (n not in mine, n in theirs, n))[:count]  # used at once
            for n in chosen:
                free[n] = claim.end
            if claim.member is None:
                last[u, item] = sorted(chosen)
                if not any(item in dict(other.gear) for other in claims if other.unit == u and other.at > claim.at):
                    del last[u, item]  # it won't be needed again, and is anyone's
            places += [Place(item, n + 1) for n in sorted(chosen)]
        found[u, claim.at] = tuple(places)
    return found


def _claims(matter: Matter, plan: Plan, again: Sequence[Again], strong: Sequence[Strong]) -> Iterator[_Claim]:
    rotation = matter.rotation
    for u, unit in enumerate(rotation.units):
        for k in range(len(unit.tasks)):
            yield _Claim(plan.starts[u][k], u, k, plan.end(rotation, u, k), plan.mode(rotation, u, k).gear)
    for step in strong:
        yield _Claim(step.start, *strong_at(matter, step), step.end, step.mode.gear)
    for each in again:
        yield _Claim(each.start, *again_at(matter, each), each.end, each.form.items, each.member)


def _bar_claims(matter: Matter, bars: BarTurns | None) -> Iterator[_Claim]:
    for n in range(bars.many if bars else 0):
        if bars:
            yield _Claim(bars.start, *turn_at(matter, n), bars.end, ((bars.item, 1),))


def station_of(places: Sequence[Place], gear: Sequence[Gear], n: int) -> str:
    """Where the n-th of a unit stands: at their own thing, at the one they share, or on the floor."""
    using = {each.using for each in gear if each.using != PARTNER}
    for item in PLACES:
        if item in using:
            numbers = [place.number for place in places if place.item == item]
            return f"{item} {numbers[min(n, len(numbers) - 1)]}" if numbers else str(item)
    return "floor"
