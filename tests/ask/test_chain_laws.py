"""What DESIGN.md section 5 asks of every chain, as laws over drawn libraries; each docstring quotes its law."""

from random import Random

import pytest
from hypothesis import HealthCheck, assume, given, settings
from lawful import RULES, broken_rules, broken_sittings, cost, cut, entry_seconds
from oracle import best_by_listing
from reading import Chain, World, read
from strategies import questions, random_world
from worlds import entries_of, route_to, shelf_of

from kb.ask.chain import NoChain, chain
from kb.ask.question import ChainQuestion
from kb.ask.route import Route
from kb.terms import Load, Stage

pytestmark = pytest.mark.no_cover

Asked = tuple[World, ChainQuestion]

laws = settings(
    deadline=None, max_examples=60, suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow]
)


def answered(asked: Asked) -> tuple[World, ChainQuestion, Route, Chain]:
    """The question with its first route; draws without one are passed over."""
    world, question = asked
    route = route_to(world, question)
    assume(route is not None)
    assert route is not None
    return world, question, route, entries_of(route)


def breaks(rule: str, asked: Asked) -> list[str]:
    """How the first route breaks one rule; K and T bind only a chain of one sitting."""
    world, question, route, entries = answered(asked)
    limits = len(route.sittings) == 1
    return [said for said in broken_rules(world, question, entries, limits=limits) if said.startswith(RULES[rule])]


@given(questions())
@laws
def test_rule_1(asked: Asked) -> None:
    """It ends in L's drill at l, and the entry before that tests f, unless no doable drill but L does."""
    world, _, _, entries = answered(asked)
    assert entries[-1][0] == world.lift.drill
    assert breaks("1", asked) == []


@given(questions())
@laws
def test_rule_2(asked: Asked) -> None:
    """Each can be done with E at its load, stand-ins capping dials; below its least load it can't."""
    assert breaks("2", asked) == []


@given(questions())
@laws
def test_rule_3(asked: Asked) -> None:
    """Each prerequisite in doubt, and each part of a complex in doubt, comes earlier; again only at a higher load."""
    assert breaks("3", asked) == []


@given(questions())
@laws
def test_rule_4(asked: Asked) -> None:
    """Preparation only opens; the first after it addresses or tests f; something addresses c (for strength a finish
    drill named after L will do); a mobility cause opens with a prepare drill for it.
    """
    world, question, _, entries = answered(asked)
    assert breaks("4", asked) == []
    if read(world, question).worked_cause.kind == "mobility":
        assert world.drills[entries[0][0]].stage is Stage.PREPARE


@given(questions())
@laws
def test_rule_5(asked: Asked) -> None:
    """Nothing but L is above light, and L above light comes right after L at light."""
    world, _, _, entries = answered(asked)
    assert breaks("5", asked) == []
    assert {i for i, load in entries if load > Load.LIGHT} <= {world.lift.drill}


@given(questions())
@laws
def test_rule_6(asked: Asked) -> None:
    """Drills that are held serve as bridges, except `bridge: no`."""
    assert breaks("6", asked) == []


@given(questions())
@laws
def test_rule_7(asked: Asked) -> None:
    """A drill that addresses c, and L, take their full dose (work); any other is a check (set-up and one round); all
    fit T.
    """
    world, question, route, entries = answered(asked)
    assert breaks("7", asked) == []
    took = [entry_seconds(world, question, entry) for entry in entries]
    assert [entry.seconds for entry in route.entries] == took
    assert [entry.work for entry in route.entries] == [read(world, question).is_work(entry) for entry in entries]
    assert route.seconds == sum(took)


@given(questions())
@laws
def test_entries_and_work_are_limited(asked: Asked) -> None:
    """At most K entries (default 8, preparation counted; of them at most 4 of work besides L)."""
    assert breaks("K", asked) == []
    assert breaks("work", asked) == []


@given(questions())
@laws
def test_only_doable_drills_of_the_lift(asked: Asked) -> None:
    """A drill is doable if E leaves some load of its range at or under min(l, light) and, of each prerequisite group
    in doubt, one member is doable. Only drills of L, or of a part of L, count; finish is never in a chain.
    """
    assert [breaks(rule, asked) for rule in ("doable", "of L", "finish", "kit")] == [[]] * 4


