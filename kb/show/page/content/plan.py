"""A plan over weeks, from nothing to a lift with a kit: session by session, what is new and what comes back."""

from collections.abc import Mapping
from typing import NamedTuple

from kb.ask.plan.plan import Plan, Session, plan
from kb.errors import NoAnswer
from kb.show.page.page import Link, Page
from kb.show.page.stock import Stock
from kb.show.plan_json import plan_json
from kb.show.plan_text import due_before
from kb.show.plan_words import KINDS, counted, facts, how_it_goes, session_minutes, short_of, spare_said, weighed
from kb.terms import ItemId, LiftId

__all__ = ["A_WEEK", "MINUTES", "PlanShown", "SessionLine", "SlotLine", "names_of_plans", "plan_page"]

A_WEEK, MINUTES = 2, 40
"""Sessions a week and their minutes, of a prepared plan; the command plans any other."""


class SlotLine(NamedTuple):
    """One drill of a session: what it is there for, how far along it is, its minutes, what must be said first."""

    kind: str
    drill: Link
    counted: str
    minutes: int
    cares: tuple[str, ...]


class SessionLine(NamedTuple):
    """One session; `week` is said where it begins one."""

    n: int
    week: str
    minutes: str
    slots: tuple[SlotLine, ...]
    spare: str
    places: bool


class PlanShown(NamedTuple):
    """What a plan's page holds, or why there is none."""

    lift: Link
    kit: str
    facts: str
    short_of: str
    sessions: tuple[SessionLine, ...]
    notes: tuple[str, ...]
    others: tuple[Link, ...]
    why: str


def names_of_plans(stock: Stock, lift_id: str) -> list[str]:
    """The name of each prepared plan of a lift: one a kit."""
    return [f"{lift_id}.{kit}" for kit in stock.kits_by_size()]


def plan_page(stock: Stock, name: str) -> Page:
    """The page of a prepared plan, by its name (lift and kit); KeyError if there is none of that name."""
    lift_id, _, kit = name.partition(".")
    if kit not in stock.kits:
        raise KeyError(name)
    lift = stock.lifts[LiftId(lift_id)]
    others = tuple(Link(f"With the {other} kit", "plan", f"{lift.id}.{other}") for other in stock.kits if other != kit)
    title = f"{lift.name}: a plan from nothing"
    held = PlanShown(Link(lift.name, "lift", lift.id), kit, "", "", (), (), others, "")
    way = stock.way(lift.id, kit)
    if isinstance(way, str):
        return Page(f"plan/{name}", title, "plan", held._replace(why=way))
    try:
        found = plan(way, per_week=A_WEEK, minutes=MINUTES)
    except NoAnswer as none:
        return Page(f"plan/{name}", title, "plan", held._replace(why=str(none)))
    seen: set[str] = set()
    held = held._replace(
        facts=" · ".join(facts(found, kit)),
        short_of=short_of(found),
        sessions=tuple(
            _session(
                found, n, have=stock.kits[kit], texts={d: stock.drills[d].sections for d in stock.drills}, seen=seen
            )
            for n in range(len(found.sessions))
        ),
        notes=tuple(how_it_goes(found)),
    )
    return Page(f"plan/{name}", title, "plan", held, data=plan_json(found, kit, {}))


def _session(
    found: Plan, n: int, *, have: frozenset[ItemId], texts: Mapping[str, Mapping[str, str]], seen: set[str]
) -> SessionLine:
    session: Session = found.sessions[n]
    begins = n == 0 or found.sessions[n - 1].week != session.week
    return SessionLine(
        session.n,
        f"Week {session.week}{', light' if session.light else ''}" if begins else "",
        session_minutes(session),
        tuple(
            SlotLine(
                KINDS[slot.kind],
                Link(weighed(slot), "drill", slot.form.drill.id),
                counted(slot),
                slot.minutes,
                tuple(due_before(found, slot, have, texts, seen)),
            )
            for slot in session.slots
        ),
        spare_said(session) if session.spare and session.more else "",
        session.places,
    )
