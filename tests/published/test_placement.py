"""Published knowledge structures (section 8) by what places a lifter: states, fringes, the model of errors, the update.

tests/published/test_structures.py asks the path search the same of 8.01, 8.02 and 8.09 to 8.14.
"""

from collections.abc import Iterator, Mapping, Sequence
from functools import reduce
from itertools import combinations, product
from math import log
from operator import and_

import pytest

from kb.ask.ability.blim import Rates, chance, even, gain, held, likely_after, rates_of, updated
from kb.ask.ability.structure import Structure, inner, outer, states_of, structure
from kb.terms import DrillId

ABCDE = [DrillId(each) for each in "abcde"]
A, B, C, D, E = ABCDE
FIVE = structure({A: [], B: [], C: [[A], [B]], D: [[A], [B]], E: [[C]]}, ABCDE)
"""8.01 Doignon & Falmagne 1999, ch. 7: c and d need a and b, e needs c."""

COUNTS = """
00000 80, 10000 92, 01000 89, 00100 3, 00010 2, 00001 1, 11000 89, 10100 16, 10010 18, 10001 10, 01100 18, 01010 20,
01001 4, 00110 2, 00101 2, 00011 3, 11100 89, 11010 89, 11001 19, 10110 16, 10101 16, 10011 3, 01110 18, 01101 16,
01011 2, 00111 2, 11110 73, 11101 82, 11011 19, 10111 15, 01111 15, 11111 77
"""
"""8.01: how many of a thousand fictitious lifters gave each pattern, a to e."""


def bits(word: str, names: str = "abcde") -> int:
    """ "ab" as a set of items; 0 is the empty one."""
    return sum(1 << names.index(each) for each in word.replace("0", ""))


def counted(text: str) -> dict[int, int]:
    """ "10100 16, ..." as patterns and counts."""
    rows = (row.split() for row in text.replace("\n", " ").strip().split(", "))
    return {sum(1 << n for n, digit in enumerate(word) if digit == "1"): int(count) for word, count in rows}


N_R = counted(COUNTS)


def test_nine_states() -> None:
    """8.01: the nine, and a thousand answers in thirty-two patterns."""
    assert set(FIVE.states) == {bits(word) for word in "0 a b ab abc abd abcd abce abcde".split()}
    assert (len(FIVE.states), len(N_R), sum(N_R.values())) == (9, 32, 1000)


@pytest.mark.parametrize(
    ("state", "onward", "last"),
    [
        *(("0", "ab", "0"), ("a", "b", "a"), ("b", "a", "b"), ("ab", "cd", "ab"), ("abc", "de", "c")),
        *(("abd", "c", "d"), ("abcd", "e", "cd"), ("abce", "d", "e"), ("abcde", "0", "de")),
    ],
)
def test_fringes(state: str, onward: str, last: str) -> None:
    """8.01, 8.02: the outer and the inner fringe of each state (cran/pks, manual of getKFringe)."""
    assert outer(FIVE.clauses, bits(state)) == bits(onward)
    assert inner(FIVE.clauses, bits(state)) == bits(last)


def test_fringes_name_the_state() -> None:
    """8.14 Falmagne 2006: no two states share both fringes."""
    assert len({(outer(FIVE.clauses, state), inner(FIVE.clauses, state)) for state in FIVE.states}) == 9


def ways(found: Structure) -> int:
    """In how many orders all can be learnt."""
    orders = dict.fromkeys(found.states, 0)
    orders[0] = 1
    for state in found.states:
        for n in range(len(found.items)):
            if outer(found.clauses, state) >> n & 1:
                orders[state | 1 << n] += orders[state]
    return orders[found.states[-1]]


def test_six_learning_paths() -> None:
    """8.02."""
    assert ways(FIVE) == 6


def test_kfringe() -> None:
    """8.10: manual of `kfringe`: state cde, outer fringe b, inner fringe c and e, six paths, not all states reached.

    Its thirteen states are what is closed under the groups below; ab and de come in pairs, which are circles, so
    that of them only what can be learnt step by step is ours.
    """
    family = "0 c ab bc cd de abc bcd cde abcd abde bcde abcde".split()
    groups = {A: [[B]], B: [[A, C]], C: [], D: [[C, E]], E: [[D]]}
    found = structure(groups, ABCDE)
    assert set(found.states) < {bits(word) for word in family}
    assert outer(found.clauses, bits("cde")) == bits("b")
    assert inner(found.clauses, bits("cde")) & bits("ce") == bits("e")
    assert ways(found) == 6


