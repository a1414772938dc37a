"""Who is afraid of it: the drills that the library has against fear, and the way out that comes before them."""

from collections.abc import Iterable, Mapping

from kb.ask.plan.lesson import is_way_out
from kb.terms import Drill, DrillId, Fault, FaultId, LiftId, Load, Speed

__all__ = ["MOST_STEPS", "steps_for", "way_out_of"]

MOST_STEPS = 4
"""Steps named at most, the way out not counted. Ours."""


def steps_for(lifts: Iterable[LiftId], drills: Iterable[Drill], faults: Mapping[FaultId, Fault]) -> tuple[Drill, ...]:
    """The drills of some lifts that act on a cause of the kind nerve, something held, not at full speed, no way out.

    Slowest first; of those as slow first what acts on most such causes, then by id.
    """
    theirs = set(lifts)
    found: list[tuple[int, int, DrillId, Drill]] = []
    for drill in drills:
        acts = sum(
            said.cause is not None
            and said.fault in faults
            and bool(theirs & set(faults[said.fault].lifts))
            and faults[said.fault].cause(said.cause).kind == "nerve"
            for said in drill.faults
        )
        if (
            acts
            and drill.load[1] > Load.NONE
            and drill.speed < Speed.FULL
            and theirs & set(drill.lifts)
            and not is_way_out(drill)
        ):
            found.append((int(drill.speed), -acts, drill.id, drill))
    return tuple(drill for *_, drill in sorted(found, key=lambda each: each[:3]))


def way_out_of(drill: Drill, drills: Iterable[Drill]) -> tuple[Drill, ...]:
    """The drills that practise nothing but the way out of a drill's lifts."""
    return tuple(each for each in drills if is_way_out(each) and set(each.lifts) & set(drill.lifts))
