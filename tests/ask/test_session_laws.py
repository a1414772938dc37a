"""Sessions on drawn libraries, and the choice of real ones against a constraint solver."""

from collections.abc import Sequence
from itertools import combinations

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from lawful import broken_rules
from ortools.sat.python import cp_model
from reading import World
from session_rules import broken_fault_sessions
from shipped import worlds
from strategies import questions
from worlds import shelf_of

from kb.ask.chain import NoChain
from kb.ask.choices import why_not
from kb.ask.matter import matter_of
from kb.ask.question import ChainQuestion
from kb.ask.session.course import Course
from kb.ask.session.fault_course import courses
from kb.ask.session.fitting import Offer, Option, Way, fit
from kb.ask.session.sessions import NoSession, fault_sessions
from kb.ask.session.sitting import kept_of, lay_out
from kb.ask.shelf import Shelf
from kb.make.library import Library
from kb.terms import FaultId, LiftId

pytestmark = pytest.mark.no_cover

Shelves = dict[LiftId, Shelf]


@settings(deadline=None, max_examples=60, suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow])
@given(questions(), st.integers(2, 40))
def test_sessions_of_drawn_libraries_are_right(asked: tuple[World, ChainQuestion], minutes: int) -> None:
    """Whatever the library: never over time, lawful also where something was dropped, nothing out of kit."""
    world, question = asked
    question = question._replace(seconds=None)
    try:
        found = fault_sessions(matter_of(shelf_of(world), question), minutes)
    except (NoChain, NoSession):
        assume(False)
        return
    assert broken_fault_sessions(world, question, found) == []


def best_by_solver(offer: Offer) -> int | None:
    """The most a choice can be worth, by a constraint solver that knows nothing of fronts; None if nothing fits."""
    model, seconds, worth = cp_model.CpModel(), [], []

    def pick(options: Sequence[Option], done: cp_model.IntVar) -> cp_model.LinearExpr:
        chosen = [model.new_bool_var("") for _ in options]
        model.add(sum(chosen) == done)
        seconds.extend(option.seconds * each for option, each in zip(options, chosen, strict=True))
        worth.extend(option.worth * each for option, each in zip(options, chosen, strict=True))
        return sum(option.seconds * each for option, each in zip(options, chosen, strict=True))

    def one_of(ways: Sequence[Way]) -> list[cp_model.IntVar]:
        taken = [model.new_bool_var("") for _ in ways]
        model.add(sum(taken) == 1)
        for way, each in zip(ways, taken, strict=True):
            worth.append(way.worth * each)
            for options in way.slots:
                pick(options, each)
        return taken

    if offer.raises:
        one_of(offer.raises)
    opened = [model.new_bool_var("") for _ in offer.openers]
    opening = [pick(opener.options, each) for opener, each in zip(offer.openers, opened, strict=True)]
    if opening:
        model.add(sum(opening) <= offer.opening_s)
    ways = one_of(offer.ways)
    one_of(offer.ends)
    for n, points in enumerate(offer.joints):
        by = [each for opener, each in zip(offer.openers, opened, strict=True) if opener.covers >> n & 1]
        by += [each for way, each in zip(offer.ways, ways, strict=True) if way.covers >> n & 1]
        if by:
            covered = model.new_bool_var("")
            model.add_max_equality(covered, by)
            worth.append(points * covered)
    model.add(sum(seconds) <= offer.seconds)
    model.maximize(sum(worth))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    if solver.solve(model) == cp_model.INFEASIBLE:
        return None
    return round(solver.objective_value)


@pytest.mark.oracle
@pytest.mark.parametrize("minutes", [4, 10, 20])
def test_real_choices_match_a_solver(shelves: Shelves, minutes: int) -> None:
    """Sessions of the shipped library, a share of the faults: no choice the solver finds is worth more."""
    faults = [(shelf, fault) for shelf in shelves.values() for fault in shelf.faults]
    for shelf, fault in faults[:: 2 * minutes + 5]:
        matter = matter_of(shelf, ChainQuestion(fault, shelf.kits["full"]))
        for course in courses(matter, 60 * minutes, teach=False):
            offer = lay_out(course, 0, 60 * minutes, frozenset(), weigh=lambda *_: None, teach=False).offer
            found = fit(offer)
            assert (None if found is None else found.worth) == best_by_solver(offer), fault
            break


def judged_alike(world: World, question: ChainQuestion, course: Course) -> int:
    """How many lists a course's own judge and the tests' reading both hold lawful; they must agree on each."""
    lawful, places = 0, range(len(course.entries))
    addressed = [bool(course.worked_cause and course.worked_cause.id in each.addresses) for each in course.entries]
    assert course.keeps is not None
    for size in places:
        for gone in combinations(places[:-1], size):
            kept = [at for at in places if at not in gone]
            chain = [(course.entries[at].drill.id, course.entries[at].load) for at in kept]
            # one drill for the cause stays even where strengthening afterwards would do
            idle = any(addressed) and not any(addressed[at] for at in kept)
            right = not idle and broken_rules(world, question, chain, limits=False) == []
            assert course.keeps(kept) == right, chain
            lawful += right
    return lawful


def test_what_may_be_dropped_is_what_is_lawful(library: Library, shelves: Shelves) -> None:
    """Every way to drop drills of shipped chains, every ninth: lawful by the program, lawful by the reading."""
    faults = [(shelf, fault) for shelf in shelves.values() for fault in shelf.faults.values()]
    ways = 0
    for n, (shelf, fault) in enumerate(faults[::9]):
        question = ChainQuestion(fault.id, shelf.kits["hall"], fault.causes[n % len(fault.causes)].id)
        matter = matter_of(shelf, question)
        if why_not(matter):  # a hall can't train everything
            continue
        course = next(courses(matter, 3600, teach=False))
        ways += judged_alike(worlds(library)[shelf.lift.id], question, course)
    assert ways > len(faults[::9]) + 5, "something can be dropped somewhere"


def test_only_what_may_go_goes(shelves: Shelves) -> None:
    """The lift, what it is built on, what tests the fault before it and the one drill for the cause always stay."""
    shelf = shelves[LiftId("clean")]
    matter = matter_of(shelf, ChainQuestion(FaultId("clean-bar-crashes"), shelf.kits["full"]))
    course = next(courses(matter, 1200, teach=False))
    names = [entry.drill.id for entry in course.entries]
    kept = kept_of(course, 0, frozenset())
    assert kept[0] == tuple(range(len(names)))
    for each in kept:
        left = [names[at] for at in each]
        assert left[-1] == "full-clean"
        assert "tall-clean" in left
    assert kept_of(course._replace(keeps=None), 0, frozenset()) == (kept[0],)
