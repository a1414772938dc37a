"""Where a placement has got to, for programs."""

from typing import Any

from kb.ask.ability.blim import held
from kb.ask.ability.fringe import Fringe
from kb.ask.ability.placement import Check, Placement
from kb.plain import to_plain

__all__ = ["VERSION", "place_json"]

VERSION = 1
"""The version of the shape."""


def place_json(placement: Placement, found: Fringe, kit: str | None) -> dict[str, Any]:
    """What is held and how sure that is, what was answered, and the next check; None when no more is asked.

    `holds` is closed under prerequisites, ready for `path --holds`; `likely` is each check's own likelihood.
    """
    structure = placement.structure
    return {
        "version": VERSION,
        "lift": placement.lift.id,
        "kit": kit,
        "holds": sorted(found.closed.held),
        "sure": round(placement.sure, 4),
        "checks": [{"id": answer.id, "answer": answer.answer} for answer in placement.answers],
        "next": _check(placement.next) if placement.next else None,
        "budget": placement.budget,
        "states": len(structure.states),
        "passed": list(placement.holds),
        "granted": list(found.closed.granted),
        "likely": {item: round(held(structure, placement.likely, 1 << n), 4) for n, item in enumerate(structure.items)},
        "ready": [{"id": each.drill.id, "name": each.drill.name} for each in found.ready],
    }


def _check(check: Check) -> dict[str, Any]:
    drill = check.drill
    return {
        "id": drill.id,
        "name": drill.name,
        "load": check.load.word,
        "gear": [{"item": gear.item, "using": gear.using} for gear in check.gear or ()],
        "standard": to_plain(drill.standard),
        "cautions": list(drill.cautions),
    }
