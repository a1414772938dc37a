"""A plan as a table of comma-separated values, one row a drill of a session.

Filled in under `met`, the same table goes back as `--done` (kb/intake/done_file.py), which reads these columns.
"""

import csv
import io
from typing import TYPE_CHECKING

from kb.terms import Stage

if TYPE_CHECKING:
    # only for their names: a question imports no more than it needs
    from collections.abc import Mapping
    from datetime import date

    from kb.ask.plan.plan import Plan

__all__ = ["COLUMNS", "plan_csv"]

COLUMNS = (
    "session",
    "date",
    "drill",
    "load",
    "met",
    "name",
    "as",
    "exposure",
    "of",
    "minutes",
    "new",
    "order",
    "week",
    "light",
    "place",
    "home",
    "kg",
)
"""The header: `met` is empty, for the coach; the rest is explained in kb/docs/plan.md."""


def _said(answer: bool) -> str:
    return "yes" if answer else "no"


def plan_csv(plan: "Plan", days: "Mapping[int, date]") -> str:
    """A plan as CSV (RFC 4180, lines end in CR LF); `days` holds the sessions' dates, and may be empty."""
    out = io.StringIO()
    table = csv.writer(out)
    table.writerow(COLUMNS)
    for session in plan.sessions:
        for order, slot in enumerate(session.slots, 1):
            form = slot.form
            table.writerow(
                (
                    session.n,
                    days[session.n].isoformat() if session.n in days else "",
                    form.drill.id,
                    "" if form.drill.stage is Stage.PREPARE else form.load.word,
                    "",
                    form.drill.name,
                    slot.kind,
                    slot.exposure,
                    form.exposures,
                    slot.minutes,
                    _said(slot.kind == "new"),
                    order,
                    session.week,
                    _said(session.light),
                    _said(session.places),
                    _said(session.at_home),
                    "" if slot.kg is None else f"{slot.kg:g}",
                )
            )
    return out.getvalue()
