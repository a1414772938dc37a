"""What is ruled out, and the drills that this bars: noise, or a place where the bar or the lifter can't be."""

import re
from collections.abc import Mapping
from functools import lru_cache
from typing import NamedTuple

from kb.ask.shelf import KITS_KEPT, Shelf
from kb.dials import reach_on
from kb.errors import BadInput
from kb.kit import BAR, Fit, fit
from kb.terms import Catch, Drill, DrillId, Item, ItemId, Lift, LiftId, Load, Position, PositionId, Speed, Stage

__all__ = ["NOTHING_RULED", "WITHOUT", "Ruled", "fit_ruled", "quiet_part", "quiet_shelf", "shelf_without", "why_barred"]

WITHOUT: Mapping[str, str] = {
    "behind-neck": "the bar lies behind the neck",
    "front-rack": "the bar lies on the front of the shoulders",
    "full-squat": "it goes into the full squat",
    "split": "it is done in the split",
    "overhead": "a bar, a stick or the arms go overhead",
}
"""What can be done without, and what a drill then has that bars it. A low ceiling is a room without `headroom`."""

BANGS = "the feet leave the floor and come down"
DROP_FLOOR, HEADROOM, RACK = ItemId("drop-floor"), ItemId("headroom"), ItemId("rack")
MOST_PARTS = 3
"""Quiet parts of a lift named at most. Ours."""

SQUATTED = frozenset(map(LiftId, ("snatch", "clean", "clean-and-jerk")))
"""The lifts of which a full catch is the full squat; of the jerk it is the split."""

_BEHIND = re.compile(
    r"behind the neck|back of the shoulders|on to the muscle|across the top of your back|at the back of the neck"
    r"|across the shoulders",
    re.IGNORECASE,
)
_RACKED = re.compile(
    r"\bracked\b|\bon (?:the|your) shoulders\b|\bfront of (?:the|your) shoulders\b|\bfront (?:rack|squat)\b",
    re.IGNORECASE,
)
_SPLIT = re.compile(r"\bsplit\b", re.IGNORECASE)
"""How the text of a drill that covers no stretch of its lift says what its target position doesn't."""


class Ruled(NamedTuple):
    """What is ruled out: noise (`quiet`), and places of `WITHOUT`.

    For these the drills must come with their text: only *Set up* and *Do* say that a bar comes from behind the neck.
    """

    quiet: bool = False
    without: frozenset[str] = frozenset()
    positions: Mapping[PositionId, Position] = {}


NOTHING_RULED = Ruled()
"""Everything goes."""


def why_barred(drill: Drill, ruled: Ruled, lifts: Mapping[LiftId, Lift]) -> tuple[str, ...]:
    """Why a drill is ruled out, each reason in words; nothing if it isn't."""
    found = [BANGS] if ruled.quiet and drill.feet == "land" else []
    if ruled.without:
        has = _places(drill, ruled.positions, lifts)
        found += [said for word, said in WITHOUT.items() if word in ruled.without and word in has]
    return tuple(found)


def fit_ruled(drill: Drill, have: frozenset[ItemId], items: Mapping[ItemId, Item], ruled: Ruled) -> Fit | None:
    """How a drill that isn't barred can be done with what is there.

    Quiet, nothing may be let fall, even on a floor made for it, and only a rack takes back what is heavier than a
    hand lowers: without one, no more than light. Common practice, no source.
    """
    if not ruled.quiet:
        return fit(drill, have, items)
    fitted = fit(drill, have - {DROP_FLOOR}, items)
    if fitted is None or BAR not in drill.equipment or RACK in drill.equipment:
        return fitted
    most = min(fitted.load, Load.LIGHT)
    return fitted._replace(load=most) if drill.load[0] <= most else None


def quiet_shelf(shelf: Shelf) -> Shelf:
    """The same shelf, of which only what is quiet can be done.

    Raises BadInput where what it ends in isn't quiet, with quiet parts of the lift to end in instead.
    """
    ruled = Ruled(quiet=True)
    goal = shelf.drills[shelf.lift.drill]
    if why_barred(goal, ruled, {}):
        name = shelf.lift.name.lower()
        raise BadInput(f"the {name} isn't quiet: {BANGS}. With --to it can end in what is", nearest=_quiet_parts(shelf))

    @lru_cache(maxsize=KITS_KEPT)
    def fits(have: frozenset[ItemId]) -> Mapping[DrillId, Fit]:
        allowed = (drill for drill in shelf.drills.values() if not why_barred(drill, ruled, {}))
        found = ((drill.id, fit_ruled(drill, have, shelf.items, ruled)) for drill in allowed)
        return {drill_id: fitted for drill_id, fitted in found if fitted is not None}

    return shelf._replace(fits=fits)


