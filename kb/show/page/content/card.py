"""A drill of a chain as a card: how much, do, look for, say, move on when, with what, what to mind."""

from collections.abc import Collection, Mapping
from typing import NamedTuple

from kb.ask.route import Entry
from kb.dose import minutes
from kb.show.care import Due, cares
from kb.show.coach_words import CAUTIONS, changed, dosed, human, in_hands, listed, moved_on, share_said
from kb.show.coach_words import seen as must_show
from kb.show.entry_lines import gear_said
from kb.show.page.page import Link
from kb.show.setting import Setting
from kb.show.sheet.told import round_shown
from kb.terms import Drill, DrillId, Item, ItemId, Lift, Stage

__all__ = ["FINE", "Card", "card_of"]

FINE = Setting(fine=True)
"""How words are set on a page."""


class Card(NamedTuple):
    """What a chain's page says of one drill."""

    n: int
    drill: Drill
    work: bool
    minutes: int
    dose: str
    full_dose: str
    load: str
    changed: str
    move_on: str
    ticks: int
    gear: str
    lost: tuple[str, ...]
    cares: tuple[str, ...]
    mind: str
    easier: tuple[Link, ...]
    figures: tuple[str, ...]


def card_of(
    n: int,
    entry: Entry,
    lift: Lift,
    *,
    have: Collection[ItemId],
    items: Mapping[ItemId, Item],
    drills: Mapping[DrillId, Drill],
    seen: set[str],
) -> Card:
    """A chain's entry as a card; `seen` holds the cautions that the page has said already."""
    drill = entry.drill
    lost = dict.fromkeys(each.lost for each in entry.gear if each.lost and each.item not in have)
    fresh = [text for text in lost if text not in seen]
    # a check is one round: it can show no more tries than that has
    shown, tries = round_shown(drill)
    due = cares(Due(drill, entry.load, entry.dials.catch, entry.gear), seen)
    seen.update(fresh)
    return Card(
        n=n,
        drill=drill,
        work=entry.work,
        minutes=minutes(entry.seconds),
        dose=dosed(drill, FINE, work=entry.work),
        full_dose=dosed(drill, FINE),
        load=_load(entry),
        changed=listed([changed(change, lift, drill) for change in entry.changes]),
        move_on=moved_on(drill.standard, entry.gone)
        if entry.work
        else f"{shown}: {must_show(drill.standard, entry.gone)}",
        ticks=min(drill.standard.of if entry.work else tries, 12),
        gear=gear_said(entry.gear, have, items),
        lost=tuple(fresh),
        cares=tuple(due),
        mind=", ".join(CAUTIONS.get(caution, human(caution)) for caution in drill.cautions),
        easier=tuple(
            Link(drills[each.drill].name, "drill", each.drill, each.eases)
            for each in drill.regressions
            if each.drill in drills
        ),
        figures=_figures(entry, lift),
    )


def _load(entry: Entry) -> str:
    said = in_hands(entry.drill, entry.load, entry.gear, work=entry.work)
    share = share_said(entry.drill, entry.load) if said and not said.startswith("light bar") else ""
    return ", ".join(part for part in (said, share) if part)


def _figures(entry: Entry, lift: Lift) -> tuple[str, ...]:
    """The positions that the drill passes, in order: first, last and at most two between."""
    if entry.drill.stage is Stage.PREPARE:
        return ()
    points = [
        timed.position
        for n, timed in enumerate(lift.timeline)
        if entry.dials.first <= n <= entry.dials.last and not entry.dials.left_out >> n & 1
    ]
    if len(points) > 4:
        middle = points[1:-1]
        points = [points[0], middle[len(middle) // 3], middle[2 * len(middle) // 3], points[-1]]
    return tuple(dict.fromkeys(points))
