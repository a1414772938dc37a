"""Where a kit doesn't lead to the lift: what there is of the way, in an order that keeps every prerequisite."""

import pytest
from small_answers import small_shelf
from strategies import random_path
from worlds import shelf_of

from kb.ask.path import path
from kb.ask.towards import towards
from kb.errors import NoAnswer
from kb.kit import fit, loads, missing
from kb.terms import DrillId, ItemId, Load

CLEAN = small_shelf("clean")
BAR = frozenset({ItemId("bar")})


def test_whatever_the_way_lacks_the_rest_is_lawful() -> None:
    """Each once, doable at its load with what is there, after one of each group it needs; never the lift itself."""
    some = 0
    for seed in range(24_000, 24_120):
        world, asked = random_path(seed, 14)
        shelf, have = shelf_of(world), frozenset(sorted(asked.have)[: seed % 3])
        try:
            path(shelf, have=have, holds=asked.holds)
        except NoAnswer:
            found = towards(shelf, have=have, holds=asked.holds)
        else:
            continue
        done = set(asked.holds)
        for each in found:
            fitted = fit(each.drill, have, shelf.items)
            assert fitted is not None
            assert each.load in loads(each.drill, fitted, Load.WORKING)
            assert all(any(member in done for member in group) for group in each.drill.groups)
            assert each.drill.id not in done
            done.add(each.drill.id)
        assert shelf.lift.drill not in done
        some += bool(found)
    assert some > 10


def test_it_is_the_path_without_what_can_t_be_done() -> None:
    """With a bar and nothing to drop it on, the rack and the squat; with nothing, the squat; what is held falls out."""
    ids = [each.drill.id for each in towards(CLEAN, have=BAR)]
    assert sorted(ids) == ["air-squat", "rack-hold"]
    assert [each.drill.id for each in towards(CLEAN, have=frozenset())] == ["air-squat"]
    assert towards(CLEAN, have=frozenset(), holds=frozenset({DrillId("air-squat")})) == ()


def test_a_refusal_names_everything_the_lift_lacks_and_nothing_that_is_stood_in_for() -> None:
    """The bar is there; the discs and the floor aren't. A stick stands in for all three."""
    lift = CLEAN.drills[CLEAN.lift.drill]
    assert missing(lift, BAR, CLEAN.items) == ("discs", "drop-floor")
    assert missing(lift, {ItemId("stick")}, CLEAN.items) == ()
    with pytest.raises(NoAnswer, match=r"\(Clean needs discs and floor for dropping\)$"):
        path(CLEAN, have=BAR)
