"""How far joints go: what nobody's joint passes, and what one body's do, degrees.

Ankle here is the lean of the shank over a flat, loaded foot, as in a lunge to the wall or a squat: one scale, on
which healthy young men reach about 40 and a flat deep squat asks about 39. A hand-held goniometer on a hanging foot
gives 13 to 23 for the same ankles; the two don't mix.

References
----------
Norkin CC, White DJ. Measurement of joint motion, app. A, tab. A.1: shoulder 180, elbow 150, wrist extension 70 (AAOS).
Boone DC, Azen SP (1979). J Bone Joint Surg Am 61: wrist extension 75, n = 109 men.
Calatayud J et al. (2015): lunge to the wall 40.6 (5.2), 26 men.
Hemmerich A et al. (2006). J Orthop Res 24: knee 157 (6) in the deep squat.
"""

from typing import NamedTuple

__all__ = ["HAMSTRING", "HINGE_KNEE", "NOBODY", "OPEN", "Limits", "Range"]

HAMSTRING = 0.4
"""Degrees a hip gains for each degree the knee bends, where the back of the thigh is what stops it. No source."""

HINGE_KNEE = 20.0
"""The knee's bend in a hip hinge, degrees."""


class Limits(NamedTuple):
    """How far one body's joints go, degrees.

    `hip` is with the knee bent, `hinge` with it nearly straight (`HINGE_KNEE`); `back_hip` is extension, for the
    split's back leg. `shoulder` is overhead and includes what the upper back gives; `rack` is the shoulder's with
    the elbows bent under a racked bar. `depth` is the thigh's from the vertical in the deepest flat squat.
    """

    ankle: float = 45.0
    knee: float = 155.0
    hip: float = 135.0
    hinge: float = 125.0
    back_hip: float = 30.0
    shoulder: float = 205.0
    rack: float = 125.0
    elbow: float = 150.0
    wrist: float = 75.0
    depth: float = 110.0

    def hip_at(self, knee: float) -> float:
        """How far the hip bends at that bend of the knee."""
        return min(self.hip, self.hinge + HAMSTRING * (knee - HINGE_KNEE))


OPEN = Limits()
"""A supple lifter: every position of the library lies within. Above each source's mean by no more than two of its
deviations, where one has been found."""


class Range(NamedTuple):
    """The least and the most of a joint."""

    least: float
    most: float


NOBODY: dict[str, Range] = {
    "ankle": Range(-50, 50),
    "knee": Range(-5, 165),
    "hip": Range(-35, 140),
    "trunk": Range(-20, 90),
    "shoulder": Range(-60, 210),
    "elbow": Range(-5, 155),
    "wrist": Range(-80, 85),
}
"""Beyond these a figure is wrong, whoever it is: published norms (Norkin & White, app. A), and a little more."""
