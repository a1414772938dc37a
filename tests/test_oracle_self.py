"""The tests' own judges agree: three readings of DESIGN.md section 5, on many small random worlds.

lawful.py judges a list against the rules; oracle.py finds the cheapest by a constraint solver, and by listing. Trying
every list that there is and asking lawful.py alone is the check on all of them.
"""

from collections import Counter
from collections.abc import Iterator
from itertools import pairwise, permutations, product
from random import Random

import lawful
import oracle
import pytest
from hypothesis import given, settings
from lawful import RULES, broken_path_rules, broken_rules, broken_sittings, cost, cut, path_cost
from oracle import Found, best, best_by_listing, best_path, best_path_by_listing
from reading import FREE, Entry, Stand, World, caps, loads, read, stand, step
from strategies import PathQuestion, path_questions, questions, random_path, random_world

from kb.ask.question import ChainQuestion
from kb.terms import Catch, DrillId, Lift, LiftId, Load, PositionId, Speed, Stage, Standard, Timed

pytestmark = [pytest.mark.oracle, pytest.mark.no_cover]


def cost_of(found: Found | None) -> int | None:
    """What an answer costs; None where there is none."""
    return None if found is None else found[0]


def every_list(world: World, most: int) -> Iterator[list[Entry]]:
    """Every list of at most `most` entries that ends in the lift, each drill at every load of its range."""
    nodes = [
        (i, load)
        for i, drill in sorted(world.drills.items())
        for load in Load
        if drill.load[0] <= load <= drill.load[1]
    ]
    for count, end in product(range(most), [node for node in nodes if node[0] == world.lift.drill]):
        for before in permutations([node for node in nodes if node != end], count):
            yield [*before, end]


def tiny(seed: int) -> tuple[World, ChainQuestion]:
    """A question that can be answered by trying every list."""
    world, question = random_world(seed, 3 + seed % 2)
    return world, question._replace(at_most=min(question.at_most, 4))


# --- chains ---


@pytest.mark.parametrize("seed", range(80))
def test_no_list_that_the_judge_lets_pass_is_cheaper(seed: int) -> None:
    """Of every list there is, the cheapest that breaks no rule costs what the solver says."""
    world, question = tiny(seed)
    lists = every_list(world, question.at_most)
    least = min((cost(world, question, one) for one in lists if not broken_rules(world, question, one)), default=None)
    assert cost_of(best(world, question)) == least


@pytest.mark.parametrize("limits", [True, False])
@pytest.mark.parametrize("seed", range(150))
def test_listing_agrees_with_the_solver(seed: int, limits: bool) -> None:
    """Plain listing and the circuit model find the same cost, or both none, with and without K and T."""
    world, question = random_world(seed, 4 + seed % (6 if limits else 4))
    listed, solved = best_by_listing(world, question, limits=limits), best(world, question, limits=limits)
    assert cost_of(listed) == cost_of(solved)


@pytest.mark.parametrize(("seed", "size"), [(seed, 5 + seed % 20) for seed in range(120)])
def test_an_optimum_is_lawful_and_costs_what_the_judge_says(seed: int, size: int) -> None:
    """The solver's list breaks no rule of the judge's, who reckons the same cost."""
    world, question = random_world(seed, size)
    for limits in (True, False) if size < 12 else (True,):
        found = best(world, question, limits=limits)
        if found is not None:
            assert broken_rules(world, question, found[1], limits=limits) == []
            assert cost(world, question, found[1]) == found[0]


@given(questions(most=8))
@settings(deadline=None, max_examples=60)
def test_readings_agree_on_drawn_worlds(asked: tuple[World, ChainQuestion]) -> None:
    """Listing, solver and judge agree on worlds that Hypothesis draws too."""
    world, question = asked
    found = best(world, question)
    assert cost_of(found) == cost_of(best_by_listing(world, question))
    if found is not None:
        assert broken_rules(world, question, found[1]) == []
        assert cost(world, question, found[1]) == found[0]


