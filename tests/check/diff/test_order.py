"""What moved between two orders: the fewest, and the same whichever is the older."""

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from kb.check.diff.order import moved

LISTS = st.lists(st.sampled_from("abcdefg"), unique=True, max_size=7)


@given(LISTS, LISTS)
def test_what_stays_is_in_the_same_order_in_both(before: list[str], after: list[str]) -> None:
    """Without what moved, what is in both stands alike."""
    gone = set(moved(before, after))
    assert gone <= set(before) & set(after)
    stays = [
        [each for each in some if each in before and each in after and each not in gone] for some in (before, after)
    ]
    assert stays[0] == stays[1]


@given(LISTS, LISTS)
def test_nothing_less_would_do(before: list[str], after: list[str]) -> None:
    """Of all sets of fewer, none leaves the rest alike: enumerated."""
    shared = sorted(set(before) & set(after))
    found = moved(before, after)
    for fewer in combinations(shared, max(0, len(found) - 1)):
        rest = [[each for each in some if each in shared and each not in fewer] for some in (before, after)]
        assert rest[0] != rest[1] or not found


@given(LISTS, LISTS)
def test_it_is_the_same_both_ways(before: list[str], after: list[str]) -> None:
    """Whichever is the older, and nothing moves between a list and itself."""
    assert moved(before, after) == moved(after, before)
    assert moved(before, before) == ()
