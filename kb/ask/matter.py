"""What a question for a chain comes down to: the fault worked on, the load, what is in doubt and doable.

See DESIGN "In doubt" and "Chain" in kb/docs/arithmetic.md. Everything here is fixed once per question.
"""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from kb import evidence, kit
from kb.ask.question import ChainQuestion
from kb.ask.shelf import Shelf
from kb.dials import Dials, at_load
from kb.errors import BadInput
from kb.terms import Cause, Drill, DrillId, Fault, FaultId, Load, Stage

__all__ = ["Matter", "known_fault", "lift_load", "matter_of"]


class Matter(NamedTuple):
    """A question understood.

    `fault` and `cause` are what was asked; `worked` and `worked_cause` what the chain works on, which
    differ when the cause is an earlier fault. `load` is the lift's at the end. `doubt` holds drills the
    lifter is not taken to hold; `doable` those of the lift's drills that the kit and the doubts allow.
    `where` tells where the fault asked about shows, `where_worked` the fault worked on; `addressing` are the drills
    that act on the cause at the most load they make sense at.
    """

    question: ChainQuestion
    shelf: Shelf
    fault: Fault
    cause: Cause
    worked: Fault
    worked_cause: Cause
    load: Load
    fits: Mapping[DrillId, kit.Fit]
    doubt: frozenset[DrillId]
    doable: frozenset[DrillId]
    where: evidence.Shown
    where_worked: evidence.Shown
    addressing: frozenset[DrillId]

    @property
    def limit(self) -> Load:
        """The highest load of any drill but the lift's own."""
        return min(self.load, Load.LIGHT)

    def tests(self, drill: Drill, load: Load) -> bool:
        """Whether a drill at a load shows the fault asked about: what the entry before the lift must do."""
        return _shows(self.shelf, self.fits[drill.id], drill, load, self.where)

    def tests_worked(self, drill: Drill, load: Load) -> bool:
        """Whether a drill at a load shows the fault worked on."""
        return _shows(self.shelf, self.fits[drill.id], drill, load, self.where_worked)

    def gone(self, drill: Drill, load: Load) -> str:
        """What a drill at a load shows once the fault is gone: the fault asked about, or else the one worked on."""
        if self.tests(drill, load):
            return self.fault.gone
        return self.worked.gone if self.tests_worked(drill, load) else ""

    def dials(self, drill: Drill, load: Load) -> Dials:
        """A drill's dials at a load, as the gear caps them."""
        fitted = self.fits[drill.id]
        return at_load(self.shelf.dials[drill.id], load, fitted.speed, fitted.catch)

    def addresses(self, drill: Drill, load: Load) -> bool:
        """Whether a drill at a load works on the cause."""
        return drill.id in self.addressing and evidence.enough(self.worked_cause, load)

    def groups_in_doubt(self, drill: Drill) -> tuple[tuple[DrillId, ...], ...]:
        """The prerequisite groups of a drill of which every member is in doubt."""
        return tuple(group for group in drill.groups if all(member in self.doubt for member in group))


def _shows(shelf: Shelf, fitted: kit.Fit, drill: Drill, load: Load, where: evidence.Shown) -> bool:
    return evidence.tests(drill, load, where, shelf.drills, shelf.dials, speed=fitted.speed, catch=fitted.catch)


def _worked(shelf: Shelf, fault: Fault, cause: Cause) -> tuple[Fault, Cause]:
    """The fault a chain works on: the earlier one where the cause is that, for its first own cause."""
    if cause.earlier is None:
        return fault, cause
    earlier = shelf.faults[cause.earlier]
    for own in earlier.causes:
        if own.earlier is None:
            return earlier, own
    raise BadInput(f"{earlier.name}: each of its causes is an earlier fault; name that fault instead")


def lift_load(question: ChainQuestion, shelf: Shelf, where: evidence.Shown, fitted: kit.Fit) -> Load:
    """The load the lift ends at, `fitted` to a kit: as asked, else light or the least that shows the fault."""
    drill = shelf.drills[shelf.lift.drill]
    most = min(drill.load[1], fitted.load)
    if question.load is not None:
        return max(drill.load[0], min(question.load, most))
    showing = (load for load in kit.loads(drill, fitted, Load.WORKING) if _shows(shelf, fitted, drill, load, where))
    return max(drill.load[0], min(max(Load.LIGHT, next(showing, Load.LIGHT)), most))


def _cause_of(question: ChainQuestion, fault: Fault) -> Cause:
    if question.cause is None:
        return fault.causes[0]
    try:
        return fault.cause(question.cause)
    except KeyError:
        raise BadInput(
            f"{fault.id} has no cause {question.cause!r}", nearest=tuple(cause.id for cause in fault.causes)
        ) from None


def _doubt(
    question: ChainQuestion,
    shelf: Shelf,
    fits: Mapping[DrillId, kit.Fit],
    addressing: frozenset[DrillId],
    where: evidence.Shown,
    load: Load,
) -> frozenset[DrillId]:
    found = set()
    for drill in shelf.drills.values():
        if drill.stage is Stage.FINISH:
            continue
        if drill.id in addressing:
            found.add(drill.id)
        elif drill.id in fits:
            fitted = fits[drill.id]
            highest = min(drill.load[1], fitted.load, load)
            if highest >= drill.load[0] and _shows(shelf, fitted, drill, highest, where):
                found.add(drill.id)
    return frozenset(found - question.holds)


def _doable(
    drills: Iterable[Drill], fits: Mapping[DrillId, kit.Fit], doubt: frozenset[DrillId], limit: Load
) -> frozenset[DrillId]:
    """Drills with a load the kit and `limit` allow, of whose groups in doubt one member each is doable."""
    waiting = {
        drill.id: drill for drill in drills if drill.id in fits and drill.load[0] <= min(limit, fits[drill.id].load)
    }
    done: set[DrillId] = set()
    while True:
        ready = [
            drill_id
            for drill_id, drill in waiting.items()
            if all(any(member not in doubt or member in done for member in group) for group in drill.groups)
        ]
        if not ready:
            return frozenset(done)
        done.update(ready)
        for drill_id in ready:
            del waiting[drill_id]


def matter_of(shelf: Shelf, question: ChainQuestion) -> Matter:
    """Understand a question; BadInput if it names a fault or cause that isn't there.

    A lift that the kit can't do at all has no load: it is given its least, and is not in `doable`.
    """
    fault = known_fault(shelf, question.fault)
    cause = _cause_of(question, fault)
    worked = _worked(shelf, fault, cause)
    where = evidence.shown(fault, cause, shelf.lift)
    where_worked = evidence.shown(*worked, shelf.lift)
    fits = shelf.fits(question.have)
    lift_drill = shelf.drills[shelf.lift.drill]
    lift_fit = fits.get(lift_drill.id)
    load = lift_load(question, shelf, where, lift_fit) if lift_fit else lift_drill.load[0]
    addressing = frozenset(
        drill.id for drill in shelf.drills.values() if evidence.addresses(drill, *worked, drill.load[1])
    )
    doubt = _doubt(question, shelf, fits, addressing, where_worked, load)
    doable = _doable(shelf.drills.values(), fits, doubt, min(load, Load.LIGHT))
    return Matter(question, shelf, fault, cause, *worked, load, fits, doubt, doable, where, where_worked, addressing)


def known_fault(shelf: Shelf, fault_id: FaultId) -> Fault:
    """A fault of the lift; BadInput if it is none."""
    if fault_id not in shelf.faults:
        raise BadInput(f"{fault_id} is not a fault of the {shelf.lift.name.lower()}")
    return shelf.faults[fault_id]
