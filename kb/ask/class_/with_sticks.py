"""How long those who could have a bar hold a stick: what more lifters to a bar could save."""

from kb.ask.class_.doing import Own
from kb.ask.class_.slot import LifterPlan
from kb.ask.class_.slots import ClassPlan
from kb.kit import BARS
from kb.terms import Drill, Load, Stage

__all__ = ["stick_s"]


def stick_s(plan: ClassPlan) -> int:
    """Seconds that lifters hold a stick in drills that they could do at a bar, all added up.

    Of who practises what they hold, all of them; of who has had a bar in their list, those after it.
    """
    return sum(_stick_s(each, own) for each, own in zip(plan.lifters, plan.matter.owns, strict=True))


def _stick_s(each: LifterPlan, own: Own) -> int:
    spans = []
    if own.by_themselves:
        spans += [
            (slot.drill, slot.load, slot.end_s - slot.start_s) for slot in each.slots if slot.part in ("work", "check")
        ]
    for more in each.goes_on if own.by_themselves or _has_had(each) else ():
        spans.append((more.drill, more.load, more.end_s - more.start_s))
    return sum(seconds for drill, load, seconds in spans if load is Load.STICK and _at_a_bar(drill))


def _has_had(each: LifterPlan) -> bool:
    return any(slot.load >= Load.LIGHT or set(slot.gear) & set(BARS) for slot in each.slots if slot.part != "shown")


def _at_a_bar(drill: Drill) -> bool:
    return drill.load[1] >= Load.LIGHT and drill.stage is not Stage.PREPARE
