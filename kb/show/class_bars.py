"""What a class's plan says of bars that go round near the end among those who have only had a stick."""

from collections import Counter
from collections.abc import Sequence

from kb.ask.class_.handing_on import hands_on
from kb.ask.class_.slot import Slot
from kb.ask.class_.slots import ClassPlan
from kb.kit import BARS
from kb.show.coach_words import human, listed
from kb.show.session_words import clock

__all__ = ["bar_line", "bars_said", "stay_said"]


def bars_said(plan: ClassPlan) -> list[str]:
    """Which bars go round from when to when, and what keeps it safe; nothing where none does."""
    turns = _turns(plan)
    if not turns:
        return []
    many = _at_once(turns)
    start, end = min(slot.start_s for _, slot in turns), max(slot.end_s for _, slot in turns)
    bar = next(human(item) for item in turns[0][1].gear if item in BARS)
    goes = f"{many} {bar}{'s' if many > 1 else ''} that nobody uses {'go' if many > 1 else 'goes'} round"
    theirs = [plan.lifters[n] for n in hands_on(plan.matter)]
    calls = listed([each.lifter.name for each in theirs if each.until_s <= start])
    return [
        f"{goes} from {clock(start)} to {clock(end)}, empty, among those who have only had a stick and have met the"
        f" drill's standard with it: one round each, a coach there, the others going on."
        f"{f' {calls} call{_s(calls)} the standard.' if calls else ''} For whom the bar is too heavy the stick stays."
    ]


def stay_said(plan: ClassPlan) -> str:
    """What the coach does there: whose turn it is, and at what."""
    of: dict[str, list[str]] = {}
    for name, slot in _turns(plan):
        of.setdefault(slot.drill.name, []).append(name)
    many = _at_once(_turns(plan))
    each = f", {many} at a time" if many > 1 else ""
    said = "; ".join(f"{listed(names)} ({drill})" for drill, names in of.items())
    return f"Stay with the bar{'s' if many > 1 else ''}, one round each in this order{each}: {said}."


def bar_line(slot: Slot) -> str:
    """A card's line."""
    return (
        f"At the bar, in your turn: {slot.drill.name}, one round, empty, if you have met its standard with the stick."
    )


def _turns(plan: ClassPlan) -> list[tuple[str, Slot]]:
    """Whose turn it is, in order."""
    found = [(each.lifter.name, each.at_bar) for each in plan.lifters if each.at_bar is not None]
    return sorted(found, key=lambda turn: (turn[1].start_s, turn[1].station))


def _s(names: str) -> str:
    return "" if " and " in names else "s"


def _at_once(turns: Sequence[tuple[str, Slot]]) -> int:
    """How many have a bar at the same time at most."""
    return max(Counter(slot.start_s for _, slot in turns).values())
