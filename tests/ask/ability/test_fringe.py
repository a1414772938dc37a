"""What is ready and what is shaky: by the definitions, by what the path search does, and on the shipped library."""

import pytest
from and_or import Groups, and_or, founded, learnable
from handmade import drill
from hypothesis import given, settings
from hypothesis import strategies as st

from kb.ask.ability.fringe import Closed, Fringe, closed, fringe
from kb.ask.path import path
from kb.ask.shelf import Shelf, with_drills
from kb.errors import NoAnswer
from kb.terms import Drill, DrillId, Item, ItemId, Lift, LiftId, Load, Stage, Standard, StandIn

CLEAN, JERK = LiftId("clean"), LiftId("jerk")
LIFT = Lift(CLEAN, "Clean", (), (), DrillId("z"), Standard(1, 1, "still"))
A, B, C, D, Z = (DrillId(each) for each in "abcdz")
BAR, STICK = ItemId("bar"), ItemId("stick")
ITEMS = {BAR: Item(BAR, "Bar", stand_ins=(StandIn(STICK, "weight", load=Load.STICK),)), STICK: Item(STICK, "Stick")}


def drills_in(groups: Groups, **stages: Stage) -> dict[DrillId, Drill]:
    """Drills of the clean with these prerequisites."""
    return {
        each: drill(each, *map(tuple, needed), stage=stages.get(each, Stage.SEGMENT)) for each, needed in groups.items()
    }


def at(drills: dict[DrillId, Drill], *holds: DrillId, have: tuple[ItemId, ...] = ()) -> Fringe:
    """The fringes towards the clean."""
    return fringe(drills, holds, [LIFT], have=have, items=ITEMS)


def ready(found: Fringe) -> list[DrillId]:
    """What is ready, in order."""
    return [each.drill.id for each in found.ready]


# --- closing ---


@settings(max_examples=100, deadline=None)
@given(and_or(circles=True), st.data())
def test_closed_sets(groups: Groups, data: st.DataObject) -> None:
    """What is named stays; every group of what is held is met; what was added is said; a closed set adds nothing."""
    holds = data.draw(st.sets(st.sampled_from(list(groups))))
    found = closed(groups, holds)
    assert found.held == holds | set(found.granted)
    assert not holds & set(found.granted)
    assert all(any(each in found.held for each in group) for one in found.held for group in groups[one])
    assert closed(groups, found.held) == Closed(found.held, (), ())
    assert {group[0] for group in found.chosen} <= set(found.granted)


@settings(max_examples=60, deadline=None)
@given(and_or(), st.data())
def test_single_prerequisites_close_to_the_least_set(groups: Groups, data: st.DataObject) -> None:
    """Where no group offers a choice, the closed set is the least state that holds what is named."""
    single = {each: [group[:1] for group in needed] for each, needed in groups.items()}
    holds = data.draw(st.sets(st.sampled_from(list(groups))))
    assert closed(single, holds).held == min((state for state in founded(single) if state >= holds), key=len)


def test_a_group_met_by_what_is_certain_is_not_chosen() -> None:
    """c needs a or b, d needs b and c: b is certain, so nothing is chosen; without d, a stands for the two."""
    groups: Groups = {A: [], B: [], C: [[A, B]], D: [[B], [C]]}
    assert closed(groups, {D}) == Closed(frozenset((B, C, D)), (B, C), ())
    assert closed(groups, {C}) == Closed(frozenset((A, C)), (A,), ((A, B),))


# --- the fringes ---


@settings(max_examples=100, deadline=None)
@given(and_or(), st.data())
def test_fringes_by_their_definitions(groups: Groups, data: st.DataObject) -> None:
    """8.01: K with q is a state for each ready q, and no other; K without q for each shaky q, and no other."""
    states = founded(groups)
    state = data.draw(st.sampled_from(sorted(states, key=lambda each: (len(each), sorted(each)))))
    found = at({**drills_in(groups), Z: drill("z")}, *state)
    assert set(ready(found)) - {Z} == {each for each in groups if each not in state and state | {each} in states}
    assert {each.drill.id for each in found.shaky} == {each for each in state if state - {each} in states}


@settings(max_examples=60, deadline=None)
@given(and_or(), st.data())
def test_what_a_ready_drill_brings(groups: Groups, data: st.DataObject) -> None:
    """Counted again from the definitions: what it opens, what waits for it, whether every way leads through it."""
    goal = list(groups)[-1]
    every = {**groups, Z: [[goal]]}
    states = founded(groups)
    state = data.draw(st.sampled_from(sorted(states, key=lambda each: (len(each), sorted(each)))))
    with_held: Groups = {each: [] if each in state else needed for each, needed in every.items()}
    can = learnable(with_held, frozenset(every))
    for each in at(drills_in(every), *state).ready:
        q = each.drill.id
        without = learnable(with_held, frozenset(every) - {q})
        assert each.waiting == len(can - without - {q})
        assert each.must == ((CLEAN,) if Z not in without else ())
        assert set(each.opens) == {
            other
            for other in set(every) - state - {q}
            if all(any(m in state | {q} for m in group) for group in every[other])
            and not all(any(m in state for m in group) for group in every[other])
        }
        assert each.may or not each.must
        assert all(any(m in group for group in every[q]) and m in state for m in each.met)


