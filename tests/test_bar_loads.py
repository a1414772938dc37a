"""How heavy a drill is for one lifter: shares of bests, rounding down, and when more may go on."""

from itertools import chain, combinations

import pytest
from handmade import drill
from hypothesis import given
from hypothesis import strategies as st

from kb.bests import Best
from kb.discs import Iron, iron_of
from kb.loading import IN_HAND, Loaded, load_of, loaded, may_load, weighed
from kb.terms import Dose, Drill, ItemId, LiftId, Load, LoadFrom

BAR = ItemId("bar")
MEN = iron_of()
TWELVE = Dose(rounds=3, reps=4)


def barred(
    percent: tuple[int, int] | None = (40, 70),
    load: tuple[Load, Load] = (Load.STICK, Load.WORKING),
    dose: Dose = TWELVE,
) -> Drill:
    """A drill with a bar that goes by the clean."""
    share = LoadFrom(LiftId("clean"), percent) if percent else None
    return drill("front-squat", equipment=(BAR,), load=load, load_from=share, dose=dose)


def test_a_range_of_a_best_rounded_down() -> None:
    """By hand: 40 to 70 % of 91 kg is 36.4 to 63.7 kg, so 36 and 63; discs 5 2.5 0.5 and 20 1.5."""
    found = weighed(barred(), {"clean": Best(91)}, MEN)
    assert found.least == Loaded(36, 20, (5, 2.5, 0.5))
    assert found.most == Loaded(63, 20, (20, 1.5))
    assert found.wanted == pytest.approx((36.4, 63.7))
    assert load_of(barred(), {"clean": Best(91)}, MEN) == found.least
    assert load_of(barred(), {"clean": Best(91)}, MEN, at=Load.WORKING) == found.most


def test_collars_count_when_they_are_used() -> None:
    """63 kg with 5 kg of collars: 19 on each side, so 15, 2.5 and 1.5."""
    found = load_of(barred(), {"clean": Best(91)}, iron_of(collars=True), at=Load.WORKING)
    assert found == Loaded(63, 20, (15, 2.5, 1.5), 5)


def test_pounds_come_out_in_kilograms_and_in_whole_discs() -> None:
    """70 % of 225 lb is 157.5; the discs make 155: 45 and two tens a side of a 45 lb bar."""
    found = load_of(barred(), {"clean": Best(225 * 0.45359237)}, iron_of(unit="lb"), at=Load.WORKING)
    assert found == Loaded(70.307, 20.412, (20.412, 4.536))
    assert round(70.307 / 0.45359237, 1) == 155


def test_without_a_best_no_kilograms_are_guessed() -> None:
    """Only what is said: two good repetitions in hand."""
    for bests in ({}, {"snatch": Best(60)}):
        assert weighed(barred(), bests, MEN) == (None, None, IN_HAND, None, None)
        assert load_of(barred(), bests, MEN) is None
    assert IN_HAND == "a load that leaves two good reps in hand"


def test_without_a_weight_or_a_bar_nothing_goes_on_it() -> None:
    """A stick, empty hands, or a weight in the hand."""
    light = weighed(barred(load=(Load.NONE, Load.STICK)), {"clean": Best(90)}, MEN)
    assert (light.most, light.why) == (None, "done without a weight, so nothing goes on a bar")
    assert load_of(barred(), {"clean": Best(90)}, MEN, at=Load.STICK) is None
    carried = barred()._replace(equipment=(ItemId("hand-weight"),))
    assert weighed(carried, {"clean": Best(90)}, MEN).why == IN_HAND


def test_a_bar_heavier_than_the_range_is_said() -> None:
    """35 % of 40 kg is 14 kg: too little for a bar of 20, not for one of 10."""
    tall = barred((20, 35), (Load.STICK, Load.LIGHT))
    found = weighed(tall, {"clean": Best(40)}, MEN)
    assert (found.least, found.most) == (None, None)
    assert found.why == "the bar alone, 20 kg, is more than the 14.0 kg that suit: take a lighter bar, or a stick"
    assert load_of(tall, {"clean": Best(40)}, iron_of("training"), at=Load.WORKING) == Loaded(14, 10, (2,))


def test_a_bar_within_the_range_is_begun_with() -> None:
    """20 to 35 % of 60 kg is 12 to 21: it begins with the bar of 20."""
    found = weighed(barred((20, 35), (Load.STICK, Load.LIGHT)), {"clean": Best(60)}, MEN)
    assert (found.least, found.most) == (Loaded(20, 20, ()), Loaded(21, 20, (0.5,)))


