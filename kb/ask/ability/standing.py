"""What a lifter holds with what they are said to hold: all that it is built on, of one lift's drills."""

from collections.abc import Collection

from kb.ask.ability.fringe import closed
from kb.ask.shelf import Shelf
from kb.terms import DrillId

__all__ = ["standing"]


def standing(shelf: Shelf, holds: Collection[DrillId]) -> frozenset[DrillId]:
    """The drills that are named and what they are built on, down to the ground; others' drills stay as they are.

    Who holds a power snatch from the hang isn't taught to stand with a stick overhead first. Of a group of which
    none is named the first member is taken for held, as in `closed`.
    """
    groups = {each: drill.groups for each, drill in shelf.drills.items()}
    beyond = {member for named in groups.values() for group in named for member in group} - groups.keys()
    here = shelf.drills.keys() & set(holds)
    return closed({**groups, **dict.fromkeys(beyond, ())}, here).held | frozenset(holds)
