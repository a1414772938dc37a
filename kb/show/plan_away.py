"""What stands in a plan for a week away: that nothing of it is due, and what can be done with what there is."""

from collections.abc import Mapping

from kb.ask.plan.away import first, there
from kb.ask.plan.forms import Form
from kb.ask.plan.plan import Plan, Session
from kb.show.coach_words import dosed, human, listed, moved_on
from kb.show.setting import Setting
from kb.terms import Stage

__all__ = ["away_before", "away_drills", "away_known", "away_said"]


def away_before(plan: Plan, session: Session, week: int) -> list[int]:
    """The weeks away between `week`, that of the session before (0 for none), and that of a session."""
    return [each for each in plan.weeks.away if week and week < each < session.week]


def away_known(plan: Plan, week: int) -> list[Form]:
    """The plan's forms that were done before a week: all of them where the lift is held today."""
    if not plan.to_held:
        return list(plan.forms)
    done = {slot.form.n for session in plan.sessions if session.week < week for slot in session.slots}
    return [form for form in plan.forms if form.n in done or plan.past[form.n].met]


def away_said(plan: Plan, forms: tuple[Form, ...]) -> str:
    """What a week away is for, with what there is in it."""
    if not forms:
        return "Nothing of the plan: walk, sleep, squat and reach without weight. It is the light week."
    items = plan.path.shelf.items
    gear = [items[each].name.lower() if each in items else human(each) for each in sorted(plan.away.have)]
    with_it = f"With {listed(gear)}: " if gear else "With nothing but room: "
    return f"{with_it}on two or three days, well within what goes, none of it to be made up for. It is the light week."


def away_drills(
    plan: Plan, week: int, texts: Mapping[str, Mapping[str, str]], setting: Setting
) -> tuple[str, list[str]]:
    """What is said of a week away, then its drills: how much, what to say, until when; or which week has the same."""
    known = away_known(plan, week)
    forms = there(plan.path.shelf, plan.away, known)
    for before in plan.weeks.away:
        if before < week and there(plan.path.shelf, plan.away, away_known(plan, before)) == forms:
            return f"As in week {before}.", []
    said = []
    for form in forms:
        owed = listed([drill.name.lower() for drill in first(plan.path.shelf, plan.away, form, known)])
        after = f", first without weight: {owed}" if owed and form.drill.stage is Stage.FINISH else ""
        drill = form.drill._replace(sections=texts.get(form.drill.id, {}))
        cue = f'; say "{drill.cues[0]}"' if drill.cues else ""
        said.append(f"{drill.name}, {dosed(drill, setting)}{after}{cue}; until {moved_on(drill.standard)}")
    return away_said(plan, forms), said
