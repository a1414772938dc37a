"""Which positions a lifter's body reaches, what binds where it doesn't, what acts on that, and what helps now.

The angles come from `kb.body.inverse`; nothing here judges a lifter, and nothing is a diagnosis.
"""

from collections.abc import Collection, Iterable, Mapping
from typing import NamedTuple

from kb.body.inverse import Taken, inverse, least_ankle
from kb.body.limits import Limits
from kb.body.measures import wedge_degrees
from kb.body.proportions import Body
from kb.body.tape import JOINT_OF, Tape, body_of, limits_of
from kb.kit import fit
from kb.terms import Drill, Item, ItemId, Lift, Position, PositionId, Stage

__all__ = [
    "MORE_LEAN", "STANCE_TURN", "WEDGE_MM", "Acting", "Aid", "LiftScreen", "Reached", "Screen", "positions_of",
    "reached_of", "screen",
]  # fmt: skip

WEDGE_MM = 20.0
"""What is put under the heels unless said, mm: a change plate, or the heel of a lifting shoe."""

STANCE_TURN = 15.0
"""How much further the feet are turned out to try a wider stance, degrees; knees follow toes."""

MORE_LEAN = 3.0
"""Lean beyond the drawn position that is worth a word, degrees."""

OPENS: Mapping[str, tuple[str, ...]] = {
    "ankle": ("ankle", "calf"),
    "knee": ("knee",),
    "hip": ("hip", "adductor"),
    "hinge": ("hamstring", "hip"),
    "back_hip": ("hip",),
    "shoulder": ("shoulder", "lat", "upper-back"),
    "rack": ("wrist", "elbow", "lat"),
    "elbow": ("elbow",),
    "wrist": ("wrist",),
    "depth": ("hip", "adductor", "ankle"),
}
"""What preparation opens, by what binds; first what matters most."""


class Reached(NamedTuple):
    """One position for this body. `short` is what each joint lacks, degrees, most first; `leans_more` the trunk's."""

    position: Position
    taken: Taken
    short: Mapping[str, float]
    leans_more: float

    @property
    def binds(self) -> str | None:
        """The joint that lacks most; None when the position is within reach."""
        return next(iter(self.short), None)

    @property
    def short_by(self) -> float:
        """What that joint lacks, degrees."""
        return next(iter(self.short.values()), 0.0)


class LiftScreen(NamedTuple):
    """A lift's positions, those of its timeline first."""

    lift: Lift
    positions: tuple[Reached, ...]


class Acting(NamedTuple):
    """A drill that opens what binds, and the positions out of reach that it is for."""

    drill: Drill
    positions: tuple[PositionId, ...]


class Aid(NamedTuple):
    """What helps now: how many degrees of ankle it gives in the position that lacks most, and what it opens."""

    item: str
    gives_deg: float
    opens: tuple[PositionId, ...]


class Screen(NamedTuple):
    """All that was found. `measured` are the limits that come from the tape; the others stand at a supple lifter's."""

    tape: Tape
    body: Body
    limits: Limits
    measured: tuple[str, ...]
    wedge_mm: float
    lifts: tuple[LiftScreen, ...]
    mobility: tuple[Acting, ...]
    aids: tuple[Aid, ...]


def positions_of(lift: Lift, drills: Iterable[Drill]) -> tuple[PositionId, ...]:
    """A lift's positions: its timeline's, then others that its drills are for, in order of id."""
    own = tuple(dict.fromkeys(timed.position for timed in lift.timeline))
    others = {drill.target_position[each] for drill in drills for each in lift.serves if each in drill.target_position}
    return own + tuple(sorted(others - set(own)))


