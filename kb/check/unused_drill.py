"""A drill is never given: it is in no chain, on no path, and neither a first swap nor an easier version of another.

All chains are asked (every fault, cause, lift and kit), with the tells that come before them and what is
offered to strengthen afterwards; the paths to each lift without parts, with each kit; and the first three swaps and
the easier versions of every drill with each kit.

Why it matters: it was written, and nobody will be sent to it. Most often it names no fault, or another drill
is always nearer and cheaper.

Wrong:

    faults: []
    prerequisites: [overhead-squat, snatch-balance, hang-snatch]

Right:

    faults: [{fault: catches-high, cause: scared-to-go-under}]
    prerequisites: [overhead-squat]
"""

from collections.abc import Iterator, Mapping

from kb.ask.path import path
from kb.ask.shelf import Shelf
from kb.ask.swap import swap
from kb.check.answers import Answers
from kb.errors import NoAnswer, Problem
from kb.kit import fit
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import DrillId, LiftId

__all__ = ["CODE", "FIRST_SWAPS", "rule"]

CODE = "unused-drill"

FIRST_SWAPS = 3
"""Swaps that are looked at: who asks for one seldom reads on."""


def rule(library: Library, asked: Answers) -> Iterator[Problem]:
    """Every drill that no answer names."""
    # every path to a lift ends in its own drill
    left = set(library.drills) - set(_in_chains(library, asked)) - {lift.drill for lift in library.lifts.values()}
    _take_away_swaps(library, left)
    _take_away_paths(library, asked.shelves, left)
    for drill_id in sorted(left):
        message = "This drill is in no chain, on no path and among the first three swaps of no other."
        help_ = "Name the faults it is a remedy for, ease its prerequisites, or take it away."
        yield at(library, drill_id, "", CODE, message, help_)


def _in_chains(library: Library, asked: Answers) -> Iterator[DrillId]:
    for answer in asked.chains:
        tells = library.faults[answer.question.fault].tells
        yield from (tell.drill for tell in tells if tell.drill is not None)
        yield from (*answer.ids, *answer.finish)


def _take_away_swaps(library: Library, left: set[DrillId]) -> None:
    """Take from `left` what is a first swap of another drill, which shares a lift with it, or an easier version."""
    for have in library.kits.values():
        for drill in library.drills.values():
            wanted = any(set(drill.lifts) & set(library.drills[drill_id].lifts) for drill_id in left)
            if wanted:
                found = swap(drill, have, drills=library.drills, items=library.items, lifts=library.lifts)
                left.difference_update(near.drill.id for near in found.swaps[:FIRST_SWAPS])
                left.difference_update(each.drill.id for each in found.easier)


def _take_away_paths(library: Library, shelves: Mapping[LiftId, Shelf], left: set[DrillId]) -> None:
    """Take from `left` what is on a path. A lift of parts is left out: to it lead the paths to its parts, at length."""
    for lift_id, shelf in shelves.items():
        for have in shelf.kits.values():
            there = [library.drills[drill_id] for drill_id in left if lift_id in library.drills[drill_id].lifts]
            # a path takes a second or two, so none is looked for that can't have what is left on it
            if shelf.lift.parts or not any(fit(drill, have, library.items) for drill in there):
                continue
            try:
                found = path(shelf, have=have)
            except NoAnswer:
                continue
            left.difference_update(entry.drill.id for entry in found.entries)
