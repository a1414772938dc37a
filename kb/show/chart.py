"""The reach chart as text: a lift's timeline from left to right, one bar a drill, in order from top to bottom.

So a chain is seen as the lift being put back together. The stretch where the fault shows is a band behind
the bars. Where a line is too short for name, bar and words side by side, each bar stands under its name.
"""

from collections.abc import Sequence
from typing import NamedTuple

from kb.show.bars import Bar
from kb.show.coach_words import human
from kb.show.glyphs import Glyphs, glyphs_of, weight
from kb.show.legend import legend
from kb.show.setting import Setting, wrapped
from kb.terms import Lift

__all__ = ["chart"]

SHORTER = ({"extension": "ext."}, {"extension": "ext.", "receive": "rec.", "recovered": "recov."})
"""How points are shortened, the first that fits; after these to four letters, then two."""

NUMBER, TIME, NAME, SAID = 4, 8, (16, 34), (8, 20)
"""Columns: of the number; of the minutes; the least and the most of a name and of what is said beside a bar."""


UNDER = 2
"""Columns before a bar that stands under its name."""

BAND = "where it shows"
"""The label of the fault's band."""


class Timeline(NamedTuple):
    """Where a lift's points stand in a chart: a column each, and their labels."""

    columns: tuple[int, ...]
    labels: tuple[str, ...]
    width: int

    @property
    def heading(self) -> str:
        """The labels, each centred on its column."""
        line = ""
        for column, label in zip(self.columns, self.labels, strict=True):
            line = f"{line:<{column - len(label) // 2}}{label}"
        return line


def _labels(points: Sequence[str], room: int) -> tuple[str, ...]:
    """The points' names, shortened as far as the room asks."""
    for shorter in SHORTER:
        labels = tuple(shorter.get(point, human(point)) for point in points)
        if _least(labels) <= room:
            return labels
    labels = tuple(label if len(label) <= 4 else f"{label[:3]}." for label in labels)
    return labels if _least(labels) <= room else tuple(label[:2] for label in labels)


def _least(labels: Sequence[str]) -> int:
    return sum(len(label) + 1 for label in labels) - 1


