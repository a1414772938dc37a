"""The tries of the day in words."""

import pytest

from kb.ask.plan.fill import Slot
from kb.show.plan_tries import tries_said


def said(*tries: float) -> list[str]:
    """The lines for a day with these tries."""
    return tries_said(Slot(None, 1, "day", 9, tries=tries))  # type: ignore[arg-type]


def test_each_try_has_its_weight_when_to_take_it_and_when_to_repeat() -> None:
    """In one line each."""
    assert said(57.0, 59.0, 62.0) == [
        "First try, 57 kg: lifted in training. Take it once a single of about 53 kg was clean. Missed: the next try is"
        " this weight again.",
        "Second try, 59 kg: after a clean first. Missed: the last try is this weight again.",
        "Third try, 62 kg: only after a clean second. No fourth, whatever happens.",
    ]


@pytest.mark.parametrize(("tries", "last"), [((21.0, 22.0), "Second try, 22 kg"), ((20.0,), "First try, 20 kg")])
def test_where_the_wish_is_near_the_bar_there_are_fewer(tries: tuple[float, ...], last: str) -> None:
    """As many lines as tries."""
    assert len(said(*tries)) == len(tries)
    assert said(*tries)[-1].startswith(last)


def test_without_a_wish_nothing_is_said() -> None:
    """Singles then, as the day goes."""
    assert said() == []
