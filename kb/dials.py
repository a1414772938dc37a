"""What changes between two drills, and how big that step is.

The weights stand in one table, `WEIGHTS`, each with its reason. Two things outside the code judge them:
published teaching progressions must come out lawful and near the optimum between their own ends
(tests/published/), and an experienced reader must agree with the chains (tests/spec/).
"""

from collections.abc import Sequence
from typing import NamedTuple

from kb.terms import Catch, Drill, Lift, LiftId, Load, Speed, Stage

__all__ = [
    "WEIGHTS",
    "Change",
    "Dials",
    "at_load",
    "changes",
    "dials_of",
    "notches",
    "reach_on",
    "serves",
    "spans",
    "step",
]

WEIGHTS: dict[str, tuple[int, str]] = {
    "turned_down": (2, "going back on a dial costs twice: a chain should build, not wander"),
    "drawn_in": (2, "a notch each: a shorter stretch is one thing less to do, and coming back is paid on the way out"),
    "aid": (1, "help given or taken away is one thing changed, however good the help"),
    "left_out": (1, "a point newly left out or taken in is one thing changed"),
    "stage_back": (4, "to take apart what was put together loses more than any one dial"),
    "begins_to_catch": (1, "a notch each: catching at all is new, how deep matters less at first"),
    "stops_catching": (1, "to leave the catch out is one simplification, from whatever depth"),
    "out_of_preparation": (1, "preparation opens joints; any drill may follow it"),
}


class Dials(NamedTuple):
    """Where a drill stands on a lift's timeline and on every dial.

    `first` and `last` index the timeline; `left_out` is a bit set over it. Preparation has neither:
    its stage alone counts.
    """

    stage: Stage
    first: int
    last: int
    left_out: int
    speed: Speed
    load: Load
    catch: Catch
    helped: bool


class Change(NamedTuple):
    """One dial that turned between two drills, in the words of an entry, and how much of the step it is."""

    dial: str
    before: str
    after: str
    size: int


def spans(lift: Lift) -> tuple[tuple[int, int], ...]:
    """First and last timeline index of each part of a lift; empty for a lift without parts."""
    if not lift.parts:
        return ()
    found, start = [], 0
    for points in lift.part_points:
        found.append((start, start + len(points) - 1))
        start += len(points)
    return tuple(found)


def reach_on(drill: Drill, lift: Lift) -> tuple[str, str] | None:
    """The stretch of `lift` that a drill covers, as point names; None if it has none there."""
    for lift_id in lift.serves:
        if lift_id in drill.reach:
            return drill.reach[lift_id]
    return None


def dials_of(drill: Drill, lift: Lift) -> Dials:
    """A drill's dials on a lift's timeline, at the most load it makes sense at.

    Raises ValueError if a point of its reach is not on the timeline.
    """
    points = lift.points
    reach = reach_on(drill, lift)
    first, last = (points.index(reach[0]), points.index(reach[1])) if reach else (0, 0)
    left_out = sum(1 << points.index(point) for point in drill.leaves_out if point in points)
    return Dials(drill.stage, first, last, left_out, drill.speed, drill.load[1], drill.catch, bool(drill.aid))


def at_load(dials: Dials, load: Load, speed: Speed = Speed.FULL, catch: Catch = Catch.FULL) -> Dials:
    """The same drill done at `load`, its speed and catch no higher than the caps given."""
    return dials._replace(load=load, speed=min(dials.speed, speed), catch=min(dials.catch, catch))


def notches(here: int, there: int, parts: Sequence[tuple[int, int]]) -> int:
    """Points an end of reach takes in as it goes outwards from `here` to `there`; a whole part counts as one.

    Upwards for the last point, downwards for the first.
    """
    low, high = (here, there) if here <= there else (there, here)
    count = high - low
    for first, last in parts:
        # moving an end from `low` to `high` takes in low+1..high upwards, low..high-1 downwards
        taken = (low < first and last <= high) if here <= there else (low <= first and last < high)
        if taken:
            count -= last - first
    return count


def _turn(before: int, after: int) -> int:
    """A dial's share of a step: notches squared, doubled when it is turned down."""
    square = (after - before) ** 2
    return square if after >= before else WEIGHTS["turned_down"][0] * square


