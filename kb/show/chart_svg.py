"""The reach chart as SVG, from the same bars as the terminal's (kb/show/chart.py).

The lift's points stand left to right, each drill is one bar from where its reach begins to where it ends, and a
hatched band behind them is where the fault shows. There are two forms: names beside the bars, for a wide page
and paper, and names above them, for a phone. No script and no style in it, so that a strict policy can stand;
kb/show/sheet/templates/chart.css gives it its colours, without which all is drawn in the colour of the text.
"""

import re
from collections.abc import Mapping, Sequence
from typing import NamedTuple
from zlib import crc32

from kb.show.bars import Bar
from kb.show.chart_canvas import FIGURE, LETTER, NARROW, WIDE, Canvas, Form, canvas_of, letters, words
from kb.show.chart_heard import band_heard, bars_heard
from kb.show.chart_marks import Sample, bar_marks, number, samples, text, uprights
from kb.show.setting import wrapped
from kb.terms import Lift, PositionId

__all__ = ["BAND", "chart_figure", "chart_svg"]

BAND = "where it shows"
"""The label of the fault's band."""

BESIDE = 7.0
"""How far a band reaches past its points, user units."""

BAR_ROOM = 26.0
"""Height of a bar under its name in the narrow form, user units."""

TIME = 72.0
"""Room for a drill's minutes in the narrow form, user units."""

STRONG = 1.1
"""How much wider letters are that stand out."""

LEG = 30.0
"""Length of a drawn sample in the legend, user units."""


class Row(NamedTuple):
    """A bar with its words, wrapped to the room they have."""

    bar: Bar
    name: Sequence[str]
    said: Sequence[str]
    height: float


def _rows(bars: Sequence[Bar], form: Form) -> list[Row]:
    rows = []
    for n, bar in enumerate(bars, 1):
        if form.wide:
            name = wrapped(bar.name, letters(form.names, form.size))
            said = wrapped(bar.said, letters(form.said, form.small)) if bar.said else []
            height = 20 + (form.size + 1.5) * (max(len(name), len(said), 1) - 1)
        else:
            told = bar.name + (f": {bar.said}" if bar.said else "")
            name, said = wrapped(told, letters(form.width - 26 - TIME, form.size)), []
            height = (form.size + 3) * len(name) + (BAR_ROOM if bar.dials else 8)
        rows.append(Row(bar, [f"{n}{'*' if bar.gateway else ''}", *name], said, height))
    return rows


def _figure(svg: str, x: float, width: float, height: float, key: str) -> str:
    """A picture of its own, put at the top, centred on `x`; its ids begin with `key`, as it may come twice in a page.

    Raises ValueError for what is not an `svg` element.
    """
    found = re.match(r"\s*(?:<\?xml[^>]*>\s*)?<svg\b([^>]*)>", svg)
    if found is None:
        raise ValueError("a figure must be an svg element")
    attributes = re.sub(r'\s(?:x|y|width|height)="[^"]*"', "", found.group(1))
    place = f'x="{number(x - width / 2)}" y="0" width="{number(width)}" height="{number(height)}"'
    if "preserveAspectRatio" not in attributes:
        # feet on the labels, whatever its shape
        place += ' preserveAspectRatio="xMidYMax"'
    whole = f"<svg {place}{attributes}>{svg[found.end() :]}"
    names = "|".join(map(re.escape, sorted(set(re.findall(r'\sid="([^"]+)"', whole)), key=len, reverse=True)))
    return re.sub(rf'(?<=[\s"#])({names})(?=[\s")])', rf"{key}-\1", whole) if names else whole


