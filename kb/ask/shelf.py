"""What one lift's questions are answered from: its drills, the equipment, and the prepared steps."""

from array import array
from collections.abc import Callable, Mapping, Sequence
from functools import lru_cache
from typing import NamedTuple

from kb.dials import Dials, dials_of
from kb.errors import BadInput
from kb.kit import Fit, fit
from kb.terms import Drill, DrillId, Fault, FaultId, Item, ItemId, Lift, Stage

__all__ = ["ProfileKey", "Shelf", "Steps", "ending_in", "profile_key", "shelf_of", "with_drills"]

KITS_KEPT = 64
"""Kits of which a shelf remembers what can be done with them: more than a library names, and no more than a few."""

ProfileKey = tuple[int, int, int, int, int, int, int, int]
"""Dials as plain integers: stage, first, last, left_out, speed, load, catch, helped."""


class Steps(NamedTuple):
    """Step sizes between dial profiles of one lift, prepared with the catalogue.

    `number` maps a profile to its row; `sizes[a][b]` is the step from a to b, `least[a][b]` the least
    sum of steps over any way from a to b.
    """

    number: Mapping[ProfileKey, int]
    sizes: Sequence["array[int]"]
    least: Sequence["array[int]"]


class Shelf(NamedTuple):
    """A lift, every drill that serves it or a part of it, its faults, all equipment, the kits, the steps.

    `dials` are the drills' own on the lift's timeline. `fits` tells of each drill that can be done with what there is
    how it can; what it found for the last kits is kept.
    """

    lift: Lift
    drills: Mapping[DrillId, Drill]
    faults: Mapping[FaultId, Fault]
    items: Mapping[ItemId, Item]
    kits: Mapping[str, frozenset[ItemId]]
    steps: Steps
    dials: Mapping[DrillId, Dials]
    fits: Callable[[frozenset[ItemId]], Mapping[DrillId, Fit]]


def shelf_of(
    lift: Lift,
    drills: Mapping[DrillId, Drill],
    faults: Mapping[FaultId, Fault],
    items: Mapping[ItemId, Item],
    kits: Mapping[str, frozenset[ItemId]],
    steps: Steps,
) -> Shelf:
    """A lift's shelf; `drills` are those that serve it."""

    @lru_cache(maxsize=KITS_KEPT)
    def fits(have: frozenset[ItemId]) -> Mapping[DrillId, Fit]:
        found = ((drill.id, fit(drill, have, items)) for drill in drills.values())
        return {drill_id: fitted for drill_id, fitted in found if fitted is not None}

    dials = {drill.id: dials_of(drill, lift) for drill in drills.values()}
    return Shelf(lift, drills, faults, items, kits, steps, dials, fits)


def with_drills(shelf: Shelf, drills: Mapping[DrillId, Drill]) -> Shelf:
    """The same shelf with these drills; their steps must be among those it holds."""
    return shelf_of(shelf.lift, drills, shelf.faults, shelf.items, shelf.kits, shelf.steps)


def ending_in(shelf: Shelf, drill_id: DrillId) -> Shelf:
    """The same shelf with a part of its lift as the lift: what ends in that drill is learnt when its standard is met.

    Raises BadInput for a drill that isn't of the lift, or is none that a path could end in.
    """
    drill = shelf.drills.get(drill_id)
    name = shelf.lift.name.lower()
    if drill is None:
        raise BadInput(f"{drill_id} is not a drill of the {name}")
    if drill.stage in (Stage.PREPARE, Stage.FINISH):
        raise BadInput(f"{drill.name} prepares or strengthens: a path ends in a part of the {name} or in the whole")
    return shelf._replace(lift=shelf.lift._replace(drill=drill.id, name=drill.name, standard=drill.standard))


def profile_key(dials: Dials) -> ProfileKey:
    """Dials as the plain integers that number them."""
    return (
        int(dials.stage),
        dials.first,
        dials.last,
        dials.left_out,
        int(dials.speed),
        int(dials.load),
        int(dials.catch),
        int(dials.helped),
    )
