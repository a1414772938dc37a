"""How lessons are said: one wording for terminal, paper and calendar."""

from collections.abc import Collection, Mapping, Sequence
from typing import NamedTuple

from kb.ask.plan.filled import Lesson
from kb.ask.plan.lesson import Line, LineKind, is_way_out
from kb.ask.plan.lessons import Lessons
from kb.ask.plan.stiff import unspared
from kb.ask.session.warm_up import raises
from kb.kit import BAR, fit, gear_at
from kb.show.care import AFRAID, LOWERED, Due, cares
from kb.show.coach_words import dosed, human, listed, moved_on, plain_markdown
from kb.show.lessons_answer import LessonsAnswer, Texts
from kb.show.setting import Setting
from kb.terms import Item, ItemId, Load, Stage, Standard

__all__ = [
    "HOW_IT_GOES",
    "IF_MET",
    "KINDS",
    "Told",
    "body_said",
    "by_turns",
    "due_before",
    "easier_said",
    "facts",
    "headline",
    "how_often",
    "left_said",
    "named",
    "next_said",
    "title",
    "told",
    "until_said",
    "warm_said",
]

KINDS: dict[LineKind, str] = {
    "open": "open",
    "check": "check",
    "new": "new",
    "again": "again",
    "miss": "out",
    "lift": "lift",
    "finish": "finish",
}
"""What a drill is there for, in one word."""

AIDS = {
    "wedge": "heels on the wedge (never under a bar)",
    "discs": "heels on thin discs (never under a bar)",
    "books": "heels on thin books (never under a bar)",
    "wider-grip": "hands a finger or two wider",
    "two-fingers": "two fingers under it, hands a finger wider",
}
"""What helps a stiff body, as it is said."""

OWN = {"depth": "are steady to today's own depth", "line": "are steady on today's own line"}
"""What stands in place of a standard for a stiff body. Common practice, no source."""

HOW_IT_GOES = (
    "open: loosens what is stiff. check: one round of last time's. new: shown, then done. again: once more. out: the"
    " way out of a try that goes wrong, before any bar. lift: the furthest movement known, which ends every lesson;"
    " with the bar only if it was met with the stick today, else the stick again. finish: strengthens. What isn't met"
    " holds nobody up: do what stands under If not, and go on."
)
"""How to read lessons."""

IF_MET = "only if it was met with the stick, else the stick again"
"""When the furthest movement is done with a bar."""


MUCH_LEFT = 15
"""Minutes from which on nothing is wanted of those that are left. Ours."""


class Told(NamedTuple):
    """What is said of a drill: `do` is how much, `say` a cue, `until` when it is met, `keep` what helps, `instead`."""

    do: str
    say: str
    until: str
    keep: str
    instead: str


def facts(answer: LessonsAnswer) -> list[str]:
    """What the lessons were made for."""
    lessons, kit, per_week = answer.lessons, answer.kit, answer.per_week
    a_week = "once a week" if per_week == 1 else f"{per_week} a week"
    count = len(lessons.lessons)
    some = [f"{count} lessons", a_week] if count > 1 else ["1 lesson"]
    return [f"{kit} kit" if kit else "your gear", *some, f"{lessons.teaching.minutes} min"]


def named(line: Line, items: Mapping[ItemId, Item]) -> str:
    """A drill's name, with what is in the hands where its entry allows more than a stick."""
    drill = line.drill
    if line.using is not None:
        return f"{drill.name}, {items[line.using].name.lower()}"
    stick = line.load is Load.STICK and drill.load[1] > Load.STICK and "bar" in drill.equipment
    light = ", light" if line.load is Load.LIGHT else ""
    name = f"{drill.name}{', stick' if stick else light}"
    return f"The way out: {name[0].lower()}{name[1:]}" if line.kind == "miss" else name


def title(lesson: Lesson, number: int) -> str:
    """A lesson's number and what it ends in."""
    return f"Lesson {number}" if lesson.end is None else f"Lesson {number}: {lesson.end.name.lower()}"


def by_turns(answers: Sequence[LessonsAnswer]) -> str:
    """Which lessons are of which lift, where two take turns; nothing for one."""
    if len(answers) < 2:
        return ""
    each = []
    for lessons in (answer.lessons for answer in answers):
        numbers = listed([str(lessons.begun + one.n) for one in lessons.lessons])
        each.append(f"{numbers} of the {lessons.teaching.shelf.lift.name.lower()}")
    return f"By turns, a lesson each: {'; '.join(each)}."


def headline(lessons: Lessons) -> str:
    """How far the lessons lead, and what is left of the way."""
    count = len(lessons.lessons)
    some = f"{count} lessons" if count > 1 else "One lesson"
    end = lessons.lessons[-1].end
    ends = f"end{'s' if count == 1 else ''} in"
    lift = lessons.teaching.shelf.lift
    if end is None:
        said = f"{some} of positions: nothing moves yet."
    elif end.id in lessons.before:
        said = f"{some} {ends} {end.name.lower()}, which is known."
    else:
        whole = f"the whole {lift.name.lower()}" if end.id == lift.drill else end.name.lower()
        other = lessons.lessons[-1].other
        if other is not None:
            # the halves as they come in the lift, whichever the lesson ends with
            first, then = (end, other) if lift.parts[0] in end.lifts else (other, end)
            whole = f"{first.name.lower()} and, from the shoulders, {then.name.lower()}"
        said = f"{some} {ends} {whole}: shown and done, not yet held."
    if lessons.missing and lessons.goal is not None:
        left = listed([each.name.lower() for each in lessons.missing])
        goal = lessons.goal.name.lower()
        asked = lessons.teaching
        stiff = unspared(lessons.goal, asked.stiff, asked.have)
        far = "what is stiff lets it" if stiff else "the time holds"
        said += f" The way to {goal} is gone as far as {far}: {left} {_are(lessons)} left."
    return said


