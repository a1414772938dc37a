"""Placing lifters by the shipped checkpoints: every way it can go, what it comes to, and that none is unsafe."""

from collections.abc import Iterator
from functools import cache
from math import log2, sqrt
from pathlib import Path

import pytest
from placing import Tree, exactly, grown, simulated

from kb.ask.ability.blim import CARELESS
from kb.ask.ability.placement import Answer, Check, budget_for, checks_of, place
from kb.ask.ability.structure import Structure, structure
from kb.ask.shelf import Shelf
from kb.check.uncountable_standard import JUDGEMENT
from kb.dose import check_seconds
from kb.terms import Catch, DrillId, LiftId, Load

DOCS = Path(__file__).resolve().parents[3] / "kb" / "docs" / "placement.md"
THREE = ("clean", "jerk", "snatch")
BOTH = pytest.param("clean-and-jerk", marks=pytest.mark.exhaustive)
ERRORS = (0.0, 0.05, 0.1)

_GROWN: dict[tuple[str, str], Tree] = {}


@pytest.fixture
def shelf(lift: str, shelves: dict[LiftId, Shelf]) -> Shelf:
    """The shelf of the lift that a test is about."""
    return shelves[LiftId(lift)]


def asking(shelf: Shelf, kit: str) -> tuple[Structure, dict[DrillId, Check]]:
    """The states and the checks in a kit."""
    checks = checks_of(shelf.lift, shelf.drills, shelf.kits[kit], shelf.items)
    return structure({drill.id: drill.groups for drill in shelf.drills.values()}, tuple(checks)), checks


def tree(shelf: Shelf, kit: str = "full") -> Tree:
    """Every way a placement in a kit can go, grown once."""
    key = (shelf.lift.id, kit)
    if key not in _GROWN:
        _GROWN[key] = grown(shelf.lift, *asking(shelf, kit))
    return _GROWN[key]


def nodes(
    here: Tree, answers: tuple[tuple[int, bool], ...] = ()
) -> Iterator[tuple[Tree, tuple[tuple[int, bool], ...]]]:
    """Every point of a tree, with the answers that led there."""
    yield here, answers
    if here.item is not None and here.yes is not None and here.no is not None:
        yield from nodes(here.yes, (*answers, (here.item, True)))
        yield from nodes(here.no, (*answers, (here.item, False)))


# --- the checkpoints ---


@pytest.mark.parametrize("lift", [*THREE, "clean-and-jerk"])
def test_checkpoints_are_fit(shelf: Shelf) -> None:
    """Eight to fourteen, the last the lift itself, each after what it needs, of at least three stages, soon done.

    Each begins at a stick or nothing, can be done with the kit `stick`, and is counted: 2 or more, none judged.
    """
    lift, drills = shelf.lift, shelf.drills
    assert 8 <= len(lift.checkpoints) <= 14
    assert lift.checkpoints[-1] == lift.drill
    assert len({drills[each].stage for each in lift.checkpoints}) >= 3
    found, checks = asking(shelf, "stick")
    assert set(checks) == set(lift.checkpoints)
    for n, (drill_id, check) in enumerate(checks.items()):
        assert check.load <= Load.STICK
        assert all(mask < 1 << n for mask in found.clauses[n]), drill_id
        assert check.drill.standard.of >= 2
        assert not set(check.drill.standard.seen.split()) & JUDGEMENT
        assert check_seconds(check.drill) <= 240


@pytest.mark.parametrize(("lift", "states", "budget"), [
    ("clean", 57, 9), ("snatch", 57, 9), ("jerk", 63, 9), ("clean-and-jerk", 381, 13),
])  # fmt: skip
def test_how_many_states(shelf: Shelf, states: int, budget: int) -> None:
    """As many states as placement.md says, and so many checks at most."""
    found, _ = asking(shelf, "full")
    assert (len(found.states), budget_for(len(found.states))) == (states, budget)


# --- what comes of it ---

FIGURES = {
    # lift: right and at most one drill off, of 100, where no check errs, 5 % do, and 10 % do; mean number of checks
    "clean": ((100, 100, 8.75), (83.5, 97.6, 8.83), (65.8, 91.0, 8.88)),
    "snatch": ((100, 100, 8.82), (82.3, 97.5, 8.87), (64.4, 90.6, 8.90)),
    "jerk": ((100, 100, 8.65), (80.7, 96.4, 8.74), (62.1, 88.1, 8.81)),
    "clean-and-jerk": ((100, 100, 12.91), (77.5, 96.6, 12.94), (54.5, 86.1, 12.97)),
}
"""As kb/docs/placement.md has them."""


@pytest.mark.parametrize("lift", [*THREE, BOTH])
def test_figures(lift: str, shelf: Shelf) -> None:
    """Over every state and every way the answers can go, exactly: the published figures, and the two laws.

    The median number of checks is at most 1.5 log2(states) + 1 at 0, 5 and 10 % of errors; at 5 % nine of ten lifters
    and more are placed right or one drill off.
    """
    grown_ = tree(shelf)
    for error, (right, adjacent, mean) in zip(ERRORS, FIGURES[lift], strict=True):
        found = exactly(grown_, error)
        assert found.median <= 1.5 * log2(len(grown_.states)) + 1
        assert 100 * found.right == pytest.approx(right, abs=0.06)
        assert 100 * found.adjacent == pytest.approx(adjacent, abs=0.06)
        assert found.mean == pytest.approx(mean, abs=0.006)
    assert exactly(grown_, 0.05).adjacent >= 0.9
    assert exactly(grown_, 0).right == pytest.approx(1)


