"""What is ready now and what is shaky, on a terminal."""

from collections.abc import Collection, Mapping, Sequence

from kb.ask.ability.fringe import Closed, Fringe, Ready
from kb.show.care import ASK_FIRST, NO_REVIEW, USUAL
from kb.show.coach_words import LOADS, listed, moved_on
from kb.show.entry_lines import gear_said
from kb.show.next_words import counted, ready_why, shaky_why
from kb.show.setting import Setting, aside, hanging, labelled, titled, wrapped
from kb.show.still import Still
from kb.terms import Drill, DrillId, Item, ItemId, Lift, LiftId, Load

__all__ = ["granted_lines", "next_text", "ready_lines"]

MOST = 5
"""Ready drills told in full; the others by their names."""

MOST_SHAKY = 3

MOST_NAMED = 8
"""Of what is ready as well and no way leads through, so many by name."""

INDENT, LABEL = 4, 9

Drills = Mapping[DrillId, Drill]
Lifts = Mapping[LiftId, Lift]


def next_text(
    found: Fringe,
    lift: Lift | None,
    kit: str | None,
    *,
    way: Sequence[Drill] = (),
    still: Still | None = None,
    drills: Drills,
    lifts: Lifts,
    have: Collection[ItemId],
    items: Mapping[ItemId, Item],
    setting: Setting,
) -> list[str]:
    """The ready drills, most useful first, the shaky ones, and what was taken for granted; `lift` None means all.

    `way` are the drills from here to the lift, in order, none where it is held or can't be reached; a fault that is
    `still` seen comes before them.
    """
    held = len(found.closed.held)
    facts = [counted(held, "drill") + " held" if held else "from nothing", f"{kit} kit" if kit else "your gear"]
    whither = f" for the {lift.name.lower()}" if lift else ""
    lines = aside(f"Ready now{whither}", setting.between.join(facts), setting)
    if lift and lift.drill in found.closed.held:
        lines += ["", *wrapped(f"The {lift.name.lower()} itself is held.", setting.width)]
    if still is not None:
        lines += ["", *wrapped(still.text, setting.width), f"  {still.command}", "", "Then:"]
    lines += ["", *wrapped(_way(way, found, lift), setting.width)] if lift and way else []
    told, others = found.ready[:MOST], found.ready[MOST:]
    for n, each in enumerate(told, 1):
        lines += ["", *ready_lines(n, each, drills, lifts, have=have, items=items, setting=setting)]
    if not told:
        lines += ["", "Nothing new is ready with this gear."]
    leads = [each.drill.name for each in others if each.must or each.may or each.opens]
    aside_of = [each.drill.name for each in others if not (each.must or each.may or each.opens)]
    more = len(aside_of) - MOST_NAMED
    named = [*leads, *aside_of[:MOST_NAMED], *([f"{more} more that nothing waits for"] if more > 0 else [])]
    lines += titled("Ready as well", hanging("", "; ".join(named), setting, indent=2) if named else [], setting)
    lines += _more("Ready, but for gear", found.other_gear, setting)
    shaky = [
        line
        for each in found.shaky[:MOST_SHAKY]
        for line in hanging(" - ", f"{each.drill.name}. {shaky_why(each, drills)}", setting)
    ]
    lines += titled("Look at again before you go on", shaky, setting)
    lines += titled("Taken for granted", granted_lines(found.closed, drills, setting), setting)
    return [*lines, "", *(line for text in (USUAL, ASK_FIRST, NO_REVIEW) for line in wrapped(text, setting.width))]


def _way(way: Sequence[Drill], found: Fringe, lift: Lift) -> str:
    """Whether one may go on, how far it is, and when to go back."""
    first, *_ = way
    named = "; ".join(drill.name for drill in way)
    said = f"Yes, on to {first.name}: all that it needs is held." if found.closed.held else f"Begin with {first.name}."
    far = f"To the {lift.name.lower()} it is {counted(len(way), 'drill')} in this order: {named}."
    last = next((each.drill.name for each in found.shaky), "")
    back = f" Not met on two days running: a week of {last} again, lighter, then anew." if last else ""
    return f"{said} {far} Each is gone on from when its standard is met, first without weight.{back}"


def ready_lines(
    number: int,
    ready: Ready,
    drills: Drills,
    lifts: Lifts,
    *,
    have: Collection[ItemId],
    items: Mapping[ItemId, Item],
    setting: Setting,
) -> list[str]:
    """One ready drill: why, with what, and when to move on."""
    drill = ready.drill
    begin = f"begin with a {LOADS[ready.load]}" if ready.load > Load.NONE else "empty-handed"
    lines = aside(f"{number:>2}  {drill.name}", begin, setting)
    said = [
        ("Why", ready_why(ready, drills, lifts)),
        ("Gear", gear_said(ready.gear, have, items)),
        ("Move on", f"when {moved_on(drill.standard)}"),
    ]
    lines += labelled(said, setting, indent=INDENT, hang=LABEL)
    return lines


def _more(title: str, drills: Collection[Drill], setting: Setting) -> list[str]:
    names = "; ".join(drill.name for drill in drills)
    return titled(title, hanging("", names, setting, indent=2) if names else [], setting)


def granted_lines(closed: Closed, drills: Drills, setting: Setting) -> list[str]:
    """What was taken to be held because what was named is built on it."""
    lines: list[str] = []
    first = {group[0] for group in closed.chosen}
    sure = [drills[each].name for each in closed.granted if each not in first]
    if sure:
        lines += hanging("", f"{'; '.join(sure)}: what was named is built on it.", setting, indent=2)
    for group in closed.chosen:
        rest = listed([drills[each].name for each in group[1:]], "or")
        lines += hanging("", f"{drills[group[0]].name}; it may as well have been {rest}.", setting, indent=2)
    return lines
