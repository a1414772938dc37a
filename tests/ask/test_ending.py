"""A chain that ends in a part of its lift holds nothing beyond that part: common practice, no source.

A power snatch and a power clean are caught with the thighs above level, a jerk without a split with both feet level
(International Weightlifting Federation, Technical and Competition Rules 2020, 2.1 and 2.3: either ends as a good lift).
"""

import pytest

from kb.ask.chain import NoChain, chain
from kb.ask.ending import within_ending
from kb.ask.question import ChainQuestion
from kb.ask.shelf import Shelf, ending_in
from kb.terms import Catch, DrillId, LiftId, Stage

ENDINGS = [("snatch", "power-snatch"), ("clean", "power-clean"), ("clean", "hang-power-clean"), ("jerk", "power-jerk")]


@pytest.mark.parametrize(("lift", "to"), ENDINGS)
def test_no_drill_is_caught_deeper_or_splits(lift: str, to: str, shelves: dict[LiftId, Shelf]) -> None:
    """Whatever the fault and the cause; most have a chain, and those that have none show nothing in the part."""
    shelf = within_ending(ending_in(shelves[LiftId(lift)], DrillId(to)))
    splits = shelf.lift.points.index("split") if "split" in shelf.lift.points else None
    chains = refused = 0
    for fault in shelf.faults.values():
        for cause in fault.causes:
            try:
                found = chain(shelf, ChainQuestion(fault.id, shelf.kits["hall"], cause.id))
            except NoChain:
                refused += 1
                continue
            chains += 1
            entries = found.routes[0].entries
            assert entries[-1].drill.id == to
            assert entries[-1].tests
            for entry in entries:
                if entry.drill.stage is Stage.PREPARE:
                    continue
                assert entry.dials.catch <= Catch.POWER
                reached = range(entry.dials.first, entry.dials.last + 1)
                assert splits not in reached or entry.dials.left_out >> (splits or 0) & 1
    assert chains > (40 if "jerk" in lift or "hang" in to else 100)
    assert refused


def test_a_fault_of_the_catch_is_still_one_without_the_split(shelves: dict[LiftId, Shelf]) -> None:
    """Arms that finish after the feet are seen in a power jerk as in a split jerk; feet out of line only in a split."""
    shelf = within_ending(ending_in(shelves[LiftId("jerk")], DrillId("power-jerk")))
    hall = shelf.kits["hall"]
    assert chain(shelf, ChainQuestion(shelf.faults["jerk-press-out"].id, hall)).routes
    with pytest.raises(NoChain, match="doesn't show this fault"):
        chain(shelf, ChainQuestion(shelf.faults["jerk-tightrope-split"].id, hall))
