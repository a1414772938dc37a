"""`drillpath show NAME`: one entry, whatever its kind, well set."""

import sqlite3

import click

from kb.commands.asked import Asked, as_json_option, complete, put_json, words
from kb.terms import DrillId, FaultId, ItemId, LiftId, PositionId

__all__ = ["command"]


@click.command(name="show", short_help="One entry: a drill, a fault, a position, a lift, an item.")
@click.argument("name", nargs=-1, required=True, shell_complete=complete("*"))
@as_json_option
@click.pass_context
def command(ctx: click.Context, name: tuple[str, ...], as_json: bool) -> None:
    """One entry: a drill, a fault, a position, a lift or a piece of equipment.

    NAME is an id, a name or the beginning of one.
    """
    from kb.ask.names import resolve_any

    db = ctx.ensure_object(Asked).catalogue()
    kind, entry_id = resolve_any(db, words(name))
    if as_json:
        from kb.show.as_json import show_json

        put_json(show_json(kind, _entry(db, kind, entry_id)))
    else:
        click.echo("\n".join(_lines(db, kind, entry_id)))


def _entry(db: sqlite3.Connection, kind: str, entry_id: str) -> object:
    from kb.ask import read

    if kind == "drill":
        return read.with_text(db, read.drills(db)[DrillId(entry_id)])
    if kind == "fault":
        return read.fault(db, FaultId(entry_id))
    if kind == "position":
        return read.position(db, PositionId(entry_id))
    if kind == "lift":
        return read.lift(db, LiftId(entry_id))
    item = read.items(db)[ItemId(entry_id)]
    return item._replace(sections=read.sections(db, "equipment", [entry_id])[entry_id])


def _lines(db: sqlite3.Connection, kind: str, entry_id: str) -> list[str]:
    from kb.ask import read
    from kb.show import entry_text
    from kb.show.setting import setting_of
    from kb.terms import Drill, Fault, Item, Lift, Position

    entry, setting = _entry(db, kind, entry_id), setting_of()
    names = {
        row[0]: row[1]
        for table in ("position", "equipment", "drill", "fault", "lift")
        for row in db.execute(f"select id, name from {table}")
    }
    match entry:
        case Drill():
            return entry_text.drill_text(entry, names, read.lifts(db), setting)
        case Fault():
            return entry_text.fault_text(entry, names, read.lifts(db), setting)
        case Lift():
            return entry_text.lift_text(entry, names, setting)
        case Position():
            return entry_text.position_text(entry, setting)
        case Item():
            return entry_text.equipment_text(entry, names, setting)
    raise AssertionError(kind)
