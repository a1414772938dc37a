"""A chain: the reach chart, then each drill, other causes and kits, what to do afterwards; or why there is none."""

from collections.abc import Iterable
from typing import NamedTuple

from kb.ask.matter import Matter
from kb.ask.rehearse import SESSION_MINUTES, Rehearsal
from kb.ask.route import Entry, Route
from kb.ask.sittings import sitting_seconds
from kb.dose import minutes
from kb.show.as_json import chain_json, no_chain_json
from kb.show.bars import bands_of, route_bars
from kb.show.care import asks_first, begun
from kb.show.chain_said import after_said, heavier_said
from kb.show.chart_svg import chart_figure
from kb.show.coach_words import LOADS, human, listed, throughout_said
from kb.show.look_first import look_first
from kb.show.no_chain_text import further, session_said
from kb.show.openers import meanwhile
from kb.show.over_weeks import OVER_WEEKS
from kb.show.page.content.card import Card, card_of
from kb.show.page.page import Link, Page
from kb.show.page.prepared import Asked, Prepared
from kb.show.page.stock import Stock
from kb.terms import Cause, ItemId, Lift, Load

__all__ = ["ChainShown", "NoChainShown", "RouteShown", "answer_page", "chain_page"]


class RouteShown(NamedTuple):
    """One way: its chart, its drills, how it is cut, and what is not proved about it."""

    chart: str
    minutes: int
    cards: tuple[Card, ...]
    sittings: tuple[str, ...]
    gap: str


class ChainShown(NamedTuple):
    """What a chain's page holds."""

    fault: Link
    lift: Link
    cause: Cause
    cause_name: str
    cause_kind: str
    worked: Link | None
    load: str
    kits: str
    routes: tuple[RouteShown, ...]
    first: str
    throughout: str
    look_first: str
    heavier: str
    over_weeks: str
    after: str
    strengthen: tuple[Card, ...]
    finish: tuple[Link, ...]
    other_causes: tuple[Link, ...]
    other_kits: tuple[Link, ...]
    ask_first: bool


class NoChainShown(NamedTuple):
    """Why there is no chain, what can be rehearsed, what would open one."""

    fault: Link
    lift: Link
    cause: Cause
    cause_name: str
    kits: str
    why: str
    rehearse: tuple[Card, ...]
    more: tuple[Link, ...]
    session: str
    session_minutes: int
    opens: tuple[str, ...]
    other_causes: tuple[Link, ...]
    other_kits: tuple[Link, ...]
    ask_first: bool


def chain_page(stock: Stock, name: str, prepared: Prepared) -> Page:
    """The page of a prepared answer; `name` is what its address ends in; KeyError if there is none of that name."""
    return answer_page(stock, f"chain/{name}", prepared.answers[name], prepared)


def answer_page(stock: Stock, path: str, asked: Asked, prepared: Prepared) -> Page:
    """The page of any answer about a fault: its chain, or why there is none."""
    return _none(stock, path, asked, prepared) if asked.found is None else _some(stock, path, asked, prepared)


def _none(stock: Stock, path: str, asked: Asked, prepared: Prepared) -> Page:
    fault, cause, rehearsal = asked.fault, asked.fault.cause(asked.cause), asked.rehearsal or Rehearsal((), ())
    session = session_said(stock.shelves[asked.lift.id], rehearsal, asked.kits[0] if asked.kits else None)
    shown = NoChainShown(
        Link(fault.name, "fault", fault.id),
        Link(asked.lift.name, "lift", asked.lift.id),
        cause,
        human(cause.id),
        _with(asked),
        asked.why,
        _cards(rehearsal.entries, stock, asked.lift, rehearsal.have, set()),
        tuple(Link(drill.name, "drill", drill.id) for drill in further(rehearsal)),
        session or "",
        SESSION_MINUTES,
        tuple(_opener(opener.items, opener.prerequisite, stock) for opener in rehearsal.would_open),
        _other_causes(asked, prepared),
        _other_kits(stock, asked, prepared),
        ask_first=asks_first(entry.drill for entry in rehearsal.entries),
    )
    data = no_chain_json(asked.why, asked.rehearsal, session, lift=asked.lift)
    return Page(path, f"{fault.name}: no chain", "no_chain", shown, data=data)


