"""The bound from below promises no more than a constraint solver finds; and how near plans come to the fewest."""

import pytest
from plan_oracle import fewest, random_forms, random_past

from kb.ask.plan.least import least
from kb.ask.plan.past import Past
from kb.ask.plan.spread import spread


def counted(seed: int, *, fresh: bool = True) -> tuple[int, int, int]:
    """The bound, the fewest sessions that there can be, and those of the program; last sessions' numbers."""
    forms, weeks = random_forms(seed)
    past, begun = ([Past() for _ in forms], 0) if fresh else random_past(forms, seed)
    bound = least(forms, past, weeks, begun=begun).sessions
    sessions = spread(forms, past, weeks, begun=begun, least=bound)
    best = fewest(forms, past, weeks, begun=begun, most=begun + len(sessions))
    assert best is not None
    return bound, best, begun + len(sessions)


@pytest.mark.oracle
@pytest.mark.parametrize("seed", range(31_000, 31_030))
@pytest.mark.parametrize("fresh", [True, False])
def test_the_bound_is_no_more_than_the_fewest(seed: int, *, fresh: bool) -> None:
    """Bound, fewest, plan: in that order, each at most the next; from nothing and after some sessions."""
    bound, best, planned = counted(seed, fresh=fresh)
    assert bound <= best <= planned


@pytest.mark.oracle
@pytest.mark.parametrize("fresh", [True, False])
def test_plans_are_near_the_fewest(*, fresh: bool) -> None:
    """Of thirty small instances nearly all plans are as short as can be, and none is more than two sessions longer."""
    over = [planned - best for _, best, planned in (counted(seed, fresh=fresh) for seed in range(32_000, 32_030))]
    assert max(over) <= 2
    assert over.count(0) >= 24


@pytest.mark.exhaustive
@pytest.mark.oracle
@pytest.mark.parametrize("fresh", [True, False])
def test_four_hundred_bounds(*, fresh: bool) -> None:
    """The same, many times over: how often the bound is reached is measured in kb/docs/plan.md."""
    found = [counted(seed, fresh=fresh) for seed in range(33_000, 33_400)]
    assert all(bound <= best <= planned for bound, best, planned in found)
