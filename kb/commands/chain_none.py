"""What is said where a chain was asked for and there is none: why, what can be rehearsed, what fits the minutes."""

import sqlite3
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

import click

from kb.ask.chain import Chain, NoChain, chain
from kb.ask.cut_short import cut_short
from kb.ask.matter import matter_of
from kb.ask.question import MOST_ENTRIES, ChainQuestion
from kb.ask.shelf import Shelf
from kb.ask.with_text import chain_with_text, entries_with_text
from kb.commands.asked import Room, again, put_json, say, sentence
from kb.commands.said import SaidOf
from kb.errors import NoAnswer
from kb.show.as_json import alone_json, no_chain_json

if TYPE_CHECKING:
    from kb.show.heavy import Heavy

__all__ = ["put_none", "session_command"]

NO_SESSION = (
    "leave_out",
    "heaviest",
    "helped",
    "at_most",
    "first",
    "weeks",
    "also_seen",
    "also_cause",
    "said",
    "shows_from",
    "to",
    "quiet",
    "cleared",
    "routes",
    "why",
    "sheet",
    "paper",
    "as_json",
)
"""Options that a session doesn't take."""


def put_none(
    ctx: click.Context,
    db: sqlite3.Connection,
    shelf: Shelf,
    question: ChainQuestion,
    none: NoChain,
    room: Room,
    heavy: "Callable[[], Heavy]",
    beside: SaidOf,
    *,
    as_json: bool,
) -> None:
    """Say why there is no chain, and what there is instead; `heavy` is asked only where a drill is told.

    What was said of the lifter comes before the drills, here too.
    """
    from kb.ask.leads import LEADS
    from kb.ask.rehearse import rehearse
    from kb.show.no_chain_text import no_chain_text, session_said

    longer = _with_more_time(shelf, question)
    today = cut_short(longer, question.seconds or 0) if longer is not None else None
    if longer is not None and today is not None:
        longer = chain_with_text(db, longer, beside.tried)
        (today,) = entries_with_text(db, (today,), beside.tried)
    rehearsal = None if longer else rehearse(matter_of(shelf, question))
    if rehearsal is not None:
        rehearsal = rehearsal._replace(entries=entries_with_text(db, rehearsal.entries, beside.tried))
    session = session_said(shelf, rehearsal, room.kit) if rehearsal else _session(ctx, shelf, question)
    if as_json:
        alone = {"today": alone_json(today, shelf.lift)} if today is not None else {}
        told: dict[str, Any] = {"caution": beside.caution} if beside.caution else {}
        told |= {"minds": list(beside.minds)} if beside.minds else {}
        put_json({**no_chain_json(str(none), rehearsal, session, lift=shelf.lift), **alone, **told})
        return
    from kb.show.chain_text import said_text
    from kb.show.setting import setting_of, wrapped

    setting = setting_of()
    leads = [text for text in beside.minds if text.startswith(LEADS)]
    for text in leads:
        click.echo("\n".join([*wrapped(text, setting.width), ""]))
    say(f"No chain: {sentence(none)}")
    if longer is not None and session is not None:
        say(f"What does fit, with less of each drill and a warm-up:\n  {session}")
    for line in said_text(beside.caution, [text for text in beside.minds if text not in leads], setting):
        click.echo(line)
    if longer is not None and today is not None:
        from kb.show.cut_short_text import cut_short_text

        minutes = (question.seconds or 0) // 60
        click.echo("\n".join(cut_short_text(longer, today, minutes, setting, heavy())))
    for line in no_chain_text(shelf, rehearsal, room.kit, setting):
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
    return session_command(ctx, question)


def session_command(ctx: click.Context, question: ChainQuestion) -> str:
    """What was typed, as a question for a session, with the cause that was taken where none was typed."""
    taken = {"cause": question.cause} if question.cause is not None and ctx.params["cause"] is None else {}
    return again(ctx, question.fault, to="session", without=NO_SESSION, **taken)