def _are(lessons: Lessons) -> str:
    return "is" if len(lessons.missing) == 1 else "are"


def body_said(answer: LessonsAnswer) -> list[str]:
    """How to work with fear, and with each stiff joint; and where nothing here opens it, that too."""
    said = [] if answer.lessons.teaching.steps is None else [AFRAID]
    for joint in answer.lessons.teaching.stiff:
        kept = answer.kept.get(joint)
        opened = any(joint in drill.opens for drill in answer.lessons.teaching.openers)
        none = "" if opened else f" Nothing that is here opens the {human(joint)}."
        said.append(f"Stiff {human(joint)}: {kept[1].throughout if kept else 'work only as far as it lets you.'}{none}")
    return said


def warm_said(lessons: Lessons, lesson: Lesson) -> str:
    """The minutes that raise the pulse, and what does."""
    shelf = lessons.teaching.shelf
    quick = [
        drill.name.lower()
        for drill in shelf.drills.values()
        if drill.stage is Stage.PREPARE and raises(drill) and drill.id in lessons.teaching.fits
    ]
    return f"{lesson.raised} min to get warm{': ' if quick else ''}{listed(quick[:2], 'or')}"


def left_said(lesson: Lesson) -> str:
    """What the last minutes are for; nothing where none are left."""
    if not lesson.left:
        return ""
    if lesson.left > MUCH_LEFT:
        return f"{lesson.left} min: this is enough for one lesson, so end there, or go over what wasn't met"
    return f"{lesson.left} min for questions, water, and once more what wasn't met"


def until_said(line: Line) -> str:
    """When a drill is met: its standard, for a hold of fewer rounds so many; a stiff body by its own."""
    standard = line.drill.standard
    rounds = line.dose.rounds
    if not line.dose.reps and not line.dose.good and rounds < standard.of:
        standard = Standard(rounds, rounds, standard.seen)
    if line.own:
        return f"{standard.count} of {standard.of} {OWN[line.own]}"
    return moved_on(standard)


def easier_said(lessons: Lessons, line: Line) -> str:
    """What is done instead where a drill isn't met, and what that eases; nothing without one."""
    if line.easier is None:
        return ""
    return f"{lessons.teaching.shelf.drills[line.easier.drill].name} ({line.easier.eases})"


def told(lessons: Lessons, line: Line, texts: Texts, setting: Setting) -> Told:
    """All that is said of a drill; of a movement's own way out, how its entry says to get out."""
    drill = line.drill._replace(sections=texts.get(line.drill.id, {}))
    if line.kind == "miss" and not is_way_out(drill):
        floor = ItemId("drop-floor") in lessons.teaching.have
        out = " ".join(plain_markdown(drill.sections.get("Miss", "")).split()) if floor else LOWERED
        return Told(f"three times, stick. {out}", "", "", "", "")
    cue = drill.cues[0] if drill.cues else ""
    keep = "; ".join(AIDS[each] for each in line.aids)
    do = dosed(drill._replace(dose=line.dose), setting)
    return Told(do, cue, until_said(line), keep, easier_said(lessons, line))


def due_before(lessons: Lessons, line: Line, texts: Texts, seen: set[str]) -> list[str]:
    """The cautions due before a drill, those said already left out; how to miss stands in its own line."""
    shelf = lessons.teaching.shelf
    if line.kind == "miss":
        seen |= {f"_miss{lift}" for lift in shelf.lift.serves}
    fitted = fit(line.drill, lessons.teaching.have, shelf.items)
    if fitted is None or line.drill.stage is Stage.PREPARE:
        return []
    drill = line.drill._replace(sections=texts.get(line.drill.id, {}))
    gear = gear_at(fitted, line.load, lessons.teaching.have, shelf.items)
    if line.using is not None:
        gear = tuple(each._replace(using=BAR) if each.item == BAR else each for each in gear)
    return cares(Due(drill, line.load, drill.catch, gear), seen)


def how_often(home: Sequence[Line], have: Collection[ItemId], items: Mapping[ItemId, Item]) -> str:
    """How often what is taken home is done, with what of all that is there, and what isn't done alone."""
    used = set[ItemId]()
    for line in home:
        fitted = fit(line.drill, have, items)
        used |= {each.using for each in gear_at(fitted, line.load, have, items)} if fitted is not None else set()
    gear = listed(sorted(items[each].name.lower() for each in used)) if used else "empty hands"
    return (
        f"With {gear}: two or three days a week, some ten minutes, not on the day before a lesson (common practice, no"
        " source). Not alone: anything new, a bar, anything overhead that you can't let go of. Film one round from the"
        " side and count. Stop on pain."
    )


def next_said(lessons: Lessons) -> str:
    """What comes next; that there is nothing left where the lift was shown."""
    if lessons.after is None:
        return "Next: the same again until it is held; then a day to build it up to (`--weeks`)."
    goal = lessons.after.goal
    names = [each.name.lower() for each in lessons.after.drills if each.id != goal.id]
    asked = lessons.teaching
    when = ", once what is stiff gives way" if unspared(goal, asked.stiff, asked.have) else ""
    return f"Next{when}: {goal.name.lower()}{', by way of ' if names else ''}{listed(names)}."
