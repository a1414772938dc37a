"""Every plan of the shipped library and of random ones keeps the laws of kb/docs/plan.md, and is short."""

import os
import random
import re
import subprocess
import sys
from importlib.resources import files
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from plan_paths import KITS, LIFTS, found_path, nodes
from plan_rules import DoneRow, broken_plan_rules
from reading import World
from shipped import worlds
from small_answers import built
from strategies import PathQuestion, path_questions
from worlds import shelf_of

from kb.ask.path import Order, Path, path
from kb.ask.plan.forms import EXPOSURES
from kb.ask.plan.past import Done
from kb.ask.plan.plan import Plan, plan
from kb.ask.shelf import Shelf
from kb.errors import BadInput, NoAnswer
from kb.make.library import Library
from kb.show.plan_json import plan_json
from kb.terms import DrillId, ItemId, LiftId, Load

pytestmark = pytest.mark.no_cover


def judged(
    planned: Plan, world: World, have: frozenset[ItemId], found: Path, done: list[DoneRow] | None = None
) -> tuple[list[str], dict[str, Any]]:
    """What is wrong with a plan, and its JSON."""
    answer = plan_json(planned, None, {})
    return broken_plan_rules(answer, world, have, nodes(found), done or []), answer


@pytest.mark.parametrize("minutes", [20, 40, 60])
@pytest.mark.parametrize("per_week", [1, 2, 3])
@pytest.mark.parametrize("kit", KITS)
@pytest.mark.parametrize("lift", LIFTS)
def test_every_plan_from_nothing_keeps_every_law(
    shelves: dict[LiftId, Shelf], library: Library, lift: str, kit: str, per_week: int, minutes: int
) -> None:
    """All lifts, kits, sessions a week and minutes; at 40 min never more than 1.25 times the least there could be."""
    shelf, found = shelves[LiftId(lift)], found_path(shelves, lift, kit)
    planned = plan(found, per_week=per_week, minutes=minutes)
    wrong, answer = judged(planned, worlds(library)[LiftId(lift)], shelf.kits[kit], found)
    assert wrong == []
    ratio = len(answer["sessions"]) / answer["lower_bound"]
    assert ratio <= (1.25 if minutes >= 40 else 1.5)


@pytest.mark.parametrize(("lift", "kit", "order"), [("clean", "full", "down"), ("snatch", "stick", "up")])
def test_floor_first_and_top_first_keep_the_laws_too(
    shelves: dict[LiftId, Shelf], library: Library, lift: str, kit: str, order: Order
) -> None:
    """Whichever way the lift is put together."""
    shelf = shelves[LiftId(lift)]
    found = path(shelf, have=shelf.kits[kit], order=order)
    for per_week in (1, 2, 3):
        planned = plan(found, per_week=per_week, minutes=40)
        wrong, answer = judged(planned, worlds(library)[LiftId(lift)], shelf.kits[kit], found)
        assert wrong == []
        assert len(answer["sessions"]) <= 1.25 * answer["lower_bound"]


def test_the_documents_say_how_often_as_the_program_does() -> None:
    """The table of kb/docs/plan.md, row by row."""
    text = (files("kb") / "docs" / "plan.md").read_text("utf-8")
    rows = re.findall(r"^\| [^|]+ \| (\d) \| [^|]+ \|$", text, re.MULTILINE)
    assert [int(row) for row in rows] == [times for times, _ in EXPOSURES.values()]


def test_a_plan_is_one_that_a_coach_can_use(shelves: dict[LiftId, Shelf]) -> None:
    """No stretch again and again, no session of one drill but in a light week, no forty sessions for a jerk."""
    for lift, most in (("jerk", 14), ("clean", 14), ("snatch", 18), ("clean-and-jerk", 28)):
        planned = plan(found_path(shelves, lift, "full"), per_week=2, minutes=40)
        assert len(planned.sessions) <= most
        came = [slot.form for session in planned.sessions for slot in session.slots]
        assert max((came.count(form) for form in came if form.prepares), default=0) <= 2
        assert max(came.count(form) for form in came) <= 8
        assert all(len(session.slots) > 1 or session.light for session in planned.sessions[:-1])
        assert all(len(session.slots) <= 7 for session in planned.sessions)