def test_limits_only_make_chains_dearer() -> None:
    """K, T and the limit of work never make a chain cheaper, nor possible."""
    for seed in range(60):
        world, question = random_world(seed, 9)
        free, bound = cost_of(best(world, question, limits=False)), cost_of(best(world, question))
        assert bound is None or (free is not None and free <= bound)


def test_two_steps_are_read_alike() -> None:
    """Judge and solver reckon the same step between any two places."""
    for seed in range(40):
        world, question = random_world(seed, 14)
        known = [(drill, caps(world, drill, question.have)) for drill in world.drills.values()]
        places = [
            (drill, under) for drill, under in known if under is not None and set(drill.lifts) & {*world.lift.serves}
        ]
        for (a, under_a), (b, under_b) in product(places, repeat=2):
            if b.stage is Stage.PREPARE and a.stage is not Stage.PREPARE:
                continue
            before, after = stand(world, a, a.load[0], under_a), stand(world, b, b.load[1], under_b)
            ints = [tuple(map(int, under)) for under in (under_a, under_b)]
            one, two = (
                oracle._node(world, drill, load, (cap[0], cap[1], cap[2]))
                for drill, load, cap in ((a, a.load[0], ints[0]), (b, b.load[1], ints[1]))
            )
            assert step(world.lift, before, after) == oracle._step(world, one, two)


def lift_of(*parts: int) -> Lift:
    """A lift of one part, or of parts, with so many points each."""
    points = tuple(tuple(f"{n}-{k}" for k in range(count)) for n, count in enumerate(parts))
    return Lift(
        id=LiftId("lift"),
        name="lift",
        parts=tuple(LiftId(str(n)) for n in range(len(parts))) if len(parts) > 1 else (),
        timeline=tuple(Timed(at=point, position=PositionId("p")) for part in points for point in part),
        part_points=points,
        drill=DrillId("lift"),
        standard=Standard(count=1, of=1, seen="done"),
    )


def at(
    first: int,
    last: int,
    *out: int,
    stage: Stage = Stage.JOIN,
    speed: Speed = Speed.FULL,
    load: Load = Load.STICK,
    catch: Catch = Catch.FULL,
    helped: bool = False,
) -> Stand:
    """A place on a timeline."""
    dials = {"stage": stage, "speed": speed, "load": load, "catch": catch, "helped": helped}
    return Stand(first=first, last=last, out=frozenset(out), **dials)  # type: ignore[arg-type]


STEPS = [
    ("nothing turned", (6,), at(1, 3), at(1, 3), 0),
    ("each end let out by two", (6,), at(2, 3), at(0, 5), 8),
    ("each end drawn in by two", (6,), at(0, 5), at(2, 3), 8),
    ("a whole further part taken in", (6, 5), at(0, 5), at(0, 10), 1),
    ("a part and one point taken in", (6, 5), at(0, 4), at(0, 10), 4),
    ("a whole part given up at the start", (6, 5), at(0, 10), at(6, 10), 2),
    ("from one part to the other", (6, 5), at(0, 5), at(6, 10), 3),
    ("a point newly left out", (6,), at(0, 5), at(0, 5, 3), 1),
    ("a point taken in", (6,), at(0, 5, 3), at(0, 5), 1),
    ("a point left out that is then out of reach", (6,), at(0, 5, 3), at(4, 5), 8),
    ("speed: leaving held counts n", (6,), at(0, 5, speed=Speed.HELD), at(0, 5), 3),
    ("speed up", (6,), at(0, 5, speed=Speed.SLOW), at(0, 5), 4),
    ("speed down to held", (6,), at(0, 5), at(0, 5, speed=Speed.HELD), 18),
    ("load up", (6,), at(0, 5), at(0, 5, load=Load.WORKING), 4),
    ("load down", (6,), at(0, 5), at(0, 5, load=Load.NONE), 2),
    ("starts to catch", (6,), at(0, 5, catch=Catch.NONE), at(0, 5), 3),
    ("ceases to catch", (6,), at(0, 5), at(0, 5, catch=Catch.NONE), 1),
    ("catches deeper", (6,), at(0, 5, catch=Catch.STANDING), at(0, 5), 4),
    ("catches higher", (6,), at(0, 5), at(0, 5, catch=Catch.POWER), 2),
    ("help taken away", (6,), at(0, 5, helped=True), at(0, 5), 1),
    ("help given", (6,), at(0, 5), at(0, 5, helped=True), 2),
    ("two stages gone back", (6,), at(0, 5), at(0, 5, stage=Stage.POSITION), 8),
    ("two stages on", (6,), at(0, 5, stage=Stage.SEGMENT), at(0, 5, stage=Stage.WHOLE), 0),
    ("out of preparation", (6,), at(0, 0, stage=Stage.PREPARE), at(4, 5), 1),
    ("within preparation", (6,), at(0, 0, stage=Stage.PREPARE), at(0, 0, stage=Stage.PREPARE), 0),
]


