"""Seconds from doses, by worked examples (common practice, no source, where a dose is the trade's usual one)."""

from fractions import Fraction
from itertools import pairwise
from math import ceil

import pytest
from doses import doses
from hypothesis import given
from hypothesis import strategies as st

from kb.dose import (
    CHANGE_OVER_S,
    Piece,
    check_seconds,
    dose_seconds,
    minutes,
    pieces,
    round_seconds,
    sets,
    shorter,
    tries,
    work_seconds,
)
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


WORKED = [
    # four rounds of six overhead squats lowered in four seconds, a second up: common practice, no source
    (Dose(rounds=4, reps=6, tempo=(4, 0, 1, 0), rest_s=60), 30, 4 * 30 + 3 * 60),
    # the same with no rest between
    (Dose(rounds=4, reps=6, tempo=(4, 0, 1, 0)), 30, 120),
    # a 30 s stretch four times, each side: common practice, no source; 60 s a side or more, Garber 2011 (4.02)
    (Dose(rounds=4, hold_s=30, sides=2), 60, 240),
    # the published splits of 60 s: 4 x 15, 3 x 20, 2 x 30 (4.02)
    (Dose(rounds=4, hold_s=15, rest_s=10), 15, 60 + 30),
    (Dose(rounds=3, hold_s=20, rest_s=20), 20, 60 + 40),
    (Dose(rounds=2, hold_s=30, sides=2, rest_s=10), 60, 120 + 10),
    # eight a side with a hold at the end: common practice, no source; 8 x 4 + 10 = 42 s a side
    (Dose(rounds=2, reps=8, hold_s=10, sides=2, rest_s=30), 84, 2 * 84 + 30),
    # ten intervals of two minutes, two lifts in each: common practice, no source; exactly twenty minutes
    (Dose(rounds=10, reps=2, tempo=(2, 2, 4, 2), every_s=120), 20, 20 * 60),
    # a single every minute for six minutes
    (Dose(rounds=6, reps=1, tempo=(4, 3, 4, 4), every_s=60), 15, 6 * 60),
    # a round that fills its interval, without a second to spare
    (Dose(rounds=5, reps=10, tempo=(2, 1, 2, 1), every_s=60), 60, 5 * 60),
    # thirty that count in sets of two or three, 75 s between, 80 % good: common practice, no source
    # ceil(30 / 0.8) = 38 tries; twelve threes and a two; 38 x 4 s and twelve rests
    (Dose(good=30, success=80, reps=3, rest_s=75), 12, 38 * 4 + 12 * 75),
    # every one good: ten threes
    (Dose(good=30, success=100, reps=3, rest_s=75), 12, 30 * 4 + 9 * 75),
    # eight good at 66 %: 12.1 tries, so thirteen, in sets of five at most: 5 4 4
    (Dose(good=8, success=66, reps=5, tempo=(2, 1, 1, 1), rest_s=45), 25, 13 * 5 + 2 * 45),
    # ten good ones a side, a hold after each set: 13 tries in fours and threes, four sets
    (Dose(good=10, success=80, reps=4, hold_s=5, sides=2, rest_s=30), 42, 2 * (13 * 4 + 4 * 5) + 3 * 30),
    # three singles at no set tempo: 4 s each
    (Dose(rounds=3, reps=1, rest_s=90), 4, 12 + 180),
    (Dose(rounds=1, hold_s=20), 20, 20),
]


@pytest.mark.parametrize(("dose", "one_round", "whole"), WORKED)
def test_worked_doses(dose: Dose, one_round: int, whole: int) -> None:
    """One round, then the whole with rests between rounds and none after the last."""
    assert round_seconds(dose) == one_round
    assert dose_seconds(dose) == whole
    assert work_seconds(a_drill(dose)) == CHANGE_OVER_S + 15 + whole
    assert check_seconds(a_drill(dose)) == CHANGE_OVER_S + 15 + one_round


def test_thirty_good_ones_set_by_set() -> None:
    """In sets of two or three, thirteen of them."""
    dose = Dose(good=30, success=80, reps=3, rest_s=75)
    assert tries(dose) == 38
    assert sets(dose) == (3,) * 12 + (2,)


