"""Steps worked out ahead: every place a drill can stand, the step between any two, the least sum on the way."""

from itertools import product
from random import Random

import pytest
from handmade import drill, library
from hypothesis import given
from hypothesis import strategies as st

from kb.dials import Dials, at_load, dials_of, spans, step
from kb.make.steps import profiles, step_rows
from kb.terms import Catch, Item, ItemId, Load, Speed, Stage, StandIn

SOME = st.builds(
    lambda stage, ends, *rest: Dials(stage, min(ends), max(ends), *rest),
    st.sampled_from([stage for stage in Stage if stage is not Stage.FINISH]),
    st.tuples(st.integers(0, 5), st.integers(0, 5)),
    st.integers(0, 63),
    st.sampled_from(Speed),
    st.sampled_from(Load),
    st.sampled_from(Catch),
    st.booleans(),
)
PARTS = st.sampled_from([(), ((0, 2), (3, 5))])


def by_floyd_and_warshall(found: list[Dials], sizes: list[list[int]]) -> list[list[int]]:
    """The textbook's three loops, never by way of preparation."""
    least = [list(row) for row in sizes]
    for k, through in enumerate(found):
        if through.stage is not Stage.PREPARE:
            for row in least:
                for j, onward in enumerate(least[k]):
                    row[j] = min(row[j], row[k] + onward)
    return least


@given(found=st.lists(SOME, max_size=12, unique=True).map(sorted), parts=PARTS)
def test_sizes_are_steps_and_least_their_shortest_sums(found: list[Dials], parts: tuple[tuple[int, int], ...]) -> None:
    """`sizes` are `dials.step` from n to every profile; `least` the shortest sums, by another algorithm."""
    sizes, least = step_rows(found, parts)
    assert [list(row) for row in sizes] == [[step(a, b, parts) for b in found] for a in found]
    assert [list(row) for row in least] == by_floyd_and_warshall(found, [list(row) for row in sizes])


def test_two_hundred_places() -> None:
    """As many as a large lift has, drawn at random: still steps and shortest sums."""
    draw = Random(200)
    found = set()
    while len(found) < 200:
        first = draw.randrange(6)
        ends = (first, draw.randrange(first, 6))
        scales = (draw.choice(list(scale)) for scale in (Speed, Load, Catch))
        found.add(Dials(draw.choice(list(Stage)[:5]), *ends, draw.choice([0, 4]), *scales, draw.random() < 0.2))
    sizes, least = step_rows(sorted(found), ())
    assert [list(row) for row in least] == by_floyd_and_warshall(sorted(found), [list(row) for row in sizes])


def test_a_sum_never_passes_through_preparation() -> None:
    """From a whole lift back to a hold, the way over preparation would be shorter; it isn't taken."""
    hold = Dials(Stage.POSITION, 0, 0, 0, Speed.HELD, Load.NONE, Catch.NONE, False)
    whole = Dials(Stage.WHOLE, 0, 5, 0, Speed.FULL, Load.WORKING, Catch.FULL, False)
    prepare = Dials(Stage.PREPARE, 0, 0, 0, Speed.HELD, Load.NONE, Catch.NONE, False)
    found = sorted([hold, whole, prepare])
    sizes, least = step_rows(found, ())
    at = {dials: n for n, dials in enumerate(found)}
    assert least[at[whole]][at[hold]] == sizes[at[whole]][at[hold]] == step(whole, hold)
    assert sizes[at[prepare]][at[hold]] == least[at[prepare]][at[whole]] == 1


@pytest.mark.parametrize("found", [[], [Dials(Stage.WHOLE, 0, 1, 0, Speed.FULL, Load.LIGHT, Catch.FULL, False)]])
def test_few_places(found: list[Dials]) -> None:
    """A lift with no drill has no rows, one with a single place the step to itself: nothing."""
    sizes, least = step_rows(found, ())
    assert [list(row) for row in sizes] == [list(row) for row in least] == [[0]] * len(found)


def test_profiles_are_each_load_under_each_cap() -> None:
    """The bar gives each load of the range at full speed; the stick in its place its own, no faster than paused."""
    made = library()
    tall = made.drills["tall-clean"]
    found = profiles(made.lifts["clean"], {tall.id: tall}, made.items)
    dials = dials_of(tall, made.lifts["clean"])
    assert found == sorted(
        [at_load(dials, Load.STICK), at_load(dials, Load.LIGHT), at_load(dials, Load.STICK, Speed.PAUSED)]
    )


def test_profiles_take_the_lowest_cap_over_items() -> None:
    """Two items, each with stand-ins: every choice, and of each the lowest cap; below its least load none."""
    caps = {"a": {"load": Load.LIGHT, "catch": Catch.POWER}, "b": {"load": Load.STICK, "speed": Speed.SLOW}}
    items = {
        item: Item(id=item, name=item, stand_ins=(StandIn(item=ItemId(f"{item}-2"), lost="", **cap),))
        for item, cap in caps.items()
    }
    made = library()
    one = drill(
        "one",
        reach={"clean": ("start", "receive")},
        speed=Speed.FULL,
        load=(Load.LIGHT, Load.WORKING),
        catch=Catch.FULL,
        equipment=("a", "b", "gone"),
    )
    found = {(dials.load, dials.speed, dials.catch) for dials in profiles(made.lifts["clean"], {"one": one}, items)}
    plain = set(product((Load.LIGHT, Load.WORKING), [Speed.FULL], [Catch.FULL]))
    assert found == plain | {(Load.LIGHT, Speed.FULL, Catch.POWER)}


def test_profiles_of_what_counts_alone() -> None:
    """Finish drills and other lifts' have none; a lift of parts has its parts', on its own timeline."""
    made = library()
    clean, both = (profiles(made.lifts[lift], made.drills, made.items) for lift in ("clean", "clean-and-jerk"))
    assert not [dials for dials in clean if dials.stage is Stage.FINISH]
    assert max(dials.last for dials in clean) == 2
    assert {(dials.first, dials.last) for dials in both if dials.stage is Stage.WHOLE} == {(0, 2), (3, 5), (0, 5)}
    assert clean == sorted(set(clean))


def test_steps_on_a_lift_of_parts_count_a_part_as_one_notch() -> None:
    """From the clean to the clean and jerk takes in a whole part: one notch of reach, nothing else turned."""
    made = library()
    both = made.lifts["clean-and-jerk"]
    found = profiles(both, made.drills, made.items)
    sizes, _ = step_rows(found, spans(both))
    at = {(dials.first, dials.last, dials.load): n for n, dials in enumerate(found) if dials.stage is Stage.WHOLE}
    assert sizes[at[0, 2, Load.LIGHT]][at[0, 5, Load.LIGHT]] == 1
