"""What is short when a class can't be planned: the least more of one thing that would do."""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.class_.build import Matter
from kb.ask.class_.people import Class
from kb.ask.class_.rotation import TICK_S, Rotation
from kb.dose import minutes

__all__ = ["Short", "longest", "sentence_of", "too_long", "with_more"]


class Short(NamedTuple):
    """So much more of one thing, alone, makes the class possible; proved, and less of it doesn't.

    `what` is an item, or `minutes`, `wait`, `coaches`; `by` counts `unit`.
    """

    what: str
    by: int
    unit: str


def longest(rotation: Rotation, u: int) -> int:
    """The least ticks from the warm-up to a unit's end, with nobody else in the hall: its tasks and its showings."""
    unit = rotation.units[u]
    tasks = sum(min(mode.length for mode in task.modes) for task in unit.tasks)
    shown = sum(showing.ticks for showing in rotation.showings if u in {each for each, _ in showing.needs})
    return tasks + shown


def too_long(matter: Matter) -> tuple[str, int] | None:
    """Who can't get through their own drills in the time there is, and the minutes these take more; None if all can.

    That is a proof, whatever is searched: nobody can do drills faster than one after the other.
    """
    rotation = matter.rotation
    over, u = max((longest(rotation, u) - rotation.last, -u) for u in range(len(rotation.units)))
    if over <= 0:
        return None
    return matter.owns[rotation.units[-u].lifters[0]].lifter.name, minutes(over * TICK_S)


def with_more(asked: Class, what: str, by: int) -> Class:
    """A class with so much more of one thing: `minutes`, `wait` (in ticks), `coaches`, or an item."""
    if what == "minutes":
        return asked._replace(minutes=asked.minutes + by)
    if what == "wait":
        return asked._replace(most_wait_s=(asked.most_wait_s // TICK_S + by) * TICK_S)
    if what == "coaches":
        return asked._replace(coaches=asked.coaches + by)
    return asked._replace(have={item: n + by * (item == what) for item, n in asked.have.items()})


def sentence_of(short: Sequence[Short]) -> str:
    """What would make the class possible, each alone, as one sentence's end."""
    words = [f"{each.by} more {each.unit}" for each in short]
    return f"{', '.join(words[:-1])} or {words[-1]}" if len(words) > 1 else "".join(words)
