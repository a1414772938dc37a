"""What a library covers, counted: drills by stretch of the lift and stage, causes by kind, answers by kit."""

from collections import Counter
from collections.abc import Iterable, Sequence
from typing import NamedTuple

from kb.check.asked import Told
from kb.dials import reach_on, serves
from kb.evidence import addresses
from kb.make.library import Library
from kb.make.order import groups_of, must_pass, thin
from kb.terms import CAUSE_KINDS, Drill, DrillId, Fault, FaultId, Lift, LiftId, Stage

__all__ = ["Answered", "Coverage", "Thin", "Unanswered", "answered", "coverages"]

Counts = tuple[int, ...]
"""Drills at each stage, in the order of the scale."""


class Thin(NamedTuple):
    """A cause that one drill addresses, or none."""

    fault: FaultId
    cause: str
    drills: tuple[DrillId, ...]


class Coverage(NamedTuple):
    """One lift: drills by point and by stretch of its timeline and by stage; faults, causes, gateways, thin places.

    A drill counts at each point of its reach that it doesn't leave out; preparation and strengthening have no
    reach and count in `stages` alone.
    """

    lift: LiftId
    stages: Counts
    points: tuple[tuple[str, Counts], ...]
    stretches: tuple[tuple[str, str, Counts], ...]
    kinds: tuple[tuple[str, int], ...]
    faults: int
    gateways: tuple[DrillId, ...]
    thin: tuple[Thin, ...]


class Unanswered(NamedTuple):
    """A fault and cause without a chain for a lift with a kit, and why."""

    lift: LiftId
    fault: FaultId
    cause: str
    why: str


class Answered(NamedTuple):
    """One kit: questions asked and answered, faults with a chain for a cause at least, and those with none at all."""

    kit: str
    asked: int
    answered: int
    faults: int
    of_faults: int
    without: tuple[FaultId, ...]
    unanswered: tuple[Unanswered, ...]


def coverages(library: Library) -> tuple[Coverage, ...]:
    """Every lift's, in id order."""
    passed = must_pass(groups_of(library.drills), [lift.drill for lift in library.lifts.values()])
    return tuple(_coverage(library, lift, passed[lift.drill]) for lift in library.lifts.values())


def _coverage(library: Library, lift: Lift, gateways: Iterable[str]) -> Coverage:
    drills = [drill for drill in library.drills.values() if serves(drill, lift)]
    at_point: dict[str, Counter[Stage]] = {point: Counter() for point in lift.points}
    over: dict[tuple[int, int], Counter[Stage]] = {}
    for drill in drills:
        reach = reach_on(drill, lift)
        if reach is None or drill.stage in (Stage.PREPARE, Stage.FINISH):
            continue
        first, last = lift.points.index(reach[0]), lift.points.index(reach[1])
        over.setdefault((first, last), Counter())[drill.stage] += 1
        for point in lift.points[first : last + 1]:
            at_point[point][drill.stage] += point not in drill.leaves_out
    faults = [fault for fault in library.faults.values() if lift.id in fault.lifts]
    kinds = Counter(cause.kind for fault in faults for cause in fault.causes)
    return Coverage(
        lift=lift.id,
        stages=_counts(Counter(drill.stage for drill in drills)),
        points=tuple((point, _counts(counted)) for point, counted in at_point.items()),
        stretches=tuple(
            (lift.points[first], lift.points[last], _counts(over[first, last])) for first, last in sorted(over)
        ),
        kinds=tuple((kind, kinds[kind]) for kind in CAUSE_KINDS),
        faults=len(faults),
        gateways=tuple(DrillId(drill) for drill in sorted(gateways)),
        thin=tuple(
            Thin(fault, cause, _acting(drills, library.faults[fault], cause)) for fault, cause, _ in thin(library, lift)
        ),
    )


def _acting(drills: Iterable[Drill], fault: Fault, cause: str) -> tuple[DrillId, ...]:
    return tuple(drill.id for drill in drills if addresses(drill, fault, fault.cause(cause), drill.load[1]))


def _counts(counted: Counter[Stage]) -> Counts:
    return tuple(counted[stage] for stage in Stage)


def answered(library: Library, answers: Iterable[Told], kits: Sequence[str]) -> tuple[Answered, ...]:
    """What each kit can answer, in the order of `kits`."""
    by_kit: dict[str, list[Told]] = {kit: [] for kit in kits}
    for answer in answers:
        by_kit[answer.question.kit].append(answer)
    return tuple(_answered(library, kit, by_kit[kit]) for kit in kits)


def _answered(library: Library, kit: str, answers: Sequence[Told]) -> Answered:
    with_chain = {answer.question.fault for answer in answers if answer.drills}
    return Answered(
        kit=kit,
        asked=len(answers),
        answered=sum(bool(answer.drills) for answer in answers),
        faults=len(with_chain),
        of_faults=len(library.faults),
        without=tuple(fault for fault in library.faults if fault not in with_chain),
        unanswered=tuple(
            Unanswered(answer.question.lift, answer.question.fault, answer.question.cause, answer.why)
            for answer in answers
            if not answer.drills
        ),
    )