def reached_of(body: Body, position: Position, limits: Limits, *, wedge: float = 0.0, turn_out: float = 0.0) -> Reached:
    """A position for this body: what each joint lacks, and how much more the trunk leans; all degrees."""
    taken = inverse(body, position, limits, wedge=wedge, turn_out=turn_out)
    angles = taken.angles
    knee = angles["knee"] if "knee" in angles else angles["front_knee"]
    # where the back of the thigh stops the hip, it goes by that name
    hip = "hinge" if limits.hip_at(knee) < limits.hip else "hip"
    order = sorted(taken.short, key=lambda joint: (joint != taken.binds, -taken.short[joint], joint))
    short = {hip if joint == "hip" else joint: taken.short[joint] for joint in order}
    return Reached(position, taken, short, taken.lean - position.angles["trunk"])


def _wanted(reached: Reached) -> set[str]:
    """The parts that preparation should open for a position out of reach."""
    return {part for joint in reached.short for part in OPENS.get(joint, ())}


def _mobility(
    short: Collection[Reached], drills: Iterable[Drill], have: Collection[ItemId], items: Mapping[ItemId, Item]
) -> tuple[Acting, ...]:
    """The prepare drills that open what binds, those that serve most of what is out of reach first."""
    found = []
    for drill in drills:
        if drill.stage is not Stage.PREPARE or fit(drill, have, items) is None:
            continue
        serves = [
            each for each in short if each.position.id in drill.for_positions and _wanted(each) & set(drill.opens)
        ]
        if serves:
            # of drills for as much, first the one that opens the part which matters most, and little else
            rows = (OPENS[joint] for each in serves for joint in each.short if joint in OPENS)
            first = min(n for row in rows for n, part in enumerate(row) if part in drill.opens)
            key = (-len(serves), first, len(drill.opens), drill.id)
            found.append((key, Acting(drill, tuple(each.position.id for each in serves))))
    return tuple(acting for _, acting in sorted(found, key=lambda each: each[0]))


def _aids(body: Body, limits: Limits, short: Collection[Reached], wedge_mm: float) -> tuple[Aid, ...]:
    """What a wedge and a wider stance give the positions that ankle or lengths keep out of reach."""
    stopped = [
        each for each in short if {"ankle", "lengths"} & set(each.short) and each.position.contact == "feet-flat"
    ]
    if not stopped:
        return ()
    worst = max(stopped, key=lambda each: (each.short.get("ankle", 0.0), each.position.id)).position
    before = least_ankle(body, worst)
    found = []
    for item, wedge, turn_out in (("wedge", wedge_degrees(body, wedge_mm), 0.0), ("wider-stance", 0.0, STANCE_TURN)):
        after = least_ankle(body, worst, wedge=wedge, turn_out=turn_out)
        if before is None or after is None:
            continue
        opens = tuple(
            each.position.id
            for each in stopped
            if reached_of(body, each.position, limits, wedge=wedge, turn_out=turn_out).binds is None
        )
        found.append(Aid(item, before - after, opens))
    return tuple(found)


def screen(
    tape: Tape,
    lifts: Iterable[Lift],
    *,
    positions: Mapping[PositionId, Position],
    drills: Collection[Drill],
    have: Collection[ItemId],
    items: Mapping[ItemId, Item],
    wedge_mm: float = WEDGE_MM,
) -> Screen:
    """What a lifter of those measurements reaches.

    Raises BadInput where measurements don't fit together.
    """
    body = body_of(tape)
    limits = limits_of(body, tape)
    known: dict[PositionId, Reached] = {}
    screened = []
    for lift in lifts:
        ids = positions_of(lift, drills)
        known |= {each: reached_of(body, positions[each], limits) for each in ids if each not in known}
        screened.append(LiftScreen(lift, tuple(known[each] for each in ids)))
    short = [reached for reached in known.values() if reached.binds is not None]
    return Screen(
        tape,
        body,
        limits,
        tuple(joint for name, joint in JOINT_OF.items() if getattr(tape, name) is not None),
        wedge_mm,
        tuple(screened),
        _mobility(short, drills, have, items),
        _aids(body, limits, short, wedge_mm),
    )
