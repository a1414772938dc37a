"""A session: what to do from the first minute to the last, as records."""

from typing import Literal, NamedTuple

from kb.dials import Dials
from kb.kit import Gear
from kb.loading import Loaded
from kb.terms import Cause, Dose, Drill, DrillId, Fault, Lift, Load

__all__ = ["Block", "LeftOut", "Part", "Session"]

Part = Literal["warm-up", "chain", "lift", "finish"]


class Block(NamedTuple):
    """One drill of a session, from its change-over to its last repetition.

    `seconds` are the change-over, setting up, `loading_s` for the discs, `teach_s` for showing it to a class, and
    `dose`, which is the one to be done: `cut` when it is less than the entry's (a check is one round by nature, and
    is not cut). `if_not` is what to do when the standard isn't met, `if_early` when it is met before the dose is
    done. `loaded` is what goes on the bar, where that is known; with `unloaded_first` nothing does before one good
    try without it: the session has not had the drill unloaded, and no weight comes before its form met the standard.
    `gone` is what is seen besides the standard once the fault is gone.
    """

    start_s: int
    seconds: int
    part: Part
    drill: Drill
    load: Load
    dials: Dials
    work: bool
    dose: Dose
    cut: bool
    gear: tuple[Gear, ...]
    loaded: Loaded | None = None
    if_not: DrillId | None = None
    if_early: DrillId | None = None
    loading_s: int = 0
    teach_s: int = 0
    unloaded_first: bool = False
    gone: str = ""


class LeftOut(NamedTuple):
    """A drill that would have been of use and isn't done, and why."""

    drill: Drill
    why: str


class Session(NamedTuple):
    """What is done in so many minutes; `n` of `of` where what is asked takes several.

    The blocks follow each other without a gap; they and `spare_s` add up to the minutes. `value` is what the
    choice of doses, warm-up and finish is worth (kb/ask/session/worth.py); `optimal` that none is worth more, and no
    lawful chain better. `worked` and `worked_cause` are what is worked on: an earlier fault where the cause is that.
    """

    minutes: int
    lift: Lift
    blocks: tuple[Block, ...]
    left_out: tuple[LeftOut, ...]
    spare_s: int
    n: int
    of: int
    fault: Fault | None
    cause: Cause | None
    value: int
    optimal: bool
    worked: Fault | None = None
    worked_cause: Cause | None = None
