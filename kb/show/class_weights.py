"""How a class's bars go up to the day's weights, in words: by which steps, and who does theirs on the way."""

from kb.ask.class_.slots import ClassPlan, LifterPlan, Slot
from kb.ask.class_.turns import way_up
from kb.show.coach_words import listed

__all__ = ["bar_said", "of_my_weight"]


def _weights(plan: ClassPlan, slot: Slot) -> dict[str, float]:
    """The day's weights of those who share a bar, kg."""
    return {
        other.lifter.name: other.lifter.weight_kg or 0.0 for other in plan.lifters if other.lifter.name in slot.shares
    }


def of_my_weight(plan: ClassPlan, each: LifterPlan, slot: Slot) -> list[str]:
    """Who takes turns with a lifter at the day's weight: of those at the bar, whoever has the same."""
    return [name for name, kg in _weights(plan, slot).items() if kg == each.lifter.weight_kg]


def bar_said(plan: ClassPlan, each: LifterPlan, slot: Slot) -> str:
    """How the bar goes up to the day's weight, and who of those at it does theirs on the way."""
    weight, others = each.lifter.weight_kg or 0.0, _weights(plan, slot)
    before = {name: kg for name, kg in others.items() if kg < weight}
    steps = way_up(plan.matter.asked.bar_kg, [*before.values(), weight])
    said = f"bar up to {weight:g} kg"
    said += f" by {', '.join(f'{step:g}' for step in steps[:-1])}" if steps[:-1] else ""
    if not others:
        return said
    said += f", with {listed(list(others))}"
    theirs = [f"{name} at {kg:g}" for name, kg in sorted(before.items(), key=lambda one: one[1])]
    return f"{said}; on the way {listed(theirs)}, you a round at each" if theirs else said
