"""`drillpath screen`: which positions a body reaches, by a tape and a wall."""

import sqlite3
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from kb.commands.asked import Asked, Room, as_json_option, complete, put_json, room_of, room_options, say
from kb.errors import BadInput

if TYPE_CHECKING:
    from kb.ask.screen import Screen
    from kb.body.tape import Tape

__all__ = ["command"]

MOST_WEDGE_MM = 60.0
"""Higher than this nothing is put under a heel."""


@click.command(name="screen", short_help="Which positions a body reaches, by a tape and a wall.")
@click.option("--stature", type=float, metavar="CM", help="Height without shoes; needed here or in the file.")
@click.option("--inseam", type=float, metavar="CM", help="Floor to crotch.")
@click.option("--span", type=float, metavar="CM", help="Fingertip to fingertip, arms out to the sides.")
@click.option("--thigh", type=float, metavar="CM", help="Knob at the side of the hip to the middle of the knee.")
@click.option("--foot", type=float, metavar="CM", help="Heel to longest toe.")
@click.option("--wall", type=float, metavar="CM", help="Toe to wall, knee just touching it, heel down.")
@click.option("--reach", type=float, metavar="CM", help="Back flat on the wall, arms up: wall to knuckles.")
@click.option("--elbows", type=float, metavar="CM", help="Standing in the rack: elbow below the shoulder; above is -.")
@click.option("--hinge", type=float, metavar="CM", help="Lowest hinge with a flat back: shoulder to floor.")
@click.option("--squat", type=float, metavar="CM", help="Lowest squat, heels down: hip above the knee; below is -.")
@click.option("--file", "file", type=click.Path(path_type=Path), metavar="FILE", help="Measurements from a file.")
@click.option("--save", type=click.Path(path_type=Path), metavar="FILE", help="Write the measurements to a file.")
@click.option("--wedge", type=float, metavar="MM", help="What could go under the heels.  [default: 20]")
@click.option("--lift", metavar="LIFT", help="One lift alone.", shell_complete=complete("lift"))
@room_options
@as_json_option
@click.pass_context
def command(
    ctx: click.Context,
    /,
    file: Path | None,
    save: Path | None,
    wedge: float | None,
    lift: str | None,
    kit: str | None,
    have: str | None,
    as_json: bool,
    **typed: Any,
) -> None:
    """Which positions of the lifts a body reaches, what binds where it doesn't, and what acts on that.

    All in centimetres, of two sides the stiffer; only the height is needed. How to measure: kb/docs/screen.md.
    """
    from kb.body.tape import tape_of

    wedge_mm = _wedge(wedge)
    said: dict[str, float] = {}
    if file is not None:
        from kb.intake.screen_file import screen_file

        said.update(screen_file(file))
    said.update({name: value for name, value in typed.items() if value is not None})
    tape = tape_of(said)
    db = ctx.ensure_object(Asked).catalogue()
    found = _screened(db, tape, lift, room_of(db, kit, have), wedge_mm)
    if save is not None:
        _save(tape, save)
    if as_json:
        from kb.show.screen_json import screen_json

        put_json(screen_json(found))
        return
    from kb.show.screen_text import screen_text
    from kb.show.setting import setting_of

    click.echo("\n".join(screen_text(found, setting_of())))


def _wedge(typed: float | None) -> float:
    from kb.ask.screen import WEDGE_MM

    wedge_mm = WEDGE_MM if typed is None else typed
    if not 0 < wedge_mm <= MOST_WEDGE_MM:
        raise BadInput(f"a wedge of {wedge_mm:g} mm can't be: it lies between 0 and {MOST_WEDGE_MM:g} mm")
    return wedge_mm


def _screened(db: sqlite3.Connection, tape: "Tape", lift: str | None, room: Room, wedge_mm: float) -> "Screen":
    """The screen of one lift, or of all that are not made of others: the clean and jerk has their positions."""
    from kb.ask import read
    from kb.ask.names import resolve
    from kb.ask.screen import positions_of, screen
    from kb.terms import LiftId

    lifts = read.lifts(db)
    if lift is not None:
        asked = [lifts[LiftId(resolve(db, "lift", lift))]]
    else:
        asked = [each for each in lifts.values() if not each.parts]
    drills = read.drills(db)
    ids = {each for one in asked for each in positions_of(one, drills.values())}
    return screen(
        tape,
        asked,
        positions={each: read.position(db, each) for each in sorted(ids)},
        drills=drills.values(),
        have=room.have,
        items=read.items(db),
        wedge_mm=wedge_mm,
    )


def _save(tape: "Tape", path: Path) -> None:
    from kb.intake.screen_file import screen_text
    from kb.make.aside import put

    try:
        put(path, screen_text(tape))
    except OSError as error:
        raise BadInput(f"{path} can't be written: {(error.strerror or str(error)).lower()}") from None
    say(f"Measurements written to {path}.")
