"""Which preparation a session's drills ask for, from what prepare drills say they open and for which positions.

The order is RAMP's: raise warmth; activate and mobilise; then the chain itself, which grows from a held posture to
the whole lift, is what makes ready for more (potentiates). 4.05 Jeffreys 2007, "Warm up revisited".
"""

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from typing import NamedTuple

from kb.ask.route import Entry
from kb.dose import REP_S
from kb.terms import Drill, DrillId, Lift, PositionId, Stage

__all__ = ["QUICK_S", "Asked", "asked_of", "asked_positions", "covers", "openers_of", "raises"]

QUICK_S = 2
"""A repetition no longer than this, with nothing held, is done for warmth rather than to open a joint, s."""

BODY = (
    "ankle", "calf", "knee", "hamstring", "adductor", "hip", "upper-back", "lat", "shoulder", "elbow", "wrist", "thumb",
)  # fmt: skip
"""Joints and tissues from the floor up: the order in which they are opened, so that nobody goes up and down."""


class Asked(NamedTuple):
    """The joints that a session's drills ask for, in the body's order, and how many drills ask for each."""

    joints: tuple[str, ...]
    times: tuple[int, ...]


def raises(drill: Drill) -> bool:
    """Whether a prepare drill is there to raise warmth: quick repetitions, nothing held."""
    dose = drill.dose
    rep = sum(dose.tempo) if dose.tempo else REP_S
    return drill.stage is Stage.PREPARE and dose.reps > 0 and dose.hold_s == 0 and rep <= QUICK_S


def asked_positions(drill: Drill, lift: Lift) -> frozenset[PositionId]:
    """The postures a drill goes to: the one it is for; of the lift's own drill every one on its timeline."""
    if drill.id == lift.drill:
        return frozenset(timed.position for timed in lift.timeline)
    return frozenset(position for each, position in drill.target_position.items() if each in lift.serves)


def asked_of(entries: Iterable[Entry], lift: Lift, drills: Mapping[DrillId, Drill]) -> Asked:
    """What a session's drills ask for: each joint that some prepare drill opens for a posture they go to.

    That a posture needs a joint is what the library's prepare drills say, whether or not the kit allows them.
    """
    needs: dict[PositionId, set[str]] = {}
    for drill in drills.values():
        if drill.stage is Stage.PREPARE:
            for position in drill.for_positions:
                needs.setdefault(position, set()).update(drill.opens)
    times: dict[str, int] = {}
    for entry in entries:
        if entry.drill.stage is not Stage.PREPARE:
            positions = asked_positions(entry.drill, lift)
            for joint in set[str]().union(*(needs.get(position, ()) for position in positions)):
                times[joint] = times.get(joint, 0) + 1
    joints = sorted(times, key=_place)
    return Asked(tuple(joints), tuple(times[joint] for joint in joints))


def _place(joint: str) -> tuple[int, str]:
    return (BODY.index(joint) if joint in BODY else len(BODY), joint)


def covers(drill: Drill, asked: Asked) -> int:
    """The joints asked for that a prepare drill opens, as a bit set."""
    return sum(1 << n for n, joint in enumerate(asked.joints) if joint in drill.opens)


def openers_of(
    drills: Iterable[Drill], asked: Asked, positions: Collection[PositionId], may: Callable[[Drill], bool]
) -> Sequence[Drill]:
    """The prepare drills that open a joint asked for, for a posture gone to, in the order they are done.

    Held ones first, moving ones nearer to the lift; of these from the floor up.
    """
    found = [
        drill
        for drill in drills
        if drill.stage is Stage.PREPARE
        and not raises(drill)
        and covers(drill, asked)
        and any(position in positions for position in drill.for_positions)
        and may(drill)
    ]
    return sorted(found, key=lambda drill: (not drill.dose.hold_s, min(map(_place, drill.opens)), drill.id))
