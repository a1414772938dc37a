"""What a library covers, counted by hand in the small one."""

from dataclasses import replace

import pytest
from report_small import FAULT, SNATCH, the_library

from kb.check.asked import matters, told
from kb.check.beside import opened
from kb.check.report.coverage import Thin, answered, coverages
from kb.check.report.report import report
from kb.errors import BrokenLibrary, Problem
from kb.terms import Load, StandIn

NOTHING = (0, 0, 0, 0, 0, 0)
"""No drill at prepare, position, segment, join, whole, finish."""


def test_drills_by_point_stretch_and_stage() -> None:
    """Two pieces from start to hip, a posture at each of the last two points, and the lift over all four."""
    (found,) = coverages(the_library())
    assert found.lift == SNATCH
    assert found.stages == (0, 2, 2, 0, 1, 0)
    assert dict(found.points) == {
        "start": (0, 0, 2, 0, 1, 0),
        "hip": (0, 0, 2, 0, 1, 0),
        "receive": (0, 1, 0, 0, 1, 0),
        "stand": (0, 1, 0, 0, 1, 0),
    }
    assert found.stretches == (
        ("start", "hip", (0, 0, 2, 0, 0, 0)),
        ("start", "stand", (0, 0, 0, 0, 1, 0)),
        ("receive", "receive", (0, 1, 0, 0, 0, 0)),
        ("stand", "stand", (0, 1, 0, 0, 0, 0)),
    )


def test_a_point_left_out_isnt_covered() -> None:
    """A drill counts where it is, not where it only passes."""
    library = the_library()
    drills = {
        id_: each._replace(leaves_out=("hip",) if id_ == "full-snatch" else ()) for id_, each in library.drills.items()
    }
    (found,) = coverages(replace(library, drills=drills))
    assert dict(found.points)["hip"] == (0, 0, 2, 0, 0, 0)


def test_causes_gateways_and_thin_places() -> None:
    """One cause of each of two kinds; nothing must be passed; `no-idea` has no drill, `swings` two."""
    library = the_library()
    (found,) = coverages(library)
    assert found.faults == 1
    assert {kind for kind, count in found.kinds if count} == {"timing", "understanding"}
    assert found.gateways == ()
    assert found.thin == (Thin(FAULT, "no-idea", ()),)
    built = {
        id_: each._replace(prerequisites=(("piece",),)) if id_ == "full-snatch" else each
        for id_, each in library.drills.items()
    }
    fewer = {id_: each for id_, each in built.items() if id_ != "slow-piece"}
    (found,) = coverages(replace(library, drills=fewer))
    assert found.gateways == ("piece",)
    assert found.thin == (Thin(FAULT, "swings", ("piece",)), Thin(FAULT, "no-idea", ()))


def test_kits() -> None:
    """Either kit has a chain for one of the two causes, so for the fault; why there is none is kept."""
    library = the_library()
    with opened(library) as catalogue:
        answers = [told(*asked) for asked in matters(catalogue.shelves, FAULT, ("hall", "stick"))]
    hall, stick = answered(library, answers, ("hall", "stick"))
    assert (hall.kit, stick.kit) == ("hall", "stick")
    for kit in (hall, stick):
        assert (kit.asked, kit.answered, kit.faults, kit.of_faults, kit.without) == (2, 1, 1, 1, ())
        assert [(one.fault, one.cause) for one in kit.unanswered] == [(FAULT, "no-idea")]
        assert kit.unanswered[0].why == "no drill for this cause can be done with this kit"


def test_a_fault_that_a_kit_cant_work_on_is_named() -> None:
    """Where the stick can't stand in for the bar, nothing can be done with it."""
    library = the_library()
    bar = library.items["bar"]._replace(stand_ins=())
    assert StandIn("stick", "weight", load=Load.STICK) in library.items["bar"].stand_ins
    found = report(replace(library, items={**library.items, "bar": bar}))
    by_kit = {each.kit: each for each in found.kits}
    assert by_kit["stick"].without == (FAULT,)
    assert by_kit["hall"].without == ()
    assert set(by_kit) == {"stick", "hall", "full"}


def test_the_report_asks_with_stick_and_hall() -> None:
    """Four questions, of which two have a chain; where there are no such kits, all are asked with."""
    found = report(the_library())
    assert found.asked_with == ("stick", "hall")
    assert found.questions == (4, 2)
    assert dict(found.entries) == {"drill": 5, "fault": 1, "position": 4, "equipment": 2, "lift": 1}
    assert [each.drill for each in found.idle] == ["stand-tall", "look-at-hands"]
    library = the_library()
    items = {id_: item._replace(kits=("shed",)) for id_, item in library.items.items()}
    assert report(replace(library, items=items)).asked_with == ("shed", "full")


def test_a_library_with_structural_problems_is_refused() -> None:
    """Nothing can be asked of it, and how many problems there are is said."""
    problem = Problem(file="drills/x.md", line=1, code="bad", message="No.", help="")
    with pytest.raises(BrokenLibrary, match="1 problem in structure"):
        report(the_library(problems=(problem,)))
    with pytest.raises(BrokenLibrary, match="2 problems in structure"):
        report(the_library(problems=(problem, problem)))
