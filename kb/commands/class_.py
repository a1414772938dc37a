"""`drillpath class FILE`: a whole class, planned: groups, stations, a rotation, a card for each lifter."""

import sqlite3
from pathlib import Path
from typing import TYPE_CHECKING

import click

from kb.commands.asked import Asked, as_json_option, put_json, say, sentence
from kb.commands.sheet_file import paper_of, put_sheet, sheet_options
from kb.errors import BadInput

if TYPE_CHECKING:
    from collections.abc import Sequence

    from kb.ask.class_.doing import Doing, Own
    from kb.ask.class_.people import Class
    from kb.solve.planning import NoPlan, Planned

__all__ = ["command", "with_text"]


@click.command(name="class", short_help="A whole class: groups, stations, a rotation, cards.")
@click.argument("file", required=False, type=click.Path(path_type=Path))
@click.option("--demo", is_flag=True, help="Plan the class that comes with the program.")
@sheet_options
@as_json_option
@click.pass_context
def command(
    ctx: click.Context,
    file: Path | None,
    demo: bool,
    sheet: str | None,
    paper: str | None,
    as_json: bool,
) -> None:
    """Plan a class from a file that says who comes, what they need and what is in the hall.

    Groups those who share a chain, makes stations and a rotation in which no gear is used twice, nobody waits
    long, and a coach is there for the riskiest first tries.
    """
    from kb.intake.class_file import DEMO, class_file
    from kb.solve.planning import NoPlan

    printed_on = paper_of(sheet, paper)
    if demo == (file is not None):
        raise BadInput("name a class file, or ask for --demo (and not both)")
    db = ctx.ensure_object(Asked).catalogue()
    asked = class_file(DEMO if file is None else file, db)
    try:
        found, solved = _planned(db, asked)
    except NoPlan as none:
        if not as_json:
            _put_shared(asked, none)
            ctx.exit(1)
        from kb.show.class_json import no_class_json

        put_json(no_class_json(sentence(none), none.short))
        ctx.exit(1)
    if sheet is not None:
        from kb.show.class_sheet import class_sheet

        put_sheet(sheet, class_sheet(found, printed_on, with_solver=solved))
        say(f"Sheet written to {sheet}: the floor plan and a card for each lifter.")
    if as_json:
        from kb.show.class_json import class_json

        put_json(class_json(found))
    elif sheet is None:
        from kb.show.class_text import class_text
        from kb.show.setting import setting_of

        click.echo("\n".join(class_text(found, setting_of(), with_solver=solved)))


def _put_shared(asked: "Class", none: "NoPlan") -> None:
    """Why there is no plan, and how to share what there is all the same."""
    from kb.show.class_shared import shared_text
    from kb.show.setting import setting_of

    say(f"Error: {sentence(none)}")
    for line in shared_text(asked, setting_of()):
        click.echo(line)


def _planned(db: sqlite3.Connection, asked: "Class") -> "Planned":
    """The class planned, its drills with their text."""
    from functools import cache, partial

    from kb.ask import read
    from kb.solve.planning import planned

    return planned(asked, cache(lambda lift: read.shelf(db, lift)), told=partial(with_text, db))


def with_text(db: sqlite3.Connection, owns: "Sequence[Own]") -> "tuple[Own, ...]":
    """Lifters' lists whose drills have their text: what to say, and how to miss."""
    from kb.ask import read

    texts = read.sections(db, "drill", {doing.drill.id for own in owns for doing in (*own.doings, *own.after)})

    def told(doings: "Sequence[Doing]") -> "tuple[Doing, ...]":
        return tuple(doing._replace(drill=doing.drill._replace(sections=texts[doing.drill.id])) for doing in doings)

    return tuple(own._replace(doings=told(own.doings), after=told(own.after)) for own in owns)
