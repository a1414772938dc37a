"""The weeks in which a lift that is held is built up, as kb/docs/plan.md has them."""

from collections.abc import Mapping

import pytest
from plan_paths import found_path

from kb.ask.plan.block import LIMITS, Limits
from kb.ask.plan.kilograms import Goal
from kb.ask.plan.plan import Plan, Session, plan
from kb.ask.shelf import Shelf
from kb.errors import BadInput, NoAnswer
from kb.terms import Catch, Drill, DrillId, LiftId, Load, Speed

pytestmark = pytest.mark.no_cover


def built(
    shelves: Mapping[LiftId, Shelf],
    lift: str,
    per_week: int,
    minutes: int,
    weeks: int,
    weak: str | None = None,
    limits: Limits = LIMITS,
) -> Plan:
    """The building-up weeks of who holds the lift."""
    goal = Goal(7 * weeks - 1, 100.0, 91.0)
    have = shelves[LiftId(lift)].kits["full"]
    return plan(
        found_path(shelves, lift, "full"),
        per_week=per_week,
        minutes=minutes,
        held=True,
        goal=goal,
        have=have,
        weak=None if weak is None else DrillId(weak),
        limits=limits,
    )


def strength(session: Session) -> list[Drill]:
    """What strengthens in a session."""
    return [slot.form.drill for slot in session.slots if slot.kind == "finish"]


def squats(drill: Drill) -> bool:
    """Whether both legs bend all the way, in repetitions, slowly."""
    return drill.catch is Catch.FULL and drill.dose.reps > 0 and drill.dose.sides == 1 and drill.speed < Speed.FULL


def leans(drill: Drill) -> bool:
    """Whether the back is held in a lean, in repetitions."""
    return drill.catch is Catch.NONE and drill.dose.reps > 0 and drill.dose.sides == 1 and "jerk" not in drill.lifts


