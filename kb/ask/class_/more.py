"""Who has ended well before the class: their last drill again, in rounds, with gear that is free until then.

A pass over a finished plan, which stays as it is: nobody's gear, minute or coach is taken for it.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from kb.ask.class_.build import Matter
from kb.ask.class_.doing import PARTNER, Doing, counted
from kb.ask.class_.ended import WORTH_S, Ended, ended
from kb.ask.class_.handing_on import handed_on, hands_on
from kb.ask.class_.rotation import TICK_S, Mode, Plan, ticks
from kb.ask.class_.strength import Strong
from kb.dose import round_seconds
from kb.kit import Gear
from kb.terms import Dose, ItemId, Load, Stage

__all__ = ["Again", "Form", "again_of", "every_s"]


class Form(NamedTuple):
    """A way of doing a drill again: who, how heavy, with what of which so much is counted."""

    lifters: tuple[int, ...]
    load: Load
    gear: tuple[Gear, ...]
    items: tuple[tuple[ItemId, int], ...]


class Again(NamedTuple):
    """A drill in rounds from tick `start` to `end`, by one lifter or by two in turns at one set of gear.

    The second begins `turns` ticks after the first. `member` is which of the unit the (first) lifter is.
    """

    unit: int
    member: int
    doing: Doing
    form: Form
    start: int
    end: int
    turns: int


def again_of(matter: Matter, plan: Plan, strong: Sequence[Strong] = ()) -> tuple[Again, ...]:
    """What there is more for whom, those first who have ended first, `strong` with it; each once at most.

    The drill is the last of the list of which the gear, or a stick in a bar's place, is free almost from their end to
    the class's, else the one of which it is free longest; no preparation, and none that needs a partner. For whom
    nothing is free takes turns with somebody who does alone what both had on their lists. Who hands a bar on goes on
    until then.
    """
    last = matter.rotation.last
    hall = _with(ended(matter, plan), matter, strong)
    ends = hall.ends
    found: list[Again] = []
    done: set[int] = set()
    handing = hands_on(matter)
    handed = handed_on(matter, ends) if handing else 0
    for n in sorted(ends, key=lambda each: (ends[each], each)):
        if n in done or last - ends[n] < ticks(WORTH_S):
            continue
        chosen = _chosen(list(_possible(_Hall(matter, plan, hall, done), n)), ends[n], last)
        if chosen is not None and n in handing:
            chosen = _until(chosen, handed)
        if chosen is None or (n not in handing and chosen.start - ends[n] >= ticks(WORTH_S)):
            continue  # rather in turns with somebody at once than alone later
        hall.take(chosen.form.items, chosen.start, chosen.end)
        done |= set(chosen.form.lifters)
        found.append(chosen)
    for n in sorted(set(ends) - done - handing.keys(), key=lambda each: (ends[each], each)):
        if n in done or last - ends[n] < ticks(WORTH_S) or _join(matter, found, n, ends[n]):
            continue
        chosen = _chosen(list(_possible(_Hall(matter, plan, hall, done), n)), ends[n], last)
        if chosen is not None:
            hall.take(chosen.form.items, chosen.start, chosen.end)
            done |= set(chosen.form.lifters)
            found.append(chosen)
    return tuple(found)


def _with(hall: Ended, matter: Matter, strong: Sequence[Strong]) -> Ended:
    """What strengthens done too: its gear is out, and those who do it end later."""
    for each in strong:
        hall.take(each.mode.gear, each.start, each.end)
        for at, n in enumerate(matter.rotation.units[each.unit].lifters):
            hall.ends[n] = each.start + (each.mode.turns if at else 0) + each.mode.ticks
    return hall


def _until(again: Again, end: int) -> Again | None:
    """The same no longer than to a tick; None where nothing worth it is left."""
    if again.end <= end:
        return again
    return again._replace(end=end) if end - again.start >= ticks(WORTH_S) else None


def _join(matter: Matter, found: list[Again], n: int, since: int) -> bool:
    """Let a lifter for whom nothing is free take turns with one who does alone what both had on their lists, if any."""
    doings = matter.doings[next(u for u, unit in enumerate(matter.rotation.units) if n in unit.lifters)]
    most = {doing.drill.id: doing.load for doing in doings}
    for at, each in enumerate(found):
        start = max(since, each.start + ticks(round_seconds(each.doing.drill.dose)))
        able = most.get(each.doing.drill.id, Load.NONE) >= each.form.load
        if able and len(each.form.lifters) == 1 and each.end - start >= ticks(WORTH_S):
            both = each.form._replace(lifters=(*each.form.lifters, n))
            found[at] = each._replace(form=both, turns=start - each.start)
            return True
    return False


def _chosen(possible: list[Again], since: int, last: int) -> Again | None:
    for each in possible:
        if max(each.start - since, last - each.end) < ticks(WORTH_S):
            return each
    return max(possible, key=lambda each: each.end - each.start, default=None)


def every_s(dose: Dose, people: int) -> int:
    """From one round's start to the next, s: as the dose says; where it says no rest, as long again as the round.

    Two in turns rest while the other works, if the dose doesn't say longer.

    >>> every_s(Dose(rounds=4, reps=2, rest_s=60), 1), every_s(Dose(rounds=4, reps=5, rest_s=5), 2)
    (68, 40)
    """
    one = round_seconds(dose)
    alone = dose.every_s or one + (dose.rest_s or one)
    return max(alone, people * one)


class _Hall(NamedTuple):
    """A plan and what goes on after it: when each has ended, what is out, who has more to do."""

    matter: Matter
    plan: Plan
    after: Ended
    done: set[int]


def _possible(hall: _Hall, n: int) -> Iterator[Again]:
    """A lifter's drills again, the last first, each for the longest stretch in which its gear is free."""
    matter = hall.matter
    u = next(u for u, unit in enumerate(matter.rotation.units) if n in unit.lifters)
    unit = matter.rotation.units[u]
    for k in range(len(unit.tasks) - 1, -1, -1):
        doing, mode = matter.doings[u][k], hall.plan.mode(matter.rotation, u, k)
        if PARTNER in doing.drill.equipment or doing.drill.stage is Stage.PREPARE:
            continue
        for form in _forms(hall, doing, mode, n, unit.lifters):
            start, end = _free(hall, form.items, max(hall.after.ends[each] for each in form.lifters))
            turns = ticks(round_seconds(doing.drill.dose)) if len(form.lifters) > 1 else 0
            rounds = (end - start - turns) * TICK_S // every_s(doing.drill.dose, len(form.lifters))
            if end - start >= ticks(WORTH_S) and rounds >= 1:
                yield Again(u, unit.lifters.index(form.lifters[0]), doing, form, start, end, turns)


