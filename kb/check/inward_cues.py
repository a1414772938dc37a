"""None of a drill's cues is about the bar or the floor.

At least one names something outside the body: the bar, the stick, the floor, a wall, a line, a box and the
like.

Why it matters: a cue about the bar or the floor works better than one about a body part: attention on what
the movement does, rather than on the limbs, gives the better movement at less cost, across tasks, levels and
ages (G. Wulf, "Attentional focus and motor learning: a review of 15 years", International Review of Sport
and Exercise Psychology 6(1), 2013, pp. 77-104).

Wrong:

    ## Say
    - Knees out
    - Chest up

Right:

    ## Say
    - Knees out
    - Push the floor apart
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.words import fold

__all__ = ["CODE", "OUTSIDE", "rule"]

CODE = "inward-cues"

OUTSIDE = frozenset(
    """
    bar bars barbell stick broom disc discs plate plates weight weights load
    floor ground platform wall walls ceiling roof sky room
    line lines mark marks tape spot prints track tracks rail rails
    box bench chair seat rack pins block blocks band strap straps towel wedge
    """.split()
)
"""Words for what is outside the body, as a cue may name it."""


def rule(library: Library) -> Iterator[Problem]:
    """Every drill that has cues, all of them about the body."""
    for drill in library.drills.values():
        if drill.cues and not any(OUTSIDE.intersection(fold(cue).split()) for cue in drill.cues):
            message = "No cue is about the bar, the floor or anything else outside the body."
            yield at(library, drill.id, "## Say", CODE, message, "Say what the bar does, or what the floor is to feel.")
