"""Every question for a chain that a library can be asked, asked once: what the graph rules judge."""

from collections.abc import Mapping
from typing import NamedTuple

from kb.ask.shelf import Shelf
from kb.check.asked import Told, matters, told
from kb.check.beside import Shelves, each, opened
from kb.make.library import Library
from kb.terms import FaultId, LiftId

__all__ = ["Answer", "Answers", "answers"]


class Answer(NamedTuple):
    """The answer to one question; where there is no chain, whether anything can be rehearsed."""

    told: Told
    rehearsed: bool = False


class Answers(NamedTuple):
    """What each lift is answered from, and the answer for every fault, cause, lift that it names, and kit."""

    shelves: Mapping[LiftId, Shelf]
    chains: tuple[Answer, ...]


def answers(library: Library) -> Answers:
    """Ask a library without structural problems all it can be asked, as a catalogue of it would answer."""
    kits = tuple(library.kits)
    with opened(library) as catalogue:
        found = each(catalogue, _of_fault, [(fault, kits) for fault in library.faults])
    return Answers(catalogue.shelves, tuple(answer for some in found for answer in some))


def _of_fault(shelves: Shelves, item: tuple[FaultId, tuple[str, ...]]) -> list[Answer]:
    found = []
    for question, matter in matters(shelves, *item):
        answer = told(question, matter)
        found.append(Answer(answer, rehearsed=bool(answer.rehearsed)))
    return found
