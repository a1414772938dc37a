"""What a bar of the reach chart is drawn with in SVG: plain shapes that survive a grey printer.

Its line is the speed (dotted held, dashed slow, notched paused, solid full), its thickness the load (a check is
thinner than work), its right-hand end the catch (open, short, half, full cup), a small prop under it the help,
a break a point left out. Colours come from a stylesheet; without one everything is drawn in the text's colour.
"""

from collections.abc import Iterable, Iterator, Sequence
from html import escape
from typing import NamedTuple

from kb.dials import Dials
from kb.show.bars import Bar
from kb.show.glyphs import weight
from kb.show.legend import CATCHES, LOADS, SPEEDS
from kb.terms import Catch, Load, Speed, Stage

__all__ = ["BREAK", "THICKNESS", "Sample", "bar_marks", "number", "samples", "text", "uprights"]

THICKNESS = (1.5, 2.5, 5.0, 8.0)
"""Of a line, in user units, by its weight from 0 (lightest) to 3."""

BREAK = 9.0
"""Half the length of the break at a point left out, user units."""

SHORTEST = 10.0
"""Half the length of a bar that begins and ends at one point, user units."""

DASH, NOTCH_EVERY = 9.0, 14.0
"""A dash of slow, and how far apart the notches of a pause stand, user units."""

_UNFIT = {code: " " for code in (*range(0x20), 0x7F, 0xFFFE, 0xFFFF) if code not in (0x9, 0xA)}
_UNFIT |= dict.fromkeys(range(0xD800, 0xE000), " ")
"""Characters that XML can't hold."""


class Sample(NamedTuple):
    """What a kind of drawing means: dials drawn so (None: words alone) and the words."""

    dials: Dials | None
    work: bool
    words: str


def number(value: float) -> str:
    """A coordinate, to a tenth of a unit.

    >>> number(12.0), number(3.14159)
    ('12', '3.1')
    """
    return f"{round(value, 1):g}"


def text(value: str) -> str:
    """Words as they may stand in XML, in an element or an attribute.

    >>> text('<b> & "c"')
    '&lt;b&gt; &amp; &quot;c&quot;'
    """
    return escape(value.translate(_UNFIT))


def _line(x1: float, y1: float, x2: float, y2: float, width: float, more: str = "") -> str:
    ends = f'x1="{number(x1)}" y1="{number(y1)}" x2="{number(x2)}" y2="{number(y2)}"'
    return f'<line {ends} stroke-width="{number(width)}"{more}/>'


def _path(steps: str, width: float = 2.0) -> str:
    return f'<path d="{steps}" fill="none" stroke-width="{number(width)}"/>'


def uprights(xs: Iterable[float], top: float, height: float) -> str:
    """Upright strokes as the steps of one path.

    >>> uprights([3, 14.5], 20, 6)
    'M3 20v6M14.5 20v6'
    """
    return "".join(f"M{number(x)} {number(top)}v{number(height)}" for x in xs)


def _stroke(x1: float, x2: float, y: float, speed: Speed, thick: float) -> Iterator[str]:
    """One unbroken piece of a bar, in the style of its speed."""
    if speed is Speed.HELD:
        gap = max(6.0, 1.9 * thick)
        # a dash of no length with round ends is a dot; it begins and ends within the piece
        inner = thick / 2
        dots = f' stroke-linecap="round" stroke-dasharray="0 {number(gap)}"'
        yield _line(x1 + inner, y, max(x1 + inner + 0.1, x2 - inner), y, thick, dots)
    elif speed is Speed.SLOW:
        yield _line(x1, y, x2, y, thick, f' stroke-dasharray="{number(DASH)} {number(DASH * 0.6)}"')
    else:
        yield _line(x1, y, x2, y, thick)
    if speed is Speed.PAUSED:
        half = thick / 2 + 3.5
        notches = max(1, int((x2 - x1) / NOTCH_EVERY))
        places = (x1 + (x2 - x1) * n / (notches + 1) for n in range(1, notches + 1))
        yield _path(uprights(places, y - half, 2 * half))


