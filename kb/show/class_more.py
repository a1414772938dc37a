"""What a class's plan says of those who have ended early: what they go on with, or that nothing is free for them."""

from collections.abc import Sequence

from kb import dose
from kb.ask.class_.changing import CHANGE_S
from kb.ask.class_.ended import WORTH_S
from kb.ask.class_.going_on import ByTurns, More
from kb.ask.class_.handing_on import hands_on
from kb.ask.class_.slot import LifterPlan, Slot
from kb.ask.class_.slots import ClassPlan
from kb.show.coach_words import LOADS, dosed, listed, moved_on, share_said
from kb.show.session_words import clock
from kb.show.setting import Setting
from kb.terms import Load

__all__ = ["more_line", "more_said", "strength_line", "strength_said"]


def more_line(more: More) -> str:
    """The line of a card: the drill, in rounds of what, with what between them, until when; several by turns."""
    first = ByTurns(more.drill, more.load, more.rounds, more.every_s)
    until = f"until {clock(more.end_s)}"
    shared = f" in turns with {listed(more.shares)}" if more.shares else ""
    if not more.others:
        return f"More: {_rounds_said(first, more.shares)}{shared}{_load_said(more.load)}, {until}."
    every = (first, *more.others)
    same = len({each.load for each in every if each.load > Load.NONE}) == 1
    load = _load_said(max(each.load for each in every)) if same else ""
    drills = "; ".join(f"{_rounds_said(each, more.shares)}{'' if same else _load_said(each.load)}" for each in every)
    return f"More, {CHANGE_S // 60} min of each by turns{shared and f',{shared}'}{load}, {until}: {drills}."


def _rounds_said(each: ByTurns, shares: Sequence[str]) -> str:
    """A drill, rounds of what, and what is between them where nobody shares it."""
    given = each.drill.dose
    one = [str(dose.sets(given)[0])] if given.reps else []
    one += [f"{given.hold_s} s held"] if given.hold_s else []
    side = " each side" if given.sides == 2 else ""
    between = "" if shares else f" with {each.every_s - dose.round_seconds(given)} s between"
    return f"{each.drill.name}, rounds of {' and '.join(one)}{side}{between}"


def _load_said(load: Load) -> str:
    return {Load.STICK: ", stick", Load.LIGHT: ", light bar"}.get(load, "")


def strength_said(slot: Slot, setting: Setting) -> str:
    """What strengthens, as the lifter has it: the drill, its dose, how heavy, with whom."""
    weight = share_said(slot.drill, slot.load) or LOADS[slot.load]
    shared = f", in turns with {listed(slot.shares)}" if slot.shares else ""
    return f"{slot.drill.name}: {dosed(slot.drill, setting)}, {weight}{shared}."


def strength_line(slot: Slot, setting: Setting) -> str:
    """The line of a card, with what must be seen and what to say, as no coach is there for it."""
    cue = f' "{slot.drill.cues[0].rstrip(".")}."' if slot.drill.cues else ""
    return f"{strength_said(slot, setting)} On when {moved_on(slot.drill.standard)}.{cue}"


def more_said(plan: ClassPlan) -> list[str]:
    """How those go on who have ended early, and who can't; nothing where nobody has."""
    said = []
    if any(each.strength for each in plan.lifters):
        said.append(
            "After the day's weight comes what strengthens, on the cards: with gear that is free, no coach, and only"
            " what one has been shown before."
        )
    if any(each.more for each in plan.lifters):
        said.append(
            "Whoever has ended 3 min or more before the class goes on with a drill of their list in rounds, over 8 min"
            " with two or three by turns, with gear that is free, and needs no coach for it: More, on the cards."
            " Who has had enough stretches instead."
        )
    end = 60 * plan.matter.asked.minutes
    free: dict[int, list[str]] = {}
    busy = hands_on(plan.matter)
    for n, each in enumerate(plan.lifters):
        if n not in busy and end - _since(each) >= WORTH_S:
            free.setdefault(_since(each), []).append(each.lifter.name)
    if free:
        whose = "; ".join(f"{listed(names)} from {clock(since)}" for since, names in sorted(free.items()))
        said.append(f"Free at the end, as what they would go on with is out: {whose}.")
    return said


def _since(each: LifterPlan) -> int:
    """From when a lifter has nothing to do, s."""
    return each.until_s