# --- the model of careless errors and lucky guesses ---


def test_the_model() -> None:
    """8.03 vignette "Step by Step" of cran/pks: a product of beta, 1 - beta, eta and 1 - eta, item by item."""
    rates = Rates((0.1, 0.2, 0.3, 0.15, 0.05), (0.02, 0.04, 0.06, 0.08, 0.01))
    # K = abc, R = ad: a in both, b and c in K alone, d in R alone, e in neither
    assert chance(rates, bits("abc"), bits("ad")) == pytest.approx(0.9 * 0.2 * 0.3 * 0.08 * 0.99)


def nearest(states: Sequence[int], passed: int) -> list[int]:
    """The states at the least distance from a pattern."""
    least = min((state ^ passed).bit_count() for state in states)
    return [state for state in states if (state ^ passed).bit_count() == least]


def test_distances() -> None:
    """8.04: distance to the nearest state 0, 1, 2: 760, 226, 14; mean 0.254."""
    far = [0, 0, 0]
    for passed, count in N_R.items():
        far[(nearest(FIVE.states, passed)[0] ^ passed).bit_count()] += count
    assert far == [760, 226, 14]
    assert (far[1] + 2 * far[2]) / 1000 == 0.254


Weights = Mapping[tuple[int, int], float]


def estimated(weights: Weights) -> tuple[list[float], Rates]:
    """Shares of states, and error rates, from how much each pattern counts for each state."""
    total = sum(weights.values())
    shares = [sum(w for (_, state), w in weights.items() if state == each) / total for each in FIVE.states]

    def rate(n: int, holds: bool) -> float:
        those = {key: w for key, w in weights.items() if bool(key[1] >> n & 1) == holds}
        wrong = sum(w for (passed, _), w in those.items() if bool(passed >> n & 1) != holds)
        return wrong / sum(those.values())

    return shares, Rates(tuple(rate(n, True) for n in range(5)), tuple(rate(n, False) for n in range(5)))


def test_minimum_discrepancy() -> None:
    """8.05: each pattern counts for its nearest states alike."""
    weights = {
        (passed, state): count / len(near)
        for passed, count in N_R.items()
        for near in [nearest(FIVE.states, passed)]
        for state in near
    }
    shares, rates = estimated(weights)
    assert rates.careless == pytest.approx((0.0921, 0.0887, 0.0451, 0, 0), abs=5e-5)
    assert rates.lucky == pytest.approx((0, 0, 0.0406, 0.0409, 0.0547), abs=5e-5)
    published = (0.0910, 0.1200, 0.1127, 0.0985, 0.1060, 0.1192, 0.1080, 0.1245, 0.1202)
    # 8.01's order of states is ours but for abd before abce where sizes are alike
    assert sorted(shares) == pytest.approx(sorted(published), abs=5e-5)


def test_maximum_likelihood() -> None:
    """8.06: error rates and log likelihood where the model fits these answers best, by expectation and maximisation."""
    shares, rates = list(even(FIVE)), rates_of(5, 0.1, 0.1)
    before, now = float("-inf"), float("-inf")
    for _ in range(2000):
        weights: dict[tuple[int, int], float] = {}
        before, now = now, 0.0
        for passed, count in N_R.items():
            joint = [share * chance(rates, state, passed) for share, state in zip(shares, FIVE.states, strict=True)]
            total = sum(joint)
            now += count * log(total)
            for state, each in zip(FIVE.states, joint, strict=True):
                weights[passed, state] = count * each / total
        assert now >= before - 1e-9
        if now - before < 1e-6:
            break
        shares, rates = estimated(weights)
    assert now == pytest.approx(-2908.56, abs=0.01)
    assert rates.careless == pytest.approx((0.1649, 0.1631, 0.1888, 0.0798, 0.0886), abs=2e-3)
    assert rates.lucky == pytest.approx((0.1031, 0.0951, 0.0000, 0.0000, 0.0199), abs=2e-3)