def test_most_useful_first() -> None:
    """First what every way to the lift leads through, then what one way does, then what most waits for; then by id."""
    groups: Groups = {
        A: [],
        B: [],
        C: [],
        D: [],
        Z: [[D], [B, C]],
        DrillId("e"): [[A]],
        DrillId("f"): [[A]],
        DrillId("g"): [],
        DrillId("h"): [[B]],
        DrillId("i"): [[B]],
    }
    assert ready(at(drills_in(groups))) == [D, B, C, A, "g"]
    assert ready(at(drills_in(groups), C)) == [D, A, B, "g"]


def test_preparation_only_where_something_is_built_on_it() -> None:
    """a serves the lift and is asked for, b nothing; strengthening is never ready, and neither is ever shaky."""
    groups: Groups = {A: [], B: [], C: [], Z: [[A]]}
    drills = drills_in(groups, a=Stage.PREPARE, b=Stage.PREPARE, c=Stage.FINISH)
    assert ready(at(drills)) == [A]
    assert ready(at(drills, A, B, C)) == [Z]
    assert at(drills, A, B, C).shaky == ()


def test_only_what_serves_the_lift() -> None:
    """A jerk drill is neither ready nor shaky towards the clean, unless the lift is built on it."""
    drills = {A: drill("a", lifts=(JERK,)), B: drill("b", lifts=(JERK,)), Z: drill("z", A)}
    assert ready(at(drills)) == [A]
    assert ready(at(drills, A)) == [Z]
    assert [each.drill.id for each in at(drills, A, B).shaky] == []
    assert [each.drill.id for each in at(drills, Z, B).shaky] == [Z]


def test_what_a_shaky_drill_holds_up() -> None:
    """Drills of the lift that are built on it and not yet held, whatever else they need; most of them first."""
    groups: Groups = {A: [], B: [], C: [[A], [Z]], D: [[A, B]], Z: [[B]]}
    drills = {**drills_in(groups), DrillId("j"): drill("j", "a", lifts=(JERK,))}
    assert [(each.drill.id, each.opens) for each in at(drills, A, B).shaky] == [(A, (C, D)), (B, (D, Z))]


def test_within_the_kit() -> None:
    """What the gear doesn't allow is named apart; what it does is begun at the least load, a stick before a bar."""
    drills = {
        A: drill("a", load=(Load.STICK, Load.WORKING), equipment=(BAR,)),
        B: drill("b", load=(Load.LIGHT, Load.WORKING), equipment=(BAR,)),
    }
    nothing, stick, both = at(drills), at(drills, have=(STICK,)), at(drills, have=(STICK, BAR))
    assert [each.id for each in nothing.other_gear] == [A, B]
    assert (ready(stick), [each.id for each in stick.other_gear]) == ([A], [B])
    assert [(each.load, each.gear[0].using) for each in both.ready] == [(Load.STICK, STICK), (Load.LIGHT, BAR)]


def test_a_goal_that_cannot_be_come_to() -> None:
    """Where no way leads to the lift, no drill is said to be on every way to it."""
    found = at(drills_in({A: [], Z: [[A], [B]], B: [[C]], C: [[B]]}))
    assert [(each.drill.id, each.must, each.may, each.waiting) for each in found.ready] == [(A, (), (CLEAN,), 0)]


def test_the_lift_itself_held() -> None:
    """Then nothing is on a way to it, and it is the last thing learnt."""
    found = at(drills_in({A: [], B: [], Z: [[A]]}), Z)
    assert (ready(found), [each.drill.id for each in found.shaky]) == ([B], [Z])
    assert found.ready[0].must == found.ready[0].may == ()


# --- the shipped library ---


@pytest.mark.parametrize("lift", ["clean", "jerk", "snatch"])
def test_shipped_as_the_path_search_has_it(lift: str, shelves: dict[LiftId, Shelf]) -> None:
    """After each entry of the path from nothing, the path search can do each ready drill at once, and no other one."""
    shelf = shelves[LiftId(lift)]
    have = shelf.kits["full"]
    held: tuple[DrillId, ...] = ()
    for entry in path(shelf, have=have).entries[::4]:
        held = tuple(dict.fromkeys((*held, entry.drill.id)))
        found = fringe(shelf.drills, held, [shelf.lift], have=have, items=shelf.items)
        there = set(ready(found))
        for drill_id, each in shelf.drills.items():
            if each.stage in (Stage.PREPARE, Stage.FINISH) or drill_id in found.closed.held:
                continue
            some = with_drills(shelf, _only(shelf, each, found.closed.held))
            on = some._replace(lift=shelf.lift._replace(drill=drill_id))
            try:
                done = path(on, have=have, holds=found.closed.held).entries
            except NoAnswer:
                done = ()
            assert ({entry.drill.id for entry in done} == {drill_id}) == (drill_id in there), drill_id


def _only(shelf: Shelf, one: Drill, held: frozenset[DrillId]) -> dict[DrillId, Drill]:
    """The drills of a shelf that are held, and one more."""
    return {drill_id: each for drill_id, each in shelf.drills.items() if drill_id in held or drill_id == one.id}


def test_shipped_from_nothing(shelves: dict[LiftId, Shelf]) -> None:
    """A new lifter's first drills for the clean: gateways that nothing comes before."""
    shelf = shelves[CLEAN]
    found = fringe(shelf.drills, (), [shelf.lift], have=shelf.kits["full"], items=shelf.items)
    assert {each.drill.id for each in found.ready if each.must} == {"rack-hold", "air-squat", "thigh-slide"}
    assert not found.shaky