@given(questions())
@laws
def test_cost_is_what_the_design_reckons(asked: Asked) -> None:
    """300 x step + seconds + 600 for each drill past preparation that neither addresses nor tests f (integers; the
    first entry has no step).
    """
    world, question, route, entries = answered(asked)
    assert route.cost == cost(world, question, entries)
    assert route.entries[0].step is None
    turned = [sum(change.size for change in entry.changes) for entry in route.entries[1:]]
    steps = [entry.step for entry in route.entries[1:]]
    opening = [world.drills[i].stage is Stage.PREPARE for i, _ in entries[:-1]]
    assert [size for size, out in zip(steps, opening, strict=True) if not out] == [
        size for size, out in zip(turned, opening, strict=True) if not out
    ]


@given(questions(most=6))
@laws
def test_the_first_route_is_the_cheapest_of_all(asked: Asked) -> None:
    """Choose an ordered list that minimises; the first route is proved optimal. Here: among every list there is."""
    world, question = asked
    question = question._replace(at_most=min(question.at_most, 5))
    listed, route = best_by_listing(world, question), route_to(world, question)
    if listed is not None:
        assert route is not None
        assert (route.cost, route.optimal) == (listed[0], True)
    else:
        assert route is None or len(route.sittings) > 1


@given(questions())
@laws
def test_sittings(asked: Asked) -> None:
    """Doesn't fit T or K: the best chain without them, cut into sittings that overlap by one entry (the shared one is
    a check in the later), as late as K and T allow, after an entry that tests f if there is one.
    """
    world, question, route, entries = answered(asked)
    assert broken_sittings(world, question, entries, route.sittings) == []
    if len(route.sittings) > 1:
        assert broken_rules(world, question, entries) != []
        assert list(route.sittings) == cut(world, question, entries)


@given(questions())
@laws
def test_no_cause_named(asked: Asked) -> None:
    """No cause named: answer for the first (commonest) cause."""
    world, question = asked
    first = world.faults[question.fault].causes[0].id
    unnamed, named = (route_to(world, question._replace(cause=cause)) for cause in (None, first))
    assert unnamed == named


@given(questions())
@laws
def test_more_room_is_never_dearer(asked: Asked) -> None:
    """All fit T, at most K: a chain that fits still fits where there is more time, or more entries are allowed."""
    world, question, route, _ = answered(asked)
    assume(len(route.sittings) == 1)
    more = route_to(world, question._replace(seconds=None, at_most=question.at_most + 1))
    assert more is not None
    assert len(more.sittings) == 1
    assert more.cost <= route.cost


@given(questions())
@laws
def test_ties_break_the_same_way(asked: Asked) -> None:
    """Ties break the same way whatever the row order or hash seed."""
    world, question, route, _ = answered(asked)
    ids = list(world.drills)
    Random(0).shuffle(ids)
    again = World(
        lift=world.lift,
        drills={i: world.drills[i] for i in ids},
        faults=dict(reversed(list(world.faults.items()))),
        items=dict(reversed(list(world.items.items()))),
    )
    assert route_to(again, question) == route


@given(questions(least=6, most=16))
@settings(laws, max_examples=30)
def test_further_routes(asked: Asked) -> None:
    """`--routes k`: next cheapest routes, unproved, of whose drills (L and preparation aside) at most half are in an
    earlier one.
    """
    world, question = asked
    try:
        routes = chain(shelf_of(world), question._replace(routes=3)).routes
    except NoChain:
        assume(False)
        return
    assume(len(routes) > 1 and len(routes[0].sittings) == 1)
    assert len(routes) <= 3
    assert [route.cost for route in routes] == sorted(route.cost for route in routes)
    kinds = [
        {i for i, _ in entries_of(route) if i != world.lift.drill and world.drills[i].stage is not Stage.PREPARE}
        for route in routes
    ]
    for n, route in enumerate(routes[1:], 1):
        assert not route.optimal
        assert broken_rules(world, question, entries_of(route)) == []
        assert route.cost == cost(world, question, entries_of(route))
        assert all(2 * len(kinds[n] & earlier) <= len(kinds[n]) for earlier in kinds[:n])


@pytest.mark.parametrize("seconds", [0, 60])
def test_one_round_longer_than_the_time(seconds: int) -> None:
    """One round longer than T: refused with the least T."""
    found = 0
    for seed in range(40):
        world, question = random_world(seed, 8)
        if route_to(world, question._replace(seconds=None, at_most=8)) is None:
            continue
        with pytest.raises(NoChain, match=r"\d+ min"):
            chain(shelf_of(world), question._replace(seconds=seconds, at_most=8))
        found += 1
    assert found > 5