def _some(stock: Stock, path: str, asked: Asked, prepared: Prepared) -> Page:
    fault, cause, chain = asked.fault, asked.fault.cause(asked.cause), asked.found
    if chain is None:
        raise ValueError("an answer without a chain has a page of its own")
    matter = chain.matter
    drills = [entry.drill for part in (*(route.entries for route in chain.routes), chain.strengthen) for entry in part]
    seen = [begun(gear for entry in route.entries for gear in entry.gear) for route in chain.routes]
    full = {entry.drill.id for entry in chain.strengthen}
    shown = ChainShown(
        Link(fault.name, "fault", fault.id),
        Link(asked.lift.name, "lift", asked.lift.id),
        cause,
        human(cause.id),
        human(cause.kind),
        None if matter.worked.id == fault.id else Link(matter.worked.name, "fault", matter.worked.id),
        "light bar" if matter.load is Load.LIGHT else LOADS[matter.load],
        _with(asked),
        tuple(_route(route, stock, matter, said) for route, said in zip(chain.routes, seen, strict=True)),
        meanwhile(chain.routes[0]) if matter.worked_cause.kind == "mobility" else "",
        throughout_said(cause, matter.worked_cause),
        look_first(fault),
        heavier_said(matter).partition(" On the terminal")[0],
        OVER_WEEKS if matter.worked_cause.kind != "mobility" else "",
        after_said(chain),
        _cards(chain.strengthen, stock, asked.lift, matter.question.have, seen[0]),
        tuple(Link(drill.name, "drill", drill.id) for drill in chain.finish if drill.id not in full),
        _other_causes(asked, prepared),
        _other_kits(stock, asked, prepared),
        ask_first=matter.load is Load.WORKING or asks_first(drills),
    )
    said = f"{asked.lift.name}: because of {human(cause.id)}, with {_with(asked)}"
    data = chain_json(chain, asked.kits[0] if asked.kits else None)
    return Page(path, f"{fault.name}: {human(cause.id)}", "chain", shown, said, data)


def _with(asked: Asked) -> str:
    """What there is to work with: the kits that give this answer, or what was listed."""
    return f"the {listed(asked.kits, 'or')} kit" if asked.kits else "your gear"


def _cards(
    entries: Iterable[Entry], stock: Stock, lift: Lift, have: frozenset[ItemId], seen: set[str]
) -> tuple[Card, ...]:
    """Entries as cards, numbered; `seen` holds the cautions that the page has said already."""
    return tuple(
        card_of(n, entry, lift, have=have, items=stock.items, drills=stock.drills, seen=seen)
        for n, entry in enumerate(entries, 1)
    )


def _route(route: Route, stock: Stock, matter: Matter, seen: set[str]) -> RouteShown:
    lift = matter.shelf.lift
    return RouteShown(
        chart=chart_figure(lift, route_bars(route, lift), bands=bands_of(matter.worked, lift)),
        minutes=minutes(route.seconds),
        cards=_cards(route.entries, stock, lift, matter.question.have, seen),
        sittings=tuple(
            f"drills {first + 1} to {end}, {minutes(sitting_seconds(route.entries, first, end))} min"
            for first, end in route.sittings
        )
        if len(route.sittings) > 1
        else (),
        gap="" if route.optimal or not route.proved else f"{route.gap:.0%}",
    )


def _opener(items: tuple[str, ...], prerequisite: str | None, stock: Stock) -> str:
    if prerequisite is not None:
        return f"{stock.name(prerequisite)}, held first"
    return listed([stock.name(item).lower() for item in items])


def _other_causes(asked: Asked, prepared: Prepared) -> tuple[Link, ...]:
    kit = asked.kits[0] if asked.kits else "full"
    return tuple(
        Link(human(cause.id), "chain", prepared.name(cause.id, asked.lift.id, kit), human(cause.kind))
        for cause in asked.fault.causes
        if cause.id != asked.cause
    )


def _other_kits(stock: Stock, asked: Asked, prepared: Prepared) -> tuple[Link, ...]:
    cause, lift = asked.cause, asked.lift.id
    others = [kit for kit in stock.kits_by_size() if kit not in asked.kits]
    return tuple(
        Link(listed(kits, "or"), "chain", name, prepared.beside(cause, lift, kits[0]))
        for name, kits in prepared.ways(cause, lift, others).items()
    )
