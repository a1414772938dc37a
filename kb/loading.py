"""How heavy a drill is for one lifter, what to put on the bar for it, and when more may go on.

`load_from` of an entry is a share of the lifter's best; a weight is rounded down to what the discs can make.
"""

from collections.abc import Collection, Mapping
from typing import NamedTuple

from kb.bests import SHARE_OF_REPS, Best
from kb.discs import KG_OF_LB, Iron, at_most
from kb.terms import Drill, Load

__all__ = ["IN_HAND", "LOADING_S", "Loaded", "Weighed", "load_of", "loaded", "may_load", "weighed"]

LOADING_S = 30
"""Putting discs on a bar, or changing them, beside the change-over, s. Common practice, no source."""

IN_HAND = "a load that leaves two good reps in hand"
"""What is said where no best is known: no kilograms are guessed."""


class Loaded(NamedTuple):
    """A bar as it stands loaded, in kilograms; `discs_kg` are of ONE side, largest (innermost) first."""

    kg: float
    bar_kg: float
    discs_kg: tuple[float, ...]
    collars_kg: float = 0.0


class Weighed(NamedTuple):
    """What a drill weighs for a lifter: its range as it can be loaded, or None and why.

    `least` is what it begins at, `most` what it goes no further than. `wanted` are the same two before they
    were rounded down, in kg.
    """

    least: Loaded | None
    most: Loaded | None
    why: str
    best: Best | None = None
    wanted: tuple[float, float] | None = None


def loaded(discs: tuple[float, ...], iron: Iron) -> Loaded:
    """A bar with discs on each side, in kilograms whatever the discs' unit."""
    unit = KG_OF_LB if iron.unit == "lb" else 1.0
    whole = iron.least + 2 * sum(discs)
    return Loaded(
        round(whole * unit, 3),
        round(iron.bar * unit, 3),
        tuple(round(disc * unit, 3) for disc in discs),
        round(2 * iron.collar * unit, 3),
    )


def _range(drill: Drill, bests: Mapping[str, Best]) -> tuple[float, float, Best] | None:
    """The least and the most a drill should weigh, kg, and the best that says so; None if none does."""
    share, own = drill.load_from, _two_in_hand(drill, bests)
    of_lift = bests.get(share.lift) if share else None
    if share is not None and of_lift is not None:
        least, most = (of_lift.kg * percent / 100 for percent in share.percent)
        if own is not None and own < most:
            return min(least, own), own, bests[drill.id]
        return least, most, of_lift
    if own is None:
        return None
    least, most = share.percent if share else (1, 1)
    return own * least / most, own, bests[drill.id]


def _two_in_hand(drill: Drill, bests: Mapping[str, Best]) -> float | None:
    """What leaves two good repetitions in hand by the best of the drill itself, kg; None where that isn't known."""
    percent = SHARE_OF_REPS.get(drill.dose.reps + 2)
    if drill.id not in bests or percent is None or not drill.dose.reps or drill.load[1] < Load.WORKING:
        return None
    return bests[drill.id].kg * percent / 100


def weighed(drill: Drill, bests: Mapping[str, Best], iron: Iron) -> Weighed:
    """What a drill weighs for a lifter of some bests (by id of a lift or drill), as this iron can make it.

    Weights are rounded down. Where the least is lighter than the bar but the most isn't, it begins with the bar.
    """
    if drill.load[1] < Load.LIGHT:
        return Weighed(None, None, "done without a weight, so nothing goes on a bar")
    if "bar" not in drill.equipment:
        return Weighed(None, None, IN_HAND)
    said = _range(drill, bests)
    if said is None:
        return Weighed(None, None, IN_HAND)
    least, most, best = said
    unit = KG_OF_LB if iron.unit == "lb" else 1.0
    top = at_most(most / unit, iron)
    if top is None:
        empty = loaded((), iron).kg
        why = f"the bar alone, {empty:g} kg, is more than the {most:.1f} kg that suit: take a lighter bar, or a stick"
        return Weighed(None, None, why, best, (least, most))
    bottom = at_most(least / unit, iron) or ()
    return Weighed(loaded(bottom, iron), loaded(top, iron), "", best, (least, most))


def load_of(drill: Drill, bests: Mapping[str, Best], iron: Iron, *, at: Load = Load.LIGHT) -> Loaded | None:
    """What is on the bar for a drill: at light the least of its range, at working the most.

    None when it is done without a weight, when no best says how heavy (`IN_HAND`), or when the bar alone is
    too heavy, or no bar is used; `weighed` says which.
    """
    if at < Load.LIGHT:
        return None
    found = weighed(drill, bests, iron)
    return found.most if at is Load.WORKING else found.least


def may_load(drill: Drill, at: Load, met: Collection[Load]) -> bool:
    """Whether a drill may be done at a load, where its standard was `met` at these loads before.

    A load never rises before the unloaded form met its standard: a weight comes after empty hands or a
    stick, a working weight after a light one. A drill with no lighter form may be begun at its least.
    """
    least, most = drill.load
    if not least <= at <= most:
        return False
    before = Load.LIGHT if at is Load.WORKING else Load.NONE
    return at <= max(least, Load.STICK) or any(rung >= before for rung in met)