@pytest.mark.parametrize(("what", "parts", "before", "after", "size"), STEPS, ids=[case[0] for case in STEPS])
def test_step_by_hand(what: str, parts: tuple[int, ...], before: Stand, after: Stand, size: int) -> None:
    """Sums worked out by hand from the paragraph "Step"."""
    assert step(lift_of(*parts), before, after) == size, what


def test_no_step_leads_into_preparation() -> None:
    """Preparation only opens, so nothing says how far it is from anywhere."""
    with pytest.raises(ValueError, match="into preparation"):
        step(lift_of(6), at(0, 5), at(0, 0, stage=Stage.PREPARE))


# --- sittings ---


def test_a_chain_is_cut_as_the_judge_of_sittings_asks() -> None:
    """The judge's own cut stands before it; another end, a gap or a sitting too many do not."""
    seen = Counter[int]()
    for seed in range(150):
        world, question = random_world(seed, 9)
        question = question._replace(at_most=3, seconds=question.seconds or 900)
        found = best(world, question, limits=False)
        spans = cut(world, question, found[1]) if found else None
        if found is None or spans is None:
            continue
        seen[len(spans)] += 1
        assert broken_sittings(world, question, found[1], spans) == []
        assert all(start == end - 1 for (_, end), (start, _) in pairwise(spans))
        assert broken_sittings(world, question, found[1], [*spans, spans[-1]])
        assert broken_sittings(world, question, found[1], spans[1:])
        if len(spans) > 1:
            assert broken_sittings(world, question, found[1], [(0, len(found[1]))])
            assert not broken_rules(world, question, found[1], limits=False)
    assert seen[1] > 20
    assert seen[2] + seen[3] > 10


# --- paths ---


FEW_NODES = [
    seed
    for seed in range(60)
    if sum(drill.load[1] - drill.load[0] + 1 for drill in random_path(seed, 3 + seed % 2)[0].drills.values()) <= 8
]


@pytest.mark.parametrize("seed", FEW_NODES)
def test_no_path_that_the_judge_lets_pass_is_cheaper(seed: int) -> None:
    """Of every list there is, the cheapest that breaks no rule of paths costs what the solver says."""
    world, asked = random_path(seed, 3 + seed % 2)
    fine = (
        one for one in every_list(world, 8) if not broken_path_rules(world, asked.holds, asked.have, one, asked.order)
    )
    least = min((path_cost(world, asked.have, one) for one in fine), default=None)
    assert cost_of(best_path(world, asked.holds, asked.have, asked.order)) == least


@pytest.mark.parametrize(("seed", "size"), [(seed, 4 + seed % 14) for seed in range(140)])
def test_a_best_path_is_lawful_and_costs_what_the_judge_says(seed: int, size: int) -> None:
    """The solver's path breaks no rule of the judge's, who reckons the same cost; listing finds none cheaper."""
    world, asked = random_path(seed, size)
    found = best_path(world, asked.holds, asked.have, asked.order)
    if size < 8:
        assert cost_of(found) == cost_of(best_path_by_listing(world, asked.holds, asked.have, asked.order))
    if found is not None:
        assert broken_path_rules(world, asked.holds, asked.have, found[1], asked.order) == []
        assert path_cost(world, asked.have, found[1]) == found[0]


