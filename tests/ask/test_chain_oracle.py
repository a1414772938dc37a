"""The program's chains and paths against a constraint solver's, on seeded worlds.

Costs are compared, never lists: of equally cheap lists either may name any.
"""

import pytest
from lawful import broken_path_rules, broken_rules, broken_sittings, cost, cut, path_cost
from oracle import best, best_path
from strategies import random_path, random_world
from worlds import entries_of, route_to, shelf_of

from kb.ask.path import path
from kb.errors import NoAnswer

pytestmark = [pytest.mark.oracle, pytest.mark.no_cover]

SMALL = [(seed, 4 + seed % 9) for seed in range(1000, 1200)]
LARGER = [(seed, 13 + seed % 18) for seed in range(2000, 2080)]
PATHS = [
    *((seed, 4 + seed % 12) for seed in range(3000, 3120)),
    # preparation that only a bridge is built on, worth its time
    *((5011, 11), (6000, 10), (6397, 11), (7133, 9), (11204, 12)),
    # a strengthening drill is held
    *((5078, 6), (6264, 4), (7615, 5)),
]


@pytest.mark.parametrize(("seed", "size"), SMALL + LARGER)
def test_the_first_route_is_as_cheap_as_can_be(seed: int, size: int) -> None:
    """Within K and T the first route is lawful, proved, and costs what the solver's costs."""
    world, question = random_world(seed, size)
    expected, route = best(world, question), route_to(world, question)
    if expected is None:
        assert route is None or len(route.sittings) > 1
        return
    assert route is not None, expected
    chain = entries_of(route)
    assert broken_rules(world, question, chain) == []
    assert route.cost == cost(world, question, chain)
    assert (route.cost, route.optimal) == (expected[0], True), expected
    assert broken_sittings(world, question, chain, route.sittings) == []


@pytest.mark.parametrize(("seed", "size"), SMALL)
def test_what_does_not_fit_is_the_cheapest_cut_into_sittings(seed: int, size: int) -> None:
    """Where K and T allow no chain: the cheapest without them, cut; none only if there is none or no cut."""
    world, question = random_world(seed, size)
    question = question._replace(at_most=min(question.at_most, 4), seconds=question.seconds or 700)
    if best(world, question) is not None:
        return
    free, route = best(world, question, limits=False), route_to(world, question)
    if free is None:
        assert route is None
    elif route is None:
        assert cut(world, question, free[1]) is None
    else:
        chain = entries_of(route)
        assert broken_rules(world, question, chain, limits=False) == []
        assert (route.cost, route.optimal) == (free[0], True), free
        assert broken_sittings(world, question, chain, route.sittings) == []


@pytest.mark.parametrize(("seed", "size"), PATHS)
def test_a_path_is_as_cheap_as_can_be(seed: int, size: int) -> None:
    """A path is lawful, proved, and costs what the solver's costs."""
    world, asked = random_path(seed, size)
    expected = best_path(world, asked.holds, asked.have, asked.order)
    try:
        found = path(shelf_of(world), have=asked.have, holds=asked.holds, order=asked.order)
    except NoAnswer:
        assert expected is None
        return
    entries = [(entry.drill.id, entry.load) for entry in found.entries]
    assert broken_path_rules(world, asked.holds, asked.have, entries, asked.order) == []
    assert found.cost == path_cost(world, asked.have, entries)
    assert expected is not None
    assert (found.cost, found.optimal) == (expected[0], True), expected
