"""`drillpath next`: what is ready now for one who holds some drills, and what is shaky."""

import click

from kb.ask import read
from kb.ask.ability.fringe import fringe
from kb.ask.names import resolve
from kb.commands.asked import Asked, as_json_option, complete, drills_named, put_json, room_of, room_options
from kb.terms import LiftId

__all__ = ["command"]


@click.command(name="next", short_help="What a lifter is ready for now, and what is shaky.")
@click.option("--holds", metavar="D1,D2", help="Drills the lifter can do already.", shell_complete=complete("drill"))
@click.option(
    "--lift", metavar="LIFT", help="Towards one lift; all if nothing is said.", shell_complete=complete("lift")
)
@room_options
@as_json_option
@click.pass_context
def command(
    ctx: click.Context, holds: str | None, lift: str | None, kit: str | None, have: str | None, as_json: bool
) -> None:
    """What a lifter is ready for now, the most useful first, and what they learnt last and should show again.

    What is held is taken to hold whatever it is built on.
    """
    db = ctx.ensure_object(Asked).catalogue()
    lifts, drills, items = read.lifts(db), read.drills(db), read.items(db)
    lift_id = LiftId(resolve(db, "lift", lift)) if lift is not None else None
    room, held = room_of(db, kit, have), drills_named(db, holds)
    towards = [lifts[lift_id]] if lift_id is not None else list(lifts.values())
    found = fringe(drills, held, towards, have=room.have, items=items)
    if as_json:
        from kb.show.next_json import next_json

        put_json(next_json(found, lift_id, room.kit, drills=drills, lifts=lifts))
        return
    from kb.show.next_text import next_text
    from kb.show.setting import setting_of

    said = next_text(
        found,
        lifts[lift_id] if lift_id is not None else None,
        room.kit,
        drills=drills,
        lifts=lifts,
        have=room.have,
        items=items,
        setting=setting_of(),
    )
    click.echo("\n".join(said))
