"""Which discs make a weight: the fewest, the largest innermost, or the two nearest weights there are."""

import math
from functools import cache
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kb.discs import BARS, DISCS, ON_A_SLEEVE, Disc, Iron, at_most, disc_list, exactly, iron_of, weight
from kb.errors import BadInput

HALVES = tuple(round(2 * disc) for disc in DISCS["kg"])
"""The discs in half kilograms, largest first."""

POUNDS = tuple(round(2 * disc) for disc in DISCS["lb"])
"""The discs in half pounds, largest first."""


@cache
def fewest(side: int, sizes: tuple[int, ...] = HALVES) -> tuple[int, ...] | None:
    """An independent count: the fewest discs of a side, breadth first, the largest first; halves of the unit."""
    layer: set[tuple[int, ...]] = {()}
    while layer:
        there = [made for made in layer if sum(made) == side]
        if there:
            return max(there)
        layer = {
            (*made, disc)
            for made in layer
            for disc in sizes
            if sum(made) + disc <= side and (not made or disc <= made[-1])
        }
    return None


@pytest.mark.parametrize("collars", [False, True])
@pytest.mark.parametrize("bar", ["men", "women", "training", "5"])
def test_every_weight_is_made_with_the_fewest_discs_or_refused(bar: str, collars: bool) -> None:
    """Every total from 15 to 200 kg by half kilograms, against a count of its own; else the nearest below and above."""
    iron = iron_of(bar, collars=collars)
    can = {round(2 * iron.least) + 2 * side: side for side in range(401)}
    for halves in range(30, 401):
        if halves in can:
            discs = exactly(halves / 2, iron)
            assert tuple(round(2 * disc) for disc in discs) == fewest(can[halves])
            assert iron.least + 2 * sum(discs) == halves / 2
            assert at_most(halves / 2, iron) == discs
            continue
        with pytest.raises(BadInput, match="can't be made with this bar") as refused:
            exactly(halves / 2, iron)
        nearest = [max(below)] if (below := [total for total in can if total < halves]) else []
        nearest.append(min(total for total in can if total > halves))
        assert refused.value.nearest == tuple(f"{total / 2:g} kg" for total in nearest)


def test_every_weight_in_pounds_is_made_or_refused() -> None:
    """From 45 to 405 lb by pounds, on a bar of 45: those that are fives above it, with the fewest discs."""
    iron = iron_of(unit="lb")
    for pounds in range(45, 406):
        if pounds % 5 == 0:
            discs = exactly(pounds, iron)
            assert tuple(round(2 * disc) for disc in discs) == fewest(pounds - 45, POUNDS)
            continue
        with pytest.raises(BadInput) as refused:
            exactly(pounds, iron)
        below = pounds // 5 * 5
        assert refused.value.nearest == (f"{below} lb", f"{below + 5} lb")


def test_a_weight_between_two_discs_is_rounded_down() -> None:
    """Never up; under the bar there is nothing to round to."""
    iron = iron_of()
    assert at_most(60.99, iron) == (20,)
    assert at_most(20.99, iron) == ()
    assert at_most(19.99, iron) is None
    assert at_most(55 / 100 * 100, iron) == at_most(55, iron)


few = st.lists(
    st.tuples(st.sampled_from((25.0, 20.0, 10.0, 5.0, 2.5, 1.25, 0.5)), st.integers(1, 3)),
    min_size=1,
    max_size=5,
    unique_by=lambda disc: disc[0],
).map(lambda discs: tuple(Disc(*disc) for disc in sorted(discs, reverse=True)))


@settings(max_examples=60, deadline=None)
@given(few, st.integers(0, 400), st.sampled_from((5.0, 15.0, 20.0)))
def test_few_discs_are_used_no_more_than_there_are(discs: tuple[Disc, ...], quarters: int, bar: float) -> None:
    """With a limited stock: every handful tried, the fewest discs, or the nearest that can be made."""
    iron = Iron(bar, discs)
    total = bar + quarters / 2
    sides: dict[float, tuple[float, ...]] = {}
    for counts in product(*(range((disc.pairs or 0) + 1) for disc in discs)):
        made = tuple(disc.weight for disc, count in zip(discs, counts, strict=True) for _ in range(count))
        known = sides.get(sum(made))
        if known is None or (-len(made), made) > (-len(known), known):
            sides[sum(made)] = made
    side = quarters / 4
    assert at_most(total, iron) == sides[max(each for each in sides if each <= side)]
    if side in sides:
        assert exactly(total, iron) == sides[side]
        return
    with pytest.raises(BadInput) as refused:
        exactly(total, iron)
    above = [each for each in sides if each > side]
    nearest = [max(each for each in sides if each < side), *([min(above)] if above else [])]
    assert refused.value.nearest == tuple(f"{bar + 2 * each:g} kg" for each in nearest)


