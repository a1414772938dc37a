"""What a plan's drills, sessions and rules are called by people: one wording for text, calendar and paper."""

from datetime import date

from kb.ask.plan.fill import Kind, Slot
from kb.ask.plan.forms import Form
from kb.ask.plan.plan import Plan, Session
from kb.ask.plan.weeks import MOST_NEW
from kb.show.coach_words import LOADS, listed
from kb.show.plan_day import TO_THE_DAY, day_comes_to, lags_said
from kb.terms import Load

__all__ = [
    "KINDS",
    "counted",
    "day_said",
    "facts",
    "how_it_goes",
    "named",
    "nothing_left",
    "place_said",
    "session_minutes",
    "short_of",
    "spare_said",
    "titled",
    "weighed",
]

KINDS: dict[Kind, str] = {
    "new": "new",
    "work": "again",
    "check": "check",
    "keep": "keep",
    "part": "part",
    "build": "lift",
    "finish": "finish",
    "day": "day",
}
"""What a drill is there for, in one word."""


def named(form: Form) -> str:
    """A drill's name, with its weight where the plan has it at several."""
    several = form.lighter is not None or form.heavier is not None
    weight = "light" if form.load is Load.LIGHT else LOADS[form.load]
    return f"{form.drill.name}, {weight}" if several else form.drill.name


def weighed(slot: Slot) -> str:
    """A drill's name with its kilograms, where the day has them."""
    if slot.kg is None:
        return named(slot.form)
    singles = ""
    if slot.singles_kg is not None:
        many = "the opener once," if slot.rehearses else "two singles of"
        singles = f", then {many} {slot.singles_kg:g} {slot.unit}"
    return f"{slot.form.drill.name}, {slot.kg:g} {slot.unit}{singles}"


def counted(slot: Slot) -> str:
    """How far along a drill is: which of the days it is to be met on, or held; of what is built up, its dose."""
    if slot.kind == "day":
        return "singles"
    if slot.kind in ("part", "build", "finish"):
        dose = slot.form.drill.dose
        return f"{dose.rounds} x {dose.reps}" if dose.reps else f"{dose.rounds} x {dose.hold_s} s"
    return "held" if slot.kind == "keep" else f"{slot.exposure} of {slot.form.exposures}"


def day_said(day: date) -> str:
    """A date as it is read out: Mon 2 Mar 2026, in English whatever the machine speaks."""
    weekday = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")[day.weekday()]
    month = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")[day.month - 1]
    return f"{weekday} {day.day} {month} {day.year}"


def session_minutes(session: Session) -> str:
    """A session's minutes and what of them warms up."""
    return f"{session.minutes} min, {session.warm_up} of them warm-up"


def place_said(session: Session) -> str:
    """Where or what a session is, after its number and date: at home, or the day; nothing if neither."""
    if any(slot.kind == "day" for slot in session.slots):
        return ", the day"
    return ", at home" if session.at_home else ""


def titled(plan: Plan) -> str:
    """What a plan is of: its lift, or both, in the order in which the day has them."""
    lift = plan.path.shelf.lift.name
    return lift if plan.second is None else f"{plan.second.lift.name}, {lift.lower()}"


def facts(plan: Plan, kit: str | None) -> list[str]:
    """What the plan was made for."""
    coached = [each - plan.weeks.home for each in plan.weeks.by_turns]
    a_week = "once a week" if coached == [1] else f"{listed([str(each) for each in coached])} a week"
    a_week += " by turns" if len(coached) > 1 else ""
    home = [f"{plan.weeks.home} at home"] if plan.weeks.home else []
    away = [f"away in week {listed([str(each) for each in plan.weeks.away])}"] if plan.weeks.away else []
    return [f"{kit} kit" if kit else "your gear", a_week, *home, f"{plan.minutes} min", *away]


def nothing_left(lift: str) -> str:
    """What is said where the lift is held and no day was named."""
    return f"Nothing left to plan: the {lift.lower()} is held. Name a day (--weeks, --by), and it is built up to that."


def short_of(plan: Plan) -> str:
    """How long it takes, how much shorter it could be at most, and what a day that was named comes to."""
    count = plan.to_held
    last = plan.sessions[count - 1] if count else plan.sessions[0]
    weeks = last.week - plan.sessions[0].week + 1
    more = " more" if plan.begun else ""
    said = f"{count}{more} session{'s' if count != 1 else ''} in {weeks} week{'s' if weeks > 1 else ''}."
    said = f"{said} {_least_said(plan)}{_free_said(plan)}"
    if plan.until is not None:
        return f"{said} {day_comes_to(plan, plan.until)}" if count else day_comes_to(plan, plan.until)
    return said


