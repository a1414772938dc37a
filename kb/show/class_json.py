"""A class planned, or why it can't be, for programs: the shapes of kb/docs/answers.md."""

from typing import TYPE_CHECKING, Any

from kb.ask.class_.changing import CHANGE_S

if TYPE_CHECKING:
    from kb.ask.class_.doing import Own
    from kb.ask.class_.going_on import More
    from kb.ask.class_.short import Short
    from kb.ask.class_.slots import ClassPlan, Duty, LifterPlan, Slot

__all__ = ["class_json", "no_class_json"]

VERSION = 1

Json = dict[str, Any]


def _slot(slot: "Slot") -> Json:
    return {
        "start_s": slot.start_s,
        "end_s": slot.end_s,
        "drill": slot.drill.id,
        "station": slot.station,
        "gear": list(slot.gear),
        "as": slot.part,
        "load": None if slot.part == "shown" else slot.load.word,
        "shares": list(slot.shares),
        "with": slot.with_whom,
        "watched": slot.watched,
        "rounds": slot.rounds or None,
        "every_s": slot.every_s or None,
    }


def _lifter(plan: "LifterPlan", own: "Own") -> Json:
    return {
        "name": plan.lifter.name,
        "lift": plan.lifter.lift,
        "group": plan.group + 1,
        "idle_s": plan.idle_s,
        "later": plan.later,
        "today_left": [drill.id for drill in own.left],
        "without": sorted(plan.lifter.without),
        "slots": [_slot(slot) for slot in plan.slots],
        "strength": [_slot(slot) for slot in plan.strength],
        "more": _more(plan.more),
        "then": [_more(each) for each in plan.then],
        "bar_turn": plan.at_bar and _slot(plan.at_bar),
    }


def _more(more: "More | None") -> Json | None:
    return more and {
        "drill": more.drill.id,
        "start_s": more.start_s,
        "end_s": more.end_s,
        "rounds": more.rounds,
        "every_s": more.every_s,
        "load": more.load.word,
        "station": more.station,
        "gear": list(more.gear),
        "shares": list(more.shares),
        "change_s": CHANGE_S if more.others else None,
        "by_turns": [
            {"drill": each.drill.id, "rounds": each.rounds, "every_s": each.every_s, "load": each.load.word}
            for each in more.others
        ],
    }


def _duty(duty: "Duty") -> Json:
    return {
        "coach": duty.coach + 1,
        "start_s": duty.start_s,
        "end_s": duty.end_s,
        "does": duty.does,
        "drill": duty.drill.id,
        "who": list(duty.who),
    }


def class_json(plan: "ClassPlan") -> Json:
    """A class. Of those who take turns at one set of gear only the first has `gear`: `shares` says with whom.

    `gap` is null where nothing is proved; `gear` holds what is counted.
    """
    asked = plan.matter.asked
    return {
        "version": VERSION,
        "name": asked.name,
        "minutes": asked.minutes,
        "warm_up_s": asked.warm_up_s,
        "today": list(asked.today),
        "optimal": plan.optimal,
        "gap": None if plan.gap is None else round(plan.gap, 4),
        "idle_s": plan.idle_s,
        "drills_at_once": {"most": plan.drills_at_once, "proved_least": plan.drills_least},
        "lifters": [_lifter(each, own) for each, own in zip(plan.lifters, plan.matter.owns, strict=True)],
        "coaches": [_duty(duty) for duty in plan.duties],
        "gear": [{"item": use.item, "have": use.have, "peak": use.peak} for use in plan.gear],
    }


def no_class_json(why: str, short: "tuple[Short, ...]") -> Json:
    """Why a class can't be planned, and what would each do alone: the least more of it, where that is proved."""
    return {
        "version": VERSION,
        "optimal": False,
        "lifters": [],
        "why": why,
        "short": [{"what": each.what, "by": each.by, "unit": each.unit, "proved": True} for each in short],
    }
