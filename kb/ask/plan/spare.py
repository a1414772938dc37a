"""What to do with minutes that a session has left."""

from collections.abc import Sequence

from kb.ask.plan.fill import Slot
from kb.ask.plan.forms import Form
from kb.terms import Load

__all__ = ["gone_over", "once_more"]

MOST_MORE = 3
"""Drills done once more at most: a fourth time round nobody looks."""


def once_more(slots: Sequence[Slot], spare: int) -> tuple[Form, ...]:
    """The session's drills worth a full dose more in the `spare` minutes: the new first, then the nearest to the lift.

    Nothing after working weight, no stretch, and of what is held only what puts most together. No day counts twice,
    so this is no further exposure.
    """
    if any(slot.form.load is Load.WORKING for slot in slots):
        return ()
    found: list[Form] = []
    for slot in sorted(slots, key=lambda slot: (slot.kind != "new", -slot.form.n)):
        form = slot.form
        if slot.kind == "keep" and not form.whole:
            continue
        if form.prepares or form.work > spare or len(found) == MOST_MORE:
            continue
        found.append(form)
        spare -= form.work
    return tuple(found)


def gone_over(known: Sequence[Form], spare: int) -> tuple[Form, ...]:
    """What is known and can be done at home, for a session there in which nothing is due: the nearest to the lift."""
    found: list[Form] = []
    for form in reversed(known):
        if form.at_home and not form.prepares and form.load is not Load.WORKING and form.work <= spare:
            found.append(form)
            spare -= form.work
        if len(found) == MOST_MORE:
            break
    return tuple(found)