def _timeline(points: Sequence[str], room: int) -> Timeline:
    """Points spread over `room` columns, the gaps between their labels alike."""
    labels = _labels(points, room)
    spare = max(0, room - _least(labels))
    columns, at = [], 0
    for n, label in enumerate(labels):
        shift = spare * n // max(1, len(labels) - 1)
        columns.append(at + shift + len(label) // 2)
        at += len(label) + 1
    return Timeline(tuple(columns), labels, max(room, _least(labels)))


def _behind(bands: Sequence[tuple[int, int]], line: Timeline, glyphs: Glyphs) -> list[str]:
    """The band alone: a little wider than a bar of the same reach, so that it shows beside one."""
    drawn = [" "] * line.width
    for first, last in bands:
        low, high = max(0, line.columns[first] - 2), min(line.width - 1, line.columns[last] + 2)
        drawn[low : high + 1] = glyphs.band * (high - low + 1)
    return drawn


def _drawn(bar: Bar, bands: Sequence[tuple[int, int]], line: Timeline, glyphs: Glyphs) -> str:
    """One bar over the band."""
    drawn = _behind(bands, line, glyphs)
    dials = bar.dials
    if dials is None:
        return "".join(drawn).rstrip()
    low, high = line.columns[dials.first], line.columns[dials.last]
    if low == high:
        low, high = max(0, low - 1), min(line.width - 1, high + 1)
    pattern = glyphs.lines[dials.speed][weight(dials.load, work=bar.work)]
    for column in range(low, high + 1):
        drawn[column] = pattern[(column - low - 1) % len(pattern)]
    for n, column in enumerate(line.columns):
        if dials.left_out >> n & 1 and low < column < high:
            drawn[column - 1 : column + 2] = _behind(bands, line, glyphs)[column - 1 : column + 2]
    drawn[low] = glyphs.helped if dials.helped else glyphs.start
    drawn[high] = glyphs.ends[dials.catch] or drawn[high]
    return "".join(drawn).rstrip()


def _time(bar: Bar) -> str:
    return f"{bar.minutes} min" if bar.work else f"({bar.minutes} min)"


def _number(n: int, bar: Bar, glyphs: Glyphs) -> str:
    return f"{n:>2}{glyphs.gateway if bar.gateway else ' '} "


def _shares(lift: Lift, bars: Sequence[Bar], setting: Setting) -> tuple[int, int, int] | None:
    """Columns of names, bars and words side by side; None if the line is too short for that."""
    longest = max((len(bar.name) for bar in bars), default=len(BAND))
    said = min(max((len(bar.said) for bar in bars), default=0), SAID[1])
    points = [human(point) for point in lift.points]
    least = _least([SHORTER[0].get(point, point) for point in points])
    room = setting.width - NUMBER - 1 - TIME - 1
    if room < NAME[0] + least + (2 + SAID[0] if said else 0):
        return None
    # the words beside a bar wrap, then names do, so that the bars keep their length
    words = min(said, max(SAID[0], room - 2 - least - min(longest, NAME[0] + 4))) if said else 0
    names = min(longest, NAME[1], room - least - (2 + words if said else 0))
    return names, min(room - names - (2 + words if said else 0), least + 14), words


def _side_by_side(
    lift: Lift, bars: Sequence[Bar], bands: Sequence[tuple[int, int]], shares: tuple[int, int, int], setting: Setting
) -> list[str]:
    names, room, words = shares
    glyphs, line = glyphs_of(fine=setting.fine), _timeline(lift.points, room)
    lead = " " * (NUMBER + names + 1 + TIME)
    lines = [f"{lead}{line.heading}"]
    if bands:
        lines.append(f"{BAND:>{len(lead) - 1}} {''.join(_behind(bands, line, glyphs))}".rstrip())
    for n, bar in enumerate(bars, 1):
        name, *more_name = wrapped(bar.name, names)
        said, *more_said = wrapped(bar.said, words) if bar.said else [""]
        drawn = _drawn(bar, bands, line, glyphs)
        first = f"{_number(n, bar, glyphs)}{name:<{names}} {_time(bar):>{TIME - 1}} {drawn:<{line.width}}"
        lines.append(f"{first}  {said}".rstrip())
        band = "".join(_behind(bands, line, glyphs))
        for at in range(max(len(more_name), len(more_said))):
            under = more_name[at] if at < len(more_name) else ""
            beside = more_said[at] if at < len(more_said) else ""
            lines.append(f"{'':{NUMBER}}{under:<{names}} {'':{TIME}}{band:<{line.width}}  {beside}".rstrip())
    return lines


def _labelled(band: Sequence[str]) -> str:
    """The band with its label to its right or left, where there is room."""
    drawn = "".join(band).rstrip()
    blank = len(drawn) - len(drawn.lstrip())
    if len(drawn) + 1 + len(BAND) <= len(band):
        return f"{drawn} {BAND}"
    return f"{BAND:>{blank - 1}} {drawn.lstrip()}" if len(BAND) < blank else drawn


def _under_names(lift: Lift, bars: Sequence[Bar], bands: Sequence[tuple[int, int]], setting: Setting) -> list[str]:
    lead = " " * UNDER
    glyphs, line = glyphs_of(fine=setting.fine), _timeline(lift.points, setting.width - UNDER)
    lines = [f"{lead}{line.heading}"]
    if bands:
        lines.append(lead + _labelled(_behind(bands, line, glyphs)))
    for n, bar in enumerate(bars, 1):
        text = f"{bar.name}, {_time(bar)}" + (f": {bar.said}" if bar.said else "")
        first, *more = wrapped(text, setting.width - NUMBER)
        lines += [f"{_number(n, bar, glyphs)}{first}", *(f"{'':{NUMBER}}{each}" for each in more)]
        if bar.dials is not None:
            lines.append(f"{lead}{_drawn(bar, bands, line, glyphs)}")
    return lines


def chart(lift: Lift, bars: Sequence[Bar], setting: Setting, *, bands: Sequence[tuple[int, int]] = ()) -> list[str]:
    """The chart of some drills of a lift, with a band where the fault shows, and what needs saying under it."""
    shares = _shares(lift, bars, setting)
    if shares is None:
        lines = _under_names(lift, bars, bands, setting)
    else:
        lines = _side_by_side(lift, bars, bands, shares, setting)
    return [*lines, *legend(bars, setting)]
