"""The angles a body must take to be in a position: of all ways into it (`kb.body.family`) the one nearest its own.

Of all leans of the shank that keep within the limits, the one is taken whose angles are nearest to the position's
own: least sum of squares, weighted by `WEIGHTS`. Where no lean will do, the joints that stop before what the position
asks of this body are let go beyond their limits, as little as can be (least squares, each against how early it stops,
so that the stiffer of two gives more); the one that must go furthest is what binds.

In a split and on the toes nothing is traded: the front leg and the trunk stay as they are, the back leg closes on the
floor (`kb.body.legs`), and each joint is held against its limit. The toes are passed through, not stood on.
"""

import math
from collections.abc import Callable, Collection, Mapping
from types import MappingProxyType
from typing import NamedTuple

from kb.body.family import ELBOWS_DROP, TOUCH, Family, excess, family_of, untradable
from kb.body.limits import OPEN, Limits
from kb.body.pose import SPREADS, Pose, forward, place
from kb.body.proportions import USUAL, Body
from kb.terms import Position

__all__ = ["WEIGHTS", "Taken", "inverse", "least_ankle"]

WEIGHTS: Mapping[str, float] = MappingProxyType({"ankle": 1, "knee": 1, "hip": 1, "trunk": 2, "shoulder": 1})
"""How much a squared degree away from the position's own angle counts; lean twice, since it is what one sees."""

_FORBID = 1e5
"""A degree beyond a limit outweighs any distance: the penalty is exact, not approximate."""

_JOINTS = ("ankle", "knee", "hip", "shoulder", "rack")

_DIPS = 3
"""Dips of the coarse row that are looked into."""

_LEANS = tuple(range(-40, 82, 2))
"""Leans of the shank from which the search sets out, degrees."""


class Taken(NamedTuple):
    """How a body takes a position.

    `angles` in degrees as in an entry, `pose` the coordinates; beyond a limit by as little as can be where it can't.
    `binds` is None when it can; else the joint that lacks most, and `short_by` how many degrees. `short` holds every
    joint that lacks something: with all of them that much freer, it can.
    """

    angles: Mapping[str, float]
    pose: Pose
    distance: float
    binds: str | None = None
    short_by: float = 0.0
    short: Mapping[str, float] = MappingProxyType({})

    @property
    def reachable(self) -> bool:
        """Whether the body gets there within its limits."""
        return self.binds is None

    @property
    def lean(self) -> float:
        """The trunk's lean from the vertical, degrees."""
        return self.pose.lean


def _distance(angles: Mapping[str, float], own: Mapping[str, float]) -> float:
    """Weighted sum of squares from the position's own angles, square degrees."""
    return sum(weight * (angles[joint] - own[joint]) ** 2 for joint, weight in WEIGHTS.items())


def _cost(family: Family, lean: float) -> float:
    """The distance at a lean of the shank, whatever the limits."""
    angles = family.angles(lean)
    return math.inf if angles is None else _distance(angles, family.own)


def _least(of: Callable[[float], float]) -> float:
    """Where a function of the shank's lean is least: a coarse row, then a golden section about each of its best dips.

    Limits cut the ways in so that there may be two dips, one with the knees bent and one with the hips high, and a
    dip may be narrower than the row's step.
    """
    values = [of(lean) for lean in _LEANS]
    ends = [math.inf, *values, math.inf]
    dips = [n for n, value in enumerate(values) if ends[n] >= value <= ends[n + 2] and value < math.inf]
    best = sorted(dips, key=values.__getitem__)[:_DIPS]
    found = [_golden(of, float(_LEANS[max(n - 1, 0)]), float(_LEANS[min(n + 1, len(_LEANS) - 1)])) for n in best]
    return min(found, default=(math.inf, 0.0))[1]


def _golden(of: Callable[[float], float], low: float, high: float) -> tuple[float, float]:
    """The least value in a stretch with one dip, and where it is."""
    golden = (math.sqrt(5) - 1) / 2
    left, right = high - golden * (high - low), low + golden * (high - low)
    at_left, at_right = of(left), of(right)
    for _ in range(48):
        if at_left <= at_right:
            high, right, at_right = right, left, at_left
            left = high - golden * (high - low)
            at_left = of(left)
        else:
            low, left, at_left = left, right, at_right
            right = low + golden * (high - low)
            at_right = of(right)
    return min((at_left, left), (at_right, right))


def _binding(short: Mapping[str, float]) -> tuple[str | None, float, Mapping[str, float]]:
    """What binds, by how much, and all that is short. What a squat's depth lacks is named last: it is no joint."""
    if not short:
        return None, 0.0, MappingProxyType({})
    binds = max(short, key=lambda joint: (joint != "depth", short[joint]))
    return binds, short[binds], MappingProxyType(dict(short))


