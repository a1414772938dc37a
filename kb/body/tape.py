"""A lifter's measurements with a tape and a wall, and the body and limits they stand for.

Nothing measured stands at its usual: lengths at published shares of stature, joints at a supple lifter's
(`kb.body.limits.OPEN`).
"""

import math
from collections.abc import Mapping
from types import MappingProxyType
from typing import Any, NamedTuple

from kb.body.limits import OPEN, Limits
from kb.body.measures import (
    ankle_from_wall,
    depth_from_squat,
    hinge_from_shoulder,
    rack_from_elbow,
    reach_from_wall,
)
from kb.body.proportions import Body, proportions
from kb.errors import BadInput

__all__ = ["JOINT_OF", "MEASURES", "Measure", "Tape", "body_of", "limits_of", "tape_of"]


class Tape(NamedTuple):
    """Measurements, cm; None is not measured. Of two sides the stiffer one counts."""

    stature: float
    inseam: float | None = None
    span: float | None = None
    thigh: float | None = None
    foot: float | None = None
    wall: float | None = None
    reach: float | None = None
    elbows: float | None = None
    hinge: float | None = None
    squat: float | None = None


class Measure(NamedTuple):
    """A measurement: how it is called, the least and the most it can be, cm, and what it is in a few words."""

    name: str
    least: float
    most: float
    says: str


MEASURES: Mapping[str, Measure] = MappingProxyType(
    {
        "stature": Measure("height", 100, 250, "height without shoes"),
        "inseam": Measure("inseam", 40, 130, "floor to crotch"),
        "span": Measure("arm span", 90, 270, "fingertip to fingertip, arms out to the sides"),
        "thigh": Measure("thigh", 25, 70, "knob at the side of the hip to the middle of the knee"),
        "foot": Measure("foot", 15, 38, "heel to longest toe"),
        "wall": Measure("knee to wall", -10, 30, "toe to wall, knee just touching, heel down"),
        "reach": Measure("overhead reach", 0, 90, "wall to knuckles, back flat on the wall, arms up"),
        "elbows": Measure(
            "rack elbows", -40, 60, "elbow below the top of the shoulder, racked and standing; above is -"
        ),
        "hinge": Measure("hip hinge", 20, 200, "top of the shoulder to the floor, lowest hinge with a flat back"),
        "squat": Measure("squat", -40, 80, "hip above the middle of the knee, lowest squat heels down; below is -"),
    }
)
"""Every measurement, in the order in which they are taken."""

JOINT_OF: Mapping[str, str] = MappingProxyType(
    {"wall": "ankle", "reach": "shoulder", "elbows": "rack", "hinge": "hinge", "squat": "depth"}
)
"""The limit that each test of movement gives."""


def tape_of(said: Mapping[str, float | None]) -> Tape:
    """Measurements by name as a `Tape`.

    Raises BadInput for one that can't be, and where the height is missing.
    """
    for name, value in said.items():
        measure = MEASURES[name]
        if value is not None and not (math.isfinite(value) and measure.least <= value <= measure.most):
            raise BadInput(
                f"{name} {value:g} cm can't be: {measure.says} lies between {measure.least:g} and {measure.most:g} cm"
            )
    stature = said.get("stature")
    if stature is None:
        raise BadInput("the height (stature, cm) is needed: every length follows from it")
    values: dict[str, Any] = {**said, "stature": stature}
    return Tape(**values)


def body_of(tape: Tape) -> Body:
    """The body of those lengths. Mass plays no part in reach, so it is a usual one's."""
    return proportions(tape.stature, inseam_cm=tape.inseam, span_cm=tape.span, thigh_cm=tape.thigh, foot_cm=tape.foot)


def limits_of(body: Body, tape: Tape) -> Limits:
    """How far the joints go, by what was measured.

    Raises BadInput where a measurement doesn't fit the body's lengths.
    """
    found: dict[str, float] = {}
    if tape.wall is not None:
        found["ankle"] = ankle_from_wall(body, tape.wall)
    if tape.reach is not None:
        found["shoulder"] = reach_from_wall(body, tape.reach)
    if tape.elbows is not None:
        found["rack"] = rack_from_elbow(body, tape.elbows)
    if tape.hinge is not None:
        found["hinge"] = hinge_from_shoulder(body, tape.hinge)
    if tape.squat is not None:
        found["depth"] = depth_from_squat(body, tape.squat)
    return OPEN._replace(**found)
