"""Placing a lifter: what is asked next, what is never asked yet, when it ends, and what comes of it."""

from collections.abc import Sequence
from math import log2

import pytest
from and_or import Groups, and_or
from handmade import drill
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from kb.ask.ability.blim import entropy, expected_entropy, likely_after, rates_of
from kb.ask.ability.placement import Answer, Check, Placement, Says, budget_for, checks_of, place, shown
from kb.ask.ability.structure import Structure, structure
from kb.errors import BadInput, NoAnswer
from kb.terms import Catch, Drill, DrillId, Item, ItemId, Lift, LiftId, Load, Standard, StandIn

LIFT = Lift(LiftId("clean"), "Clean", (), (), DrillId("c"), Standard(1, 1, "still"))
A, B, C, D = (DrillId(each) for each in "abcd")
STICK, BAR, ROOM = ItemId("stick"), ItemId("bar"), ItemId("headroom")
ITEMS = {
    BAR: Item(BAR, "Bar", stand_ins=(StandIn(STICK, "weight", load=Load.STICK),)),
    STICK: Item(STICK, "Stick"),
    ROOM: Item(ROOM, "Headroom"),
}


def checks(items: Sequence[DrillId], guarded: frozenset[DrillId] = frozenset()) -> dict[DrillId, Check]:
    """A check for each item."""
    return {each: Check(drill(each), Load.NONE, (), each in guarded) for each in items}


def answered(text: str) -> tuple[Answer, ...]:
    """ "a+ b- c?" as answers: yes, no, skip."""
    says: dict[str, Says] = {"+": "yes", "-": "no", "?": "skip"}
    return tuple(Answer(DrillId(each[:-1]), says[each[-1]]) for each in text.split())


def asked(placement: Placement) -> DrillId | None:
    """What is asked next."""
    return placement.next.drill.id if placement.next else None


LADDER: Groups = {A: [], B: [[A]], C: [[B]], D: [[C]]}
STATES = structure(LADDER, [A, B, C, D])


def test_a_ladder_is_halved() -> None:
    """Of five states in a row the middle is asked first: b and c split them alike, so the first in order."""
    found = place(LIFT, STATES, checks(STATES.items))
    assert asked(found) == B
    assert (found.holds, found.sure, found.asked, found.budget) == ((), 0.2, 0, 4)
    found = place(LIFT, STATES, checks(STATES.items), answered("b+"))
    assert asked(found) == C
    assert found.holds == (A, B)


def test_it_ends_when_sure() -> None:
    """Without errors two or three answers leave one state."""
    sure = place(LIFT, STATES, checks(STATES.items), answered("b+ c-"), rates=rates_of(4, 0, 0))
    assert (sure.next, sure.sure, sure.holds, sure.asked) == (None, 1, (A, B), 2)


def test_it_asks_again_where_that_tells_most() -> None:
    """One item: passed once is 95 to 5, enough; passed and failed is even, so it is asked again within the budget."""
    one = structure({A: []}, [A])
    assert place(LIFT, one, checks([A]), answered("a+"), budget=9).next is None
    found = place(LIFT, one, checks([A]), answered("a+ a-"), budget=9)
    assert asked(found) == A
    assert found.sure == pytest.approx(0.5)
    assert place(LIFT, one, checks([A]), answered("a+ a-")).next is None


@pytest.mark.parametrize(("states", "checks_"), [(1, 1), (2, 2), (5, 4), (57, 9), (63, 9), (64, 10), (381, 13)])
def test_budget(states: int, checks_: int) -> None:
    """1.5 log2(states) + 1, whole."""
    assert budget_for(states) == checks_


def test_a_budget_ends_it() -> None:
    """No more is asked than may be; below one is refused."""
    assert place(LIFT, STATES, checks(STATES.items), answered("b+"), budget=1).next is None
    assert place(LIFT, STATES, checks(STATES.items), answered("b+"), budget=2).next is not None
    with pytest.raises(BadInput, match="a budget is one check or more, not 0"):
        place(LIFT, STATES, checks(STATES.items), budget=0)


def test_what_is_skipped_is_not_asked_again() -> None:
    """Nor does it cost anything or say anything."""
    found = place(LIFT, STATES, checks(STATES.items), answered("b?"))
    assert (asked(found), found.asked, found.sure) == (C, 0, 0.2)
    assert place(LIFT, STATES, checks(STATES.items), answered("a? b? c? d?")).next is None


def test_an_answer_to_nothing_asked() -> None:
    """What is no check here is named."""
    with pytest.raises(BadInput, match="`e` isn't one of the checks for the clean here"):
        place(LIFT, STATES, checks(STATES.items), answered("e+"))


def test_a_prior_is_heeded() -> None:
    """A lifter who most likely holds nothing is asked from the bottom."""
    found = place(LIFT, STATES, checks(STATES.items), prior=(60, 30, 5, 3, 2))
    assert (asked(found), found.sure) == (A, 0.6)


