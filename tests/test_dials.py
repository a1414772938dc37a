"""The step between two drills, dial by dial, as kb/docs/arithmetic.md gives it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kb.dials import Dials, changes, notches, step
from kb.terms import Catch, Load, Speed, Stage

CLEAN = ("start", "knee", "hip", "extension", "receive", "stand")
PARTS = ((0, 5), (6, 10))
FULL = Dials(Stage.WHOLE, 0, 5, 0, Speed.FULL, Load.LIGHT, Catch.FULL, False)


@pytest.mark.parametrize(
    ("before", "after", "size", "why"),
    [
        ({"first": 2}, {}, 4, "reach let out by two points: 2 squared"),
        ({}, {"first": 2}, 4, "drawn in by two points: two a point"),
        ({}, {"first": 3}, 6, "by three: two a point, not squared"),
        ({"last": 3}, {}, 4, "the other end alike"),
        ({"speed": Speed.HELD}, {}, 3, "leaving held counts a notch each"),
        ({"speed": Speed.SLOW}, {}, 4, "slow to full: 2 squared"),
        ({}, {"speed": Speed.PAUSED}, 2, "slower by one: doubled"),
        ({"load": Load.STICK}, {}, 1, "stick to light"),
        ({}, {"load": Load.NONE}, 8, "two notches down: 4 doubled"),
        ({"catch": Catch.NONE}, {}, 3, "to begin catching at all: a notch each"),
        ({"catch": Catch.STANDING}, {}, 4, "deeper by two: 2 squared"),
        ({}, {"catch": Catch.NONE}, 1, "no longer catching: one"),
        ({}, {"catch": Catch.POWER}, 2, "less deep by one: doubled"),
        ({"helped": True}, {}, 1, "help taken away"),
        ({}, {"helped": True}, 2, "help given: turned down, so doubled"),
        ({"left_out": 0b10}, {}, 1, "a point taken in"),
        ({}, {"left_out": 0b110}, 2, "two points newly left out"),
        ({}, {"stage": Stage.SEGMENT}, 8, "two stages back: 4 each"),
        ({"stage": Stage.POSITION}, {}, 0, "on to a later stage costs nothing by itself"),
    ],
)
def test_one_dial_turned(before: dict[str, object], after: dict[str, object], size: int, why: str) -> None:
    """Each dial by itself, all others at the full lift's."""
    assert step(FULL._replace(**before), FULL._replace(**after)) == size, why


def test_preparation_costs_nothing_within_and_one_to_leave() -> None:
    """Out of preparation 1, within it 0."""
    prepare = Dials(Stage.PREPARE, 0, 0, 0, Speed.HELD, Load.NONE, Catch.NONE, False)
    assert (step(prepare, prepare), step(prepare, FULL)) == (0, 1)


@pytest.mark.parametrize(
    ("here", "there", "count"),
    [(5, 10, 1), (3, 10, 3), (0, 5, 5), (6, 0, 1), (8, 0, 3), (7, 9, 2), (0, 10, 6)],
)
def test_a_whole_further_part_counts_as_one_notch(here: int, there: int, count: int) -> None:
    """Taking in a whole further part of clean and jerk counts as one notch."""
    assert notches(here, there, PARTS) == count


def test_a_point_left_out_beyond_the_new_reach_is_no_change() -> None:
    """Only points the next drill visits are taken in."""
    before = FULL._replace(left_out=1 << 5)
    assert step(before, FULL._replace(last=4)) == step(FULL, FULL._replace(last=4))


dials = st.builds(
    lambda ends, left, speed, load, catch, helped, stage: Dials(
        stage, min(ends), max(ends), left & ((1 << (max(ends) + 1)) - (1 << min(ends))), speed, load, catch, helped
    ),
    st.tuples(st.integers(0, 10), st.integers(0, 10)),
    st.integers(0, 2**11 - 1),
    st.sampled_from(Speed),
    st.sampled_from(Load),
    st.sampled_from(Catch),
    st.booleans(),
    st.sampled_from([Stage.POSITION, Stage.SEGMENT, Stage.JOIN, Stage.WHOLE]),
)


@given(dials, dials)
def test_what_changed_adds_up_to_the_step(a: Dials, b: Dials) -> None:
    """The changes shown to a coach are the whole step, largest first."""
    points = (*CLEAN, "rack", "dip", "drive", "split", "recovered")
    turned = changes(a, b, points, PARTS)
    assert sum(change.size for change in turned) == step(a, b, PARTS)
    assert [change.size for change in turned] == sorted((change.size for change in turned), reverse=True)


@given(dials)
def test_no_change_is_no_step(a: Dials) -> None:
    """From a drill to one like it costs nothing."""
    assert step(a, a, PARTS) == 0
    assert changes(a, a, CLEAN) == ()
