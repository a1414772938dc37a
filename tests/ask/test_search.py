"""The search on fields of a few nodes: what binds a list, and what it does when states run out."""

from array import array
from collections.abc import Sequence
from itertools import pairwise

import pytest

from kb.ask.ahead import Ahead
from kb.ask.field import STEP_WEIGHT, Field
from kb.ask.search import Found, Limits, search

FAR = 9


def field_of(
    sizes: Sequence[Sequence[int]],
    *,
    groups: dict[int, tuple[int, ...]] | None = None,
    gains: dict[int, int] | None = None,
    drill: Sequence[int] = (),
    load: Sequence[int] = (),
    opens: Sequence[int] = (0,),
    addresses: Sequence[int] = (),
    work: Sequence[int] = (),
    prepares: Sequence[int] = (),
    must_address: bool = False,
    must_prepare: bool = False,
    band: Sequence[tuple[int, int] | None] = (),
    order: str = "either",
) -> Field:
    """A field in which every node takes ten seconds and the last is the goal."""
    count = len(sizes)
    least = [list(row) for row in sizes]
    for via in range(count):
        for a in range(count):
            for b in range(count):
                least[a][b] = min(least[a][b], least[a][via] + least[via][b])
    return Field(
        drill=drill or range(count),
        load=load or [0] * count,
        profile=range(count),
        enter=[10] * count,
        seconds=[10] * count,
        work=[n in work for n in range(count)],
        addresses=[n in addresses for n in range(count)],
        prepares=[n in prepares for n in range(count)],
        may_open=[n in opens for n in range(count)],
        before_goal=[n != count - 1 for n in range(count)],
        groups=[(groups or {}).get(n, ()) for n in range(count)],
        gains=[(gains or {}).get(n, 0) for n in range(count)],
        goal=count - 1,
        goal_may_open=False,
        must_prepare=must_prepare,
        must_address=must_address,
        sizes=[array("H", row) for row in sizes],
        least=[array("H", row) for row in least],
        band=band,
        order=order,
    )


def line(count: int) -> list[list[int]]:
    """Nodes in a row, a step of squares between any two, as dials turn."""
    return [[(b - a) ** 2 if b >= a else 2 * (a - b) ** 2 for b in range(count)] for a in range(count)]


def cost_of(field: Field, nodes: Sequence[int]) -> int:
    """A list's cost, added up apart from the search."""
    return sum(field.enter[n] for n in nodes) + STEP_WEIGHT * sum(field.sizes[a][b] for a, b in pairwise(nodes))


def found(field: Field, limits: Limits | None = None, *, budget: int = 1000, **more: object) -> Found | None:
    """What the search finds; nothing that every list must pass."""
    return search(field, limits or Limits(), {}, budget=budget, **more)  # type: ignore[arg-type]


def test_small_steps_are_cheaper_than_a_leap() -> None:
    """Squares make every stone on the way worth its seconds, and the answer is proved."""
    field = field_of(line(5))
    best = found(field)
    assert best == Found((0, 1, 2, 3, 4), cost_of(field, range(5)), cost_of(field, range(5)))
    assert best.optimal


def test_what_a_node_needs_comes_earlier() -> None:
    """A goal that needs a drill far off the way goes there first."""
    sizes = line(5)
    sizes.insert(4, [FAR] * 5)
    for n, row in enumerate(sizes):
        row.insert(4, 0 if n == 4 else FAR)
    best = found(field_of(sizes, groups={5: (1,)}, gains={4: 1}))
    assert best is not None
    assert 4 in best.nodes


@pytest.mark.parametrize(
    ("limits", "nodes"),
    [
        (Limits(entries=3), (0, 2, 4)),
        (Limits(seconds=30), (0, 2, 4)),
        (Limits(work=1), (0, 1, 2, 4)),
        (Limits(entries=2), (0, 4)),
    ],
)
def test_limits_make_the_steps_longer(limits: Limits, nodes: tuple[int, ...]) -> None:
    """Too few entries, seconds or entries of work: the cheapest list within them, still proved."""
    field = field_of(line(5), work=(1, 3))
    best = found(field, limits)
    assert best is not None
    assert (best.optimal, best.cost) == (True, cost_of(field, best.nodes))
    assert best.cost == cost_of(field, nodes)


def test_limits_that_nothing_keeps_have_no_answer() -> None:
    """One entry is never enough where the goal may not open."""
    assert found(field_of(line(3)), Limits(entries=1)) is None


