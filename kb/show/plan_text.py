"""A plan on a terminal: how long it takes, then session by session, then how to read it."""

from collections.abc import Collection, Mapping
from datetime import date

from kb.ask.plan.fill import Slot
from kb.ask.plan.plan import Plan, Session
from kb.kit import fit, gear_at
from kb.show.care import ASK_FIRST, NO_REVIEW, USUAL, Due, cares
from kb.show.coach_words import dosed, moved_on, share_said
from kb.show.plan_away import away_before, away_drills
from kb.show.plan_tries import tries_said
from kb.show.plan_words import (
    KINDS,
    counted,
    day_said,
    facts,
    how_it_goes,
    nothing_left,
    place_said,
    session_minutes,
    short_of,
    spare_said,
    titled,
    weighed,
)
from kb.show.setting import Setting, aside, hanging, wrapped
from kb.terms import ItemId

__all__ = ["due_before", "plan_text"]


def plan_text(
    plan: Plan,
    kit: str | None,
    have: Collection[ItemId],
    days: Mapping[int, date],
    texts: Mapping[str, Mapping[str, str]],
    setting: Setting,
) -> list[str]:
    """A plan in lines.

    `kit` is None where the question listed what there is; `have` is what there is; `days` holds the sessions' dates,
    and may be empty; `texts` the drills' sections, for how to miss.
    """
    lift = plan.path.shelf.lift
    lines = aside(titled(plan), setting.between.join(facts(plan, kit)), setting)
    if not plan.sessions:
        return [*lines, *wrapped(nothing_left(lift.name), setting.width)]
    lines += wrapped(short_of(plan), setting.width)
    seen, week = set[str](), 0
    for session in plan.sessions:
        if plan.until is not None and plan.until.short and session.n == plan.until.last + 1:
            lines += ["", *aside("The day", "what comes after it is too late", setting)]
        if session.week != week:
            for gone in away_before(plan, session, week):
                lines += _away(plan, gone, texts, setting)
            week = session.week
            lines += ["", setting.strong(f"Week {week}{', light' if session.light else ''}")]
        lines += _session(plan, session, have, days, texts, seen, setting)
    if plan.others:
        lines += ["", *wrapped(f"Done, but not in this plan: {', '.join(plan.others)}.", setting.width)]
    closing = [*how_it_goes(plan), USUAL, ASK_FIRST, NO_REVIEW]
    return [*lines, "", *(line for text in closing for line in wrapped(text, setting.width))]


def _away(plan: Plan, week: int, texts: Mapping[str, Mapping[str, str]], setting: Setting) -> list[str]:
    said, drills = away_drills(plan, week, texts, setting)
    lines = ["", setting.strong(f"Week {week}, away"), *hanging("", said, setting, indent=4)]
    return [*lines, *(line for drill in drills for line in hanging("- ", drill, setting, indent=4))]


def due_before(
    plan: Plan, slot: Slot, have: Collection[ItemId], texts: Mapping[str, Mapping[str, str]], seen: set[str]
) -> list[str]:
    """The cautions due before a drill that is new, those said already left out."""
    form, items = slot.form, plan.path.shelf.items
    first = slot.kind in ("new", "part", "build", "finish", "day") or (form.known and slot.exposure == 1)
    fitted = fit(form.drill, have, items) if first else None
    if fitted is None:
        return []
    drill = form.drill._replace(sections=texts.get(form.drill.id, {}))
    return cares(Due(drill, form.load, form.dials.catch, gear_at(fitted, form.load, have, items)), seen)


def _told(slot: Slot, texts: Mapping[str, Mapping[str, str]], seen: set[str], setting: Setting) -> str:
    """How much of a drill, what to say and until when, where it comes first; `seen` keeps what was told."""
    drill = slot.form.drill._replace(sections=texts.get(slot.form.drill.id, {}))
    if f"told {drill.id}" in seen:
        return ""
    seen.add(f"told {drill.id}")
    cue = f'; say "{drill.cues[0]}"' if drill.cues else ""
    much = ", ".join(part for part in (dosed(drill, setting), share_said(drill, slot.form.load)) if part)
    return f"{much}{cue}; until {moved_on(drill.standard)}"


def _session(
    plan: Plan,
    session: Session,
    have: Collection[ItemId],
    days: Mapping[int, date],
    texts: Mapping[str, Mapping[str, str]],
    seen: set[str],
    setting: Setting,
) -> list[str]:
    day = f", {day_said(days[session.n])}" if session.n in days else ""
    lines = aside(f"{session.n:>2}{day}{place_said(session)}", session_minutes(session), setting)
    for slot in session.slots:
        for text in due_before(plan, slot, have, texts, seen):
            lines += hanging("! ", text, setting, indent=4)
        what = f"{KINDS[slot.kind]:<7}{weighed(slot)}{' (not met yet)' if slot.again else ''}"
        lines += aside(what, f"{counted(slot):>6}  {slot.minutes:>2} min", setting._replace(ink=False), indent=4)
        told = _told(slot, texts, seen, setting)
        for text in [told, *tries_said(slot)] if told else tries_said(slot):
            lines += hanging("", text, setting, indent=11)
    if not session.slots:
        lines += hanging("", "nothing is due: rest, or go over what is known", setting, indent=4)
    if session.more:
        lines += hanging("left   ", spare_said(session), setting, indent=4)
    if session.places:
        lines += hanging(
            "", f"then find where the lifter stands: drillpath place {plan.path.shelf.lift.id}", setting, indent=4
        )
    return lines
