"""Every question for a chain that a library can be asked, asked once: what the graph rules judge."""

from collections.abc import Mapping
from typing import NamedTuple

from kb.ask.shelf import Shelf
from kb.check.asked import Told, told_all
from kb.check.beside import each, opened
from kb.make.library import Library
from kb.terms import LiftId

__all__ = ["Answers", "answers"]


class Answers(NamedTuple):
    """What each lift is answered from, and the answer for every fault, cause, lift that it names, and kit."""

    shelves: Mapping[LiftId, Shelf]
    chains: tuple[Told, ...]


def answers(library: Library) -> Answers:
    """Ask a library without structural problems all it can be asked, as a catalogue of it would answer."""
    kits = tuple(library.kits)
    with opened(library) as catalogue:
        found = each(catalogue, told_all, [(fault, kits) for fault in library.faults])
    return Answers(catalogue.shelves, tuple(answer for some in found for answer in some))
