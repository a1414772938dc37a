"""A class in words, for the terminal and for paper: how good the plan is, who works together, what each stretch is."""

from collections.abc import Sequence

from kb.ask.class_.ended import WORTH_S
from kb.ask.class_.groups import Group
from kb.ask.class_.people import MOST_WAIT_S, NEW_AT_ONCE
from kb.ask.class_.slots import ClassPlan, Duty, LifterPlan, Slot
from kb.kit import RACK
from kb.show.care import ASK_FIRST, NO_REVIEW, USUAL
from kb.show.class_bars import bars_said, stay_said
from kb.show.class_more import more_said
from kb.show.class_today import today_said
from kb.show.class_weights import bar_said, of_my_weight
from kb.show.coach_words import dosed, human, listed
from kb.show.session_words import clock, span
from kb.show.setting import Setting
from kb.terms import DrillId, ItemId, Load, Stage

# fmt: off
__all__ = [
    "after", "chain_said", "closing_texts", "duty_said", "facts_of", "gear_said", "letters_of",
    "slot_said", "title_of", "verdict",
]
# fmt: on

LETTERS = "ABCDEFGIJKLMNOPQRSTUVWXYZ0123456789"
"""For the drills of a chart, a letter's small form for what there is more of it; `h` is for helping."""

DROP_FLOOR = ItemId("drop-floor")

MANY = 5
"""Names from which on a whole group is said by its number."""

WORTH_A_WORD = 8
"""Minutes left over of which a plan says what to do with them."""

GAME = (
    "Or as a game: two and two, the partner calls whether the standard was met, a point for each that was; ten points"
    " win, and haste wins nothing."
)
"""What to do with minutes left over that a group likes. Common practice, no source."""


def facts_of(plan: ClassPlan) -> list[str]:
    """What the class is, in a few words each."""
    asked = plan.matter.asked
    people, coaches = len(asked.lifters), asked.coaches
    return [
        f"{people} lifter{'s' if people > 1 else ''}",
        f"{asked.minutes} min",
        f"{coaches} coach{'es' if coaches > 1 else ''}",
    ]


def verdict(plan: ClassPlan, *, with_solver: bool) -> list[str]:
    """How good the plan is, and what of that is proved."""
    longest = max(each.waits_s for each in plan.lifters)
    ends = f"The last list has ended at {clock(plan.end_s)} of {plan.matter.asked.minutes}:00{_all_go_on(plan)}."
    if plan.idle_s == 0:
        said = f"Nobody waits at all. {ends}"
    else:
        said = f"All waiting added up: {span(plan.idle_s)}; nobody waits longer than {span(longest)} at a time. {ends}"
    if plan.optimal:
        how = "No plan of these groups and pairs has less waiting: that is proved."
    elif plan.gap is not None:
        how = f"Not proved the least: a better plan could save at most {plan.gap:.0%} of the waiting."
    else:
        how = "Not proved the least: how much a better plan could save is not known."
        if not with_solver:
            how += " Installed with `drillpath[class]`, the program looks further and proves it."
    without = list(filter(None, (_spared_said(plan), _longer_said(plan))))
    first = [*today_said(plan), *without, *bars_said(plan)]
    return [*first, said, how, _drills_said(plan), *more_said(plan), *_left_said(plan)]


def _all_go_on(plan: ClassPlan) -> str:
    """That nobody stands about to the end, where that is so and there is something left."""
    end = 60 * plan.matter.asked.minutes
    busy = all(end - each.until_s < WORTH_S for each in plan.lifters)
    return ", and all go on to the end" if busy and end - plan.end_s >= WORTH_S else ""


