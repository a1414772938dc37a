"""Bars that nobody uses near the end of a class go round: each who has only had a stick does one round, a coach there.

A pass over a finished plan and what comes after it: nothing that anyone needs is taken.
"""

from collections.abc import Collection, Sequence
from typing import NamedTuple

from kb.ask.class_.build import Matter
from kb.ask.class_.doing import Doing, counted
from kb.ask.class_.ended import WORTH_S, Ended, ended
from kb.ask.class_.handing_on import bar_in, first_at_a_bar, handed_on, hands_on, last_part
from kb.ask.class_.more import Again
from kb.ask.class_.rotation import TOGETHER, Plan, ticks
from kb.ask.class_.strength import Strong
from kb.ask.class_.working_up import coaching
from kb.dose import check_seconds
from kb.kit import BARS, Gear
from kb.terms import ItemId

__all__ = ["BarTurn", "BarTurns", "bar_turns_of", "taken_back"]


class BarTurn(NamedTuple):
    """A lifter's one round with an empty bar, from tick `start` to `end`, at the `n`-th of the bars that go round."""

    lifter: int
    doing: Doing
    gear: tuple[Gear, ...]
    items: tuple[tuple[ItemId, int], ...]
    n: int
    start: int
    end: int


class BarTurns(NamedTuple):
    """Which bars go round, and whose turn it is when. A coach stays with them all the while."""

    item: ItemId
    turns: tuple[BarTurn, ...] = ()

    @property
    def start(self) -> int:
        """When the first turn begins, a tick."""
        return min(turn.start for turn in self.turns)

    @property
    def end(self) -> int:
        """When the last one ends, a tick."""
        return max(turn.end for turn in self.turns)

    @property
    def many(self) -> int:
        """How many bars go round."""
        return len({turn.n for turn in self.turns})


def bar_turns_of(matter: Matter, plan: Plan, strong: Sequence[Strong], again: Sequence[Again]) -> BarTurns | None:
    """The bars that go round, as few as give everyone a turn; None where none is free, or nobody is ready for one.

    Not while four or more who learn are still to end, as a coach calls what they do. Who learns comes before who
    practises. Where the time doesn't hold all, as many as it does.
    """
    ready = first_at_a_bar(matter, plan)
    if not ready:
        return None
    hall = _all_out(matter, plan, strong, again)
    last, handed = matter.rotation.last, hands_on(matter)
    since = handed_on(matter, hall.ends) if handed else last_part(matter)
    order = sorted(ready, key=lambda n: (matter.owns[n].by_themselves, hall.ends[n], n))
    found: list[BarTurns] = []
    later = [each.end for each in strong if each.rounds and each.end > since]
    for start in _starts(matter, hall, ready, max(since, 0), later):
        free_from = _coach_from(matter, plan, strong, start)
        if last - free_from < ticks(WORTH_S):
            continue
        able = [n for n in order if hall.ends[n] <= free_from or matter.owns[n].by_themselves]
        for item in BARS:
            free = matter.asked.have.get(item, 0) - max(hall.out.get(item, [0])[free_from:], default=0)
            ways = (_dealt(matter, hall, ready, able, item, many, free_from) for many in range(1, free + 1))
            found.append(BarTurns(item, max(ways, key=len, default=())))
    best = max(found, key=lambda each: len(each.turns), default=None)
    return best if best is not None and best.turns else None


def taken_back(
    matter: Matter, plan: Plan, strong: Sequence[Strong], again: Sequence[Again], bars: BarTurns | None
) -> tuple[Again, ...]:
    """What there is more, where bars were laid down for others to the end again for whom no other needs theirs."""
    hall, handed, last = _all_out(matter, plan, strong, again), hands_on(matter), matter.rotation.last
    if bars is not None:
        # each of them all the while, as nobody else comes in between
        hall.take(((bars.item, bars.many),), bars.start, bars.end)
    found = []
    for each in again:
        theirs = bool(handed.keys() & set(each.form.lifters)) and each.end < last
        if theirs and hall.free(matter, each.form.items, each.end, last):
            hall.take(each.form.items, each.end, last)
            found.append(each._replace(end=last))
        else:
            found.append(each)
    return tuple(found)


def _starts(matter: Matter, hall: Ended, ready: Collection[int], since: int, later: Collection[int]) -> list[int]:
    """When it may begin, ticks, the latest first: as learners end, once too few are left for a drill to be called.

    Or `later`, when a bar comes free.
    """
    ends = [hall.ends[n] for n in ready if not matter.owns[n].by_themselves]
    starts = ({max(since, end) for end in ends} or {since}) | set(later)
    return [each for each in sorted(starts, reverse=True) if sum(end > each for end in ends) < TOGETHER]


def _all_out(matter: Matter, plan: Plan, strong: Sequence[Strong], again: Sequence[Again]) -> Ended:
    hall = ended(matter, plan)
    for step in strong:
        hall.take(step.mode.gear, step.start, step.end)
    for each in again:
        hall.take(each.form.items, each.start, each.end)
    return hall


def _coach_from(matter: Matter, plan: Plan, strong: Sequence[Strong], since: int) -> int:
    """From when on, tick `since` at the earliest, a coach has nothing else to do up to the end."""
    looks = [each.look for each in strong if each.look is not None]
    busy = coaching(matter, plan, looks)
    full = (tick + 1 for tick, count in enumerate(busy) if count >= matter.rotation.coaches)
    return max([since, *full])


def _dealt(
    matter: Matter,
    hall: Ended,
    ready: dict[int, Doing],
    order: Sequence[int],
    item: ItemId,
    many: int,
    since: int,
) -> tuple[BarTurn, ...]:
    """Everyone's turn with so many bars, one batch after the other; as many as the time and the gear hold."""
    found: list[BarTurn] = []
    now = since
    able = [n for n in order if bar_in(ready[n], item)]
    for at in range(0, len(able), many):
        batch = able[at : at + many]
        start = max([now, *(hall.ends[n] for n in batch)])
        now = start + max(ticks(check_seconds(ready[n].drill)) for n in batch)
        turns = [_turn(matter, ready[n], n, item, place, start) for place, n in enumerate(batch)]
        together: dict[ItemId, int] = {}
        for turn in turns:
            for thing, count in turn.items:
                together[thing] = together.get(thing, 0) + count
        if now > matter.rotation.last or not hall.free(matter, tuple(together.items()), start, now):
            break
        found += turns
    return tuple(found)


def _turn(matter: Matter, doing: Doing, n: int, item: ItemId, place: int, start: int) -> BarTurn:
    gear = bar_in(doing, item)
    items = tuple((each, 1) for each in counted(gear, matter.asked.have))
    return BarTurn(n, doing, gear, items, place, start, start + ticks(check_seconds(doing.drill)))
