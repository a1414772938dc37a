"""What is said to a class before it starts: whom it isn't for, how to miss, room round the bars."""

from kb.ask.cautions import caution_for
from kb.ask.class_.slots import ClassPlan
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
    named = [each.name for each in plan.matter.asked.lifters if caution_for(each.name) is not None]
    if named:
        found.append(f"{listed(named)}: not by this plan, but after asking someone qualified what may be done.")
    stiff = [own.lifter.name for own in plan.matter.owns if own.stiff]
    found += [f"{listed(stiff)}: {STIFF}"] if stiff else []
    after = {slot.drill.id for each in plan.lifters for slot in each.strength}
    strong = [[doing for doing in own.after if doing.drill.id in after] for own in plan.matter.owns]
    for doings in (*plan.matter.doings, *strong):
        for doing in doings:
            found += cares(Due(doing.drill, doing.load, doing.drill.catch, doing.gear), seen)
    return found
