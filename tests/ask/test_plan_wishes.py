"""Plans with days at home, for who did the lift before, and to a day with a weight: the laws of kb/docs/plan.md."""

import pytest
from plan_paths import found_path, nodes
from plan_rules import broken_plan_rules
from shipped import worlds

from kb.ask.plan.forms import ONCE_HELD
from kb.ask.plan.kilograms import BEGIN_AT, MOST_MORE_KG, Goal
from kb.ask.plan.past import Done
from kb.ask.plan.plan import Home, plan
from kb.ask.plan.turns import day_of
from kb.ask.plan.until import last_by
from kb.ask.shelf import Shelf
from kb.errors import BadInput
from kb.make.library import Library
from kb.show.plan_json import plan_json
from kb.terms import LiftId, Load, Stage

pytestmark = pytest.mark.no_cover

WEEKS = 7
"""Days of a week."""


@pytest.mark.parametrize("new", [2, 4])
@pytest.mark.parametrize(("coached", "home"), [(1, 2), (2, 1), (3, 2)])
@pytest.mark.parametrize(("lift", "kit"), [("snatch", "hall"), ("clean-and-jerk", "full"), ("jerk", "stick")])
def test_with_days_at_home_every_law_is_kept(
    shelves: dict[LiftId, Shelf], library: Library, lift: str, kit: str, coached: int, home: int, new: int
) -> None:
    """Nothing new at home, nothing heavy, only what can be done there; and the lift is first held with a coach."""
    shelf, found = shelves[LiftId(lift)], found_path(shelves, lift, kit)
    at_home = shelf.kits["home"]
    planned = plan(found, per_week=coached, minutes=40, new=new, home=Home(home, at_home))
    answer = plan_json(planned, None, {})
    world = worlds(library)[LiftId(lift)]
    assert broken_plan_rules(answer, world, shelf.kits[kit], nodes(found), new=new, home=at_home) == []
    assert sum(session["home"] for session in answer["sessions"]) > 0


def test_practice_at_home_makes_a_plan_shorter_in_weeks(shelves: dict[LiftId, Shelf]) -> None:
    """One lesson a week: with two days at home, or more new drills in a lesson, it takes fewer weeks."""
    found, home = found_path(shelves, "clean-and-jerk", "hall"), shelves[LiftId("clean-and-jerk")].kits["home"]

    def weeks(new: int, at_home: Home | None) -> int:
        return plan(found, per_week=1, minutes=45, new=new, home=at_home).sessions[-1].week

    assert weeks(2, Home(2, home)) < weeks(2, None)
    assert weeks(4, Home(2, home)) < weeks(2, Home(2, home))


@pytest.mark.parametrize("per_week", [1, 2, 3])
@pytest.mark.parametrize(("lift", "kit"), [("snatch", "hall"), ("clean", "full"), ("jerk", "hall")])
def test_who_has_done_it_before_is_looked_at_and_not_taught(
    shelves: dict[LiftId, Shelf], library: Library, lift: str, kit: str, per_week: int
) -> None:
    """Nothing is shown as new, every law is kept, and it takes at most half the sessions of a beginner."""
    shelf, found = shelves[LiftId(lift)], found_path(shelves, lift, kit)
    planned = plan(found, per_week=per_week, minutes=40, known=True)
    answer = plan_json(planned, None, {})
    world = worlds(library)[LiftId(lift)]
    assert broken_plan_rules(answer, world, shelf.kits[kit], nodes(found), known=True) == []
    assert not any(each["new"] for session in answer["sessions"] for each in session["drills"])
    assert 2 * len(planned.sessions) <= len(plan(found, per_week=per_week, minutes=40).sessions) + 1


def test_what_is_not_shown_again_is_worked_on(shelves: dict[LiftId, Shelf]) -> None:
    """One round that doesn't meet its standard, and the drill comes back in full in the next session."""
    found = found_path(shelves, "snatch", "hall")
    first = next(entry for entry in found.entries if entry.drill.stage is not Stage.PREPARE).drill.id
    again = plan(found, per_week=3, minutes=40, known=True, done=[Done(1, first, met=False)])
    slot = next(slot for slot in again.sessions[0].slots if slot.form.drill.id == first)
    assert (slot.kind, slot.again, slot.minutes) == ("work", True, slot.form.work)
    assert ONCE_HELD["else"][0] == 1


