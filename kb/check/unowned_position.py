"""No drill has a position as its `target_position`, so nothing owns it.

What is on a lift's timeline has to be owned too: to pass through a posture isn't to practise it. Being what
preparation is `for` doesn't count.

Why it matters: a posture that nobody practises is a gap in the teaching, or it is left over and confuses
whoever looks it up.

Wrong:

    # positions/clean-lift-off.md, and no drill with
    target_position: clean-lift-off

Right:

    # pull/lift-off-pause.md
    target_position: {snatch: snatch-lift-off, clean: clean-lift-off}
"""

from collections.abc import Iterator

from kb.check.answers import Answers
from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "unowned-position"


def rule(library: Library, _: Answers) -> Iterator[Problem]:
    """Every position that no drill is for."""
    owned = {position for drill in library.drills.values() for position in drill.target_position.values()}
    for position in library.positions.values():
        if position.id not in owned:
            message = f"No drill has `{position.id}` as its target."
            yield at(library, position.id, "", CODE, message, "Give one the `target_position`, or take this away.")
