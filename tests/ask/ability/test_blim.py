"""How likely each state is after answers: by hand, beside a reference library, and by the laws."""

from math import log2

import pytest
from and_or import and_or, some_items
from hypothesis import given, settings
from hypothesis import strategies as st
from knowledgespaces.assessment.adaptive import select_item_eig
from knowledgespaces.assessment.blim import BLIM, BLIMParams, StatePosterior
from knowledgespaces.structures.knowledge_structure import KnowledgeStructure

from kb.ask.ability.blim import (
    Rates,
    chance,
    entropy,
    even,
    expected_entropy,
    gain,
    held,
    likely_after,
    rates_of,
    updated,
)
from kb.ask.ability.structure import Structure, structure
from kb.errors import BadInput
from kb.terms import DrillId

A, B = DrillId("a"), DrillId("b")
LADDER = structure({A: [], B: [[A]]}, [A, B])  # nothing, a, a and b
RATE = st.floats(0, 0.45)
Answers = list[tuple[int, bool]]


def answers_on(count: int, most: int = 6) -> st.SearchStrategy[Answers]:
    """Answers to some of so many items."""
    return st.lists(st.tuples(st.integers(0, count - 1), st.booleans()), max_size=most)


@st.composite
def structures(draw: st.DrawFn) -> Structure:
    """A small structure."""
    groups = draw(and_or(most=5))
    return structure(groups, draw(some_items(groups)))


def test_by_hand() -> None:
    """Three states alike, b passed, errors 10 and 20 %: 0.2, 0.2 and 0.9 of a third each, so 2, 2 and 9 of 13.

    Then a failed: 0.8, 0.1 and 0.1 of these, so 16, 2 and 9 of 27.
    """
    rates = rates_of(2, careless=0.1, lucky=0.2)
    once = updated(LADDER, even(LADDER), 1, True, rates)
    assert once == pytest.approx((2 / 13, 2 / 13, 9 / 13))
    twice = updated(LADDER, once, 0, False, rates)
    assert twice == pytest.approx((16 / 27, 2 / 27, 9 / 27))
    assert likely_after(LADDER, [(1, True), (0, False)], rates) == pytest.approx(twice)
    assert held(LADDER, twice, 0b01) == pytest.approx(11 / 27)
    assert held(LADDER, twice, 0b11) == pytest.approx(9 / 27)


def test_entropy_by_hand() -> None:
    """Half and two quarters is one bit and a half; what is certain tells nothing."""
    assert entropy((0.5, 0.25, 0.25)) == 1.5
    assert entropy((1.0, 0.0)) == 0
    assert gain(rates_of(1, 0, 0), 0, 0.5) == 1
    # capacity of a symmetric channel that errs one time in ten
    assert gain(rates_of(1, 0.1, 0.1), 0, 0.5) == pytest.approx(1 + 0.1 * log2(0.1) + 0.9 * log2(0.9))


def test_a_prior_weighs() -> None:
    """Weights needn't add up to 1; a state of weight nothing stays impossible."""
    found = likely_after(LADDER, [(0, True)], rates_of(2, 0.1, 0.2), prior=(2, 2, 0))
    assert found == pytest.approx((0.2 / 1.1, 0.9 / 1.1, 0))


@pytest.mark.parametrize(
    "rates", [(0.5, 0.5), (-0.1, 0), (0, -0.1), (1, 0), (0, 1), (float("nan"), 0), (0, float("inf"))]
)
def test_rates_that_say_nothing(rates: tuple[float, float]) -> None:
    """A pass must be likelier of one who holds it; NaN and infinity are refused too."""
    with pytest.raises(BadInput, match="error rates are shares"):
        rates_of(3, *rates)


def test_answers_that_no_state_can_give() -> None:
    """Without any allowance for error, b passed and a failed is impossible."""
    with pytest.raises(BadInput, match="contradict one another"):
        likely_after(LADDER, [(1, True), (0, False)], rates_of(2, 0, 0))
    with pytest.raises(BadInput, match="contradict one another"):
        likely_after(LADDER, [], rates_of(2), prior=(0, 0, 0))


