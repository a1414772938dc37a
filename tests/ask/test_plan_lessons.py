"""So many lessons and no more: the furthest part that is held by the last, against every part there is."""

import pytest

from kb.ask.path import path
from kb.ask.plan.lessons import MOST_NEW_TRIED, in_lessons, parts_by_nearness
from kb.ask.plan.plan import Plan, plan
from kb.ask.shelf import Shelf, ending_in
from kb.dials import spans, step
from kb.errors import NoAnswer
from kb.terms import DrillId, LiftId

pytestmark = pytest.mark.no_cover


def asking(shelf: Shelf, kit: str) -> "dict[tuple[DrillId | None, int], Plan | None]":
    """The plan to each part, with two to four new drills in a lesson; None where there is no path."""
    found: dict[tuple[DrillId | None, int], Plan | None] = {}
    for part in (None, *parts_by_nearness(shelf, shelf.kits[kit], ())):
        for new in range(2, MOST_NEW_TRIED + 1):
            try:
                way = path(ending_in(shelf, part) if part else shelf, have=shelf.kits[kit])
            except NoAnswer:
                found[part, new] = None
            else:
                found[part, new] = plan(way, per_week=2, minutes=45, new=new)
    return found


@pytest.mark.parametrize(("lift", "kit"), [("snatch", "stick"), ("clean", "hall"), ("jerk", "stick")])
def test_no_nearer_part_is_held_in_so_many_lessons(shelves: dict[LiftId, Shelf], lift: str, kit: str) -> None:
    """Nor the same with fewer new drills in a lesson; where none is held, none takes fewer sessions."""
    shelf = shelves[LiftId(lift)]
    every = asking(shelf, kit)

    def ask(part: DrillId | None, new: int) -> Plan:
        found = every[part, new]
        if found is None:
            raise NoAnswer("no path")
        return found

    parts = parts_by_nearness(shelf, shelf.kits[kit], ())
    order = [None, *parts]
    for lessons in (1, 3, 5, 8, 12, 30):
        found = in_lessons(ask, parts, lessons, 2)
        ends = found.ends
        assert ends is not None
        assert len(found.sessions) <= lessons == ends.lessons
        part = None if ends.part is None else ends.part.id
        within = {
            (new, order.index(each)) for (each, new), its in every.items() if its is not None and its.to_held <= lessons
        }
        if ends.short:
            assert not within
            least = min(its.to_held for its in every.values() if its is not None)
            assert (ends.short, len(found.sessions)) == (least - lessons, lessons)
        else:
            assert (ends.new, order.index(part)) == min(within)
        whole = every[None, 2]
        assert whole is not None
        assert ends.whole == whole.to_held


def test_parts_are_in_order_of_their_step_to_the_whole(shelves: dict[LiftId, Shelf]) -> None:
    """As the dials have it, and none that is held."""
    shelf = shelves[LiftId("snatch")]
    have, held = shelf.kits["hall"], DrillId("hang-snatch")
    parts = parts_by_nearness(shelf, have, [held])
    steps = [step(shelf.dials[part], shelf.dials[shelf.lift.drill], spans(shelf.lift)) for part in parts]
    assert steps == sorted(steps)
    assert held not in parts
    assert shelf.lift.drill not in parts
