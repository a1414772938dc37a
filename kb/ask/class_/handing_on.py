"""Who has only had a stick and may have a bar near the end; and who hands theirs on to them."""

from collections.abc import Mapping

from kb.ask.class_.build import Matter
from kb.ask.class_.doing import PARTNER, Doing, Own
from kb.ask.class_.people import PLENTY
from kb.ask.class_.rotation import Plan, ticks
from kb.kit import BARS, TRAINING_BAR, Gear
from kb.terms import Catch, ItemId, Load, Speed, Stage

__all__ = ["bar_in", "first_at_a_bar", "handed_on", "hands_on", "has_bar", "last_part"]

LAST_S = 480
"""The last part of a class, s, in which bars go round: its second half, but so much at least. Ours."""

HEADROOM = ItemId("headroom")
"""What is overhead needs it."""


def hands_on(matter: Matter) -> dict[int, ItemId]:
    """Lifters, by number, who hand a bar on near the end, and which; none where all who learn have one.

    Only in a class with a `today`: the others then know what they do with it. Who has a day's weight keeps theirs,
    and who works up to one does what strengthens with what is left.
    """
    learners = [own for own in matter.owns if own.today and not own.by_themselves]
    if not any(_first(own) for own in learners) or any(_has(own) for own in learners):
        return {}
    return {
        n: _has(own)[0]
        for n, own in enumerate(matter.owns)
        if own.by_themselves and own.lifter.weight_kg is None and _has(own)
    }


def last_part(matter: Matter) -> int:
    """From when on bars may go round, a tick: the second half of a class, eight minutes at least."""
    return max(matter.rotation.last - ticks(max(LAST_S, 30 * matter.asked.minutes)), 0)


def handed_on(matter: Matter, ends: Mapping[int, int]) -> int:
    """When bars are handed on, a tick: in the last part, when those who learn have ended."""
    learnt = (end for n, end in ends.items() if not matter.owns[n].by_themselves)
    return max(last_part(matter), *learnt)


def _has(own: Own) -> list[ItemId]:
    """The bars that a list is done with."""
    using = {gear.using for doing in own.doings for gear in doing.gear}
    return [item for item in reversed(BARS) if item in using]


def has_bar(own: Own) -> bool:
    """Whether somebody practises what they hold, some of it at a bar."""
    return own.by_themselves and bool(_has(own))


def first_at_a_bar(matter: Matter, plan: Plan) -> dict[int, Doing]:
    """The lifters, by number, who have a bar in no drill of the plan, and what each may do at one."""
    found: dict[int, Doing] = {}
    rotation, light = matter.rotation, 0 < matter.asked.have.get(TRAINING_BAR, 0) < PLENTY
    for u, unit in enumerate(rotation.units):
        modes = [plan.mode(rotation, u, k) for k in range(len(unit.tasks))]
        if any(item in BARS for mode in modes for item, _ in mode.gear):
            continue
        for n in unit.lifters:
            done = _first(matter.owns[n], light=light)
            if done is not None:
                found[n] = done
    return found


def _first(own: Own, *, light: bool = False) -> Doing | None:
    """What of a list is done at a bar first: what was named for today, with a `light` bar; else something quieter.

    That is what is held, slow or paused; else a quick pull that they were shown before.
    What is named is quick and may be caught high: it was done in full with a stick, and a training bar is light. Of
    the rest: what isn't overhead goes before what is, what was met in full before what was a check; of these the last.
    Only what a light load is made for, that was done with a stick, and doesn't begin on the floor, where a bar without
    discs lies too low.
    """
    named = [doing for doing in reversed(own.doings) if light and _named(own, doing)]
    if named:
        return named[0]._replace(by_bar=(bar_in(named[0], TRAINING_BAR),))
    able = [doing for doing in reversed(own.doings) if _fit_for_it(own, doing)]
    return max(able, key=_wish, default=None)


def _named(own: Own, doing: Doing) -> bool:
    """Whether it is what was named for today, done in full with a stick, and light enough with a training bar."""
    begins = {first for first, _ in doing.drill.reach.values()}
    return (
        doing.drill.id in own.today
        and doing.work
        and doing.load is Load.STICK
        and doing.drill.catch <= Catch.POWER
        and bool(bar_in(doing, TRAINING_BAR))
        and "start" not in begins
    )


def _wish(doing: Doing) -> tuple[bool, bool, bool]:
    return doing.drill.speed < Speed.FULL, HEADROOM not in doing.drill.equipment, doing.work


def _fit_for_it(own: Own, doing: Doing) -> bool:
    drill = doing.drill
    quick = drill.speed is Speed.FULL and (drill.catch is not Catch.NONE or drill.id not in own.knows)
    begins = {first for first, _ in drill.reach.values()}
    return (
        drill.stage is not Stage.PREPARE
        and PARTNER not in drill.equipment
        and doing.load is Load.STICK
        and bool(doing.by_bar)
        and not quick
        and "start" not in begins
    )


def bar_in(doing: Doing, item: ItemId) -> tuple[Gear, ...]:
    """What a drill is done with at that kind of bar; nothing where it can't be."""
    return next((gear for gear in doing.by_bar if any(each.using == item for each in gear)), ())
