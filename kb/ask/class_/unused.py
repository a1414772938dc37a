"""Bars that stand by in a class, and what is missing for them to be used."""

from kb.ask.class_.own import Shelves, have_of
from kb.ask.class_.slots import ClassPlan
from kb.kit import BAR, fit
from kb.terms import ItemId, Load

__all__ = ["bars_need"]


def bars_need(plan: ClassPlan, shelves: Shelves) -> tuple[ItemId, ...]:
    """The items with any of which a lift could be done with the bars that now stand by; none where that isn't why.

    A bar that may not be put down hard, or has no discs, is left for a stick without a word: this is the word.
    """
    if not any(use.item == BAR and use.have and not use.peak for use in plan.gear):
        return ()
    asked = plan.matter.asked
    have, found = have_of(asked), set[ItemId]()
    for lift in dict.fromkeys(lifter.lift for lifter in asked.lifters):
        shelf = shelves(lift)
        drill = shelf.drills[shelf.lift.drill]
        now = fit(drill, have, shelf.items)
        if now is not None and now.load >= Load.LIGHT:
            continue
        for item in set(shelf.items) - have:
            fitted = fit(drill, have | {item}, shelf.items)
            if fitted is not None and fitted.load >= Load.LIGHT:
                found.add(item)
    return tuple(sorted(found))
