"""Which bar, bench or wall: numbered places, kept by those who stand there as long as may be."""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.class_.build import Matter
from kb.ask.class_.doing import PARTNER
from kb.ask.class_.rotation import Plan
from kb.kit import Gear
from kb.terms import ItemId

__all__ = ["PLACES", "Place", "places_of", "station_of"]

PLACES = tuple(map(ItemId, ("bar", "rack", "blocks", "box", "bench", "chair", "wall")))
"""What makes a station, the first of a drill's that is there naming it; whatever else is done on the open floor."""


class Place(NamedTuple):
    """A thing that makes a station and its number; 0 where it isn't counted."""

    item: ItemId
    number: int


def places_of(matter: Matter, plan: Plan) -> dict[tuple[int, int], tuple[Place, ...]]:
    """For each task of each unit, the numbered things it is done at.

    Taken in order of time, each unit keeps its numbers while they are free, else the lowest. There are always
    enough, as no more are out at once than there are.
    """
    rotation = matter.rotation
    tasks = sorted((plan.starts[u][k], u, k) for u, unit in enumerate(rotation.units) for k in range(len(unit.tasks)))
    free_at: dict[ItemId, list[int]] = {}
    last: dict[tuple[int, ItemId], list[int]] = {}
    found = {}
    for start, u, k in tasks:
        end = plan.end(rotation, u, k)
        places: list[Place] = []
        for item, count in plan.mode(rotation, u, k).gear:
            if item not in PLACES:
                continue
            free = free_at.setdefault(item, [0] * matter.asked.have[item])
            mine = last.get((u, item), [])
            theirs = {n for (v, each), numbers in last.items() if v != u and each == item for n in numbers}
            ready = [n for n, since in enumerate(free) if since <= start]
            chosen = sorted(ready, key=lambda n: (n not in mine, n in theirs, n))[:count]  # used at once
            for n in chosen:
                free[n] = end
            last[u, item] = chosen
            if not any(
                item in dict(plan.mode(rotation, u, n).gear) for n in range(k + 1, len(rotation.units[u].tasks))
            ):
                del last[u, item]  # it won't be needed again, and is anyone's
            places += [Place(item, n + 1) for n in sorted(chosen)]
        found[u, k] = tuple(places)
    return found


def station_of(places: Sequence[Place], gear: Sequence[Gear], n: int) -> str:
    """Where the n-th of a unit stands: at their own thing, at the one they share, or on the floor."""
    using = {each.using for each in gear if each.using != PARTNER}
    for item in PLACES:
        if item in using:
            numbers = [place.number for place in places if place.item == item]
            return f"{item} {numbers[min(n, len(numbers) - 1)]}" if numbers else str(item)
    return "floor"
