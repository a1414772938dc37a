"""What a class's plan says of those who have ended early: what they go on with, or that nothing is free for them."""

from collections.abc import Sequence

from kb import dose
from kb.ask.class_.changing import CHANGE_S
from kb.ask.class_.ended import WORTH_S
from kb.ask.class_.going_on import ByTurns, More
from kb.ask.class_.handing_on import hands_on
from kb.ask.class_.slot import Slot
from kb.ask.class_.slots import ClassPlan
from kb.show.class_up import UP, up_line
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
    if slot.part == "up":
        return up_line(slot)
    weight = share_said(slot.drill, slot.load) or LOADS[slot.load]
    shared = f", in turns with {listed(slot.shares)}" if slot.shares else ""
    return f"{slot.drill.name}: {dosed(slot.drill, setting)}, {weight}{shared}."


def strength_line(slot: Slot, setting: Setting) -> str:
    """The line of a card, with what must be seen and what to say, as no coach is there for it."""
    if slot.part == "up":
        return f"{up_line(slot)} To standard: {slot.drill.standard.seen}."
    cue = f' "{slot.drill.cues[0].rstrip(".")}."' if slot.drill.cues else ""
    return f"{strength_said(slot, setting)} On when {moved_on(slot.drill.standard)}.{cue}"


def more_said(plan: ClassPlan) -> list[str]:
    """How those go on who have ended early, and who can't; nothing where nobody has."""
    said = []
    parts = {slot.part for each in plan.lifters for slot in each.strength}
    if "up" in parts:
        said.append(UP)
    if "work" in parts:
        weight = "a weight is worked up to" if "up" in parts else "the day's weight"
        said.append(
            f"After {weight} comes what strengthens, on the cards: with gear that is free, no coach, and only what one"
            " has been shown before."
        )
    if any(each.more for each in plan.lifters):
        said.append(
            "Whoever has ended 3 min or more before the class goes on with a drill of their list in rounds, over 8 min"
            " with two or three by turns, with gear that is free, and needs no coach for it: More, on the cards."
            " Who has had enough stretches instead."
        )
    busy = hands_on(plan.matter)
    free = [n for n in range(len(plan.lifters)) if n not in busy]
    if any(each.until_s == 60 * plan.matter.asked.minutes for each in plan.lifters):
        # there is somebody to count for, and who has worked up has had enough
        counts = [n for n, each in enumerate(plan.lifters) if plan.matter.owns[n].up is not None and each.strength]
        free = [n for n in free if n not in counts]
        whose = _from_when(plan, counts)
        if whose:
            said.append(f"Done, and now with one who goes on, card in hand, counting what is to standard: {whose}.")
    whose = _from_when(plan, free)
    if whose:
        said.append(f"Free at the end, as what they would go on with is out: {whose}.")
    return said


def _from_when(plan: ClassPlan, lifters: Sequence[int]) -> str:
    """Who of these has ended well before the class, and from when on; nothing where nobody has."""
    since: dict[int, list[str]] = {}
    for each in (plan.lifters[n] for n in lifters):
        if 60 * plan.matter.asked.minutes - each.until_s >= WORTH_S:
            since.setdefault(each.until_s, []).append(each.lifter.name)
    return "; ".join(f"{listed(names)} from {clock(start)}" for start, names in sorted(since.items()))
