"""Who holds the lift and has no day's weight works up to one: the bar goes up a little each round, while all is seen.

What goes on it isn't known beforehand, so that no kilograms are planned: only the minutes, the bar, and a coach's look.
"""

from collections.abc import Iterator, Sequence

from kb.ask.class_.build import LOOK_S, Matter
from kb.ask.class_.doing import Doing, counted, gear_of
from kb.ask.class_.people import Lifter
from kb.ask.class_.rotation import Mode, Plan, ticks
from kb.ask.class_.turns import by_turns
from kb.ask.shelf import Shelf
from kb.dose import round_seconds
from kb.kit import BARS, RACK, Gear, loads
from kb.loading import LOADING_S
from kb.terms import DrillId, ItemId, Load

__all__ = ["EVERY_S", "MOST_ROUNDS", "coaching", "lift_up", "look_in", "taken_from_rack", "ways_up"]

JERK = DrillId("full-jerk")
"""What may begin at a rack."""

EVERY_S = 120
"""From one round to the next, s, or as long as it takes all who share the bar. Common practice, no source."""

MOST_ROUNDS, LEAST_ROUNDS = 8, 4
"""Rounds on the way up. Common practice, no source."""


def lift_up(lifter: Lifter, shelf: Shelf, have: frozenset[ItemId]) -> Doing | None:
    """The lift at working weight, for who holds it, has no day's weight, and isn't to stay light.

    None where it can't be: it takes a bar, and what a working weight takes.
    """
    drill = shelf.drills[shelf.lift.drill]
    fitted = shelf.fits(have).get(drill.id)
    if lifter.light or lifter.weight_kg is not None or drill.id not in lifter.holds or fitted is None:
        return None
    gear = gear_of(drill, Load.WORKING, have, shelf)
    able = loads(drill, fitted, Load.WORKING)[-1] is Load.WORKING and any(each.using in BARS for each in gear)
    return Doing(drill, Load.WORKING, True, gear) if able else None


def taken_from_rack(doing: Doing) -> Doing:
    """The same, with a rack to take the bar from."""
    return doing._replace(gear=(*doing.gear, Gear(RACK, RACK)))


def ways_up(
    matter: Matter, lifters: Sequence[int], doing: Doing, room: int, *, must: bool
) -> Iterator[tuple[Doing, Mode, int, int]]:
    """How so many work up in `room` ticks: as what, the mode, how many rounds, how many ticks from one to the next.

    The most rounds first; a jerk from a rack before one that is cleaned, and only so where they `must`. Each has their
    own bar where there is one for all who come, or theirs are half of the bars at most; else, or where what there is
    doesn't do, they take turns at one.
    """
    people, have, dose = len(lifters), matter.asked.have, doing.drill.dose
    enough = min(len(matter.owns), 2 * people)
    scarce = any(have.get(item, 0) < enough for item in counted(doing.gear, have) if item in BARS)
    racked = [taken_from_rack(doing)] if must or (doing.drill.id == JERK and have.get(RACK)) else []
    found = []
    for way in racked if must else (*racked, doing):
        for at_once in (people,) if scarce or people == 1 else (1, people):
            every = ticks(max(EVERY_S, LOADING_S + at_once * round_seconds(dose)))
            later = tuple(ticks(by_turns(dose, n)) if at_once > 1 and n else 0 for n in range(people))
            places = (0,) * people if at_once > 1 else ()
            gear = tuple((item, people // at_once) for item in counted(way.gear, have))
            for rounds in range(min(MOST_ROUNDS, room // every), LEAST_ROUNDS - 1, -1):
                found.append((way, Mode(rounds * every - max(later), gear, places, later), rounds, every))
    yield from sorted(found, key=lambda each: -each[2])


def coaching(matter: Matter, plan: Plan, looks: Sequence[int] = ()) -> list[int]:
    """How many coaches are busy at each tick: showing, looking on, and with those looks besides."""
    rotation = matter.rotation
    spans = [(start, start + each.ticks) for each, start in zip(rotation.showings, plan.shown, strict=True)]
    spans += [(begin, end) for _, _, begin, end in plan.looks(rotation)]
    spans += [(look, look + ticks(LOOK_S)) for look in looks]
    return [sum(begin <= tick < end for begin, end in spans) for tick in range(rotation.last)]


def look_in(busy: Sequence[int], coaches: int, since: int, until: int) -> int | None:
    """The first tick from `since` on at which a coach can look on for `LOOK_S` before `until`; None where none can.

    >>> look_in([1, 1, 0, 1, 0, 0, 1], 1, 0, 7), look_in([1, 1, 0, 1], 1, 0, 4)
    (4, None)
    """
    look = ticks(LOOK_S)
    free = (at for at in range(since, until - look + 1) if all(busy[n] < coaches for n in range(at, at + look)))
    return next(free, None)
