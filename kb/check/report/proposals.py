"""Drills that there aren't: what one for a cause could be, by the fault's phases or inside a chain's largest step."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from statistics import median_low

from kb.ask.matter import Matter
from kb.ask.route import Entry, Route
from kb.ask.shelf import Shelf, Steps, profile_key
from kb.dials import Dials, serves, spans
from kb.dose import work_seconds
from kb.evidence import shows_at
from kb.make.steps import profiles, step_rows
from kb.terms import Addressed, Catch, Dose, Drill, DrillId, ItemId, Load, Speed, Stage, Standard

__all__ = ["LARGE", "NEW", "proposals", "with_places_for"]

NEW = DrillId("new-drill")
BAR = ItemId("bar")

LARGE = 4
"""Notches of a step from which a drill half way is thought of: less is one dial turned twice, or two turned once."""


def proposals(matter: Matter, route: Route | None) -> tuple[Drill, ...]:
    """Drills for the cause of a question, in a fixed order: on each of the fault's phases, then in the largest step.

    A cause of mobility is given preparation. None has prerequisites: what one would need its writer knows.
    """
    if matter.worked_cause.kind == "mobility":
        return (_drill(matter, Dials(Stage.PREPARE, 0, 0, 0, Speed.HELD, Load.NONE, Catch.NONE, False)),)
    found = [*_on_phases(matter), *(_within(route.entries) if route is not None else ())]
    return tuple(_drill(matter, dials) for dials in dict.fromkeys(map(_moving, found)))


def _on_phases(matter: Matter) -> Iterator[Dials]:
    """A piece of the lift where the fault is, turned up as far as it takes to show; and that posture held."""
    points, least = matter.shelf.lift.points, shows_at(matter.worked, matter.worked_cause)
    for first, last in matter.worked.phases:
        if first not in points or last not in points:
            continue
        low, high = points.index(first), points.index(last)
        speed, load = max(Speed.SLOW, least.speed), max(Load.STICK, min(Load.LIGHT, least.load))
        yield Dials(Stage.SEGMENT, low, high, 0, speed, load, least.catch, False)
        yield Dials(Stage.POSITION, low, low, 0, Speed.HELD, load, Catch.NONE, False)


def _within(entries: Sequence[Entry]) -> Iterator[Dials]:
    """Half way up the largest step, a dial in the middle or on one side of it; nothing goes before preparation."""
    steps = [pair for pair in pairwise(entries) if pair[0].drill.stage is not Stage.PREPARE]
    before, after = max(steps, key=lambda pair: pair[1].step or 0, default=(None, None))
    if before is not None and after is not None and (after.step or 0) >= LARGE:
        a, b = before.dials, after.dials
        stage = min(Stage.JOIN, max(Stage.SEGMENT, a.stage, Stage(b.stage - 1)))
        for up in (0, 1):
            yield Dials(
                stage,
                (a.first + b.first + up) // 2,
                (a.last + b.last + up) // 2,
                0,
                Speed((a.speed + b.speed + up) // 2),
                Load((a.load + b.load + up) // 2),
                Catch((a.catch + b.catch + up) // 2),
                False,
            )
        yield a._replace(stage=stage, first=b.first, last=b.last, left_out=0)
        yield b._replace(stage=stage, first=a.first, last=a.last, left_out=0)


def _moving(dials: Dials) -> Dials:
    """The same, not held still where it goes from one point to another."""
    return dials._replace(speed=max(Speed.SLOW, dials.speed)) if dials.first < dials.last else dials


def _drill(matter: Matter, dials: Dials) -> Drill:
    lift, points = matter.shelf.lift, matter.shelf.lift.points
    moves = dials.stage is not Stage.PREPARE
    most = max(Load.STICK, min(Load.LIGHT, dials.load))
    return Drill(
        id=NEW,
        name="New drill",
        lifts=(lift.id,),
        stage=dials.stage,
        standard=Standard(3, 3, "as it should be"),
        reach={lift.id: (points[dials.first], points[dials.last])} if moves else {},
        speed=dials.speed,
        load=(Load.STICK, most) if moves else (Load.NONE, Load.NONE),
        catch=dials.catch,
        faults=(Addressed(matter.worked.id, matter.worked_cause.id),),
        equipment=_gear(matter.shelf) if moves else (),
        dose=_usual_dose(matter.shelf, dials.stage),
    )


def _gear(shelf: Shelf) -> tuple[ItemId, ...]:
    """A bar where there is such an item, for which a stick mostly stands in; else what the lift itself needs."""
    return (BAR,) if BAR in shelf.items else shelf.drills[shelf.lift.drill].equipment


def _usual_dose(shelf: Shelf, stage: Stage) -> Dose:
    """The dose that takes the middle time of the drills of a stage; of all drills if there are none."""
    alike = [each for each in shelf.drills.values() if each.stage is stage] or list(shelf.drills.values())
    by_time = {(work_seconds(each), each.id): each.dose for each in alike}
    return by_time[median_low(by_time)]


def with_places_for(shelf: Shelf, more: Sequence[Drill]) -> Shelf:
    """The shelf with steps to and from the places of more drills, which it doesn't hold yet.

    The shortest sums of steps then pass all of these places: no more than any one of the drills allows, so still a
    bound for a search that has only that one.
    """
    drills = {each.id: each for each in shelf.drills.values() if serves(each, shelf.lift)}
    drills |= {DrillId(f"{each.id}-{n}"): each for n, each in enumerate(more)}
    found = profiles(shelf.lift, drills, shelf.items)
    sizes, least = step_rows(found, spans(shelf.lift))
    return shelf._replace(steps=Steps({profile_key(dials): n for n, dials in enumerate(found)}, sizes, least))