@settings(deadline=None, max_examples=60, suppress_health_check=[HealthCheck.too_slow])
@given(path_questions(), st.integers(1, 7), st.sampled_from([20, 30, 40, 60]), st.randoms(use_true_random=False))
def test_random_libraries_keep_every_law(
    question: tuple[World, PathQuestion], per_week: int, minutes: int, rng: random.Random
) -> None:
    """A plan through a small random library, and after a random history of it, keeps the laws."""
    world, asked = question
    try:
        found = path(shelf_of(world), have=asked.have, holds=asked.holds, order=asked.order)
        planned = plan(found, per_week=per_week, minutes=minutes)
    except NoAnswer:
        return
    wrong, answer = judged(planned, world, asked.have, found)
    assert [each for each in wrong if not each.endswith("nothing in it")] == []
    rows = history(planned, rng, rng.randint(1, len(answer["sessions"])), 0.7)
    again = plan(
        found, per_week=per_week, minutes=minutes, done=[Done(n, drill, met, load) for n, drill, load, met in rows]
    )
    wrong, _ = judged(again, world, asked.have, found, rows)
    assert [each for each in wrong if not each.endswith("nothing in it")] == []


def history(planned: Plan, rng: random.Random, sessions: int, met: float) -> list[DoneRow]:
    """The first sessions of a plan as they might have gone."""
    return [
        (session.n, slot.form.drill.id, rng.choice([slot.form.load, None]), rng.random() < met)
        for session in planned.sessions[:sessions]
        for slot in session.slots
    ]


@pytest.mark.parametrize("seed", range(12))
@pytest.mark.parametrize(("lift", "kit"), [("clean", "stick"), ("snatch", "full"), ("clean-and-jerk", "hall")])
def test_a_plan_made_anew_goes_on_from_what_was_done(
    shelves: dict[LiftId, Shelf], library: Library, lift: str, kit: str, seed: int
) -> None:
    """Three times over: some weeks go well or badly, the plan is made anew, and the laws hold across the seam."""
    rng, shelf = random.Random(seed), shelves[LiftId(lift)]
    found, rows = found_path(shelves, lift, kit), list[DoneRow]()
    planned = plan(found, per_week=2, minutes=40)
    for _ in range(3):
        rows += history(planned, rng, rng.randint(1, 6), rng.choice([0.5, 0.8, 1.0]))
        done = [Done(n, drill, met, load) for n, drill, load, met in rows]
        planned = plan(found, per_week=2, minutes=40, done=done)
        wrong, answer = judged(planned, worlds(library)[LiftId(lift)], shelf.kits[kit], found, rows)
        assert wrong == []
        # the bound knows no light weeks, in which nothing new goes on the bar
        heavy = [each for each in answer["sessions"] if not each["light"]]
        assert len(heavy) <= max(1.25 * answer["lower_bound"], answer["lower_bound"] + 2)


def test_all_met_as_planned_leaves_the_plan_as_it_was(shelves: dict[LiftId, Shelf]) -> None:
    """What goes as expected changes nothing in how long it takes."""
    found = found_path(shelves, "snatch", "hall")
    planned = plan(found, per_week=2, minutes=40)
    for count in (1, 4, 9):
        done = [
            Done(session.n, slot.form.drill.id, True, slot.form.load)
            for session in planned.sessions[:count]
            for slot in session.slots
        ]
        again = plan(found, per_week=2, minutes=40, done=done)
        assert again.sessions[0].n == count + 1
        assert again.sessions[-1].n <= planned.sessions[-1].n


def test_what_was_not_met_comes_again(shelves: dict[LiftId, Shelf]) -> None:
    """A first drill that wasn't met comes once more in the next session, and what stands on it waits."""
    found = found_path(shelves, "clean", "stick")
    first = found.entries[0].drill.id
    again = plan(found, per_week=2, minutes=40, done=[Done(1, first, met=False)])
    slot = next(slot for slot in again.sessions[0].slots if slot.form.drill.id == first)
    assert (slot.kind, slot.again, slot.exposure) == ("work", True, 1)


