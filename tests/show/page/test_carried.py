"""Answers that went from one process to another are those that were sent, and share what is there."""

import sqlite3

import pytest

from kb.ask import read
from kb.show.page.carried import packed, unpacked
from kb.show.page.prepared import prepare
from kb.show.page.stock import Stock, stock_of
from kb.terms import FaultId


@pytest.fixture(scope="module")
def stock(db: sqlite3.Connection) -> Stock:
    """The shipped library as pages see it."""
    return stock_of(db)


def test_answers_come_back_as_they_were_and_much_smaller(stock: Stock) -> None:
    """Also in a process that read the catalogue for itself."""
    sent = prepare(stock, FaultId("bar-loops-out"))
    carried = packed(sent, stock)
    there = unpacked(carried, stock)
    assert there == sent
    assert all(a.found is None or a.found.matter.shelf is stock.shelves[a.lift.id] for a in there.answers.values())
    texts = sum(len(text) for drill in stock.drills.values() for text in drill.sections.values())
    assert len(carried) < texts


def test_drills_and_shelves_are_the_readers_own(stock: Stock, db: sqlite3.Connection) -> None:
    """Nothing is kept twice."""
    other = stock_of(read.open_catalogue(db.execute("pragma database_list").fetchone()[2]))
    there = unpacked(packed(prepare(stock, FaultId("early-arm-bend")), stock), other)
    chains = [asked.found for asked in there.answers.values() if asked.found is not None]
    assert chains
    assert all(entry.drill is other.drills[entry.drill.id] for chain in chains for entry in chain.routes[0].entries)
    assert all(chain.matter.shelf is other.shelves[chain.matter.shelf.lift.id] for chain in chains)
