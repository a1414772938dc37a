"""A lift: its timeline with figures, and the path from nothing, gateways marked; paths with less gear beside it."""

from typing import NamedTuple

from kb.show.as_json import show_json
from kb.show.coach_words import moved_on
from kb.show.page.content.path import PathShown, paths_of
from kb.show.page.content.plan import A_WEEK, MINUTES, names_of_plans
from kb.show.page.content.timelines import Timeline, timeline_of
from kb.show.page.page import Link, Page
from kb.show.page.stock import Stock
from kb.terms import Lift, LiftId

__all__ = ["LiftShown", "lift_page"]


class LiftShown(NamedTuple):
    """What a lift's page holds; `way` is the path with the most gear, `others` those with less."""

    lift: Lift
    timeline: Timeline
    drill: Link
    learnt: str
    parts: tuple[Link, ...]
    way: PathShown
    others: tuple[Link, ...]
    plans: tuple[Link, ...]
    faults: tuple[Link, ...]


def lift_page(stock: Stock, lift_id: str) -> Page:
    """The page of a lift; KeyError if there is none of that id."""
    lift = stock.lifts[LiftId(lift_id)]
    *less, (_, most) = paths_of(stock, lift.id).items()
    held = LiftShown(
        lift=lift,
        timeline=timeline_of(lift, stock),
        drill=Link(stock.name(lift.drill), "drill", lift.drill),
        learnt=moved_on(lift.standard),
        parts=tuple(Link(stock.name(part), "lift", part) for part in lift.parts),
        way=most,
        others=tuple(Link(f"From nothing, with {way.kits}", "path", name, way.beside) for name, way in less),
        plans=tuple(
            Link(f"{A_WEEK} a week, {MINUTES} min, {name.partition('.')[2]} kit", "plan", name)
            for name in names_of_plans(stock, lift.id)
        ),
        faults=tuple(Link(fault.name, "fault", fault.id) for fault in stock.faults.values() if lift.id in fault.lifts),
    )
    return Page(f"lift/{lift.id}", lift.name, "lift", held, data=show_json("lift", lift))
