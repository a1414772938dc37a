"""A map by lift doesn't name exactly the lifts that the drill serves.

Why it matters: for a lift that is left out the drill has no place on the timeline; one too many is a slip.

Wrong:

    lifts: [snatch, clean]
    target_position: {snatch: snatch-start}

Right:

    lifts: [snatch, clean]
    target_position: {snatch: snatch-start, clean: clean-start}
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at, known

__all__ = ["CODE", "rule"]

CODE = "map-by-lift"


def rule(library: Library) -> Iterator[Problem]:
    """Every lift that a map lacks, or has too many."""
    lifts = known(library, "lift")
    for drill in library.drills.values():
        for field, by_lift in (("reach", drill.reach), ("target_position", drill.target_position)):
            if not by_lift:
                continue
            for lift in drill.lifts:
                if lift not in by_lift:
                    yield at(library, drill.id, field, CODE, f"`{field}` says nothing for `{lift}`.")
            for lift in by_lift:
                if lift not in drill.lifts and lift in lifts:
                    message = f"`{field}` speaks of `{lift}`, which the drill doesn't serve."
                    yield at(library, drill.id, f"{field}.{lift}", CODE, message, "Add it to `lifts`, or leave it out.")
