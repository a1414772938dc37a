"""Where a way out of a miss is due."""

from typing import Any

import pytest
from handmade import drill
from handmade import library as handmade

from kb.check.no_miss import rule
from kb.terms import Catch, Load, Position, PositionId, Stage

CARRIED = {
    "clean-start": "floor",
    "clean-hip": "hip",
    "clean-receive": "shoulders",
    "jerk-rack": "shoulders",
    "jerk-drive": "shoulders",
    "jerk-split": "overhead",
}
POSITIONS = {
    PositionId(id_): Position(id=PositionId(id_), name=id_, angles={}, bar=bar, contact="feet-flat")
    for id_, bar in CARRIED.items()
}
RACKED: dict[str, Any] = {
    "target_position": {"clean": "clean-receive"},
    "load": (Load.STICK, Load.LIGHT),
    "catch": Catch.POWER,
    "equipment": ("bar",),
}
OVERHEAD: dict[str, Any] = {
    **RACKED,
    "lifts": ("jerk",),
    "target_position": {"jerk": "jerk-split"},
    "catch": Catch.NONE,
}


@pytest.mark.parametrize(
    ("said", "due"),
    [
        (RACKED, True),
        ({**RACKED, "equipment": ("junior-bar",)}, True),
        ({**RACKED, "load": (Load.STICK, Load.STICK)}, False),
        ({**RACKED, "catch": Catch.STANDING}, False),
        ({**RACKED, "equipment": ("hand-weight",)}, False),
        ({**RACKED, "stage": Stage.FINISH}, True),
        ({**RACKED, "stage": Stage.PREPARE}, False),
        ({**RACKED, "sections": {"Slips": "- It slips: stop.", "Miss": "Let go and step back."}}, False),
        ({**RACKED, "target_position": {"clean": "clean-hip"}}, False),
        ({**RACKED, "target_position": {"clean": "unknown"}}, False),
        (OVERHEAD, True),
        # what it passes through counts, unless it is left out
        ({**OVERHEAD, "target_position": {}, "reach": {"jerk": ("rack", "split")}}, True),
        ({**OVERHEAD, "target_position": {}, "reach": {"jerk": ("rack", "split")}, "leaves_out": ("split",)}, False),
        ({**OVERHEAD, "target_position": {}, "reach": {"unknown": ("rack", "split")}}, False),
    ],
)
def test_where_it_is_due(said: dict[str, Any], due: bool) -> None:
    """Under a bar that is overhead, or on the shoulders at a catch, heavier than a stick."""
    judged = drill("judged", **said)
    assert bool(list(rule(handmade(drills={judged.id: judged}, positions=POSITIONS)))) is due