def shelf_without(shelf: Shelf, left_out: frozenset[DrillId]) -> Shelf:
    """The same shelf, of which some drills can't be done, whatever there is.

    Raises BadInput where one of them is what it ends in, with parts of the lift to end in instead.
    """
    goal = shelf.lift.drill
    if goal in left_out:
        raise BadInput(
            f"what the chain ends in, {goal}, can't be left out. With --to it can end in a part",
            nearest=_parts(shelf, left_out),
        )

    @lru_cache(maxsize=KITS_KEPT)
    def fits(have: frozenset[ItemId]) -> Mapping[DrillId, Fit]:
        return {drill: fitted for drill, fitted in shelf.fits(have).items() if drill not in left_out}

    return shelf._replace(fits=fits) if left_out else shelf


def quiet_part(shelf: Shelf) -> DrillId | None:
    """The most of a lift that is quiet, to end in where the lift itself isn't; None where it is, or nothing is."""
    if not why_barred(shelf.drills[shelf.lift.drill], Ruled(quiet=True), {}):
        return None
    return next(iter(_quiet_parts(shelf)), None)


def _quiet_parts(shelf: Shelf) -> tuple[DrillId, ...]:
    """What is caught at the lift's own speed with feet that stay down: most of the lift first."""
    return _parts(shelf, frozenset(each.id for each in shelf.drills.values() if each.feet == "land"))


def _parts(shelf: Shelf, left_out: frozenset[DrillId]) -> tuple[DrillId, ...]:
    """Parts of a lift that a chain can end in, but for some: most of the lift first."""
    found = [
        drill
        for drill in shelf.drills.values()
        if drill.id not in left_out and drill.speed is Speed.FULL and drill.catch >= Catch.STANDING
        if Stage.SEGMENT <= drill.stage <= Stage.JOIN and drill.load[1] >= Load.LIGHT
        if all(first != "receive" for first, _ in drill.reach.values())  # a squat is no part to end in
    ]
    found.sort(key=lambda drill: (-drill.stage, -drill.catch, drill.id))
    return tuple(drill.id for drill in found[:MOST_PARTS])


def _places(drill: Drill, positions: Mapping[PositionId, Position], lifts: Mapping[LiftId, Lift]) -> set[str]:
    """Which of `WITHOUT` a drill has.

    A drill without a reach is for a position that it needn't be in: what its text says counts there.
    """
    found = set()
    where = _positions(drill, lifts)
    bars = {positions[each].bar for each in where if each in positions}
    held = drill.stage is not Stage.PREPARE and drill.load[1] > Load.NONE
    said = " ".join((drill.name, drill.sections.get("Set up", ""), drill.sections.get("Do", "")))
    if "neck" in bars or (held and _BEHIND.search(said)):
        found.add("behind-neck")
    squats_behind = "behind-neck" in found and drill.stage is not Stage.JOIN
    if held and "shoulders" in bars and not squats_behind and (drill.reach or _RACKED.search(said)):
        found.add("front-rack")
    if drill.catch is Catch.FULL and SQUATTED & set(drill.lifts):
        found.add("full-squat")
    if any("split" in each.split("-") for each in where) and (drill.reach or _SPLIT.search(said)):
        found.add("split")
    if HEADROOM in drill.equipment or (drill.reach and "overhead" in bars):
        found.add("overhead")
    return found


def _positions(drill: Drill, lifts: Mapping[LiftId, Lift]) -> set[PositionId]:
    """The positions that a drill aims at or passes through."""
    found = set(drill.target_position.values())
    for lift_id in drill.lifts:
        lift = lifts.get(lift_id)
        reach = reach_on(drill, lift) if lift else None
        if lift is not None and reach is not None:
            points = lift.points
            between = points[points.index(reach[0]) : points.index(reach[1]) + 1]
            found |= {timed.position for timed in lift.timeline if timed.at in between}
            found -= {timed.position for timed in lift.timeline if timed.at in drill.leaves_out}
    return found