def test_a_lift_that_is_held_needs_no_plan(shelves: dict[LiftId, Shelf]) -> None:
    """Met often enough at its most load, whatever else was recorded."""
    found = found_path(shelves, "jerk", "full")
    done = [Done(n, DrillId("full-jerk"), True, Load.WORKING) for n in (1, 2)]
    again = plan(found, per_week=2, minutes=40, done=done)
    assert (again.sessions, again.lower_bound, again.begun) == ((), 0, 2)


def test_who_has_it_heavier_has_it_lighter(shelves: dict[LiftId, Shelf]) -> None:
    """A form met at some load takes its lighter forms with it, and a drill that isn't in the plan is named."""
    found = found_path(shelves, "snatch", "full")
    done = [Done(3, DrillId("full-snatch"), True, Load.WORKING), Done(3, DrillId("push-press"), True)]
    again = plan(found, per_week=2, minutes=40, done=done)
    came = {(slot.form.load, slot.kind) for session in again.sessions for slot in session.slots if slot.form.is_lift}
    assert came <= {(Load.WORKING, "check"), (Load.WORKING, "keep")}
    assert again.others == (DrillId("push-press"),)


def test_a_row_without_a_load_is_about_the_lightest_that_is_not_held(shelves: dict[LiftId, Shelf]) -> None:
    """And one at a load that the plan hasn't, about the next lighter."""
    found = found_path(shelves, "jerk", "hall")
    jerk = DrillId("full-jerk")
    past = plan(
        found, per_week=2, minutes=40, done=[Done(1, jerk, True), Done(2, jerk, True), Done(3, jerk, True)]
    ).past
    assert [each.met for each in past[-3:]] == [2, 1, 0]
    past = plan(found, per_week=2, minutes=40, done=[Done(1, DrillId("slow-dip"), True, Load.WORKING)]).past
    assert sum(each.met for each in past) == 1
    past = plan(found, per_week=2, minutes=40, done=[Done(1, jerk, True, Load.NONE)]).past
    assert [each.met for each in past[-3:]] == [1, 0, 0]


@pytest.mark.parametrize(("per_week", "minutes"), [(0, 40), (8, 40), (15, 40), (2, 0), (2, -5), (2, 241), (2, 10**9)])
def test_numbers_out_of_range_are_refused(shelves: dict[LiftId, Shelf], per_week: int, minutes: int) -> None:
    """In one sentence that says the range."""
    with pytest.raises(BadInput, match=r"from 1 to \d+"):
        plan(found_path(shelves, "jerk", "full"), per_week=per_week, minutes=minutes)


def test_too_few_minutes_say_the_least_that_would_do(shelves: dict[LiftId, Shelf]) -> None:
    """One minute less has no answer; the least named does."""
    for lift in LIFTS:
        found = found_path(shelves, lift, "full")
        with pytest.raises(NoAnswer, match="the least that will do is") as refused:
            plan(found, per_week=2, minutes=1)
        least = int(str(refused.value).rpartition(" ")[2])
        assert plan(found, per_week=2, minutes=least).sessions
        with pytest.raises(NoAnswer):
            plan(found, per_week=2, minutes=least - 1)


def test_time_left_goes_to_what_is_new(shelves: dict[LiftId, Shelf]) -> None:
    """Full doses that fit the minutes left, never a stretch, working weight or in a light week."""
    planned = plan(found_path(shelves, "snatch", "full"), per_week=2, minutes=40)
    assert any(session.more for session in planned.sessions)
    for session in planned.sessions:
        assert sum(form.work for form in session.more) <= session.spare <= 40 - session.minutes
        assert not any(form.prepares or form.load is Load.WORKING for form in session.more)
        assert not (session.light and session.more)


def test_the_same_question_has_the_same_plan_whatever_the_hash_seed() -> None:
    """Two processes with other seeds print the same JSON."""
    script = (
        "from kb.commands.plan import command\ncommand(['clean-and-jerk', '--json'], obj=None, standalone_mode=False)"
    )
    said = {
        subprocess.run(
            [sys.executable, "-c", script],
            env={**os.environ, "PYTHONHASHSEED": seed, "DRILLPATH_LIBRARY": str(built())},
            check=True,
            capture_output=True,
        ).stdout
        for seed in ("0", "1", "77")
    }
    assert len(said) == 1