@given(path_questions(most=7))
@settings(deadline=None, max_examples=40)
def test_readings_of_paths_agree_on_drawn_worlds(drawn: tuple[World, PathQuestion]) -> None:
    """Listing, solver and judge agree on worlds that Hypothesis draws too."""
    world, asked = drawn
    found = best_path(world, asked.holds, asked.have, asked.order)
    assert cost_of(found) == cost_of(best_path_by_listing(world, asked.holds, asked.have, asked.order))
    if found is not None:
        assert broken_path_rules(world, asked.holds, asked.have, found[1], asked.order) == []


# --- the judges have teeth, the worlds variety ---


def test_the_judge_names_every_rule() -> None:
    """Among lists spoilt at random every rule is found broken, in the design's words."""
    named, rng = set[str](), Random(1)
    for seed in range(120):
        world, question = random_world(seed, 7)
        entries = [(i, load) for i in sorted(world.drills) for load in Load]
        sound = best(world, question, limits=False)
        for _ in range(20):
            spoilt = [*sound[1]] if sound else rng.sample(entries, 3)
            spoilt.insert(rng.randrange(len(spoilt) + 1), rng.choice(entries))
            spoilt += rng.sample(entries, 8) if rng.random() < 0.2 else []
            named |= {
                rule for rule in RULES if any(RULES[rule] in said for said in broken_rules(world, question, spoilt))
            }
        world, asked = random_path(seed, 9)
        path = best_path(world, asked.holds, asked.have)
        for order in ("up", "down") if path else ():
            spoilt = [*(path[1] if path else [])]
            spoilt.insert(rng.randrange(len(spoilt)), rng.choice(entries))
            said = " ".join(broken_path_rules(world, asked.holds, asked.have, spoilt, order))
            named |= {rule for rule in RULES if RULES[rule] in said}
    assert set(RULES) - named == {"sittings"}


def test_worlds_are_various_and_many_are_solvable() -> None:
    """A good share has a chain, and what the design speaks of turns up in them."""
    seen, count = Counter[str](), 240
    for seed in range(count):
        world, question = random_world(seed, 6 + seed % 15)
        found, asked = best(world, question), read(world, question)
        if found is None:
            seen["cut"] += len(world.drills) < 12 and best(world, question, limits=False) is not None
            continue
        seen["solved"] += 1
        seen[asked.cause.kind] += 1
        seen["bridge"] += any(lawful.is_bridge(asked, entry) for entry in found[1])
        seen["again"] += len({i for i, _ in found[1]}) < len(found[1])
        seen["working"] += asked.load is Load.WORKING
        seen["stick"] += asked.load is Load.STICK
        seen["parts"] += bool(world.lift.parts)
        seen["complex"] += any(world.drills[i].made_of for i, _ in found[1])
        seen["long"] += len(found[1]) > 4
        seen["owed"] += any(asked.owed(world.drills[i]) for i, _ in found[1])
        seen["capped"] += any(asked.caps[i] not in {None, FREE} for i, _ in found[1])
        seen["any tester"] += bool(asked.testers)
        seen["two loads"] += any(len(loads(asked, drill)) > 1 for drill in world.drills.values())
    assert seen["solved"] >= 0.45 * count, seen
    wanted = (
        *("mobility", "strength", "timing", "earlier", "bridge", "again", "working", "stick", "parts"),
        *("cut", "complex", "long", "owed", "capped", "any tester", "two loads"),
    )
    assert [kind for kind in wanted if seen[kind] < 3] == [], seen


def test_the_same_seed_gives_the_same_world() -> None:
    """A world is known by its seed and size."""
    (one, asked), (two, again) = random_world(11, 20), random_world(11, 20)
    assert (one.lift, dict(one.drills), dict(one.faults), asked) == (
        two.lift,
        dict(two.drills),
        dict(two.faults),
        again,
    )


def test_out_of_time_is_said() -> None:
    """An answer that was not proved is never passed off as one that was."""
    world, question = next(
        asked for asked in (random_world(seed, 40) for seed in range(50)) if best(*asked, limits=False) is not None
    )
    with pytest.raises(oracle.NotProvedError):
        best(world, question, time_limit=1e-6)
