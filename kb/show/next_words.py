"""Why a drill is ready, or shaky, in a sentence: for a coach, and in the answer for programs."""

from collections.abc import Mapping, Sequence

from kb.ask.ability.fringe import Ready, Shaky
from kb.show.coach_words import listed
from kb.terms import Drill, DrillId, Lift, LiftId

__all__ = ["counted", "named", "ready_why", "shaky_why"]

NAMED = 3
"""Drills named one by one; more are counted."""

Drills = Mapping[DrillId, Drill]


def named(ids: Sequence[DrillId], drills: Drills) -> str:
    """Drills by their names, the first few; names may hold commas, so semicolons part them."""
    names = [drills[each].name for each in ids]
    if len(names) <= NAMED:
        return "; ".join(names)
    return f"{'; '.join(names[: NAMED - 1])}; {len(names) - NAMED + 1} more"


def counted(count: int, word: str) -> str:
    """A number of things.

    >>> counted(1, "drill"), counted(3, "drill")
    ('1 drill', '3 drills')
    """
    return f"{count} {word}{'' if count == 1 else 's'}"


def ready_why(ready: Ready, drills: Drills, lifts: Mapping[LiftId, Lift]) -> str:
    """What a ready drill brings, and what of it is held already."""
    said = []
    if ready.must:
        said.append(f"Every way to {_lifts(ready.must, lifts)} leads through it.")
    elif ready.may:
        said.append(f"One way to {_lifts(ready.may, lifts)} leads through it.")
    if ready.waiting:
        said.append(f"{counted(ready.waiting, 'drill')} can't be had without it.")
    if ready.opens:
        said.append(f"It opens at once: {named(ready.opens, drills)}.")
    if not said:
        said.append("No other drill waits for it.")
    said.append(f"Held before it: {named(ready.met, drills)}." if ready.met else "It needs nothing before it.")
    return " ".join(said)


def _lifts(ids: Sequence[LiftId], lifts: Mapping[LiftId, Lift]) -> str:
    """Lifts by their names, those of parts last: their names hold an `and` of their own."""
    return listed([f"the {lifts[each].name.lower()}" for each in sorted(ids, key=lambda each: len(lifts[each].parts))])


def shaky_why(shaky: Shaky, drills: Drills) -> str:
    """Why a held drill is worth another look."""
    if not shaky.opens:
        return "Nothing that is held is built on it."
    return f"Nothing that is held is built on it yet. What would be: {named(shaky.opens, drills)}."
