"""A load as a share of a best runs backwards, is no share, or is given to a drill that is never loaded.

Why it matters: a percentage makes weight on a bar. For a stick there is nothing to reckon.

Wrong:

    load: stick
    load_from: {lift: clean, percent: [65, 50]}

Right:

    load: [stick, light]
    load_from: {lift: clean, percent: [50, 65]}
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import Load

__all__ = ["CODE", "rule"]

CODE = "load-from-unfit"

_MOST = 150
"""Pulls are loaded above the lift's best, but not by half again, per cent."""


def rule(library: Library) -> Iterator[Problem]:
    """Every `load_from` that makes no weight."""
    for drill in library.drills.values():
        if drill.load_from is None:
            continue
        least, most = drill.load_from.percent
        if least > most:
            message = f"`percent` runs backwards, from {least} to {most}."
            yield at(library, drill.id, "load_from.percent", CODE, message, f"Write [{most}, {least}].")
        elif least < 1 or most > _MOST:
            message = f"`percent` is a share of a best, from 1 to {_MOST}, not {least} to {most}."
            yield at(library, drill.id, "load_from.percent", CODE, message)
        if drill.load[1] < Load.LIGHT:
            message = f"`load_from` is for loads of light or more, and this goes no higher than {drill.load[1].word}."
            yield at(library, drill.id, "load_from", CODE, message, "Leave it out, or raise `load`.")
