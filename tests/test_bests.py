"""Bests as they are typed, what a set says of them, and of what it says nothing."""

import pytest
from handmade import drill, library
from hypothesis import given
from hypothesis import strategies as st

from kb.bests import FORMULAS, Best, Said, best_of, estimate, of_the_lifts, said, with_parts
from kb.discs import KG_OF_LB
from kb.errors import BadInput
from kb.terms import Catch, Speed, Stage


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("snatch=60", Said("snatch", 60)),
        ("front-squat=80x5", Said("front-squat", 80, 5)),
        (" front squat = 82.5 kg x 5 ", Said("front squat", 82.5, 5)),
        ("back-squat=100\N{MULTIPLICATION SIGN}3", Said("back-squat", 100, 3)),
        ("clean=135lb", Said("clean", 135 * KG_OF_LB)),
        ("clean=135LBS", Said("clean", 135 * KG_OF_LB)),
    ],
)
def test_a_best_as_it_is_typed(text: str, read: Said) -> None:
    """Of what, how much, and from how many repetitions."""
    assert said(text) == read


def test_the_unit_is_the_one_chosen_unless_another_is_typed() -> None:
    """Pounds where pounds were asked for."""
    assert said("clean=100", "lb").kg == 100 * KG_OF_LB
    assert said("clean=100kg", "lb").kg == 100


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("snatch", "a best is written like snatch=60"),
        ("=60", "a best is written like snatch=60"),
        ("a=b=c", "a best is written like snatch=60"),
        ("snatch=", "the best of snatch is a weight above 0, not ''"),
        ("snatch=heavy", "is a weight above 0, not 'heavy'"),
        ("snatch=nan", "is a weight above 0, not 'nan'"),
        ("snatch=inf", "is a weight above 0, not 'inf'"),
        ("snatch=0", "is a weight above 0, not '0'"),
        ("snatch=-60", "is a weight above 0, not '-60'"),
        ("snatch=6000", "the best of snatch can't be more than 500 kg"),
        ("squat=80x0", "a set is of 1 to 10 repetitions, as in squat=80x5, not '0'"),
        ("squat=80x11", "not '11'"),
        ("squat=80x", "not ''"),
        ("squat=80x-3", "not '-3'"),
        ("squat=80x2.5", "not '2.5'"),
        ("squat=80x5x5", "not '5x5'"),
        ("squat=80x" + "9" * 5000, "a set is of 1 to 10 repetitions"),
    ],
)
def test_what_is_no_best_is_refused(text: str, says: str) -> None:
    """In one sentence."""
    with pytest.raises(BadInput) as refused:
        said(text)
    assert says in str(refused.value)
    assert "\n" not in str(refused.value)


@given(st.text(max_size=20))
def test_whatever_is_typed_is_read_or_refused(text: str) -> None:
    """Nothing else comes of it, and what is read can be reckoned with."""
    try:
        read = said(text)
    except BadInput:
        return
    assert 0 < read.kg <= 500
    assert 1 <= read.reps <= 10


@given(st.floats(1, 500), st.integers(1, 10))
def test_an_estimate_is_never_under_the_set_nor_over_a_formula(kg: float, reps: int) -> None:
    """What was lifted can be lifted, and more repetitions say as much or more."""
    found = estimate(kg, reps)
    assert kg <= found.kg + 1e-9
    if reps == 1:
        assert found == Best(kg)
        return
    assert found.formula in FORMULAS
    assert all(found.kg <= formula(kg, reps) for formula in FORMULAS.values())
    assert found.kg >= estimate(kg, reps - 1).kg


def test_a_set_of_none_is_refused() -> None:
    """There is nothing to go by."""
    with pytest.raises(BadInput, match="not of 0"):
        estimate(100, 0)


SQUAT = drill("front-squat", speed=Speed.SLOW, catch=Catch.FULL)
HANG = drill("hang-clean", stage=Stage.JOIN, speed=Speed.FULL, catch=Catch.FULL)


def test_a_set_tells_of_a_squat_and_never_of_a_lift() -> None:
    """The snatch, clean and jerk and their forms are refused clearly; a single of them is taken."""
    assert best_of(Said("front-squat", 90, 5), SQUAT) == estimate(90, 5)
    for form in (None, HANG):
        assert best_of(Said("clean", 80), form) == Best(80)
        with pytest.raises(BadInput, match=r"isn't estimated from a set of 3.*heaviest single.*clean=80"):
            best_of(Said("clean", 80, 3), form)


@pytest.mark.parametrize(
    ("stage", "speed", "catch", "lift"),
    [
        (Stage.WHOLE, Speed.FULL, Catch.FULL, True),
        (Stage.JOIN, Speed.PAUSED, Catch.POWER, True),
        (Stage.SEGMENT, Speed.FULL, Catch.FULL, True),  # dropped under at full speed
        (Stage.SEGMENT, Speed.FULL, Catch.STANDING, True),  # a muscle snatch
        (Stage.FINISH, Speed.FULL, Catch.FULL, True),  # clean and jerks by the clock
        (Stage.SEGMENT, Speed.SLOW, Catch.FULL, False),  # a squat
        (Stage.SEGMENT, Speed.FULL, Catch.NONE, False),  # a pull
        (Stage.FINISH, Speed.SLOW, Catch.STANDING, False),  # a press
        (Stage.FINISH, Speed.FULL, Catch.STANDING, False),  # a push press for strength
    ],
)
def test_which_drills_are_forms_of_the_lifts(stage: Stage, speed: Speed, catch: Catch, lift: bool) -> None:
    """What is put together, or caught at full speed."""
    assert of_the_lifts(drill("a", stage=stage, speed=speed, catch=catch)) is lift


def test_who_clean_and_jerks_has_cleaned_and_jerked() -> None:
    """The parts' bests are at least the whole's, and stay where they are more."""
    lifts = library().lifts
    whole = {"clean-and-jerk": Best(80.0)}
    assert with_parts(whole, lifts) == {"clean-and-jerk": Best(80), "clean": Best(80), "jerk": Best(80)}
    both = {**whole, "clean": Best(90.0), "jerk": Best(70.0)}
    assert with_parts(both, lifts) == {"clean-and-jerk": Best(80), "clean": Best(90), "jerk": Best(80)}
    assert with_parts({"clean": Best(90.0)}, lifts) == {"clean": Best(90)}