def _shares(family: Family, limits: Limits) -> tuple[float, dict[str, float]]:
    """The shank's lean and how far beyond its limit each joint must go, where no lean will do within them all.

    Only joints give that stop before what the position asks of this body, if that is enough, else all. They give as
    little as can be by the sum of squares, each counted against how far before it stops: the stiffer gives more.
    """
    asked = family.angles(_least(lambda lean: _cost(family, lean)))
    early = excess(asked, family, limits) if asked else {}
    lean, found = 0.0, dict[str, float]()
    for free in (early.keys() & set(_JOINTS), _JOINTS):

        def over(lean: float, free: Collection[str] = free) -> float:
            angles = family.angles(lean)
            if angles is None:
                return math.inf
            past = excess(angles, family, limits)
            hard = sum(by for joint, by in past.items() if joint not in free)
            return _FORBID * hard + sum(
                (by / early.get(joint, 1.0)) ** 2 for joint, by in past.items() if joint in free
            )

        lean = _least(over)
        angles = family.angles(lean)
        found = excess(angles, family, limits) if angles else {}
        if all(joint in free or by <= TOUCH for joint, by in found.items()):
            break
    # a trunk that must lean further still is no joint that could be opened: it is the lengths of the limbs
    short = {joint: by for joint, by in found.items() if by > TOUCH}
    posture = [short.pop(each) for each in ("trunk", "straight") if each in short]
    return lean, {**short, "lengths": max(posture)} if posture else short


def least_ankle(
    body: Body, position: Position, limits: Limits = OPEN, *, wedge: float = 0.0, turn_out: float = 0.0
) -> float | None:
    """The least dorsiflexion, degrees, at which the position can be taken when all else may go to its limit.

    None in a split or on the toes, where nothing is traded, and where no ankle would do.
    """
    if position.contact != "feet-flat":
        return None
    family = family_of(body, position, limits, USUAL, wedge, turn_out)

    def beyond(lean: float) -> float:
        angles = family.angles(lean)
        if angles is None:
            return math.inf
        return sum(by for joint, by in excess(angles, family, limits).items() if joint != "ankle")

    least = _least(lambda lean: lean + _FORBID * beyond(lean))
    angles = family.angles(least)
    return angles["ankle"] if angles and beyond(least) <= TOUCH else None


def _as_drawn(body: Body, position: Position, limits: Limits) -> Taken:
    """A split, or a moment on the toes, as it is: each joint against its limit."""
    pose = forward(body, position)
    angles = pose.angles
    front, back = ("front_", "back_") if position.contact == "split" else ("", "")
    racked = position.bar in SPREADS
    over = {
        "ankle": max(angles[f"{front}ankle"], angles[f"{back}ankle"]) - limits.ankle,
        "knee": max(angles[f"{front}knee"], angles[f"{back}knee"]) - limits.knee,
        "hip": angles[f"{front}hip"] - limits.hip_at(angles[f"{front}knee"]),
        "back_hip": -angles[f"{back}hip"] - limits.back_hip,
        "elbow": angles["elbow"] - limits.elbow,
        "wrist": angles["wrist"] - limits.wrist,
        "rack" if racked else "shoulder": angles["shoulder"]
        - (limits.rack + ELBOWS_DROP if racked else limits.shoulder),
    }
    over = {joint: degrees for joint, degrees in over.items() if degrees > TOUCH}
    distance = sum((angles[joint] - position.angles[joint]) ** 2 for joint in angles)
    return Taken(angles, pose, distance, *_binding(over))


def inverse(
    body: Body,
    position: Position,
    limits: Limits = OPEN,
    *,
    reference: Body = USUAL,
    wedge: float = 0.0,
    turn_out: float = 0.0,
) -> Taken:
    """The angles with which this body takes the position, nearest to the position's own; or what binds.

    Parameters
    ----------
    limits
        How far its joints go.
    reference
        The body on which the position's own angles are read.
    wedge
        How far a wedge raises the heels, degrees (see `kb.body.measures.wedge_degrees`).
    turn_out
        How much further than usual feet and knees turn out, degrees. Knees follow toes, so seen from the side
        everything of the leg that lies level shrinks by the cosine, and what the ankle bends stays in its own plane.
        Counts only with the bar on the body or overhead.
    """
    if position.contact != "feet-flat":
        return _as_drawn(body, position, limits)
    family = family_of(body, position, limits, reference, wedge, turn_out)

    def beyond(lean: float) -> float:
        angles = family.angles(lean)
        return math.inf if angles is None else sum(excess(angles, family, limits).values())

    best = _least(lambda lean: _cost(family, lean) + _FORBID * beyond(lean))
    angles = family.angles(best)
    if angles is None:  # too long or too short somewhere to close at all
        pose = forward(body, position, pitch=wedge)
        return Taken(pose.angles, pose, math.inf, "lengths", 0.0, MappingProxyType({"lengths": 0.0}))
    fixed = untradable(position, angles["knee"] - best, limits)
    traded: dict[str, float] = {}
    if beyond(best) > TOUCH:
        best, traded = _shares(family, limits)
        angles = family.angles(best) or angles
    taken = {**position.angles, **angles}
    spread = forward(reference, position).spread
    pose = place(body, taken, position.contact, position.bar, spread=spread, pitch=wedge, turn_out=turn_out)
    return Taken(MappingProxyType(taken), pose, _distance(angles, family.own), *_binding({**fixed, **traded}))
