"""Lessons for programs, in the shape of kb/docs/answers.md."""

from typing import TYPE_CHECKING, Any

from kb.ask.plan.turns import week_of
from kb.show.as_json import VERSION
from kb.terms import Stage

if TYPE_CHECKING:
    # only for their names: a question imports no more than it needs
    from collections.abc import Mapping

    from kb.ask.plan.filled import Lesson
    from kb.ask.plan.lesson import Line
    from kb.ask.plan.lessons import Lessons
    from kb.show.lessons_answer import LessonsAnswer
    from kb.terms import Cause, Fault

__all__ = ["lessons_json"]

Json = dict[str, Any]


def lessons_json(answer: "LessonsAnswer") -> Json:
    """Lessons, drill by drill, and what comes after them."""
    lessons, asked = answer.lessons, answer.lessons.teaching
    after = lessons.after
    return {
        "version": VERSION,
        "lift": asked.shelf.lift.id,
        "kit": answer.kit,
        "per_week": answer.per_week,
        "minutes": asked.minutes,
        "done": lessons.begun,
        "most_new": asked.most,
        "afraid": asked.steps is not None,
        "stiff": [_stiff(lessons, joint, answer.kept.get(joint)) for joint in asked.stiff],
        "goal": None if lessons.goal is None else lessons.goal.id,
        "missing": [drill.id for drill in lessons.missing],
        "sessions": [_lesson(answer, each) for each in lessons.lessons],
        "home": {
            "have": sorted(answer.home_have),
            "drills": [_line(lessons, line, answer.texts) for line in answer.home],
        },
        "next": {
            "drill": None if after is None else after.goal.id,
            "drills": [] if after is None else [drill.id for drill in after.drills],
            "holds": list(answer.holds),
            "command": answer.command,
        },
    }


def _stiff(lessons: "Lessons", joint: str, kept: "tuple[Fault, Cause] | None") -> Json:
    opener = next((drill.id for drill in lessons.teaching.openers if joint in drill.opens), None)
    keep = None if kept is None else {"fault": kept[0].id, "cause": kept[1].id, "text": kept[1].throughout}
    return {"joint": joint, "opener": opener, "keep_to": keep}


def _lesson(answer: "LessonsAnswer", lesson: "Lesson") -> Json:
    number, days = answer.lessons.begun + lesson.n, answer.days
    return {
        "n": number,
        "week": week_of(number, answer.per_week),
        "date": days[number].isoformat() if number in days else None,
        "warm_up": lesson.raised,
        "minutes": lesson.minutes,
        "left": lesson.left,
        "end": None if lesson.end is None else lesson.end.id,
        "drills": [_line(answer.lessons, line, answer.texts) for line in lesson.lines],
    }


def _line(lessons: "Lessons", line: "Line", texts: "Mapping[str, Mapping[str, str]]") -> Json:
    drill = line.drill._replace(sections=texts.get(line.drill.id, {}))
    given = line.dose
    return {
        "id": drill.id,
        "name": drill.name,
        "stage": drill.stage.word,
        "load": None if drill.stage is Stage.PREPARE else line.load.word,
        "as": line.kind,
        "new": line.kind == "new",
        "minutes": line.minutes,
        "rounds": given.rounds,
        "reps": given.reps,
        "hold_s": given.hold_s,
        "rest_s": given.rest_s,
        "bar": line.using,
        "cue": drill.cues[0] if drill.cues else None,
        "standard": {"count": drill.standard.count, "of": drill.standard.of, "seen": drill.standard.seen},
        "own": line.own or None,
        "aids": list(line.aids),
        "if_not": None
        if line.easier is None
        else {
            "id": line.easier.drill,
            "name": lessons.teaching.shelf.drills[line.easier.drill].name,
            "eases": line.easier.eases,
        },
    }