@settings(max_examples=80, deadline=None)
@given(and_or(), st.data())
def test_without_errors_the_state_is_found(groups: Groups, data: st.DataObject) -> None:
    """Answers as one state gives them lead to that state, whatever is guarded, each item asked once at most."""
    items = list(groups)
    found = structure(groups, items)
    guarded = frozenset(data.draw(st.sets(st.sampled_from(items))))
    true = data.draw(st.sampled_from(found.states))
    answers: tuple[Answer, ...] = ()
    while (
        here := place(LIFT, found, checks(items, guarded), answers, budget=99, rates=rates_of(len(items), 0, 0))
    ).next:
        item = here.next.drill.id
        answers = (*answers, Answer(item, "yes" if true >> items.index(item) & 1 else "no"))
        assert len(answers) <= len(items)
    assert (here.state, here.sure) == (true, 1)


def test_what_no_answer_showed_but_all_together() -> None:
    """d needs a, b or c, and was passed; b and c failed. Without errors a is certain, and e, guarded, may be asked.

    With errors it is asked for first.
    """
    e = DrillId("e")
    found = structure({A: [], B: [], C: [], D: [[A, B, C]], e: [[D], [A, B, C]]}, [A, B, C, D, e])
    guarded, answers = frozenset([e]), answered("b- c- d+")
    assert asked(place(LIFT, found, checks(found.items, guarded), answers, rates=rates_of(5, 0, 0))) == e
    given = place(LIFT, found, checks(found.items, guarded), answers, budget=9, prior=(1,) * len(found.states))
    assert asked(given) not in (None, e)


def may(found: Structure, guarded: bool, item: int, answers: Sequence[Answer], likely: Sequence[float]) -> bool:
    """An independent reading: some way in is as likely held as not, and shown, or certain, before what is guarded.

    Shown is what the last answer passed, and whatever every state that holds all of that holds as well; not what the
    last answer failed.
    """
    last = {found.items.index(each.id): each.answer for each in answers}
    passed = {n for n, says in last.items() if says == "yes"}
    holding = [state for state in found.states if all(state >> n & 1 for n in passed)]
    seen = {n for n in range(len(found.items)) if holding and all(state >> n & 1 for state in holding)}
    seen -= {n for n, says in last.items() if says == "no"}
    for clause in found.clauses[item]:
        share = sum(each for each, state in zip(likely, found.states, strict=True) if state & clause == clause)
        before = {n for n in range(len(found.items)) if clause >> n & 1}
        if share > 0.5 - 1e-9 and (not guarded or before <= seen or share > 1 - 1e-9):
            return True
    return False


@settings(max_examples=150, deadline=None)
@given(and_or(), st.data())
def test_the_next_check_leaves_least_unknown(groups: Groups, data: st.DataObject) -> None:
    """Of those that may be asked none leaves less unknown on average, and none before it as little."""
    items = list(groups)
    found = structure(groups, items)
    assume(len(found.states) > 1)
    guarded = frozenset(data.draw(st.sets(st.sampled_from(items))))
    says: st.SearchStrategy[Says] = st.sampled_from(["yes", "no"])
    answers = [Answer(item, data.draw(says)) for item in data.draw(st.lists(st.sampled_from(items), max_size=4))]
    rates = rates_of(len(items))
    likely = likely_after(found, [(items.index(each.id), each.answer == "yes") for each in answers], rates)
    left = {
        n: expected_entropy(found, likely, n, rates)
        for n, item in enumerate(items)
        if may(found, item in guarded, n, answers, likely)
    }
    here = place(LIFT, found, checks(items, guarded), answers, budget=99)
    if max(likely) >= 0.9:
        assert here.next is None
    elif here.next is not None:
        chosen = items.index(here.next.drill.id)
        assert chosen in left
        assert left[chosen] == pytest.approx(min(left.values()), abs=1e-9)
        assert all(bits > left[chosen] + 1e-10 for n, bits in left.items() if n < chosen)
    else:
        assert all(entropy(likely) - bits < 1e-8 for bits in left.values())


def test_what_was_shown() -> None:
    """Passed, or before something passed whichever way it was come to; but not failed since."""
    found = structure({A: [], B: [], C: [[A, B]], D: [[C], [A]]}, [A, B, C, D])
    assert shown(found, answered("c+")) == 0b0100
    assert shown(found, answered("d+")) == 0b1101
    assert shown(found, answered("d+ a-")) == 0b1100
    assert shown(found, answered("a- a+")) == 0b0001
    assert shown(found, answered("a+ a-")) == 0
    assert shown(found, answered("a+ a?")) == 0b0001
    assert shown(structure({A: []}, [A, B]), answered("b+")) == 0b10
    # c needs a or b, and b needs a: whichever it was, a is held
    assert shown(structure({A: [], B: [[A]], C: [[A, B]]}, [A, B, C]), answered("c+")) == 0b101


