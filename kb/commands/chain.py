"""`drillpath chain FAULT`: from a fault to an ordered chain of drills that ends in the full lift."""

import sqlite3
from collections.abc import Mapping
from contextlib import suppress
from functools import partial
from typing import TYPE_CHECKING, Any, NamedTuple

import click

from kb.ask.barred import quiet_part, quiet_shelf, shelf_without
from kb.ask.chain import Chain, NoChain, chain
from kb.ask.ending import within_ending
from kb.ask.instead import Instead, instead
from kb.ask.matter import known_fault
from kb.ask.names import resolve
from kb.ask.question import MOST_ENTRIES, ChainQuestion
from kb.ask.shelf import Shelf
from kb.ask.together import Together
from kb.ask.under_weight import under_weight
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
from kb.commands.leading import Leading, leading
from kb.commands.said import cleared_option, said_of
from kb.commands.sheet_file import figures_of, paper_of, put_sheet, sheet_options
from kb.commands.telling import Lifter, heavy_of, telling_json, telling_of
from kb.errors import BadInput
from kb.show.as_json import chain_json
from kb.terms import Fault, FaultId, LiftId, Load

if TYPE_CHECKING:
    from kb.show.telling import Telling

__all__ = ["command"]

QUIETLY = (
    "Quiet: it ends in the {part}, as the {lift} itself comes down with a bang; what shows only in the whole lift is"
    " looked at again where there may be noise. Rubber soles that grip, bare feet with a stick only, never socks; what"
    " is held is put down by hand, and a lost bar is let go all the same."
)
"""What is minded where nothing may bang. Common practice, no source."""


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
    type=click.FloatRange(min=1, max=500),
    metavar="KG",
    help="The least weight at which it is seen: the work is near that, and a light bar only the way there.",
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
    shelf, quietly = _shelf(db, lift_meant(ctx, db, fault_id, named_lift), to, quiet=quiet)
    shelf = shelf_without(shelf, drills_named(db, asked["leave_out"]))
    beside = beside._replace(minds=(*quietly, *beside.minds))
    room = room_of(db, kit, have)
    about = _about(db, shelf, fault_id, asked)
    lifter = Lifter.of(fault_id, about.leads, about.too, asked, named=about.cause is not None, beside=beside)
    question = _question(db, shelf, about, room, asked)
    try:
        found = chain_with_text(db, _chain(shelf, about.fault, question, asked), beside.tried)
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
        session="" if to or quiet or asked["leave_out"] else session_command(ctx, found.matter.question),
    )
    settled = (lifter.named and not _unsure(lifter.said)) or about.leads.number is not None
    shown = Shown(told, about.judged_by, settled, why, beside.tried)
    _put(db, found, room, shown)


def _shelf(db: sqlite3.Connection, lift: LiftId, to: str | None, *, quiet: bool) -> tuple[Shelf, tuple[str, ...]]:
    """What the chain is made of, and what is to be said of where it ends."""
    shelf, said = shelf_to(db, lift, to), tuple[str, ...]()
    part = quiet_part(shelf) if quiet and not to else None
    if part is not None:
        said = (QUIETLY.format(lift=shelf.lift.name.lower(), part=shelf.drills[part].name.lower()),)
        shelf = shelf_to(db, lift, part)
    shelf = within_ending(shelf) if to or part else shelf
    return (quiet_shelf(shelf) if quiet else shelf), said


class _About(NamedTuple):
    """The fault that is answered about, what leads there, what was seen too, what a screen says, the causes named."""

    fault: Fault
    leads: Leading
    too: tuple[Together, ...]
    judged_by: ByScreen | None
    cause: str | None
    also: frozenset[str] = frozenset()


def _about(db: sqlite3.Connection, shelf: Shelf, fault_id: FaultId, asked: Mapping[str, Any]) -> _About:
    leads = leading(db, shelf, fault_id, asked["first"], stays=asked["cause"] is not None)
    fault = known_fault(shelf, leads.fault)
    too = seen_beside(db, shelf, fault.id, fault_id, asked["also_seen"])
    judged_by = judged(db, fault, shelf.lift, asked["screen"]) if asked["screen"] else None
    named = cause_meant(fault, asked["cause"]) or (judged_by.cause if judged_by else None)
    also = {cause_meant(fault, each) for each in asked["also_cause"]}
    return _About(fault, leads, too, judged_by, named, frozenset(filter(None, also)) - {named or fault.causes[0].id})


def _chain(shelf: Shelf, fault: Fault, question: ChainQuestion, asked: Mapping[str, Any]) -> Chain:
    """The chain; for a cause that needs weight, where it shows only from some weight on and nobody named one.

    Raises NoChain where there is none for the question as it was asked.
    """
    heavy = under_weight(fault) if asked["shows_from"] or asked["load"] == Load.WORKING.word else None
    if question.cause is None and heavy is not None:
        with suppress(NoChain):
            return chain(shelf, question._replace(cause=heavy))
    return chain(shelf, question)


def _unsure(said: str | None) -> bool:
    """Whether what was said asks for the cause."""
    if said is None:
        return False
    from kb.ask.unsure import unsure

    return unsure(said)


def _question(
    db: sqlite3.Connection, shelf: Shelf, about: _About, room: Room, asked: Mapping[str, Any]
) -> ChainQuestion:
    load = Load[asked["load"].upper()] if asked["load"] else Load.WORKING if asked["shows_from"] else None
    return ChainQuestion(
        fault=about.fault.id,
        have=room.have,
        cause=about.cause or explains(about.fault, about.too),
        load=load,
        seconds=60 * asked["minutes"] if asked["minutes"] else None,
        holds=drills_named(db, asked["holds"]),
        at_most=asked["at_most"],
        routes=asked["routes"],
        stiff=_stiff(about.fault, shelf, asked["stiff"]),
        least=Load.LIGHT if asked["shows_from"] else Load.NONE,
    )


def _stiff(fault: Fault, shelf: Shelf, typed: str | None) -> frozenset[str]:
    """The joints that were typed; BadInput for one that no drill for this fault opens."""
    named = frozenset(each.strip() for each in (typed or "").split(",") if each.strip())
    known = {
        joint
        for drill in shelf.drills.values()
        for joint in drill.opens
        if any(said.fault == fault.id for said in drill.faults)
    }
    for each in sorted(named - known):
        raise BadInput(f"no drill for {fault.name.lower()} opens a joint {each!r}", nearest=tuple(sorted(known)))
    return named


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
    lines = chain_text(found, room.kit, setting, named=shown.named, others=others, telling=shown.telling)
    if shown.judged_by:
        lines += shown.judged_by.as_text(setting)
    if shown.why:
        from kb.ask.why import why as why_of
        from kb.show.why_text import why_text

        lines += why_text(found, why_of(found.matter, found.routes[0]), setting)
    click.echo("\n".join(lines))
