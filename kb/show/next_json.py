"""What is ready now and what is shaky, for programs."""

from collections.abc import Mapping
from typing import Any

from kb.ask.ability.fringe import Fringe
from kb.show.next_words import ready_why, shaky_why
from kb.terms import Drill, DrillId, Lift, LiftId

__all__ = ["VERSION", "next_json"]

VERSION = 1
"""The version of the shape."""


def next_json(
    found: Fringe,
    lift: LiftId | None,
    kit: str | None,
    *,
    drills: Mapping[DrillId, Drill],
    lifts: Mapping[LiftId, Lift],
) -> dict[str, Any]:
    """The two fringes; `holds` is closed under prerequisites, and `granted` is what that added to what was named."""
    return {
        "version": VERSION,
        "lift": lift,
        "kit": kit,
        "holds": sorted(found.closed.held),
        "granted": list(found.closed.granted),
        "any_of": [list(group) for group in found.closed.chosen],
        "ready": [
            {
                "id": each.drill.id,
                "name": each.drill.name,
                "why": ready_why(each, drills, lifts),
                "load": each.load.word,
                "must": list(each.must),
                "may": list(each.may),
                "opens": list(each.opens),
                "waiting": each.waiting,
            }
            for each in found.ready
        ],
        "other_gear": [{"id": drill.id, "name": drill.name} for drill in found.other_gear],
        "shaky": [
            {
                "id": each.drill.id,
                "name": each.drill.name,
                "why": shaky_why(each, drills),
                "opens": list(each.opens),
            }
            for each in found.shaky
        ],
    }
