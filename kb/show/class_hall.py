"""The hall of a class over time: what each lifter does, and how much of each thing is out."""

from itertools import groupby
from typing import NamedTuple

from kb.ask.class_.rotation import TICK_S
from kb.ask.class_.slots import ClassPlan, LifterPlan, Slot
from kb.show.session_words import clock
from kb.terms import DrillId, ItemId

__all__ = ["Cell", "gear_rows", "hall_row", "hall_times"]

EVERY = 10
"""Columns (of half a minute) between two times over the chart of the hall."""


class Cell(NamedTuple):
    """A stretch of a row of the chart: how many columns, what stands in it, and how it is drawn."""

    span: int
    text: str
    kind: str


def hall_times(plan: ClassPlan) -> list[Cell]:
    """The times over the chart, from the warm-up's end to where nobody does anything any more."""
    start = plan.matter.asked.warm_up_s
    columns = -(-(plan.until_s - start) // TICK_S)
    return [Cell(min(EVERY, columns - n), clock(start + n * TICK_S), "time") for n in range(0, columns, EVERY)]


def hall_row(each: LifterPlan, start_s: int, letters: dict[DrillId, str]) -> list[Cell]:
    """A lifter's class from `start_s`, s, to their own end; `letters` are the drills', small for what there is more."""
    cells, now = [], start_s
    for slot in (*each.slots, *each.strength):
        if slot.start_s > now:
            cells.append(Cell((slot.start_s - now) // TICK_S, "", "waiting" if slot in each.slots else "none"))
        text = {"shown": "*", "loading": "+", "helps": "h"}.get(slot.part, letters[slot.drill.id])
        kind = "work" if slot.part == "up" else slot.part
        cells.append(Cell((slot.end_s - slot.start_s) // TICK_S, text, kind))
        now = slot.end_s
    for more in each.goes_on:
        if more.start_s > now:  # whose turn comes later
            cells.append(Cell((more.start_s - now) // TICK_S, "", "none"))
        cells += [Cell((end - start) // TICK_S, letters[drill.id].lower(), "more") for start, end, drill in more.legs]
        now = more.end_s
    return cells


def gear_rows(plan: ClassPlan) -> dict[ItemId, list[Cell]]:
    """How many of each counted thing are out, from the warm-up's end on; of those ever out."""
    start, end = plan.matter.asked.warm_up_s, plan.until_s
    out: dict[ItemId, list[int]] = {use.item: [0] * ((end - start) // TICK_S) for use in plan.gear if use.peak}
    for each in plan.lifters:
        for slot in (*each.slots, *each.strength):
            for item in slot.gear if slot.part != "helps" else ():
                for tick in range((slot.start_s - start) // TICK_S, (_until(plan, each, slot) - start) // TICK_S):
                    if item in out:
                        out[item][tick] += 1
        for item in each.at_bar.gear if each.at_bar else ():
            if each.at_bar and item in out:
                for tick in range((each.at_bar.start_s - start) // TICK_S, (each.at_bar.end_s - start) // TICK_S):
                    out[item][tick] += 1
        for more in each.goes_on:
            for item in (item for item in more.gear if item in out):
                for tick in range((more.start_s - start) // TICK_S, (more.end_s - start) // TICK_S):
                    out[item][tick] += 1
    have = {use.item: use.have for use in plan.gear}
    return {
        item: [_stretch(many, have[item], len(list(same))) for many, same in groupby(row)] for item, row in out.items()
    }


def _stretch(many: int, have: int, span: int) -> Cell:
    return Cell(span, str(many) if many else "", "none" if not many else "all" if many == have else "some")


def _until(plan: ClassPlan, each: LifterPlan, slot: Slot) -> int:
    """When the gear of a stretch is free again, s: where some take turns at it, when the last of them has ended."""
    if not slot.shares or slot.part == "loading":
        return slot.end_s
    theirs = [
        its.end_s
        for other in plan.lifters
        if other.lifter.name in slot.shares
        for its in (*other.slots, *other.strength)
        if (its.part, its.drill.id, its.load) == (slot.part, slot.drill.id, slot.load)
        if each.lifter.name in its.shares and its.station == slot.station
    ]
    return max(slot.end_s, *theirs)
