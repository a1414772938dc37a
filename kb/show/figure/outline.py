"""Outlines as SVG path data: circles joined by their outer tangents, which is what rounded limbs are.

Everything drawn is in centimetres, x forward, y down from the floor, to the millimetre.
"""

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from kb.body.pose import Point

__all__ = ["LAP", "Round", "between", "chain", "circle", "drawn", "line", "number"]

CM = 100.0

LAP = 0.05
"""How far what joins two circles laps over them, as a share of each: edges that only meet let the paper through."""


class Round(NamedTuple):
    """A circle that a limb is hung on: its centre, m, and radius, cm."""

    at: Point
    radius: float


def number(value: float) -> str:
    """A length to the millimetre, as short as it can be written."""
    said = f"{value:.1f}".removesuffix(".0")
    if said.startswith(("0.", "-0.")):
        said = said.replace("0.", ".", 1)
    return "0" if said == "-0" else said


def drawn(point: Point) -> tuple[float, float]:
    """Where a point stands on the drawing, cm: right, down."""
    return point.x * CM, -point.y * CM


def _at(*values: float) -> str:
    """Numbers as path data: a minus sign parts as well as a space does."""
    return " ".join(map(number, values)).replace(" -", "-")


def circle(at: Point, radius: float) -> str:
    """A whole circle: an arc from its lowest point all but to itself, closed."""
    x, y = drawn(at)
    return f"M{_at(x, y + radius)}a{_at(radius, radius, 0, 1, 1, 0.1, 0)}z"


def between(one: Round, other: Round) -> str:
    """What lies between the outer tangents of two circles; nothing to be seen if one holds the other.

    It always has as many corners and runs as the circles do, so that outlines can be joined, and turned into others.
    """
    (ax, ay), (bx, by) = drawn(one.at), drawn(other.at)
    apart = math.hypot(bx - ax, by - ay)
    towards = math.atan2(by - ay, bx - ax)
    narrows = (one.radius - other.radius) / max(apart, 1e-6)
    aside = math.acos(min(max(narrows, -1.0), 1.0))
    ahead, down = math.cos(towards), math.sin(towards)
    corners = (
        (
            x + radius * math.cos(towards + turn) + on * radius * ahead,
            y + radius * math.sin(towards + turn) + on * radius * down,
        )
        for x, y, radius, turn, on in (
            (ax, ay, one.radius, aside, -LAP),
            (ax, ay, one.radius, -aside, -LAP),
            (bx, by, other.radius, -aside, LAP),
            (bx, by, other.radius, aside, LAP),
        )
    )
    return f"M{'L'.join(_at(*corner) for corner in corners)}z"


def chain(rounds: Sequence[Round]) -> str:
    """Circles, each joined to the next."""
    return "".join(circle(*each) for each in rounds) + "".join(between(*pair) for pair in pairwise(rounds))


def line(points: Sequence[Point]) -> str:
    """A line through points."""
    return "M" + "L".join(_at(*drawn(point)) for point in points)
