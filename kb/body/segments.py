"""Published tables of body segments: lengths as shares of stature, masses as shares of the body's.

Lengths are Drillis and Contini's; masses and centres of mass are Dempster's as Winter gives them, or de Leva's
for women and men. A segment is named for one side; limbs come twice.

References
----------
Drillis R, Contini R (1966). Body segment parameters. Technical report 1166.03, New York University.
Winter DA (2009). Biomechanics and motor control of human movement, 4th ed., fig. 4.1, tab. 4.1. Wiley.
de Leva P (1996). Adjustments to Zatsiorsky-Seluyanov's segment inertia parameters. J Biomech 29, tab. 4.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal, NamedTuple

__all__ = ["COMPOSITES", "HEIGHTS", "LENGTHS", "LIMBS", "TABLES", "WIDTHS", "Share", "Table"]

Table = Literal["winter", "women", "men"]
"""Whose masses: Winter's one table for all, or de Leva's for women or men."""


class Share(NamedTuple):
    """A segment's mass, a share of the body's, and its centre of mass, a share of its length.

    The centre is counted from the end nearer the hip or shoulder; of the trunk from the hip, of the head from
    the shoulder, of the foot see `kb.body.balance`.
    """

    mass: float
    centre: float


HEIGHTS: Mapping[str, float] = MappingProxyType(
    {"ankle": 0.039, "knee": 0.285, "hip": 0.530, "shoulder": 0.818, "chin": 0.870, "eye": 0.936}
)
"""Heights above the floor, standing, shares of stature (Winter 2009, fig. 4.1)."""

LENGTHS: Mapping[str, float] = MappingProxyType(
    {
        "shank": 0.246,
        "thigh": 0.245,
        "trunk": 0.288,  # hip to shoulder
        "head": 0.182,  # shoulder to the top of the head, neck included
        "upper_arm": 0.186,
        "forearm": 0.146,
        "hand": 0.108,
        "foot": 0.152,
    }
)
"""Lengths, shares of stature (Winter 2009, fig. 4.1; shank to head are the differences of its heights)."""

WIDTHS: Mapping[str, float] = MappingProxyType({"foot": 0.055, "shoulder": 0.259, "hip": 0.191})
"""Widths seen from the front, shares of stature (Winter 2009, fig. 4.1)."""

LIMBS = ("foot", "shank", "thigh", "upper_arm", "forearm", "hand")
"""The segments that a body has twice."""

TABLES: Mapping[Table, Mapping[str, Share]] = MappingProxyType(
    {
        "winter": {  # tab. 4.1; its trunk, head and neck in one, so that the head adds nothing
            "foot": Share(0.0145, 0.500),
            "shank": Share(0.0465, 0.433),
            "thigh": Share(0.100, 0.433),
            "trunk": Share(0.578, 0.660),
            "head": Share(0.0, 0.500),
            "upper_arm": Share(0.028, 0.436),
            "forearm": Share(0.016, 0.430),
            "hand": Share(0.006, 0.506),
        },
        "women": {  # tab. 4; trunk and head are given from the shoulder down and from the top of the head
            "foot": Share(0.0129, 0.4014),
            "shank": Share(0.0481, 0.4352),
            "thigh": Share(0.1478, 0.3612),
            "trunk": Share(0.4257, 1 - 0.3782),
            "head": Share(0.0668, 1 - 0.4841),
            "upper_arm": Share(0.0255, 0.5754),
            "forearm": Share(0.0138, 0.4559),
            "hand": Share(0.0056, 0.3427),
        },
        "men": {
            "foot": Share(0.0137, 0.4415),
            "shank": Share(0.0433, 0.4395),
            "thigh": Share(0.1416, 0.4095),
            "trunk": Share(0.4346, 1 - 0.4310),
            "head": Share(0.0694, 1 - 0.5002),
            "upper_arm": Share(0.0271, 0.5772),
            "forearm": Share(0.0162, 0.4574),
            "hand": Share(0.0061, 0.3624),
        },
    }
)

COMPOSITES: Mapping[str, Share] = MappingProxyType(
    {
        "forearm_hand": Share(0.022, 0.682),
        "arm": Share(0.050, 0.530),
        "foot_shank": Share(0.061, 0.606),
        "leg": Share(0.161, 0.447),
        "head_neck": Share(0.081, 1.000),  # from the seventh neck joint to the ear
        "trunk_alone": Share(0.497, 0.500),
        "trunk_head": Share(0.578, 0.660),
        "head_arms_trunk": Share(0.678, 0.626),
    }
)
"""Segments taken together (Winter 2009, tab. 4.1); the last three up from the hip."""