def _end(passed: int, *, drawn_in: bool) -> int:
    """An end of reach's share: squared as it goes out, `drawn_in` a notch as it comes back."""
    return passed * WEIGHTS["drawn_in"][0] if drawn_in else passed**2


def _reach(a: Dials, b: Dials, parts: Sequence[tuple[int, int]]) -> int:
    # an end that draws in gives up the points it once took in, so both ways pass the same
    start = notches(max(a.first, b.first), min(a.first, b.first), parts)
    end = notches(min(a.last, b.last), max(a.last, b.last), parts)
    return _end(start, drawn_in=b.first > a.first) + _end(end, drawn_in=b.last < a.last)


def _points_changed(a: Dials, b: Dials) -> int:
    inside = ((1 << (b.last + 1)) - 1) & ~((1 << b.first) - 1)
    newly_out = b.left_out & ~a.left_out
    taken_in = a.left_out & ~b.left_out & inside
    return (newly_out | taken_in).bit_count() * WEIGHTS["left_out"][0]


def _speed(a: Dials, b: Dials) -> int:
    return b.speed - a.speed if a.speed is Speed.HELD else _turn(a.speed, b.speed)


def _catch(a: Dials, b: Dials) -> int:
    if a.catch is Catch.NONE:
        return b.catch * WEIGHTS["begins_to_catch"][0]
    if b.catch is Catch.NONE:
        return WEIGHTS["stops_catching"][0]
    return _turn(a.catch, b.catch)


def _aid(a: Dials, b: Dials) -> int:
    if a.helped == b.helped:
        return 0
    return WEIGHTS["aid"][0] * (WEIGHTS["turned_down"][0] if b.helped else 1)


def step(a: Dials, b: Dials, parts: Sequence[tuple[int, int]] = ()) -> int:
    """The size of the step from one drill to the next on one lift's timeline.

    `parts` are the spans of the lift's parts (`spans`). Each dial's notches are squared, so that two
    small steps are cheaper than one large; see `WEIGHTS` for what is reckoned otherwise.

    >>> tall = Dials(Stage.SEGMENT, 3, 4, 0, Speed.FULL, Load.STICK, Catch.FULL, False)
    >>> high_hang = Dials(Stage.JOIN, 2, 5, 0, Speed.FULL, Load.STICK, Catch.FULL, False)
    >>> step(tall, high_hang), step(high_hang, tall)
    (2, 8)
    """
    if a.stage is Stage.PREPARE:
        return 0 if b.stage is Stage.PREPARE else WEIGHTS["out_of_preparation"][0]
    back = max(0, a.stage - b.stage) * WEIGHTS["stage_back"][0]
    return (
        _reach(a, b, parts)
        + _points_changed(a, b)
        + _speed(a, b)
        + _turn(a.load, b.load)
        + _catch(a, b)
        + _aid(a, b)
        + back
    )


def _words(dials: Dials, points: Sequence[str], dial: str) -> str:
    if dial == "reach":
        return f"{points[dials.first]}-{points[dials.last]}" if dials.first != dials.last else points[dials.first]
    if dial == "leaves_out":
        return ", ".join(point for i, point in enumerate(points) if dials.left_out >> i & 1) or "nothing"
    if dial == "aid":
        return "helped" if dials.helped else "free"
    value: Speed | Load | Catch | Stage = getattr(dials, dial)
    return value.word


def changes(a: Dials, b: Dials, points: Sequence[str], parts: Sequence[tuple[int, int]] = ()) -> tuple[Change, ...]:
    """Every dial that turned from `a` to `b`, largest share of the step first; none out of preparation."""
    if a.stage is Stage.PREPARE:
        return ()
    sizes = {
        "reach": _reach(a, b, parts),
        "leaves_out": _points_changed(a, b),
        "speed": _speed(a, b),
        "load": _turn(a.load, b.load),
        "catch": _catch(a, b),
        "aid": _aid(a, b),
        "stage": max(0, a.stage - b.stage) * WEIGHTS["stage_back"][0],
    }
    found = [
        Change(dial, _words(a, points, dial), _words(b, points, dial), size) for dial, size in sizes.items() if size
    ]
    return tuple(sorted(found, key=lambda change: -change.size))


def serves(drill: Drill, lift: Lift) -> bool:
    """Whether a drill counts for a lift: it names it, or a part of it."""
    wanted: tuple[LiftId, ...] = lift.serves
    return any(lift_id in wanted for lift_id in drill.lifts)
