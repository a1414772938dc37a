"""Lessons on a terminal: how far they lead, then lesson by lesson, then what is taken home."""

from collections.abc import Sequence

from kb.ask.plan.filled import Lesson
from kb.ask.plan.lesson import Line
from kb.ask.plan.lessons import Lessons
from kb.show.care import ASK_FIRST, NO_REVIEW, USUAL
from kb.show.lessons_answer import LessonsAnswer, Texts
from kb.show.lessons_words import (
    HOW_IT_GOES,
    IF_MET,
    KINDS,
    body_said,
    by_turns,
    due_before,
    facts,
    headline,
    how_often,
    left_said,
    named,
    next_said,
    title,
    told,
    warm_said,
)
from kb.show.plan_words import day_said
from kb.show.setting import Setting, aside, hanging, wrapped

__all__ = ["lessons_text"]


def lessons_text(answers: Sequence[LessonsAnswer], setting: Setting) -> list[str]:
    """Lessons in lines, of one lift or of two that take turns, with what is taken home and what comes next."""
    lines = wrapped(by_turns(answers), setting.width) if len(answers) > 1 else []
    for answer in answers:
        lines += ["", *_of_one(answer, setting)] if lines else _of_one(answer, setting)
    lines.append("")
    for text in (HOW_IT_GOES, USUAL, ASK_FIRST, NO_REVIEW):
        lines += wrapped(text, setting.width)
    return lines


def _of_one(answer: LessonsAnswer, setting: Setting) -> list[str]:
    lessons, seen = answer.lessons, set[str]()
    lines = aside(lessons.teaching.shelf.lift.name, setting.between.join(facts(answer)), setting)
    lines += wrapped(headline(lessons), setting.width)
    for text in body_said(answer):
        lines += wrapped(text, setting.width)
    for lesson in lessons.lessons:
        lines += ["", *_lesson(answer, lesson, seen, setting)]
    return [*lines, "", *_home(answer, setting)]


def _lesson(answer: LessonsAnswer, lesson: Lesson, seen: set[str], setting: Setting) -> list[str]:
    lessons, texts = answer.lessons, answer.texts
    number = lessons.begun + lesson.n
    day = f", {day_said(answer.days[number])}" if number in answer.days else ""
    lines = aside(f"{title(lesson, number)}{day}", f"{lesson.minutes + lesson.left} min", setting)
    lines += hanging("warm   ", warm_said(lessons, lesson), setting, indent=2)
    done = set[str]()
    for line in lesson.lines:
        for text in due_before(lessons, line, texts, seen):
            lines += hanging("! ", text, setting, indent=2)
        name = named(line, lessons.teaching.shelf.items)
        lines += aside(f"{KINDS[line.kind]:<7}{name}", f"{line.minutes:>2} min", setting._replace(ink=False), indent=2)
        lines += _told(lessons, line, texts, setting, briefly=line.drill.id in done)
        done.add(line.drill.id)
    if left_said(lesson):
        lines += hanging("left   ", left_said(lesson), setting, indent=2)
    return lines


def _told(lessons: Lessons, line: Line, texts: Texts, setting: Setting, *, briefly: bool = False) -> list[str]:
    """How much, what to say, until when and what instead; `briefly` only how much, and what holds for the bar."""
    it = told(lessons, line, texts, setting)
    if briefly:
        only = f"; {IF_MET}" if line.using and line.kind == "lift" else ""
        return hanging("", f"{it.do}{only}", setting, indent=9)
    say = f'; say "{it.say}"' if it.say else ""
    until = f"; until {it.until}" if it.until else ""
    keep = f"; {it.keep}" if it.keep else ""
    lines = hanging("", f"{it.do}{say}{keep}{until}", setting, indent=9)
    return lines + (hanging("If not ", it.instead, setting, indent=9) if it.instead else [])


def _home(answer: LessonsAnswer, setting: Setting) -> list[str]:
    """What to do alone until the next lesson, and how to ask for that."""
    lessons, home, items = answer.lessons, answer.home, answer.lessons.teaching.shelf.items
    lines = [setting.strong("To take home")]
    for line in home:
        lines += aside(f"  {named(line, items)}", f"{line.minutes:>2} min", setting._replace(ink=False))
        lines += _told(lessons, line, answer.texts, setting)
    if not home:
        lines += hanging(
            "", "Nothing of this can be done alone with what is there: walk, and squat to a chair.", setting, indent=2
        )
    lines += wrapped(how_often(home, answer.home_have, items), setting.width) if home else []
    lines += wrapped(next_said(lessons), setting.width)
    return [*lines, f"  {answer.command}"] if answer.command else lines