@settings(max_examples=60, deadline=None)
@given(structures(), RATE, RATE, st.data())
def test_as_the_reference_library(found: Structure, careless: float, lucky: float, data: st.DataObject) -> None:
    """The same posterior, entropy, likelihood of each item and expected gain as `knowledgespaces` has."""
    answers = data.draw(answers_on(len(found.items)))
    sets = {state: frozenset(item for n, item in enumerate(found.items) if state >> n & 1) for state in found.states}
    there = BLIM(
        KnowledgeStructure(frozenset(found.items), frozenset(sets.values())),
        BLIMParams(max(careless, 0.01), max(lucky, 0.01)),
    )
    theirs = StatePosterior.uniform(there)
    rates = rates_of(len(found.items), max(careless, 0.01), max(lucky, 0.01))
    for item, passes in answers:
        theirs = theirs.update(found.items[item], passes)
    ours = likely_after(found, answers, rates)
    by_set = dict(zip(theirs.states, theirs.probabilities, strict=True))
    assert [by_set[sets[state]] for state in found.states] == pytest.approx(ours)
    assert theirs.entropy == pytest.approx(entropy(ours), abs=1e-9)
    for n, name in enumerate(found.items):
        share = held(found, ours, 1 << n)
        assert theirs.marginal_mastery()[name] == pytest.approx(share)
        assert select_item_eig(theirs, [name]).score == pytest.approx(gain(rates, n, share), abs=1e-9)


@settings(max_examples=60, deadline=None)
@given(structures(), RATE, RATE, st.data())
def test_order_does_not_matter(found: Structure, careless: float, lucky: float, data: st.DataObject) -> None:
    """The same answers in any order leave the same likelihoods: to the last bit all at once, nearly so one by one."""
    rates = rates_of(len(found.items), max(careless, 0.01), max(lucky, 0.01))
    answers = data.draw(answers_on(len(found.items)))
    other = data.draw(st.permutations(answers))
    assert likely_after(found, answers, rates) == likely_after(found, other, rates)
    one_by_one = even(found)
    for item, passes in other:
        one_by_one = updated(found, one_by_one, item, passes, rates)
    assert one_by_one == pytest.approx(likely_after(found, answers, rates))


@settings(max_examples=60, deadline=None)
@given(structures(), RATE, RATE, st.data())
def test_expected_entropy_by_both_answers(found: Structure, careless: float, lucky: float, data: st.DataObject) -> None:
    """What is left unknown after a check is the mean over its two answers of what is left after each."""
    rates = rates_of(len(found.items), max(careless, 0.01), max(lucky, 0.01))
    likely = likely_after(found, data.draw(answers_on(len(found.items))), rates)
    item = data.draw(st.integers(0, len(found.items) - 1))
    expected = 0.0
    for passes in (True, False):
        weights = [
            share * abs((not passes) - (1 - rates.careless[item] if state >> item & 1 else rates.lucky[item]))
            for share, state in zip(likely, found.states, strict=True)
        ]
        total = sum(weights)
        expected -= sum(weight * log2(weight / total) for weight in weights if weight > 0)
    assert expected_entropy(found, likely, item, rates) == pytest.approx(expected, abs=1e-9)


@settings(max_examples=40, deadline=None)
@given(structures(), st.data())
def test_chances_of_all_patterns_add_up(found: Structure, data: st.DataObject) -> None:
    """8.03: over every pattern of passes, P(R | K) adds up to 1; Bayes' rule on it is the update by each answer."""
    count = len(found.items)
    one = st.tuples(st.floats(0.01, 0.4), st.floats(0.01, 0.4))
    rates = Rates(*zip(*(data.draw(one) for _ in range(count)), strict=True))
    for state in found.states:
        assert sum(chance(rates, state, passed) for passed in range(2**count)) == pytest.approx(1)
    passed = data.draw(st.integers(0, 2**count - 1))
    weights = [chance(rates, state, passed) for state in found.states]
    answers = [(n, bool(passed >> n & 1)) for n in range(count)]
    assert likely_after(found, answers, rates) == pytest.approx([weight / sum(weights) for weight in weights])
