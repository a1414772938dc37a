"""Who has ended well before the class: their last drill again, in rounds, with gear that is free until then.

A pass over a finished plan, which stays as it is: nobody's gear, minute or coach is taken for it.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from kb.ask.class_.build import Matter
from kb.ask.class_.doing import PARTNER, Doing, counted
from kb.ask.class_.ended import WORTH_S, Ended, ended
from kb.ask.class_.handing_on import BARS, handed_on, hands_on
from kb.ask.class_.rotation import TICK_S, Mode, Plan, ticks
from kb.ask.class_.strength import Strong
from kb.ask.class_.turns import MOST_AT_A_BAR, by_turns, may_share
from kb.dose import round_seconds
from kb.kit import Gear
from kb.terms import Dose, DrillId, ItemId, Load, Stage

__all__ = ["Again", "Form", "again_of", "every_s", "most_of"]


class Form(NamedTuple):
    """A way of doing a drill again: who, how heavy, with what of which so much is counted."""

    lifters: tuple[int, ...]
    load: Load
    gear: tuple[Gear, ...]
    items: tuple[tuple[ItemId, int], ...]


class Again(NamedTuple):
    """A drill in rounds from tick `start` to `end`, by one lifter or by up to four in turns at one set of gear.

    Each begins so many ticks `later`. `member` is which of the unit the (first) lifter is.
    """

    unit: int
    member: int
    doing: Doing
    form: Form
    start: int
    end: int
    later: tuple[int, ...]


def again_of(matter: Matter, plan: Plan, strong: Sequence[Strong] = ()) -> tuple[Again, ...]:
    """What there is more for whom, those first who have ended first, `strong` with it; each once at most.

    The drill is the last of the list of which the gear is free almost from their end to the class's, else the one of
    which it is free longest; no preparation, and none that needs a partner. Rather than a stick in a bar's place it is
    a turn at a bar that others have, up to four. For whom nothing is free takes turns with somebody who does what both
    had on their lists. Who hands a bar on goes on until then.
    """
    last = matter.rotation.last
    after = _with(ended(matter, plan), strong)
    ends = after.ends
    found: list[Again] = []
    hall = _Hall(matter, plan, after, set())
    handing = hands_on(matter)
    handed = handed_on(matter, ends) if handing else 0
    waiting = [n for n in sorted(ends, key=lambda each: (ends[each], each)) if last - ends[n] >= ticks(WORTH_S)]
    for n in waiting:
        if n in hall.done:
            continue
        chosen = _chosen(list(_possible(hall, n)), ends[n], last)
        if chosen is not None and n in handing:
            chosen = _until(chosen, handed)
        if chosen is None or (n not in handing and chosen.start - ends[n] >= ticks(WORTH_S)):
            continue  # rather in turns with somebody at once than alone later
        if not _bars(chosen) and _join(hall, found, n, at_bar=True):
            continue
        _take(hall, found, chosen)
    for n in waiting:
        if n in hall.done or n in handing or _join(hall, found, n, at_bar=False):
            continue
        chosen = _chosen(list(_possible(hall, n)), ends[n], last)
        if chosen is not None:
            _take(hall, found, chosen)
    return tuple(found)


def _take(hall: "_Hall", found: list[Again], chosen: Again) -> None:
    hall.after.take(chosen.form.items, chosen.start, chosen.end)
    hall.done.update(chosen.form.lifters)
    found.append(chosen)


def _with(hall: Ended, strong: Sequence[Strong]) -> Ended:
    """What strengthens done too: its gear is out, and those who do it end later."""
    for each in strong:
        hall.take(each.mode.gear, each.start, each.end)
        for at, n in enumerate(each.lifters):
            hall.ends[n] = each.start + each.mode.begins(at) + each.mode.takes(at)
    return hall


def _until(again: Again, end: int) -> Again | None:
    """The same no longer than to a tick; None where nothing worth it is left."""
    if again.end <= end:
        return again
    return again._replace(end=end) if end - again.start >= ticks(WORTH_S) else None


def _join(hall: "_Hall", found: list[Again], n: int, *, at_bar: bool) -> bool:
    """Let a lifter take turns with up to three who do what both had on their lists, if any; only `at_bar` where asked.

    There nobody rests longer for it than the dose says.
    """
    most, since = most_of(hall.matter, n), hall.after.ends[n]
    for at, each in enumerate(found):
        dose, count = each.doing.drill.dose, len(each.form.lifters)
        start = max(since, each.start + ticks(by_turns(dose, count)))
        able = most.get(each.doing.drill.id, Load.NONE) >= each.form.load
        free = count < (MOST_AT_A_BAR if _bars(each) else 2) and each.end - start >= ticks(WORTH_S)
        worth = not at_bar or (_bars(each) and may_share(dose, count + 1, check=False))
        if able and free and worth:
            both = each.form._replace(lifters=(*each.form.lifters, n))
            found[at] = each._replace(form=both, later=(*each.later, start - each.start))
            hall.done.add(n)
            return True
    return False


def _bars(again: Again) -> bool:
    return any(item in BARS for item, _ in again.form.items)


def most_of(matter: Matter, n: int) -> dict[DrillId, Load]:
    """How heavy a lifter may do each drill of their list again: as they did, and what they hold at a light bar."""
    found: dict[DrillId, Load] = {}
    for doing in matter.doings[next(u for u, unit in enumerate(matter.rotation.units) if n in unit.lifters)]:
        held = matter.owns[n].by_themselves and doing.by_bar
        found[doing.drill.id] = max(doing.load, Load.LIGHT) if held else doing.load
    return found


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
            dose = doing.drill.dose
            later = tuple(ticks(by_turns(dose, at)) for at in range(len(form.lifters)))
            rounds = (end - start - later[-1]) * TICK_S // every_s(dose, len(form.lifters))
            if end - start >= ticks(WORTH_S) and rounds >= 1:
                yield Again(u, unit.lifters.index(form.lifters[0]), doing, form, start, end, later)


def _forms(hall: _Hall, doing: Doing, mode: Mode, n: int, members: tuple[int, ...]) -> Iterator[Form]:
    """As it was done, those in turns together who end together if none has anything yet; and by one with a stick.

    The day's weight isn't repeated: there it is a light bar.
    """
    at, ends = members.index(n), hall.after.ends
    same = [members[m] for m in mode.with_whom(at) if abs(ends[members[m]] - ends[n]) < ticks(WORTH_S)]
    who = tuple(sorted({n, *same}, key=members.index)) if not hall.done & {n, *same} else (n,)
    sets = len(set(mode.places)) if mode.places else len(members)
    items = tuple((item, count // sets) for item, count in mode.gear)
    have = hall.matter.asked.have
    if mode.light and doing.light_gear is not None:
        yield Form(who, Load.STICK, doing.light_gear, items)
        return
    for gear in doing.by_bar if hall.matter.owns[n].by_themselves else ():
        yield Form(who, Load.LIGHT, gear, tuple((item, 1) for item in counted(gear, have)))
    yield Form(who, min(doing.load, Load.LIGHT), doing.gear, items)
    if doing.by_stick is not None:
        yield Form((n,), Load.STICK, doing.by_stick, tuple((item, 1) for item in counted(doing.by_stick, have)))


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