def test_what_every_list_needs_counts_towards_the_limits() -> None:
    """A drill still owed is reckoned with before it is reached: no room for it, no answer."""
    field = field_of(line(4), groups={3: (1,)}, gains={2: 1})
    must: dict[int, tuple[int, ...]] = {1: (2,)}
    best = search(field, Limits(entries=3), must, budget=100)
    assert best is not None
    assert 2 in best.nodes
    assert search(field, Limits(entries=2), must, budget=100) is None
    assert search(field, Limits(seconds=20), must, budget=100) is None


def hub() -> Field:
    """Three things, each near a stone in the middle and far from one another; the goal needs all of them."""
    middle, goal = 0, 4
    sizes = [[0 if a == b else FAR for b in range(5)] for a in range(5)]
    for n in (1, 2, 3, goal):
        sizes[middle][n] = sizes[n][middle] = 1
    return field_of(sizes, groups={goal: (1, 2, 4)}, gains={1: 1, 2: 2, 3: 4}, opens=(0, 1, 2, 3))


def test_a_list_never_comes_back_to_a_drill() -> None:
    """Passing the middle between any two would be cheapest; it is passed once, and that is proved the best."""
    field = hub()
    best = found(field)
    assert best is not None
    assert len(set(best.nodes)) == len(best.nodes)
    assert (best.cost, best.optimal) == (cost_of(field, (1, 2, 3, 0, 4)), True)


def test_a_drill_comes_again_heavier() -> None:
    """One drill at two loads may come twice, the heavier later."""
    sizes = line(4)
    best = found(field_of(sizes, drill=(0, 1, 1, 2), load=(0, 0, 1, 0)))
    assert best is not None
    assert best.nodes == (0, 1, 2, 3)


def test_out_of_states_it_leans_and_says_the_gap() -> None:
    """With too few states to prove it, a list and a bound that the best does not go under."""
    field, whole = hub(), found(hub())
    assert whole is not None
    short = found(field, budget=9)
    assert short is None or short.bound <= whole.cost <= short.cost
    spare = (1, 2, 3, 4)
    for budget in range(40):
        short = found(field, budget=budget, spare=spare)
        assert short is not None
        assert short.bound <= whole.cost <= short.cost <= cost_of(field, spare)


def test_out_of_states_and_nothing_at_hand_there_is_no_answer() -> None:
    """No states at all and no spare list: None, as for no answer."""
    assert found(field_of(line(5)), budget=0) is None


def test_a_spare_that_is_the_best_is_proved_so() -> None:
    """A search that finds nothing cheaper than the list at hand has proved it."""
    field = field_of(line(5))
    best = found(field, spare=(0, 1, 2, 3, 4))
    assert best == Found((0, 1, 2, 3, 4), cost_of(field, range(5)), cost_of(field, range(5)))


def test_something_must_address_the_cause() -> None:
    """Where something must, the way leads over it; where nothing can, there is none."""
    field = field_of(line(4), addresses=(2,), must_address=True)
    best = found(field)
    assert best is not None
    assert 2 in best.nodes
    assert found(field_of(line(4), must_address=True)) is None


def test_a_list_opens_with_preparation_where_it_must() -> None:
    """Preparation that addresses comes first, and is not gone back to."""
    best = found(field_of(line(4), prepares=(0,), opens=(1,), addresses=(0,), must_prepare=True))
    assert best is not None
    assert best.nodes[0] == 0
    assert found(field_of(line(4), prepares=(0,), opens=(1,), must_prepare=True)) is None


@pytest.mark.parametrize(("order", "nodes"), [("up", (0, 1, 2, 3)), ("down", (0, 2, 3))])
def test_an_order_binds_the_stretches(order: str, nodes: tuple[int, ...]) -> None:
    """Going up no stretch starts earlier than the last; going down none starts later."""
    best = found(field_of(line(4), band=(None, (0, 0), (1, 1), None), order=order))
    assert best is not None
    assert (best.nodes, best.optimal) in [(nodes, True), ((0, 1, 3), order == "down")]


def test_a_dead_end_is_seen() -> None:
    """What lies behind in the order, or in preparation, can't be gone back to."""
    field = field_of(
        line(4), prepares=(0,), groups={3: (1, 2)}, gains={0: 1, 1: 2}, band=(None, (0, 0), (1, 1), None), order="up"
    )
    ahead = Ahead(field)
    assert ahead.leads(0, None, 0)
    assert not ahead.leads(1, (0, 0), 2)
    assert not ahead.leads(2, (1, 1), 1)
    assert ahead.leads(2, (1, 1), 3)
