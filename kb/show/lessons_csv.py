"""Lessons as a table: a plan's columns, so that it goes back as `--done` when `met` is filled in."""

import csv
import io
from collections.abc import Sequence
from typing import TYPE_CHECKING

from kb.ask.plan.turns import week_of
from kb.show.plan_csv import COLUMNS
from kb.terms import Stage

if TYPE_CHECKING:
    # only for their names: a question imports no more than it needs
    from kb.show.lessons_answer import LessonsAnswer

__all__ = ["lessons_csv"]


def lessons_csv(answers: "Sequence[LessonsAnswer]") -> str:
    """Lessons as CSV (RFC 4180, lines end in CR LF); what lessons don't have is left empty.

    A drill that comes twice in a lesson at one load has one row, with the minutes of both.
    """
    out = io.StringIO()
    table = csv.DictWriter(out, COLUMNS, restval="")
    table.writeheader()
    every = [(each.lessons.begun + lesson.n, each, lesson) for each in answers for lesson in each.lessons.lessons]
    for number, answer, lesson in sorted(every, key=lambda each: each[0]):
        days = answer.days
        rows: dict[tuple[str, str], dict[str, str | int]] = {}
        for line in lesson.lines:
            load = "" if line.drill.stage is Stage.PREPARE else line.load.word
            row = rows.get((line.drill.id, load))
            if row is not None:
                row["minutes"] = int(row["minutes"]) + line.minutes
                continue
            rows[line.drill.id, load] = {
                "session": number,
                "date": days[number].isoformat() if number in days else "",
                "drill": line.drill.id,
                "load": load,
                "name": line.drill.name,
                "as": line.kind,
                "minutes": line.minutes,
                "new": "yes" if line.kind == "new" else "no",
                "order": len(rows) + 1,
                "week": week_of(number, answer.per_week),
                "light": "no",
                "place": "no",
                "home": "no",
            }
        table.writerows(rows.values())
    return out.getvalue()
