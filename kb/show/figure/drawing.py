"""A posture as an SVG figure: a lifter seen from the side, facing right, with the bar end-on and its disc.

All figures share one scale and one box, so that those of a timeline can be compared: the floor, the middle of the
foot and the height of the bar stand where they stood before. Only a posture that no body takes widens its box.
The joints are those of kb/body/pose.py; the far side is set off a little, as it is seen from slightly in front.
"""

import math
from collections.abc import Iterable, Iterator
from typing import NamedTuple
from xml.sax.saxutils import escape

from kb.body.pose import DISC_RADIUS, Point, Pose, forward
from kb.body.proportions import USUAL
from kb.show.figure.heard import heard
from kb.show.figure.limbs import arm, head, leg, trunk
from kb.show.figure.look import FAR, TIMBER
from kb.show.figure.outline import CM, drawn, number
from kb.terms import Position

__all__ = ["BOX", "Box", "box_of", "figure_svg", "framed", "ground", "lifter", "within_of"]

STICK = 1.6
"""Radius a stick is drawn with, cm: a broomstick is thinner, and would not be seen."""

ASIDE = (5, -1)
"""How far the far side is set off, cm: right, down."""

DISC = number(DISC_RADIUS * CM)

CUT = '<g class="cut" stroke="Canvas" stroke-width="2.2" stroke-linejoin="round" paint-order="stroke"'


class Box(NamedTuple):
    """What of the drawing is seen, cm: left and top edge, width, height."""

    left: float
    top: float
    width: float
    height: float

    @property
    def said(self) -> str:
        """As `viewBox` says it."""
        return " ".join(map(number, self))


BOX = Box(-80, -240, 160, 250)
"""The box of every figure whose posture a body takes."""


def within_of(pose: Pose) -> Iterator[tuple[float, float, float]]:
    """Every point that matters, with the room it needs about it, cm."""
    bow = abs(math.tan(math.radians(pose.angles.get("back", 0.0)) / 4)) * 15
    for of in pose.legs:
        yield from ((*drawn(point), 6.0) for point in (of.heel, of.ball, of.toe, of.ankle, of.knee))
    # the seat, 11 cm round, lies 2.2 cm behind the hip
    yield from ((*drawn(point), 13.2 + bow) for point in (pose.hip, pose.shoulder))
    yield from ((*drawn(point), 10.0) for point in (pose.chin, pose.vertex, pose.elbow, pose.wrist))
    yield (*drawn(pose.bar), DISC_RADIUS * CM + 3)


def box_of(poses: Iterable[Pose]) -> Box:
    """The usual box, or a wider one if some pose doesn't fit into it."""
    left, top, right, low = BOX.left, BOX.top, BOX.left + BOX.width, BOX.top + BOX.height
    for pose in poses:
        for x, y, room in within_of(pose):
            left, right = min(left, math.floor(x - room)), max(right, math.ceil(x + room + ASIDE[0]))
            top, low = min(top, math.floor(y - room + ASIDE[1])), max(low, math.ceil(y + room))
    return Box(left, top, right - left, low - top)


def _paths(outlines: Iterable[str]) -> str:
    return "".join(f'<path d="{outline}"/>' for outline in outlines)


def ground(box: Box) -> str:
    """The floor, and a dotted line up from the middle of the foot."""
    floor = f"M{number(box.left + 6)} 0H{number(box.left + box.width - 6)}"
    return (
        f'<path class="floor" d="{floor}" stroke="currentColor" stroke-width="1.6" fill="none"/>'
        f'<path class="mid" d="M0 -2V{number(box.top + 4)}" stroke="currentColor" stroke-width="1"'
        ' stroke-dasharray="1.5 5" stroke-linecap="round" fill="none"/>'
    )


def bar(at: Point, *, stick: bool = False) -> str:
    """The bar end-on with its disc of 450 mm; or a stick."""
    x, y = map(number, drawn(at))
    if stick:
        return (
            f'<circle class="stick cut" cx="{x}" cy="{y}" r="{STICK + 0.9}" stroke="Canvas" stroke-width="1.8"'
            ' fill="currentColor"/>'
        )
    return (
        '<g class="bar" fill="none">'
        f'<circle class="cut" cx="{x}" cy="{y}" r="{DISC}" stroke="Canvas" stroke-width="5"/>'
        f'<circle class="disc" cx="{x}" cy="{y}" r="{DISC}" stroke="currentColor" stroke-width="2.2"/>'
        f'<circle class="hub" cx="{x}" cy="{y}" r="2.4" stroke="currentColor" stroke-width="1.6" fill="Canvas"/></g>'
    )


def lifter(pose: Pose, key: str, *, stick: bool = False) -> str:
    """The body and the bar, what is behind first; in a split the front leg is the near one.

    `key` begins the ids by which the far side repeats the near one.
    """
    aside = f'transform="translate({ASIDE[0]} {ASIDE[1]})"'
    arms = f'<use href="#{key}-arm" {aside}/>'
    legs = f'<use href="#{key}-leg" {aside}/>' if len(pose.legs) == 1 else _paths(leg(pose.legs[-1]))
    return (
        f'{CUT} fill="currentColor"><g class="far" fill="{FAR}">{legs}{arms}</g>'
        f'<path d="{head(pose)}"/><path class="trunk" fill="{TIMBER}" d="{trunk(pose)}"/>'
        f'<g class="near"><g id="{key}-leg">{_paths(leg(pose.legs[0]))}</g>'
        f'<g id="{key}-arm">{_paths(arm(pose))}</g></g></g>{bar(pose.bar, stick=stick)}'
    )


def framed(box: Box, key: str, title: str, desc: str, inside: str, kind: str = "lifter") -> str:
    """An `svg` element that says what it is; `key` makes its ids unique in a page."""
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="{kind}" viewBox="{box.said}" role="img"'
        f' aria-labelledby="{key}-t {key}-d"><title id="{key}-t">{escape(title)}</title>'
        f'<desc id="{key}-d">{escape(desc)}</desc>{inside}</svg>'
    )


def figure_svg(position: Position, *, stick: bool = False, key: str = "") -> str:
    """The figure of a position as one `svg` element without style, for use in a page.

    Parameters
    ----------
    stick
        Draw a stick instead of a bar with its disc.
    key
        What its ids begin with; by default `fig-` and the position's id. Say another if it comes twice in a page.
    """
    pose = forward(USUAL, position)
    box = box_of((pose,))
    key = key or f"fig-{position.id}"
    return framed(box, key, position.name, heard(position), ground(box) + lifter(pose, key, stick=stick))
