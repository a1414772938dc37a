"""`drillpath chain FAULT`: from a fault to an ordered chain of drills that ends in the full lift."""

import sqlite3
from functools import partial
from typing import TYPE_CHECKING, Any

import click

from kb.ask import read
from kb.ask.chain import Chain, NoChain, chain
from kb.ask.cut_short import cut_short
from kb.ask.instead import Instead, instead
from kb.ask.matter import matter_of
from kb.ask.names import resolve
from kb.ask.question import MOST_ENTRIES, ChainQuestion
from kb.ask.route import Entry
from kb.ask.shelf import Shelf
from kb.commands.asked import (
    Asked,
    Room,
    again,
    as_json_option,
    complete,
    drills_named,
    put_json,
    room_of,
    room_options,
    say,
    sentence,
    words,
)
from kb.commands.best_options import best_options
from kb.commands.by_screen_asked import ByScreen, by_screen_option, judged
from kb.commands.fault_meant import cause_meant, fault_meant, lift_meant
from kb.commands.leading import Leading, leading
from kb.commands.sheet_file import figures_of, paper_of, put_sheet, sheet_options
from kb.errors import NoAnswer
from kb.show.as_json import alone_json, chain_json, no_chain_json
from kb.terms import LiftId, Load

if TYPE_CHECKING:
    from kb.show.telling import Telling

__all__ = ["command", "with_text"]

NO_SESSION = ("at_most", "first", "weeks", "routes", "why", "sheet", "paper", "as_json")
"""Options that a session doesn't take."""


@click.command(name="chain", short_help="From a fault to the full lift, drill by drill.")
@click.argument("fault", nargs=-1, required=True, shell_complete=complete("fault"))
@click.option("--lift", metavar="LIFT", help="The lift it is seen in; needed where a fault is seen in several.")
@click.option("--cause", metavar="CAUSE", help="Why it happens; the commonest if nothing is said.")
@room_options
@click.option("--load", type=click.Choice([load.word for load in Load]), help="How heavy the lift is at the end.")
@click.option("--minutes", type=click.IntRange(min=1), help="How long there is.")
@click.option("--holds", metavar="D1,D2", help="Drills that are not in doubt.", shell_complete=complete("drill"))
@click.option(
    "--at-most", type=click.IntRange(min=1), default=MOST_ENTRIES, show_default=True, help="Drills in one sitting."
)
@click.option("--first", type=click.IntRange(min=1), help="What to look at first, by its number, that fits: it leads.")
@click.option(
    "--weeks",
    type=click.IntRange(1, 26),
    help="Weeks until a day that counts: how the chain goes on until then.",
)
@click.option("--routes", type=click.IntRange(1, 9), default=1, help="How many different ways to show.")
@click.option("--why", is_flag=True, help="What it costs, what was left out, what other causes would change.")
@best_options
@by_screen_option
@sheet_options
@as_json_option
@click.pass_context
def command(
    ctx: click.Context,
    /,
    fault: tuple[str, ...],
    lift: str | None,
    cause: str | None,
    kit: str | None,
    have: str | None,
    load: str | None,
    minutes: int | None,
    holds: str | None,
    at_most: int,
    routes: int,
    why: bool,
    screen: str | None,
    sheet: str | None,
    paper: str | None,
    as_json: bool,
    first: int | None,
    **said: Any,
) -> None:
    """From a fault to an ordered chain of drills that ends in the full lift.

    FAULT is an id, a name or the beginning of one; `find` knows other words.
    """
    paper, db = paper_of(sheet, paper), ctx.ensure_object(Asked).catalogue()
    named_lift = LiftId(resolve(db, "lift", lift)) if lift else None
    fault_id = fault_meant(ctx, db, words(fault), named_lift)
    shelf = read.shelf(db, lift_meant(ctx, db, fault_id, named_lift))
    room = room_of(db, kit, have)
    fault_id, *_ = leads = leading(db, shelf, fault_id, first, stays=cause is not None)
    named = cause_meant(shelf.faults[fault_id], cause) if fault_id in shelf.faults else cause
    seen = judged(db, shelf.faults[fault_id], shelf.lift, screen) if screen and fault_id in shelf.faults else None
    question = ChainQuestion(
        fault=fault_id,
        have=room.have,
        cause=seen.cause if seen and named is None else named,
        load=Load[load.upper()] if load else None,
        seconds=60 * minutes if minutes else None,
        holds=drills_named(db, holds),
        at_most=at_most,
        routes=routes,
    )
    try:
        found = chain(shelf, question)
    except NoChain as none:
        _put_none(ctx, db, shelf, question, none, room, (leads, said), as_json=as_json)
        ctx.exit(1)
    found, telling = with_text(db, found), partial(_telling, db, shelf, leads, **said)
    if sheet is not None:
        from kb.show.sheet.chain_sheet import chain_sheet

        figures = figures_of(db, shelf.lift)
        put_sheet(sheet, chain_sheet(found, room.kit, paper, figures=figures, telling=telling()))
        say(f"The sheet is in {sheet}: for a phone, and for {paper} paper.")
    if as_json:
        more = {**_told_json(db, found, leads, **said), **(seen.as_json() if seen else {})}
        put_json({**chain_json(found, room.kit, leads.plain), **more})
        return
    _put(ctx, db, found, room, telling(), named=cause is not None, why=why, seen=seen)


