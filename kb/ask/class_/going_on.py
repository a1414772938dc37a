"""What there is more for those who have ended early, in minutes and names."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from kb.ask.class_.build import Matter
from kb.ask.class_.changing import Other, legs, others_of
from kb.ask.class_.doing import PARTNER
from kb.ask.class_.more import Again, every_s
from kb.ask.class_.rotation import TICK_S, Plan
from kb.ask.class_.stations import Place, again_at, station_of
from kb.terms import Drill, ItemId, Load

__all__ = ["ByTurns", "More", "more_of"]


class ByTurns(NamedTuple):
    """A drill that is done by turns with another: so many rounds in all, one every `every_s`."""

    drill: Drill
    load: Load
    rounds: int
    every_s: int


class More(NamedTuple):
    """What a lifter who has ended early does until near the end: so many rounds, one every `every_s`, of a drill again.

    `gear` is empty for all but the first at one set, and `shares` names all who share it, as in a slot. `others` come
    by turns with it where it goes on for long, some minutes each; the rounds are then those of its own minutes.
    """

    start_s: int
    end_s: int
    drill: Drill
    load: Load
    rounds: int
    every_s: int
    station: str
    gear: tuple[ItemId, ...]
    shares: tuple[str, ...]
    others: tuple[ByTurns, ...] = ()

    @property
    def legs(self) -> tuple[tuple[int, int, Drill], ...]:
        """From when to when, s, which drill is done."""
        drills = (self.drill, *(each.drill for each in self.others))
        return tuple((start, end, drills[n]) for start, end, n in legs(self.start_s, self.end_s, len(drills)))


def more_of(
    matter: Matter, plan: Plan, places: Mapping[tuple[int, int], Sequence[Place]], again: Sequence[Again]
) -> dict[int, list[More]]:
    """What there is more for each lifter (by number), in order; `places` counts on from the units' tasks."""
    found: dict[int, list[More]] = {n: [] for n in range(len(matter.owns))}
    for each in again:
        others = others_of(matter, plan, each)
        for n in each.form.lifters:
            found[n].append(_more(matter, places, each, others, n))
    return {n: sorted(mine, key=lambda more: more.start_s) for n, mine in found.items()}


def _more(
    matter: Matter,
    places: Mapping[tuple[int, int], Sequence[Place]],
    again: Again,
    others: Sequence[Other],
    n: int,
) -> More:
    form, warm_up = again.form, matter.asked.warm_up_s
    at, people = form.lifters.index(n), len(form.lifters)
    start_s, end_s = (warm_up + tick * TICK_S for tick in (again.start + again.later[at], again.end))
    spans = list(legs(start_s, end_s, 1 + len(others)))

    def rounds(which: int, every: int) -> int:
        return sum((end - start) // every for start, end, drill in spans if drill == which)

    every = every_s(again.doing.drill.dose, people)
    by_turns = []
    for which, other in enumerate(others, 1):
        its = every_s(other.doing.drill.dose, people)
        by_turns.append(ByTurns(other.doing.drill, other.load, rounds(which, its), its))
    return More(
        start_s,
        end_s,
        again.doing.drill,
        form.load,
        rounds(0, every),
        every,
        station_of(places[again_at(matter, again)], form.gear, 0),
        () if at else tuple(dict.fromkeys(each.using for each in form.gear if each.using != PARTNER)),
        tuple(matter.owns[other].lifter.name for other in form.lifters if other != n),
        tuple(by_turns),
    )
