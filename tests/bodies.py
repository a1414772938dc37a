"""Bodies, joint limits and the shipped positions for the tests of kb/body, and a body read by complex numbers alone."""

import cmath
import math
from collections.abc import Mapping
from functools import cache
from pathlib import Path

from hypothesis import strategies as st

from kb.body.limits import OPEN, Limits
from kb.body.proportions import Body, proportions
from kb.make.library import load
from kb.terms import Position

__all__ = ["bodies", "by_turning", "limits", "position", "shipped"]


@cache
def shipped() -> Mapping[str, Position]:
    """Every position of the library, by id."""
    return {str(id_): each for id_, each in load(Path(__file__).parent.parent).positions.items()}


def position(angles: Mapping[str, float], bar: str = "overhead", contact: str = "feet-flat") -> Position:
    """A position made up for a test."""
    from kb.terms import PositionId

    return Position(PositionId("made-up"), "Made up", dict(angles), bar, contact)


@st.composite
def bodies(draw: st.DrawFn) -> Body:
    """Bodies of any stature, with proportions a tape measure may find."""
    stature = draw(st.floats(140, 210))
    near = st.floats(0.95, 1.05)
    return proportions(
        stature,
        draw(st.floats(40, 150)),
        table=draw(st.sampled_from(("winter", "women", "men"))),
        inseam_cm=0.47 * stature * draw(near),
        thigh_cm=0.245 * stature * draw(near),
        span_cm=stature * draw(near),
        foot_cm=0.152 * stature * draw(near),
    )


def limits() -> st.SearchStrategy[Limits]:
    """Limits of stiff and supple lifters."""
    return st.builds(
        lambda ankle, hip, shoulder, rack, hinge: OPEN._replace(
            ankle=ankle, hip=hip, shoulder=shoulder, rack=rack, hinge=hinge
        ),
        st.floats(15, 45),
        st.floats(95, 135),
        st.floats(165, 205),
        st.floats(50, 125),
        st.floats(70, 125),
    )


def by_turning(body: Body, angles: Mapping[str, float], spread: float, pitch: float) -> dict[str, complex]:
    """Where the joints of level legs are, by turning complex numbers; from the ankle up, m.

    An independent reading: a direction is exp(i t), t counted from forward, against the clock.
    """

    def towards(degrees: float) -> complex:
        return cmath.exp(1j * math.radians(degrees))

    shank = 90 - angles["ankle"] - pitch
    thigh = shank + angles["knee"]
    trunk = thigh - angles["hip"]
    knee = body.shank * towards(shank)
    hip = knee + body.thigh * towards(thigh)
    shoulder = hip + body.trunk * towards(trunk)
    out = math.cos(math.radians(spread))
    upper = trunk - 180 + angles["shoulder"]
    fore = upper + angles["elbow"]
    elbow = shoulder + body.upper_arm * out * towards(upper)
    wrist = elbow + body.forearm * out * towards(fore)
    return {
        "knee": knee,
        "hip": hip,
        "shoulder": shoulder,
        "elbow": elbow,
        "wrist": wrist,
        "hand": out * body.hand * towards(fore + angles["wrist"]),
    }
