"""The cards of a class on a terminal: who does the same at the same times has one together."""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.class_.slots import ClassPlan, LifterPlan
from kb.show.class_bars import bar_line
from kb.show.class_more import more_line, strength_line, strength_said
from kb.show.class_words import after, slot_said, title_of
from kb.show.session_words import clock
from kb.show.setting import Setting, hanging, rows
from kb.terms import DrillId

__all__ = ["cards_of"]


class _Row(NamedTuple):
    """A line of a card: when, where (nothing for what is no stretch), what."""

    at: str
    where: str
    says: str


def cards_of(plan: ClassPlan, setting: Setting) -> list[tuple[list[str], str, list[str]]]:
    """The cards with whose they are, their title and their lines.

    Who does the same at the same times has one together; where each has their own bar, the numbers stand in the order
    of the names. The standard of what strengthens is on the first card that has it.
    """
    whose: dict[tuple[str, tuple[_Row, ...]], list[LifterPlan]] = {}
    for each in plan.lifters:
        alike = tuple(row._replace(where=_kind(row.where)) for row in _card(plan, each, setting, set()))
        whose.setdefault((_title(each), alike), []).append(each)
    told: set[DrillId] = set()
    found = []
    for (title, _), members in whose.items():
        cards = [_card(plan, each, setting, set(told)) for each in members]
        told |= {slot.drill.id for slot in members[0].strength}
        merged = [row._replace(where=_places([card[n].where for card in cards])) for n, row in enumerate(cards[0])]
        found.append(([each.lifter.name for each in members], title, _lines(merged, setting)))
    return found


def _title(each: LifterPlan) -> str:
    return title_of(each).removeprefix(f"{each.lifter.name}: ")


def _kind(where: str) -> str:
    """A place without its number."""
    return where.rstrip("0123456789").rstrip()


def _places(where: Sequence[str]) -> str:
    """Where several stand in the same row.

    >>> _places(["bar 1", "bar 3"]), _places(["floor", "floor"])
    ('bar 1/3', 'floor')
    """
    if len(set(where)) == 1:
        return where[0]
    kind = _kind(where[0])
    return f"{kind} {'/'.join(each.removeprefix(kind).strip() for each in where)}"


def _lines(table: Sequence[_Row], setting: Setting) -> list[str]:
    """The rows as lines; columns are as wide as the stretches before and after the list's end need."""
    lines: list[str] = []
    block: list[_Row] = []
    for row in table:
        if row.where:
            block.append(row)
            continue
        lines += rows(block, setting)
        lines += hanging(f"  {row.at}  ", row.says, setting)
        block = []
    return lines + rows(block, setting)


def _card(plan: ClassPlan, each: LifterPlan, setting: Setting, told: set[DrillId]) -> list[_Row]:
    """A row for each stretch, and one for the list's end; no standard for what strengthens if it is told already."""
    table = [_Row(clock(slot.start_s), slot.station, slot_said(plan, each, slot, setting)) for slot in each.slots]
    table.append(_Row(clock(each.slots[-1].end_s), "", after(each)))
    for slot in each.strength:
        says = strength_said(slot, setting) if slot.drill.id in told else strength_line(slot, setting)
        table.append(_Row(clock(slot.start_s), slot.station, says))
    for more in each.goes_on:
        table.append(_Row(clock(more.start_s), more.station, more_line(more)))
    if each.at_bar is not None:
        # the same for all, so that one card does for all: whose turn it is stands in the coach's list
        since = min(other.at_bar.start_s for other in plan.lifters if other.at_bar is not None)
        table.append(_Row(clock(since), "bar", bar_line(each.at_bar)))
    return table
