"""Doses against what is published: Prilepin's table for the lifts, the position stand for stretches."""

from typing import Any

import pytest
from handmade import bare, drill

from kb.check import stretch_hold, too_many_lifts
from kb.terms import Catch, Dose, LiftId, Load, LoadFrom, Speed, Stage


def lifts_said(dose: Dose, top: int, **rest: Any) -> list[str]:
    """What is said of a form of the clean at so many per cent of the best."""
    kept = {"stage": Stage.JOIN, "speed": Speed.FULL, "catch": Catch.FULL, **rest}
    share = LoadFrom(LiftId("clean"), (50, top))
    made = drill("hang-clean", dose=dose, load=(Load.LIGHT, Load.WORKING), load_from=share, **kept)
    return [problem.message for problem in too_many_lifts.rule(bare({made.id: made}))]


@pytest.mark.parametrize(
    ("top", "reps", "rounds"),
    [
        (69, 12, 6),  # below 70 % the table isn't asked
        (70, 6, 4),  # 3.09, 3.10: 3-6, 12-24
        (80, 6, 4),  # 3.09: 70-80
        (85, 4, 5),  # 2-4, 10-20
        (90, 4, 5),  # 3.09: 80-90
        (95, 2, 5),  # 1-2, to 10
        (95, 1, 1),  # fewer than the table's range is a part of a session
    ],
)
def test_the_most_that_the_table_allows(top: int, reps: int, rounds: int) -> None:
    """As much is let pass, and one more in a set or in all isn't."""
    assert lifts_said(Dose(rounds=rounds, reps=reps), top) == []
    if top >= 70 and rounds > 1:
        set_too_large = lifts_said(Dose(rounds=1, reps=reps + 1), top)
        assert set_too_large == [
            f"A set has {reps + 1} lifts, and at {top} % of a best Prilepin's table (1974) allows {reps}."
        ]
        too_many = lifts_said(Dose(good=reps * rounds + 1, success=100, reps=reps), top)
        assert too_many == [
            f"The dose has {reps * rounds + 1} lifts, and at {top} % of a best Prilepin's table (1974) allows"
            f" {reps * rounds} in a session."
        ]


def test_tries_count_not_only_the_good_ones() -> None:
    """Ten good ones at half good are twenty lifts; intervals count each round."""
    assert lifts_said(Dose(good=10, success=50, reps=2), 95) != []
    assert lifts_said(Dose(good=10, success=100, reps=2), 95) == []
    assert lifts_said(Dose(rounds=12, reps=1, every_s=60), 95) != []
    assert lifts_said(Dose(rounds=3, reps=2, sides=2), 95) != []


def test_squats_pulls_and_holds_arent_judged() -> None:
    """The table is of the lifts."""
    many = Dose(rounds=6, reps=10)
    assert lifts_said(many, 95, stage=Stage.FINISH, speed=Speed.SLOW) == []
    assert lifts_said(many, 95, stage=Stage.SEGMENT, catch=Catch.NONE) == []
    assert lifts_said(Dose(rounds=4, hold_s=10), 95) == []
    # what can't be has its own problem
    assert lifts_said(Dose(good=10), 95) == []
    assert lifts_said(Dose(good=10, reps=2, success=0), 95) == []
    assert lifts_said(many, 500) == []
    bent = drill("a", stage=Stage.JOIN, dose=many)
    assert list(too_many_lifts.rule(bare({bent.id: bent}))) == []


def stretch_said(dose: Dose, text: str = "", stage: Stage = Stage.PREPARE) -> list[str]:
    """What is said of a stretch."""
    made = drill("a-stretch", stage=stage, dose=dose, sections={"Do": text})
    return [problem.message for problem in stretch_hold.rule(bare({made.id: made}))]


@pytest.mark.parametrize(("rounds", "hold_s"), [(4, 15), (3, 20), (2, 30), (4, 30), (3, 30)])  # 4.01, 4.02
def test_the_published_splits_pass(rounds: int, hold_s: int) -> None:
    """60 s or more in all, in two to four holds of 10 to 30 s."""
    assert stretch_said(Dose(rounds=rounds, hold_s=hold_s)) == []
    assert stretch_said(Dose(rounds=rounds, hold_s=hold_s, sides=2, rest_s=10)) == []


@pytest.mark.parametrize(
    ("rounds", "hold_s", "says"),
    [
        (6, 9, "It is held 9 s"),
        (2, 31, "It is held 31 s"),
        (1, 30, "It is held once,"),
        (5, 15, "It is held 5 times"),
        (2, 29, "It is held 58 s in all"),
        (4, 14, "It is held 56 s in all"),
    ],
)
def test_what_is_outside_is_said_with_the_source(rounds: int, hold_s: int, says: str) -> None:
    """One thing at a time, and whose word it is (4.01, 4.02)."""
    (said,) = stretch_said(Dose(rounds=rounds, hold_s=hold_s))
    assert said.startswith(says)
    assert "position stand on flexibility (ACSM, Garber 2011)" in said


def test_older_adults_hold_longer() -> None:
    """To 60 s where the entry says so (4.01), and then once will do."""
    assert stretch_said(Dose(rounds=1, hold_s=60), "Older lifters stay a minute.") == []
    assert stretch_said(Dose(rounds=2, hold_s=40), "Older lifters stay longer.") == []
    assert stretch_said(Dose(rounds=1, hold_s=45), "Older lifters stay longer.") != []
    assert stretch_said(Dose(rounds=1, hold_s=60)) != []
    assert "10 to 60 s" in stretch_said(Dose(rounds=1, hold_s=61), "older")[0]


def test_only_held_preparation_is_a_stretch() -> None:
    """A posture held, and repetitions that end in a hold, aren't judged."""
    assert stretch_said(Dose(rounds=1, hold_s=60), stage=Stage.POSITION) == []
    assert stretch_said(Dose(rounds=1, reps=8, hold_s=5)) == []
    assert stretch_said(Dose(rounds=1, reps=8)) == []
