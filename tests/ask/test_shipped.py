"""Every question that can be asked of the shipped library, judged by the independent reading of the rules."""

import oracle
import pytest
from lawful import broken_path_rules, broken_rules, broken_sittings, cost, path_cost
from shipped import questions, worlds

from kb.ask.chain import Chain, NoChain, chain
from kb.ask.matter import matter_of
from kb.ask.path import Order, path
from kb.ask.question import ChainQuestion
from kb.ask.rehearse import rehearse
from kb.ask.shelf import Shelf
from kb.errors import NoAnswer
from kb.make.library import Library
from kb.terms import LiftId

pytestmark = pytest.mark.no_cover

KITS = ("stick", "home", "hall", "full")
Shelves = dict[LiftId, Shelf]


def judged(library: Library, shelf: Shelf, question: ChainQuestion) -> Chain | None:
    """The answer, found lawful and as dear as it says; None when it has none."""
    try:
        answer = chain(shelf, question)
    except NoChain:
        return None
    world = worlds(library)[shelf.lift.id]
    for route in answer.routes:
        entries = [(entry.drill.id, entry.load) for entry in route.entries]
        one_sitting = len(route.sittings) == 1
        assert broken_rules(world, question, entries, limits=one_sitting) == []
        assert broken_sittings(world, question, entries, route.sittings) == []
        assert cost(world, question, entries) == route.cost
    return answer


def share(every: int) -> list[object]:
    """One question in so many; and all of them, where everything is run."""
    return [pytest.param(every, id="a share"), pytest.param(1, id="all", marks=pytest.mark.exhaustive)]


@pytest.mark.parametrize(
    ("kit", "every"),
    [
        *((kit, 3) for kit in ("stick", "hall")),
        *((kit, 7) for kit in ("home", "full")),
        *(pytest.param(kit, 1, marks=pytest.mark.exhaustive) for kit in KITS),
    ],
)
def test_every_chain_is_lawful(library: Library, shelves: Shelves, kit: str, every: int) -> None:
    """Each fault, cause and lift: a lawful chain, proved best, or the reason and what can be rehearsed."""
    answered = 0
    for n, (shelf, question) in enumerate(questions(shelves, (kit,))):
        if n % every:
            continue
        answer = judged(library, shelf, question)
        if answer is None:
            assert rehearse(matter_of(shelf, question)).drills or question.fault == "jerk-lost-after-clean"
        else:
            answered += 1
            assert answer.routes[0].optimal
    assert answered > 150 / every


@pytest.mark.parametrize("every", share(23))
@pytest.mark.parametrize(("minutes", "some"), [(4, 0), (9, 60), (14, 3)])
def test_every_sitting_is_lawful(library: Library, shelves: Shelves, minutes: int, some: int, every: int) -> None:
    """The same within so many minutes, in the hall: one sitting, several, or refused with the least time."""
    several = 0
    for n, (shelf, question) in enumerate(questions(shelves, ("hall",), seconds=60 * minutes)):
        if n % every == 0:
            answer = judged(library, shelf, question)
            several += answer is not None and len(answer.routes[0].sittings) > 1
    assert several >= some // every


@pytest.mark.parametrize("every", share(71))
def test_further_routes_are_lawful_and_other(library: Library, shelves: Shelves, every: int) -> None:
    """Of a further route's drills, the lift and preparation aside, at most half are in an earlier one."""
    more = 0
    for n, (shelf, question) in enumerate(questions(shelves, ("hall",), routes=3)):
        answer = judged(library, shelf, question) if n % every == 0 else None
        if answer is None:
            continue
        own = [
            {
                e.drill.id
                for e in route.entries
                if (e.drill.id != shelf.lift.drill and e.step is not None) or e.dials.stage
            }
            - {shelf.lift.drill}
            for route in answer.routes
        ]
        for k, drills in enumerate(own[1:], 1):
            more += 1
            assert not answer.routes[k].optimal
            for earlier in own[:k]:
                assert 2 * len(drills & earlier) <= len(drills)
    assert more > 180 / every * (1 if every == 1 else 0.5)  # a share holds more or fewer by luck


@pytest.mark.parametrize(
    ("kit", "order"),
    [
        *(("hall", order) for order in ("up", "down", "either")),
        *((kit, "either") for kit in KITS if kit != "hall"),
        *(
            pytest.param(kit, order, marks=pytest.mark.exhaustive)
            for kit in KITS
            if kit != "hall"
            for order in ("up", "down")
        ),
    ],
)
def test_every_path_is_lawful(library: Library, shelves: Shelves, kit: str, order: Order) -> None:
    """From nothing to each lift: every prerequisite earlier, the gap no more than a tenth where it isn't proved."""
    for shelf in shelves.values():
        have = shelf.kits[kit]
        world = worlds(library)[shelf.lift.id]
        try:
            found = path(shelf, have=have, order=order)
        except NoAnswer:
            pytest.fail(f"no path to the {shelf.lift.id} with {kit}, {order}")
        entries = [(entry.drill.id, entry.load) for entry in found.entries]
        assert broken_path_rules(world, frozenset(), have, entries, order) == []
        assert path_cost(world, have, entries) == found.cost
        assert found.gap <= 0.15


@pytest.mark.exhaustive
@pytest.mark.parametrize("kit", ["stick", "hall"])
def test_every_chain_is_as_cheap_as_can_be(library: Library, shelves: Shelves, kit: str) -> None:
    """None cheaper for the constraint solver, on every shipped fault, cause and lift; none at all where we have none.

    That ours is lawful, and costs what it says, is asked of every question above.
    """
    for shelf, question in questions(shelves, (kit,)):
        try:
            ours = chain(shelf, question).routes[0]
            below = ours.cost if len(ours.sittings) == 1 else None
        except NoChain:
            below = None
        world = worlds(library)[shelf.lift.id]
        assert oracle.best(world, question, time_limit=600, below=below) is None, (question.fault, question.cause)


def test_one_of_each_fault_is_as_cheap_as_can_be(library: Library, shelves: Shelves) -> None:
    """A quick share of the exhaustive run: the commonest cause of every fifth fault of the clean, with a stick."""
    shelf = shelves[LiftId("clean")]
    for fault in list(shelf.faults.values())[::5]:
        question = ChainQuestion(fault=fault.id, have=shelf.kits["stick"])
        try:
            ours = chain(shelf, question).routes[0]
            below = ours.cost if len(ours.sittings) == 1 else None
        except NoChain:
            below = None
        assert oracle.best(worlds(library)[shelf.lift.id], question, below=below) is None
