"""What everyone who learns does today: a round of each drill on the way to those a coach names, these in full."""

from collections.abc import Iterator, Sequence
from functools import reduce
from typing import NamedTuple

from kb import dials
from kb.ask.class_.doing import Doing, Own, alone_s, counted, gear_of
from kb.ask.class_.groups import joined
from kb.ask.class_.people import Class, Lifter
from kb.ask.class_.turns import MOST_AT_A_BAR
from kb.ask.class_.walks import Walk
from kb.ask.path import PathEntry
from kb.ask.shelf import Shelf, ending_in
from kb.dials import at_load
from kb.kit import BAR, TRAINING_BAR, loads
from kb.terms import Catch, Drill, DrillId, ItemId, Load, Stage

__all__ = ["MOST_SHOWN", "goals_of", "today_of"]

MOST_SHOWN = 8
"""Drills of a list of `today` that aren't held, beyond which bridges between them are left out. Ours: more than that
nobody remembers of an evening."""

LEADING_IN = 2
"""Drills that lead into what is held and done again."""


class _Step(NamedTuple):
    """A drill of the list at one load: `full` with its whole dose, else one round; `again` is a heavier form of it."""

    drill: Drill
    load: Load
    full: bool
    again: bool = False


class _Asked(NamedTuple):
    """One lifter's question: what is there, how much time, s, and what finds paths."""

    of: Class
    lifter: Lifter
    shelf: Shelf
    have: frozenset[ItemId]
    room_s: int
    walk: Walk

    @property
    def goals(self) -> tuple[DrillId, ...]:
        """What of today's drills, their own before the class's, is of the lifter's lift."""
        return goals_of(self.of, self.lifter, self.shelf)


def goals_of(asked: Class, lifter: Lifter, shelf: Shelf) -> tuple[DrillId, ...]:
    """The drills that a lifter does today: their own, else the class's, as far as they are of their lift."""
    return tuple(goal for goal in lifter.today or asked.today if goal in shelf.drills)


def today_of(asked: Class, lifter: Lifter, shelf: Shelf, have: frozenset[ItemId], walk: Walk) -> Own:
    """The list of a lifter who learns, in a class that has a `today` of which one drill at least is of their lift.

    What doesn't fit the minutes goes in this order: heavier forms, drills that nothing later is built on, doses down
    to one round, and then the last of what was named, which the list says is left. Raises NoAnswer where the gear
    leads to none of it.
    """
    room_s = 60 * asked.minutes - asked.warm_up_s - asked.spare_s
    question = _Asked(asked, lifter, shelf, have, room_s, walk)
    goals = question.goals
    if lifter.holds >= set(goals):
        return _further(question, _again(question)) if asked.further else _again(question)
    least = _own(question, [])
    for count in range(len(goals), 0, -1):
        for steps in _ways(_steps(question, goals[:count])):
            least = _own(question, steps)
            if alone_s(asked, least) <= question.room_s and not _too_many(question, steps):
                whole = count == len(goals) and asked.further
                return _further(question, least) if whole else _leaving(question, least, goals[count:])
    # not even the first: as far towards it as the minutes go
    short = least
    while len(short.doings) > 1 and alone_s(asked, short) > question.room_s:
        short = short._replace(doings=short.doings[:-1])
    gone = len(least.doings) - len(short.doings)
    return _leaving(question, short, goals if gone else goals[1:], later=max(gone - 1, 0))


def _too_many(asked: _Asked, steps: Sequence[_Step]) -> bool:
    """Whether more is shown than anyone remembers, and some of it only leads from one drill to another."""
    new = {step.drill.id for step in steps if step.drill.stage is not Stage.PREPARE} - asked.lifter.holds
    return len(new) > MOST_SHOWN and any(not step.full and not _built_on(steps, n) for n, step in enumerate(steps))


def _further(asked: _Asked, own: Own) -> Own:
    """The list with what follows it on the path to the whole lift, in full: so many drills more as the class says.

    Each time the one of those that are ready which changes least. As it was where that doesn't fit the time, and for
    who has a `today` of their own: the class's way isn't theirs.
    """
    if asked.lifter.today:
        return own
    done = asked.lifter.holds | {doing.drill.id for doing in own.doings}
    on_path = [entry.drill for entry in asked.walk(asked.shelf, have=asked.have, holds=done).entries]
    fits, turned = asked.shelf.fits(asked.have), asked.shelf.dials
    last, kept = own.doings[-1].drill, list[Drill]()
    shown = {doing.drill.id for doing in own.doings if doing.drill.stage is not Stage.PREPARE} - asked.lifter.holds
    while len(kept) < min(asked.of.further, MOST_SHOWN - len(shown)):
        before = turned[last.id]
        ready = [
            drill
            for drill in on_path
            if drill.stage is not Stage.PREPARE
            and drill.id not in done
            and all(done.intersection(group) for group in drill.groups)
        ]
        if not ready:
            break
        last = min(ready, key=lambda drill: dials.step(before, turned[drill.id], dials.spans(asked.shelf.lift)))
        kept.append(last)
        done |= {last.id}
    held = asked.lifter.holds >= set(asked.goals)
    light = [_held_at(asked, each) if held else loads(each, fits[each.id], Load.LIGHT)[0] for each in kept]
    steps = [_Step(each, load, full=True) for each, load in zip(kept, light, strict=True)]
    longer = own._replace(doings=(*own.doings, *_own(asked, steps).doings), further=tuple(kept))
    return longer if kept and alone_s(asked.of, longer) <= asked.room_s else own


