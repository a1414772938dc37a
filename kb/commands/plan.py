"""`drillpath plan LIFT`: sessions from now to the lift."""

from functools import partial
from typing import TYPE_CHECKING, Any, get_args

import click

from kb.ask import read
from kb.ask.ability.standing import standing
from kb.ask.names import resolve
from kb.ask.path import Order, path
from kb.ask.plan.away import there
from kb.ask.plan.kilograms import Goal
from kb.ask.plan.plan import Plan, plan
from kb.ask.plan.turns import dates_of
from kb.ask.plan.weeks import LONGEST, MOST_NEW
from kb.ask.shelf import Shelf
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
from kb.commands.plan_asked import (
    TURNS,
    Wishes,
    away_of,
    check_lessons,
    home_of,
    weak_of,
    wish_options,
)
from kb.commands.plan_day_asked import also_of, goal_of, limits_of
from kb.commands.said import said_first
from kb.commands.sheet_file import paper_of, put_sheet, put_text, sheet_options
from kb.errors import BadInput
from kb.terms import DrillId, LiftId

if TYPE_CHECKING:
    import sqlite3
    from collections.abc import Mapping
    from datetime import date, datetime

    from kb.ask.plan.past import Done

__all__ = ["command"]

FIRST_YEAR, LAST_YEAR = 2000, 2199
"""A plan outside these begins on a slip of the pen."""

EVENING = "18:00"
"""When a session begins in a calendar if nothing is said."""


@click.command(name="plan", short_help="Sessions from now to the lift.")
@click.argument("lift", nargs=-1, required=True, shell_complete=complete("lift"))
@click.option(
    "--per-week",
    type=TURNS,
    default="2",
    show_default=True,
    metavar="N[,N]",
    help="Sessions a week; 2,3 for weeks of two and of three by turns.",
)
@click.option(
    "--minutes", type=click.IntRange(1, LONGEST), default=40, show_default=True, help="How long a session is."
)
@to_option
@room_options
@click.option("--holds", metavar="D1,D2", help="Drills the lifter can do already.", shell_complete=complete("drill"))
@click.option(
    "--order",
    type=click.Choice(get_args(Order)),
    default="either",
    show_default=True,
    help="From the floor up, from the top down, or whichever changes less.",
)
@wish_options
@click.option("--start", metavar="YYYY-MM-DD", help="The day of the next session, for dates.")
@click.option("--at", metavar="HH:MM", help="When sessions begin, for a calendar; 18:00 if nothing is said.")
@click.option(
    "--done", type=click.Path(), metavar="FILE.csv", help="What was done: session or date, drill, met (yes or no)."
)
@as_json_option
@click.option("--csv", "as_csv", is_flag=True, help="The sessions as a table; filled in, it goes back as --done.")
@click.option("--calendar", type=click.Path(), metavar="FILE.ics", help="Write the sessions for a calendar.")
@sheet_options
@said_first
@click.pass_context
def command(
    ctx: click.Context,
    /,
    lift: tuple[str, ...],
    per_week: tuple[int, ...],
    minutes: int,
    kit: str | None,
    have: str | None,
    holds: str | None,
    to: str | None,
    order: Order,
    start: str | None,
    at: str | None,
    done: str | None,
    as_json: bool,
    as_csv: bool,
    calendar: str | None,
    sheet: str | None,
    paper: str | None,
    **wished: Any,
) -> None:
    """Sessions from now to the lift: two new drills in each at most, and all come back until they are held.

    With --to they end in a part of the lift, such as a power clean from the hang. With --weeks or --by they go on to a
    day, with --weight in kilograms. With --lessons there are so many lessons and no more, 1 for a first evening.
    """
    if as_json and as_csv:
        raise BadInput("--json and --csv are two forms of one answer; ask for one")
    if wished["per_cent"] and as_csv:
        raise BadInput("--csv is one lifter's table, in kilograms, so it can't stand with --per-cent")
    paper = paper_of(sheet, paper)
    begins, wishes = _begins(start, at, calendar), Wishes(**wished)
    goal = goal_of(wishes, begins.date() if begins is not None else None)
    db = ctx.ensure_object(Asked).catalogue()
    lift_id = LiftId(resolve(db, "lift", words(lift)))
    check_lessons(wishes, to, per_week)
    room, shelf = room_of(db, kit, have), shelf_to(db, lift_id, to)
    held = standing(shelf, drills_named(db, holds))
    was_done = _done(done, db, begins, start)
    if wishes.lessons is not None:
        from kb.commands.plan_lessons import Outlets, answer_lessons

        outlets = Outlets(as_json, as_csv, sheet, paper, calendar)
        asked = (shelf, room, held, order, per_week[0], minutes, was_done, wishes)
        answer_lessons(ctx, db, *asked, begins, outlets)
        return
    found = _found(db, shelf, room, held, order, per_week, minutes, was_done, goal, wishes)
    days = _days(found, begins)
    if calendar is not None and begins is not None:
        _put_calendar(calendar, found, days, begins)
    if sheet is not None:
        from kb.show.plan_sheet import plan_sheet

        put_sheet(sheet, plan_sheet(found, room.kit, room.have, days, _texts(db, found), paper))
        say(f"The sheet is in {sheet}: for a phone, and for {paper} paper.")
    _answer(db, found, room, days, as_json=as_json, as_csv=as_csv)


