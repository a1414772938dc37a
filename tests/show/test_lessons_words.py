"""What is said of lessons: how far they lead, what is met, what is left over."""

import pytest

from kb.ask.plan.filled import Lesson
from kb.ask.plan.lesson import Line, new_dose
from kb.ask.shelf import Shelf
from kb.show.lessons_words import left_said, named, until_said
from kb.terms import DrillId, ItemId, LiftId, Load


def line(shelf: Shelf, drill_id: str) -> Line:
    """A drill as it is shown for the first time."""
    drill = shelf.drills[DrillId(drill_id)]
    return Line("new", drill, Load.STICK, new_dose(drill), 3)


def test_a_hold_of_fewer_rounds_asks_for_so_many(shelves: dict[LiftId, Shelf]) -> None:
    """Two of two where its entry has four of four; what moves keeps its standard."""
    shelf = shelves[LiftId("clean")]
    assert until_said(line(shelf, "rack-hold")).startswith("2 of 2: bar touching both shoulders")
    pull = line(shelf, "slow-lift-off")
    assert until_said(pull).startswith(f"{pull.drill.standard.count} of {pull.drill.standard.of}: ")


def test_a_stiff_body_is_judged_by_its_own(shelves: dict[LiftId, Shelf]) -> None:
    """How often, and to what, in place of the standard's words."""
    squat = line(shelves[LiftId("snatch")], "overhead-squat")._replace(own="depth")
    assert until_said(squat) == "4 of 4 are steady to today's own depth"
    assert "today's own line" in until_said(squat._replace(own="line"))


def test_a_name_says_what_is_in_the_hands(shelves: dict[LiftId, Shelf]) -> None:
    """A stick where the entry knows more, the bar that is used, and what is practised on the way out."""
    shelf = shelves[LiftId("clean")]
    shown = line(shelf, "hang-power-clean")
    assert named(shown, shelf.items) == "Hang power clean, stick"
    assert named(shown._replace(using=ItemId("training-bar")), shelf.items) == "Hang power clean, training bar"
    assert named(shown._replace(kind="miss"), shelf.items) == "The way out: hang power clean, stick"


@pytest.mark.parametrize(("left", "says"), [(0, ""), (4, "for questions"), (60, "enough for one lesson")])
def test_what_is_left_is_said(left: int, says: str) -> None:
    """Nothing of none; of much that it needs no filling."""
    said = left_said(Lesson(1, 10, (), left, None))
    assert says in said
    assert bool(said) == bool(left)
