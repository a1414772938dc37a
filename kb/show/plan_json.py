"""A plan for programs, in the shape of kb/docs/answers.md."""

from typing import TYPE_CHECKING, Any

from kb.show.as_json import VERSION
from kb.terms import Stage

if TYPE_CHECKING:
    # only for their names: a question imports no more than it needs
    from collections.abc import Mapping
    from datetime import date

    from kb.ask.plan.fill import Slot
    from kb.ask.plan.plan import Plan, Session
    from kb.ask.plan.until import Until

__all__ = ["plan_json"]

Json = dict[str, Any]


def _sets(slot: "Slot") -> Json | None:
    """Rounds of so many repetitions, or seconds held; only of what is built up."""
    dose = slot.form.drill.dose
    sets = {"rounds": dose.rounds, "reps": dose.reps, "hold_s": dose.hold_s, "rest_s": dose.rest_s}
    return sets if slot.kind in ("part", "build", "finish") else None


def _drill(slot: "Slot") -> Json:
    form = slot.form
    return {
        "id": form.drill.id,
        "name": form.drill.name,
        "stage": form.drill.stage.word,
        "load": None if form.drill.stage is Stage.PREPARE else form.load.word,
        "as": slot.kind,
        "new": slot.kind == "new",
        "again": slot.again,
        "exposure": slot.exposure,
        "of": form.exposures,
        "minutes": slot.minutes,
        "kg": slot.kg,
        "singles_kg": slot.singles_kg,
        "singles": slot.singles,
        "rehearses": slot.rehearses,
        "tries": list(slot.tries),
        "sets": _sets(slot),
        **({} if slot.unit == "kg" else {"unit": slot.unit}),
    }


def _session(session: "Session", days: "Mapping[int, date]") -> Json:
    return {
        "n": session.n,
        "week": session.week,
        "date": days[session.n].isoformat() if session.n in days else None,
        "light": session.light,
        "home": session.at_home,
        "place": session.places,
        "warm_up": session.warm_up,
        "minutes": session.minutes,
        "drills": [_drill(slot) for slot in session.slots],
        "spare": session.spare,
        "more": [form.drill.id for form in session.more],
    }


def _until(until: "Until") -> Json:
    return {
        "sessions": until.last,
        "short": until.short,
        "in_time": dict(until.in_time),
        "part": None if until.part is None else until.part.drill.id,
        "weight_kg": until.goal.weight_kg,
        "from_kg": until.from_kg,
        "reached_kg": until.reached_kg,
    }


def plan_json(plan: "Plan", kit: str | None, days: "Mapping[int, date]") -> Json:
    """A plan's sessions; the bound and its parts count sessions still to come.

    `kit` is None where the question listed what there is; `days` holds the sessions' dates, and may be empty.
    """
    return {
        "version": VERSION,
        "lift": plan.path.shelf.lift.id,
        "kit": kit,
        "per_week": plan.weeks.per_week - plan.weeks.home,
        "turns": [each - plan.weeks.home for each in plan.weeks.by_turns],
        "home_days": plan.weeks.home,
        "minutes": plan.minutes,
        "done": plan.begun,
        "lower_bound": plan.lower_bound,
        "lower_bound_by": {part: n - plan.begun for part, n in plan.least._asdict().items()},
        "not_in_plan": list(plan.others),
        "held_in": plan.begun + plan.to_held,
        "weak": plan.weak,
        "away": list(plan.weeks.away),
        "until": None if plan.until is None else _until(plan.until),
        "second": None if plan.second is None else {"lift": plan.second.lift.id, **_until(plan.second.until)},
        "sessions": [_session(session, days) for session in plan.sessions],
    }
