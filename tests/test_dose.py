"""Minutes from doses, by worked examples (common practice, no source, where a dose is the trade's usual one)."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kb.dose import CHANGE_OVER_S, check_seconds, minutes, round_seconds, work_seconds
from kb.terms import Dose, Drill, DrillId, LiftId, Stage, Standard


def a_drill(dose: Dose, set_up_s: int = 15) -> Drill:
    return Drill(
        id=DrillId("d"),
        name="d",
        lifts=(LiftId("snatch"),),
        stage=Stage.SEGMENT,
        dose=dose,
        set_up_s=set_up_s,
        standard=Standard(count=1, of=1, seen="it"),
    )


@pytest.mark.parametrize(
    ("dose", "one_round", "whole"),
    [
        # four rounds of six overhead squats lowered in four seconds, a second up: common practice, no source
        (Dose(rounds=4, reps=6, tempo=(4, 0, 1, 0), rest_s=60), 30, 4 * 30 + 3 * 60),
        # a 30 s stretch four times, each side: common practice, no source; 60 s a side or more, Garber 2011 (4.02)
        (Dose(rounds=4, hold_s=30, sides=2), 60, 240),
        # eight a side with a hold at the end: common practice, no source
        (Dose(rounds=2, reps=8, hold_s=10, sides=2, rest_s=30), 84, 2 * 84 + 30),
        # three singles at no set tempo: 4 s each
        (Dose(rounds=3, reps=1, rest_s=90), 4, 12 + 180),
        (Dose(rounds=1, hold_s=20), 20, 20),
    ],
)
def test_worked_doses(dose: Dose, one_round: int, whole: int) -> None:
    """One round, then the whole with rests between rounds and none after the last."""
    assert round_seconds(dose) == one_round
    assert work_seconds(a_drill(dose)) == CHANGE_OVER_S + 15 + whole


@given(
    st.builds(
        Dose,
        rounds=st.integers(1, 6),
        reps=st.integers(0, 12),
        tempo=st.none() | st.tuples(*[st.integers(0, 6)] * 4),
        hold_s=st.integers(0, 60),
        sides=st.integers(1, 2),
        rest_s=st.integers(0, 180),
    ),
    st.integers(0, 120),
)
def test_a_check_is_set_up_and_one_round(dose: Dose, set_up_s: int) -> None:
    """A check is never longer than the work, and the work is the check plus its further rounds and rests."""
    drill = a_drill(dose, set_up_s)
    further = (dose.rounds - 1) * (round_seconds(dose) + dose.rest_s)
    assert work_seconds(drill) == check_seconds(drill) + further


@given(st.integers(0, 100_000))
def test_minutes_never_promise_too_little(seconds: int) -> None:
    """Whole minutes, rounded up, less than one over."""
    assert 0 <= 60 * minutes(seconds) - seconds < 60
