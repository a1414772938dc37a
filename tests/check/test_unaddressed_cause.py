"""Which drills count as doing something about a cause."""

from typing import Any

import pytest
from handmade import drill
from handmade import library as handmade

from kb.check.unaddressed_cause import rule
from kb.terms import Addressed, Cause, CauseKind, Fault, FaultId, LiftId, Load, Stage

FAULT = FaultId("fault")
LIGHT = (Load.STICK, Load.LIGHT)


@pytest.mark.parametrize(
    ("kind", "said", "ok"),
    [
        ("timing", {}, True),
        ("timing", {"faults": (Addressed(fault=FAULT, cause="c"),)}, True),
        ("timing", {"faults": (Addressed(fault=FAULT, cause="other"),)}, False),
        ("timing", {"stage": Stage.FINISH, "load": LIGHT}, False),
        ("mobility", {}, False),
        ("mobility", {"stage": Stage.PREPARE}, True),
        ("strength", {"load": (Load.STICK, Load.STICK)}, False),
        ("strength", {"load": LIGHT}, True),
        ("strength", {"load": LIGHT, "stage": Stage.FINISH}, True),
        ("earlier", {"faults": ()}, True),
        ("timing", {"lifts": (LiftId("jerk"),)}, False),
    ],
)
def test_what_counts(kind: CauseKind, said: dict[str, Any], ok: bool) -> None:
    """A drill of the lift that names the fault, of the sort that the kind of cause needs."""
    fault = Fault(
        id=FAULT,
        name="Fault",
        lifts=(LiftId("clean"), LiftId("unknown")),
        phases=(("start", "hip"),),
        causes=(Cause(id="c", kind=kind, text="Why."),),
    )
    acting = drill("acting", **{"faults": (Addressed(fault=FAULT),), **said})
    assert (list(rule(handmade(faults={FAULT: fault}, drills={acting.id: acting}))) == []) is ok


def test_a_lift_of_parts_is_served_by_drills_of_its_parts() -> None:
    """A fault of the clean and jerk may be worked on in the clean."""
    library = handmade()
    crash = library.faults[FaultId("bar-crashes")]._replace(lifts=(LiftId("clean-and-jerk"),))
    assert not list(rule(handmade(faults={crash.id: crash})))
