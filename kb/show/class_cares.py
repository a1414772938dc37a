"""What is said to a class before it starts: whom it isn't for, how to miss, room round the bars."""

from kb.ask.cautions import CAUTION
from kb.ask.class_.slots import ClassPlan
from kb.ask.class_.turned import care_for
from kb.ask.person import minded
from kb.show.care import UNDROPPED, Due, cares
from kb.show.coach_words import listed
from kb.terms import ItemId

__all__ = ["STIFF", "TODAY_FIRST", "cares_of"]

DROP_FLOOR = ItemId("drop-floor")

TODAY_FIRST = (
    "Ask round first: who is sore, ill, dizzy or hurt today doesn't lift by this plan, but asks someone qualified"
    " first; with a sore back, above all, no bar from the floor and none overhead."
)
"""What comes before any class. Common practice, no source."""

OLD = (
    "hurt there once. Free of pain today, and cleared to lift? Then lighter than the others, unloaded first; if not,"
    " they ask someone qualified, and watch."
)
"""What holds for who was hurt long ago. Common practice, no source."""

NOT_BY_THIS = (
    "not by this plan, but after asking someone qualified what may be done. Nothing is planned for them; if they like,"
    " they keep the clock, count or film."
)
MAY = " Free of it, and cleared ({})? By whom goes into the file, `cleared: her doctor`, and they are planned for."
"""What holds for who must ask first. Common practice, no source."""

STIFF = (
    "stiff in a joint, so whatever the card has, no bar in a position that a stick isn't held in today, and no deeper"
    " than that; in its place the drill before it again, or what opens the joint."
)
"""What holds for who mends a fault that a joint makes, also in a list of several. Common practice, no source."""


def cares_of(plan: ClassPlan) -> list[str]:
    """What is due before the class: how to miss, room round the bars, partners; each once."""
    # a hall without a floor to drop on has none for any of its drills
    seen = set[str]() if plan.matter.asked.have.get(DROP_FLOOR) else {UNDROPPED}
    found = [TODAY_FIRST]
    lifters = plan.matter.asked.lifters
    turned = plan.matter.asked.turned
    if turned:
        may = [each.name for each in turned if care_for(each).may_clear]
        found.append(f"{listed([each.name for each in turned])}: {NOT_BY_THIS}{MAY.format(listed(may)) if may else ''}")
    for each in lifters:
        care = care_for(each)
        if care.caution:
            found.append(f"{each.name}: {care.caution.replace(CAUTION, OLD)}")
    minds: dict[str, list[str]] = {}
    for each in lifters:
        for text in minded(each.said, in_a_chain=False):
            minds.setdefault(text, []).append(each.name)
    found += [f"{listed(names)}: {text}" for text, names in minds.items()]
    stiff = [own.lifter.name for own in plan.matter.owns if own.stiff]
    found += [f"{listed(stiff)}: {STIFF}"] if stiff else []
    after = {slot.drill.id for each in plan.lifters for slot in each.strength}
    strong = [[doing for doing in own.after if doing.drill.id in after] for own in plan.matter.owns]
    for doings in (*plan.matter.doings, *strong):
        for doing in doings:
            found += cares(Due(doing.drill, doing.load, doing.drill.catch, doing.gear), seen)
    return found
