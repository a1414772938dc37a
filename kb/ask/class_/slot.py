"""What a plan is told in: a stretch of a lifter's class, a lifter's class, what a coach does, how much gear is out."""

from typing import Literal, NamedTuple

from kb.ask.class_.going_on import More
from kb.ask.class_.people import Lifter
from kb.terms import Drill, ItemId, Load

__all__ = ["Duty", "GearUse", "LifterPlan", "Part", "Slot"]

Part = Literal["shown", "work", "check", "loading", "helps", "up"]


class Slot(NamedTuple):
    """A stretch of a lifter's class, s from its start. `gear` is empty for all but the first at one set.

    `shares` names all who share it, in the order of their turns; `watched` says that a coach stands by at the first
    try, `light` that a stick serves for a bar, `racked` that a rack is used. `with_whom` is who is helped, or helps.
    Who works up to a weight does so many `rounds`, one `every_s`.
    """

    start_s: int
    end_s: int
    drill: Drill
    load: Load
    part: Part
    station: str
    gear: tuple[ItemId, ...] = ()
    shares: tuple[str, ...] = ()
    with_whom: str | None = None
    watched: bool = False
    light: bool = False
    racked: bool = False
    rounds: int = 0
    every_s: int = 0


class LifterPlan(NamedTuple):
    """A lifter's class; `group` counts from 0; `waits_s` is the longest wait, `idle_s` all of them.

    `more` is None for who works till near the end, or has nothing to go on with, and `then` what comes after it where
    its gear is needed elsewhere, or a bar is free; `strength` is what strengthens in
    between, after the day's weight. `at_bar` is one round at a bar that goes round near the end, while `more` goes on.
    """

    lifter: Lifter
    group: int
    slots: tuple[Slot, ...]
    idle_s: int
    waits_s: int
    later: int
    more: More | None = None
    then: tuple[More, ...] = ()
    strength: tuple[Slot, ...] = ()
    at_bar: Slot | None = None

    @property
    def done_s(self) -> int:
        """When their list has ended, and what strengthens after it, s."""
        return (*self.slots, *self.strength)[-1].end_s

    @property
    def goes_on(self) -> tuple[More, ...]:
        """All that there is more for them, in order."""
        return (self.more, *self.then) if self.more else ()

    @property
    def until_s(self) -> int:
        """When they have nothing to do any more, s."""
        return self.goes_on[-1].end_s if self.more else self.done_s


class Duty(NamedTuple):
    """What a coach (from 0) does: shows a drill, stands by at a first try, looks on at who works up, stays with bars.

    These bars go round, and `drill` is the first of those that are done.
    """

    coach: int
    start_s: int
    end_s: int
    does: Literal["show", "watch", "up", "stay"]
    drill: Drill
    who: tuple[str, ...]


class GearUse(NamedTuple):
    """A counted thing: how many there are, and the most that are out at once."""

    item: ItemId
    have: int
    peak: int
