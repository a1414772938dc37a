"""So many lessons and no more: what is shown in each, and how far that leads towards the lift."""

from itertools import takewhile
from typing import NamedTuple

from kb.ask.path import path
from kb.ask.plan.filled import Lesson, filled
from kb.ask.plan.goals import LESSON_BUDGET, Goals, shed
from kb.ask.plan.packed import Stand, end_of, pack, take
from kb.ask.plan.stiff import unspared
from kb.ask.plan.teaching import Teaching
from kb.ask.plan.weeks import LONGEST
from kb.errors import NoAnswer
from kb.terms import Catch, Drill, DrillId, Speed, Stage

__all__ = ["MOST_LESSONS", "Lessons", "Next", "in_lessons"]

MOST_LESSONS = 52
"""Lessons that can be asked for at most."""

MOST_SHED = 12
"""Drills that only bridge a way which are left out of it at most: no way has more."""


MOST_TRIED = 4
"""Parts that are looked at for the shortest way where none fits: those with fewest drills that must be shown."""


class Next(NamedTuple):
    """A part of the lift and the drills still to be shown for it."""

    goal: Drill
    drills: tuple[Drill, ...]


class Lessons(NamedTuple):
    """Some lessons: `known` is all that is known after them, `before` what was known before.

    `goal` is the furthest part that they were made for, None where nothing was left to show; `missing` are drills on
    the way to it that they don't hold. `after` is what comes next; `begun` lessons were had before.
    """

    teaching: Teaching
    lessons: tuple[Lesson, ...]
    before: frozenset[DrillId]
    known: frozenset[DrillId]
    goal: Drill | None
    missing: tuple[Drill, ...]
    after: Next | None
    begun: int = 0


class _Aim(NamedTuple):
    """A part of the lift, the drills to it, and the new drills of each lesson; `whole` if so many hold them all."""

    goal: Drill
    way: tuple[Drill, ...]
    packed: tuple[tuple[Drill, ...], ...]
    whole: bool


def in_lessons(teaching: Teaching, holds: frozenset[DrillId], lessons: int) -> Lessons:
    """So many lessons from what a lifter holds to the furthest part of the lift that can be shown in them.

    The whole lift is tried first, then its parts, nearest first, with ever fewer of the drills that only bridge the
    way. A first lesson that would end without a whole movement takes a nearer one on the way where the lessons hold
    both. Raises NoAnswer where no part can be come to, or a lesson is too short for one drill.
    """
    goals = Goals(teaching)
    before = holds | {each.id for each in teaching.openers}
    stand, made, goal = Stand(before), list[Lesson](), None
    while len(made) < lessons:
        left = lessons - len(made)
        to_go = goal is not None and goal.id not in stand.known
        aim = _to(goals, goal, stand, _share(teaching, goal, left)) if goal is not None and to_go else None
        aim = aim or _aim(goals, stand, left)
        new = _next(goals, aim, stand, left) if aim is not None else ()
        if not made and not new and end_of(teaching, stand, ()) is None:
            raise NoAnswer(_why_none(goals, stand))
        goal = aim.goal if aim is not None else goal
        lesson, stand = filled(teaching, stand, new)
        made.append(lesson)
    missing = _shortest(goals, goal, stand) if goal is not None and goal.id not in stand.known else None
    return Lessons(teaching, tuple(made), before, stand.known, goal, missing or (), _after(goals, stand, goal))


def _to(goals: Goals, goal: Drill, stand: Stand, lessons: int) -> _Aim | None:
    """A part within so many lessons, by as much of its way as they hold; None where they don't hold it."""
    for count in range(MOST_SHED + 1):
        found = _packed(goals, goal, stand, lessons, count) if _spared(goals, goal) else None
        if found is not None:
            return found
    return None


