"""A class: who works together, who does what where and when, what is out, each coach's list, a card for each lifter."""

from typing import NamedTuple

from kb.ask.class_.rotation import TICK_S
from kb.ask.class_.slots import ClassPlan, GearUse, LifterPlan, Slot
from kb.dose import minutes
from kb.show.class_at_bars import bars_table
from kb.show.class_bars import bar_line
from kb.show.class_calls import calls_said
from kb.show.class_cares import cares_of
from kb.show.class_coach import FREE, coach_list
from kb.show.class_hall import Cell, gear_rows, hall_row, hall_times
from kb.show.class_json import class_json, no_class_json
from kb.show.class_more import more_line, strength_line
from kb.show.class_words import (
    after,
    chain_said,
    facts_of,
    gear_said,
    letters_of,
    slot_said,
    title_of,
    verdict,
)
from kb.show.coach_words import human, listed, moved_on, plain_markdown
from kb.show.page.page import Link, Page
from kb.show.page.stock import Stock
from kb.show.session_words import clock
from kb.show.setting import Setting
from kb.solve.planning import NoPlan, Planned
from kb.terms import DrillId

__all__ = ["CardShown", "ClassShown", "DrillLine", "class_page"]

FINE = Setting(fine=True)


class DrillLine(NamedTuple):
    """A drill of the class: its letter in the chart, when its doers move on, what to say."""

    letter: str
    drill: Link
    move_on: str
    cue: str


class CardShown(NamedTuple):
    """A lifter's class: each stretch's time, place and words."""

    title: str
    lines: tuple[tuple[str, str, str], ...]
    after: str


class ClassShown(NamedTuple):
    """What a class's page holds, or why there is no plan."""

    name: str
    facts: str
    verdict: tuple[str, ...]
    cares: tuple[str, ...]
    short: tuple[str, ...]
    groups: tuple[tuple[str, tuple[tuple[str, Link], ...]], ...]
    warm_up: int
    times: tuple[Cell, ...]
    rows: tuple[tuple[str, tuple[Cell, ...]], ...]
    gear: tuple[tuple[str, tuple[Cell, ...]], ...]
    gear_said: tuple[str, ...]
    coaches: tuple[tuple[tuple[str, str], ...], ...]
    calls: tuple[tuple[str, str], ...]
    bars: tuple[tuple[str, str], ...]
    drills: tuple[DrillLine, ...]
    cards: tuple[CardShown, ...]
    ask_first: bool
    why: str
    free: str = FREE


def class_page(stock: Stock) -> Page:
    """The page of the class that comes with the program."""
    found = stock.evening()
    name = found.plan.matter.asked.name if isinstance(found, Planned) else "A class"
    if isinstance(found, NoPlan):
        said = str(found)
        held = ClassShown(name, "", (), (), (), (), 0, (), (), (), (), (), (), (), (), (), ask_first=False, why=said)
        return Page("class", name, "class", held, data=no_class_json(said, found.short))
    return Page("class", name, "class", _shown(found), data=class_json(found.plan))


def _shown(found: Planned) -> ClassShown:
    plan = found.plan
    asked, letters = plan.matter.asked, letters_of(plan)
    start, have = asked.warm_up_s, {use.item: use.have for use in plan.gear}
    return ClassShown(
        name=asked.name,
        facts=" · ".join(facts_of(plan)),
        verdict=tuple(map(plain_markdown, verdict(plan, with_solver=found.solved))),
        cares=tuple(cares_of(plan)),
        short=tuple(_short(use, plan) for use in plan.gear if use.peak and use.peak == use.have),
        groups=tuple(_groups(plan, letters)),
        warm_up=minutes(start),
        times=tuple(hall_times(plan)),
        rows=tuple((each.lifter.name, tuple(hall_row(each, start, letters))) for each in plan.lifters),
        gear=tuple((f"{human(item)}, of {have[item]}", tuple(row)) for item, row in gear_rows(plan).items()),
        gear_said=tuple(gear_said(plan)),
        coaches=tuple(_duties(plan, coach) for coach in range(asked.coaches)),
        calls=tuple(calls_said(plan)),
        bars=tuple(bars_table(plan)),
        drills=tuple(_drills(plan, letters)),
        cards=tuple(_card(plan, each) for each in plan.lifters),
        ask_first=any(own.lifter.weight_kg or own.up for own in plan.matter.owns),
        why="",
    )


def _short(use: GearUse, plan: ClassPlan) -> str:
    """When every one of a thing is out, in words."""
    now, spells = plan.matter.asked.warm_up_s, []
    for cell in gear_rows(plan)[use.item]:
        end = now + cell.span * TICK_S
        if cell.kind == "all":
            spells.append(f"{clock(now)} to {clock(end)}")
        now = end
    every = "the only one is" if use.have == 1 else f"all {use.have} are"
    return f"{human(use.item)}; {every} out from {listed(spells)}"


def _groups(plan: ClassPlan, letters: dict[DrillId, str]) -> list[tuple[str, tuple[tuple[str, Link], ...]]]:
    """Who works together, and their chain's drills with their letters."""
    return [
        (
            listed([plan.matter.owns[n].lifter.name for n in group.lifters]),
            tuple((letters[drill], Link(name, "drill", drill)) for drill, name in chain_said(group)),
        )
        for group in plan.matter.groups
    ]


def _duties(plan: ClassPlan, coach: int) -> tuple[tuple[str, str], ...]:
    own = coach_list(plan, coach)
    warm_up = minutes(plan.matter.asked.warm_up_s)
    first = [("0:00", f"Lead the common warm-up, {warm_up} min.")] if coach == 0 and warm_up else []
    return (*first, *own)


def _drills(plan: ClassPlan, letters: dict[DrillId, str]) -> list[DrillLine]:
    """Every drill that is done, in the order of its letters."""
    drills = {doing.drill.id: doing.drill for doings in plan.matter.doings for doing in doings}
    drills |= {slot.drill.id: slot.drill for each in plan.lifters for slot in each.strength}
    return [
        DrillLine(
            letter, Link(drills[each].name, "drill", each), moved_on(drills[each].standard), _cue(drills[each].cues)
        )
        for each, letter in letters.items()
        if each in drills
    ]


def _cue(cues: tuple[str, ...]) -> str:
    return cues[0] if cues else ""


def _card(plan: ClassPlan, each: LifterPlan) -> CardShown:
    lines = tuple((clock(slot.start_s), slot.station, _said(plan, each, slot)) for slot in each.slots)
    lines += tuple((clock(slot.start_s), slot.station, strength_line(slot, FINE)) for slot in each.strength)
    for more in each.goes_on:
        lines = (*lines, (clock(more.start_s), more.station, more_line(more)))
    if each.at_bar is not None:
        lines = (*lines, (clock(each.at_bar.start_s), each.at_bar.station, bar_line(each.at_bar)))
    return CardShown(title_of(each), lines, after(each))


def _said(plan: ClassPlan, each: LifterPlan, slot: Slot) -> str:
    return slot_said(plan, each, slot, FINE)
