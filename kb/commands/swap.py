"""`drillpath swap DRILL`: as it is, with a stand-in, or what would do instead."""

import sqlite3
from typing import TYPE_CHECKING

import click

from kb.commands.asked import Asked, as_json_option, complete, put_json, room_of, room_options, words
from kb.commands.said import said_first
from kb.errors import BadInput
from kb.terms import Drill, DrillId

if TYPE_CHECKING:
    from kb.ask.barred import Ruled
    from kb.ask.swap import Swap

__all__ = ["command"]


@click.command(name="swap", short_help="A drill with what is there, or what would do instead.")
@click.argument("drill", nargs=-1, required=True, shell_complete=complete("drill"))
@room_options
@click.option("--instead", is_flag=True, help="It could be done, but something else is wanted: substitutes first.")
@click.option("--quiet", is_flag=True, help="Only what makes no bang: feet that don't land, nothing let fall.")
@click.option(
    "--without",
    metavar="A,B",
    help="Ruled out: behind-neck, front-rack, full-squat, overhead, split.",
)
@click.option("--afraid", is_flag=True, help="For who is afraid of it: the way out, then small steps; nothing quick.")
@click.option("--easier", "only", flag_value="easier", help="Only what is easier.")
@click.option("--harder", "only", flag_value="harder", help="Only what is harder.")
@as_json_option
@said_first
@click.pass_context
def command(
    ctx: click.Context,
    drill: tuple[str, ...],
    kit: str | None,
    have: str | None,
    instead: bool,
    quiet: bool,
    without: str | None,
    afraid: bool,
    only: str | None,
    as_json: bool,
) -> None:
    """A drill with what is there: as it is, with a stand-in and what that loses, or the nearest others.

    What is easier and what is harder than it stands between, each with what to say and until when.
    """
    from kb.ask import read
    from kb.ask.fear import steps_for
    from kb.ask.names import resolve
    from kb.ask.swap import swap

    db = ctx.ensure_object(Asked).catalogue()
    drills, items = read.drills(db), read.items(db)
    ruled = ruled_of(db, quiet, without)
    if ruled.without:
        texts = read.sections(db, "drill", drills)
        drills = {each.id: each._replace(sections=texts[each.id]) for each in drills.values()}
    wanted = drills[DrillId(resolve(db, "drill", words(drill)))]
    room = room_of(db, kit, have)
    found = swap(
        wanted,
        room.have,
        drills=drills,
        items=items,
        lifts=read.lifts(db),
        ruled=ruled,
        instead=instead or afraid,
        steps=steps_for(wanted.lifts, drills.values(), read.faults(db)) if afraid else None,
    )
    if as_json:
        from kb.show.as_json import swap_json

        put_json(swap_json(found))
    else:
        from kb.show.setting import setting_of
        from kb.show.swap_text import swap_text

        found = _with_text(db, found)
        lines = swap_text(
            found, drills=drills, items=items, setting=setting_of(), only=only or "", instead=instead or afraid
        )
        click.echo("\n".join(lines))


def ruled_of(db: sqlite3.Connection, quiet: bool, without: str | None) -> "Ruled":
    """What `--quiet` and `--without` rule out.

    Raises BadInput for a word that `--without` doesn't know.
    """
    from kb.ask import read
    from kb.ask.barred import WITHOUT, Ruled

    said = [word.strip() for word in (without or "").split(",") if word.strip()]
    for word in said:
        if word not in WITHOUT:
            raise BadInput(f"--without doesn't know {word!r}: it is {', '.join(WITHOUT)}")
    return Ruled(quiet, frozenset(said), read.positions(db) if said else {})


def _with_text(db: sqlite3.Connection, found: "Swap") -> "Swap":
    """A swap whose drills have their text: what to say is in it."""
    from kb.ask import read

    parts = (found.easier, found.harder, found.swaps)
    named = {each.drill.id for part in parts for each in part} | {
        each.id for each in (found.drill, *found.strength, *found.gently)
    }
    texts = read.sections(db, "drill", named)

    def told(drill: Drill) -> Drill:
        return drill._replace(sections=texts[drill.id])

    return found._replace(
        drill=told(found.drill),
        easier=tuple(each._replace(drill=told(each.drill)) for each in found.easier),
        harder=tuple(each._replace(drill=told(each.drill)) for each in found.harder),
        swaps=tuple(each._replace(drill=told(each.drill)) for each in found.swaps),
        strength=tuple(told(each) for each in found.strength),
        gently=tuple(told(each) for each in found.gently),
    )