@pytest.mark.parametrize("minutes", [30, 45, 60, 90])
@pytest.mark.parametrize("per_week", [1, 2, 3, 5])
@pytest.mark.parametrize("lift", ["snatch", "clean", "jerk", "clean-and-jerk"])
def test_what_strengthens_comes_every_week_of_a_block(
    shelves: dict[LiftId, Shelf], lift: str, per_week: int, minutes: int
) -> None:
    """The same on each weekday, once a week, four at most, within the minutes; no two squats, no two leans."""
    planned = built(shelves, lift, per_week, minutes, 19)
    seen: dict[tuple[int, int], list[Drill]] = {}
    for session in planned.sessions[:-per_week]:
        own = strength(session)
        assert session.minutes <= minutes
        assert len(own) <= 4
        assert sum(map(squats, own)) <= 1
        assert sum(map(leans, own)) <= 1
        if session.light:
            assert own == []
        elif session.n < len(planned.sessions) - 1:
            at = ((session.week - 1) // 4, (session.n - 1) % per_week)
            assert own == seen.setdefault(at, own)
    for block in {block for block, _ in seen}:
        ids = [drill.id for (each, _), own in seen.items() if each == block for drill in own]
        assert len(ids) == len(set(ids))


@pytest.mark.parametrize("per_week", [2, 3])
def test_every_block_has_the_main_ones_and_others_beside_them(shelves: dict[LiftId, Shelf], per_week: int) -> None:
    """Back squat, deadlift and the heavy dip for a clean and jerk; not all that is beside them is the same."""
    planned = built(shelves, "clean-and-jerk", per_week, 60, 19)
    blocks: dict[int, set[DrillId]] = {}
    for session in planned.sessions[: -2 * per_week]:
        blocks.setdefault((session.week - 1) // 4, set()).update(drill.id for drill in strength(session))
    assert all({"back-squat", "deadlift", "heavy-dip"} <= own for own in blocks.values())
    assert blocks[0] != blocks[1]


@pytest.mark.parametrize("per_week", [1, 2, 3, 5])
def test_before_the_day_the_legs_are_spared(shelves: dict[LiftId, Shelf], per_week: int) -> None:
    """Presses at most in its week; in the session before it, and on it, nothing strengthens."""
    planned = built(shelves, "clean-and-jerk", per_week, 60, 18)
    assert [strength(session) for session in planned.sessions[-2:]] == [[], []]
    week = planned.sessions[-per_week:]
    assert all(drill.catch is Catch.STANDING and drill.dose.reps for session in week for drill in strength(session))


@pytest.mark.parametrize("per_week", [1, 2, 3])
@pytest.mark.parametrize(
    ("lift", "main"),
    [
        ("clean-and-jerk", ["full-clean", "full-jerk", "front-squat"]),
        ("clean", ["hang-clean", "front-squat"]),
        ("snatch", ["hang-snatch", "overhead-squat"]),
        ("jerk", ["power-jerk"]),
    ],
)
def test_the_parts_of_the_lift_come_at_weight(
    shelves: dict[LiftId, Shelf], lift: str, main: list[str], per_week: int
) -> None:
    """As many main ones as sessions a week, every week but the light ones; 80 % at most, a pull 100 %."""
    planned = built(shelves, lift, per_week, 60, 18)
    for week in range(1, 17):
        sessions = [session for session in planned.sessions if session.week == week]
        parts = [slot for session in sessions for slot in session.slots if slot.kind == "part"]
        if sessions[0].light:
            assert parts == []
            continue
        assert {slot.form.drill.id for slot in parts} >= set(main[:per_week])
        for slot in parts:
            assert slot.kg is not None
            assert 45 <= slot.kg <= (100 if slot.form.drill.catch is Catch.NONE else 80)
        # with parts at weight there are no light checks
        assert all(slot.kind != "keep" for session in sessions for slot in session.slots)


def test_who_learnt_the_lift_by_the_plan_has_only_parts_that_it_had_at_a_weight(shelves: dict[LiftId, Shelf]) -> None:
    """Beside them the light checks stay."""
    found, have = found_path(shelves, "snatch", "hall"), shelves[LiftId("snatch")].kits["hall"]
    planned = plan(found, per_week=3, minutes=40, goal=Goal(7 * 20 - 1, 40.0), have=have)
    loaded = {form.drill.id for form in planned.forms if form.load >= Load.LIGHT}
    slots = [slot for session in planned.sessions for slot in session.slots]
    parts = {slot.form.drill.id for slot in slots if slot.kind == "part"}
    assert parts
    assert parts <= loaded
    assert planned.until is not None
    after = [session for session in planned.sessions[planned.until.held_in :] if not session.light]
    assert any(slot.kind == "keep" for session in after for slot in session.slots)


@pytest.mark.parametrize("weak", ["full-clean", "full-jerk", "front-squat", "push-press"])
@pytest.mark.parametrize("per_week", [1, 2, 3])
@pytest.mark.parametrize("minutes", [30, 60])
def test_what_lags_behind_begins_each_week_before_the_lift(
    shelves: dict[LiftId, Shelf], minutes: int, per_week: int, weak: str
) -> None:
    """At weight, in every week but the light ones and, a squat, the last session before the day."""
    planned = built(shelves, "clean-and-jerk", per_week, minutes, 18, weak)
    assert planned.weak == weak
    for session in planned.sessions[:-2:per_week]:
        if session.light:
            continue
        first = session.slots[0]
        assert (first.form.drill.id, first.kind) == (weak, "part")
        assert first.kg is not None
        assert session.minutes <= minutes


@pytest.mark.parametrize(
    ("weak", "says"),
    [
        ("full-snatch", "no part of the clean and jerk that could lag"),
        ("full-clean-and-jerk", "no part of the clean and jerk that could lag"),
        ("back-squat", "no part of the clean and jerk that could lag"),
        ("slow-lift-off", "no part of the clean and jerk that this plan has at a weight"),
    ],
)
def test_what_is_no_part_of_the_lift_is_refused(shelves: dict[LiftId, Shelf], weak: str, says: str) -> None:
    """In a sentence, with the nearest parts."""
    with pytest.raises(BadInput, match=says) as refused:
        built(shelves, "clean-and-jerk", 2, 60, 9, weak)
    assert refused.value.nearest[:2] == ("full-clean", "full-jerk")


def test_what_lags_behind_must_fit_beside_the_lift(shelves: dict[LiftId, Shelf]) -> None:
    """The least minutes that would do are said, and they do."""
    with pytest.raises(NoAnswer, match="the least that will do is 27"):
        built(shelves, "clean-and-jerk", 2, 26, 9, "full-jerk")
    assert built(shelves, "clean-and-jerk", 2, 27, 9, "full-jerk").sessions


@pytest.mark.parametrize("weak", [None, "full-jerk", "front-squat"])
@pytest.mark.parametrize("squat_days", [0, 1, 2])
@pytest.mark.parametrize("finish", [0, 1, 2, 3])
@pytest.mark.parametrize("per_week", [1, 2, 3, 5])
def test_no_more_squats_a_week_and_no_more_finishers_a_session_than_were_asked_for(
    shelves: dict[LiftId, Shelf], per_week: int, finish: int, squat_days: int, weak: str | None
) -> None:
    """A squat that is a part of the lift counts too; a lift from the floor doesn't."""
    limits = Limits(squat_days, finish)
    if weak == "front-squat" and not squat_days:
        with pytest.raises(BadInput, match="Front squat lags behind and is a squat"):
            built(shelves, "clean-and-jerk", per_week, 60, 9, weak, limits)
        return
    sessions = built(shelves, "clean-and-jerk", per_week, 60, 9, weak, limits).sessions
    for week in {session.week for session in sessions}:
        own = [session for session in sessions if session.week == week]
        assert sum(any(squats(slot.form.drill) for slot in session.slots) for session in own) <= squat_days
    most = max(len(strength(session)) for session in sessions)
    assert most == finish
