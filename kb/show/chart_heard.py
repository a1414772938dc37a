"""The reach chart for those who hear it: each bar as a sentence, in order, with what changes."""

from collections.abc import Sequence

from kb.dials import Dials
from kb.show.bars import Bar
from kb.show.coach_words import human, listed, place
from kb.show.legend import CATCHES, LOADS, SPEEDS
from kb.terms import Lift, Load

__all__ = ["band_heard", "bars_heard"]


def _stretch(dials: Dials, lift: Lift) -> str:
    first, last = place(lift.points[dials.first]), place(lift.points[dials.last])
    return f"at {first}" if first == last else f"from {first} to {last}"


def _minutes(count: int) -> str:
    return "1 minute" if count == 1 else f"{count} minutes"


def _dials(dials: Dials, lift: Lift) -> list[str]:
    """How it is done: what the drawing shows without words."""
    out = [place(point) for n, point in enumerate(lift.points) if dials.left_out >> n & 1]
    return [
        SPEEDS.get(dials.speed, "at full speed"),
        LOADS[dials.load] + (" load" if dials.load is Load.LIGHT else ""),
        *([CATCHES[dials.catch]] if dials.catch in CATCHES else []),
        *(["helped"] if dials.helped else []),
        *([f"leaves out {listed(out)}"] if out else []),
    ]


def bars_heard(lift: Lift, bars: Sequence[Bar]) -> list[str]:
    """One sentence a bar, in order: name, stretch, minutes, how it is done, what changes.

    What is beside a bar of preparation says what it opens, and is no change.
    """
    said = []
    for bar in bars:
        parts = [bar.name]
        if bar.dials is not None:
            parts.append(_stretch(bar.dials, lift))
        parts.append(_minutes(bar.minutes))
        if not bar.work:
            parts.append("a check of one round")
        if bar.gateway:
            parts.append("every way to the lift passes here")
        how = _dials(bar.dials, lift) if bar.dials is not None else []
        more = f"; {', '.join(how)}" if how else ""
        change = f"; {'changes: ' if bar.dials is not None else ''}{bar.said}" if bar.said else ""
        said.append(f"{', '.join(parts)}{more}{change}.")
    return said


def band_heard(lift: Lift, bands: Sequence[tuple[int, int]]) -> str:
    """Where the fault shows, in words; nothing where no band is drawn.

    >>> from kb.terms import DrillId, LiftId, PositionId, Standard, Timed
    >>> timeline = tuple(Timed(at, PositionId("p")) for at in ("start", "knee", "hip"))
    >>> lift = Lift(LiftId("x"), "X", timeline, (), DrillId("d"), Standard(1, 1, "it"))
    >>> band_heard(lift, [(1, 2)])
    'The fault shows from knee to hip.'
    """
    points = [human(point) for point in lift.points]
    where = [
        f"at {points[first]}" if first == last else f"from {points[first]} to {points[last]}" for first, last in bands
    ]
    return f"The fault shows {listed(where)}." if where else ""
