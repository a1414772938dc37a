"""`drillpath class FILE`: a whole class, planned: groups, stations, a rotation, a card for each lifter."""

import sqlite3
from pathlib import Path
from typing import TYPE_CHECKING

import click

from kb.commands.asked import Asked, as_json_option, put_json, say, sentence
from kb.commands.sheet_file import paper_of, put_sheet, sheet_options
from kb.errors import BadInput, NoAnswer

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from kb.ask.class_.build import Matter
    from kb.ask.class_.own import Own, Shelves
    from kb.ask.class_.people import Class
    from kb.ask.class_.rotation import Plan, Rotation
    from kb.ask.class_.short import Short
    from kb.ask.class_.slots import ClassPlan

__all__ = ["command", "with_text"]

TO_START = 120
"""Plans built in plain Python for the solver to start from."""

NONE_FOUND = (
    "no plan was found that keeps every rule, which doesn't prove that there is none: allow more minutes, more gear or"
    " more waiting"
)
MORE_WITH = "installed with `drillpath[class]`, the program looks further and proves what is short"


class NoPlan(NoAnswer):
    """No plan keeps every rule; `short` says what would, where that is proved."""

    def __init__(self, message: str, short: "tuple[Short, ...]" = ()) -> None:
        super().__init__(message)
        self.short = short


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

    printed_on = paper_of(sheet, paper)
    if demo == (file is not None):
        raise BadInput("name a class file, or ask for --demo (and not both)")
    db = ctx.ensure_object(Asked).catalogue()
    asked = class_file(DEMO if file is None else file, db)
    try:
        found, solved = _planned(db, asked)
    except NoPlan as none:
        if not as_json:
            raise
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


def _planned(db: sqlite3.Connection, asked: "Class") -> "tuple[ClassPlan, bool]":
    """The class planned, its drills with their text, and whether a solver was there to plan it."""
    from functools import cache

    from kb.ask import read
    from kb.ask.class_.slots import plan_of

    shelves = cache(lambda lift: read.shelf(db, lift))
    try:
        matters = _ways(db, asked, shelves)
    except NoAnswer as none:
        raise NoPlan(str(none)) from None
    matter, plan, solved = _plan(matters, lambda more: _ways(db, more, shelves))
    return plan_of(matter, plan), solved


def _ways(db: sqlite3.Connection, asked: "Class", shelves: "Shelves") -> "list[Matter]":
    """The class understood: those of one chain two by two; and each alone, in case that is the only way."""
    from kb.ask.class_.build import matter_of
    from kb.ask.class_.own import own_of

    owns = with_text(db, own_of(asked, shelves))
    paired = matter_of(asked, owns)
    alone = matter_of(asked, owns, pairs=False)
    return [paired] if alone.rotation == paired.rotation else [paired, alone]


def with_text(db: sqlite3.Connection, owns: "Sequence[Own]") -> "tuple[Own, ...]":
    """Lifters' lists whose drills have their text: what to say, and how to miss."""
    from kb.ask import read

    texts = read.sections(db, "drill", {doing.drill.id for own in owns for doing in own.doings})
    return tuple(
        own._replace(
            doings=tuple(
                doing._replace(drill=doing.drill._replace(sections=texts[doing.drill.id])) for doing in own.doings
            )
        )
        for own in owns
    )


def _plan(matters: "list[Matter]", anew: "Callable[[Class], list[Matter]]") -> "tuple[Matter, Plan, bool]":
    """The best plan of the first way that has one, and whether a solver was there.

    Raises NoPlan where there is none, with what is short; or where none was found and none is proved impossible.
    """
    try:
        from kb.solve.rotation import Undecided
    except ImportError:
        return _built(matters, MORE_WITH)
    for matter in matters:
        try:
            found = _proved(matter)
        except Undecided:
            return _built(matters, "")
        if found is not None:
            return matter, found, True
    raise _impossible(matters, anew)


def _proved(matter: "Matter") -> "Plan | None":
    """The solver's plan, begun from one built in plain Python; None where it proves that there is none."""
    from kb.ask.class_.greedy import greedy
    from kb.solve.rotation import best_plan

    return best_plan(matter.rotation, greedy(matter.rotation, tries=TO_START))


def _built(matters: "list[Matter]", more: str) -> "tuple[Matter, Plan, bool]":
    """A plan built in plain Python; NoPlan where none was found, with what `more` would help."""
    from kb.ask.class_.greedy import greedy
    from kb.ask.class_.short import too_long

    for matter in matters:
        found = greedy(matter.rotation)
        if found is not None:
            return matter, found, not more
    over = too_long(matters[-1])
    if over is not None:
        raise NoPlan(f"{over[0]}'s drills alone take {over[1]} min more than the class has")
    raise NoPlan(f"{NONE_FOUND}; {more}" if more else NONE_FOUND)


def _impossible(matters: "list[Matter]", anew: "Callable[[Class], list[Matter]]") -> NoPlan:
    """What to say where it is proved that there is no plan."""
    from kb.ask.class_.short import sentence_of, too_long, with_more
    from kb.solve.short import shortages

    matter = matters[-1]

    def again(what: str, by: int) -> "list[Rotation]":
        try:
            return [each.rotation for each in anew(with_more(matter.asked, what, by))]
        except NoAnswer:
            return []

    short = shortages(matter.rotation, again)
    groups, coaches = matter.rotation.groups, matter.asked.coaches
    over = too_long(matter)
    why = f"{over[0]}'s drills alone don't fit" if over else "this class has no plan that keeps every rule"
    if groups > matter.rotation.at_once:
        why += f": there are {groups} different chains, and {coaches} coach{'es' if coaches > 1 else ''} can run"
        why += f" {matter.rotation.at_once} at once"
    if short:
        return NoPlan(f"{why}. With {sentence_of(short)} it can be planned, with less it can't", short)
    return NoPlan(f"{why}. No one thing more was found that would give it one")