def _heading(lift: Lift, canvas: Canvas, figures: Mapping[PositionId, str], key: str) -> list[str]:
    form, xs = canvas.form, canvas.xs
    gap = xs[1] - xs[0] if len(xs) > 1 else canvas.right - canvas.left
    drawn = [
        _figure(figures[timed.position], x, min(FIGURE, gap), form.figure, key)
        for timed, x in zip(lift.timeline, xs, strict=True)
        if timed.position in figures
    ]
    line_y = canvas.labels_y + (form.small + 2 if canvas.staggered else 0) + 5
    for n, (label, x) in enumerate(zip(canvas.labels, xs, strict=True)):
        lower = canvas.staggered and n % 2 == 1
        half = len(label) * form.small * LETTER / 2
        anchor, at = ("middle", x)
        if x - half < canvas.left:
            anchor, at = "", canvas.left
        elif x + half > canvas.right:
            anchor, at = "end", canvas.right
        drawn.append(words(at, canvas.labels_y + (form.small + 2) * lower, label, "point", form.small, anchor))
    steps = f"{uprights(xs, line_y - 3, 6)}M{number(xs[0])} {number(line_y)}H{number(xs[-1])}"
    drawn.append(f'<path class="timeline" d="{steps}" stroke="currentColor"/>')
    return drawn


def _bands(
    bands: Sequence[tuple[int, int]], canvas: Canvas, stretches: Sequence[tuple[float, float]], key: str
) -> list[str]:
    """The hatched stretches behind the bars, from each height to each; the label stands over the first."""
    if not bands:
        return []
    drawn = [
        f'<defs><pattern id="{key}-hatch" width="6" height="6" patternUnits="userSpaceOnUse">'
        '<rect class="band" width="6" height="6" fill="none"/>'
        '<path class="hatch" d="M-1 1L1 -1M0 6L6 0M5 7L7 5" stroke="currentColor" stroke-opacity="0.4"/>'
        "</pattern></defs>"
    ]
    for n, (first, last) in enumerate(bands):
        low, high = canvas.xs[first] - BESIDE, canvas.xs[last] + BESIDE
        for top, bottom in stretches:
            shape = f'x="{number(low)}" y="{number(top)}" width="{number(high - low)}" height="{number(bottom - top)}"'
            drawn.append(f'<rect {shape} fill="url(#{key}-hatch)"/>')
        if n == 0:
            half = len(BAND) * canvas.form.small * LETTER * STRONG / 2
            at = min(max((low + high) / 2, canvas.left + half), canvas.right - half)
            drawn.append(words(at, canvas.band_y, BAND, "band-name", canvas.form.small, "middle"))
    return drawn


def _stretches(rows: Sequence[Row], canvas: Canvas) -> list[tuple[float, float]]:
    """The heights at which a band is drawn: all the way down, or in the narrow form where no name would cross it."""
    top = canvas.band_y + 4
    bottom = canvas.top + sum(row.height for row in rows)
    if canvas.form.wide or not rows:
        return [(top, max(bottom, top + 16))]
    found, y = [(top, top + 6)], canvas.top
    for row in rows:
        y += row.height
        if row.bar.dials is not None:
            found.append((y - BAR_ROOM, y - 4))
    return found


def _row(row: Row, y: float, canvas: Canvas) -> list[str]:
    """A drill's words and its bar, its top at `y`."""
    form, bar = canvas.form, row.bar
    step = form.size + (1.5 if form.wide else 3)
    mark, *lines = row.name
    first = y + (14.5 if form.wide else form.size)
    drawn = [words(0, first, mark, "number")]
    drawn += [words(24 if form.wide else 26, first + step * n, line, "name") for n, line in enumerate(lines)]
    time = f"{bar.minutes} min" if bar.work else f"({bar.minutes} min)"
    drawn.append(words(canvas.left - 6 if form.wide else form.width, first, time, "time", anchor="end"))
    drawn += [words(canvas.right + 4, first + step * n, line, "said", form.small) for n, line in enumerate(row.said)]
    if bar.dials is not None:
        at = y + 10 if form.wide else y + row.height - BAR_ROOM / 2 - 2
        drawn.append(bar_marks(bar.dials, canvas.xs, at, work=bar.work))
    return drawn


