"""*Say* has no cue, or more than three.

Each cue is an item of a list.

Why it matters: a lifter can hold one short thing in mind while the bar moves. Three are enough to choose
from; a fourth is never said.

Wrong:

    ## Say
    - Bar close
    - Elbows high
    - Feet flat
    - Chest up

Right:

    ## Say
    - Bar close
    - Push the floor away
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "MOST_CUES", "rule"]

CODE = "cue-count"

MOST_CUES = 3
"""Cues of a drill at most: DESIGN section 4, so that there is one to choose and none to recite."""


def rule(library: Library) -> Iterator[Problem]:
    """Every drill with too many cues, or with a section *Say* that has none."""
    for drill in library.drills.values():
        count = len(drill.cues)
        if count > MOST_CUES:
            message = f"There are {count} cues, and {MOST_CUES} are the most that are of use."
            yield at(library, drill.id, "## Say", CODE, message, "Keep those that you would really say.")
        elif not count and drill.sections.get("Say"):
            message = "There is no cue: each is an item of a list."
            yield at(library, drill.id, "## Say", CODE, message, "Write `- ` and at most six words.")
