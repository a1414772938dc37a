"""Weeks of two sessions and of three by turns: every law is kept, and the last of the fullest week falls out."""

import pytest
from plan_paths import found_path, nodes
from plan_rules import broken_plan_rules
from shipped import worlds

from kb.ask.plan.away import Away
from kb.ask.plan.kilograms import Goal
from kb.ask.plan.plan import Home, plan
from kb.ask.plan.turns import day_of, place_of, week_of
from kb.ask.plan.until import last_by
from kb.ask.shelf import Shelf
from kb.errors import BadInput
from kb.make.library import Library
from kb.show.plan_json import plan_json
from kb.terms import DrillId, LiftId

pytestmark = pytest.mark.no_cover

WEEKS = 7
"""Days of a week."""


@pytest.mark.parametrize("turns", [(2, 3), (3, 2), (1, 2), (1, 3, 2), (1, 1)])
@pytest.mark.parametrize("away", [(), (3,)])
@pytest.mark.parametrize("home", [0, 1])
def test_every_law_is_kept_in_weeks_by_turns(
    shelves: dict[LiftId, Shelf], library: Library, turns: tuple[int, ...], away: tuple[int, ...], home: int
) -> None:
    """And no plan has fewer sessions than the bound beside it. One session at most is left for rest."""
    shelf, found = shelves[LiftId("snatch")], found_path(shelves, "snatch", "hall")
    at_home = Home(home, shelf.kits["home"]) if home else None
    planned = plan(found, per_week=turns, minutes=40, away=Away(away), home=at_home)
    answer = plan_json(planned, None, {})
    world = worlds(library)[LiftId("snatch")]
    assert answer["turns"] == list(turns)
    broken = broken_plan_rules(answer, world, shelf.kits["hall"], nodes(found), home=shelf.kits["home"])
    assert [each for each in broken if not each.endswith("nothing in it")] == []
    assert len(broken) <= 1
    assert planned.lower_bound <= len(planned.sessions)


@pytest.mark.parametrize("turns", [(2, 3), (3, 1, 2), (7, 1)])
@pytest.mark.parametrize("away", [(), (2,), (2, 5)])
def test_each_week_has_its_number_and_keeps_its_days(turns: tuple[int, ...], away: tuple[int, ...]) -> None:
    """A week away takes its turn; the days are those of the fullest week."""
    fullest = [day_of(n, max(turns)) for n in range(1, max(turns) + 1)]
    for week in range(1, 12):
        own = [n for n in range(1, 80) if week_of(n, turns, away) == week]
        assert len(own) == (0 if week in away else turns[(week - 1) % len(turns)])
        assert [day_of(n, turns, away) - WEEKS * (week - 1) for n in own] == fullest[: len(own)]
        assert [place_of(n, turns, away).at for n in own] == list(range(len(own)))


@pytest.mark.parametrize("per_week", range(1, 8))
@pytest.mark.parametrize("away", [(), (2,), (3, 4)])
def test_one_number_is_the_same_as_that_number_by_turns(per_week: int, away: tuple[int, ...]) -> None:
    """However often it is said."""
    for n in range(1, 60):
        places = {place_of(n, turns, away) for turns in (per_week, (per_week,), (per_week, per_week))}
        assert len(places) == 1


@pytest.mark.parametrize("turns", [(2, 3), (3, 2), (1, 4)])
@pytest.mark.parametrize("weeks", [4, 5, 9])
def test_to_a_day_weeks_by_turns_end_on_it(shelves: dict[LiftId, Shelf], turns: tuple[int, ...], weeks: int) -> None:
    """The last session is the day with its wish; in each week but that of the day the last session is the heavy one."""
    found, have = found_path(shelves, "clean-and-jerk", "hall"), shelves[LiftId("clean-and-jerk")].kits["hall"]
    planned = plan(
        found,
        per_week=turns,
        minutes=60,
        goal=Goal(WEEKS * weeks - 1, 62.0, 58.0, 15.0),
        held=True,
        have=have,
        weak=DrillId("full-jerk"),
    )
    assert len(planned.sessions) == last_by(WEEKS * weeks - 1, 0, turns)
    lift = [(session.week, slot) for session in planned.sessions for slot in session.slots if slot.form.is_lift]
    assert (lift[-1][0], lift[-1][1].kg) == (weeks, 62.0)
    for week in range(1, weeks):
        own = [slot.kg for each, slot in lift if each == week]
        assert len(own) == turns[(week - 1) % len(turns)]
        assert own[-1] == max(own)
    assert all(session.minutes <= 60 for session in planned.sessions)


@pytest.mark.parametrize("turns", [(2, 0), (8, 2), ()])
def test_a_week_that_cant_be_is_refused(shelves: dict[LiftId, Shelf], turns: tuple[int, ...]) -> None:
    """As a single number is."""
    with pytest.raises(BadInput, match="a plan has from 1 to 7"):
        plan(found_path(shelves, "snatch", "hall"), per_week=turns, minutes=40)
