"""Who is afraid of a drill: the way out, then small steps; the library's own causes of the kind nerve say which."""

import sqlite3
from typing import Any

import pytest

from kb.ask import read
from kb.ask.fear import MOST_STEPS, steps_for
from kb.ask.swap import swap
from kb.terms import DrillId, ItemId, LiftId, Speed

HALL = frozenset(map(ItemId, ("bar", "stick", "discs", "headroom", "mat", "wall", "chair", "floor-line", "drop-floor")))


@pytest.fixture(scope="module")
def world(db: sqlite3.Connection) -> dict[str, Any]:
    return {"drills": read.drills(db), "items": read.items(db), "lifts": read.lifts(db)}


def test_steps_act_on_nerve_and_are_not_quick(db: sqlite3.Connection, world: dict[str, Any]) -> None:
    """Each acts on a cause of that kind of a fault of the lift; the slowest first."""
    faults = read.faults(db)
    for lift in ("snatch", "clean", "jerk"):
        steps = steps_for([LiftId(lift)], world["drills"].values(), faults)
        assert len(steps) >= 2
        assert [each.speed for each in steps] == sorted(each.speed for each in steps)
        for each in steps:
            kinds = {faults[said.fault].cause(said.cause).kind for said in each.faults if said.cause}
            assert "nerve" in kinds
            assert each.speed < Speed.FULL


def test_a_swap_for_who_is_afraid_begins_with_the_way_out(db: sqlite3.Connection, world: dict[str, Any]) -> None:
    """Then up to four steps; nothing quick stands in, and nothing is named twice."""
    for name in ("drop-under", "tall-clean", "jerk-balance", "high-hang-snatch"):
        drill = world["drills"][DrillId(name)]
        steps = steps_for(drill.lifts, world["drills"].values(), read.faults(db))
        found = swap(drill, HALL, **world, instead=True, steps=steps)
        out = [each for each in found.gently if each.id.endswith("miss-practice")]
        assert list(found.gently[: len(out)]) == out
        assert bool(out) == (LiftId("jerk") not in drill.lifts)  # the jerk has no drill of it
        assert len(found.gently) <= MOST_STEPS + len(out)
        assert all(near.drill.speed < Speed.FULL for near in found.swaps)
        assert not {near.drill.id for near in found.swaps} & {each.id for each in found.gently}


def test_who_is_not_afraid_has_no_steps(world: dict[str, Any]) -> None:
    assert swap(world["drills"][DrillId("drop-under")], HALL, **world, instead=True).gently == ()