def test_a_best_of_the_drill_itself_leaves_two_in_hand() -> None:
    """Four repetitions and two in hand are six, at 85 % (3.07): of 90 kg 76.5, so 76; light is 40/70 of it, 43."""
    found = weighed(barred(), {"front-squat": Best(90, "Brzycki 1993")}, MEN)
    assert found.wanted == pytest.approx((76.5 * 40 / 70, 76.5))
    assert found.most == Loaded(76, 20, (25, 2.5, 0.5))
    assert found.least is not None
    assert found.least.kg == 43
    bare = weighed(barred(None), {"front-squat": Best(90)}, MEN)
    assert bare.least == bare.most == found.most


def test_of_two_bests_the_lower_counts() -> None:
    """The lift's share goes no further than what leaves two good ones in hand."""
    both = {"clean": Best(120), "front-squat": Best(90)}
    assert weighed(barred(), both, MEN).wanted == pytest.approx((48, 76.5))
    assert weighed(barred(), {**both, "clean": Best(100)}, MEN).wanted == pytest.approx((40, 70))
    assert weighed(barred(), {**both, "front-squat": Best(40)}, MEN).wanted == pytest.approx((34, 34))


@pytest.mark.parametrize(
    "judged",
    [
        barred(load=(Load.STICK, Load.LIGHT)),  # light is no matter of how many are in hand
        barred(dose=Dose(rounds=3, hold_s=20)),  # a hold has no repetitions
        barred(dose=Dose(rounds=3, reps=9)),  # eleven are past the table
    ],
)
def test_where_its_own_best_says_nothing(judged: Drill) -> None:
    """Then it goes by the lift, or by what is said without a best."""
    assert weighed(judged, {"front-squat": Best(90)}, MEN).why == IN_HAND


@given(st.floats(1, 500), st.integers(1, 150), st.integers(0, 60), st.sampled_from(("men", "women", "training")))
def test_rounding_is_down_and_by_less_than_the_discs_can_make(kg: float, low: int, more: int, bar: str) -> None:
    """Within a kilogram of what was wanted, never over, and what is on the bar is its discs."""
    iron = iron_of(bar)
    found = weighed(barred((low, low + more)), {"clean": Best(kg)}, iron)
    assert found.wanted is not None
    if found.most is None:
        assert found.wanted[1] < iron.bar
        return
    assert found.least is not None
    for made, wanted in zip((found.least, found.most), found.wanted, strict=True):
        assert made.kg == iron.bar + 2 * sum(made.discs_kg)
        # a sleeve holds some twenty of the largest, which is 1000 kg: the iron never binds below
        assert made.kg <= max(wanted + 0.001, iron.bar)
        assert wanted - made.kg < 1.001


def test_a_bar_in_kilograms_whatever_its_unit() -> None:
    """To a gram."""
    assert loaded((45.0,), iron_of(unit="lb")) == Loaded(61.235, 20.412, (20.412,))
    assert loaded((), Iron(15, (), 2.5)) == Loaded(20, 15, (), 5)


RANGES = [(low, high) for low in Load for high in Load if low <= high]


@pytest.mark.parametrize("load", RANGES)
def test_a_load_never_rises_before_the_unloaded_form_met_its_standard(load: tuple[Load, Load]) -> None:
    """Every range of load and every set of loads at which the standard was met."""
    judged = barred(load=load)
    for met in chain.from_iterable(combinations(Load, n) for n in range(5)):
        for at in Load:
            if not may_load(judged, at, met):
                continue
            assert load[0] <= at <= load[1]
            if at > load[0] and at is Load.LIGHT:
                assert met
            if at > load[0] and at is Load.WORKING:
                assert max(met) >= Load.LIGHT


def test_what_may_be_loaded() -> None:
    """From stick to working, one after another; a strength drill may begin at its least."""
    squat = barred()
    assert may_load(squat, Load.STICK, ())
    assert not may_load(squat, Load.LIGHT, ())
    assert may_load(squat, Load.LIGHT, (Load.STICK,))
    assert not may_load(squat, Load.WORKING, (Load.STICK,))
    assert may_load(squat, Load.WORKING, (Load.LIGHT,))
    assert not may_load(squat, Load.NONE, (Load.LIGHT,))
    assert may_load(barred(load=(Load.LIGHT, Load.WORKING)), Load.LIGHT, ())
    assert not may_load(barred(load=(Load.STICK, Load.LIGHT)), Load.WORKING, tuple(Load))
