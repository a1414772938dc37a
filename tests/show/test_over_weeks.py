"""How a chain goes on over weeks, up to a day that counts."""

import re

import pytest

from kb.show.over_weeks import FRESH, JOINED, OVER_WEEKS, REHEARSED, over_weeks


@pytest.mark.parametrize("weeks", range(1, 27))
def test_every_week_has_its_stage_once_and_the_last_keeps_fresh(weeks: int) -> None:
    """Nothing is mended in the last week, the tries are rehearsed in the one before; the weeks follow one another."""
    found = over_weeks(weeks, "belt and collar together")
    named: list[int] = []
    for each in found:
        first, *rest = map(int, re.findall(r"\d+", each.partition(":")[0]))
        named += range(first, (rest[0] if rest else first) + 1)
    assert named == list(range(1, weeks + 1))
    assert FRESH in found[-1]
    assert [each for each in found if "with the day" in each.partition(":")[0]] == [found[-1]]
    assert any(REHEARSED in each for each in found) is (weeks > 1)
    assert any(JOINED in each and "Counted: belt and collar together." in each for each in found) is (weeks > 2)


def test_without_a_day_it_is_one_paragraph() -> None:
    """Whatever shows that the fault is gone."""
    assert over_weeks(None, "x") == [OVER_WEEKS]
