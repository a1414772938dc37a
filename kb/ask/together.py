"""Two faults seen in one lift: what the one has to do with the other, and which cause explains both."""

from collections.abc import Mapping
from typing import Literal, NamedTuple

from kb.errors import BadInput
from kb.terms import Cause, Fault, FaultId, Lift

__all__ = ["Together", "together"]

Relation = Literal["makes", "made", "one-cause", "one-fault", "apart"]


class Together(NamedTuple):
    """A fault that was seen beside the one asked about, and what it is to that.

    `makes`: the other comes first and can make the one asked about. `made`: the other way round. `one-cause`: a cause
    of the same name stands in both. `one-fault`: one earlier fault, `source`, can make both. `apart`: the library
    knows of nothing between them. `cause` is the asked fault's cause through which they hang together, `others_cause`
    the other's; None where there is none. `earlier` and `later` say where the other shows, beside the first.
    """

    other: Fault
    relation: Relation
    cause: Cause | None = None
    others_cause: Cause | None = None
    source: Fault | None = None
    earlier: bool = False
    later: bool = False


def together(faults: Mapping[FaultId, Fault], lift: Lift, asked: FaultId, other: FaultId) -> Together:
    """What a second fault is to the first: the nearest of the relations, looked for in the order that they are named.

    Raises BadInput where the second isn't a fault of this lift, or is the first.
    """
    if other not in faults:
        raise BadInput(f"{other} is not a fault of the {lift.name.lower()}")
    if other == asked:
        raise BadInput(f"{other} is what is asked about: `--also-seen` names another fault")
    fault, second = faults[asked], faults[other]
    begins, others = _begins(fault, lift), _begins(second, lift)
    return _joined(faults, fault, second)._replace(earlier=others < begins, later=others > begins)


def _joined(faults: Mapping[FaultId, Fault], fault: Fault, second: Fault) -> Together:
    through = _leads_to(faults, fault, {second.id})
    if through is not None:
        return Together(second, "makes", cause=through)
    back = _leads_to(faults, second, {fault.id})
    if back is not None:
        return Together(second, "made", others_cause=back)
    shared = {cause.id: cause for cause in second.causes if cause.earlier is None}
    for cause in fault.causes:
        if cause.earlier is None and cause.id in shared:
            return Together(second, "one-cause", cause, shared[cause.id])
    common = _before(faults, fault) & _before(faults, second)
    through, others = _leads_to(faults, fault, common), _leads_to(faults, second, common)
    if through is None or others is None or through.earlier is None:
        return Together(second, "apart")
    source = through.earlier if through.earlier in common else min(common & _before(faults, faults[through.earlier]))
    return Together(second, "one-fault", through, others, faults[source])


def _before(faults: Mapping[FaultId, Fault], fault: Fault) -> set[FaultId]:
    """The faults that can make this one, straight or through another."""
    found, waiting = set[FaultId](), [fault]
    while waiting:
        for cause in waiting.pop().causes:
            if cause.earlier is not None and cause.earlier in faults and cause.earlier not in found:
                found.add(cause.earlier)
                waiting.append(faults[cause.earlier])
    return found - {fault.id}


def _leads_to(faults: Mapping[FaultId, Fault], fault: Fault, sources: set[FaultId]) -> Cause | None:
    """The cause through which one of these faults makes this one, the nearest first; None if none does."""
    straight = [cause for cause in fault.causes if cause.earlier in sources]
    through = [
        cause
        for cause in fault.causes
        if cause.earlier is not None and cause.earlier in faults and _before(faults, faults[cause.earlier]) & sources
    ]
    return next(iter([*straight, *through]), None)


def _begins(fault: Fault, lift: Lift) -> int:
    """Where on the lift's timeline a fault shows first."""
    return min((lift.points.index(first) for first, _ in fault.phases if first in lift.points), default=0)
