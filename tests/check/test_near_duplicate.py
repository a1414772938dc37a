"""What counts as nearly the same drill."""

import pytest
from handmade import bare, drill

from kb.check.near_duplicate import resemblance, rule
from kb.errors import Problem
from kb.terms import Addressed, Drill, DrillId, FaultId, Load, Speed, Stage


def _found(*drills: Drill) -> list[Problem]:
    return list(rule(bare({each.id: each for each in drills})))


def _saying(drill_id: str, text: str) -> Drill:
    # the speed differs, so that only the texts are compared
    return drill(drill_id, speed=Speed.SLOW if drill_id == "a" else Speed.FULL, sections={"Do": text})


def test_equal_dials_and_faults_are_told_once() -> None:
    """The later drill is told, even where the texts are the same as well."""
    text = {"Do": "Lift it to the knee and wait there."}
    (problem,) = _found(drill("a", sections=text), drill("b", sections=text))
    assert (problem.file, "`a`" in problem.message) == ("b", True)


@pytest.mark.parametrize(
    "other",
    [
        {"speed": Speed.FULL},
        {"load": (Load.NONE, Load.STICK)},
        {"aid": ("wall",)},
        {"leaves_out": ("hip",)},
        {"reach": {"clean": ("start", "hip")}},
        {"stage": Stage.JOIN},
        {"made_of": (DrillId("c"),)},
        {"faults": (Addressed(fault=FaultId("hips-rise"), cause="lost-angle"),)},
    ],
    ids=lambda other: next(iter(other)),
)
def test_any_dial_or_fault_makes_another_drill(other: dict[str, object]) -> None:
    """Two drills that differ in one of them are two."""
    assert not _found(drill("a"), drill("b", **other))  # type: ignore[arg-type]  # any field of a drill


@pytest.mark.parametrize(
    ("other", "same"),
    [
        ({}, True),
        ({"equipment": ("wall",)}, False),
        ({"opens": ("ankle", "hip")}, False),
        ({"for_positions": ()}, False),
    ],
)
def test_preparation_is_compared_by_what_it_opens_and_with_what(other: dict[str, object], same: bool) -> None:
    """Preparation has no dials: joints, positions, gear and faults tell two apart."""
    first = {"stage": Stage.PREPARE, "opens": ("ankle",), "for_positions": ("clean-receive",)}
    found = _found(drill("a", **first), drill("b", **{**first, **other}))  # type: ignore[arg-type]  # as above
    assert bool(found) is same


def test_texts_are_alike_from_six_runs_of_ten() -> None:
    """Of ten runs that either has, six shared are told and five are not."""
    shared = "one two three four five six seven eight"
    assert resemblance({each.id: each for each in (_saying("a", shared), _saying("b", shared + " nine ten"))}) == {
        ("a", "b"): (6, 8)
    }
    assert _found(_saying("a", shared + " x y"), _saying("b", shared + " z w"))
    assert not _found(_saying("a", shared + " x y z"), _saying("b", shared + " u v"))


def test_runs_do_not_cross_sections_and_case_and_points_do_not_count() -> None:
    """What ends one section and begins the next is no run of words."""
    first = drill("a", sections={"Do": "Lift it.", "Say": "Bar close!"})
    second = drill("b", sections={"Do": "lift IT", "Say": "bar, close"})
    assert resemblance({first.id: first, second.id: second}) == {}
