"""`drillpath plan LIFT --lessons N`: what is shown in each of so many lessons, and what is taken home."""

import sqlite3
from collections.abc import Sequence
from datetime import date, datetime
from typing import TYPE_CHECKING, NamedTuple

import click

from kb.ask import read
from kb.ask.fear import steps_for
from kb.ask.path import Order
from kb.ask.plan.lessons import Lessons, in_lessons
from kb.ask.plan.stiff import check_joints, meanwhile, openers
from kb.ask.plan.take_home import AT_HOME, holds_after, take_home
from kb.ask.plan.teaching import MOST_FOR_AFRAID, MOST_IN_LESSON, Teaching
from kb.ask.plan.turns import dates_of
from kb.ask.shelf import Shelf
from kb.commands.asked import Room, again, put_json, say
from kb.commands.plan_asked import Wishes, at_home
from kb.commands.sheet_file import put_sheet, put_text
from kb.show.lessons_answer import LessonsAnswer
from kb.terms import DrillId

if TYPE_CHECKING:
    from kb.ask.plan.past import Done

__all__ = ["Outlets", "answer_lessons"]

NOT_AGAIN = ("as_json", "as_csv", "sheet", "paper", "calendar", "start", "at", "done")
"""Options that the question for the next lesson leaves out: where an answer goes, and what was done before."""


class Outlets(NamedTuple):
    """Where lessons go: `as_json` or `as_csv` on standard output, a sheet on some paper, a calendar."""

    as_json: bool
    as_csv: bool
    sheet: str | None
    paper: str
    calendar: str | None


def answer_lessons(
    ctx: click.Context,
    db: sqlite3.Connection,
    shelf: Shelf,
    room: Room,
    held: frozenset[DrillId],
    order: Order,
    per_week: int,
    minutes: int,
    done: "Sequence[Done]",
    wishes: Wishes,
    begins: datetime | None,
    outlets: Outlets,
) -> None:
    """Answer a question for so many lessons. Raises BadInput for an unknown joint, NoAnswer where nothing is shown."""
    joints = tuple(dict.fromkeys(each.strip() for each in (wishes.stiff or "").split(",") if each.strip()))
    check_joints(shelf, joints)
    faults, fits = read.faults(db), shelf.fits(room.have)
    texts = read.sections(db, "drill", shelf.drills)
    said = at_home(db, wishes)
    home_have = AT_HOME if said is None else said
    opening = tuple(openers(shelf, fits, shelf.fits(home_have), faults, joints))
    misses = frozenset(each for each in shelf.drills if "Miss" in texts.get(each, {}))
    steps = steps_for(shelf.lift.serves, shelf.drills.values(), faults) if wishes.afraid else None
    most = wishes.new or (MOST_IN_LESSON if steps is None else MOST_FOR_AFRAID)
    teaching = Teaching(shelf, room.have, fits, minutes, most, order, joints, opening, misses, steps)
    met = {each.drill: each.met for each in sorted(done, key=lambda each: each.session)}
    known = (held | {each for each, well in met.items() if well}) - {each for each, well in met.items() if not well}
    lessons = in_lessons(teaching, known, wishes.lessons or 1)
    lessons = lessons._replace(begun=max((each.session for each in done), default=0))
    holds = holds_after(lessons)
    answer = LessonsAnswer(
        lessons,
        room.kit,
        per_week,
        _days(lessons, per_week, begins),
        texts,
        {joint: meanwhile(shelf, faults, joint) for joint in joints},
        take_home(lessons, home_have),
        home_have,
        holds,
        again(ctx, shelf.lift.id, without=NOT_AGAIN, lessons="1", holds=",".join(holds)) if lessons.after else "",
    )
    _put(answer, outlets, begins)


def _days(lessons: Lessons, per_week: int, begins: datetime | None) -> dict[int, date]:
    numbers = [lessons.begun + each.n for each in lessons.lessons]
    return dates_of(numbers, lessons.begun, None if begins is None else begins.date(), per_week)


def _put(answer: LessonsAnswer, outlets: Outlets, begins: datetime | None) -> None:
    if outlets.calendar is not None and begins is not None:
        from kb.show.lessons_calendar import lessons_calendar

        text = lessons_calendar(answer, begins.time(), datetime.now())
        put_text(outlets.calendar, text, "the calendar", newline="")
        say(f"The lessons are in {outlets.calendar}, from {begins:%Y-%m-%d} on.")
    if outlets.sheet is not None:
        from kb.show.lessons_sheet import lessons_sheet

        put_sheet(outlets.sheet, lessons_sheet(answer, outlets.paper))
        say(f"The sheet is in {outlets.sheet}: for a phone, and for {outlets.paper} paper, a page a lesson.")
    if outlets.as_json:
        from kb.show.lessons_json import lessons_json

        put_json(lessons_json(answer))
    elif outlets.as_csv:
        from kb.show.lessons_csv import lessons_csv

        click.echo(lessons_csv(answer), nl=False)
    else:
        from kb.show.lessons_text import lessons_text
        from kb.show.setting import setting_of

        click.echo("\n".join(lessons_text(answer, setting_of())))
