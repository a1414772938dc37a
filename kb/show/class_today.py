"""What a class's plan says of the drills that everyone who learns does today, and of those that don't fit."""

from kb.ask.class_.doing import Own
from kb.ask.class_.slots import ClassPlan
from kb.dose import minutes
from kb.show.coach_words import listed
from kb.terms import Drill

__all__ = ["today_said"]


def today_said(plan: ClassPlan) -> list[str]:
    """A sentence with what is done today, and one for what is left for another day; nothing where nothing is asked."""
    goals = plan.matter.asked.today
    owns = [own for own in plan.matter.owns if own.today]
    drills = {drill.id: drill for own in owns for drill in _done(own)}
    shared = {drill.id for own in owns if not own.lifter.today for drill in _done(own)}
    done = [drills[goal] for goal in goals if goal in shared]
    if goals and not owns:
        return ["Nobody in this class learns the lift of `today`: it changes nothing."]
    said = []
    if done:
        names = listed([drill.name for drill in done])
        text = f"Today everyone who learns does {names}: one round of each drill on the way, then "
        said.append(f"{text}{'this' if len(done) == 1 else 'these'} in full{_short_said(owns, done)}.")
    return [*said, *_own_said(owns), *_further_said(owns), *_left_said(owns)]


def _own_said(owns: list[Own]) -> list[str]:
    """Who does something of their own in place of it."""
    who: dict[tuple[str, ...], list[str]] = {}
    for own in owns:
        if own.lifter.today:
            who.setdefault(tuple(dict.fromkeys(drill.name for drill in _done(own))), []).append(own.lifter.name)
    return [
        f"In its place {listed(members)}: {listed(list(names))}, each step on the way once, then this in full."
        for names, members in who.items()
        if names
    ]


def _further_said(owns: list[Own]) -> list[str]:
    """What comes after it, as there is time, and whose it is where not everyone's."""
    who: dict[tuple[str, ...], list[str]] = {}
    for own in owns:
        if own.further:
            who.setdefault(tuple(drill.name for drill in own.further), []).append(own.lifter.name)
    return [
        f"As there is time{'' if len(members) == len(owns) else f', {listed(members)}'}: after that {listed(names)},"
        f" next on the way to the lift; without {'it' if len(names) == 1 else 'them'} where today's standard isn't met."
        for names, members in who.items()
    ]


def _done(own: Own) -> list[Drill]:
    left = {drill.id for drill in own.left}
    return [doing.drill for doing in own.doings if doing.drill.id in own.today and doing.drill.id not in left]


def _short_said(owns: list[Own], done: list[Drill]) -> str:
    """Which of them are but one round for somebody, as the minutes hold no more."""
    short = [
        drill.name
        for drill in done
        if any(
            doings and not any(doing.work for doing in doings)
            for doings in ([doing for doing in own.doings if doing.drill.id == drill.id] for own in owns)
        )
    ]
    return f" ({listed(short)} as one round: there is time for no more)" if short else ""


def _left_said(owns: list[Own]) -> list[str]:
    """What is left for another day, whose it is where not everyone's, and how much longer with it would take."""
    who: dict[tuple[str, ...], list[Own]] = {}
    for own in owns:
        if own.left:
            who.setdefault(tuple(drill.name for drill in own.left), []).append(own)
    said = []
    for names, members in who.items():
        whose = "" if len(members) == len(owns) else f" for {listed([own.lifter.name for own in members])}"
        more = minutes(max(own.left_s for own in members))
        with_it = "it" if len(names) == 1 else "them"
        takes = f" With {with_it} the class would take {more} min more, at least." if more else ""
        said.append(f"Left for another day{whose}: {listed(names)}.{takes}")
    return said
