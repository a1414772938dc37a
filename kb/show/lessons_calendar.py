"""Lessons as events of a calendar."""

from collections.abc import Sequence
from datetime import datetime, time

from kb.ask.plan.filled import Lesson
from kb.ask.plan.lessons import Lessons
from kb.show.calendar import Event, calendar
from kb.show.care import NO_REVIEW, USUAL
from kb.show.coach_words import listed
from kb.show.lessons_answer import LessonsAnswer
from kb.show.lessons_words import KINDS, left_said, named, title, warm_said

__all__ = ["lessons_calendar"]


def lessons_calendar(answers: Sequence[LessonsAnswer], at: time, stamp: datetime) -> str:
    """Lessons as iCalendar (RFC 5545); each lasts its minutes. The rest is as in kb/show/plan_calendar.py."""
    events = sorted((event for each in answers for event in _events(each, at)), key=lambda event: event.start)
    lifts = listed([each.lessons.teaching.shelf.lift.name for each in answers])
    return calendar(events, f"{lifts}, lessons", stamp)


def _events(answer: LessonsAnswer, at: time) -> list[Event]:
    lessons, days = answer.lessons, answer.days
    lift = lessons.teaching.shelf.lift
    return [
        Event(
            uid=f"plan-{lift.id}-{lessons.begun + each.n}@drillpath",
            start=datetime.combine(days[lessons.begun + each.n], at),
            seconds=60 * lessons.teaching.minutes,
            title=f"{lift.name}, {title(each, lessons.begun + each.n).lower()}",
            text=_text(lessons, each),
        )
        for each in lessons.lessons
    ]


def _text(lessons: Lessons, lesson: Lesson) -> str:
    items = lessons.teaching.shelf.items
    lines = [f"warm: {warm_said(lessons, lesson)}"]
    lines += [f"{KINDS[line.kind]}: {named(line, items)}, {line.minutes} min" for line in lesson.lines]
    if left_said(lesson):
        lines.append(f"left: {left_said(lesson)}")
    return "\n".join([*lines, USUAL, NO_REVIEW])
