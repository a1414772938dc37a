"""A class that has no plan: how to share what there is to hold, by hand, and which drills to do so."""

from collections import Counter

from kb.ask.class_.people import PLENTY, Class
from kb.show.coach_words import listed
from kb.show.setting import Setting, wrapped
from kb.terms import ItemId

__all__ = ["shared_text"]

HELD = (ItemId("bar"), ItemId("training-bar"), ItemId("stick"), ItemId("broom"))
"""What a lifter holds one of."""


ORDER = (
    " Whoever lifts least goes first and the bar only goes up, back down once between rounds; the one before loads, the"
    " one after checks the collars. Who has a rack or a stick free squats or holds meanwhile, so that nobody gets cold."
)
"""How several share one bar of different weights. Common practice, no source."""


def shared_text(asked: Class, setting: Setting) -> list[str]:
    """Groups around each thing that is held, what the others do meanwhile, and the command for the drills.

    Nothing where there is enough for all, or nothing at all, to hold.
    """
    counts = {item: asked.have.get(item, 0) for item in HELD}
    things, lifters = sum(counts.values()), len(asked.lifters)
    if not 0 < things < lifters or things >= PLENTY:
        return []
    size = -(-lifters // things)
    left = asked.minutes - asked.warm_up_s // 60
    each = left // size
    there = listed([f"{count} {item}{'s' if count > 1 else ''}" for item, count in counts.items() if count])
    said = (
        f"By hand it can be done all the same: {there} for {lifters} lifters, so groups of {size}, one thing to each."
        " One lifts; the next watches for the standard and says whether it was met; the others do the same movement"
        " with empty hands. Change after every round, the one with the empty hands next."
        f"{ORDER if size > 2 else ''}"
        f" Of the {left} min after the warm-up each then lifts for about {each} min: as many drills as that holds."
    )
    lines = wrapped(said, setting.width)
    wanted = Counter((each.fault, each.lift, each.cause) for each in asked.lifters if each.fault)
    for (fault, lift, cause), count in wanted.most_common(2):
        named = f" --cause {cause}" if cause else ""
        lines += [f"  for {count}:  drillpath chain {fault} --lift {lift}{named} --kit stick"]
    learnt = dict.fromkeys(each.lift for each in asked.lifters if each.fault is None)
    return [*lines, *(f"  who learns:  drillpath path {lift} --kit stick" for lift in learnt)]
