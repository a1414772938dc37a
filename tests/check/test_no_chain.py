"""That a cause without a chain is told once."""

from dataclasses import replace

from broken_cases import sound

from kb.check.table import check
from kb.terms import DrillId


def test_a_cause_that_no_drill_addresses_is_not_told_again() -> None:
    """It has no chain either, and that goes without saying."""
    library = sound()
    pull = library.drills[DrillId("floor-pull")]
    idle = replace(library, drills={**library.drills, pull.id: pull._replace(faults=())})
    assert [problem.code for problem in check(idle)] == ["unaddressed-cause"]
