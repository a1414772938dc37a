"""A cue doesn't say what it acts on.

Each begins with one of four words and a colon: `Bar` (the bar or the stick), `Floor` (the floor, or anything
else in the room), `Body`, `Timing` (when, how fast). The word isn't said to the lifter, and isn't counted.

Why it matters: a cue that does nothing for one lifter may work on another when it acts on something else. A
coach who sees what each acts on can change the kind and not only the words.

Wrong:

    ## Say
    - Drop with the bar.
    - Elbows high.

Right:

    ## Say
    - Bar: Drop with the bar.
    - Body: Elbows high.
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.saying import ACTS_ON, cues_said

__all__ = ["CODE", "rule"]

CODE = "unlabelled-cue"


def rule(library: Library) -> Iterator[Problem]:
    """Every cue without a label."""
    for drill in library.drills.values():
        for acts_on, said in cues_said(drill.sections.get("Say", "")):
            if not acts_on:
                message = f"The cue `{said}` doesn't say what it acts on."
                help_ = f"Begin it with one of {', '.join(f'`{each}:`' for each in ACTS_ON)}."
                yield at(library, drill.id, "## Say", CODE, message, help_)
