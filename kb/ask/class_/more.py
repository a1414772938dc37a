"""Who has ended well before the class: their last drill again, in rounds, with gear that is free until then.

A pass over a finished plan, which stays as it is: nobody's gear, minute or coach is taken for it.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from kb.ask.class_.build import Matter
from kb.ask.class_.doing import PARTNER, Doing, counted
from kb.ask.class_.ended import WORTH_S, Ended, ended
from kb.ask.class_.handing_on import handed_on, hands_on, has_bar
from kb.ask.class_.rotation import TICK_S, Mode, Plan, ticks
from kb.ask.class_.strength import Strong
from kb.ask.class_.turns import MOST_AT_A_BAR, by_turns, may_share
from kb.dose import round_seconds
from kb.kit import BARS, Gear
from kb.terms import Dose, DrillId, ItemId, Load, Stage

__all__ = ["Again", "Form", "again_of", "every_s", "most_of"]


AT_BAR_S = 300
"""For so long at least, s, somebody changes from a stick to a bar, or has one before it is needed. Ours."""


CHANGE_S = 600
"""How long who learns goes on with or without a bar, where both are there, before it is the other's turn, s. Ours."""


class Form(NamedTuple):
    """A way of doing a drill again: who, how heavy, with what of which so much is counted."""

    lifters: tuple[int, ...]
    load: Load
    gear: tuple[Gear, ...]
    items: tuple[tuple[ItemId, int], ...]


class Again(NamedTuple):
    """A drill in rounds from tick `start` to `end`, by one lifter or by up to four in turns at one set of gear.

    Each begins so many ticks `later`. `member` is which of the unit the (first) lifter is, for whom it is the `n`-th.
    """

    unit: int
    member: int
    doing: Doing
    form: Form
    start: int
    end: int
    later: tuple[int, ...]
    n: int = 0

    @property
    def at_bar(self) -> bool:
        """Whether a bar is taken for it."""
        return any(item in BARS for item, _ in self.form.items)


def again_of(matter: Matter, plan: Plan, strong: Sequence[Strong] = ()) -> tuple[Again, ...]:
    """What there is more for whom, those first who have ended first, `strong` with it; one after the other.

    The drill is the last of the list of which the gear is free almost from their end to the class's, else the one of
    which it is free longest; no preparation, and none that needs a partner. Who ended at a bar, or practises, has one
    while one is free, by turns where others have it, up to four; only else a stick, until a bar is free. For whom
    nothing is free takes turns with somebody who does what both had on their lists. Who hands a bar on goes on until
    then.
    """
    last = matter.rotation.last
    after = _with(ended(matter, plan), strong)
    handing = hands_on(matter)
    until = dict.fromkeys(after.ends, last) | dict.fromkeys(handing, handed_on(matter, after.ends) if handing else last)
    hall = _Hall(matter, plan, after, {}, {})
    found: list[Again] = []
    waiting, left = set(after.ends), list[int]()
    while waiting or left:
        n = min(waiting, key=lambda each: (after.ends[each], each)) if waiting else left.pop(0)
        late = n not in waiting
        waiting.discard(n)
        if until[n] - after.ends[n] < ticks(WORTH_S):
            continue
        if _goes_on(hall, found, n, until[n]) or (late and _late(hall, found, n)):
            waiting.add(n)
        elif not late and n not in handing:
            left.append(n)
    return tuple(found)


def _late(hall: "_Hall", found: list[Again], n: int) -> bool:
    """For whom nothing is free: by turns with somebody at once, else alone later; whether there is anything."""
    if _join(hall, found, n, at_bar=False):
        return True
    chosen = _chosen(list(_possible(hall, n)), hall.after.ends[n], hall.matter.rotation.last)
    if chosen is not None:
        _take(hall, found, chosen)
    return chosen is not None


