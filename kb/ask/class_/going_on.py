"""What there is more for those who have ended early, in minutes and names."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from kb.ask.class_.build import Matter
from kb.ask.class_.doing import PARTNER
from kb.ask.class_.more import Again, every_s
from kb.ask.class_.rotation import TICK_S
from kb.ask.class_.stations import Place, again_at, station_of
from kb.terms import Drill, ItemId, Load

__all__ = ["More", "more_of"]


class More(NamedTuple):
    """What a lifter who has ended early does until near the end: so many rounds, one every `every_s`, of a drill again.

    `gear` is empty for the second of two at one set, and `shares` names who shares it, as in a slot.
    """

    start_s: int
    end_s: int
    drill: Drill
    load: Load
    rounds: int
    every_s: int
    station: str
    gear: tuple[ItemId, ...]
    shares: str | None


def more_of(
    matter: Matter, places: Mapping[tuple[int, int], Sequence[Place]], again: Sequence[Again]
) -> dict[int, More]:
    """What there is more for each lifter (by number) for whom there is; `places` counts on from the units' tasks."""
    return {n: _more(matter, places, each, n) for each in again for n in each.form.lifters}


def _more(matter: Matter, places: Mapping[tuple[int, int], Sequence[Place]], again: Again, n: int) -> More:
    form, warm_up = again.form, matter.asked.warm_up_s
    at = form.lifters.index(n)
    start, every = again.start + at * again.turns, every_s(again.doing.drill.dose, len(form.lifters))
    return More(
        warm_up + start * TICK_S,
        warm_up + again.end * TICK_S,
        again.doing.drill,
        form.load,
        (again.end - start) * TICK_S // every,
        every,
        station_of(places[again_at(matter, again)], form.gear, at),
        () if at else tuple(dict.fromkeys(each.using for each in form.gear if each.using != PARTNER)),
        matter.owns[form.lifters[1 - at]].lifter.name if len(form.lifters) > 1 else None,
    )