@pytest.mark.parametrize("lift", [*THREE, "clean-and-jerk"])
def test_the_docs_say_so(lift: str, shelf: Shelf) -> None:
    """The table of placement.md has these figures."""
    found, _ = asking(shelf, "full")
    states = len(found.states)
    (right, _, _), five, ten = FIGURES[lift]
    row = f"| {shelf.lift.name.lower()} | {len(found.items)} | {states} | {budget_for(states)} | {right} % |"
    row += "".join(f" {share} %, {near} % |" for share, near, _ in (five, ten))
    assert row in DOCS.read_text(encoding="utf-8").splitlines()


@pytest.mark.parametrize("lift", THREE)
@pytest.mark.parametrize("error", ERRORS)
def test_lifters_at_random(shelf: Shelf, error: float) -> None:
    """A thousand lifters drawn with a fixed seed come out as worked out, within four standard errors."""
    drawn, worked_out = simulated(tree(shelf), error, 1000, seed=8), exactly(tree(shelf), error)
    assert drawn.median == worked_out.median
    for ours, theirs in ((drawn.right, worked_out.right), (drawn.adjacent, worked_out.adjacent)):
        assert abs(ours - theirs) <= 4 * sqrt(theirs * max(1 - theirs, 0) / 1000) + 1e-9


@pytest.mark.parametrize("lift", [*THREE, BOTH])
@pytest.mark.parametrize("kit", ["home", "hall"])
def test_other_kits(shelf: Shelf, kit: str) -> None:
    """With less gear the laws hold as well."""
    assert exactly(tree(shelf, kit), 0.05).adjacent >= 0.9
    assert exactly(tree(shelf, kit), 0).right == pytest.approx(1)


@pytest.mark.parametrize("lift", THREE)
def test_how_sure_it_is_said_to_be(shelf: Shelf) -> None:
    """Where checks err as often as is reckoned with, `sure` is on average the share that is placed right."""
    found, checks = asking(shelf, "full")
    said = 0.0
    for here, answers in nodes(tree(shelf)):
        if here.item is None:
            given = [Answer(found.items[item], "yes" if passes else "no") for item, passes in answers]
            share = 0.0
            for state in found.states:
                likely = 1 / len(found.states)
                for item, passes in answers:
                    likely *= 1 - CARELESS if bool(state >> item & 1) == passes else CARELESS
                share += likely
            said += share * place(shelf.lift, found, checks, given).sure
    assert said == pytest.approx(exactly(tree(shelf), CARELESS).right)


# --- what is never asked ---


@pytest.mark.parametrize("lift", [*THREE, BOTH])
@pytest.mark.parametrize("kit", ["stick", "full"])
def test_nothing_deep_overhead_before_what_it_is_built_on(shelf: Shelf, kit: str) -> None:
    """Whatever is answered: before a full-depth catch with something overhead, all that it is built on was shown.

    Read from the drills themselves: of the other checks only those passed last time, and those that no way to what was
    passed can do without, may be used to come to it. None of those failed last time.
    """
    found, checks = asking(shelf, kit)
    drills, reach = shelf.drills, cache(lambda without: _learnt(shelf, without))
    below = {
        item: frozenset(each for each in found.items if item not in reach(frozenset([each]))) for item in found.items
    }
    met = 0
    for here, answers in nodes(tree(shelf, kit)):
        if here.item is None:
            continue
        asked = found.items[here.item]
        last = {found.items[item]: passes for item, passes in answers}
        passed = {item for item, passes in last.items() if passes}
        shown = passed.union(*(below[item] for item in passed)) - {item for item, passes in last.items() if not passes}
        drill = drills[asked]
        if drill.catch is Catch.FULL and "headroom" in drill.equipment:
            met += 1
            assert asked in reach(frozenset(found.items) - shown - {asked}), (asked, answers)
    assert met or shelf.lift.id == "clean"
    assert not any(check.guarded for check in checks.values()) or shelf.lift.id != "clean"


def _learnt(shelf: Shelf, without: frozenset[DrillId]) -> set[DrillId]:
    """The drills that can be learnt from nothing without some."""
    held: set[DrillId] = set()
    while True:
        more = {
            drill.id
            for drill in shelf.drills.values()
            if drill.id not in held | without and all(any(each in held for each in group) for group in drill.groups)
        }
        if not more:
            return held
        held |= more


def test_an_outcome_is_what_it_says() -> None:
    """The reckoning itself, by hand: one item, one check, an error in ten."""
    leaf = Tree(None, 0, None, None, (0, 1))
    one = Tree(0, 0, leaf._replace(state=1), leaf, (0, 1))
    assert tuple(exactly(one, 0.1)) == pytest.approx((1, 1, 0.9, 1))
    assert tuple(exactly(leaf, 0.1)) == pytest.approx((0, 0, 0.5, 1))
