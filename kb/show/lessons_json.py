"""Lessons for programs, in the shape of kb/docs/answers.md."""

from typing import TYPE_CHECKING, Any

from kb.ask.plan.turns import week_of
from kb.show.as_json import VERSION
from kb.terms import Stage

if TYPE_CHECKING:
    # only for their names: a question imports no more than it needs
    from collections.abc import Iterable, Mapping, Sequence
    from datetime import date

    from kb.ask.plan.filled import Lesson
    from kb.ask.plan.lesson import Line
    from kb.ask.plan.lessons import Lessons
    from kb.terms import Cause, DrillId, Fault, ItemId

__all__ = ["lessons_json"]

Json = dict[str, Any]


def lessons_json(
    lessons: "Lessons",
    kit: str | None,
    per_week: int,
    days: "Mapping[int, date]",
    texts: "Mapping[str, Mapping[str, str]]",
    keeps: "Mapping[str, tuple[Fault, Cause] | None]",
    home: "Sequence[Line]",
    home_have: "Iterable[ItemId]",
    holds: "Sequence[DrillId]",
    command: str,
) -> Json:
    """Lessons, drill by drill, and what comes after them; the arguments as in kb/show/lessons_text.py.

    `holds` says all that is known after the lessons in as few drills as do.
    """
    asked = lessons.teaching
    after = lessons.after
    return {
        "version": VERSION,
        "lift": asked.shelf.lift.id,
        "kit": kit,
        "per_week": per_week,
        "minutes": asked.minutes,
        "done": lessons.begun,
        "most_new": asked.most,
        "stiff": [_stiff(lessons, joint, keeps.get(joint)) for joint in asked.stiff],
        "goal": None if lessons.goal is None else lessons.goal.id,
        "missing": [drill.id for drill in lessons.missing],
        "sessions": [_lesson(lessons, each, per_week, days, texts) for each in lessons.lessons],
        "home": {"have": sorted(home_have), "drills": [_line(lessons, line, texts) for line in home]},
        "next": {
            "drill": None if after is None else after.goal.id,
            "drills": [] if after is None else [drill.id for drill in after.drills],
            "holds": list(holds),
            "command": command,
        },
    }


def _stiff(lessons: "Lessons", joint: str, kept: "tuple[Fault, Cause] | None") -> Json:
    opener = next((drill.id for drill in lessons.teaching.openers if joint in drill.opens), None)
    keep = None if kept is None else {"fault": kept[0].id, "cause": kept[1].id, "text": kept[1].throughout}
    return {"joint": joint, "opener": opener, "keep_to": keep}


def _lesson(
    lessons: "Lessons",
    lesson: "Lesson",
    per_week: int,
    days: "Mapping[int, date]",
    texts: "Mapping[str, Mapping[str, str]]",
) -> Json:
    number = lessons.begun + lesson.n
    return {
        "n": number,
        "week": week_of(number, per_week),
        "date": days[number].isoformat() if number in days else None,
        "warm_up": lesson.raised,
        "minutes": lesson.minutes,
        "left": lesson.left,
        "end": None if lesson.end is None else lesson.end.id,
        "drills": [_line(lessons, line, texts) for line in lesson.lines],
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
