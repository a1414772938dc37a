"""A drill: where it lies on its lifts, its text, how much, easier versions, what comes before and after."""

from collections.abc import Iterator
from typing import NamedTuple

from kb.dials import dials_of
from kb.dose import work_seconds
from kb.feet import FEET
from kb.kit import fit
from kb.show.as_json import show_json
from kb.show.bars import Bar
from kb.show.chart_svg import chart_figure
from kb.show.coach_words import CAUTIONS, LOADS, dosed, duration, human, listed, moved_on
from kb.show.page.content.card import FINE
from kb.show.page.page import Link, Page
from kb.show.page.stock import Stock
from kb.terms import Drill, DrillId, Stage

__all__ = ["DrillShown", "drill_page"]

STAGES = {
    Stage.PREPARE: "preparation",
    Stage.POSITION: "a position",
    Stage.SEGMENT: "a part",
    Stage.JOIN: "parts together",
    Stage.WHOLE: "the whole lift",
    Stage.FINISH: "strengthening",
}


class DrillShown(NamedTuple):
    """What a drill's page holds."""

    drill: Drill
    stage: str
    lifts: tuple[Link, ...]
    charts: tuple[tuple[str, str], ...]
    strip: str
    moving: str
    positions: tuple[Link, ...]
    dose: str
    time: str
    load: str
    move_on: str
    gear: tuple[Link, ...]
    helped: str
    feet: str
    kits: tuple[str, ...]
    first: tuple[tuple[Link, ...], ...]
    parts: tuple[Link, ...]
    easier: tuple[Link, ...]
    harder: tuple[Link, ...]
    leads_to: tuple[Link, ...]
    works_on: tuple[Link, ...]
    opens: str
    mind: str


def drill_page(stock: Stock, drill_id: str) -> Page:
    """The page of a drill; KeyError if there is none of that id."""
    drill = stock.drills[DrillId(drill_id)]
    others, positions = stock.drills.values(), tuple(_figures(drill, stock))
    held = DrillShown(
        drill=drill,
        stage=STAGES[drill.stage],
        lifts=tuple(Link(stock.name(lift), "lift", lift) for lift in drill.lifts),
        charts=tuple(_charts(drill, stock)),
        strip=drill.id if len(positions) and drill.stage is not Stage.PREPARE else "",
        moving=drill.id if len(positions) > 1 and drill.stage is not Stage.PREPARE else "",
        positions=positions,
        dose=dosed(drill, FINE),
        time=duration(work_seconds(drill)),
        load=_load(drill),
        move_on=moved_on(drill.standard),
        gear=tuple(Link(stock.name(item), "equipment", item) for item in drill.equipment),
        helped=listed([stock.name(aid).lower() if aid in stock.items else human(aid) for aid in drill.aid]),
        feet=FEET[drill.feet] if drill.feet != "still" else "",
        kits=tuple(kit for kit in stock.kits_by_size() if fit(drill, stock.kits[kit], stock.items) is not None),
        first=tuple(tuple(_drill(stock, member) for member in group) for group in drill.prerequisites),
        parts=tuple(_drill(stock, part) for part in drill.made_of),
        easier=tuple(_drill(stock, each.drill, each.eases) for each in drill.regressions),
        harder=tuple(
            _drill(stock, other.id) for other in others if any(each.drill == drill.id for each in other.regressions)
        ),
        leads_to=tuple(_drill(stock, other.id) for other in others if any(drill.id in group for group in other.groups)),
        works_on=tuple(_works_on(drill, stock)),
        opens=listed([human(joint) for joint in drill.opens]),
        mind=", ".join(CAUTIONS.get(caution, human(caution)) for caution in drill.cautions),
    )
    return Page(f"drill/{drill.id}", drill.name, "drill", held, data=show_json("drill", drill))


def _drill(stock: Stock, drill_id: str, beside: str = "") -> Link:
    return Link(stock.name(drill_id), "drill", drill_id, beside)


def _charts(drill: Drill, stock: Stock) -> Iterator[tuple[str, str]]:
    if drill.stage is Stage.PREPARE:
        return
    for lift_id in drill.reach:
        lift = stock.lifts[lift_id]
        bar = Bar(drill.name, work_seconds(drill), dials_of(drill, lift), "")
        yield lift.name, chart_figure(lift, (bar,))


def _figures(drill: Drill, stock: Stock) -> Iterator[Link]:
    """Its positions in order on its first lift; of preparation those it is for."""
    if drill.stage is Stage.PREPARE:
        yield from (Link(stock.name(each), "position", each) for each in drill.for_positions)
        return
    for lift_id in list(drill.reach)[:1]:
        lift = stock.lifts[lift_id]
        dials = dials_of(drill, lift)
        for n, timed in enumerate(lift.timeline):
            if dials.first <= n <= dials.last and not dials.left_out >> n & 1:
                yield Link(stock.name(timed.position), "position", timed.position, human(timed.at))


def _works_on(drill: Drill, stock: Stock) -> Iterator[Link]:
    for fault in dict.fromkeys(said.fault for said in drill.faults):
        causes = [human(said.cause) for said in drill.faults if said.fault == fault and said.cause]
        yield Link(stock.name(fault), "fault", fault, listed(causes))


def _load(drill: Drill) -> str:
    least, most = drill.load
    if drill.stage is Stage.PREPARE:
        return ""
    said = LOADS[least] if least == most else f"{LOADS[least]} to {LOADS[most]}"
    if drill.load_from is not None:
        low, high = drill.load_from.percent
        said += f", {low} to {high} % of the best {human(drill.load_from.lift)}"
    return said
