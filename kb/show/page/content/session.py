"""A session to follow: the running sheet, and its pace line, which the page's timer keeps."""

from typing import NamedTuple

from kb.ask.matter import matter_of
from kb.ask.question import ChainQuestion
from kb.ask.session.pace import Beat, beats
from kb.ask.session.records import Block, Session
from kb.ask.session.sessions import fault_sessions
from kb.dose import minutes
from kb.errors import NoAnswer
from kb.show.bars import bands_of
from kb.show.care import Due, begun, cares
from kb.show.chart_svg import chart_figure
from kb.show.coach_words import human, listed, throughout_said
from kb.show.entry_lines import gear_said
from kb.show.page.content.card import FINE
from kb.show.page.page import Link, Page
from kb.show.page.prepared import Prepared
from kb.show.page.stock import Stock
from kb.show.session_json import sessions_json
from kb.show.session_text import Where, session_bars
from kb.show.session_words import PARTS, clock, dose_words, if_not_words, standard_words, weight_words
from kb.terms import DrillId, Fault, FaultId, ItemId, LiftId, Load

__all__ = ["MINUTES", "BlockShown", "SessionShown", "session_links", "session_page", "sessions_of"]

MINUTES = 30
"""How long a prepared session is; the command fits one to any minutes."""


class BlockShown(NamedTuple):
    """One drill of the running sheet, and its beats."""

    part: str
    at: str
    start_s: int
    until: str
    drill: Link
    work: bool
    dose: str
    weight: str
    cue: str
    standard: str
    ticks: int
    if_not: str
    early: str
    gear: str
    cares: tuple[str, ...]
    beats: tuple[Beat, ...]


class SessionShown(NamedTuple):
    """What a session's page holds, or why there is none."""

    fault: Link
    lift: Link
    cause: str
    throughout: str
    kit: str
    minutes: int
    n: int
    of: int
    chart: str
    blocks: tuple[BlockShown, ...]
    spare: str
    left_out: tuple[tuple[Link, str], ...]
    others: tuple[Link, ...]
    why: str
    ask_first: bool


def sessions_of(stock: Stock, fault: Fault, prepared: Prepared) -> dict[str, list[str]]:
    """The name of each prepared session of a fault, and the kits it is for: its commonest cause, in each lift.

    As with chains, there is one for the smallest of the kits that lead through the same drills with the same gear.
    """
    first, kits = fault.causes[0].id, stock.kits_by_size()
    return {
        f"{fault.id}.{lift}.{its[0]}": its for lift in fault.lifts for its in prepared.ways(first, lift, kits).values()
    }


def session_links(stock: Stock, fault: Fault, prepared: Prepared) -> dict[str, Link]:
    """A link to each prepared session of a fault, by its name."""
    many = len(fault.lifts) > 1
    return {
        name: Link(
            f"{stock.name(name.split('.')[1]).lower()}, {listed(its, 'or')}" if many else listed(its, "or"),
            "session",
            name,
        )
        for name, its in sessions_of(stock, fault, prepared).items()
    }


def session_page(stock: Stock, name: str, prepared: Prepared) -> Page:
    """The page of a prepared session, by its name (fault, lift and kit); KeyError if there is none of that name."""
    fault_id, lift, kit = name.split(".") if name.count(".") == 2 else ("", "", "")
    fault = stock.faults[FaultId(fault_id)]
    links = session_links(stock, fault, prepared)
    others = tuple(link for other, link in links.items() if other != name)
    if name not in links:
        raise KeyError(name)
    shelf, have = stock.shelves[LiftId(lift)], stock.kits[kit]
    path, title = f"session/{name}", f"{fault.name}: {MINUTES} minutes"
    try:
        found = fault_sessions(matter_of(shelf, ChainQuestion(fault=fault.id, have=have)), MINUTES)
    except NoAnswer as none:
        held = _empty(stock, fault, LiftId(lift), kit)._replace(others=others, why=str(none))
        return Page(path, title, "session", held)
    texted = tuple(_texted(session, stock) for session in found)
    held = _shown(stock, fault, texted[0], kit, have)._replace(others=others)
    return Page(path, title, "session", held, data=sessions_json(texted), scripts=("timer.js",))


def _texted(session: Session, stock: Stock) -> Session:
    blocks = tuple(block._replace(drill=stock.drills[block.drill.id]) for block in session.blocks)
    return session._replace(blocks=blocks)


def _empty(stock: Stock, fault: Fault, lift: LiftId, kit: str) -> SessionShown:
    return SessionShown(
        Link(fault.name, "fault", fault.id),
        Link(stock.name(lift), "lift", lift),
        human(fault.causes[0].id),
        throughout_said(fault.causes[0]),
        kit,
        MINUTES,
        1,
        1,
        "",
        (),
        "",
        (),
        (),
        "",
        ask_first=False,
    )


def _shown(stock: Stock, fault: Fault, session: Session, kit: str, have: frozenset[ItemId]) -> SessionShown:
    where = Where(kit, have, stock.items, stock.drills)
    seen = begun(gear for block in session.blocks for gear in block.gear)
    beaten: dict[int, list[Beat]] = {}
    for beat in beats(session):
        start = max(block.start_s for block in session.blocks if block.start_s <= beat.at_s)
        beaten.setdefault(start, []).append(beat)
    blocks = session.blocks
    bands = bands_of(session.worked, session.lift) if session.worked is not None else ()
    return _empty(stock, fault, session.lift.id, kit)._replace(
        n=session.n,
        of=session.of,
        chart=chart_figure(session.lift, session_bars(session), bands=bands),
        blocks=tuple(
            _block(block, PARTS[block.part] if n == 0 or blocks[n - 1].part != block.part else "", seen, where, beaten)
            for n, block in enumerate(blocks)
        ),
        spare=f"{minutes(session.spare_s)} min" if session.spare_s >= 60 else "",
        left_out=tuple((Link(each.drill.name, "drill", each.drill.id), each.why) for each in session.left_out),
        ask_first=any(
            block.load is Load.WORKING or block.drill.not_for or "breath" in block.drill.cautions for block in blocks
        ),
    )


def _block(block: Block, part: str, seen: set[str], where: Where, beaten: dict[int, list[Beat]]) -> BlockShown:
    drill = block.drill
    early = where.drills[DrillId(block.if_early)].name.lower() if block.if_early and block.part != "warm-up" else ""
    return BlockShown(
        part=part,
        at=clock(block.start_s),
        start_s=block.start_s,
        until=clock(block.start_s + block.seconds),
        drill=Link(drill.name, "drill", drill.id),
        work=block.work,
        dose=dose_words(drill, block.dose, FINE),
        weight=weight_words(block) or "",
        cue=drill.cues[0] if drill.cues else "",
        standard=standard_words(block),
        ticks=min(drill.standard.of, 12),
        if_not=if_not_words(block, where.drills, FINE) or "",
        early=early,
        gear=gear_said(block.gear, where.have, where.items),
        cares=tuple(cares(Due(drill, block.load, block.dials.catch, block.gear), seen)),
        beats=tuple(beaten.get(block.start_s, ())),
    )
