"""Preparation has a dial, or something that isn't preparation says what it `opens` or is `for`.

Why it matters: preparation opens joints before the work and is measured on no dial; anything that has
dials is part of the lift, and is placed by them.

Wrong:

    stage: prepare
    opens: [ankle]
    speed: slow

Right:

    stage: prepare
    opens: [ankle]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import Stage

__all__ = ["CODE", "rule"]

CODE = "dial-on-preparation"

_DIALS = ("target_position", "reach", "leaves_out", "speed", "load", "catch", "aid", "load_from", "made_of")


def rule(library: Library) -> Iterator[Problem]:
    """Every field that a drill of its stage can't have, and preparation that opens nothing."""
    for drill in library.drills.values():
        source = library.sources.get(drill.id)
        said = source.lines if source else {}
        if drill.stage is not Stage.PREPARE:
            for field in ("opens", "for"):
                if field in said:
                    message = f"`{field}` is for preparation, and this is of stage {drill.stage.word}."
                    yield at(library, drill.id, field, CODE, message, "Leave it out.")
            continue
        for field in _DIALS:
            if field in said:
                yield at(library, drill.id, field, CODE, f"Preparation has no `{field}`.", "Leave it out.")
        if not drill.opens:
            yield at(library, drill.id, "stage", CODE, "Preparation must say what it `opens`.", "Add `opens: [...]`.")
