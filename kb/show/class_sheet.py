"""A class on paper: the hall and the coaches' lists on the first page, then a card for each lifter, to be cut out.

One file of HTML without script, for A4 or letter; the template and its style stand beside this module.
"""

from base64 import b64encode
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

from kb.ask.class_.slots import ClassPlan, LifterPlan, Slot
from kb.dose import minutes
from kb.show.class_at_bars import bars_table, helpers_said
from kb.show.class_bars import bar_line
from kb.show.class_calls import calls_said
from kb.show.class_cares import cares_of
from kb.show.class_coach import FREE, coach_list
from kb.show.class_hall import hall_row, hall_times
from kb.show.class_more import more_line, strength_said
from kb.show.class_words import (
    after,
    chain_said,
    closing_texts,
    facts_of,
    gear_said,
    letters_of,
    slot_said,
    title_of,
    verdict,
)
from kb.show.coach_words import listed, moved_on, plain_markdown
from kb.show.session_words import clock
from kb.show.setting import Setting
from kb.terms import DrillId

__all__ = ["class_sheet"]

HERE = Path(__file__).parent


class _Line(NamedTuple):
    """A line of a card; `boxes` are to be ticked, one for each try that counted."""

    at: str
    where: str
    says: str
    on_when: str = ""
    boxes: int = 0
    cue: str = ""


def class_sheet(plan: ClassPlan, paper: str, *, with_solver: bool) -> str:
    """A class as a page; `paper` is a4 or letter."""
    from jinja2 import Environment, FileSystemLoader, StrictUndefined

    style = (HERE / "class_sheet.css").read_text("utf-8") + f"@page {{ size: {paper}; margin: 11mm; }}\n"
    environment = Environment(
        loader=FileSystemLoader(HERE), autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True
    )
    asked = plan.matter.asked
    start = asked.warm_up_s
    letters = letters_of(plan)
    *closing, review = closing_texts(plan)
    return environment.get_template("class_sheet.html").render(
        style=style,
        digest=b64encode(sha256(style.encode()).digest()).decode(),
        title=asked.name,
        facts=facts_of(plan),
        verdict=[plain_markdown(each) for each in verdict(plan, with_solver=with_solver)],
        warm_up=minutes(asked.warm_up_s),
        times=hall_times(plan),
        rows=[(each.lifter.name, hall_row(each, start, letters)) for each in plan.lifters],
        groups=_groups(plan, letters),
        coaches=[coach_list(plan, n) for n in range(asked.coaches)],
        free=FREE,
        calls=calls_said(plan),
        bars=bars_table(plan),
        helpers=helpers_said(asked.helpers),
        cares=cares_of(plan),
        gear=gear_said(plan),
        cards=[(title_of(each), _card(plan, each), after(each)) for each in plan.lifters],
        closing=closing,
        review=review,
    )


def _groups(plan: ClassPlan, letters: dict[DrillId, str]) -> list[tuple[str, list[tuple[str, str]]]]:
    """Who works together, and their chain's drills with their letters."""
    return [
        (
            listed([plan.matter.owns[n].lifter.name for n in group.lifters]),
            [(letters[drill], name) for drill, name in chain_said(group)],
        )
        for group in plan.matter.groups
    ]


def _card(plan: ClassPlan, each: LifterPlan) -> list[_Line]:
    lines = [_line(plan, each, slot) for slot in each.slots]
    for slot in each.strength:
        says = strength_said(slot, Setting(fine=True)).replace("\N{NO-BREAK SPACE}", " ")
        lines.append(_tried(_Line(clock(slot.start_s), slot.station, says), slot))
    for more in each.goes_on:
        lines.append(_Line(clock(more.start_s), more.station, more_line(more)))
    if each.at_bar is not None:
        lines.append(_Line(clock(each.at_bar.start_s), each.at_bar.station, bar_line(each.at_bar)))
    return lines


def _line(plan: ClassPlan, each: LifterPlan, slot: Slot) -> _Line:
    said = slot_said(plan, each, slot, Setting(fine=True)).replace("\N{NO-BREAK SPACE}", " ")
    line = _Line(clock(slot.start_s), slot.station, said)
    if slot.part not in ("work", "check"):
        return line
    return _tried(line, slot)


def _tried(line: _Line, slot: Slot) -> _Line:
    """A line with the drill's first cue, its standard, and a box for each try."""
    cue = slot.drill.cues[0] if slot.drill.cues else ""
    boxes, on_when = _on_when(slot)
    return line._replace(on_when=on_when, boxes=boxes, cue=cue)


def _on_when(slot: Slot) -> tuple[int, str]:
    """How many tries there are to tick, and what they must show; of a check those of its one round."""
    standard, dose = slot.drill.standard, slot.drill.dose
    if slot.part == "up":
        return slot.rounds, f"To standard: {standard.seen}. A box a round."
    tries = dose.reps * dose.sides
    if slot.part == "work" or standard.of <= tries:
        return standard.of, f"On when {moved_on(standard)}."
    counted = f"all {tries} show" if tries > 1 else "it shows"
    return max(tries, 1), f"On when {counted} this: {standard.seen}."
