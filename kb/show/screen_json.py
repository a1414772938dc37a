"""What a body reaches, for programs."""

from typing import Any

from kb.ask.screen import Reached, Screen
from kb.show.as_json import VERSION
from kb.show.screen_words import CAUTION

__all__ = ["screen_json"]

Json = dict[str, Any]


def _position(reached: Reached) -> Json:
    return {
        "id": reached.position.id,
        "reachable": reached.binds is None,
        "binds": reached.binds,
        "short_by_deg": round(reached.short_by, 1),
        "short": {joint: round(degrees, 1) for joint, degrees in reached.short.items()},
        "leans_more_deg": round(reached.leans_more, 1),
        "angles": {joint: round(degrees, 1) for joint, degrees in reached.taken.angles.items()},
    }


def screen_json(screen: Screen) -> Json:
    """The screen in the shape of kb/docs/answers.md; degrees to a tenth."""
    return {
        "version": VERSION,
        "lifts": [
            {"lift": each.lift.id, "positions": [_position(reached) for reached in each.positions]}
            for each in screen.lifts
        ],
        "mobility": [
            {"id": each.drill.id, "name": each.drill.name, "for": list(each.positions)} for each in screen.mobility
        ],
        "aids": [
            {"item": aid.item, "gives_deg": round(aid.gives_deg, 1), "opens": list(aid.opens)} for aid in screen.aids
        ],
        "measured": {joint: round(getattr(screen.limits, joint), 1) for joint in screen.measured},
        "caution": CAUTION,
    }
