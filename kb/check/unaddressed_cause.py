"""No drill addresses a cause of a fault, in a lift that the fault is seen in.

A cause of mobility needs a drill of stage prepare; a cause of strength one that reaches load light, or one to
finish; any other cause a drill that isn't one to finish. An earlier fault is worked on as itself. A drill
addresses a cause when its `faults` names the fault with that cause, or the fault alone.

Why it matters: the coach is told why it happens and then given nothing to do about it.

Wrong:

    # faults/heels-lift-in-catch.md
    causes: [{id: stiff-ankles, kind: mobility, ...}, ...]
    # and no drill of stage prepare with
    faults: [{fault: heels-lift-in-catch, cause: stiff-ankles}]

Right:

    # mobility/ankle-knee-to-wall.md
    stage: prepare
    faults: [{fault: heels-lift-in-catch, cause: stiff-ankles}]
"""

from collections.abc import Iterator

from kb.dials import serves
from kb.errors import Problem
from kb.evidence import addresses
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import Cause, Drill, Fault, FaultId, Lift, Stage

__all__ = ["CODE", "rule", "unaddressed"]

CODE = "unaddressed-cause"

_WANTED = {
    "mobility": "a drill of stage prepare that names it",
    "strength": "a drill that reaches load light, or one to finish, that names it",
}


def rule(library: Library) -> Iterator[Problem]:
    """Every cause that nothing is done about, with the lifts in which nothing is."""
    for fault, cause, lifts in unaddressed(library):
        named = " or the ".join(lift.name.lower() for lift in lifts)
        message = f"No drill of the {named} addresses `{cause.id}` ({cause.kind})."
        help_ = f"Write {_WANTED.get(cause.kind, 'a drill that names it')}, or add it to the `faults` of one."
        yield at(library, fault.id, f"causes.{fault.causes.index(cause)}", CODE, message, help_)


def unaddressed(library: Library) -> Iterator[tuple[Fault, Cause, tuple[Lift, ...]]]:
    """Each cause that nothing is done about, and the lifts of its fault in which nothing is."""
    acting: dict[FaultId, list[Drill]] = {}
    for drill in library.drills.values():
        for fault_id in dict.fromkeys(said.fault for said in drill.faults):
            acting.setdefault(fault_id, []).append(drill)
    for fault in library.faults.values():
        lifts = [library.lifts[lift] for lift in fault.lifts if lift in library.lifts]
        for cause in fault.causes:
            if cause.kind == "earlier":
                continue
            working = [drill for drill in acting.get(fault.id, ()) if _works(drill, fault, cause)]
            lacking = tuple(lift for lift in lifts if not any(serves(drill, lift) for drill in working))
            if lacking:
                yield fault, cause, lacking


def _works(drill: Drill, fault: Fault, cause: Cause) -> bool:
    if not addresses(drill, fault, cause, drill.load[1]):
        return False
    if cause.kind == "mobility":
        return drill.stage is Stage.PREPARE
    return cause.kind == "strength" or drill.stage is not Stage.FINISH
