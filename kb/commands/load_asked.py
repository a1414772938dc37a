"""What questions about kilograms share: a lifter's bests, the bar, its discs and the unit."""

import sqlite3
from collections.abc import Callable, Collection, Mapping, Sequence
from typing import Any, TypeVar

import click

from kb.ask import read
from kb.ask.names import resolve
from kb.bests import Best, Said, best_of, said, with_parts
from kb.commands.best_options import best_options
from kb.discs import Iron, Unit, iron_of
from kb.errors import BadInput
from kb.terms import Drill, DrillId, ItemId, LiftId

__all__ = ["bests_of", "iron_options", "iron_there"]

Command = TypeVar("Command", bound=Callable[..., Any])


def iron_options(command: Command) -> Command:
    """Add `--best`, `--bar`, `--units`, `--discs` and `--collars`."""
    for option in (
        click.option("--collars", is_flag=True, help="Count competition collars, 2.5 kg each."),
        click.option("--discs", metavar="A,B", help="The discs there are, with pairs if few: 25x1,20,10x2,5."),
        click.option(
            "--units", type=click.Choice(("kg", "lb")), default="kg", show_default=True, help="What is typed."
        ),
        best_options,
    ):
        command = option(command)
    return command


def iron_there(have: Collection[ItemId], bar: str, unit: Unit, discs: str | None, *, collars: bool) -> Iron:
    """The bar and the discs that were typed; without a list of discs, none where the room has none.

    Raises BadInput, in one sentence, for a bar or a disc that can't be.
    """
    iron = iron_of(bar, unit, discs, collars=collars)
    return iron._replace(discs=()) if discs is None and "discs" not in have else iron


def bests_of(
    db: sqlite3.Connection, typed: Sequence[str], unit: Unit, drills: Mapping[DrillId, Drill] | None = None
) -> dict[str, Best]:
    """Bests by id of a lift or a drill, and of a lift's parts what the whole says of them.

    `drills` spares reading them again. Raises BadInput, in one sentence, for what names nothing, is no
    weight, is given twice, or can't be told from a set.
    """
    if not typed:
        return {}
    lifts = read.lifts(db)
    drills = read.drills(db) if drills is None else drills
    whole = {lift.drill: lift.id for lift in lifts.values()}
    found: dict[str, Best] = {}
    for text in typed:
        one = said(text, unit)
        of, drill = _meant(db, one, drills, whole)
        if of in found:
            raise BadInput(f"the best of {of} is given twice")
        found[of] = best_of(one, drill)
    return with_parts(found, lifts)


def _meant(
    db: sqlite3.Connection, one: Said, drills: Mapping[DrillId, Drill], whole: Mapping[DrillId, LiftId]
) -> tuple[str, Drill | None]:
    """The lift or the drill that a best is of; a lift's own drill is the lift."""
    try:
        return resolve(db, "lift", one.name), None
    except BadInput:
        pass
    try:
        drill = drills[DrillId(resolve(db, "drill", one.name))]
    except BadInput as error:
        raise BadInput(f"there is no lift or drill {one.name!r} to have a best in", nearest=error.nearest) from None
    return (whole[drill.id], None) if drill.id in whole else (drill.id, drill)
