"""A drill as a strip: each posture it passes, from left to right, with the bar's path drawn through."""

from collections.abc import Mapping

from kb.show.figure.drawing import Box, box_of, framed, ground, lifter, within_of
from kb.show.figure.heard import heard
from kb.show.figure.movement import between, path_of
from kb.show.figure.outline import line, number
from kb.show.figure.passing import passed
from kb.terms import Drill, Lift, Position, PositionId

__all__ = ["bar_path", "strip_svg"]

ACROSS = 6
"""Figures in a row; what is more begins a new one."""


def bar_path(data: str) -> str:
    """The bar's path as it is drawn: in the accent, cut out of what it crosses."""
    return (
        f'<g class="path" fill="none" stroke-linecap="round"><path class="cut" d="{data}" stroke="Canvas"'
        f' stroke-width="4.4"/><path d="{data}" stroke="currentColor" stroke-width="2.2" stroke-dasharray="5 4"/></g>'
    )


def strip_svg(
    drill: Drill, lift: Lift, positions: Mapping[PositionId, Position], *, stick: bool = False, key: str = ""
) -> str:
    """The strip of a drill on a lift, as one `svg` element without style; "" if it passes no position.

    Parameters
    ----------
    stick
        Draw a stick instead of a bar with its discs.
    key
        What its ids begin with; by default `fig-` and the drill's id.
    """
    postures = passed(drill, lift, positions)
    if not postures:
        return ""
    key = key or f"fig-{drill.id}"
    groups = between(postures)
    poses = [group[-1] for group in groups]
    whole = box_of(poses)
    edges = [edge for pose in poses for edge in within_of(pose)]
    left = min(x - room for x, _, room in edges) - 2
    right = max(x + room for x, _, room in edges) + 7
    top = min(y - room for _, y, room in edges) - 4
    panel = Box(left, top, right - left, whole.top + whole.height - top)
    drawn = []
    for n, pose in enumerate(poses):
        row, column = divmod(n, ACROSS)
        so_far = path_of(groups[: n + 1])
        path = bar_path(line(so_far)) if n else ""
        marks = ground(panel) + lifter(pose, f"{key}-{n}", stick=stick) + path
        drawn.append(
            f'<g transform="translate({number(column * panel.width)} {number(row * panel.height)})">{marks}</g>'
        )
    rows = -(-len(poses) // ACROSS)
    box = Box(left, top, panel.width * min(len(poses), ACROSS), panel.height * rows)
    names = ", ".join(posture.name for posture in postures)
    desc = f"{names}." if len(postures) > 1 else heard(postures[0])
    return framed(box, key, drill.name, desc, "".join(drawn), "lifter strip")