def _cup(x: float, y: float, catch: Catch, thick: float) -> Iterator[str]:
    """The right-hand end: nothing, a short stroke, the lower half of a cup, a whole one."""
    high, lip = thick / 2 + 4.5, 7.0
    top, bottom, back = number(y - high), number(y + high), number(x - lip)
    if catch is Catch.STANDING:
        yield _path(f"M{number(x)} {number(y - high + 1.5)}V{number(y + high - 1.5)}")
    elif catch is Catch.POWER:
        yield _path(f"M{number(x)} {number(y - thick / 2 - 1)}V{bottom}H{back}")
    elif catch is Catch.FULL:
        yield _path(f"M{back} {top}H{number(x)}V{bottom}H{back}")


def _prop(x: float, y: float, thick: float) -> str:
    """A small prop under the line: something helps."""
    top = y + thick / 2 + 1
    corners = f"{number(x)},{number(top)} {number(x - 5)},{number(top + 7)} {number(x + 5)},{number(top + 7)}"
    return f'<polygon points="{corners}" fill="currentColor" stroke="none"/>'


def bar_marks(dials: Dials, xs: Sequence[float], y: float, *, work: bool) -> str:
    """A bar at height `y`; `xs` are where the timeline's points stand, left to right, user units."""
    thick = THICKNESS[weight(dials.load, work=work)]
    low, high = xs[dials.first], xs[dials.last]
    if dials.first == dials.last:
        low, high = low - SHORTEST, high + SHORTEST
    marks: list[str] = []
    at = low
    for n, x in enumerate(xs):
        if dials.left_out >> n & 1 and low < x < high:
            marks += _stroke(at, x - BREAK, y, dials.speed, thick)
            at = x + BREAK
    marks += _stroke(at, high, y, dials.speed, thick)
    marks.append(_line(low, y - thick / 2 - 2.5, low, y + thick / 2 + 2.5, 2.0))
    marks += _cup(high, y, dials.catch, thick)
    if dials.helped:
        marks.append(_prop(low + SHORTEST, y, thick))
    kind = "work" if work else "check"
    return f'<g class="bar {kind} {dials.speed.word}" stroke="currentColor">{"".join(marks)}</g>'


def samples(bars: Sequence[Bar]) -> list[Sample]:
    """What needs saying under a chart: only what it uses, and what tells its bars apart."""
    plain = Dials(Stage.SEGMENT, 0, 1, 0, Speed.FULL, Load.STICK, Catch.NONE, False)
    drawn = [(bar, bar.dials) for bar in bars if bar.dials is not None]
    found = [
        Sample(plain._replace(speed=speed, load=Load.LIGHT), True, word)
        for speed, word in SPEEDS.items()
        if any(dials.speed is speed for _, dials in drawn)
    ]
    heavy: dict[int, list[Load]] = {}
    for load in sorted({dials.load for bar, dials in drawn if bar.work}):
        heavy.setdefault(weight(load, work=True), []).append(load)
    if len(heavy) > 1:
        for loads in heavy.values():
            found.append(Sample(plain._replace(load=loads[0]), True, " or ".join(LOADS[load] for load in loads)))
    catches = {dials.catch for _, dials in drawn}
    if len(catches) > 1:
        found += [Sample(plain._replace(catch=catch), True, CATCHES[catch]) for catch in sorted(catches & set(CATCHES))]
    if any(dials.helped for _, dials in drawn):
        found.append(Sample(plain._replace(helped=True), True, "helped"))
    if any(dials.left_out for _, dials in drawn):
        found.append(Sample(plain._replace(last=2, left_out=0b10), True, "a gap: left out"))
    if any(not bar.work for bar in bars):
        found.append(Sample(None, False, "(1 min) a check: one round, drawn thinner"))
    if any(bar.gateway for bar in bars):
        found.append(Sample(None, True, "* every way to the lift passes here"))
    return found
