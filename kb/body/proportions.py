"""How long and heavy each segment of one body is: from stature and mass, corrected by a tape measure."""

import math
from typing import NamedTuple

from kb.body.segments import LENGTHS, LIMBS, TABLES, Share, Table
from kb.errors import BadInput

__all__ = ["ANKLE_HEIGHT", "BALL", "GRIP", "HEEL", "PALM", "USUAL", "Body", "proportions"]

ANKLE_HEIGHT = 0.039
"""Ankle above the sole, share of stature (Winter 2009, fig. 4.1)."""

HEEL = 0.25
"""Back of the heel to under the ankle, share of the foot. Common practice, no source."""

BALL = 0.73
"""Back of the heel to the ball of the foot, share of the foot; recalled from surveys of feet, no source at hand."""

GRIP = 0.5
"""Wrist to the centre of a hanging bar, share of the hand (Winter's hand ends at the knuckle: its centre, 0.506)."""

PALM = 0.3
"""Wrist to the centre of a bar on the palm, overhead or racked, share of the hand. Common practice, no source."""


class Body(NamedTuple):
    """One body's lengths, m, and shares of mass. `mass` is in kg. Limbs are those of one side."""

    stature: float
    mass: float
    ankle_height: float
    foot: float
    shank: float
    thigh: float
    trunk: float
    head: float
    upper_arm: float
    forearm: float
    hand: float
    table: Table = "winter"

    @property
    def heel(self) -> float:
        """Back of the heel to under the ankle, m."""
        return HEEL * self.foot

    @property
    def ball(self) -> float:
        """Back of the heel to the ball of the foot, m."""
        return BALL * self.foot

    @property
    def shares(self) -> dict[str, Share]:
        """Mass and centre of each segment, limbs for one side."""
        return dict(TABLES[self.table])

    @property
    def whole(self) -> float:
        """All shares of mass together, limbs twice; 1 but for rounding in the tables."""
        return sum(share.mass * (2 if name in LIMBS else 1) for name, share in self.shares.items())


LEAST_CM, MOST_CM = 100.0, 250.0
LEAST_KG, MOST_KG = 20.0, 300.0


def _within(what: str, value: float, least: float, most: float, unit: str) -> float:
    if not math.isfinite(value) or not least <= value <= most:
        raise BadInput(f"{what} {value:g} {unit} can't be: it lies between {least:g} and {most:g} {unit}.")
    return value


def _measured(what: str, cm: float | None, usual: float, scale: float = 1.0) -> float:
    """A tape measure's length, m, no more than a third off the usual; not measured, the usual one, scaled."""
    if cm is None:
        return usual * scale
    _within(what, cm, usual * 200 / 3, usual * 400 / 3, "cm for this stature")
    return cm / 100


def _fitting(body: Body) -> Body:
    """The body, if what is left for each part is at least half of the usual."""
    for name, said in (("shank", "shanks"), ("head", "head and neck")):
        if getattr(body, name) < LENGTHS[name] * body.stature / 2:
            raise BadInput(f"these lengths leave too little for the {said}: measure again")
    return body


def proportions(
    stature_cm: float = 175.0,
    mass_kg: float = 75.0,
    *,
    table: Table = "winter",
    inseam_cm: float | None = None,
    thigh_cm: float | None = None,
    trunk_cm: float | None = None,
    span_cm: float | None = None,
    foot_cm: float | None = None,
) -> Body:
    """The body of that stature and mass, with usual proportions where the tape says nothing.

    Parameters
    ----------
    stature_cm, mass_kg
        Height without shoes, cm; mass, kg.
    table
        Whose shares of mass.
    inseam_cm
        Floor to crotch: shank and thigh stretch alike, and what is above shrinks.
    thigh_cm
        Knob at the side of the hip to the middle of the knee; the shank takes the rest.
    trunk_cm
        That knob to the bony top of the shoulder, standing; the head takes the rest.
    span_cm
        Fingertip to fingertip, arms out: stretches both arms alike.
    foot_cm
        Heel to longest toe.

    Raises
    ------
    BadInput
        A measure is no number, or more than a third away from what the stature leads to expect, or they don't fit.
    """
    stature = _within("A stature of", stature_cm, LEAST_CM, MOST_CM, "cm") / 100
    mass = _within("A mass of", mass_kg, LEAST_KG, MOST_KG, "kg")
    usual = {name: share * stature for name, share in LENGTHS.items()}
    legs = _measured("An inseam of", inseam_cm, INSEAM * stature) - INSEAM * stature + usual["shank"] + usual["thigh"]
    thigh = _measured("A thigh of", thigh_cm, usual["thigh"], legs / (usual["shank"] + usual["thigh"]))
    above = stature * (1 - ANKLE_HEIGHT) - legs
    trunk = _measured("A trunk of", trunk_cm, usual["trunk"], above / (usual["trunk"] + usual["head"]))
    arm = usual["upper_arm"] + usual["forearm"] + usual["hand"]
    arms = 1 + (_measured("An arm span of", span_cm, SPAN * stature) - SPAN * stature) / (2 * arm)
    return _fitting(
        Body(
            stature=stature,
            mass=mass,
            ankle_height=ANKLE_HEIGHT * stature,
            foot=_measured("A foot of", foot_cm, usual["foot"]),
            shank=legs - thigh,
            thigh=thigh,
            trunk=trunk,
            head=above - trunk,
            upper_arm=usual["upper_arm"] * arms,
            forearm=usual["forearm"] * arms,
            hand=usual["hand"] * arms,
            table=table,
        )
    )


INSEAM = 0.47
"""Floor to crotch, share of stature. Common practice, no source; only its difference from the tape is used."""

SPAN = 1.0
"""Arm span, share of stature (an old rule of thumb); only its difference from the tape is used."""

USUAL = proportions()
"""A body of 175 cm and 75 kg with published proportions: what figures are drawn with when nobody is named."""
