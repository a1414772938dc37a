"""Every default question, and its answer in a few plain values: for reports that compare answers by the thousand.

A default question names a fault, one of its causes, a lift and a kit, and nothing else; or, for a path, a lift
and a kit.
"""

from collections.abc import Iterator
from typing import NamedTuple

from kb.ask.chain import NoChain, solve
from kb.ask.choices import finish_of
from kb.ask.matter import Matter, matter_of
from kb.ask.path import PATH_BUDGET, Path, path
from kb.ask.question import ChainQuestion
from kb.ask.rehearse import rehearsable
from kb.ask.shelf import Shelf
from kb.check.beside import Shelves
from kb.errors import NoAnswer
from kb.terms import DrillId, FaultId, LiftId, Load

__all__ = ["PathTold", "Question", "Told", "matters", "path_told", "told", "told_all"]


class Question(NamedTuple):
    """What is asked."""

    lift: LiftId
    fault: FaultId
    cause: str
    kit: str


class Told(NamedTuple):
    """The first route: its drills at their loads, what it costs and takes (s), in how many sittings; `why` if none.

    `steps` has one size for each drill but the first; `tested` says whether what comes before the lift shows the fault
    if it is still there; `finish` is what to strengthen afterwards; `rehearsed` what can be done where there is none.
    """

    question: Question
    drills: tuple[tuple[DrillId, Load], ...] = ()
    steps: tuple[int, ...] = ()
    cost: int = 0
    seconds: int = 0
    sittings: int = 0
    tested: bool = False
    proved: bool = True
    finish: tuple[DrillId, ...] = ()
    why: str = ""
    rehearsed: tuple[DrillId, ...] = ()

    @property
    def ids(self) -> tuple[DrillId, ...]:
        """Its drills, in order."""
        return tuple(drill for drill, _ in self.drills)

    @property
    def weight(self) -> tuple[bool, bool, int]:
        """What of two answers makes one the worse: no test before the lift, more than one sitting, then its cost."""
        return not self.tested, self.sittings > 1, self.cost


class PathTold(NamedTuple):
    """A path for a lift and a kit in the same few values; `why` if there is none."""

    lift: LiftId
    kit: str
    drills: tuple[tuple[DrillId, Load], ...] = ()
    cost: int = 0
    seconds: int = 0
    proved: bool = True
    why: str = ""

    @property
    def ids(self) -> tuple[DrillId, ...]:
        """Its drills, in order."""
        return tuple(drill for drill, _ in self.drills)


def matters(shelves: Shelves, fault: FaultId, kits: tuple[str, ...]) -> Iterator[tuple[Question, Matter]]:
    """Each default question about a fault with some of `shelves`, understood, in order of lift, cause and kit."""
    for lift, shelf in shelves.items():
        asked = shelf.faults.get(fault)
        if asked is None or lift not in asked.lifts:
            continue
        for cause in asked.causes:
            # an earlier fault of another lift: told by a rule of its own, and nothing to ask here
            if cause.earlier is not None and cause.earlier not in shelf.faults:
                continue
            for kit in kits:
                question = ChainQuestion(fault=fault, cause=cause.id, have=shelf.kits.get(kit, frozenset()))
                yield Question(lift, fault, cause.id, kit), matter_of(shelf, question)


def told(question: Question, matter: Matter) -> Told:
    """A question's answer."""
    try:
        route, _ = solve(matter)
    except NoChain as none:
        return Told(question, why=str(none), rehearsed=tuple(drill.id for drill in rehearsable(matter)))
    return Told(
        question=question,
        drills=tuple((entry.drill.id, entry.load) for entry in route.entries),
        steps=tuple(entry.step or 0 for entry in route.entries[1:]),
        cost=route.cost,
        seconds=route.seconds,
        sittings=len(route.sittings),
        tested=len(route.entries) > 1 and route.entries[-2].tests,
        proved=route.optimal,
        finish=tuple(drill.id for drill in finish_of(matter)),
    )


def told_all(shelves: Shelves, item: tuple[FaultId, tuple[str, ...]]) -> list[Told]:
    """The answers to every default question about a fault with some kits."""
    return [told(question, matter) for question, matter in matters(shelves, *item)]


def path_told(shelf: Shelf, kit: str, *, budget: int = PATH_BUDGET) -> PathTold:
    """The path from nothing to a lift with a kit."""
    try:
        found: Path = path(shelf, have=shelf.kits.get(kit, frozenset()), budget=budget)
    except NoAnswer as none:
        return PathTold(shelf.lift.id, kit, why=str(none))
    return PathTold(
        lift=shelf.lift.id,
        kit=kit,
        drills=tuple((entry.drill.id, entry.load) for entry in found.entries),
        cost=found.cost,
        seconds=sum(entry.seconds for entry in found.entries),
        proved=found.optimal,
    )
