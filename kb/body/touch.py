"""How near the bar is to the middle of each part of the body, and how near it can be.

A bar presses into flesh, so that a drawn bar may lie inside the outline; it can't lie in the core: of thigh, trunk and
neck half the way from the middle to the skin, of the shin the whole way, for there is only bone.
"""

import math
from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import NamedTuple

from kb.body.pose import BAR_RADIUS, Point, Pose
from kb.body.proportions import Body

__all__ = ["CORES", "Near", "nearest_to", "through"]

CORES: Mapping[str, float] = MappingProxyType({"shank": 0.020, "thigh": 0.025, "trunk": 0.030, "head": 0.030})
"""Thickness of the core from the line between the joints, share of stature. No source: from common girths of calf,
thigh and neck (37, 56 and 38 cm for a stature of 175 cm), and half of a chest's 22 cm, halved again."""


class Near(NamedTuple):
    """A part of the body, how far the bar's centre is from its middle line, and the least that can be, m."""

    part: str
    distance: float
    least: float


def nearest_to(point: Point, start: Point, end: Point) -> float:
    """Distance of a point from a stretch between two, m."""
    dx, dy = end.x - start.x, end.y - start.y
    long = dx * dx + dy * dy
    share = ((point.x - start.x) * dx + (point.y - start.y) * dy) / long if long else 0.0
    share = min(1.0, max(0.0, share))
    return math.hypot(point.x - start.x - share * dx, point.y - start.y - share * dy)


def _nears(body: Body, pose: Pose) -> Iterator[Near]:
    lines = [(part, *ends) for leg in pose.legs for part, ends in (("shank", leg[3:5]), ("thigh", leg[4:6]))]
    lines += [("trunk", pose.hip, pose.shoulder), ("head", pose.shoulder, pose.vertex)]
    for part, start, end in lines:
        yield Near(part, nearest_to(pose.bar, start, end), CORES[part] * body.stature + BAR_RADIUS)


def through(body: Body, pose: Pose) -> tuple[Near, ...]:
    """The parts whose core the bar lies in."""
    return tuple(near for near in _nears(body, pose) if near.distance < near.least)
