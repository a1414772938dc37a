"""What a day that was named comes to, in words, and how to read the weeks up to it."""

from math import ceil

from kb.ask.plan.kilograms import MOST_MORE_KG
from kb.ask.plan.plan import Plan
from kb.ask.plan.until import Until

__all__ = ["TO_THE_DAY", "day_comes_to", "lags_said"]

TO_THE_DAY = (
    "lift: up from the bar in even jumps, then the full dose at that weight. Kilograms are 70 to 90 % of what should"
    " go by then, heavy and easy days by turns; what should go grows only where the heavy day met its standard, stays"
    " where it didn't, and goes back after two misses. part: of the lift, at weight, clean every time. finish:"
    " strengthens, at a load that leaves two good reps in hand; a day of sore joints goes without. The singles after"
    " the last heavy days only once the dose has met its standard; the opener is the first try of the day, taken as on"
    " the day: in what you will wear, announced, two people looking on, a minute on a clock. day: up in"
    " singles, three tries at most, none after two misses running. A bad night, an illness or a night shift before: the"
    " easy day's weight, whatever the plan says. A weight is a wish; the standard decides."
)
LAGS = (
    "Its heavy day is near what should go by then: after two reps that don't meet the standard the sets that are left"
    " are a tenth lighter."
)
"""What is done about misses of the part that lags behind. Common practice, no source."""
ON_ITS_OWN = " A rack or blocks would let it be taken on its own, and nearer to what should go."


def lags_said(plan: Plan) -> str:
    """What is done about the part that lags behind; nothing where none does."""
    lagging = plan.path.shelf.drills.get(plan.weak) if plan.weak is not None else None
    if lagging is None:
        return ""
    slots = [slot.form.drill for session in plan.sessions for slot in session.slots if slot.kind == "part"]
    brought = any(drill.id == lagging.id and drill.name != lagging.name for drill in slots)
    said = f"{lagging.name} lags behind, so it begins each week but the light ones. {LAGS}"
    return f"{said}{ON_ITS_OWN if brought else ''}"


MUCH_MORE = 10
"""From how many per cent more a wish is called a large one."""

MUCH = (
    "who has lifted for a year or longer gains rather 5 to 10 % in some months (common practice, no source). Take it as"
    " a direction: after the first light week look at the heavy days, and set the weight anew."
)


SEVERAL = (
    " All in per cent of each one's own best in that lift, down to what discs make. Who is to make three good ones"
    " rather than a best takes 88, 92 and 96 on the day."
)
"""How to read a plan for several. Common practice, no source."""


def day_comes_to(plan: Plan, until: Until) -> str:
    """Whether the lift is held by the day, and what it is built up to; else what would do."""
    there, once = until.last - plan.begun, "once held, " if plan.to_held else ""
    if until.short:
        words = {"new": "--new", "per_week": "--per-week"}
        ways = [f"{words[name]} {value}" for name, value in until.in_time]
        ways += [f"--to {until.part.drill.id}, which is held by then"] if until.part is not None else []
        in_time = f" In time: {', or '.join(ways)}." if ways else ""
        return f"By the day there are {there}, {until.short} too few.{in_time} A line shows where the day falls."
    if until.goal.weight_kg is None:
        return f"With the day there are {there} sessions: {once}the lift is built up."
    lift = "the lift" if plan.second is None else f"the {plan.path.shelf.lift.name.lower()}"
    said = f"With the day there are {there} sessions: {once}{_rise_said(lift, until, much=not plan.to_held)}"
    if plan.second is None:
        return said
    second = _rise_said(f"the {plan.second.lift.name.lower()}", plan.second.until, much=not plan.to_held)
    return f"{said} First in each session, {second}"


def _rise_said(lift: str, until: Until, *, much: bool) -> str:
    """From what to what a lift goes, and what is said of a rise that is large, or too large for small steps."""
    if until.goal.weight_kg is None or until.reached_kg is None or until.from_kg is None:
        return f"{lift} is built up."
    best, unit = until.goal.best_kg, until.goal.unit
    said = f"{lift} goes from {until.from_kg:g}"
    if best is not None and until.reached_kg >= until.goal.weight_kg:
        said += f", nine tenths of the best, to {until.reached_kg:g} {unit}"
        return f"{said}, a little more than the {best:g} of the best.{SEVERAL if unit == '%' else ''}"
    if until.reached_kg >= until.goal.weight_kg:
        rise = round(100 * (until.reached_kg / until.from_kg - 1))
        large = f" That is {rise} % more; {MUCH}" if much and rise > MUCH_MORE else ""
        return f"{said} to {until.reached_kg:g} {unit}.{large}"
    sessions = ceil((until.goal.weight_kg - until.reached_kg) / MOST_MORE_KG)
    more = f"{sessions} more session{'s' if sessions > 1 else ''}"
    return (
        f"{said} to {until.reached_kg:g} {unit}, {MOST_MORE_KG:g} {unit} more a session on average at most;"
        f" {until.goal.weight_kg:g} {unit} takes {more}, or a heavier first weight (--from) if that is lifted well"
        " today."
    )
