"""A question for a chain, and how it is understood."""

from typing import NamedTuple

from kb.terms import DrillId, FaultId, ItemId, Load

__all__ = ["MOST_ENTRIES", "MOST_WORK", "ChainQuestion"]

MOST_ENTRIES = 8
"""Entries of a chain unless asked otherwise, preparation counted."""

MOST_WORK = 4
"""Entries done at their full dose, the lift's own drill aside."""


class ChainQuestion(NamedTuple):
    """What is asked: a fault, why it happens, and what there is to work with.

    `cause` None means the commonest; `load` None the least that shows the fault, at least light;
    `seconds` None no limit of time. Where joints were found `stiff` only what opens one of them is there to open. A
    drill that can be done at the `least` load isn't done at less: for a fault that shows only under one.
    """

    fault: FaultId
    have: frozenset[ItemId]
    cause: str | None = None
    load: Load | None = None
    seconds: int | None = None
    holds: frozenset[DrillId] = frozenset()
    at_most: int = MOST_ENTRIES
    routes: int = 1
    stiff: frozenset[str] = frozenset()
    least: Load = Load.NONE