def test_posterior() -> None:
    """8.07: even prior, errors of 10 %, a, b and c passed, d and e failed."""
    rates = rates_of(5, 0.1, 0.1)
    likely = likely_after(FIVE, [(n, bool(bits("abc") >> n & 1)) for n in range(5)], rates)
    by_state = dict(zip(FIVE.states, likely, strict=True))
    expected = {"abc": 0.7225, **dict.fromkeys(("ab", "abcd", "abce"), 0.0803)}
    expected |= {**dict.fromkeys(("a", "b", "abd", "abcde"), 0.0089), "0": 0.0010}
    assert {word: by_state[bits(word)] for word in expected} == pytest.approx(expected, abs=5e-5)
    assert len(expected) == len(FIVE.states)


ENDM = Structure(tuple(ABCDE[:4]), (), tuple(bits(word, "abcd") for word in "0 bc bd abc abd acd abcd".split()))
ENDM_COUNTS = """
0000 15, 1000 4, 0100 6, 0010 4, 0001 5, 1100 2, 1010 3, 1001 4, 0110 18, 0101 22, 0011 2, 1110 39, 1101 37,
1011 12, 0111 7, 1111 20
"""


def test_endm() -> None:
    """8.08 Heller & Wickelmaier 2013: 200 answers drawn from the model with these shares and 10 % of errors.

    Under it, the sixteen counts are as far off as chance has it: Pearson's statistic within its middle 99.8 % at 15
    degrees of freedom. 8.09: distance 0 and 1 of 163 and 37, mean 0.185.
    """
    shares = (0.1, 0.15, 0.15, 0.2, 0.2, 0.1, 0.1)
    rates, counts = rates_of(4, 0.1, 0.1), counted(ENDM_COUNTS)
    expected = {
        passed: 200
        * sum(share * chance(rates, state, passed) for share, state in zip(shares, ENDM.states, strict=True))
        for passed in range(16)
    }
    assert sum(expected.values()) == pytest.approx(200)
    assert 3.11 < sum((counts[each] - expected[each]) ** 2 / expected[each] for each in counts) < 37.7
    far = [(nearest(ENDM.states, passed)[0] ^ passed).bit_count() for passed in counts]
    assert sum(n * count for n, count in zip(far, counts.values(), strict=True)) / 200 == 0.185
    # one family that no prerequisites give still has its update: passing b rules out acd but for luck
    likely = updated(ENDM, shares, 1, True, rates)
    assert likely[5] == pytest.approx(0.1 * 0.1 / (0.8 * 0.9 + 0.2 * 0.1))
    assert gain(rates, 0, held(ENDM, likely, 1)) > 0


# --- how many learning spaces there are ---


def antichains(items: Sequence[int]) -> Iterator[tuple[int, ...]]:
    """Every set of clauses of which none holds another, one at least."""
    masks = [sum(some) for many in range(len(items) + 1) for some in combinations([1 << n for n in items], many)]
    for chosen in product((False, True), repeat=len(masks)):
        clauses = tuple(mask for mask, kept in zip(masks, chosen, strict=True) if kept)
        if clauses and not any(a != b and a & b == a for a in clauses for b in clauses):
            yield clauses


def spaces(count: int) -> set[tuple[int, ...]]:
    """The families on so many items in which all can be learnt, from every set of clauses for each item."""
    own = [list(antichains([n for n in range(count) if n != item])) for item in range(count)]
    families = {tuple(states_of(clauses)) for clauses in product(*own)}
    return {states for states in families if states[-1] == 2**count - 1}


@pytest.mark.parametrize(
    ("count", "there_are"), [(1, 1), (2, 3), (3, 22), pytest.param(4, 485, marks=pytest.mark.exhaustive)]
)
def test_how_many_learning_spaces(count: int, there_are: int) -> None:
    """8.13 (OEIS A119770, from memory; counted again there): 1, 3, 22, 485; each closed under union."""
    found = spaces(count)
    assert len(found) == there_are
    for states in found:
        assert reduce(and_, states) == 0
        assert {a | b for a in states for b in states} == set(states)
