"""A second lift for a day with two: it begins each session, and every law of what is heavy holds for both."""

from itertools import product

import pytest
from plan_paths import found_path

from kb.ask.plan.away import Away
from kb.ask.plan.block import Limits
from kb.ask.plan.kilograms import Goal
from kb.ask.plan.plan import Plan, plan
from kb.ask.plan.second import SECOND_SHARE, Also
from kb.ask.shelf import Shelf
from kb.errors import BadInput, NoAnswer
from kb.terms import DrillId, LiftId

pytestmark = pytest.mark.no_cover

WEEKS = 7
"""Days of a week."""

Asked = tuple[tuple[int, ...], int, int, tuple[int, ...], str | None]

ASKED: list[Asked] = list(product(((1,), (2,), (3,), (2, 3)), (60, 90), (5, 9), ((), (3,)), (None, "full-jerk")))
"""Sessions a week by turns, minutes, weeks, those away, and what lags behind."""


def built(shelves: dict[LiftId, Shelf], asked: Asked) -> Plan:
    """Weeks to a day with both lifts, held today."""
    turns, minutes, weeks, away, weak = asked
    days = WEEKS * weeks - 1
    return plan(
        found_path(shelves, "clean-and-jerk", "full"),
        per_week=turns,
        minutes=minutes,
        held=True,
        goal=Goal(days, 62.0, 58.0, 15.0),
        have=shelves[LiftId("clean-and-jerk")].kits["full"],
        weak=None if weak is None else DrillId(weak),
        away=Away(away),
        limits=Limits(1, 2),
        also=Also(found_path(shelves, "snatch", "full"), Goal(days, 48.0, 43.0, 15.0)),
    )


@pytest.mark.parametrize("asked", ASKED)
def test_the_second_lift_begins_each_session_in_its_part_of_the_minutes(
    shelves: dict[LiftId, Shelf], asked: Asked
) -> None:
    """The snatch and its parts before all else; about 40 % of what the warm-up leaves; no drill twice."""
    for session in built(shelves, asked).sessions:
        ids = [slot.form.drill.id for slot in session.slots]
        assert len(set(ids)) == len(ids)
        lifts = [slot.form.drill.id for slot in session.slots if slot.form.is_lift]
        assert lifts == ["full-snatch", "full-clean-and-jerk"]
        to_it = session.slots[: ids.index("full-snatch") + 1]
        assert all("snatch" in slot.form.drill.lifts for slot in to_it)
        assert sum(slot.minutes for slot in to_it) <= SECOND_SHARE * (asked[1] - session.warm_up)
        assert session.minutes <= asked[1]


@pytest.mark.parametrize("asked", ASKED)
def test_each_lift_has_its_own_weights_its_opener_and_three_tries(shelves: dict[LiftId, Shelf], asked: Asked) -> None:
    """Nothing but the last try is the wish, and the first was lifted before."""
    planned = built(shelves, asked)
    for drill, wish in (("full-snatch", 48.0), ("full-clean-and-jerk", 62.0)):
        slots = [slot for session in planned.sessions for slot in session.slots if slot.form.drill.id == drill]
        assert slots[-1].kind == "day"
        assert slots[-1].tries[-1] == slots[-1].kg == wish
        assert slots[-1].tries[0] < slots[-1].tries[1] < wish
        assert all(slot.kg is not None and max(slot.kg, slot.singles_kg or 0) < wish for slot in slots[:-1])
        assert [slot.singles_kg for slot in slots if slot.rehearses] == [slots[-1].tries[0]]


@pytest.mark.parametrize(
    ("lift", "other", "held", "goal", "says"),
    [
        ("clean-and-jerk", "clean", True, Goal(60, 62.0), "no two lifts: one is part of the other"),
        ("jerk", "jerk", True, Goal(60, 62.0), "no two lifts"),
        ("snatch", "clean-and-jerk", True, Goal(60, 40.0), "the snatch comes first on the day"),
        ("clean-and-jerk", "snatch", False, Goal(60, 62.0), "both held today"),
        ("clean-and-jerk", "snatch", True, Goal(60), "a weight for each lift"),
        ("clean-and-jerk", "snatch", True, None, "needs a day"),
    ],
)
def test_a_second_lift_that_cant_be_is_refused(
    shelves: dict[LiftId, Shelf], lift: str, other: str, held: bool, goal: Goal | None, says: str
) -> None:
    """In one sentence, with what to say instead."""
    also = Also(found_path(shelves, other, "full"), Goal(60, 40.0))
    with pytest.raises(BadInput, match=says):
        plan(found_path(shelves, lift, "full"), per_week=2, minutes=60, held=held, goal=goal, also=also)


def test_two_lifts_need_so_many_minutes(shelves: dict[LiftId, Shelf]) -> None:
    """The least that would do is said, and it does."""
    with pytest.raises(NoAnswer, match="the least that will do is 26"):
        built(shelves, ((2,), 20, 5, (), None))
    assert built(shelves, ((2,), 26, 5, (), None)).sessions