def _telling(
    db: sqlite3.Connection, shelf: Shelf, leads: Leading, best: tuple[str, ...], bar: str, weeks: int | None
) -> "Telling":
    """How an answer is told to this lifter. Raises BadInput for a best that is none."""
    from kb.show.telling import Telling

    telling = Telling(leads.text, leads.number, weeks=weeks)
    if not best:
        return telling
    from kb.commands.load_asked import bests_of
    from kb.discs import iron_of
    from kb.show.by_numbers import by_numbers
    from kb.show.heavy import in_kilograms

    drills = read.drills(db)
    bests = bests_of(db, best, "kg", drills)
    names = {str(each.id): each.name for group in (read.lifts(db), drills) for each in group.values()}
    return telling._replace(heavy=in_kilograms(bests, iron_of(bar)), numbers=by_numbers(shelf.lift, bests, names))


def _told_json(db: sqlite3.Connection, found: Chain, leads: Leading, **said: Any) -> dict[str, Any]:
    """What was asked for of the telling, for programs: nothing where nothing was."""
    more: dict[str, Any] = {}
    if said["best"]:
        more["numbers"] = list(_telling(db, found.matter.shelf, leads, **said).numbers)
    if said["weeks"] is not None:
        from kb.show.over_weeks import over_weeks

        more["weeks"] = over_weeks(said["weeks"], found.matter.fault.gone)
    return more


def with_text(db: sqlite3.Connection, found: Chain) -> Chain:
    """A chain whose drills and fault have their text: what to say is in it, and what to look at first."""
    fault = found.matter.fault
    told = fault._replace(sections=read.sections(db, "fault", [fault.id])[fault.id])
    routes = tuple(route._replace(entries=_told(db, route.entries)) for route in found.routes)
    matter = found.matter._replace(fault=told)
    return found._replace(matter=matter, routes=routes, strengthen=_told(db, found.strengthen))


def _told(db: sqlite3.Connection, entries: tuple[Entry, ...]) -> tuple[Entry, ...]:
    """Entries whose drills have their text."""
    texts = read.sections(db, "drill", {entry.drill.id for entry in entries})
    return tuple(entry._replace(drill=entry.drill._replace(sections=texts[entry.drill.id])) for entry in entries)


def _others(db: sqlite3.Connection, found: Chain) -> list[Instead]:
    """What the fault's other causes call for; their drills have their text."""
    others = instead(found.matter)
    return [other._replace(chain=with_text(db, other.chain)) if other.chain else other for other in others]


def _put(
    ctx: click.Context,
    db: sqlite3.Connection,
    found: Chain,
    room: Room,
    telling: "Telling",
    *,
    named: bool,
    why: bool,
    seen: ByScreen | None,
) -> None:
    from kb.show.chain_text import chain_text
    from kb.show.setting import setting_of

    setting = setting_of()
    lines = chain_text(
        found,
        room.kit,
        setting,
        named=named or seen is not None or telling.first is not None,
        others=_others(db, found),
        telling=telling._replace(session=_session_command(ctx, found.matter.question)),
    )
    if seen:
        lines += seen.as_text(setting)
    if why:
        from kb.ask.why import why as why_of
        from kb.show.why_text import why_text

        lines += why_text(found, why_of(found.matter, found.routes[0]), setting)
    click.echo("\n".join(lines))


def _put_none(
    ctx: click.Context,
    db: sqlite3.Connection,
    shelf: Shelf,
    question: ChainQuestion,
    none: NoChain,
    room: Room,
    lifter: tuple[Leading, dict[str, Any]],
    *,
    as_json: bool,
) -> None:
    from kb.ask.rehearse import rehearse
    from kb.show.chain_text import no_chain_text, session_said

    longer = _with_more_time(shelf, question)
    today = cut_short(longer, question.seconds or 0) if longer is not None else None
    if longer is not None and today is not None:
        longer, (today,) = with_text(db, longer), _told(db, (today,))
    rehearsal = None if longer else rehearse(matter_of(shelf, question))
    if rehearsal is not None:
        rehearsal = rehearsal._replace(entries=_told(db, rehearsal.entries))
    session = session_said(shelf, rehearsal, room.kit) if rehearsal else _session(ctx, shelf, question)
    if as_json:
        alone = {"today": alone_json(today, shelf.lift)} if today is not None else {}
        put_json({**no_chain_json(str(none), rehearsal, session, lift=shelf.lift), **alone})
        return
    from kb.show.setting import setting_of

    say(f"Error: {sentence(none)}")
    if longer is not None and session is not None:
        say(f"What does fit, with less of each drill and a warm-up:\n  {session}")
    if longer is not None and today is not None:
        from kb.show.cut_short_text import cut_short_text

        heavy = _telling(db, shelf, lifter[0], **lifter[1]).heavy
        click.echo("\n".join(cut_short_text(longer, today, (question.seconds or 0) // 60, setting_of(), heavy)))
    for line in no_chain_text(shelf, rehearsal, room.kit, setting_of()):
        click.echo(line)


def _with_more_time(shelf: Shelf, question: ChainQuestion) -> Chain | None:
    """The chain where it is time alone that forbids it: nothing to rehearse then, and no item would open one."""
    if question.seconds is None:
        return None
    try:
        return chain(shelf, question._replace(seconds=None))
    except NoChain:
        return None


def _session(ctx: click.Context, shelf: Shelf, question: ChainQuestion) -> str | None:
    """The command for a session in the same minutes, which may give each drill less; None where that doesn't fit."""
    from kb.ask.session.sessions import fault_sessions

    asked = question._replace(seconds=None, at_most=MOST_ENTRIES, routes=1)
    try:
        fault_sessions(matter_of(shelf, asked), (question.seconds or 0) // 60)
    except NoAnswer:
        return None
    return _session_command(ctx, question)


def _session_command(ctx: click.Context, question: ChainQuestion) -> str:
    """What was typed, as a question for a session."""
    return again(ctx, question.fault, to="session", without=NO_SESSION)