def should_go(loaded: list[int], per_week: int, begins: float, ends: float) -> list[float]:
    """What should go by each loaded session but the last, the day, read again from kb/docs/plan.md.

    Week by week two steps up and one level, anew after a light week, whose days but the heavy one begin half a step
    lower; the week of the day stays, the day is the last step.
    """
    steps, at, place, last = list[float](), 0.0, 0, 0
    week_of_day = (loaded[-1] - 1) // per_week
    for week in sorted({(n - 1) // per_week for n in loaded}):
        own = [n for n in loaded[:-1] if (n - 1) // per_week == week]
        after_light = bool(steps) and week > last + 1
        place = 0 if after_light else place
        up = 1.0 if place % 3 < 2 and week != week_of_day else 0.0
        heavy, others = at + up, at - 0.5 if after_light else at + up
        steps += [heavy if n == own[-1] and week != week_of_day else others for n in own]
        at, place, last = heavy, place + 1, week
    return [begins + each * (ends - begins) / (at + 1) for each in steps]


@pytest.mark.parametrize(("weight", "first"), [(35.0, None), (35.0, 30.0), (60.0, None), (100.0, 90.0), (15.0, 15.0)])
@pytest.mark.parametrize("per_week", [1, 2, 3, 5])
@pytest.mark.parametrize("weeks", [4, 6, 9])
def test_to_a_day_the_weight_grows_in_a_wave_with_heavy_and_easy_days(
    shelves: dict[LiftId, Shelf], weeks: int, per_week: int, weight: float, first: float | None
) -> None:
    """What should go grows in a wave, by 2.5 kg a session on average, to the wish; sessions are a share of it."""
    found = found_path(shelves, "snatch", "hall")
    goal = Goal(WEEKS * weeks - 1, weight, first, bar_kg=15.0)
    planned = plan(found, per_week=per_week, minutes=40, known=True, goal=goal)
    assert planned.until is not None
    if planned.until.short or planned.until.last == planned.until.held_in:
        return
    kg = [
        (session.n, slot.kg)
        for session in planned.sessions
        for slot in session.slots
        if slot.kind in ("build", "day") and slot.kg is not None
    ]
    begins = first if first is not None else max(15.0, int(BEGIN_AT * weight))
    ends = min(weight, int(begins + MOST_MORE_KG * len(kg)))
    assert planned.until.reached_kg == kg[-1][1] == ends
    for (n, each), by_then in zip(kg[:-1], should_go([n for n, _ in kg], per_week, begins, ends), strict=True):
        assert each == int(each) >= 15.0
        assert n < planned.until.last
        # rounded down to a whole kilogram, and never less than the bar
        assert 0.7 * by_then - 1 < each <= max(0.9 * by_then, 15.0)
    weeks_of = sorted({(n - 1) // per_week for n, _ in kg[:-1]})
    heavy = [max(each for n, each in kg[:-1] if (n - 1) // per_week == week) for week in weeks_of]
    assert heavy[:-1] == sorted(heavy[:-1])


def test_who_holds_the_lift_goes_straight_to_building_it_up(shelves: dict[LiftId, Shelf]) -> None:
    """No drill is shown or checked first; without a day there is nothing to plan."""
    found = found_path(shelves, "clean-and-jerk", "full")
    planned = plan(found, per_week=2, minutes=60, held=True, goal=Goal(WEEKS * 14 - 1, 60.0, 48.0, 15.0))
    assert planned.until is not None
    assert (planned.until.held_in, planned.until.short, planned.until.reached_kg) == (0, 0, 60.0)
    assert len(planned.sessions) == 28
    kinds = {slot.kind for session in planned.sessions for slot in session.slots}
    assert kinds == {"keep", "build", "day"}  # nothing there is named, so no parts at weight
    assert plan(found, per_week=2, minutes=60, held=True).sessions == ()


def test_after_the_lift_is_held_it_is_built_up_and_light_weeks_stay_light(shelves: dict[LiftId, Shelf]) -> None:
    """The lift in every session, no more than there is time for; one easy round in a light week, none at home."""
    shelf, found = shelves[LiftId("snatch")], found_path(shelves, "snatch", "hall")
    home = Home(1, shelf.kits["home"])
    goal = Goal(WEEKS * 14 - 1, 40.0)
    planned = plan(found, per_week=2, minutes=40, home=home, new=3, goal=goal, have=shelf.kits["hall"])
    assert planned.until is not None
    assert planned.until.short == 0
    after = [session for session in planned.sessions if session.n > planned.until.held_in]
    assert len(after) > 8
    held = {slot.form.drill.id for session in planned.sessions for slot in session.slots if slot.kind != "finish"}
    for session in after:
        assert session.minutes <= 40
        heavy = [slot for slot in session.slots if slot.form.load is Load.WORKING]
        is_day = any(slot.kind == "day" for slot in session.slots)
        assert any(slot.form.is_lift for slot in session.slots)
        if session.at_home:
            assert heavy == []
        elif session.light and not is_day:
            assert all(slot.kind == "keep" and slot.kg <= 0.7 * 40 for slot in heavy)
        if session.at_home:
            assert all(slot.form.at_home for slot in session.slots)
        for slot in session.slots:
            assert slot.form.drill.id in held or all(held & set(group) for group in slot.form.drill.groups)
    days = [session.n for session in after if any(slot.kind == "day" for slot in session.slots)]
    assert days == [after[-1].n]
    assert not after[-1].at_home
    strengthens = [slot for session in after for slot in session.slots if slot.kind == "finish"]
    assert {slot.form.drill.stage for slot in strengthens} == {Stage.FINISH}
    assert len({slot.form.drill.id for slot in strengthens}) > 2


def test_too_little_time_is_said_with_what_would_do(shelves: dict[LiftId, Shelf]) -> None:
    """Each way named holds the lift by the day; one less doesn't. The part named is held by then."""
    found = found_path(shelves, "clean", "hall")
    goal = Goal(WEEKS * 5 - 1)
    planned = plan(found, per_week=2, minutes=40, goal=goal)
    assert planned.until is not None
    assert planned.until.short == planned.until.held_in - 10 > 0
    ways = dict(planned.until.in_time)
    assert ways
    for name, value in ways.items():
        for each, enough in ((value, True), (value - 1, False)):
            asked = {"per_week": 2, "new": 2} | {name: each}
            other = plan(found, minutes=40, goal=goal, **asked)
            assert other.until is not None
            assert (other.until.short == 0) is enough
    part = planned.until.part
    assert part is not None
    ends = [slot for session in planned.sessions[:10] for slot in session.slots if slot.form.drill.id == part.drill.id]
    assert any(slot.exposure >= slot.form.exposures for slot in ends)


@pytest.mark.parametrize("per_week", range(1, 8))
@pytest.mark.parametrize("begun", [0, 1, 5])
def test_the_last_session_by_a_day_is_the_last_that_falls_before_or_on_it(per_week: int, begun: int) -> None:
    """Counted again from the days that sessions fall on."""
    for days in range(60):
        origin = day_of(begun + 1, per_week)
        there = [n for n in range(begun + 1, begun + 80) if day_of(n, per_week) - origin <= days]
        assert last_by(days, begun, per_week) == there[-1]


@pytest.mark.parametrize(
    ("kit", "goal", "says"),
    [
        ("stick", Goal(60, 30.0), "needs a bar and discs"),
        ("hall", Goal(60, 18.0), "less than the bar, which weighs 20 kg"),
        ("hall", Goal(60, 30.0, 35.0), "can't begin at 35 kg"),
        ("hall", Goal(60, 30.0, 10.0), "can't begin at 10 kg"),
    ],
)
def test_a_weight_that_cannot_be_is_refused(shelves: dict[LiftId, Shelf], kit: str, goal: Goal, says: str) -> None:
    """In one sentence."""
    with pytest.raises(BadInput, match=says):
        plan(found_path(shelves, "snatch", kit), per_week=2, minutes=40, goal=goal)
