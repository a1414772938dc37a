"""A plan's sessions as events of a calendar."""

from collections.abc import Mapping
from datetime import date, datetime, time

from kb.ask.plan.plan import Plan, Session
from kb.show.calendar import Event, calendar
from kb.show.care import NO_REVIEW, USUAL
from kb.show.coach_words import listed
from kb.show.plan_tries import tries_said
from kb.show.plan_words import KINDS, counted, named, place_said, spare_said, titled, weighed

__all__ = ["plan_calendar"]


def plan_calendar(plan: Plan, days: Mapping[int, date], at: time, stamp: datetime) -> str:
    """A plan as iCalendar (RFC 5545).

    `days` holds every session's date, `at` is when they begin, `stamp` when this was written. An event lasts the whole
    session, what is left over included. Its identity is the lift's and the session's number, so that a plan made anew
    takes the old one's place.
    """
    lift = plan.path.shelf.lift
    events = [
        Event(
            uid=f"plan-{lift.id}-{session.n}@drillpath",
            start=datetime.combine(days[session.n], at),
            seconds=60 * plan.minutes,
            title=_title(titled(plan), session),
            text=_text(lift.id, session),
        )
        for session in plan.sessions
    ]
    return calendar(events, f"{titled(plan)}, plan", stamp)


def _title(lift: str, session: Session) -> str:
    new = [named(slot.form) for slot in session.slots if slot.kind == "new"]
    weights = [f"{slot.kg:g}" for slot in session.slots if slot.form.is_lift and slot.kg is not None]
    unit = next((slot.unit for slot in session.slots), "kg")
    kg = f"{listed(weights)} {unit}" if weights else ""
    what = "light" if session.light and not kg else f"new: {', '.join(new)}" if new else kg or "nothing new"
    return f"{lift} {session.n}{place_said(session)}: {what}"


def _text(lift_id: str, session: Session) -> str:
    lines = [f"Warm-up, {session.warm_up} min"]
    for slot in session.slots:
        lines += [f"{KINDS[slot.kind]}: {weighed(slot)}, {counted(slot)}, {slot.minutes} min", *tries_said(slot)]
    if session.more:
        lines.append(f"Left: {spare_said(session)}")
    if session.places:
        lines.append(f"Then find where the lifter stands: drillpath place {lift_id}")
    return "\n".join([*lines, USUAL, NO_REVIEW])
