"""A prerequisite is already brought in by another prerequisite of the same drill.

Of an any-of group every member is told when no way to the others avoids them all. Parts of a complex bring
in, and are never told.

Why it matters: what is listed twice has to be mended twice, and the picture of the graph fills with lines
that say nothing.

Wrong:

    # snatch/tall-snatch.md; overhead-squat itself requires overhead-hold
    prerequisites: [overhead-squat, overhead-hold]

Right:

    prerequisites: [overhead-squat]
"""

from collections.abc import Iterator

from kb.check.answers import Answers
from kb.errors import Problem
from kb.make.library import Library
from kb.make.order import implied
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "implied-prerequisite"


def rule(library: Library, _: Answers) -> Iterator[Problem]:
    """Every group of prerequisites that another brings in, told once."""
    found = implied(library.drills)
    for drill in library.drills.values():
        members = {member for drill_id, member in found if drill_id == drill.id}
        for n, group in enumerate(drill.prerequisites):
            if members.issuperset(group):
                named = " or ".join(f"`{member}`" for member in group)
                message = f"{named} is already brought in by another prerequisite."
                yield at(library, drill.id, f"prerequisites.{n}", CODE, message, "Leave it out.")
