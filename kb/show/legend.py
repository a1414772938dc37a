"""What a chart's characters mean, said only for those that it uses and that tell its bars apart."""

from collections.abc import Iterator, Sequence

from kb.show.bars import Bar
from kb.show.glyphs import glyphs_of, weight
from kb.show.setting import Setting, packed
from kb.terms import Catch, Load, Speed

__all__ = ["CATCHES", "LOADS", "SPEEDS", "legend"]

SPEEDS = {Speed.HELD: "held", Speed.SLOW: "slow", Speed.PAUSED: "with a pause"}
LOADS = {Load.NONE: "empty-handed", Load.STICK: "stick", Load.LIGHT: "light", Load.WORKING: "working weight"}
CATCHES = {Catch.STANDING: "caught standing", Catch.POWER: "caught high", Catch.FULL: "full depth"}


def legend(bars: Sequence[Bar], setting: Setting) -> list[str]:
    """The lines of a legend; none where nothing needs saying."""
    lines = packed(list(_said(bars, setting)), setting.width - 4)
    return ["", *(f"    {line}" for line in lines)] if lines else []


def _said(bars: Sequence[Bar], setting: Setting) -> Iterator[str]:
    glyphs = glyphs_of(fine=setting.fine)
    drawn = [(bar, bar.dials) for bar in bars if bar.dials is not None]
    for speed, word in SPEEDS.items():
        weights = {weight(dials.load, work=bar.work) for bar, dials in drawn if dials.speed is speed}
        if weights:
            yield f"{(glyphs.lines[speed][min(weights)] * 4)[:4].strip()} {word}"
    heavy: dict[int, list[str]] = {}
    for load in sorted({dials.load for bar, dials in drawn if bar.work}):
        heavy.setdefault(weight(load, work=True), []).append(LOADS[load])
    if len(heavy) > 1:
        for each, loads in heavy.items():
            yield f"{glyphs.lines[Speed.FULL][each] * 3} {' or '.join(loads)}"
    catches = {dials.catch for _, dials in drawn}
    if len(catches) > 1:
        for catch in sorted(catches & set(CATCHES)):
            yield f"{glyphs.ends[catch]} {CATCHES[catch]}"
    if any(dials.helped for _, dials in drawn):
        yield f"{glyphs.helped} helped"
    if any(dials.left_out for _, dials in drawn):
        yield "a gap: left out"
    if any(not bar.work for bar in bars):
        yield "(1 min) a check: one round"
    if any(bar.gateway for bar in bars):
        yield f"{glyphs.gateway} every way to the lift passes here"
