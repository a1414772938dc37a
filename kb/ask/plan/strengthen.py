"""What strengthens at the end of a lesson: a squat, a hinge, a press, each standing on what is known."""

from collections.abc import Collection, Iterator

from kb.ask.plan.teaching import Teaching
from kb.dose import work_seconds
from kb.terms import Catch, Drill, DrillId, Load, Speed, Stage

__all__ = ["strengthening"]


def _kind(drill: Drill) -> str:
    """What a slow drill strengthens: `squat`, `hinge` or `press`; nothing where it is something else."""
    if not drill.dose.reps or drill.stage in (Stage.PREPARE, Stage.POSITION) or drill.speed > Speed.PAUSED:
        return ""
    points = {each for ends in drill.reach.values() for each in ends}
    overhead = "headroom" in drill.equipment
    if drill.stage is Stage.FINISH:
        if overhead:
            return "press"
        if drill.catch >= Catch.POWER:
            return "squat"
        return "hinge" if points and points <= {"start", "knee", "hip"} else ""
    if drill.speed is not Speed.SLOW:
        return ""
    if points == {"receive", "stand"} and (drill.catch is Catch.FULL or drill.load[0] is Load.NONE):
        return "squat"
    if points and points <= {"start", "knee", "hip"}:
        return "hinge"
    return "press" if points == {"rack", "recovered"} else ""


def strengthening(
    teaching: Teaching, before: Collection[DrillId], known: Collection[DrillId], without: Collection[DrillId]
) -> Iterator[Drill]:
    """One squat, one hinge, one press at most, in this order, that stand on what is known and need nobody else.

    What takes a light weight only where what it stands on was known `before` the lesson: nothing is loaded that wasn't
    held unloaded. Else one that is known, else the one that is simplest and quickest. None of those `without` which the
    lesson has already.
    """
    before, known = frozenset(before), frozenset(known)

    def worth(drill: Drill) -> tuple[bool, bool, int, int, DrillId]:
        return (
            drill.stage is not Stage.FINISH,
            drill.id not in known,
            -drill.catch if drill.id in known else drill.catch,
            work_seconds(drill),
            drill.id,
        )

    for kind in ("squat", "hinge", "press"):
        able = [
            drill
            for drill in teaching.shelf.drills.values()
            if drill.id in teaching.fits
            and drill.id not in without
            and drill.load[0] <= Load.LIGHT
            and _kind(drill) == kind
            and all((before if drill.load[0] is Load.LIGHT else known) & set(group) for group in drill.groups)
            and not {"partner"} & set(drill.equipment)
        ]
        if able:
            yield min(able, key=worth)
