"""What DESIGN.md section 5 asks of every path: the solver's cost, the rules, and an honest gap when states run out."""

import random
from dataclasses import replace
from typing import get_args

import pytest
from hypothesis import HealthCheck, given, settings
from lawful import broken_path_rules, path_cost
from oracle import best_path
from reading import Chain, World
from shipped import worlds
from strategies import PathQuestion, path_questions, random_path
from worlds import shelf_of

from kb.ask.path import Order, Path, path
from kb.ask.shelf import ending_in
from kb.errors import BadInput, NoAnswer
from kb.make.library import Library
from kb.terms import DrillId, LiftId, Stage

pytestmark = pytest.mark.no_cover

ORDERS: tuple[Order, ...] = get_args(Order)
SEEDS = [(seed, 5 + seed % 12) for seed in range(21_000, 21_070)]

laws = settings(deadline=None, max_examples=60, suppress_health_check=[HealthCheck.too_slow])


def answered(world: World, asked: PathQuestion, order: Order, budget: int = 20_000) -> tuple[Path | None, Chain]:
    """The path and its entries as the judge reads them; None and nothing where there is none."""
    try:
        found = path(shelf_of(world), have=asked.have, holds=asked.holds, order=order, budget=budget)
    except NoAnswer:
        return None, []
    return found, [(entry.drill.id, entry.load) for entry in found.entries]


@pytest.mark.oracle
@pytest.mark.parametrize("order", ORDERS)
@pytest.mark.parametrize(("seed", "size"), SEEDS)
def test_a_path_costs_what_the_solver_s_costs(seed: int, size: int, order: Order) -> None:
    """In every order a path is proved and as cheap as the solver's; there is none only where it has none."""
    world, asked = random_path(seed, size)
    expected, (found, entries) = best_path(world, asked.holds, asked.have, order), answered(world, asked, order)
    if expected is None:
        assert found is None
        return
    assert found is not None, expected
    assert broken_path_rules(world, asked.holds, asked.have, entries, order) == []
    assert (found.cost, found.gap, found.optimal) == (expected[0], 0.0, True), expected


@laws
@given(path_questions())
def test_a_path_keeps_every_rule(question: tuple[World, PathQuestion]) -> None:
    """Every prerequisite held or earlier, loads that the kit gives, the order asked for, and the cost it says."""
    world, asked = question
    found, entries = answered(world, asked, asked.order)
    if found is not None:
        assert broken_path_rules(world, asked.holds, asked.have, entries, asked.order) == []
        assert found.cost == path_cost(world, asked.have, entries)


@pytest.mark.parametrize("order", ORDERS)
@pytest.mark.parametrize("budget", [0, 1, 8, 60])
def test_out_of_states_the_answer_is_lawful_and_its_gap_honest(budget: int, order: Order) -> None:
    """However few states: an answer wherever there is one, lawful, the best cost no lower than its gap says."""
    gaps = []
    for seed in range(22_000, 22_040):
        world, asked = random_path(seed, 16)
        whole, _ = answered(world, asked, order)
        short, entries = answered(world, asked, order, budget=budget)
        assert (whole is None) == (short is None)
        if whole is None or short is None:
            continue
        assert whole.optimal
        assert broken_path_rules(world, asked.holds, asked.have, entries, order) == []
        assert short.cost == path_cost(world, asked.have, entries)
        assert short.cost * (1 - short.gap) - 1e-6 <= whole.cost <= short.cost
        assert 0 <= short.gap <= 1
        gaps.append(short.gap)
    assert gaps
    assert budget >= 8 or max(gaps) > 0


def test_the_same_question_gives_the_same_path() -> None:
    """The order of the library's drills doesn't matter, nor does asking twice."""
    world, asked = random_path(23_001, 18)
    _, entries = answered(world, asked, "either")
    assert entries
    for seed in range(5):
        ids = list(world.drills)
        random.Random(seed).shuffle(ids)
        shuffled = replace(world, drills={i: world.drills[i] for i in ids})
        assert answered(shuffled, asked, "either")[1] == entries


def test_nothing_in_the_room_says_what_is_missing() -> None:
    """With no equipment at all the refusal names the lift and what it needs."""
    world, asked = random_path(23_001, 18)
    with pytest.raises(NoAnswer, match="can't be done with this kit"):
        path(shelf_of(world), have=frozenset(), holds=asked.holds)


@pytest.mark.parametrize("lift", ["snatch", "clean", "jerk"])
def test_a_path_to_a_part_of_a_lift_keeps_every_rule_too(library: Library, lift: str) -> None:
    """To each shipped drill that joins parts, by the same judge, the drill standing for the lift."""
    world = worlds(library)[LiftId(lift)]
    shelf = shelf_of(world)
    joins = sorted(drill.id for drill in shelf.drills.values() if drill.stage is Stage.JOIN)
    assert joins
    for drill_id in joins:
        found = path(ending_in(shelf, drill_id), have=frozenset(world.items))
        entries = [(entry.drill.id, entry.load) for entry in found.entries]
        part = replace(world, lift=world.lift._replace(drill=drill_id))
        assert broken_path_rules(part, frozenset(), frozenset(world.items), entries) == []
        assert path_cost(part, frozenset(world.items), entries) == found.cost


def test_a_path_ends_in_a_part_of_its_lift_alone(library: Library) -> None:
    """Not in another lift's drill, nor in one that prepares or strengthens: each is refused by name."""
    shelf = shelf_of(worlds(library)[LiftId("jerk")])
    with pytest.raises(BadInput, match="hang-power-clean is not a drill of the jerk"):
        ending_in(shelf, DrillId("hang-power-clean"))
    first = next(drill for drill in shelf.drills.values() if drill.stage is Stage.PREPARE)
    with pytest.raises(BadInput, match="prepares or strengthens"):
        ending_in(shelf, first.id)