def test_what_is_guarded_waits() -> None:
    """c tells most of these states and b is before it: b is asked first, and c only once b was passed."""
    guarded = frozenset([C])
    found = structure({A: [], B: [], C: [[B]]}, [A, B, C])
    assert asked(place(LIFT, found, checks(found.items, guarded), answered("a+"), prior=(1, 1, 9, 9, 9, 9))) == B
    for text, then in (("a+ b+", C), ("a+ b-", B)):
        here = place(LIFT, found, checks(found.items, guarded), answered(text), prior=(1, 1, 9, 9, 9, 9), budget=9)
        assert asked(here) == then


def test_nothing_before_what_it_is_built_on_is_likely() -> None:
    """b needs a, and is first in order; both are held with 3 in 10: a is asked, and without it nothing."""
    found = structure({A: [], B: [[A]]}, [B, A])
    assert found.states == (0, 2, 3)
    assert asked(place(LIFT, found, checks([B, A]), prior=(7, 0, 3))) == A
    assert asked(place(LIFT, found, checks([B, A]), answered("a?"), prior=(7, 0, 3))) is None
    assert asked(place(LIFT, found, checks([B, A]), answered("a?"), prior=(5, 0, 5))) == B


# --- which checks there are, and which are guarded ---


def lift_of(*drills: Drill) -> tuple[Lift, dict[DrillId, Drill]]:
    """A lift whose checkpoints are these drills."""
    return LIFT._replace(checkpoints=tuple(each.id for each in drills)), {each.id: each for each in drills}


BARRED = drill("a", load=(Load.STICK, Load.WORKING), equipment=(BAR,))
DEEP = drill("b", load=(Load.STICK, Load.LIGHT), equipment=(BAR, ROOM), catch=Catch.FULL)
SHALLOW = DEEP._replace(id=C, catch=Catch.POWER)
LOADED = drill("d", load=(Load.LIGHT, Load.WORKING), equipment=(BAR,))


def test_checks_begin_light() -> None:
    """With a stick at hand nothing is done with a bar but what must be; deep overhead and loaded checks are guarded."""
    lift, drills = lift_of(BARRED, DEEP, SHALLOW, LOADED)
    found = checks_of(lift, drills, {STICK, BAR, ROOM}, ITEMS)
    assert [(each.load, each.guarded) for each in found.values()] == [
        (Load.STICK, False),
        (Load.STICK, True),
        (Load.STICK, False),
        (Load.LIGHT, True),
    ]
    assert {gear.using for each in list(found.values())[:3] for gear in each.gear or ()} == {STICK, ROOM}


def test_a_bar_and_no_stick() -> None:
    """Where only a bar is there, every check with it is guarded."""
    lift, drills = lift_of(BARRED, SHALLOW)
    assert [each.guarded for each in checks_of(lift, drills, {BAR, ROOM}, ITEMS).values()] == [True, True]


def test_a_caution_overhead() -> None:
    """Care of the head is taken to mean that something is overhead."""
    lift, drills = lift_of(drill("a", catch=Catch.FULL, cautions=("head-clearance",)), drill("b", catch=Catch.FULL))
    assert [each.guarded for each in checks_of(lift, drills, (), ITEMS).values()] == [True, False]


def test_only_what_can_be_done() -> None:
    """A check that the gear doesn't allow isn't there, unless it was answered: then that counts and it isn't asked."""
    lift, drills = lift_of(BARRED, DEEP, LOADED)
    assert list(checks_of(lift, drills, {STICK}, ITEMS)) == [A]
    found = checks_of(lift, drills, {STICK}, ITEMS, answered=(B,))
    assert [(each.drill.id, each.gear is None) for each in found.values()] == [(A, False), (B, True)]
    states = structure({A: [], B: []}, [A, B])
    here = place(lift, states, found, answered("b+ b-"), budget=9)
    assert asked(here) == A
    assert here.likely == pytest.approx((0.25,) * 4)


def test_nothing_to_ask() -> None:
    """A lift without checkpoints, and one whose checks need what isn't there."""
    with pytest.raises(NoAnswer, match="no drills are named that place a lifter in the clean"):
        checks_of(LIFT, {}, (), ITEMS)
    lift, drills = lift_of(LOADED)
    with pytest.raises(NoAnswer, match="none of the checks for the clean can be done"):
        checks_of(lift, drills, {STICK}, ITEMS)


def test_the_bound_on_checks() -> None:
    """The median law's bound is the default budget before it is made whole."""
    for states in range(1, 2000):
        assert budget_for(states) <= 1.5 * log2(states) + 1 < budget_for(states) + 1
