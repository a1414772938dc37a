"""Which default questions could be answered otherwise at all: the others need not be asked.

An answer follows from a lift, the drills that serve it, the equipment and its kits, and from a fault and those that
make it; what is only said (names, text, standards, cautions) changes no choice.
"""

from typing import Any, NamedTuple

from kb.dials import serves
from kb.make.library import Library
from kb.terms import FaultId, LiftId

__all__ = ["Touched", "asked_in_all", "touched"]

_ONLY_SAID = frozenset(
    {
        "name",
        "also",
        "sections",
        "standard",
        "cautions",
        "not_for",
        "suits",
        "turn_up",
        "feet",
        "teach_s",
        "regressions",
        "target_position",
    }
    | {
        "opens",
        "for_positions",
        "load_from",
        "checkpoints",
        "view",
        "look_alikes",
        "tells",
        "posture",
        "text",
        "timeline",
    }
)
"""Fields from which no chain and no path is chosen; of a timeline the points' names count, which `part_points` has."""


class Touched(NamedTuple):
    """Lifts of which every question is to be asked, and faults of which every question is."""

    lifts: frozenset[LiftId]
    faults: frozenset[FaultId]


def touched(before: Library, after: Library) -> Touched:
    """The lifts and faults that may be answered otherwise, or that are on one side alone."""
    old, new = _lifts(before), _lifts(after)
    lifts = frozenset(lift for lift in old.keys() | new.keys() if old.get(lift) != new.get(lift))
    was, now = _faults(before), _faults(after)
    return Touched(lifts, frozenset(fault for fault in was.keys() | now.keys() if was.get(fault) != now.get(fault)))


def asked_in_all(library: Library) -> int:
    """How many default questions for a chain there are with each kit."""
    return sum(len(fault.causes) * len(fault.lifts) for fault in library.faults.values())


def _chosen_from(record: Any) -> Any:
    """A record without what is only said."""
    kept = record._asdict()
    return tuple((name, value) for name, value in kept.items() if name not in _ONLY_SAID)


def _lifts(library: Library) -> dict[LiftId, object]:
    items = [_chosen_from(item) for item in library.items.values()]
    return {
        lift.id: (
            _chosen_from(lift),
            [_chosen_from(drill) for drill in library.drills.values() if serves(drill, lift)],
            items,
        )
        for lift in library.lifts.values()
    }


def _faults(library: Library) -> dict[FaultId, object]:
    alone = {
        fault.id: (_chosen_from(fault._replace(causes=())), [_chosen_from(cause) for cause in fault.causes])
        for fault in library.faults.values()
    }
    return {
        fault.id: (alone[fault.id], [alone.get(cause.earlier) for cause in fault.causes if cause.earlier is not None])
        for fault in library.faults.values()
    }
