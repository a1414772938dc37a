"""The least load of a drill is above its most.

Why it matters: a drill is done at any load from its least to its most; backwards, there is none.

Wrong:

    load: [light, stick]

Right:

    load: [stick, light]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "load-backwards"


def rule(library: Library) -> Iterator[Problem]:
    """Every load that ends below where it begins."""
    for drill in library.drills.values():
        least, most = drill.load
        if least > most:
            message = f"The least load, {least.word}, is above the most, {most.word}."
            yield at(library, drill.id, "load", CODE, message, f"Write [{most.word}, {least.word}].")