def _share(teaching: Teaching, goal: Drill, lessons: int) -> int:
    """How many of so many lessons a part may take: of two halves neither takes them all."""
    lift = teaching.shelf.lift
    return lessons if goal.id == lift.drill or not lift.parts else -(-lessons // 2)


def _packed(goals: Goals, goal: Drill, stand: Stand, lessons: int, count: int) -> _Aim | None:
    if goals.least(goal, stand.known) > goals.teaching.most * lessons:
        return None
    way = goals.way(goal, stand.known)
    less = shed(goals.teaching.shelf, way, stand.known, count) if way else None
    packed = pack(goals.teaching, less, stand, lessons) if less else None
    return _Aim(goal, less, tuple(packed), whole=True) if less and packed else None


def _shortest(goals: Goals, goal: Drill, stand: Stand) -> tuple[Drill, ...] | None:
    """The way to a part without all that only bridges it."""
    way = goals.way(goal, stand.known)
    ways = [shed(goals.teaching.shelf, way, stand.known, count) for count in range(len(way))] if way else []
    return next((each for each in reversed(ways) if each), None)


def _aim(goals: Goals, stand: Stand, lessons: int) -> _Aim | None:
    """The nearest part within so many lessons; where there is none, the one with the shortest way, as far as it goes.

    What spares a stiff joint is tried before what doesn't; of a way that doesn't only what is slow or held, as long as
    something else can be done. None where no part is left, or not one drill fits.
    """
    groups = goals.ahead(stand.known)
    sole = end_of(goals.teaching, stand, ()) is None and not any(
        _spared(goals, each) for group in groups for each in group
    )
    for group in groups:
        for count in range(MOST_SHED + 1):
            for goal in group:
                theirs = _share(goals.teaching, goal, lessons)
                found = _packed(goals, goal, stand, theirs, count) if sole or _spared(goals, goal) else None
                if found is not None:
                    return found
    for group in groups:
        least = sorted(group, key=lambda each: goals.least(each, stand.known))[:MOST_TRIED]
        ways = [(each, way) for each in least if (way := _shortest(goals, each, stand))]
        for goal, way in sorted(ways, key=lambda each: len(each[1])):
            slow = (
                way if sole else tuple(takewhile(lambda each: _spared(goals, each) or each.speed < Speed.PAUSED, way))
            )
            new = take(goals.teaching, slow, stand)
            if new:
                return _Aim(goal, way, (new,), whole=False)
    return None


def _spared(goals: Goals, drill: Drill) -> bool:
    """Whether a movement spares all that is stiff."""
    return not unspared(drill, goals.teaching.stiff, goals.teaching.have)


def _next(goals: Goals, aim: _Aim, stand: Stand, lessons: int) -> tuple[Drill, ...]:
    """The new drills of the next lesson: of the way, or to a nearer part where the lesson would end in no movement.

    A nearer part only where the lessons left still hold the whole way after it; where none is near enough, a movement
    that is caught but not put together yet.
    """
    new = aim.packed[0]
    end = end_of(goals.teaching, stand, new)
    if end is not None and end.stage >= Stage.JOIN:
        return new
    for group in goals.ahead(stand.known) if aim.whole else ():
        for stone in group:
            nearer = _to(goals, stone, stand, 1) if stone != aim.goal else None
            if nearer is not None:
                known = stand.known | {each.id for each in nearer.way}
                after = stand._replace(known=known, last=nearer.way, n=stand.n + 1)
                if _to(goals, aim.goal, after, lessons - 1) is not None:
                    return nearer.way
    caught = end is not None and end.speed is Speed.FULL and end.catch > Catch.NONE
    for stone in () if caught else goals.caught(stand.known):
        nearer = _to(goals, stone, stand, 1)
        if nearer is not None:
            return nearer.way
    return new


def _after(goals: Goals, stand: Stand, goal: Drill | None) -> Next | None:
    """What comes next: the way to the part that wasn't come to, else to the one that the next lesson would be for."""
    if goal is not None and goal.id not in stand.known:
        return Next(goal, _shortest(goals, goal, stand) or ())
    aim = _aim(goals, stand, 1)
    return Next(aim.goal, aim.way) if aim is not None else None


def _why_none(goals: Goals, stand: Stand) -> str:
    """Why there is no lesson at all: no part can be come to, or the minutes are too few."""
    teaching = goals.teaching
    name = teaching.shelf.lift.name.lower()
    ways = [way for group in goals.ahead(stand.known) for each in group if (way := _shortest(goals, each, stand))]
    if not ways:
        try:
            path(teaching.shelf, have=teaching.have, holds=stand.known, budget=LESSON_BUDGET)
        except NoAnswer as none:
            return str(none)
        return f"nothing here leads to a part of the {name}"
    for minutes in range(teaching.minutes + 1, LONGEST + 1):
        longer = teaching._replace(minutes=minutes)
        if any(take(longer, way, stand) for way in ways):
            return (
                f"a lesson of {teaching.minutes} min holds no drill of the {name}: the least that will do is {minutes}"
            )
    return f"no lesson holds a drill of the {name}"
