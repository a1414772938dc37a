"""`drillpath chain FAULT`: from a fault to an ordered chain of drills that ends in the full lift."""

import sqlite3
from functools import partial
from typing import TYPE_CHECKING, Any, NamedTuple

import click

from kb.ask.chain import Chain, NoChain, chain
from kb.ask.ending import within_ending
from kb.ask.instead import Instead, instead
from kb.ask.matter import known_fault
from kb.ask.names import resolve
from kb.ask.question import MOST_ENTRIES, ChainQuestion
from kb.ask.with_text import chain_with_text
from kb.commands.asked import (
    Asked,
    Room,
    as_json_option,
    complete,
    drills_named,
    put_json,
    room_of,
    room_options,
    say,
    shelf_to,
    to_option,
    words,
)
from kb.commands.beside_asked import explains, seen_beside
from kb.commands.best_options import best_options
from kb.commands.by_screen_asked import ByScreen, by_screen_option, judged
from kb.commands.chain_none import put_none, session_command
from kb.commands.fault_meant import cause_meant, fault_meant, lift_meant
from kb.commands.leading import leading
from kb.commands.said import said_of
from kb.commands.sheet_file import figures_of, paper_of, put_sheet, sheet_options
from kb.commands.telling import Lifter, heavy_of, telling_json, telling_of
from kb.show.as_json import chain_json
from kb.terms import Fault, LiftId, Load

if TYPE_CHECKING:
    from kb.show.telling import Telling

__all__ = ["command"]


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
    "--also-seen",
    metavar="FAULT",
    multiple=True,
    help="Another fault seen in the same lift: a cause that explains both leads.",
    shell_complete=complete("fault"),
)
@to_option
@click.option("--said", metavar="WORDS", help="What else was said of the lifter: a care it calls for comes first.")
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
    why: bool,
    screen: str | None,
    sheet: str | None,
    paper: str | None,
    as_json: bool,
    first: int | None,
    also_seen: tuple[str, ...],
    to: str | None,
    said: str | None,
    weeks: int | None,
    best: tuple[str, ...],
    bar: str,
    **limits: Any,
) -> None:
    """From a fault to an ordered chain of drills that ends in the full lift.

    FAULT is an id, a name or the beginning of one; `find` knows other words. With --to it ends in a part of the lift,
    such as a power clean or a power jerk, and holds no drill that is caught deeper or splits.
    """
    beside, paper, db = said_of(said), paper_of(sheet, paper), ctx.ensure_object(Asked).catalogue()
    named_lift = LiftId(resolve(db, "lift", lift)) if lift else None
    fault_id = fault_meant(ctx, db, words(fault), named_lift)
    shelf = shelf_to(db, lift_meant(ctx, db, fault_id, named_lift), to)
    shelf = within_ending(shelf) if to else shelf
    room = room_of(db, kit, have)
    leads = leading(db, shelf, fault_id, first, stays=cause is not None)
    about = known_fault(shelf, leads.fault)
    too = seen_beside(db, shelf, about.id, fault_id, also_seen)
    judged_by = judged(db, about, shelf.lift, screen) if screen else None
    named = cause_meant(about, cause) or (judged_by.cause if judged_by else None)
    question = _question(db, about, room, named or explains(about, too), **limits)
    lifter = Lifter(fault_id, leads, too, best, bar, weeks, named=named is not None, beside=beside)
    try:
        found = chain_with_text(db, chain(shelf, question))
    except NoChain as none:
        put_none(ctx, db, shelf, question, none, room, partial(heavy_of, db, best, bar), as_json=as_json)
        ctx.exit(1)
    if sheet is not None:
        _put_sheet(db, found, room, lifter, sheet, paper)
    if as_json:
        more = {**telling_json(db, found, lifter), **(judged_by.as_json() if judged_by else {})}
        put_json({**chain_json(found, room.kit, leads.plain), **more})
        return
    # a session ends in the whole lift
    told = telling_of(db, found, lifter)._replace(session="" if to else session_command(ctx, question))
    _put(db, found, room, Shown(told, judged_by, named=lifter.named or leads.number is not None, why=why))


def _question(
    db: sqlite3.Connection,
    about: Fault,
    room: Room,
    cause: str | None,
    *,
    load: str | None,
    minutes: int | None,
    holds: str | None,
    at_most: int,
    routes: int,
) -> ChainQuestion:
    return ChainQuestion(
        fault=about.id,
        have=room.have,
        cause=cause,
        load=Load[load.upper()] if load else None,
        seconds=60 * minutes if minutes else None,
        holds=drills_named(db, holds),
        at_most=at_most,
        routes=routes,
    )


def _put_sheet(db: sqlite3.Connection, found: Chain, room: Room, lifter: Lifter, sheet: str, paper: str) -> None:
    from kb.show.sheet.chain_sheet import chain_sheet

    figures = figures_of(db, found.matter.shelf.lift)
    told = telling_of(db, found, lifter)
    put_sheet(sheet, chain_sheet(found, room.kit, paper, figures=figures, telling=told))
    say(f"The sheet is in {sheet}: for a phone, and for {paper} paper.")


class Shown(NamedTuple):
    """How an answer is printed: its telling, what a screen said, whether its cause was named, and whether `why`."""

    telling: "Telling"
    judged_by: ByScreen | None
    named: bool
    why: bool


def _others(db: sqlite3.Connection, found: Chain) -> list[Instead]:
    """What the fault's other causes call for; their drills have their text."""
    others = instead(found.matter)
    return [other._replace(chain=chain_with_text(db, other.chain)) if other.chain else other for other in others]


def _put(db: sqlite3.Connection, found: Chain, room: Room, shown: Shown) -> None:
    from kb.show.chain_text import chain_text
    from kb.show.setting import setting_of

    setting = setting_of()
    others = _others(db, found)
    lines = chain_text(found, room.kit, setting, named=shown.named, others=others, telling=shown.telling)
    if shown.judged_by:
        lines += shown.judged_by.as_text(setting)
    if shown.why:
        from kb.ask.why import why as why_of
        from kb.show.why_text import why_text

        lines += why_text(found, why_of(found.matter, found.routes[0]), setting)
    click.echo("\n".join(lines))
