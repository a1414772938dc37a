"""Weeks without sessions: they are passed over, they are the light ones, and the way back begins lower."""

from itertools import pairwise

import pytest
from plan_paths import found_path, nodes
from plan_rules import broken_plan_rules
from shipped import worlds

from kb.ask.plan.away import AWAY_FINISH, AWAY_KNOWN, Away, first, there, unloaded
from kb.ask.plan.kilograms import Goal
from kb.ask.plan.plan import Plan, plan
from kb.ask.plan.turns import day_of, week_of
from kb.ask.shelf import Shelf
from kb.errors import BadInput
from kb.kit import fit
from kb.make.library import Library
from kb.show.plan_json import plan_json
from kb.terms import ItemId, LiftId, Load, Speed, Stage

pytestmark = pytest.mark.no_cover

WEEKS = 7
"""Days of a week."""


@pytest.mark.parametrize("away", [(2,), (3,), (4,), (5,), (2, 3), (3, 6, 7), (5, 9)])
@pytest.mark.parametrize("per_week", [1, 2, 3])
def test_every_law_is_kept_round_weeks_away(
    shelves: dict[LiftId, Shelf], library: Library, away: tuple[int, ...], per_week: int
) -> None:
    """Sessions are counted on, no session is in a week away, and light weeks are counted anew after one."""
    shelf, found = shelves[LiftId("snatch")], found_path(shelves, "snatch", "hall")
    planned = plan(found, per_week=per_week, minutes=40, away=Away(away))
    answer = plan_json(planned, None, {})
    assert broken_plan_rules(answer, worlds(library)[LiftId("snatch")], shelf.kits["hall"], nodes(found)) == []
    assert {session["week"] for session in answer["sessions"]}.isdisjoint(away)
    assert [session["n"] for session in answer["sessions"]] == list(range(1, len(answer["sessions"]) + 1))


def test_dates_pass_over_the_weeks_away() -> None:
    """The weekday of a session stays what it was."""
    for n in range(1, 30):
        assert week_of(n, 3, (2, 5)) not in {2, 5}
        assert (day_of(n, 3, (2, 5)) - day_of(n, 3)) % WEEKS == 0


def built_up(shelves: dict[LiftId, Shelf], away: tuple[int, ...], weeks: int = 9) -> Plan:
    """A snatch that is held, from 55 to 60 kg."""
    found = found_path(shelves, "snatch", "hall")
    have = shelves[LiftId("snatch")].kits["hall"]
    goal = Goal(WEEKS * weeks - 1, 60.0, 55.0)
    return plan(found, per_week=3, minutes=60, held=True, goal=goal, have=have, away=Away(away))


@pytest.mark.parametrize("away", [(3,), (4,), (5,), (6,), (3, 4), (4, 7)])
def test_the_way_back_begins_lower_and_the_day_has_its_weight(
    shelves: dict[LiftId, Shelf], away: tuple[int, ...]
) -> None:
    """The first heavy day after a week away is no heavier than the last before; the day is what was wished for."""
    planned = built_up(shelves, away)
    assert planned.until is not None
    lift = {
        session.n: (session.week, slot.kg)
        for session in planned.sessions
        for slot in session.slots
        if slot.form.is_lift and slot.kind == "build"
    }
    most = {week: max(kg for each, kg in lift.values() if each == week) for week, _ in lift.values()}
    for before, after in pairwise(sorted(most)):
        if any(before < gone < after for gone in away):
            assert most[after] <= most[before]
            firsts = [kg for week, kg in lift.values() if week == after]
            assert firsts[0] < most[before]
    assert planned.sessions[-1].slots[-1].kg == 60.0
    assert planned.sessions[-1].week == 9


def test_a_week_away_is_the_light_one_and_none_is_right_before_the_day(shelves: dict[LiftId, Shelf]) -> None:
    """Four weeks from one to the next, none just before one away, none in the last week before that of the day."""

    def light(away: tuple[int, ...], weeks: int) -> list[int]:
        sessions = built_up(shelves, away, weeks).sessions
        return sorted({session.week for session in sessions if session.light})

    assert light((), 9) == [4]
    assert light((), 11) == [4, 8]
    assert light((5,), 12) == [9]
    assert light((3,), 12) == [7]
    assert light((4,), 12) == [8]


def test_a_light_week_of_who_holds_the_lift_keeps_it_up_with_an_easy_weight(shelves: dict[LiftId, Shelf]) -> None:
    """No empty bar and no strength work: one round of the lift and of a part at no more than 70 % of what should go."""
    sessions = [session for session in built_up(shelves, ()).sessions if session.light]
    assert len(sessions) == 3
    for session in sessions:
        assert {slot.kind for slot in session.slots} == {"keep"}
        assert any(slot.form.is_lift for slot in session.slots)
        assert all(slot.kg is not None and 20 <= slot.kg <= 0.7 * 60 for slot in session.slots)
        assert session.minutes <= 10 + 25


@pytest.mark.parametrize(
    "have", [(), ("dumb-bell", "bench", "towel"), ("hand-weight", "mat", "wall"), ("stick", "headroom")]
)
def test_what_is_named_for_a_week_away_can_be_done_there(shelves: dict[LiftId, Shelf], have: tuple[str, ...]) -> None:
    """With exactly what there is; nothing new of the lift; what strengthens stands on the plan, or on empty hands."""
    shelf = shelves[LiftId("clean-and-jerk")]
    planned = plan(found_path(shelves, "clean-and-jerk", "hall"), per_week=2, minutes=40)
    away = Away((5,), frozenset(map(ItemId, have)))
    found, known = there(shelf, away, planned.forms), {form.drill.id for form in planned.forms}
    assert len({form.drill.id for form in found}) == len(found) <= AWAY_FINISH + AWAY_KNOWN
    for form in found:
        assert fit(form.drill, away.have, shelf.items) is not None
        if form.drill.stage is Stage.FINISH:
            shown = {drill.id for drill in first(shelf, away, form, planned.forms)}
            assert all((known | shown) & set(group) for group in form.drill.groups)
            assert shown <= unloaded(shelf, away)
        else:
            assert form.drill.id in known
            assert form.load <= Load.STICK
    if "dumb-bell" in have:
        assert found
        assert found[0].drill.stage is Stage.FINISH
        assert not any(form.dials.speed is Speed.FULL for form in found if form.drill.stage is not Stage.FINISH)


@pytest.mark.parametrize(
    ("away", "said"),
    [((1,), "week 1 can't be away: the next session is in it"), ((9,), "week 9 can't be away: the day is in week 9")],
)
def test_a_week_that_cant_be_away_is_refused(shelves: dict[LiftId, Shelf], away: tuple[int, ...], said: str) -> None:
    """That of the next session, and from that of the day on."""
    with pytest.raises(BadInput, match=said):
        built_up(shelves, away)
