"""Answers don't hang on a decimal: with any weight a quarter more or less, nearly every chain keeps its drills.

The weights stand in `kb.dials.WEIGHTS`, `kb.ask.field` and `kb.ask.choices`. Which chains change is a property of the
library as much as of the weights: near-ties between two drills that serve alike. The shares of a whole run are in
kb/docs/arithmetic.md.
"""

from collections.abc import Callable, Mapping
from functools import cache
from itertools import islice

import pytest
from shipped import questions
from weighed import PARTS, QUARTERS, reweighed

from kb.ask import bound, choices, field, tour
from kb.ask.chain import NoChain, chain
from kb.ask.shelf import Shelf
from kb.terms import LiftId

pytestmark = pytest.mark.no_cover

Asked = tuple[str, str, str, int]
Drills = dict[Asked, frozenset[str]]

MOST = 0.08
"""Chains whose drills may change with one weight, a share: three times what a whole run found, for small samples."""


def drills_of(shelves: Mapping[LiftId, Shelf], every: int) -> Drills:
    """The drills of the best chain for every so-manieth question that has one, stick and hall."""
    found: Drills = {}
    for shelf, question in islice(questions(shelves, ["stick", "hall"]), 0, None, every):
        try:
            entries = chain(shelf, question).routes[0].entries
        except NoChain:
            continue
        asked = (shelf.lift.id, question.fault, question.cause or "", len(question.have))
        found[asked] = frozenset(entry.drill.id for entry in entries)
    return found


def in_quarters(monkeypatch: pytest.MonkeyPatch, weight: int = 300) -> None:
    """From here on a step's size is in quarters of a notch, and a notch is worth `weight` seconds."""
    for module in (bound, field, tour):
        monkeypatch.setattr(module, "STEP_WEIGHT", weight // QUARTERS)


EVERY = [pytest.param(29, id="a share"), pytest.param(1, id="all", marks=pytest.mark.exhaustive)]


@pytest.fixture(scope="module")
def before(shelves: dict[LiftId, Shelf]) -> Callable[[int], Drills]:
    """The chains as the weights are, asked once for each share: before any test changes one."""
    return cache(lambda every: drills_of(shelves, every))


def changed(before: Drills, after: Drills) -> float:
    """The share of chains whose drills differ."""
    return sum(after.get(asked) != drills for asked, drills in before.items()) / len(before)


@pytest.mark.parametrize("every", EVERY)
def test_quarters_alone_change_nothing(
    shelves: dict[LiftId, Shelf], before: Callable[[int], Drills], monkeypatch: pytest.MonkeyPatch, every: int
) -> None:
    """The same weights reckoned in quarters give the same chains: what follows measures the weights alone."""
    usual = before(every)
    in_quarters(monkeypatch)
    assert drills_of({lift: reweighed(shelf, {}) for lift, shelf in shelves.items()}, every) == usual


@pytest.mark.parametrize("every", EVERY)
@pytest.mark.parametrize("quarters", [3, 5])
@pytest.mark.parametrize("part", PARTS)
def test_a_part_of_the_step_weighed_otherwise(
    shelves: dict[LiftId, Shelf],
    before: Callable[[int], Drills],
    monkeypatch: pytest.MonkeyPatch,
    part: str,
    quarters: int,
    every: int,
) -> None:
    """Each dial 25 % lighter, 25 % heavier."""
    usual = before(every)
    in_quarters(monkeypatch)
    after = drills_of({lift: reweighed(shelf, {part: quarters}) for lift, shelf in shelves.items()}, every)
    assert changed(usual, after) <= MOST


@pytest.mark.parametrize("every", EVERY)
@pytest.mark.parametrize("weight", [224, 376])
def test_steps_against_seconds(
    shelves: dict[LiftId, Shelf],
    before: Callable[[int], Drills],
    monkeypatch: pytest.MonkeyPatch,
    weight: int,
    every: int,
) -> None:
    """All steps 25 % lighter or heavier beside the time that the entries take."""
    usual = before(every)
    in_quarters(monkeypatch, weight)
    after = drills_of({lift: reweighed(shelf, {}) for lift, shelf in shelves.items()}, every)
    assert changed(usual, after) <= MOST


@pytest.mark.parametrize("every", EVERY)
@pytest.mark.parametrize("stray", [450, 750])
def test_strays(
    shelves: dict[LiftId, Shelf],
    before: Callable[[int], Drills],
    monkeypatch: pytest.MonkeyPatch,
    stray: int,
    every: int,
) -> None:
    """What an entry costs that neither addresses nor tests the fault, 25 % less or more."""
    usual = before(every)
    monkeypatch.setattr(choices, "STRAY", stray)
    assert changed(usual, drills_of(shelves, every)) <= MOST
