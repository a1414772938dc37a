"""Every question for a chain that a library can be asked, asked once: what the graph rules judge.

A temporary catalogue is built and asked as any question is, so that what is checked is what is answered.
"""

from collections.abc import Iterator, Mapping
from contextlib import closing
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import NamedTuple

from kb.ask import read
from kb.ask.chain import Chain, NoChain, chain
from kb.ask.matter import matter_of
from kb.ask.question import ChainQuestion
from kb.ask.rehearse import rehearsable
from kb.ask.shelf import Shelf
from kb.make.catalogue import write
from kb.make.library import Library
from kb.terms import Cause, Fault, LiftId

__all__ = ["Answer", "Answers", "answers"]


class Answer(NamedTuple):
    """The answer to one question: a chain, or why there is none and whether anything can be rehearsed."""

    lift: LiftId
    fault: Fault
    cause: Cause
    kit: str
    chain: Chain | None
    why: str = ""
    rehearsed: bool = False


class Answers(NamedTuple):
    """What each lift is answered from, and the answer for every fault, cause, lift that it names, and kit."""

    shelves: Mapping[LiftId, Shelf]
    chains: tuple[Answer, ...]


def answers(library: Library) -> Answers:
    """Ask a library without structural problems all it can be asked, as a catalogue of it would answer."""
    with TemporaryDirectory(prefix="drillpath-check-") as folder:
        path = Path(folder) / "catalogue.db"
        write(library, path)
        with closing(read.open_catalogue(path)) as db:
            shelves = {lift: read.shelf(db, lift) for lift in library.lifts}
    return Answers(shelves, tuple(each for shelf in shelves.values() for each in _asked(shelf)))


def _asked(shelf: Shelf) -> Iterator[Answer]:
    for fault in shelf.faults.values():
        if shelf.lift.id not in fault.lifts:
            continue
        for cause in fault.causes:
            # told by the rule earlier-elsewhere; there is no question to ask
            if cause.earlier is not None and cause.earlier not in shelf.faults:
                continue
            for kit in shelf.kits:
                yield _answer(shelf, fault, cause, kit)


def _answer(shelf: Shelf, fault: Fault, cause: Cause, kit: str) -> Answer:
    question = ChainQuestion(fault=fault.id, cause=cause.id, have=shelf.kits[kit])
    try:
        return Answer(shelf.lift.id, fault, cause, kit, chain(shelf, question))
    except NoChain as none:
        rehearsed = bool(rehearsable(matter_of(shelf, question)))
        return Answer(shelf.lift.id, fault, cause, kit, None, str(none), rehearsed)
