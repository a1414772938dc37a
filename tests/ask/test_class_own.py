"""What each of a class does, on the shipped library: who learns, who goes to a part of the lift, who holds it."""

import sqlite3
from functools import cache

import pytest

from kb.ask import read
from kb.ask.class_.doing import Own
from kb.ask.class_.own import own_of
from kb.ask.class_.people import PLENTY, Class, Lifter
from kb.errors import NoAnswer
from kb.terms import DrillId, LiftId, Load, Stage

pytestmark = pytest.mark.no_cover

CLEAN = LiftId("clean")


def own(
    db: sqlite3.Connection,
    *holds: str,
    to: str | None = None,
    new: int = 2,
    minutes: int = 60,
    kg: float | None = None,
    kit: str = "hall",
) -> Own:
    """What one lifter of the hall does who holds some drills."""
    hall = dict.fromkeys(read.kits(db)[kit], PLENTY)
    lifter = Lifter("A", CLEAN, holds=frozenset(map(DrillId, holds)), weight_kg=kg)
    asked = Class("c", (lifter,), hall, minutes, 1, to=DrillId(to) if to else None, new_at_once=new)
    (found,) = own_of(asked, cache(lambda lift: read.shelf(db, lift)))
    return found


def shown(found: Own) -> list[str]:
    """The new drills of a list, preparation apart."""
    return list(dict.fromkeys(each.drill.id for each in found.doings if each.drill.stage is not Stage.PREPARE))


@pytest.mark.parametrize("new", [1, 2, 4])
def test_a_learner_is_shown_as_many_new_drills_as_the_class_says(db: sqlite3.Connection, new: int) -> None:
    """In the order of the path; what is left of it is another day's."""
    found = own(db, new=new)
    assert len(shown(found)) == new
    assert shown(own(db, new=4))[:new] == shown(found)
    assert found.later > 0


def test_fewer_are_shown_where_the_minutes_hold_no_more(db: sqlite3.Connection) -> None:
    """However many are asked for."""
    assert len(shown(own(db, new=6, minutes=20))) < 6


def test_learners_go_to_the_part_that_the_class_names(db: sqlite3.Connection) -> None:
    """Whatever leads only to the whole is left out; all of a short way fits one evening."""
    part = own(db, to="tall-clean", new=6)
    whole = own(db, new=6)
    assert part.later < whole.later


def test_who_holds_the_lift_is_led_into_it_and_does_it(db: sqlite3.Connection) -> None:
    """Two drills that lead into it as checks, then the lift in full, none of them above light; nothing is new."""
    found = own(db, "full-clean")
    *before, lift = found.doings
    assert lift.drill.id == "full-clean"
    assert lift.work
    assert 1 <= len(before) <= 2
    assert not any(each.work for each in before)
    assert all(each.load <= Load.LIGHT for each in found.doings)
    assert {each.drill.id for each in found.doings} <= found.knows


def test_who_holds_the_lift_may_have_a_day_s_weight(db: sqlite3.Connection) -> None:
    """The lift is a check at a light bar, then done at that weight; with a stick alone there is no such weight."""
    found = own(db, "full-clean", kg=60.0)
    *_, light, heavy = found.doings
    assert {light.drill.id, heavy.drill.id} == {"full-clean"}
    assert (light.load, light.work) == (Load.LIGHT, False)
    assert (heavy.load, heavy.work) == (Load.WORKING, True)
    assert found.by_themselves
    with pytest.raises(NoAnswer, match="60 kg needs a bar"):
        own(db, "full-clean", kg=60.0, kit="stick")
