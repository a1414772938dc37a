"""`drillpath path LIFT`: from nothing, or from what is held, to the full lift."""

import sqlite3
from typing import get_args

import click

from kb.ask import read
from kb.ask.ability.standing import standing
from kb.ask.barred import quiet_shelf
from kb.ask.names import resolve
from kb.ask.path import Order, path
from kb.ask.shelf import Shelf
from kb.ask.towards import Toward, towards
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
    sentence,
    shelf_to,
    to_option,
    words,
)
from kb.errors import NoAnswer
from kb.show.as_json import no_path_json, path_json
from kb.terms import LiftId

__all__ = ["command"]


@click.command(name="path", short_help="From nothing, or what is held, to the full lift.")
@click.argument("lift", nargs=-1, required=True, shell_complete=complete("lift"))
@click.option("--holds", metavar="D1,D2", help="Drills the lifter can do already.", shell_complete=complete("drill"))
@to_option
@room_options
@click.option(
    "--order",
    type=click.Choice(get_args(Order)),
    default="either",
    show_default=True,
    help="From the floor up, from the top down, or whichever changes less.",
)
@click.option("--quiet", is_flag=True, help="Only what makes no bang; end in a quiet part of the lift with --to.")
@as_json_option
@click.pass_context
def command(
    ctx: click.Context,
    lift: tuple[str, ...],
    holds: str | None,
    to: str | None,
    kit: str | None,
    have: str | None,
    order: Order,
    quiet: bool,
    as_json: bool,
) -> None:
    """From nothing, or from what is held, to the full lift: the least set of drills in its best order.

    With --to it ends in a part of the lift, such as a power clean from the hang.
    """
    db = ctx.ensure_object(Asked).catalogue()
    lift_id = LiftId(resolve(db, "lift", words(lift)))
    room, shelf = room_of(db, kit, have), shelf_to(db, lift_id, to)
    shelf = quiet_shelf(shelf) if quiet else shelf
    held = standing(shelf, drills_named(db, holds))
    try:
        found = path(shelf, have=room.have, holds=held, order=order)
    except NoAnswer as none:
        _put_none(db, shelf, none, room, towards(shelf, have=room.have, holds=held, order=order), as_json=as_json)
        ctx.exit(1)
    gateways = frozenset() if to else read.gateways(db, lift_id)  # those that the whole lift can't do without
    if as_json:
        put_json(path_json(found, room.kit, gateways))
        return
    from kb.show.path_text import path_text
    from kb.show.setting import setting_of

    click.echo("\n".join(path_text(found, room.kit, gateways, setting_of(), from_nothing=not held)))


def _put_none(
    db: sqlite3.Connection, shelf: Shelf, none: NoAnswer, room: Room, found: tuple[Toward, ...], *, as_json: bool
) -> None:
    """Why there is no path, and the path as far as it goes."""
    if as_json:
        put_json(no_path_json(str(none), shelf.lift.id, room.kit, found))
        return
    from kb.show.setting import setting_of
    from kb.show.towards_text import towards_text

    say(f"Error: {sentence(none)}")
    texts = read.sections(db, "drill", {each.drill.id for each in found})
    told = [each._replace(drill=each.drill._replace(sections=texts[each.drill.id])) for each in found]
    for line in towards_text(shelf, told, room.have, room.kit, setting_of()):
        click.echo(line)
