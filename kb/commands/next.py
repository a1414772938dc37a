"""`drillpath next`: what is ready now for one who holds some drills, and what is shaky."""

import sqlite3
from contextlib import suppress

import click

from kb.ask import read
from kb.ask.ability.fringe import Fringe, fringe
from kb.ask.matter import known_fault
from kb.ask.names import resolve
from kb.ask.path import path
from kb.commands.asked import Asked, Room, as_json_option, complete, drills_named, put_json, room_of, room_options
from kb.commands.said import said_first
from kb.errors import BadInput, NoAnswer
from kb.show.still import Still
from kb.terms import Drill, FaultId, LiftId, Stage

__all__ = ["command"]


@click.command(name="next", short_help="What a lifter is ready for now, and what is shaky.")
@click.option("--holds", metavar="D1,D2", help="Drills the lifter can do already.", shell_complete=complete("drill"))
@click.option(
    "--lift", metavar="LIFT", help="Towards one lift; all if nothing is said.", shell_complete=complete("lift")
)
@click.option(
    "--seen", metavar="FAULT", help="A fault that is still seen in what is held.", shell_complete=complete("fault")
)
@room_options
@as_json_option
@said_first
@click.pass_context
def command(
    ctx: click.Context,
    holds: str | None,
    lift: str | None,
    seen: str | None,
    kit: str | None,
    have: str | None,
    as_json: bool,
) -> None:
    """What a lifter is ready for now, the most useful first, and what they learnt last and should show again.

    What is held is taken to hold whatever it is built on. A fault that is still `--seen` comes first.
    """
    db = ctx.ensure_object(Asked).catalogue()
    lifts, drills, items = read.lifts(db), read.drills(db), read.items(db)
    lift_id = LiftId(resolve(db, "lift", lift)) if lift is not None else None
    room, held = room_of(db, kit, have), drills_named(db, holds)
    towards = [lifts[lift_id]] if lift_id is not None else list(lifts.values())
    found = fringe(drills, held, towards, have=room.have, items=items)
    way = _way(db, lift_id, room, found) if lift_id is not None else ()
    still = _still(db, seen, lift_id, room)
    if as_json:
        from kb.show.next_json import next_json

        more = {"seen": still.as_json()} if still else {}
        put_json({**next_json(found, lift_id, room.kit, drills=drills, lifts=lifts), **more})
        return
    from kb.show.next_text import next_text
    from kb.show.setting import setting_of

    said = next_text(
        found,
        lifts[lift_id] if lift_id is not None else None,
        room.kit,
        way=way,
        still=still,
        drills=drills,
        lifts=lifts,
        have=room.have,
        items=items,
        setting=setting_of(),
    )
    click.echo("\n".join(said))


def _still(db: sqlite3.Connection, seen: str | None, lift_id: LiftId | None, room: Room) -> Still | None:
    """A fault that is still seen, and the command for what mends it; BadInput for what is none, or without a lift."""
    if seen is None:
        return None
    if lift_id is None:
        raise BadInput("--seen is about one lift: name it with --lift")
    fault = known_fault(read.shelf(db, lift_id), FaultId(resolve(db, "fault", seen, lift=lift_id)))
    there = f"--kit {room.kit}" if room.kit else f"--have {','.join(sorted(room.have))}"
    return Still(fault, f"drillpath chain {fault.id} --lift {lift_id} {there}")


def _way(db: sqlite3.Connection, lift_id: LiftId, room: Room, found: Fringe) -> tuple[Drill, ...]:
    """The drills from what is held to the lift, without preparation; none where it is held or out of reach."""
    shelf = read.shelf(db, lift_id)
    if shelf.lift.drill in found.closed.held:
        return ()
    with suppress(NoAnswer):
        entries = path(shelf, have=room.have, holds=found.closed.held).entries
        new = {entry.drill.id: entry.drill for entry in entries if entry.drill.stage is not Stage.PREPARE}
        return tuple(drill for each, drill in new.items() if each not in found.closed.held)
    return ()