def test_an_interval_piece_by_piece() -> None:
    """Both sides, then what is left of the interval, also of the last."""
    dose = Dose(rounds=2, reps=3, tempo=(1, 0, 1, 0), hold_s=5, sides=2, every_s=60)
    assert pieces(dose) == (
        Piece("work", 11, 1, 1, 3, 5),
        Piece("work", 11, 1, 2, 3, 5),
        Piece("rest", 38, 1),
        Piece("work", 11, 2, 1, 3, 5),
        Piece("work", 11, 2, 2, 3, 5),
        Piece("rest", 38, 2),
    )


def test_rounds_piece_by_piece() -> None:
    """Rests stand between, none after the last, and none that takes no time."""
    assert [piece.kind for piece in pieces(Dose(rounds=3, hold_s=20, rest_s=40))] == ["work", "rest"] * 2 + ["work"]
    assert [piece.kind for piece in pieces(Dose(rounds=3, hold_s=20))] == ["work"] * 3


@given(doses())
def test_the_pieces_sum_to_the_whole(dose: Dose) -> None:
    """No second is lost or won, none is negative, and every repetition and hold is in one of them."""
    parts = pieces(dose)
    assert sum(piece.seconds for piece in parts) == dose_seconds(dose)
    assert all(piece.seconds > 0 for piece in parts)
    worked = [piece for piece in parts if piece.kind == "work"]
    assert sum(piece.reps for piece in worked) == sum(sets(dose)) * dose.sides
    assert sum(piece.hold_s for piece in worked) == dose.hold_s * len(sets(dose)) * dose.sides
    assert [(piece.round, piece.side) for piece in worked] == [
        (n, side) for n in range(1, len(sets(dose)) + 1) for side in range(1, dose.sides + 1)
    ]
    rep = sum(dose.tempo) if dose.tempo else 4
    assert all(piece.seconds == piece.reps * rep + piece.hold_s for piece in worked)


@given(doses())
def test_sets_share_out_the_tries(dose: Dose) -> None:
    """As few sets as there can be, none larger than a set may be, none two apart, larger ones first."""
    done = sets(dose)
    assert sum(done) == tries(dose)
    assert list(done) == sorted(done, reverse=True)
    if dose.good:
        assert tries(dose) == ceil(dose.good / Fraction(dose.success, 100))
        assert len(done) == ceil(Fraction(tries(dose), dose.reps))
        assert max(done) <= dose.reps
        assert max(done) - min(done) <= 1
    else:
        assert done == (dose.reps,) * dose.rounds


@given(doses())
def test_shorter_doses_are_ever_less(dose: Dose) -> None:
    """Each takes less time and a round less, or more than one less, down to one; nothing else of the dose changes."""
    less = (dose, *shorter(dose))
    for longer, short in pairwise(less):
        assert len(sets(short)) < len(sets(longer))
        assert dose_seconds(short) < dose_seconds(longer)
        assert short._replace(rounds=dose.rounds, good=dose.good) == dose
        assert bool(short.good) == bool(dose.good)
    last = less[-1]
    assert last.rounds == 1
    # one good repetition may still be expected to take more than one set, and then that is the least there is
    assert len(sets(last)) == 1 or last.good == 1 or tries(last._replace(good=1)) > last.reps


@given(doses(), st.integers(0, 120))
def test_a_check_is_set_up_and_one_round(dose: Dose, set_up_s: int) -> None:
    """A check is never longer than the work, and of plain rounds the work is it plus the further rounds and rests."""
    drill = a_drill(dose, set_up_s)
    assert check_seconds(drill) <= work_seconds(drill)
    if not dose.good and not dose.every_s:
        further = (dose.rounds - 1) * (round_seconds(dose) + dose.rest_s)
        assert work_seconds(drill) == check_seconds(drill) + further


@given(st.integers(0, 100_000))
def test_minutes_never_promise_too_little(seconds: int) -> None:
    """Whole minutes, rounded up, less than one over."""
    assert 0 <= 60 * minutes(seconds) - seconds < 60
