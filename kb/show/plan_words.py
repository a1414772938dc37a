"""What a plan's drills, sessions and rules are called by people: one wording for text, calendar and paper."""

from datetime import date

from kb.ask.plan.fill import Kind, Slot
from kb.ask.plan.forms import Form
from kb.ask.plan.plan import Plan, Session
from kb.show.coach_words import LOADS
from kb.terms import Load

__all__ = ["KINDS", "counted", "day_said", "facts", "how_it_goes", "named", "session_minutes", "short_of", "spare_said"]

KINDS: dict[Kind, str] = {"new": "new", "work": "again", "check": "check", "keep": "keep"}
"""What a drill is there for, in one word."""


def named(form: Form) -> str:
    """A drill's name, with its weight where the plan has it at several."""
    several = form.lighter is not None or form.heavier is not None
    weight = "light" if form.load is Load.LIGHT else LOADS[form.load]
    return f"{form.drill.name}, {weight}" if several else form.drill.name


def counted(slot: Slot) -> str:
    """How far along a drill is: which of the days it is to be met on, or that it is held."""
    return "held" if slot.kind == "keep" else f"{slot.exposure} of {slot.form.exposures}"


def day_said(day: date) -> str:
    """A date as it is read out: Mon 2 Mar 2026, in English whatever the machine speaks."""
    weekday = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")[day.weekday()]
    month = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")[day.month - 1]
    return f"{weekday} {day.day} {month} {day.year}"


def session_minutes(session: Session) -> str:
    """A session's minutes and what of them warms up."""
    return f"{session.minutes} min, {session.warm_up} of them warm-up"


def facts(plan: Plan, kit: str | None) -> list[str]:
    """What the plan was made for."""
    a_week = "once a week" if plan.weeks.per_week == 1 else f"{plan.weeks.per_week} a week"
    return [f"{kit} kit" if kit else "your gear", a_week, f"{plan.minutes} min"]


def short_of(plan: Plan) -> str:
    """How long it takes, and how much shorter it could be at most."""
    count = len(plan.sessions)
    weeks = plan.sessions[-1].week - plan.sessions[0].week + 1
    more = " more" if plan.begun else ""
    said = f"{count}{more} session{'s' if count > 1 else ''} in {weeks} week{'s' if weeks > 1 else ''}."
    if count == plan.lower_bound:
        return f"{said} No plan under these rules is shorter."
    return f"{said} No plan under these rules is shorter than {plan.lower_bound}."


def spare_said(session: Session) -> str:
    """What to do with the minutes that are left, of a session that has some."""
    return f"{session.spare} min: once more {'; '.join(named(form) for form in session.more)}"


def how_it_goes(lift: str) -> list[str]:
    """How to read and use a plan, in paragraphs."""
    return [
        "new: shown, then the full dose. again: the full dose. check: one round, and if its standard is met the drill"
        " is held. keep: one round of what is held. A plan is what to expect; the standard of each drill decides"
        " (`drillpath show DRILL`).",
        f"Lifted before? `drillpath place {lift}` finds in a few checks what is still held; `--holds` leaves it out.",
        "Weight: a light bar once the form without weight has met its standard; then 2.5 kg more at most in a session,"
        " as long as four of five meet it; after two misses back to the last good weight (common practice, no source).",
        "Too many weeks? More `--per-week`: a session may be at home, with a stick for what is checked or kept.",
        "At a weight the minutes begin with a round unloaded. Stretches that are held belong to the warm-up.",
        "Every fourth week is light: nothing new, nothing at working weight, half the drills' time. End it with"
        f" `drillpath place {lift}`.",
        "Not met? Note it and plan anew: write `--csv`, fill in `met`, hand it back with `--done FILE`.",
        "How far apart a drill comes back follows what is published on gaps in learning, though not in lifting. How"
        " often it comes, and the light week, are common practice without a source.",
    ]