def _goes_on(hall: "_Hall", found: list[Again], n: int, until: int) -> bool:
    """Let a lifter go on at once with something, until tick `until` at the latest; whether there is anything."""
    since, last = hall.after.ends[n], hall.matter.rotation.last
    possible = list(_possible(hall, n))
    other = _other_in_turn(hall, n, possible)
    if other is not None:
        cut = _until(other, until)
        if cut is not None:
            _take(hall, found, cut)
            return True
    bar = _bar_first(possible, since, last) if possible and _wants_bar(hall, n, possible) else None
    chosen = bar or _chosen(possible, since, last)
    if chosen is not None and not chosen.at_bar and _join(hall, found, n, at_bar=True):
        return True
    if chosen is None or chosen.start - since >= ticks(WORTH_S):
        return False  # rather in turns with somebody at once than alone later
    if not chosen.at_bar and _wants_bar(hall, n, possible):
        bars = [each.start for each in possible if each.at_bar and each.end - each.start >= ticks(AT_BAR_S)]
        soon = [start for start in bars if start - chosen.start >= ticks(WORTH_S)]
        chosen = chosen._replace(end=min([chosen.end, *soon]))
    cut = _until(chosen, until)
    if cut is None:
        return False
    _take(hall, found, cut)
    return True


def _other_in_turn(hall: "_Hall", n: int, possible: Sequence[Again]) -> Again | None:
    """For who learns and keeps up at a bar what they hold: that or the rest, whichever wasn't last, for a while."""
    own, since = hall.matter.owns[n], hall.after.ends[n]
    now = [each for each in possible if each.start - since < ticks(WORTH_S)]
    kept = [each for each in now if each.at_bar and each.doing.drill.id in own.lifter.holds]
    rest = [each for each in now if not each.at_bar]
    if own.by_themselves or not kept or not rest:
        return None
    chosen = _chosen(rest if hall.at_bar.get(n, possible[0].at_bar) else kept, since, hall.matter.rotation.last)
    if chosen is None or chosen.end - chosen.start < ticks(AT_BAR_S):
        return None
    end = chosen.start + ticks(CHANGE_S)
    return chosen._replace(end=end) if chosen.end - end >= ticks(AT_BAR_S) else chosen


def _wants_bar(hall: "_Hall", n: int, possible: Sequence[Again]) -> bool:
    """Whether somebody practises what they hold, or has ended their list at a bar."""
    return has_bar(hall.matter.owns[n]) or (bool(possible) and possible[0].at_bar)


def _bar_first(possible: Sequence[Again], since: int, last: int) -> Again | None:
    """At a bar that is free at once: to the end if there is one, else the longest that is worth it."""
    now = [each for each in possible if each.at_bar and each.start - since < ticks(WORTH_S)]
    for each in now:
        if last - each.end < ticks(WORTH_S):
            return each
    best = max(now, key=lambda each: each.end - each.start, default=None)
    return best if best is not None and best.end - best.start >= ticks(AT_BAR_S) else None