def _found(
    db: "sqlite3.Connection",
    shelf: Shelf,
    room: Room,
    held: frozenset[DrillId],
    order: Order,
    per_week: tuple[int, ...],
    minutes: int,
    done: "tuple[Done, ...]",
    goal: Goal | None,
    wishes: Wishes,
) -> Plan:
    """The plan to the lift, or the part of it that the shelf ends in."""
    holds_it = shelf.lift.drill in held
    way = path(shelf, have=room.have, holds=frozenset() if holds_it else held, order=order)
    return plan(
        way,
        per_week=per_week,
        minutes=minutes,
        done=done,
        new=wishes.new or MOST_NEW,
        known=wishes.returning,
        home=home_of(db, wishes),
        goal=goal,
        have=room.have,
        held=holds_it,
        weak=weak_of(db, shelf, wishes),
        away=away_of(db, wishes),
        limits=limits_of(wishes),
        also=also_of(db, wishes, goal, partial(path, have=room.have, order=order)),
    )


def _begins(start: str | None, at: str | None, calendar: str | None) -> "datetime | None":
    """When the next session begins; None if neither a day nor a calendar was asked for.

    A calendar without a day begins today. Raises BadInput for what is no date, no time, or a time without use.
    """
    if start is None and calendar is None:
        if at is not None:
            raise BadInput("--at says when sessions begin in a calendar, so it needs --calendar FILE.ics")
        return None
    from datetime import date, datetime, time

    try:
        day = date.fromisoformat(start) if start is not None else date.today()
    except ValueError:
        raise BadInput(f"--start {start!r} is no date; write it as 2026-03-09") from None
    if not FIRST_YEAR <= day.year <= LAST_YEAR:
        raise BadInput(f"--start {start} is not of these times; a plan begins from {FIRST_YEAR} to {LAST_YEAR}")
    try:
        return datetime.combine(day, time.fromisoformat(at or EVENING))
    except ValueError:
        raise BadInput(f"--at {at!r} is no time of day; write it as {EVENING}") from None


def _days(found: Plan, begins: "datetime | None") -> "dict[int, date]":
    day = None if begins is None else begins.date()
    return dates_of([each.n for each in found.sessions], found.begun, day, found.weeks.by_turns, found.weeks.away)


def _done(
    done: str | None, db: "sqlite3.Connection", begins: "datetime | None", start: str | None
) -> "tuple[Done, ...]":
    """What a file says was done; nothing without one."""
    if done is None:
        return ()
    from pathlib import Path

    from kb.intake.done_file import done_file

    return done_file(Path(done), db, before=begins.date() if begins is not None and start is not None else None)


def _put_calendar(path: str, found: Plan, days: "Mapping[int, date]", begins: "datetime") -> None:
    """Write a calendar whole or not at all. Raises BadInput, with the reason, where it can't be written."""
    from datetime import datetime

    from kb.show.plan_calendar import plan_calendar

    if not found.sessions:
        say(f"There is nothing left to plan, so {path} wasn't written.")
        return
    put_text(path, plan_calendar(found, days, begins.time(), datetime.now()), "the calendar", newline="")
    say(f"The sessions are in {path}, from {begins:%Y-%m-%d} on.")


def _texts(db: "sqlite3.Connection", found: Plan) -> "Mapping[str, Mapping[str, str]]":
    """The text of a plan's drills, for what to say and how to miss."""
    drills = {slot.form.drill.id for session in found.sessions for slot in session.slots}
    drills |= {form.drill.id for form in (*found.forms, *there(found.path.shelf, found.away, found.forms))}
    return read.sections(db, "drill", drills)


def _answer(
    db: "sqlite3.Connection", found: Plan, room: Room, days: "Mapping[int, date]", *, as_json: bool, as_csv: bool
) -> None:
    """The plan on standard output, in the form asked for."""
    if as_json:
        from kb.show.plan_json import plan_json

        put_json(plan_json(found, room.kit, days))
        return
    if as_csv:
        from kb.show.plan_csv import plan_csv

        click.echo(plan_csv(found, days), nl=False)
        return
    from kb.show.plan_text import plan_text
    from kb.show.setting import setting_of

    click.echo("\n".join(plan_text(found, room.kit, room.have, days, _texts(db, found), setting_of())))
