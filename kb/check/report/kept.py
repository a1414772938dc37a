"""What else a drill is there for, though no answer would miss it: reasons to keep it that entries themselves give."""

from collections.abc import Callable, Iterable, Mapping
from typing import NamedTuple

from kb.ask.plan.parts import is_part
from kb.check.asked import Told
from kb.make.library import Library
from kb.terms import DrillId, Stage

__all__ = ["Kept", "kept_for"]

_Note = Callable[[DrillId, str, str], None]


class Kept(NamedTuple):
    """A reason to keep a drill, and the entries that give it, in id order."""

    why: str
    of: tuple[str, ...]


def kept_for(library: Library, answers: Iterable[Told] = ()) -> Mapping[DrillId, tuple[Kept, ...]]:
    """Every drill's reasons, the weightiest first; none if nothing in the library or these answers speaks of it."""
    found: dict[DrillId, dict[str, set[str]]] = {drill: {} for drill in library.drills}

    def note(drill: DrillId, why: str, of: str) -> None:
        if drill in found:
            found[drill].setdefault(why, set()).add(of)

    _steps_on_the_way(library, note)
    _checks_and_acts(library, note)
    for each in library.drills.values():
        for regression in each.regressions:
            note(regression.drill, "an easier version of", each.id)
    for answer in answers:
        for drill in answer.rehearsed:
            note(drill, "rehearsed where there is no chain for", f"{answer.question.fault}/{answer.question.cause}")
    for each in library.drills.values():
        if each.stage is Stage.PREPARE and not each.faults:
            for lift_id in each.lifts:
                note(each.id, "warms up for", lift_id)
        if is_part(each):
            for lift_id in each.lifts:
                note(each.id, "a part at weight in plans for", lift_id)
    return {
        drill: tuple(Kept(why, tuple(sorted(of))) for why, of in reasons.items()) for drill, reasons in found.items()
    }


def _steps_on_the_way(library: Library, note: _Note) -> None:
    """What lifts and other drills build on."""
    for lift in library.lifts.values():
        note(lift.drill, "the lift itself", lift.id)
        for drill in lift.checkpoints:
            note(drill, "a checkpoint of", lift.id)
    for each in library.drills.values():
        for group in each.prerequisites:
            for member in group:
                note(member, "comes before" if len(group) == 1 else "one of those that may come before", each.id)
        for part in each.made_of:
            note(part, "a part of", each.id)


def _checks_and_acts(library: Library, note: _Note) -> None:
    """Quick checks, and what is offered beside a chain: preparation for mobility, strengthening for strength."""
    for fault in library.faults.values():
        for tell in fault.tells:
            if tell.drill is not None:
                note(tell.drill, "a quick check for", fault.id)
    offered = {(Stage.PREPARE, "mobility"): "opens for", (Stage.FINISH, "strength"): "strengthens for"}
    for drill in library.drills.values():
        for said in drill.faults:
            of = library.faults.get(said.fault)
            for cause in of.causes if of is not None else ():
                why = offered.get((drill.stage, cause.kind))
                if why is not None and said.cause in (None, cause.id):
                    note(drill.id, why, f"{said.fault}/{cause.id}")