def _leaving(asked: _Asked, own: Own, goals: Sequence[DrillId], *, later: int = 0) -> Own:
    """A list that leaves some of today's drills, with the time that the shortest list with them takes more, s."""
    if not goals:
        return own
    *_, least = _ways(_steps(asked, asked.goals))
    more = alone_s(asked.of, _own(asked, least)) - asked.room_s
    left = tuple(asked.shelf.drills[goal] for goal in goals)
    return own._replace(later=later + len(left), left=left, left_s=max(more, 0))


def _steps(asked: _Asked, goals: Sequence[DrillId]) -> list[_Step]:
    """The paths to these drills, one after the other: what an earlier one leads through isn't done a second time.

    Everything at its lightest load first; after that what was named once more at the path's own, never above light:
    what only leads there isn't done at a bar, where others wait for it.
    """
    light: dict[DrillId, _Step] = {}
    again: dict[DrillId, _Step] = {}
    done = set(asked.lifter.holds)
    for goal in goals:
        for entry in asked.walk(ending_in(asked.shelf, goal), have=asked.have, holds=frozenset(done)).entries:
            drill = entry.drill
            least = loads(drill, asked.shelf.fits(asked.have)[drill.id], Load.LIGHT)[0]
            full = drill.id in goals
            light.setdefault(drill.id, _Step(drill, least, full))
            if (
                full
                and least < entry.load <= Load.LIGHT
                and _goes_round(asked, drill, entry.load, len(asked.of.lifters))
            ):
                again[drill.id] = _Step(drill, entry.load, full, again=True)
        done |= light.keys()
    return [*light.values(), *again.values()]


def _held_at(asked: _Asked, drill: Drill) -> Load:
    """How heavy a drill that is held is done again: light where those who hold it have that by turns, else lightest."""
    possible = loads(drill, asked.shelf.fits(asked.have)[drill.id], Load.LIGHT)
    who = sum(_holds(asked, lifter) for lifter in asked.of.lifters)
    return next((load for load in reversed(possible) if _goes_round(asked, drill, load, who)), possible[0])


def _holds(asked: _Asked, lifter: Lifter) -> bool:
    """Whether somebody needs bars from the start: who has a day's weight, mends a fault, or holds all of today's."""
    held = lifter.holds
    return lifter.fault is not None or asked.shelf.lift.drill in held or held >= set(asked.goals)


def _goes_round(asked: _Asked, drill: Drill, load: Load, people: int) -> bool:
    """Whether so many could have what a form takes by turns of four; a training bar is a bar for who learns."""
    there = asked.of.have
    gear = counted(gear_of(drill, load, asked.have, asked.shelf), there)
    spare = there.get(TRAINING_BAR, 0) if TRAINING_BAR in asked.have else 0
    return all(MOST_AT_A_BAR * (there.get(item, 0) + spare * (item == BAR)) >= people for item in gear)


def _ways(steps: list[_Step]) -> Iterator[list[_Step]]:
    """The list, then ever shorter ones: each time one thing less, of bridges the last first, of the rest the first."""
    yield steps
    while again := [n for n, step in enumerate(steps) if step.again]:
        steps = steps[: again[0]] + steps[again[0] + 1 :]
        yield steps
    for n in range(len(steps) - 1, -1, -1):
        if not steps[n].full and not _built_on(steps, n):
            steps = steps[:n] + steps[n + 1 :]
            yield steps
    for n, step in enumerate(steps):
        if step.full:
            steps = [*steps[:n], step._replace(full=False), *steps[n + 1 :]]
            yield steps


def _built_on(steps: Sequence[_Step], n: int) -> bool:
    """Whether something later in the list needs this drill: of a group of which nothing else comes earlier."""
    drill_id = steps[n].drill.id
    for at in range(n + 1, len(steps)):
        before = {step.drill.id for step in steps[:at]} - {drill_id}
        if any(drill_id in group and not before & set(group) for group in steps[at].drill.groups):
            return True
    return False


def _own(asked: _Asked, steps: Sequence[_Step]) -> Own:
    fits = asked.shelf.fits(asked.have)
    doings = []
    for drill, load, full, _ in steps:
        fitted = fits[drill.id]
        catch = at_load(asked.shelf.dials[drill.id], load, fitted.speed, fitted.catch).catch
        deep = load >= Load.LIGHT and catch is Catch.FULL
        doings.append(Doing(drill, load, full, gear_of(drill, load, asked.have, asked.shelf), deep=deep))
    return Own(asked.lifter, tuple(doings), asked.of.known | asked.lifter.holds, today=asked.goals)


def _again(asked: _Asked) -> Own:
    """For who holds all of it: what leads into each as a check, then each in full."""
    lists = []
    led = set[DrillId]()
    for goal in asked.goals:
        entries = asked.walk(ending_in(asked.shelf, goal), have=asked.have).entries
        last: dict[DrillId, PathEntry] = {
            entry.drill.id: entry for entry in entries if entry.drill.stage is not Stage.PREPARE
        }
        led |= last.keys()
        kept = list(last.values())[-LEADING_IN - 1 :]
        steps = [_Step(entry.drill, _held_at(asked, entry.drill), entry.drill.id in asked.goals) for entry in kept]
        lists.append(_own(asked, steps).doings)
    doings = reduce(lambda one, other: joined(one, other) or (*one, *other), lists)
    return Own(asked.lifter, doings, asked.of.known | asked.lifter.holds | led, today=asked.goals, by_themselves=True)