def _left_said(plan: ClassPlan) -> list[str]:
    """What to do with minutes left over, where they are worth a word."""
    asked = plan.matter.asked
    left = asked.minutes - -(-plan.end_s // 60)
    if left < WORTH_A_WORD:
        return []
    learns = (
        not asked.today
        and asked.new_at_once == NEW_AT_ONCE
        and any(each.later and each.lifter.fault is None for each in plan.lifters)
    )
    again = "all of it" if 60 * left >= plan.end_s - asked.warm_up_s else "the last drills"
    return [
        f"In the {left} min after the last list, instead of going on alone: {again} once more in the same turns"
        " with the standards counted, or longer with those who haven't met one."
        + f" {GAME}"
        + (" Or show more: `new: 4` in the file has each learner shown four drills and not two." if learns else "")
    ]


def _spared_said(plan: ClassPlan) -> str:
    """Who does without a bar, and why; nothing where nobody has to."""
    asked = plan.matter.asked
    items = sorted({item for lifter in asked.lifters for item in lifter.without})
    if not items:
        return ""
    count = " and ".join(f"{asked.have[item]} {human(item)}{'s' if asked.have[item] > 1 else ''}" for item in items)
    one = len(items) == 1 and asked.have[items[0]] == 1
    why = f"no plan was found in which {count} {'goes' if one else 'go'} round {len(asked.lifters)} lifters in"
    why += f" {asked.minutes} min with no wait over {span(asked.most_wait_s)}"
    keep = listed([lifter.name for lifter in asked.lifters if not lifter.without])
    if not keep:
        return f"All do without the {listed([human(item) for item in items])}: {why}."
    leave = listed([lifter.name for lifter in asked.lifters if lifter.without])
    who = f"{leave} do{'' if ' and ' in leave else 'es'} without the {listed([human(item) for item in items])}"
    first = "first those with a weight, then those who hold what is done, then those of one chain together"
    return f"{who}: {why}. It is left to {keep}: {first}, in the order of the file."


def _longer_said(plan: ClassPlan) -> str:
    """That some wait longer than is usual, and why; nothing where nobody has to."""
    asked = plan.matter.asked
    if asked.most_wait_s <= MOST_WAIT_S or not asked.longer_s:
        return ""
    return (
        f"No plan was found in which the bars go round and nobody waits over {span(MOST_WAIT_S)} at a time, so they are"
        f" up to {span(asked.most_wait_s)}; `most_wait_s` in the file holds them shorter, and takes bars from some."
    )


def _drills_said(plan: ClassPlan) -> str:
    most, least = plan.drills_at_once, plan.drills_least
    said = f"At most {most} different drills go on at once"
    if least is None:
        return f"{said}; whether fewer would do was not looked into."
    if least >= most:
        return f"{said}; with as little waiting it can't be fewer."
    return f"{said}; that it could be {least}, with as little waiting, is not ruled out."


def letters_of(plan: ClassPlan) -> dict[DrillId, str]:
    """A letter for each drill, in the order in which they first come up in the groups."""
    found: dict[DrillId, str] = {}
    for doings in (group.doings for group in plan.matter.groups):
        for doing in doings:
            found.setdefault(doing.drill.id, LETTERS[len(found) % len(LETTERS)])
    after = [[slot.drill for slot in each.strength] for each in plan.lifters]
    for drills in (*([doing.drill for doing in doings] for doings in plan.matter.doings), *after):
        for drill in drills:
            found.setdefault(drill.id, LETTERS[len(found) % len(LETTERS)])
    return found


def chain_said(group: Group) -> list[tuple[DrillId, str]]:
    """A group's drills in order, each with its name; one that comes a second time says so."""
    seen: set[DrillId] = set()
    found = []
    for doing in group.doings:
        again = " again, heavier" if doing.drill.id in seen else ""
        seen.add(doing.drill.id)
        found.append((doing.drill.id, doing.drill.name + again))
    return found


def duty_said(plan: ClassPlan, duty: Duty) -> str:
    """What a coach does, in a sentence."""
    if duty.does == "stay":
        return stay_said(plan)
    who = _who_said(plan, duty.who)
    if duty.does == "show":
        cue = f'; say "{duty.drill.cues[0].rstrip(".")}"' if duty.drill.cues else ""
        return f"Show {duty.drill.name} to {who}{cue}."
    if duty.does == "up":
        return f"Look at {who} working up, {duty.drill.name}: does it go up only after rounds to standard?"
    return f"Stand by {who}{_in_turn(plan, duty)}: first try, {duty.drill.name}."


def _in_turn(plan: ClassPlan, duty: Duty) -> str:
    """That two who begin together at two places are looked at one after the other: a coach is at one at a time."""
    at = {
        (slot.start_s, slot.station)
        for each in plan.lifters
        if each.lifter.name in duty.who
        for slot in each.slots
        if slot.watched and slot.drill.id == duty.drill.id and slot.start_s < duty.end_s and slot.end_s > duty.start_s
    }
    return ", one after the other" if len({station for _, station in at}) > 1 else ""


def _who_said(plan: ClassPlan, who: Sequence[str]) -> str:
    """Names; where they are many and whole groups, these by their numbers."""
    if len(who) < MANY:
        return listed(who)
    groups: dict[int, set[str]] = {}
    for each in plan.lifters:
        groups.setdefault(each.group, set()).add(each.lifter.name)
    whole = [str(n + 1) for n, names in sorted(groups.items()) if names <= set(who)]
    if sum(len(names) for names in groups.values() if names <= set(who)) < len(who):
        return listed(who)
    if len(who) == len(plan.lifters):
        return f"all {len(who)}"
    return f"group{'s' if len(whole) > 1 else ''} {listed(whole)} (all {len(who)})"


def after(each: LifterPlan) -> str:
    """What stands at a lifter's end."""
    waits = f"waited {span(each.idle_s)} in all" if each.idle_s else "no waiting"
    more = f" {each.later} more drill{'s' if each.later > 1 else ''} another day." if each.later else ""
    return f"Done ({waits}).{more}"


def slot_said(plan: ClassPlan, each: LifterPlan, slot: Slot, setting: Setting) -> str:
    """What a lifter does in a stretch, in a line."""
    name = slot.drill.name
    if slot.part == "shown":
        return f"Watch: {name} is shown."
    if slot.part == "helps":
        return f"Help {slot.with_whom}: {name}."
    if slot.part == "loading":
        return f"{name}: {bar_said(plan, each, slot)}."
    parts = [
        f"{name}{'' if slot.part == 'work' else ' (check)'}: {dosed(slot.drill, setting, work=slot.part == 'work')}"
    ]
    parts += [_load_said(each, slot)]
    turns = slot.shares if slot.load < Load.WORKING else of_my_weight(plan, each, slot)
    parts += ["from the rack" if slot.racked and RACK not in slot.drill.equipment else ""]
    parts += [f"in turns with {listed(turns)}" if turns else ""]
    parts += [f"helped by {slot.with_whom}" if slot.with_whom else ""]
    parts += ["a coach looks on" if slot.watched else ""]
    return f"{', '.join(part for part in parts if part)}."


def _load_said(each: LifterPlan, slot: Slot) -> str:
    if slot.drill.stage is Stage.PREPARE or slot.load is Load.NONE:
        return ""
    if slot.light:
        return "stick for a bar"
    if slot.load is Load.WORKING and each.lifter.weight_kg is not None:
        return f"{each.lifter.weight_kg:g} kg"
    return {Load.STICK: "stick", Load.LIGHT: "light bar"}.get(slot.load, "")


def title_of(each: LifterPlan) -> str:
    """A lifter's card's title: who, why, in which group."""
    lifter = each.lifter
    practises = each.slots[-1].drill.id in lifter.holds
    learns = "practising" if practises else "learning" if lifter.holds else "new"
    why = human(lifter.fault) if lifter.fault else learns
    return f"{lifter.name}: {why}, group {each.group + 1}"


def gear_said(plan: ClassPlan) -> list[str]:
    """How much gear is out at once, what isn't needed, what was taken to be enough."""
    out = [f"{use.peak} of {use.have} {human(use.item)}" for use in plan.gear if use.peak]
    spare = [f"{use.have} {human(use.item)}" for use in plan.gear if not use.peak]
    named = {*(use.item for use in plan.gear), "partner"}
    used = {gear.using for doings in plan.matter.doings for doing in doings for gear in doing.gear}
    used |= {item for each in plan.lifters for slot in each.strength for item in slot.gear}
    enough = sorted(human(item) for item in used if item not in named)
    said = (("Out at once at most", out), ("Not needed", spare), ("Not counted, taken to be enough", enough))
    return [f"{label}: {listed(words)}." for label, words in said if words]


def closing_texts(plan: ClassPlan) -> list[str]:
    """What belongs under every answer that someone may act on."""
    heavy = any(own.lifter.weight_kg or own.up for own in plan.matter.owns)
    return [USUAL, *([ASK_FIRST] if heavy else []), NO_REVIEW]
