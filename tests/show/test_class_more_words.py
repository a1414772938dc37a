"""What is said of who has ended early: on cards, in the chart, and first of all who can't go on."""

import pytest
from class_told import STICK, drill, planned

from kb.show.class_more import more_line, more_said
from kb.show.class_sheet import class_sheet
from kb.show.class_text import class_text
from kb.show.setting import Setting
from kb.terms import Dose, ItemId, Load

BAR = ItemId("bar")


@pytest.mark.parametrize(
    ("dose", "said"),
    [
        (Dose(rounds=3, reps=5, rest_s=30), "rounds of 5 with 30 s between, "),
        (Dose(rounds=3, hold_s=20, rest_s=15), "rounds of 20 s held with 15 s between, "),
        (
            Dose(rounds=2, reps=4, hold_s=5, sides=2, rest_s=40),
            "rounds of 4 and 5 s held each side with 40 s between, ",
        ),
    ],
)
def test_a_card_says_the_rounds_and_until_when(dose: Dose, said: str) -> None:
    """Whoever has had enough stretches."""
    plan = planned(1, drill("stand", STICK)._replace(dose=dose))
    more = plan.lifters[0].more
    assert more is not None
    assert more_line(more) == f"More: Stand, {said}stick, until 60:00."
    text = " ".join(" ".join(class_text(plan, Setting(), with_solver=True)).split())
    assert f"floor More: Stand, {said}stick" in text
    assert "a small letter more of it" in text
    page = class_sheet(plan, "a4", with_solver=True)
    assert "More: Stand" in page
    assert '<td class="more"' in page
    assert ">a</td>" in page


def test_drills_by_turns_are_said_in_one_line() -> None:
    """What is the same for all of them once."""
    plan = planned(1, drill("sit", STICK), drill("stand", STICK))
    more = plan.lifters[0].more
    assert more is not None
    assert more_line(more) == (
        "More, 4 min of each by turns, stick, until 60:00: Stand, rounds of 5 with"
        " 30 s between; Sit, rounds of 5 with 30 s between."
    )
    both = planned(2, drill("sit", BAR), drill("lift", BAR), have={BAR: 1}, load=Load.LIGHT).lifters[0].more
    assert both is not None
    assert "of each by turns, in turns with L1, light bar, until" in more_line(both)


def test_two_in_turns_are_told_with_whom() -> None:
    """Their rest is the other's round."""
    plan = planned(2, drill("lift", BAR), have={BAR: 1}, load=Load.LIGHT)
    more = plan.lifters[0].more
    assert more is not None
    assert "rounds of 5 in turns with L1, light bar, until" in more_line(more)


def test_who_goes_on_and_who_stands_free_is_said() -> None:
    """With the time from which; nothing where everyone works to the end."""
    plan = planned(2, drill("stand"))
    (said,) = more_said(plan)
    assert said.startswith("Whoever has ended 3 min or more before the class goes on with a drill of their list")
    first, second = plan.lifters
    free = more_said(plan._replace(lifters=(first._replace(more=None), second)))[1]
    assert free == "Free at the end, as what they would go on with is out: L0 from 13:00."
    assert more_said(planned(2, drill("stand"), minutes=14)) == []
