"""A class as it is handed in: who comes, what is in the hall, how long there is."""

from collections.abc import Mapping
from typing import NamedTuple

from kb.terms import DrillId, FaultId, ItemId, LiftId

__all__ = ["LONGER_WAIT_S", "MOST_WAIT_S", "NEW_AT_ONCE", "PLENTY", "WARM_UP_S", "Class", "Lifter"]

MOST_WAIT_S = 180
"""Nobody waits longer than this at a time, s, unless the class says otherwise. Common practice, no source."""

LONGER_WAIT_S = 300
"""As long as this, s, before anyone has to do without a bar, unless the class says how long. Ours."""

WARM_UP_S = 600
"""The common warm-up, s, unless the class says otherwise: about ten minutes. Common practice, no source."""

NEW_AT_ONCE = 2
"""New drills in one session, unless the class says otherwise (DESIGN, "Path": at most two new drills a session)."""

PLENTY = 10_000
"""What is there without being counted: enough for everyone."""


class Lifter(NamedTuple):
    """One who comes: with a fault (of a cause, or the commonest), or new, with the drills held so far.

    `weight_kg` is the day's weight, what the lift ends at; None ends it at a light bar. `where` says in which
    line of the file the lifter stands, for what has to be said about them; `without` what is left to others; `today`
    what they do in place of what the class does. Who is `light` stays with a light bar; who lifts `from_rack` takes a
    bar that isn't light from there, as they can't clean it. Who ends in a part of the lift goes `to` that, and does
    nothing that is caught deeper or splits; `said` is what else was said of them; `cleared` says that they are
    free of what it tells and cleared to lift.
    """

    name: str
    lift: LiftId
    fault: FaultId | None = None
    cause: str | None = None
    holds: frozenset[DrillId] = frozenset()
    weight_kg: float | None = None
    where: str = ""
    without: frozenset[ItemId] = frozenset()
    today: tuple[DrillId, ...] = ()
    light: bool = False
    from_rack: bool = False
    to: DrillId | None = None
    said: str = ""
    cleared: bool = False


class Class(NamedTuple):
    """Who comes and what there is. `have` counts each item, `PLENTY` where it isn't counted; times in s.

    `known` are drills that everyone has been shown before; `to` is the part of the lift that learners go to, None for
    the whole, and `new_at_once` how many drills each of them is shown; `today` instead what all of them have done by
    the end, in the order in which the coach names it, with lists that leave `spare_s` of the time free for others and
    that go on by so many drills `further` on the path, where that fits. `to_a_bar` is how many take turns at one bar at
    most where there aren't enough; where it is `sparing` they take as few bars as they can. Before anyone does without
    a bar they may wait `longer_s`, where it isn't said how long they may.
    `helpers` are grown-ups who don't lift; `turned` are those who come and must ask someone qualified first.
    """

    name: str
    lifters: tuple[Lifter, ...]
    have: Mapping[ItemId, int]
    minutes: int
    coaches: int
    warm_up_s: int = WARM_UP_S
    most_wait_s: int = MOST_WAIT_S
    bar_kg: float = 20.0
    known: frozenset[DrillId] = frozenset()
    to: DrillId | None = None
    new_at_once: int = NEW_AT_ONCE
    today: tuple[DrillId, ...] = ()
    spare_s: int = 0
    further: int = 0
    to_a_bar: int = 2
    sparing: bool = False
    helpers: int = 0
    longer_s: int = 0
    turned: tuple[Lifter, ...] = ()
