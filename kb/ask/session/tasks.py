"""The drills that a sitting may hold, each with the doses it may have and what it takes besides."""

from collections.abc import Callable, Sequence
from typing import NamedTuple

from kb.ask.route import Entry
from kb.ask.session.course import Course, held, on_bar, overhead_s
from kb.ask.session.fitting import Option
from kb.ask.session.records import Part
from kb.ask.session.warm_up import Asked, asked_positions, openers_of, raises
from kb.ask.session.worth import WORTH, Amount, amounts, at_least_half, in_passing, longer
from kb.dials import Dials, at_load
from kb.dose import dose_seconds
from kb.kit import Gear, gear_at
from kb.loading import LOADING_S, Loaded
from kb.terms import Drill, Load, Stage

__all__ = ["Bar", "Task", "Weigh", "entry_task", "finish_tasks", "load_in_turn", "opener_tasks", "raise_tasks"]

Weigh = Callable[[Drill, Load], Loaded | None]
"""What goes on the bar for a drill at a load; None where that isn't known."""

Bar = tuple[object, ...]
"""What is on the bar: nothing, a load, or the discs themselves; two are alike where nothing must be changed."""


class Task(NamedTuple):
    """A drill as a session may hold it, and the doses it may have; `loading_s` depends on what comes before."""

    part: Part
    drill: Drill
    load: Load
    dials: Dials
    gear: tuple[Gear, ...]
    work: bool
    amounts: tuple[Amount, ...]
    loaded: Loaded | None = None
    loading_s: int = 0
    teach_s: int = 0
    gone: str = ""

    def seconds(self, n: int) -> int:
        """What it takes with its n-th dose, s."""
        return overhead_s(self.drill) + self.teach_s + self.loading_s + dose_seconds(self.amounts[n].dose)

    @property
    def options(self) -> tuple[Option, ...]:
        """Its doses as the fitting sees them."""
        return tuple(Option(self.seconds(n), amount.worth) for n, amount in enumerate(self.amounts))


def _barred(gear: Sequence[Gear], load: Load) -> bool:
    return load >= Load.LIGHT and any(each.using == "bar" for each in gear)


def _on_the_bar(task: Task) -> Bar | None:
    """What a task wants on the bar; None where it is done with whatever is on it, or without a bar.

    Where no weights are known, a light bar is one light bar: discs don't come off for a drill that needs none.
    """
    if not _barred(task.gear, task.load):
        return None
    if task.loaded is not None:
        return task.loaded.discs_kg
    return (task.load,) if on_bar(task.gear, task.load) else None


def load_in_turn(tasks: Sequence[Task], bar: Bar = ()) -> tuple[tuple[Task, ...], Bar]:
    """Tasks with the time that discs take where they go on, change or come off; and what is on the bar last."""
    found = []
    for task in tasks:
        wanted = _on_the_bar(task)
        found.append(task._replace(loading_s=LOADING_S if wanted is not None and wanted != bar else 0))
        bar = bar if wanted is None else wanted
    return tuple(found), bar


def _prepared(course: Course, drill: Drill, doses: tuple[Amount, ...], *, teach: bool) -> Task:
    """A prepare drill as a task of the warm-up."""
    fitted = course.fits[drill.id]
    load = min(drill.load[1], fitted.load)
    return Task(
        part="warm-up",
        drill=drill,
        load=load,
        dials=at_load(course.shelf.dials[drill.id], load, fitted.speed, fitted.catch),
        gear=gear_at(fitted, load, course.have, course.shelf.items),
        work=True,
        amounts=doses,
        teach_s=drill.teach_s if teach else 0,
    )


def _may(course: Course, drill: Drill) -> bool:
    """Whether a drill can be done with what is there, and nothing that must come before it is missing."""
    return drill.id in course.fits and held(drill, course.unsure)


def raise_tasks(course: Course, *, teach: bool) -> tuple[Task, ...]:
    """The drills that raise warmth, one of which opens a session."""
    found = []
    for drill in course.shelf.drills.values():
        if raises(drill) and _may(course, drill):
            doses = amounts(drill.dose, WORTH["raise"][0], more=longer(drill.dose))
            found.append(_prepared(course, drill, doses, teach=teach))
    return tuple(found)


def opener_tasks(course: Course, entries: Sequence[Entry], asked: Asked, *, teach: bool) -> tuple[Task, ...]:
    """The prepare drills that open what the entries ask for, in the order they would be done; none of the entries'."""
    lift, there = course.shelf.lift, {entry.drill.id for entry in entries}
    positions = {each for entry in entries for each in asked_positions(entry.drill, lift)}
    drills = openers_of(
        course.shelf.drills.values(), asked, positions, lambda drill: _may(course, drill) and drill.id not in there
    )
    fixed, dosed = WORTH["opener"][0], WORTH["dose_of_opener"][0]
    found = []
    for drill in drills:
        doses = tuple(
            each._replace(worth=each.worth + fixed)
            for each in amounts(drill.dose, dosed, least=at_least_half(drill.dose))
        )
        found.append(_prepared(course, drill, doses, teach=teach))
    return tuple(found)


def entry_task(course: Course, at: int, *, shared: bool, weigh: Weigh, teach: bool) -> Task:
    """An entry of a course as a task; the one `shared` with the sitting before is a check."""
    entry, lift_drill = course.entries[at], course.shelf.lift.drill
    drill, dose, last = entry.drill, entry.drill.dose, at == len(course.entries) - 1
    work = entry.work and not shared
    if last and drill.id == lift_drill:
        # a working weight is built up to over the rounds, so that one round of it is too few
        light = entry.load <= Load.LIGHT
        least, more = (None, longer(dose)) if light else (at_least_half(dose), ())
        doses = amounts(dose, WORTH["lift"][0], least=least, more=more)
    elif work:
        doses = amounts(dose, WORTH["work"][0], more=() if drill.stage is Stage.PREPARE else longer(dose))
    else:
        doses = in_passing(dose)
    shown = any(before.drill.id == drill.id for before in course.entries[:at])
    return Task(
        part="lift" if last and drill.id == lift_drill else "chain",
        drill=drill,
        load=entry.load,
        dials=entry.dials,
        gear=entry.gear,
        work=work,
        amounts=doses,
        loaded=weigh(drill, entry.load) if _barred(entry.gear, entry.load) else None,
        teach_s=drill.teach_s if teach and not shown else 0,
        gone=entry.gone,
    )


def finish_tasks(course: Course, *, weigh: Weigh, teach: bool) -> tuple[Task, ...]:
    """The drills to finish with, in the order of the course; none is done for less than half its dose."""
    found = []
    for drill, load, worth in course.finishes:
        fitted = course.fits[drill.id]
        gear = gear_at(fitted, load, course.have, course.shelf.items)
        found.append(
            Task(
                part="finish",
                drill=drill,
                load=load,
                dials=at_load(course.shelf.dials[drill.id], load, fitted.speed, fitted.catch),
                gear=gear,
                work=True,
                amounts=amounts(drill.dose, worth, least=at_least_half(drill.dose)),
                loaded=weigh(drill, load) if _barred(gear, load) else None,
                teach_s=drill.teach_s if teach else 0,
            )
        )
    return tuple(found)
