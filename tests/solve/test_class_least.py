"""The solver's least idle time is that of trying every plan; what it says is short is short by just that much."""

from functools import cache

import pytest
from class_small import drawn, lawful, least_idle, seeds

from kb.ask.class_.greedy import greedy
from kb.ask.class_.rotation import Rotation, idle_of
from kb.solve.rotation import Effort, Undecided, best_plan, exists
from kb.solve.short import shortages

CASES = seeds(90)


@cache
def tried(seed: int) -> int | None:
    """The least idle time of a tiny class, by trying every plan."""
    return least_idle(drawn(seed))


@pytest.mark.oracle
@pytest.mark.parametrize("seed", CASES)
def test_least_idle_is_that_of_trying_every_plan(seed: int) -> None:
    """Over tiny classes with showings, looks, turns, sticks for bars, helpers and too many chains."""
    rotation, best = drawn(seed), tried(seed)
    found = best_plan(rotation)
    assert (found is None) == (best is None)
    if found is not None:
        assert lawful(rotation, found)
        assert idle_of(rotation, found) == best == found.bound


@pytest.mark.parametrize("seed", CASES)
def test_a_plan_built_forward_is_lawful_and_never_better(seed: int) -> None:
    """Plain list scheduling keeps every rule, claims no proof but that of nobody idle, and finds none where none is."""
    rotation, best = drawn(seed), tried(seed)
    found = greedy(rotation, tries=60)
    if found is not None:
        assert best is not None
        assert lawful(rotation, found)
        assert idle_of(rotation, found) >= best
        assert found.bound is None or found.bound == idle_of(rotation, found) == 0


def test_the_tiny_classes_are_of_every_kind() -> None:
    """Most have a plan and some have none; all that a plan must heed comes up, and list scheduling finds most."""
    there = [seed for seed in CASES if tried(seed) is not None]
    assert 50 <= len(there) <= len(CASES) - 10
    rotations = [drawn(seed) for seed in there]
    tasks = [task for rotation in rotations for unit in rotation.units for task in unit.tasks]
    assert any(task.helped for task in tasks)
    assert any(task.look for task in tasks)
    assert any(mode.shared for task in tasks for mode in task.modes)
    assert any(mode.light for task in tasks for mode in task.modes)
    assert any(len(showing.needs) > 1 for rotation in rotations for showing in rotation.showings)
    assert any(len(rotation.led) > rotation.at_once for rotation in rotations)
    assert sum(greedy(rotation, tries=60) is not None for rotation in rotations) > 0.8 * len(rotations)


def more(rotation: Rotation, what: str, by: int) -> Rotation:
    """A rotation with so much more of one thing."""
    if what in rotation.have:
        return rotation._replace(have={**rotation.have, what: rotation.have[what] + by})  # type: ignore[dict-item]
    if what == "wait":
        return rotation._replace(wait=rotation.wait + by)
    each = rotation.at_once // rotation.coaches
    return rotation._replace(coaches=rotation.coaches + by, at_once=each * (rotation.coaches + by))


@pytest.mark.oracle
@pytest.mark.parametrize("seed", [seed for seed in CASES if tried(seed) is None][:10])
def test_what_is_short_is_short_by_just_that_much(seed: int) -> None:
    """With so much more there is a plan, with one less there is none: both by trying every plan."""
    rotation = drawn(seed)
    for short in shortages(rotation):
        if short.what == "minutes":
            by = short.by * 2  # two ticks a minute, rounded up
            assert best_plan(rotation._replace(last=rotation.last + by)) is not None
            assert best_plan(rotation._replace(last=rotation.last + by - 2)) is None
            continue
        by = short.by // 30 if short.what == "wait" else short.by
        assert least_idle(more(rotation, short.what, by)) is not None, short
        assert least_idle(more(rotation, short.what, by - 1)) is None, short


def test_a_search_that_stops_says_what_it_knows() -> None:
    """Neither a plan nor a proof: undecided. What is found after that is as lawful, and its bound no more than it."""
    seed = max(there for there in CASES if tried(there))
    rotation, best = drawn(seed), tried(seed)
    assert best is not None
    with pytest.raises(Undecided):
        best_plan(rotation, None, Effort(alone=0, together=0, drills=0))
    assert exists(rotation, 0) is None
    assert exists(rotation, 5) is True
    assert exists(rotation._replace(last=1), 5) is False
    found = best_plan(rotation, greedy(rotation), Effort(alone=0, together=5, drills=0))
    assert found is not None
    assert lawful(rotation, found)
    assert found.bound is not None
    assert found.bound <= best == idle_of(rotation, found)
    assert found.drills_bound == 1
