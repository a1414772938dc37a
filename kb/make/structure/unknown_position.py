"""A field names a position that isn't there: `target_position`, `for`, a timeline's or a posture's `position`.

Why it matters: figures are drawn from positions, so a chart with a missing one has a hole where a coach
looks first.

Wrong:

    target_position: snatch-recieve

Right:

    target_position: snatch-receive
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import known, unknown, written

__all__ = ["CODE", "rule"]

CODE = "unknown-position"


def rule(library: Library) -> Iterator[Problem]:
    """Every position that is named and isn't there."""
    positions = known(library, "position")
    for owner, path, name in _named(library):
        if name not in positions:
            yield unknown(library, owner, path, CODE, "position", name)


def _named(library: Library) -> Iterator[tuple[str, str, str]]:
    for lift in library.lifts.values():
        if written(library, lift.id, "timeline"):
            yield from ((lift.id, f"timeline.{n}.position", timed.position) for n, timed in enumerate(lift.timeline))
    for fault in library.faults.values():
        if fault.posture is not None:
            yield fault.id, "posture.position", fault.posture.position
    for drill in library.drills.values():
        for lift_id, position in drill.target_position.items():
            yield drill.id, f"target_position.{lift_id}", position
        yield from ((drill.id, f"for.{n}", position) for n, position in enumerate(drill.for_positions))
