"""What bests say of one another. The shares are common practice, no source: what is tested is the reckoning."""

import pytest

from kb.ask.shelf import Shelf
from kb.bests import Best, with_parts
from kb.make.library import Library
from kb.show.by_numbers import RATIOS, Ratio, by_numbers
from kb.terms import DrillId, LiftId


@pytest.fixture(scope="module")
def names(library: Library) -> dict[str, str]:
    """Of lifts and drills."""
    return {str(each.id): each.name for group in (library.lifts, library.drills) for each in group.values()}


@pytest.mark.parametrize("ratio", RATIOS, ids=lambda each: f"{each.of} of {each.base}")
@pytest.mark.parametrize("over", [-1, 0, 1])
def test_less_and_more_than_usual_are_told_apart(
    ratio: Ratio, over: int, shelves: dict[LiftId, Shelf], names: dict[str, str]
) -> None:
    """Just below the least, within, just above the most; of a base of 100 kg, so that kilograms are per cent."""
    share = {-1: ratio.least - 1, 0: ratio.least, 1: ratio.most + 1}[over]
    lift = shelves[LiftId(ratio.of)].lift
    (said,) = by_numbers(lift, {ratio.of: Best(share), ratio.base: Best(100)}, names)
    assert f"is {share} % of the {names[ratio.base].lower()}" in said
    assert said.endswith(f"so {[ratio.less, 'neither stands out', ratio.more][over + 1]}.")


def test_only_pairs_of_the_lift_that_are_both_known(shelves: dict[LiftId, Shelf], names: dict[str, str]) -> None:
    """The clean and jerk has its parts' pairs; one best says nothing."""
    bests = {"clean": Best(60), "front-squat": Best(72), "snatch": Best(45)}
    assert len(by_numbers(shelves[LiftId("clean-and-jerk")].lift, bests, names)) == 1
    assert by_numbers(shelves[LiftId("jerk")].lift, bests, names) == ()
    assert by_numbers(shelves[LiftId("clean")].lift, {"clean": Best(60)}, names) == ()


def test_what_is_named_is_in_the_library(library: Library) -> None:
    """Every base is a drill or a lift of it."""
    for each in RATIOS:
        assert LiftId(each.of) in library.lifts
        assert DrillId(each.base) in library.drills or LiftId(each.base) in library.lifts


def test_a_best_is_not_held_against_itself(shelves: dict[LiftId, Shelf], names: dict[str, str]) -> None:
    """Who clean and jerks it has cleaned it: of the clean alone that says nothing."""
    library = {lift_id: shelf.lift for lift_id, shelf in shelves.items()}
    bests = with_parts({"clean-and-jerk": Best(65)}, library)
    assert by_numbers(library[LiftId("clean-and-jerk")], bests, names) == ()
