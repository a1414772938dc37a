"""Lessons and all that an answer says with them: what each form of it, text, paper or JSON, is made of."""

from collections.abc import Mapping
from datetime import date
from typing import NamedTuple

from kb.ask.plan.lesson import Line
from kb.ask.plan.lessons import Lessons
from kb.terms import Cause, DrillId, Fault, ItemId

__all__ = ["LessonsAnswer", "Texts"]

Texts = Mapping[str, Mapping[str, str]]
"""The sections of drills' text by drill and heading."""


class LessonsAnswer(NamedTuple):
    """Lessons, so many a week, in a kit (None where the question listed what there is).

    `days` holds their dates by number, and may be empty; `kept` the fault and cause that say how to work with each
    stiff joint; `home` is what is taken home to where there is `home_have`; `holds` says all that is known after the
    lessons in as few drills as do; `command` asks for what comes next, empty where nothing does.
    """

    lessons: Lessons
    kit: str | None
    per_week: int
    days: Mapping[int, date]
    texts: Texts
    kept: Mapping[str, tuple[Fault, Cause] | None] = {}
    home: tuple[Line, ...] = ()
    home_have: frozenset[ItemId] = frozenset()
    holds: tuple[DrillId, ...] = ()
    command: str = ""
