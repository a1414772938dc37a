"""A fault: what it looks like, how to tell its causes apart, and the chain for the cause chosen."""

from typing import NamedTuple

from kb.ask.tells import decide
from kb.show.as_json import show_json
from kb.show.bars import bands_of
from kb.show.chart_svg import chart_figure
from kb.show.coach_words import human, listed, throughout_said
from kb.show.look_first import look_first
from kb.show.page.content.session import session_links
from kb.show.page.page import Link, Page
from kb.show.page.prepared import Prepared
from kb.show.page.stock import Stock
from kb.show.tell_lines import only_heavy_said
from kb.terms import Fault, FaultId

__all__ = ["CauseShown", "FaultShown", "TellShown", "fault_page"]


class TellShown(NamedTuple):
    """A quick check: what to have done, what to look at, which causes a yes and a no leave, by id and name."""

    do: str
    look: str
    seconds: int
    yes: tuple[tuple[str, str], ...]
    no: tuple[tuple[str, str], ...]


class CauseShown(NamedTuple):
    """A cause, and for each lift the chain with each kit."""

    id: str
    name: str
    kind: str
    text: str
    throughout: str
    earlier: Link | None
    chains: tuple[tuple[str, tuple[Link, ...]], ...]


class FaultShown(NamedTuple):
    """What a fault's page holds."""

    fault: Fault
    look_first: str
    lifts: tuple[Link, ...]
    charts: tuple[tuple[str, str], ...]
    tells: tuple[TellShown, ...]
    tell_seconds: int
    left_together: str
    only_heavy: str
    causes: tuple[CauseShown, ...]
    compare: tuple[Link, ...]
    sessions: tuple[Link, ...]
    kits: tuple[str, ...]
    figure: bool


def fault_page(stock: Stock, fault_id: str, prepared: Prepared) -> Page:
    """The page of a fault; KeyError if there is none of that id."""
    fault = stock.faults[FaultId(fault_id)]
    decision = decide(fault)
    held = FaultShown(
        fault=fault,
        look_first=look_first(fault),
        lifts=tuple(Link(stock.lifts[lift].name, "lift", lift) for lift in fault.lifts),
        charts=tuple(
            (stock.lifts[lift].name, chart_figure(stock.lifts[lift], (), bands=bands_of(fault, stock.lifts[lift])))
            for lift in fault.lifts
        ),
        tells=tuple(
            TellShown(tell.do, tell.look, tell.seconds, _causes(tell.yes), _causes(tell.no)) for tell in decision.tells
        ),
        tell_seconds=decision.seconds,
        left_together=listed([f"{human(a)} from {human(b)}" for a, b in decision.left_together]),
        only_heavy=only_heavy_said(fault),
        causes=tuple(_cause(fault, n, stock, prepared) for n in range(len(fault.causes))),
        compare=tuple(Link(stock.name(other), "fault", other) for other in fault.look_alikes),
        sessions=tuple(session_links(stock, fault, prepared).values()),
        kits=tuple(stock.kits_by_size()),
        figure=fault.posture is not None,
    )
    return Page(f"fault/{fault.id}", fault.name, "fault", held, data=show_json("fault", fault))


def _causes(ids: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
    return tuple((each, human(each)) for each in ids)


def _cause(fault: Fault, n: int, stock: Stock, prepared: Prepared) -> CauseShown:
    cause = fault.causes[n]
    chains = []
    for lift in fault.lifts:
        links = [
            Link(listed(its, "or"), "chain", name, prepared.beside(cause.id, lift, its[0]))
            for name, its in prepared.ways(cause.id, lift, stock.kits_by_size()).items()
        ]
        chains.append((stock.lifts[lift].name if len(fault.lifts) > 1 else "", tuple(links)))
    return CauseShown(
        cause.id,
        human(cause.id),
        human(cause.kind),
        cause.text,
        throughout_said(cause, briefly=True),
        Link(stock.name(cause.earlier), "fault", cause.earlier) if cause.earlier else None,
        tuple(chains),
    )
