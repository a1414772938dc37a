"""The way between postures: poses interpolated by their angles, with the bar's path through them.

Legs and trunk turn joint by joint, feet on the floor. The bar runs on a smooth curve through where each posture has
it, and the arms follow it. From the extension into a catch it passes the chest, close to the body, with the elbows
high: the turnover, which is no position of the library. It is a drawing of the way, not a measurement.
"""

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from kb.body.pose import SPREADS, Point, Pose, forward, place
from kb.body.proportions import USUAL
from kb.terms import Position

__all__ = ["STEPS", "between", "path_of"]

STEPS = 4
"""Poses between one position and the next, the next included."""

SPLIT = ("ankle", "knee", "hip")


class Key(NamedTuple):
    """A posture to pass: its angles, how far the heel is up (degrees) and all is set forward (m), and the arms.

    `elbow` and `wrist` are by the line from shoulder to bar: along it, as a share of its length, and aside, m.
    `upper` is the elbow from the shoulder: degrees from hanging, and m. On the body, `lies` is the bar from the
    shoulder, and `hand` the wrist from the bar, m.
    """

    angles: dict[str, float]
    pitch: float
    shift: float
    bar: Point
    elbow: Point
    wrist: Point
    upper: Point
    hand: Point
    lies: Point | None = None


def _arm_frame(shoulder: Point, bar: Point) -> tuple[float, float, float]:
    dx, dy = bar.x - shoulder.x, bar.y - shoulder.y
    return dx, dy, max(dx * dx + dy * dy, 1e-6)


def _local(shoulder: Point, bar: Point, point: Point) -> Point:
    dx, dy, squared = _arm_frame(shoulder, bar)
    px, py = point.x - shoulder.x, point.y - shoulder.y
    # aside in metres, so that a short line doesn't throw the elbow far out
    return Point((px * dx + py * dy) / squared, (px * dy - py * dx) / squared**0.5)


def _placed(shoulder: Point, bar: Point, local: Point) -> Point:
    dx, dy, squared = _arm_frame(shoulder, bar)
    aside = local.y / squared**0.5
    return Point(shoulder.x + dx * local.x + dy * aside, shoulder.y + dy * local.x - dx * aside)


def _key(position: Position, *, split: bool) -> Key:
    pose = forward(USUAL, position)
    angles = dict(pose.angles)
    pitch = pose.legs[0].pitch
    if split and "front_knee" not in angles:
        angles |= {f"{side}_{joint}": angles[joint] for side in ("front", "back") for joint in SPLIT}
    angles["trunk"] = pose.lean
    shift = pose.hip.x - _body(angles, pitch, split=split).hip.x
    elbow, wrist = (_local(pose.shoulder, pose.bar, point) for point in (pose.elbow, pose.wrist))
    out, down = pose.elbow.x - pose.shoulder.x, pose.shoulder.y - pose.elbow.y
    upper = Point(math.degrees(math.atan2(out, down)), math.hypot(out, down))
    hand = Point(pose.wrist.x - pose.bar.x, pose.wrist.y - pose.bar.y)
    lies = Point(pose.bar.x - pose.shoulder.x, pose.bar.y - pose.shoulder.y) if position.bar in SPREADS else None
    return Key(angles, pitch, shift, pose.bar, elbow, wrist, upper, hand, lies)


def _body(angles: dict[str, float], pitch: float, *, split: bool) -> Pose:
    return place(USUAL, angles, "split" if split else "toes", "thigh", spread=0.0, pitch=pitch if split else 0.0)


def _mixed(one: float, other: float, share: float) -> float:
    return one + (other - one) * share


def _point(one: Point, other: Point, share: float) -> Point:
    return Point(_mixed(one.x, other.x, share), _mixed(one.y, other.y, share))


def _turnover(one: Key, other: Key) -> Key:
    """Half-way into a catch: the bar near its highest, close to the chest, the elbows above and behind it."""
    angles = {joint: _mixed(one.angles[joint], other.angles[joint], 0.5) for joint in one.angles}
    higher = max(one.bar.y + 0.20, other.bar.y - 0.12)
    return Key(
        angles=angles,
        pitch=_mixed(one.pitch, other.pitch, 0.5),
        shift=_mixed(one.shift, other.shift, 0.5),
        bar=Point(max(one.bar.x, other.bar.x) + 0.02, higher),
        elbow=Point(0.42, 0.12),
        wrist=Point(0.86, 0.03),
        upper=Point(-58.0, 0.22),
        hand=Point(-0.04, 0.06),
    )