MUCH_FREE = 0.35
"""From which share of the sessions in which the lift is learnt it is said that they have room. Ours."""


def _free_said(plan: Plan) -> str:
    """That more could be shown at once, where much of the sessions with a coach is free."""
    learning = [each for each in plan.sessions[: plan.to_held] if not each.light and not each.at_home]
    free = sum(each.spare for each in learning) / max(sum(plan.minutes for _ in learning), 1)
    if free < MUCH_FREE or plan.weeks.most_new > MOST_NEW:
        return ""
    return (
        f" About {10 * round(10 * free)} % of the time is free: `--new 4` shows more in a session, and is sooner done."
    )


def _least_said(plan: Plan) -> str:
    same = plan.to_held == plan.lower_bound
    return f"No plan under these rules is shorter{'' if same else f' than {plan.lower_bound}'}."


def spare_said(session: Session) -> str:
    """What to do with the minutes that are left, of a session that has some."""
    return f"{session.spare} min: once more {'; '.join(named(form) for form in session.more)}"


READ = (
    "new: shown, then the full dose. again: the full dose. check: one round, and if its standard is met the drill is"
    " held. keep: one round of what is held. A plan is what to expect; the standard of each drill decides (`drillpath"
    " show DRILL`)."
)
KNOWN = (
    "Done before: each drill is one round and its standard; what isn't shown is worked on that day and comes again."
    " Half of what was lifted once is plenty for the first weeks."
)
AFTER_A_BREAK = (
    "Back after a birth, an operation or a long illness: whoever looked after it is asked first. After a birth stop and"
    " ask again at leaking, at a weight or dragging below, or a ridge down the middle of the belly; in the first weeks"
    " breathe out through the effort rather than hold the breath. After bad nights the lighter day comes first."
)
"""What returning means where a body has changed. Common practice, no source: whoever treats it says how much."""

AT_HOME = (
    "At home, alone: what has been shown, nothing new and no working weight. Film one from the side and count the"
    " standard. Headroom and a clear floor first; nothing overhead that can't be let go."
)
AWAY = (
    "A week away is the light one: the next comes so many weeks after it, and the first week back begins lower than the"
    " last ended. Not slept, or ill: one easy session more before the weights go on."
)
WEIGHT = (
    "Weight: a light bar once the form without weight has met its standard; then 2.5 kg more at most in a session, as"
    " long as four of five meet it; after two misses back to the last good weight (common practice, no source)."
)
SOONER = (
    "Too many weeks? More `--per-week`, sessions at home besides (`--home-days 2`), or more new drills in one (`--new"
    " 3`). A day to be ready by: `--weeks 8` or `--by 2026-05-01`, and kilograms with `--weight 35`."
)
UNLOADED = "At a weight the minutes begin with a round unloaded. Stretches that are held belong to the warm-up."
ANEW = "Not met? Note it and plan anew: write `--csv`, fill in `met`, hand it back with `--done FILE`."
SOURCES = (
    "How far apart a drill comes back follows what is published on gaps in learning, though not in lifting. How often"
    " it comes, and the light week, are common practice without a source."
)


def how_it_goes(plan: Plan) -> list[str]:
    """How to read and use a plan, in paragraphs."""
    lift = plan.path.shelf.lift.id
    known = any(form.known for form in plan.forms)
    before = (
        f"Lifted before? `--returning` looks at each drill once instead of teaching it; `drillpath place {lift}` finds"
        " in a few checks what is still held, and `--holds` leaves it out."
    )
    light = (
        "Every fourth week is light: nothing new, nothing at working weight, half the drills' time. End it with"
        f" `drillpath place {lift}`."
    )
    texts = {
        READ: True,
        KNOWN: known and plan.to_held > 0,
        AFTER_A_BREAK: known and plan.to_held > 0,
        before: not known,
        AT_HOME: plan.weeks.home > 0,
        TO_THE_DAY: plan.until is not None,
        AWAY: bool(plan.weeks.away),
        lags_said(plan): plan.weak is not None,
        WEIGHT: True,
        SOONER: plan.until is None,
        UNLOADED: True,
        light: any(session.light for session in plan.sessions),
        ANEW: True,
        SOURCES: True,
    }
    return [text for text, due in texts.items() if due]
