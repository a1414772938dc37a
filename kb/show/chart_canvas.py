"""Where everything stands in the reach chart's SVG: its two forms, the points across, the heights of the heading."""

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from kb.show.chart import SHORTER
from kb.show.chart_marks import number, text
from kb.show.coach_words import human
from kb.terms import Lift

__all__ = ["FIGURE", "LETTER", "NARROW", "WIDE", "Canvas", "Form", "canvas_of", "labels_of", "letters", "words"]

LETTER = 0.56
"""Mean width of a letter of a common sans-serif face, in ems; the widest of those met, so that nothing is cut."""


FIGURE = 40.0
"""The widest that the picture of a position is, user units."""


class Form(NamedTuple):
    """Measures of one form of the chart, in user units: 1 is a CSS pixel at full size."""

    width: float
    names: float
    times: float
    said: float
    size: float
    small: float
    edge: float
    figure: float

    @property
    def wide(self) -> bool:
        """Whether names stand beside the bars."""
        return self.names > 0


WIDE = Form(width=740, names=208, times=62, said=128, size=13.5, small=12.5, edge=22, figure=44)
NARROW = Form(width=360, names=0, times=0, said=0, size=16, small=14, edge=14, figure=56)


class Canvas(NamedTuple):
    """Where everything stands: the points across, and the heights of the heading."""

    form: Form
    left: float
    right: float
    xs: tuple[float, ...]
    labels: tuple[str, ...]
    labels_y: float
    staggered: bool
    band_y: float
    top: float


def letters(room: float, size: float) -> int:
    """How many letters of a size fit a room, both in user units."""
    return max(8, int(room / (size * LETTER)))


def canvas_of(lift: Lift, form: Form, *, figures: bool, bands: bool, said: bool) -> Canvas:
    """Points evenly across what names, minutes and words leave; labels on two lines where they are too many."""
    left = 24 + form.names + form.times if form.wide else 0.0
    right = form.width - (form.said if said else 0.0)
    edge = max(form.edge, FIGURE / 2) if figures else form.edge
    low, high = left + edge, right - edge
    xs = tuple(low + (high - low) * n / max(1, len(lift.points) - 1) for n in range(len(lift.points)))
    gap = xs[1] - xs[0] if len(xs) > 1 else high - low
    labels, staggered = labels_of(lift.points, gap, form.small)
    labels_y = (form.figure + 4 if figures else 0.0) + form.small + 1
    under = labels_y + (form.small + 2 if staggered else 0.0) + 5
    band_y = under + form.small + (2 if bands else -form.small)
    return Canvas(
        form, left, right, xs, labels, labels_y, staggered, band_y, band_y + (7 if form.wide or not bands else 13)
    )


def labels_of(points: Sequence[str], gap: float, size: float) -> tuple[tuple[str, ...], bool]:
    """What stands over the points of a timeline `gap` apart, and whether that takes two lines."""
    for shorter in ({}, *SHORTER):
        labels = tuple(shorter.get(point, human(point)) for point in points)
        pairs = pairwise(labels)
        if all((len(a) + len(b)) / 2 * size * LETTER + 5 <= gap for a, b in pairs):
            return labels, False
    return labels, True


def words(x: float, y: float, said: str, name: str, size: float | None = None, anchor: str = "") -> str:
    """Words at a place as a `text` element; `name` is its class, `anchor` which of its parts stands there.

    Without a `size` they are as large as those around them, and without an `anchor` they begin there.
    """
    more = f' font-size="{number(size)}"' if size else ""
    more += f' text-anchor="{anchor}"' if anchor else ""
    return f'<text class="{name}" x="{number(x)}" y="{number(y)}"{more}>{text(said)}</text>'
