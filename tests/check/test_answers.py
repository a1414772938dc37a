"""That a library is asked all it can be asked, and answered as its catalogue would answer."""

from dataclasses import replace

from broken_cases import sound
from handmade import library as handmade

from kb.check.answers import answers
from kb.terms import FaultId


def test_every_fault_cause_lift_and_kit_is_asked() -> None:
    """One answer for each, and a shelf for each lift."""
    library = sound()
    asked = answers(library)
    wanted = {
        (lift, fault.id, cause.id, kit)
        for fault in library.faults.values()
        for lift in fault.lifts
        for cause in fault.causes
        for kit in library.kits
    }
    found = [tuple(each.question) for each in asked.chains]
    assert len(found) == len(set(found))
    assert set(found) == wanted
    assert set(asked.shelves) == set(library.lifts)


def test_what_has_no_chain_says_why_and_whether_it_can_be_rehearsed() -> None:
    """A stick shows no fault that needs weight: what can be done all the same is said."""
    answer = next(each for each in answers(sound()).chains if each.question[2:] == ("weak-legs-off-floor", "stick"))
    assert answer.drills == ()
    assert "at stick load" in answer.why
    assert answer.rehearsed


def test_an_earlier_fault_of_another_lift_is_not_asked_about() -> None:
    """It is told by a rule of its own; here there would be no chain to look for."""
    library = handmade()
    hips = library.faults[FaultId("hips-rise")]
    moved = replace(
        library, faults={**library.faults, hips.id: hips._replace(lifts=("jerk",), phases=(("rack", "split"),))}
    )
    assert not [each for each in answers(moved).chains if each.question.cause == "made-by-hips"]
