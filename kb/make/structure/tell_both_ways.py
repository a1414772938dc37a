"""A tell points to the same cause whether the answer is yes or no.

Why it matters: a check that comes out the same either way tells nothing about that cause, and takes half a
minute from the class.

Wrong:

    yes: [stiff-ankles, lost-mid-foot]
    no: [lost-mid-foot]

Right:

    yes: [stiff-ankles]
    no: [lost-mid-foot]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "tell-both-ways"


def rule(library: Library) -> Iterator[Problem]:
    """Every cause that stands in both lists of a tell."""
    for fault in library.faults.values():
        for n, tell in enumerate(fault.tells):
            for i, cause in enumerate(tell.no):
                if cause in tell.yes:
                    message = f"A yes and a no both point to `{cause}`."
                    yield at(library, fault.id, f"tells.{n}.no.{i}", CODE, message, "Leave it in one list, or in none.")