def _keys(positions: Sequence[Position]) -> list[Key]:
    split = any(position.contact == "split" for position in positions)
    keys: list[Key] = []
    for n, position in enumerate(positions):
        key = _key(position, split=split)
        if keys and _hangs(positions[n - 1]) and not _hangs(position):
            keys.append(_turnover(keys[-1], key))
        keys.append(key)
    return keys


def _hangs(position: Position) -> bool:
    return position.bar not in SPREADS and position.bar != "overhead"


def _curve(bars: Sequence[Point], n: int, share: float) -> Point:
    """A point between the n-th and the next, on a curve through all (Catmull and Rom's)."""
    before, one, other, after = (bars[min(max(n + step, 0), len(bars) - 1)] for step in (-1, 0, 1, 2))
    t, t2, t3 = share, share**2, share**3

    def on(a: float, b: float, c: float, d: float) -> float:
        return (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t2 + (3 * b - a - 3 * c + d) * t3) / 2

    return Point(on(before.x, one.x, other.x, after.x), on(before.y, one.y, other.y, after.y))


def _arm(one: Key, other: Key, share: float, shoulder: Point, bar: Point) -> tuple[Point, Point]:
    """Elbow and wrist; into a rack and in it the elbow swings round the shoulder, from behind to the front."""
    if other.lies is None:
        elbow = _placed(shoulder, bar, _point(one.elbow, other.elbow, share))
        return elbow, _placed(shoulder, bar, _point(one.wrist, other.wrist, share))
    upper, hand = _point(one.upper, other.upper, share), _point(one.hand, other.hand, share)
    turn = math.radians(upper.x)
    elbow = Point(shoulder.x + upper.y * math.sin(turn), shoulder.y - upper.y * math.cos(turn))
    return elbow, Point(bar.x + hand.x, bar.y + hand.y)


def _pose(one: Key, other: Key, share: float, bar: Point, *, split: bool) -> Pose:
    angles = {joint: _mixed(one.angles[joint], other.angles.get(joint, 0.0), share) for joint in one.angles}
    body = _body(angles, _mixed(one.pitch, other.pitch, share), split=split)
    dx = _mixed(one.shift, other.shift, share)

    def moved(point: Point) -> Point:
        return Point(point.x + dx, point.y)

    legs = tuple(
        of._replace(
            heel=moved(of.heel),
            ball=moved(of.ball),
            toe=moved(of.toe),
            ankle=moved(of.ankle),
            knee=moved(of.knee),
            hip=moved(of.hip),
        )
        for of in body.legs
    )
    shoulder = moved(body.shoulder)
    if one.lies is not None and other.lies is not None:
        lies = _point(one.lies, other.lies, share)
        bar = Point(shoulder.x + lies.x, shoulder.y + lies.y)
    elbow, wrist = _arm(one, other, share, shoulder, bar)
    return body._replace(
        legs=legs,
        hip=moved(body.hip),
        shoulder=shoulder,
        chin=moved(body.chin),
        vertex=moved(body.vertex),
        elbow=elbow,
        wrist=wrist,
        bar=bar,
    )


def between(positions: Sequence[Position]) -> list[tuple[Pose, ...]]:
    """All poses on the way, in one group for each position: those that lead to it, the last being its own.

    The first group is the first position alone. Every pose has two legs if one of the positions is a split.
    """
    split = any(position.contact == "split" for position in positions)
    keys = _keys(positions)
    bars = [key.bar for key in keys]
    groups: list[tuple[Pose, ...]] = [(_pose(keys[0], keys[0], 0.0, bars[0], split=split),)]
    own = [_key(position, split=split) for position in positions]
    group: list[Pose] = []
    for n, (one, other) in enumerate(pairwise(keys)):
        for step in range(1, STEPS + 1):
            share = step / STEPS
            group.append(_pose(one, other, share, _curve(bars, n, share), split=split))
        if other == own[len(groups)]:
            groups.append(tuple(group))
            group = []
    return groups


def path_of(groups: Sequence[Sequence[Pose]]) -> list[Point]:
    """Where the bar's centre goes, m."""
    return [pose.bar for group in groups for pose in group]
