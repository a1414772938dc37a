"""Why a chain is as it is: what it costs, what was left out, what another cause would change."""

from collections.abc import Mapping

from kb.ask.chain import Chain
from kb.ask.field import STEP_WEIGHT
from kb.ask.route import Entry
from kb.ask.why import OtherCause, Why
from kb.show.coach_words import changed, human, listed
from kb.show.setting import Setting, hanging, titled
from kb.terms import Drill, DrillId, Lift

__all__ = ["why_text"]


def why_text(chain: Chain, why: Why, setting: Setting) -> list[str]:
    """The reasons of a chain's first route, in lines."""
    shelf, route = chain.matter.shelf, chain.routes[0]
    lines = titled("Why this way", _cost(why, route.cost, setting), setting)
    for n, entry in enumerate(route.entries, 1):
        lines += hanging(f"  {n:>2}  ", _step(entry, shelf.lift), setting) if entry.step is not None else []
    left_out = [
        line for left in why.left_out for line in hanging("  - ", f"{left.drill.name}: {left.reason}.", setting)
    ]
    lines += titled("Not used, though it works on this cause", left_out, setting)
    other = [line for each in why.other_causes for line in hanging("  - ", _other(each, shelf.drills), setting)]
    return [*lines, *titled("With another cause", other, setting)]


def _cost(why: Why, cost: int, setting: Setting) -> list[str]:
    steps, left = divmod(why.steps, STEP_WEIGHT)
    said = (
        f"Cost {cost}, in seconds of a lifter's time: {steps} of change at {STEP_WEIGHT} each, {why.seconds} s of doing"
    )
    if why.strays:
        said += f", {why.strays} for drills that neither work on the fault nor show it"
    return hanging("  ", f"{said}. Nothing cheaper keeps the rules." if not left else said, setting)


def _step(entry: Entry, lift: Lift) -> str:
    if not entry.changes:
        return f"{entry.drill.name}: {entry.step}, out of preparation" if entry.step else f"{entry.drill.name}: 0"
    parts = [f"{changed(change, lift, entry.drill)} {change.size}" for change in entry.changes]
    return f"{entry.drill.name}: {entry.step} ({', '.join(parts)})"


def _other(other: OtherCause, drills: Mapping[DrillId, Drill]) -> str:
    name = human(other.cause.id)
    if other.none:
        return f"{name}: no chain; {other.none}."
    if not (other.adds or other.drops):
        return f"{name}: the same drills."
    adds, drops = (listed([drills[drill].name for drill in ids]) for ids in (other.adds, other.drops))
    said = [f"adds {adds}"] if adds else []
    said += [f"does without {drops}"] if drops else []
    return f"{name}: {'; '.join(said)}."
