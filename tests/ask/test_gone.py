"""What a drill shows besides its standard once a fault is gone: only where it would show the fault."""

import sqlite3

import pytest

from kb.ask import read
from kb.ask.chain import NoChain, chain
from kb.ask.matter import matter_of
from kb.ask.question import ChainQuestion
from kb.ask.session.sessions import fault_sessions
from kb.errors import NoAnswer
from kb.make.library import Library
from kb.terms import LiftId, Stage

pytestmark = pytest.mark.no_cover


def test_every_shipped_fault_and_cause_says_what_a_coach_goes_by(library: Library) -> None:
    """What is seen once it is gone, what to keep to for each cause, and what to look at first."""
    for fault in library.faults.values():
        assert fault.gone, fault.id
        assert fault.sections.get("Look first"), fault.id
        for cause in fault.causes:
            assert cause.throughout, (fault.id, cause.id)


@pytest.mark.parametrize("lift", ["snatch", "clean", "jerk", "clean-and-jerk"])
def test_the_fault_is_asked_of_every_drill_that_would_show_it(db: sqlite3.Connection, lift: str) -> None:
    """Of the fault asked about; before that, where an earlier one is worked on, of that. Never of preparation."""
    shelf = read.shelf(db, LiftId(lift))
    told = 0
    for fault in shelf.faults.values():
        for cause in fault.causes:
            try:
                found = chain(shelf, ChainQuestion(fault=fault.id, cause=cause.id, have=shelf.kits["hall"]))
            except NoChain:
                continue
            matter = found.matter
            for entry in found.routes[0].entries:
                shows = {matter.worked.gone: matter.tests_worked(entry.drill, entry.load), fault.gone: entry.tests}
                assert entry.gone == next((gone for gone, shown in reversed(shows.items()) if shown), "")
                assert not (entry.gone and entry.drill.stage is Stage.PREPARE)
                told += bool(entry.gone)
            assert found.routes[0].entries[-1].gone == fault.gone
    assert told > 100


def test_a_session_asks_what_its_chain_asks(db: sqlite3.Connection) -> None:
    """In its chain and its lift; a warm-up and what strengthens ask nothing of it."""
    shelf = read.shelf(db, LiftId("clean"))
    for fault in list(shelf.faults.values())[::5]:
        try:
            sessions = fault_sessions(matter_of(shelf, ChainQuestion(fault=fault.id, have=shelf.kits["hall"])), 40)
        except NoAnswer:
            continue
        for session in sessions:
            gone = {block.part: block.gone for block in session.blocks if block.part != "chain"}
            assert gone["lift"] == fault.gone
            assert not gone.get("warm-up")
            assert not gone.get("finish")