def test_more_discs_than_a_sleeve_holds_are_not_used() -> None:
    """Twenty of a size on each side, however many there are."""
    iron = iron_of(discs="0.5")
    assert at_most(200, iron) == (0.5,) * ON_A_SLEEVE
    with pytest.raises(BadInput) as refused:
        exactly(60, iron)
    assert refused.value.nearest == ("40 kg",)


def test_no_discs_leave_the_bar() -> None:
    """Which is then the only weight."""
    assert exactly(20, Iron(20, ())) == ()
    assert at_most(100, Iron(20, ())) == ()


@pytest.mark.parametrize("total", [0.0, -5.0, math.nan, math.inf, 500.5, 1e300])
def test_a_weight_that_is_none_is_refused(total: float) -> None:
    """In one sentence."""
    with pytest.raises(BadInput, match="a bar weighs more than 0 and at most 500 kg"):
        exactly(total, iron_of())


def test_iron_as_it_is_typed() -> None:
    """Bars by name or weight, discs with their pairs in any order, collars only when they are counted."""
    assert iron_of("women").least == BARS["kg"]["women"]
    assert iron_of("7.5").bar == 7.5
    assert iron_of(discs="10, 25x1,20 x 2").discs == (Disc(25, 1), Disc(20, 2), Disc(10))
    assert iron_of(collars=True).least == 25
    assert iron_of("men", "lb", collars=True).least == 55


@pytest.mark.parametrize(
    ("bar", "discs", "says"),
    [
        ("kids", None, "there is no bar 'kids'"),
        ("nan", None, "there is no bar 'nan'"),
        ("0", None, "the bar is a weight above 0, not '0'"),
        ("-20", None, "the bar is a weight above 0, not '-20'"),
        ("", None, "the bar is a weight above 0, not ''"),
        ("2000", None, "the bar can't weigh 2000, which is more than 60"),
        ("men", "", "a disc is a weight above 0, not ''"),
        ("men", "25,nan", "a disc is a weight above 0, not 'nan'"),
        ("men", "-5", "a disc is a weight above 0, not '-5'"),
        ("men", "1e5", "a disc can't weigh 100000"),
        ("men", "0.1", "a disc is 0.25 or more, to two decimals, not 0.1"),
        ("men", "1.234", "a disc is 0.25 or more, to two decimals, not 1.234"),
        ("men", "25,25", "the disc 25 is listed twice; write 25x2"),
        ("men", "25x0", "1 to 20 pairs, as in 25x2, not '0'"),
        ("men", "25x", "1 to 20 pairs, as in 25x2, not ''"),
        ("men", "25x21", "1 to 20 pairs, as in 25x2, not '21'"),
        ("men", "25x9999999999999999999999", "1 to 20 pairs"),
        ("men", "25x1.5", "1 to 20 pairs"),
    ],
)
def test_iron_that_cant_be_is_refused(bar: str, discs: str | None, says: str) -> None:
    """In one sentence that says what is wrong."""
    with pytest.raises(BadInput) as refused:
        iron_of(bar, discs=discs)
    assert says in str(refused.value)


def test_a_bar_that_there_isnt_comes_with_those_there_are() -> None:
    """By name."""
    with pytest.raises(BadInput) as refused:
        iron_of("kids")
    assert refused.value.nearest == ("men", "women", "training")


@given(st.text(max_size=8))
def test_whatever_is_typed_is_a_weight_or_refused(text: str) -> None:
    """Nothing else comes of it."""
    try:
        found = weight(text, "it")
    except BadInput:
        return
    assert 0 < found < math.inf


def test_discs_are_said_innermost_first() -> None:
    """Several of a size once, with their number."""
    assert disc_list((25, 25, 5, 2.5)) == "2 x 25, 5, 2.5"
    assert disc_list(()) == "none"
