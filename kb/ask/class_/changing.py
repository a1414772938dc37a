"""Who goes on for long changes the drill: the last of their list by turns, with the gear that they have anyway."""

from collections.abc import Iterator
from typing import NamedTuple

from kb.ask.class_.build import Matter
from kb.ask.class_.doing import PARTNER, Doing, counted
from kb.ask.class_.more import Again, most_of
from kb.ask.class_.rotation import TICK_S, Mode, Plan
from kb.kit import Gear
from kb.terms import DrillId, Load, Stage

__all__ = ["CHANGE_S", "Other", "legs", "others_of"]

LONG_S = 480
"""Longer than this, s, nobody goes on with one drill. Ours."""

CHANGE_S = 240
"""How long each is done at a time, s. Ours."""

MOST_BY_TURNS = 3
"""Drills that are gone round at most. Ours."""


class Other(NamedTuple):
    """A drill that is done by turns with the one that is gone on with, and how heavy."""

    doing: Doing
    load: Load


def others_of(matter: Matter, plan: Plan, again: Again) -> tuple[Other, ...]:
    """What else is done by turns where it is long: what is for today, then the last of the list; or nothing.

    Each with no more than what is taken for the first anyway, so that nothing more is out.
    """
    unit = matter.rotation.units[again.unit]
    if (again.end - again.start) * TICK_S <= LONG_S:
        return ()
    joined = [most_of(matter, plan, n) for n in again.form.lifters if n not in unit.lifters]
    have, found = {item for item, _ in again.form.items}, dict[DrillId, Other]()
    held = all(matter.owns[n].by_themselves for n in again.form.lifters)
    doings = matter.doings[again.unit]
    today = {drill for n in again.form.lifters for drill in matter.owns[n].today}
    for k in sorted(range(len(unit.tasks)), key=lambda k: (doings[k].drill.id not in today, -k)):
        doing = doings[k]
        drill = doing.drill
        skip = drill.stage is Stage.PREPARE or PARTNER in drill.equipment or drill.id == again.doing.drill.id
        if skip or drill.id in found or len(found) == MOST_BY_TURNS - 1:
            continue
        mode = plan.mode(matter.rotation, again.unit, k)
        for load, gear in (*_ways(doing, mode), *_at_bar(doing, held=held)):
            shared = all(drill.id in most and most[drill.id] >= load for most in joined)
            if shared and have.issuperset(counted(gear, matter.asked.have)):
                found[drill.id] = Other(doing, load)
                break
    return tuple(found.values())


def _ways(doing: Doing, mode: Mode) -> Iterator[tuple[Load, tuple[Gear, ...]]]:
    """As it was done in the plan, never heavier than light; and with a stick."""
    if mode.light and doing.light_gear is not None:
        yield Load.STICK, doing.light_gear
        return
    yield min(doing.load, Load.LIGHT), doing.gear_in(mode)
    if doing.training_gear is not None:
        yield Load.LIGHT, doing.training_gear
    if doing.by_stick is not None:
        yield Load.STICK, doing.by_stick


def _at_bar(doing: Doing, *, held: bool) -> Iterator[tuple[Load, tuple[Gear, ...]]]:
    """At the bar that they have, for who practises what they hold, though it was checked with a stick."""
    for gear in doing.by_bar if held else ():
        yield Load.LIGHT, gear


def legs(start_s: int, end_s: int, count: int) -> Iterator[tuple[int, int, int]]:
    """From when to when, s, which of so many drills is done; the last leg is the longer for what is left.

    >>> list(legs(0, 700, 2)), list(legs(0, 700, 1))
    ([(0, 240, 0), (240, 700, 1)], [(0, 700, 0)])
    """
    whole = max((end_s - start_s) // CHANGE_S, 1) if count > 1 else 1
    for n in range(whole):
        end = end_s if n == whole - 1 else start_s + (n + 1) * CHANGE_S
        yield start_s + n * CHANGE_S, end, n % count