def _forms(hall: _Hall, doing: Doing, mode: Mode, n: int, members: tuple[int, ...]) -> Iterator[Form]:
    """As it was done, two in turns as two if neither has anything yet; and by one with a stick, where that is possible.

    The day's weight isn't repeated: there it is a light bar.
    """
    by_stick = doing.by_stick
    who = members if mode.turns and not hall.done & set(members) else (n,)
    items = tuple((item, 1 if len(who) < len(members) else count) for item, count in mode.gear)
    if mode.light and doing.light_gear is not None:
        yield Form(who, Load.STICK, doing.light_gear, items)
    else:
        yield Form(who, min(doing.load, Load.LIGHT), doing.gear, items)
        if by_stick is not None:
            items = tuple((item, 1) for item in counted(by_stick, hall.matter.asked.have))
            yield Form((n,), Load.STICK, by_stick, items)


def _free(hall: _Hall, items: tuple[tuple[ItemId, int], ...], since: int) -> tuple[int, int]:
    """The longest stretch from a tick on, the first of these, in which so many of each thing are free."""
    have = hall.matter.asked.have
    longest, start = (since, since), since
    for tick in range(since, hall.matter.rotation.last):
        if any(hall.after.out[item][tick] + count > have[item] for item, count in items):
            start = tick + 1
        elif tick + 1 - start > longest[1] - longest[0]:
            longest = (start, tick + 1)
    return longest
