"""The weeks in which a lift that is held is built up, as kb/docs/plan.md has them."""

from collections.abc import Mapping

import pytest
from plan_paths import found_path

from kb.ask.plan.kilograms import Goal
from kb.ask.plan.plan import Plan, Session, plan
from kb.ask.shelf import Shelf
from kb.terms import Catch, Drill, DrillId, LiftId, Speed

pytestmark = pytest.mark.no_cover


def built(
    shelves: Mapping[LiftId, Shelf], lift: str, per_week: int, minutes: int, weeks: int, kit: str = "full"
) -> Plan:
    """The building-up weeks of who holds the lift."""
    goal = Goal(7 * weeks - 1, 100.0, 91.0)
    have = shelves[LiftId(lift)].kits[kit]
    return plan(found_path(shelves, lift, kit), per_week=per_week, minutes=minutes, held=True, goal=goal, have=have)


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
