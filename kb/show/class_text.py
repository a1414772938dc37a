"""A class on a terminal: how it comes out, the hall minute by minute, each coach's list, each lifter's card."""

from collections.abc import Iterator, Mapping

from kb.ask.class_.slots import ClassPlan, LifterPlan
from kb.dose import minutes
from kb.show.class_at_bars import bars_table, helpers_said
from kb.show.class_calls import calls_said
from kb.show.class_cards import cards_of
from kb.show.class_cares import cares_of
from kb.show.class_coach import FREE, coach_list
from kb.show.class_words import (
    chain_said,
    closing_texts,
    facts_of,
    gear_said,
    letters_of,
    verdict,
)
from kb.show.coach_words import duration, listed
from kb.show.session_words import clock
from kb.show.setting import Setting, aside, hanging, rows, titled, wrapped
from kb.terms import DrillId

__all__ = ["class_text"]

WAITING, SHOWN, LOADING, HELPING = ".", "*", "+", "h"
"""How the hall's chart marks what is no drill of one's own."""


def class_text(plan: ClassPlan, setting: Setting, *, with_solver: bool) -> list[str]:
    """A class in lines, the answer first."""
    asked = plan.matter.asked
    letters = letters_of(plan)
    lines = aside(asked.name, setting.between.join(facts_of(plan)), setting)
    lines += [""]
    for text in verdict(plan, with_solver=with_solver):
        lines += wrapped(text, setting.width)
    lines += titled("Who works together", _groups(plan, setting), setting)
    lines += titled("The hall, minute by minute", list(_chart(plan, letters, setting)), setting)
    care = [line for text in cares_of(plan) for line in hanging("! ", text, setting, indent=2)]
    lines += titled("Before it starts", care, setting)
    for coach in range(asked.coaches):
        title = "The coach" if asked.coaches == 1 else f"Coach {coach + 1}"
        lines += titled(title, _duties(plan, coach, setting), setting)
    lines += titled("Who helps", [f"  {line}" for line in _helped(plan, setting)], setting)
    lines += titled("Bars", rows(bars_table(plan), setting), setting)
    lines += titled("Called to all", rows(calls_said(plan), setting), setting)
    for names, title, card in cards_of(plan, setting):
        *before, last = wrapped(f"{listed(names)}: {title}", setting.width)
        lines += ["", *map(setting.strong, before), *titled(last, card, setting)[1:]]
    gear = [line for text in gear_said(plan) for line in hanging("  ", text, setting)]
    lines += titled("Gear", gear, setting)
    return [*lines, "", *(line for text in closing_texts(plan) for line in wrapped(text, setting.width))]


def _helped(plan: ClassPlan, setting: Setting) -> list[str]:
    return [line for text in helpers_said(plan.matter.asked.helpers) for line in wrapped(text, setting.width - 2)]


def _groups(plan: ClassPlan, setting: Setting) -> list[str]:
    """Each group: who, and the chain that they share."""
    lines: list[str] = []
    letters = letters_of(plan)
    for n, group in enumerate(plan.matter.groups, 1):
        names = listed([plan.matter.owns[each].lifter.name for each in group.lifters])
        chain = ", ".join(f"{name} ({letters[drill]})" for drill, name in chain_said(group))
        lines += hanging(f"{n}  ", f"{names}: {chain}.", setting)
    return lines


def _chart(plan: ClassPlan, letters: Mapping[DrillId, str], setting: Setting) -> Iterator[str]:
    """A row a lifter, a column a minute (or more, where the class is long)."""
    widest = max(len(each.lifter.name) for each in plan.lifters)
    room = setting.width - widest - 2
    start, end = plan.matter.asked.warm_up_s, plan.until_s
    column = next(step for step in (30, 60, 120, 180, 300, 600, 1200) if (end - start) / step <= room)
    count = -(-(end - start) // column)
    marks = [" "] * (count + 6)
    every = 300 if column <= 60 else 600
    for at in range(-(-start // every) * every, end, every):
        where = (at - start) // column
        marks[where : where + len(str(at // 60))] = str(at // 60)
    yield f"{'':<{widest + 2}}{''.join(marks).rstrip()}"
    for each in plan.lifters:
        row = "".join(_mark(each, start + n * column + column // 2, letters) for n in range(count))
        yield f"{each.lifter.name:<{widest + 2}}{row.rstrip()}"
    yield ""
    said = f"a letter is a drill (above), {SHOWN} shown, {LOADING} bar loaded, {WAITING} waiting"
    if any(slot.part == "helps" for each in plan.lifters for slot in each.slots):
        said += f", {HELPING} helping"
    if any(each.more for each in plan.lifters):
        said += ", a small letter more of it"
    yield from hanging("    ", f"{said}; a column is {duration(column)}, from {clock(start)}.", setting)


def _mark(each: LifterPlan, at: int, letters: Mapping[DrillId, str]) -> str:
    for slot in (*each.slots, *each.strength):
        if slot.start_s <= at < slot.end_s:
            return {"shown": SHOWN, "loading": LOADING, "helps": HELPING}.get(slot.part, letters[slot.drill.id])
    for start, end, drill in (leg for more in each.goes_on for leg in more.legs):
        if start <= at < end:
            return letters[drill.id].lower()
    return WAITING if at < each.slots[-1].end_s else " "


def _duties(plan: ClassPlan, coach: int, setting: Setting) -> list[str]:
    table = coach_list(plan, coach)
    if coach == 0 and plan.matter.asked.warm_up_s:
        table.insert(0, ("0:00", f"Lead the common warm-up, {minutes(plan.matter.asked.warm_up_s)} min."))
    return rows(table, setting) or hanging("  ", FREE, setting)
