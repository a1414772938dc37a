"""A drill in motion: the lifter moves through its postures once, with nothing but SVG's own animation.

No script and no style that a strict policy could refuse: each rigid part is turned and carried by
`animateTransform`, the arms are redrawn by `animate`. Without the style sheet of kb/show/figure/look.py, on paper,
and for readers who prefer less motion, a still figure stands there instead. What moves ends within five seconds
(WCAG 2.2, 2.2.2), and in a page begins again when it is tapped.
"""

import math
from collections.abc import Iterable, Mapping, Sequence

from kb.body.pose import Point, Pose
from kb.show.figure.drawing import ASIDE, CUT, bar, box_of, framed, ground, lifter
from kb.show.figure.limbs import head, leg, trunk
from kb.show.figure.look import FAR, TIMBER
from kb.show.figure.movement import between, path_of
from kb.show.figure.outline import Round, chain, drawn, line, number
from kb.show.figure.passing import passed
from kb.show.figure.strip import bar_path
from kb.terms import Drill, Lift, Position, PositionId

__all__ = ["LONGEST_S", "moving_svg"]

LONGEST_S = 4.8
"""How long a figure moves at most, s: what starts by itself must end within five."""

STEP_S = 0.9
"""From one posture to the next where there is time, s: slower than it is done, so that it can be seen."""


def _turn(one: Point, other: Point) -> float:
    """Direction of a part, degrees as SVG turns: clockwise."""
    return math.degrees(math.atan2(-(other.y - one.y), other.x - one.x))


def _unwound(turns: Sequence[float]) -> list[float]:
    """Turns that never jump by a whole one."""
    found = [turns[0]]
    for turn in turns[1:]:
        found.append(found[-1] + (turn - found[-1] + 180) % 360 - 180)
    return found


def _animated(name: str, values: Iterable[str], timing: str) -> str:
    """Values that change; nothing if they never do."""
    said = list(values)
    if all(value == said[0] for value in said):
        return ""
    return f'<{name} values="{";".join(said)}" {timing}/>'


def _carried(outlines: Iterable[str], joints: Sequence[Point], ends: Sequence[Point], timing: str) -> str:
    """A rigid part as its first pose draws it, carried with its joint and turned about it."""
    first = drawn(joints[0])
    turns = _unwound([_turn(joint, end) for joint, end in zip(joints, ends, strict=True)])
    places = [tuple(now - then for now, then in zip(drawn(joint), first, strict=True)) for joint in joints]
    about = f"{number(first[0])} {number(first[1])}"
    kind = 'animateTransform attributeName="transform" type='
    carry = _animated(f'{kind}"translate"', (f"{number(x)} {number(y)}" for x, y in places), timing)
    # a turn is added to what carries
    turned = (f"{number(turn - turns[0])} {about}" for turn in turns)
    turn = _animated(f'{kind}"rotate" additive="sum"', turned, timing)
    return f"<g>{_paths(outlines)}{carry}{turn}</g>"


def _paths(outlines: Iterable[str]) -> str:
    return "".join(f'<path d="{outline}"/>' for outline in outlines)


def _redrawn(outlines: Sequence[str], timing: str) -> str:
    """A part that changes its length as it is seen from the side."""
    changes = _animated('animate attributeName="d"', outlines, timing)
    return f'<path d="{outlines[0]}">{changes}</path>'


def _leg(poses: Sequence[Pose], which: int, timing: str) -> str:
    legs = [pose.legs[which] for pose in poses]
    shoe, shank, thigh = leg(legs[0])
    return (
        _carried((shoe,), [of.ball for of in legs], [of.ankle for of in legs], timing)
        + _carried((shank,), [of.ankle for of in legs], [of.knee for of in legs], timing)
        + _carried((thigh,), [of.knee for of in legs], [of.hip for of in legs], timing)
    )


def _arm(poses: Sequence[Pose], timing: str) -> str:
    upper = [chain([Round(pose.shoulder, 6.4), Round(pose.elbow, 4.3)]) for pose in poses]
    fore = [chain([Round(pose.elbow, 4.2), Round(pose.wrist, 3.0), Round(pose.bar, 3.9)]) for pose in poses]
    return _redrawn(upper, timing) + _redrawn(fore, timing)


def _bar(poses: Sequence[Pose], timing: str, *, stick: bool) -> str:
    x, y = drawn(poses[0].bar)
    places = (f"{number(now[0] - x)} {number(now[1] - y)}" for now in (drawn(pose.bar) for pose in poses))
    carry = _animated('animateTransform attributeName="transform" type="translate"', places, timing)
    return f"<g>{bar(poses[0].bar, stick=stick)}{carry}</g>"


def _moves(poses: Sequence[Pose], key: str, timing: str, *, stick: bool) -> str:
    aside = f'transform="translate({ASIDE[0]} {ASIDE[1]})"'
    split = len(poses[0].legs) > 1
    legs = _leg(poses, 1, timing) if split else f'<use href="#{key}-leg" {aside}/>'
    hips, shoulders = [pose.hip for pose in poses], [pose.shoulder for pose in poses]
    return (
        f'{CUT} fill="currentColor"><g class="far" fill="{FAR}">{legs}<use href="#{key}-arm" {aside}/></g>'
        f"{_carried((head(poses[0]),), shoulders, [pose.vertex for pose in poses], timing)}"
        f'<g class="trunk" fill="{TIMBER}">{_carried((trunk(poses[0]),), hips, shoulders, timing)}</g>'
        f'<g class="near"><g id="{key}-leg">{_leg(poses, 0, timing)}</g>'
        f'<g id="{key}-arm">{_arm(poses, timing)}</g></g></g>{_bar(poses, timing, stick=stick)}'
    )


def moving_svg(
    drill: Drill, lift: Lift, positions: Mapping[PositionId, Position], *, stick: bool = False, key: str = ""
) -> str:
    """A drill's movement as one `svg` element without style; "" if it passes fewer than two postures.

    It begins by itself, ends within `LONGEST_S` on the last posture, and begins anew when it is clicked or tapped.
    Without the style sheet only a still figure is seen.
    """
    postures = passed(drill, lift, positions)
    if len(postures) < 2:
        return ""
    key = key or f"moves-{drill.id}"
    groups = between(postures)
    poses = [pose for group in groups for pose in group]
    lasts = min(LONGEST_S, STEP_S * (len(groups) - 1))
    timing = f'begin="0s;{key}.click" dur="{lasts:.1f}s" fill="freeze"'
    box = box_of(poses)
    path = bar_path(line(path_of(groups)))
    inside = (
        f"{ground(box)}"
        f'<g class="still">{lifter(poses[-1], f"{key}-s", stick=stick)}</g>'
        f'<g class="moving" display="none">{_moves(poses, f"{key}-m", timing, stick=stick)}</g>{path}'
    )
    names = " to ".join(dict.fromkeys((postures[0].name, postures[-1].name)))
    drawing = framed(box, key, f"{drill.name}, moving", f"{names}, with the bar's path.", inside, "lifter")
    return drawing.replace("<svg ", f'<svg id="{key}" ', 1)
