"""`drillpath session`: what to do from the first minute to the last."""

import sqlite3
from typing import Any

import click

from kb.ask import read
from kb.ask.chain import NoChain
from kb.ask.session.records import Session
from kb.commands.asked import Asked, Room, as_json_option, complete, put_json, room_of, room_options, say, sentence
from kb.commands.by_screen_asked import by_screen_option
from kb.commands.load_asked import iron_options
from kb.commands.said import said_first
from kb.commands.session_asked import Typed, sessions_of, with_texts
from kb.commands.sheet_file import figures_of, paper_of, put_sheet, sheet_options
from kb.errors import BadInput, NoAnswer
from kb.terms import Load

__all__ = ["command"]


@click.command(name="session", short_help="What to do from the first minute to the last.")
@click.option("--fault", metavar="FAULT", help="What was seen.", shell_complete=complete("fault"))
@click.option(
    "--path", "path_to", metavar="LIFT", help="The next session on the way to a lift.", shell_complete=complete("lift")
)
@click.option(
    "--drills", metavar="D1,D2", help="Your own drills, in order; the lift follows.", shell_complete=complete("drill")
)
@click.option("--lift", metavar="LIFT", help="The lift; needed with --drills, and where a fault is seen in several.")
@click.option("--cause", metavar="CAUSE", help="Why it happens; the commonest if nothing is said.")
@click.option("--minutes", metavar="MIN", required=True, help="How long there is.")
@room_options
@click.option("--load", type=click.Choice([load.word for load in Load]), help="How heavy the lift is at the end.")
@click.option("--holds", metavar="D1,D2", help="Drills that are not in doubt.", shell_complete=complete("drill"))
@click.option("--teach", is_flag=True, help="Count the time to show each drill to a class.")
@by_screen_option
@iron_options
@click.option("--session", "which", type=click.IntRange(min=1), default=1, help="Which one, where it takes several.")
@click.option("--pace", is_flag=True, help="What to say at which second.")
@click.option("--message", is_flag=True, help="Short enough to send to a lifter.")
@sheet_options
@as_json_option
@said_first
@click.pass_context
def command(
    ctx: click.Context,
    /,
    which: int,
    pace: bool,
    message: bool,
    sheet: str | None,
    paper: str | None,
    as_json: bool,
    **typed: Any,
) -> None:
    """A warm-up that opens what the drills will ask for, the drills, the lift and a finish: to the second.

    Name one of --fault, --path and --drills. What the minutes don't hold is left out, and it says why.
    """
    if pace + message + as_json > 1:
        raise BadInput("--pace, --message and --json are forms of one answer; ask for one")
    paper = paper_of(sheet, paper)
    db = ctx.ensure_object(Asked).catalogue()
    asked = Typed(**typed)
    room = room_of(db, asked.kit, asked.have)
    try:
        found = with_texts(db, sessions_of(ctx, db, asked, room))
    except NoAnswer as none:
        if as_json:
            put_json({"version": 1, "blocks": [], "sessions": [], "why": str(none)})
        say(f"Error: {sentence(none)}")
        if isinstance(none, NoChain) and not as_json:
            say("`drillpath chain` with the same fault and kit says what can be rehearsed.")
        ctx.exit(1)
    if which > len(found):
        raise BadInput(f"there is no session {which}: it takes {len(found)}")
    if sheet is not None:
        _write(db, found[which - 1], room, sheet, paper)
    if as_json:
        from kb.show.session_json import sessions_json

        put_json(sessions_json(found))
        return
    _put(db, found, which, room, pace=pace, message=message)


def _write(db: sqlite3.Connection, session: Session, room: Room, sheet: str, paper: str) -> None:
    """Put a session in a file, for a phone and for paper."""
    from kb.show.session_text import Where
    from kb.show.sheet.session_sheet import session_sheet

    there = Where(room.kit, room.have, read.items(db), read.drills(db))
    put_sheet(sheet, session_sheet(session, there, paper, figures=figures_of(db, session.lift)))
    say(f"The sheet is in {sheet}: for a phone, and for {paper} paper.")


def _put(
    db: sqlite3.Connection, found: tuple[Session, ...], which: int, room: Room, *, pace: bool, message: bool
) -> None:
    """Print the session asked for, in the form asked for."""
    from kb.show.setting import setting_of

    setting = setting_of()
    if message:
        from kb.show.session_message import message_text

        lines = message_text(found[which - 1], setting)
    elif pace:
        from kb.show.pace import pace_text

        lines = pace_text(found[which - 1], setting)
    else:
        from kb.show.session_text import Where, sessions_text

        lines = sessions_text(found, which, Where(room.kit, room.have, read.items(db), read.drills(db)), setting)
    click.echo("\n".join(lines))
