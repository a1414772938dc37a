"""A fault beside the position as it should be: the same body at the same scale, on one floor."""

from collections.abc import Mapping

from kb.body.pose import forward
from kb.body.proportions import USUAL
from kb.show.figure.drawing import Box, box_of, framed, ground, lifter, within_of
from kb.show.figure.heard import heard
from kb.show.figure.outline import number
from kb.show.figure.posture import taken
from kb.terms import Fault, Position, PositionId

__all__ = ["pair_svg"]

ROOM = 24
"""Under the floor, for a word, cm."""

GAP = 10
"""Between the two, cm."""

TICK = "M-6 0l4 5 8-11"
CROSS = "M-5 -5L5 5M-5 5L5 -5"


def _panel(at: float, marks: str, sign: str, word: str, kind: str) -> str:
    return (
        f'<g class="{kind}" transform="translate({number(at)} 0)">{marks}<g class="word" transform="translate(-48 15)">'
        f'<path d="{sign}" fill="none" stroke="currentColor" stroke-width="2.6" stroke-linecap="round"/>'
        '<text x="13" y="5" font-size="14" fill="currentColor" font-family="system-ui,sans-serif">'
        f"{word}</text></g></g>"
    )


def pair_svg(
    fault: Fault, positions: Mapping[PositionId, Position], *, stick: bool = False, words: bool = True, key: str = ""
) -> str:
    """What a fault looks like: right on the left, wrong on the right, as one `svg` element without style.

    Parameters
    ----------
    words
        Say under each which it is.
    key
        What its ids begin with; by default `fig-` and the fault's id.

    Raises
    ------
    ValueError
        If the fault has no posture.
    KeyError
        If its posture is of a position that isn't among `positions`.
    """
    if fault.posture is None:
        raise ValueError(f"{fault.id} has no posture")
    right = positions[fault.posture.position]
    wrong = taken(fault.posture, right)
    poses = [forward(USUAL, position) for position in (right, wrong)]
    whole = box_of(poses)
    top = min(min(y - room for _, y, room in within_of(pose)) for pose in poses) - 6
    panel = Box(whole.left, top, whole.width, -top)
    key = key or f"fig-{fault.id}"
    inside = [ground(panel) + lifter(pose, f"{key}-{n}", stick=stick) for n, pose in enumerate(poses)]
    apart = whole.width + GAP
    box = Box(whole.left, top, whole.width + apart, (ROOM if words else 8) - top)
    said = (("right", TICK, "As it should be"), ("fault", CROSS, "The fault"))
    drawn = "".join(
        _panel(n * apart, marks, sign, word, kind) if words else _bare(n * apart, marks)
        for n, (marks, (kind, sign, word)) in enumerate(zip(inside, said, strict=True))
    )
    desc = f"Left, {right.name} as it should be. {heard(right)} Right, the fault. {heard(wrong)}"
    return framed(box, key, fault.name, desc, drawn, "lifter pair")


def _bare(at: float, marks: str) -> str:
    return f'<g transform="translate({number(at)} 0)">{marks}</g>'
