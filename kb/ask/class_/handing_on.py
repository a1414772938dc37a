"""Who hands their bar on: they practise what they hold and have ended, and others have learnt with a stick."""

from kb.ask.class_.build import Matter
from kb.ask.class_.doing import Own
from kb.terms import ItemId

__all__ = ["BARS", "hands_on"]

BARS = (ItemId("bar"), ItemId("training-bar"))


def hands_on(matter: Matter) -> dict[int, ItemId]:
    """Lifters, by number, who hand a bar on once they have ended, and which; none where all who learn have one.

    Only in a class with a `today`: the others then know what they do with it. Who has a day's weight keeps theirs.
    """
    learners = [own for own in matter.owns if own.today and not own.by_themselves]
    if not learners or any(_has(own) for own in learners):
        return {}
    return {
        n: _has(own)[0]
        for n, own in enumerate(matter.owns)
        if own.by_themselves and own.lifter.weight_kg is None and _has(own)
    }


def _has(own: Own) -> list[ItemId]:
    """The bars that a list is done with."""
    using = {gear.using for doing in own.doings for gear in doing.gear}
    return [item for item in BARS if item in using]