def _take(hall: "_Hall", found: list[Again], chosen: Again) -> None:
    hall.after.take(chosen.form.items, chosen.start, chosen.end)
    found.append(chosen._replace(n=hall.given.get(chosen.form.lifters[0], 0)))
    for n in chosen.form.lifters:
        hall.at_bar[n] = chosen.at_bar
        hall.goes_on(n, chosen.end)


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

    There at once, and nobody rests longer for it than the dose says.
    """
    most, since = most_of(hall.matter, hall.plan, n), hall.after.ends[n]
    starts = [max(since, each.start + ticks(by_turns(each.doing.drill.dose, len(each.form.lifters)))) for each in found]
    soon = sorted(range(len(found)), key=lambda at: (starts[at] - since >= ticks(WORTH_S), not found[at].at_bar))
    for at in soon:
        each, start = found[at], starts[at]
        dose, count = each.doing.drill.dose, len(each.form.lifters)
        able = most.get(each.doing.drill.id, Load.NONE) >= each.form.load
        free = count < (MOST_AT_A_BAR if each.at_bar else 2) and each.end - start >= ticks(WORTH_S)
        now = each.at_bar and start - since < ticks(WORTH_S)
        worth = not at_bar or (now and may_share(dose, count + 1, check=False))
        if able and free and worth:
            both = each.form._replace(lifters=(*each.form.lifters, n))
            found[at] = each._replace(form=both, later=(*each.later, start - each.start))
            hall.goes_on(n, each.end)
            return True
    return False


def most_of(matter: Matter, plan: Plan, n: int) -> dict[DrillId, Load]:
    """How heavy a lifter may do each drill of their list again: as they did, and what they hold at a light bar."""
    u = next(u for u, unit in enumerate(matter.rotation.units) if n in unit.lifters)
    found: dict[DrillId, Load] = {}
    for k, doing in enumerate(matter.doings[u]):
        load = Load.STICK if plan.mode(matter.rotation, u, k).light else doing.load
        held = has_bar(matter.owns[n]) and doing.by_bar
        found[doing.drill.id] = max(load, Load.LIGHT if held else load)
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
    """A plan and what goes on after it: when each has ended, what is out, how often each has been given more to do.

    `at_bar` says of each whether that was at a bar, the last time.
    """

    matter: Matter
    plan: Plan
    after: Ended
    given: dict[int, int]
    at_bar: dict[int, bool]

    def goes_on(self, n: int, end: int) -> None:
        """A lifter has been given something to do until tick `end`."""
        self.given[n] = self.given.get(n, 0) + 1
        self.after.ends[n] = end


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
            dose, member = doing.drill.dose, unit.lifters.index(form.lifters[0])
            later = tuple(ticks(by_turns(dose, at)) for at in range(len(form.lifters)))
            for start, end in _free(hall, form.items, max(hall.after.ends[each] for each in form.lifters)):
                rounds = (end - start - later[-1]) * TICK_S // every_s(dose, len(form.lifters))
                if end - start >= ticks(WORTH_S) and rounds >= 1:
                    yield Again(u, member, doing, form, start, end, later)


def _forms(hall: _Hall, doing: Doing, mode: Mode, n: int, members: tuple[int, ...]) -> Iterator[Form]:
    """As it was done, those in turns together who end together if none has anything yet; and by one with a stick.

    The day's weight isn't repeated: there it is a light bar.
    """
    at, ends = members.index(n), hall.after.ends
    same = [members[m] for m in mode.with_whom(at) if abs(ends[members[m]] - ends[n]) < ticks(WORTH_S)]
    who = tuple(sorted({n, *same}, key=members.index))
    sets = len(set(mode.places)) if mode.places else len(members)
    items = tuple((item, count // sets) for item, count in mode.gear)
    have = hall.matter.asked.have
    if mode.light and doing.light_gear is not None:
        yield Form(who, Load.STICK, doing.light_gear, items)
        return
    for gear in doing.by_bar if has_bar(hall.matter.owns[n]) else ():
        yield Form(who, Load.LIGHT, gear, tuple((item, 1) for item in counted(gear, have)))
    yield Form(who, min(doing.load, Load.LIGHT), doing.gear_in(mode), items)
    if doing.by_stick is not None:
        yield Form((n,), Load.STICK, doing.by_stick, tuple((item, 1) for item in counted(doing.by_stick, have)))


def _free(hall: _Hall, items: tuple[tuple[ItemId, int], ...], since: int) -> list[tuple[int, int]]:
    """The stretches from a tick on in which so many of each thing are free, the longest first."""
    have, last = hall.matter.asked.have, hall.matter.rotation.last
    found, start = [], since
    for tick in range(since, last + 1):
        if tick == last or any(hall.after.out[item][tick] + count > have[item] for item, count in items):
            found.append((start, tick))
            start = tick + 1
    return sorted(found, key=lambda each: (each[0] - each[1], each[0]))
