"""What one lift's questions are answered from: its drills, the equipment, and the prepared steps."""

from array import array
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from kb.dials import Dials
from kb.terms import Drill, DrillId, Fault, FaultId, Item, ItemId, Lift

__all__ = ["ProfileKey", "Shelf", "Steps", "profile_key"]

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
    """A lift, every drill that serves it or a part of it, its faults, all equipment, the kits, the steps."""

    lift: Lift
    drills: Mapping[DrillId, Drill]
    faults: Mapping[FaultId, Fault]
    items: Mapping[ItemId, Item]
    kits: Mapping[str, frozenset[ItemId]]
    steps: Steps


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
