"""`drillpath chain FAULT`: from a fault to an ordered chain of drills that ends in the full lift."""

import sqlite3
from functools import partial
from typing import TYPE_CHECKING, Any, NamedTuple

import click

from kb.ask.barred import shelf_without
from kb.ask.chain import Chain, NoChain
from kb.ask.instead import Instead, instead
from kb.ask.names import resolve
from kb.ask.question import MOST_ENTRIES
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
    to_option,
    words,
)
from kb.commands.beside_asked import explains
from kb.commands.best_options import best_options
from kb.commands.by_screen_asked import ByScreen, by_screen_option
from kb.commands.chain_asked import about_of, question_of, shelf_asked, sought, unsure_said
from kb.commands.chain_none import put_none, session_command
from kb.commands.fault_meant import fault_meant, lift_meant
from kb.commands.said import cleared_option, said_of
from kb.commands.sheet_file import figures_of, paper_of, put_sheet, sheet_options
from kb.commands.shows_from import shows_from_of
from kb.commands.telling import Lifter, heavy_of, telling_json, telling_of
from kb.show.as_json import chain_json
from kb.terms import LiftId, Load

if TYPE_CHECKING:
    from kb.show.telling import Telling

__all__ = ["command"]


@click.command(name="chain", short_help="From a fault to the full lift, drill by drill.")
@click.argument("fault", nargs=-1, required=True, shell_complete=complete("fault"))
@click.option("--lift", metavar="LIFT", help="The lift it is seen in; needed where a fault is seen in several.")
@click.option("--cause", metavar="CAUSE", help="Why it happens; the commonest if nothing is said.")
@click.option(
    "--also-cause",
    metavar="CAUSE",
    multiple=True,
    help="Another cause that was found: what it calls for comes next, by turns.",
)
@room_options
@click.option("--stiff", metavar="J1,J2", help="Joints that a check found stiff: only what opens one of them opens.")
@click.option("--load", type=click.Choice([load.word for load in Load]), help="How heavy the lift is at the end.")
@click.option("--minutes", type=click.IntRange(min=1), help="How long there is.")
@click.option("--holds", metavar="D1,D2", help="Drills that are not in doubt.", shell_complete=complete("drill"))
@click.option(
    "--leave-out", metavar="D1,D2", help="Drills that this lifter won't or can't do.", shell_complete=complete("drill")
)
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
@click.option("--helped", metavar="WORDS", help="What made it right at once: it leads, and is faded drill by drill.")
@cleared_option
@click.option(
    "--weeks",
    type=click.IntRange(1, 26),
    help="Weeks until a day that counts: how the chain goes on until then.",
)
@click.option("--quiet", is_flag=True, help="Only what makes no bang; it ends in what is quiet.")
@click.option("--routes", type=click.IntRange(1, 9), default=1, help="How many different ways to show.")
@click.option("--why", is_flag=True, help="What it costs, what was left out, what other causes would change.")
@click.option(
    "--shows-from",
    callback=shows_from_of,
    metavar="KG|N%",
    help="The least weight, or per cent of the best, at which it is seen: the work is near that, not at a light bar.",
)
@click.option(
    "--heaviest",
    type=click.FloatRange(min=1, max=500),
    metavar="KG",
    help="All that can be put on a bar there: nothing is told heavier.",
)
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
    kit: str | None,
    have: str | None,
    to: str | None,
    why: bool,
    quiet: bool,
    sheet: str | None,
    paper: str | None,
    as_json: bool,
    **asked: Any,
) -> None:
    """From a fault to an ordered chain of drills that ends in the full lift.

    FAULT is an id, a name or the beginning of one; `find` knows other words. With --to it ends in a part of the lift,
    such as a power clean or a power jerk, and holds no drill that is caught deeper or splits.
    """
    beside, paper, db = (
        said_of(asked["said"], cleared=asked["cleared"], helped=asked["helped"] or ""),
        paper_of(sheet, paper),
        ctx.ensure_object(Asked).catalogue(),
    )
    named_lift = LiftId(resolve(db, "lift", lift)) if lift else None
    fault_id = fault_meant(ctx, db, words(fault), named_lift)
    shelf, quietly = shelf_asked(db, lift_meant(ctx, db, fault_id, named_lift), to, quiet=quiet)
    shelf = shelf_without(shelf, drills_named(db, asked["leave_out"]))
    beside = beside._replace(minds=(*quietly, *beside.minds))
    room = room_of(db, kit, have)
    about = about_of(db, shelf, fault_id, asked)
    lifter = Lifter.of(fault_id, about.leads, about.too, asked, named=about.cause is not None, beside=beside)
    question = question_of(db, shelf, about, room, asked)
    try:
        found = chain_with_text(db, sought(shelf, about.fault, question, asked), beside.tried)
    except NoChain as none:
        heavy = partial(heavy_of, db, shelf.lift, lifter, room.have)
        put_none(ctx, db, shelf, question, none, room, heavy, beside, as_json=as_json)
        ctx.exit(1)
    if sheet is not None:
        _put_sheet(db, found, room, lifter, sheet, paper)
    if as_json:
        more = {**telling_json(db, found, lifter), **(about.judged_by.as_json() if about.judged_by else {})}
        put_json({**chain_json(found, room.kit, about.leads.plain), **more})
        return
    # a session ends in the whole lift
    told = telling_of(db, found, lifter)._replace(
        also_causes=about.also,
        checks_first=lifter.said is not None and explains(about.fault, about.too) is None,
        session="" if to or quiet or asked["leave_out"] else session_command(ctx, found.matter.question),
    )
    settled = (lifter.named and not unsure_said(lifter.said)) or about.leads.number is not None
    shown = Shown(told, about.judged_by, settled, why, beside.tried)
    _put(db, found, room, shown)


def _put_sheet(db: sqlite3.Connection, found: Chain, room: Room, lifter: Lifter, sheet: str, paper: str) -> None:
    from kb.show.sheet.chain_sheet import chain_sheet

    figures = figures_of(db, found.matter.shelf.lift)
    told = telling_of(db, found, lifter)
    put_sheet(sheet, chain_sheet(found, room.kit, paper, figures=figures, telling=told))
    say(f"The sheet is in {sheet}: for a phone, and for {paper} paper.")


class Shown(NamedTuple):
    """How an answer is printed: its telling, what a screen said, whether its cause was named, `why`, words `tried`."""

    telling: "Telling"
    judged_by: ByScreen | None
    named: bool
    why: bool
    tried: frozenset[str]


def _others(db: sqlite3.Connection, found: Chain, tried: frozenset[str]) -> list[Instead]:
    """What the fault's other causes call for; their drills have their text."""
    others = instead(found.matter)
    return [other._replace(chain=chain_with_text(db, other.chain, tried)) if other.chain else other for other in others]


def _put(db: sqlite3.Connection, found: Chain, room: Room, shown: Shown) -> None:
    from kb.show.chain_text import chain_text
    from kb.show.setting import setting_of

    setting = setting_of()
    others = _others(db, found, shown.tried)
    if shown.telling.first is not None and not shown.telling.cause_named:
        from kb.show.first_text import first_text

        lines = first_text(found, room.kit, setting, others=others, telling=shown.telling)
    else:
        lines = chain_text(found, room.kit, setting, named=shown.named, others=others, telling=shown.telling)
    if shown.judged_by:
        lines += shown.judged_by.as_text(setting)
    if shown.why:
        from kb.ask.why import why as why_of
        from kb.show.why_text import why_text

        lines += why_text(found, why_of(found.matter, found.routes[0]), setting)
    click.echo("\n".join(lines))
