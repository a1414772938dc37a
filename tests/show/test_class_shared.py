"""A class that has no plan is told how to share what it has: by hand, with the arithmetic shown."""

from dataclasses import dataclass

import pytest

from kb.ask.class_.people import PLENTY, Class, Lifter
from kb.show.class_shared import shared_text
from kb.show.setting import Setting
from kb.terms import FaultId, ItemId, LiftId


@dataclass(frozen=True)
class Case:
    """What there is to hold, for how many, and what is said of it."""

    have: dict[str, int]
    lifters: int
    said: tuple[str, ...]


CASES = (
    Case({"bar": 1, "stick": 2}, 10, ("1 bar and 2 sticks for 10 lifters", "groups of 4", "about 5 min")),
    Case({"stick": 3}, 6, ("3 sticks for 6 lifters", "groups of 2", "about 10 min")),
    Case({"stick": 6}, 6, ()),
    Case({"bench": 2}, 6, ()),
    Case({"stick": PLENTY}, 6, ()),
)


@pytest.mark.parametrize("case", CASES, ids=str)
def test_groups_and_minutes_by_hand(case: Case) -> None:
    """20 minutes after the warm-up, divided among those who share a thing; nothing where nobody has to share."""
    lifters = tuple(Lifter(f"L{n}", LiftId("clean"), FaultId("early-arm-bend")) for n in range(case.lifters))
    asked = Class("C", lifters, {ItemId(item): count for item, count in case.have.items()}, 30, 1)
    text = " ".join(" ".join(shared_text(asked, Setting())).split())
    assert all(part in text for part in case.said)
    assert bool(text) == bool(case.said)
    if case.said:
        assert f"for {case.lifters}: drillpath chain early-arm-bend --lift clean --kit stick" in text


def test_who_learns_is_given_the_path() -> None:
    """A lifter without a fault has no chain."""
    lifters = (Lifter("A", LiftId("jerk")), Lifter("B", LiftId("jerk"), FaultId("jerk-press-out"), "late"))
    text = "\n".join(shared_text(Class("C", lifters, {ItemId("stick"): 1}, 30, 1), Setting()))
    assert "who learns:  drillpath path jerk --kit stick" in text
    assert "--cause late" in text


def test_each_lift_that_is_learnt_has_its_own_path() -> None:
    """Whoever stands first in the file, and each lift once."""
    lifters = (
        Lifter("A", LiftId("jerk"), FaultId("jerk-press-out"), "late"),
        Lifter("B", LiftId("clean")),
        Lifter("C", LiftId("clean")),
        Lifter("D", LiftId("snatch")),
    )
    asked = Class("C", lifters, {ItemId("stick"): 1}, 30, 1)
    learnt = [line for line in shared_text(asked, Setting()) if "who learns" in line]
    assert learnt == [f"  who learns:  drillpath path {lift} --kit stick" for lift in ("clean", "snatch")]