def _legend(kinds: Sequence[Sample], canvas: Canvas, top: float) -> tuple[list[str], float]:
    """What the drawing means, from `top` down; and where it ends."""
    form = canvas.form
    drawn: list[str] = []
    start = 24.0 if form.wide else 0.0
    x, y = start, top + 16
    for kind in kinds:
        lead = LEG + 10 if kind.dials is not None else 0.0
        width = lead + len(kind.words) * form.small * LETTER
        if x > start and x + width > form.width:
            x, y = start, y + form.small + 10
        if kind.dials is not None:
            ends = (x + 2, x + LEG) if kind.dials.last == 1 else (x + 2, x + LEG / 2 + 1, x + LEG)
            drawn.append(bar_marks(kind.dials, ends, y - form.small * 0.35, work=kind.work))
        drawn.append(words(x + lead, y, kind.words, "key", form.small))
        x += width + 18
    return drawn, y + 8 if kinds else top


def chart_svg(
    lift: Lift,
    bars: Sequence[Bar],
    *,
    bands: Sequence[tuple[int, int]] = (),
    figures: Mapping[PositionId, str] | None = None,
    narrow: bool = False,
    heard: bool = True,
) -> str:
    """The chart of some drills of a lift as one `svg` element, with a band where the fault shows.

    `bars` and `bands` are those of kb/show/bars.py. `figures` are pictures of positions as `svg` elements, put
    over the points that take them. `narrow` puts each name above its bar, for a phone. With `heard` the
    description says every bar; without it, that a list beside the chart does (`chart_figure` has one).
    """
    form = NARROW if narrow else WIDE
    rows = _rows(bars, form)
    shown = {timed.position for timed in lift.timeline} & set(figures or ())
    canvas = canvas_of(
        lift, form, figures=bool(shown), bands=bool(bands), said=form.wide and any(row.said for row in rows)
    )
    key = f"reach-{crc32(repr((lift.id, tuple(bars), tuple(bands), narrow)).encode()):08x}"
    y, drawn = canvas.top, []
    for row in rows:
        drawn += _row(row, y, canvas)
        y += row.height
    stretches = _stretches(rows, canvas)
    bottom = max(y, stretches[-1][1]) if bands else y
    legend, end = _legend(samples(bars), canvas, bottom)
    parts = [
        *_named(lift, bars, bands, key, heard=heard),
        *_bands(bands, canvas, stretches, key),
        *_heading(lift, canvas, figures or {}, key),
        *drawn,
        *legend,
    ]
    size = (
        f'viewBox="0 0 {number(form.width)} {number(end + 2)}" width="{number(form.width)}" height="{number(end + 2)}"'
    )
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" class="reach {"narrow" if narrow else "wide"}" role="img"'
        f' aria-labelledby="{key}-title {key}-desc" {size} font-family="system-ui, sans-serif"'
        f' font-size="{number(form.size)}" fill="currentColor">'
        f"{''.join(parts)}</svg>"
    )


def _named(
    lift: Lift, bars: Sequence[Bar], bands: Sequence[tuple[int, int]], key: str, *, heard: bool
) -> tuple[str, str]:
    """The title and the description that stand for the picture."""
    title = f"Reach chart of the {lift.name.lower()}"
    told = [band_heard(lift, bands)]
    if heard:
        told += [f"{n}. {each}" for n, each in enumerate(bars_heard(lift, bars), 1)]
    elif bars:
        told.append("The list after it says each bar.")
    description = " ".join(each for each in told if each) or title
    return f'<title id="{key}-title">{text(title)}</title>', f'<desc id="{key}-desc">{text(description)}</desc>'


def chart_figure(
    lift: Lift,
    bars: Sequence[Bar],
    *,
    bands: Sequence[tuple[int, int]] = (),
    figures: Mapping[PositionId, str] | None = None,
    wide_figures: bool = True,
) -> str:
    """The chart in both forms with its content as an ordered list: HTML for a page that phones and printers read.

    The stylesheet shows one form and hides the list from the eye alone (classes `narrow`, `wide`, `heard`). Without
    `wide_figures` the wide form, which is printed, has no pictures, and is lower.
    """
    forms = [
        chart_svg(
            lift, bars, bands=bands, figures=figures if narrow or wide_figures else None, narrow=narrow, heard=False
        )
        for narrow in (True, False)
    ]
    items = "".join(f"<li>{text(each)}</li>" for each in bars_heard(lift, bars))
    listed = f'<ol class="heard">{items}</ol>' if items else ""
    return f'<figure class="reach-chart">{"".join(forms)}{listed}</figure>'
