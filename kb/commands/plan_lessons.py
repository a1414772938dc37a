"""`drillpath plan LIFT --lessons N`: what is shown in each of so many lessons, and what is taken home."""

import sqlite3
from collections.abc import Sequence
from datetime import datetime
from typing import TYPE_CHECKING, NamedTuple

import click

from kb.ask import read
from kb.ask.ability.standing import standing
from kb.ask.fear import steps_for
from kb.ask.path import Order
from kb.ask.plan.lessons import in_lessons
from kb.ask.plan.stiff import check_joints, meanwhile, openers
from kb.ask.plan.take_home import AT_HOME, holds_after, take_home
from kb.ask.plan.teaching import MOST_FOR_AFRAID, MOST_IN_LESSON, Teaching
from kb.ask.plan.turns import dates_of
from kb.ask.shelf import Shelf
from kb.commands.asked import Room, again, put_json, say
from kb.commands.plan_asked import Wishes, at_home, other_lift
from kb.commands.sheet_file import put_sheet, put_text
from kb.show.lessons_answer import LessonsAnswer
from kb.terms import DrillId

if TYPE_CHECKING:
    from kb.ask.plan.past import Done

__all__ = ["Outlets", "answer_lessons"]

NOT_AGAIN = ("as_json", "as_csv", "sheet", "paper", "calendar", "start", "at", "done", "also")
"""Options that the question for the next lesson leaves out: where an answer goes, and what was done before."""


class _Asked(NamedTuple):
    """What is asked alike of each lift that takes turns."""

    room: Room
    order: Order
    per_week: int
    minutes: int
    done: "Sequence[Done]"
    wishes: Wishes
    begins: datetime | None


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
    """Answer a question for so many lessons, of one lift or of two by turns.

    Raises BadInput for an unknown joint or lift, NoAnswer where nothing is shown.
    """
    count, other = wishes.lessons or 1, other_lift(db, shelf, wishes)
    asked = _Asked(room, order, per_week, minutes, done, wishes, begins)
    turns = 1 if other is None else 2
    answers = [_of_one(ctx, db, shelf, held, range(1, count + 1, turns), asked)]
    if other is not None:
        # what the first lesson of the one has shown needn't be shown in that of the other, which comes next
        shown = {line.drill.id for line in answers[0].lessons.lessons[0].lines}
        known = standing(other, frozenset(each for each in {*held, *shown} if each in other.drills))
        answers.append(_of_one(ctx, db, other, known, range(2, count + 1, turns), asked))
    _put(answers, outlets, begins)


def _of_one(
    ctx: click.Context,
    db: sqlite3.Connection,
    shelf: Shelf,
    held: frozenset[DrillId],
    numbers: Sequence[int],
    asked: _Asked,
) -> LessonsAnswer:
    """The lessons of one lift, numbered as they come."""
    room, order, per_week, minutes, done, wishes, begins = asked
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
    lessons = in_lessons(teaching, known, len(numbers))
    begun = max((each.session for each in done), default=0)
    numbered = tuple(each._replace(n=n) for n, each in zip(numbers, lessons.lessons, strict=True))
    lessons = lessons._replace(begun=begun, lessons=numbered)
    holds = holds_after(lessons)
    return LessonsAnswer(
        lessons,
        room.kit,
        per_week,
        dates_of([begun + n for n in numbers], begun, None if begins is None else begins.date(), per_week),
        texts,
        {joint: meanwhile(shelf, faults, joint) for joint in joints},
        take_home(lessons, home_have),
        home_have,
        holds,
        again(ctx, shelf.lift.id, without=NOT_AGAIN, lessons="1", holds=",".join(holds)) if lessons.after else "",
    )


def _put(answers: Sequence[LessonsAnswer], outlets: Outlets, begins: datetime | None) -> None:
    if outlets.calendar is not None and begins is not None:
        from kb.show.lessons_calendar import lessons_calendar

        text = lessons_calendar(answers, begins.time(), datetime.now())
        put_text(outlets.calendar, text, "the calendar", newline="")
        say(f"The lessons are in {outlets.calendar}, from {begins:%Y-%m-%d} on.")
    if outlets.sheet is not None:
        from kb.show.lessons_sheet import lessons_sheet

        put_sheet(outlets.sheet, lessons_sheet(answers, outlets.paper))
        say(f"The sheet is in {outlets.sheet}: for a phone, and for {outlets.paper} paper, a page a lesson.")
    if outlets.as_json:
        from kb.show.lessons_json import lessons_json

        first, *second = map(lessons_json, answers)
        put_json({**first, **({"also": second[0]} if second else {})})
    elif outlets.as_csv:
        from kb.show.lessons_csv import lessons_csv

        click.echo(lessons_csv(answers), nl=False)
    else:
        from kb.show.lessons_text import lessons_text
        from kb.show.setting import setting_of

        click.echo("\n".join(lessons_text(answers, setting_of())))
