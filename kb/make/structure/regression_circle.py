"""Drills are easier versions of one another, in a circle. The shortest is shown.

Why it matters: a lifter who can't do a drill is sent to an easier one; sent round in a circle, they end
where they failed.

Wrong:

    # snatch/tall-snatch.md
    regressions: [{drill: tall-power-snatch, eases: "a higher catch"}]
    # snatch/tall-power-snatch.md
    regressions: [{drill: tall-snatch, eases: "no stop"}]

Right:

    # snatch/tall-snatch.md
    regressions: [{drill: tall-power-snatch, eases: "a higher catch"}]
"""

from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.circles import circles
from kb.make.structure.known import at

__all__ = ["CODE", "rule"]

CODE = "regression-circle"


def rule(library: Library) -> Iterator[Problem]:
    """Every circle of easier versions, each drill in at most one."""
    easier = {
        str(drill.id): {
            str(said.drill): f"regressions.{n}"
            for n, said in enumerate(drill.regressions)
            if said.drill in library.drills
        }
        for drill in library.drills.values()
    }
    for circle in circles(easier):
        told = ", which has ".join(f"`{drill}`" for drill in (*circle[1:], circle[0]))
        message = f"Easier versions go round in a circle: `{circle[0]}` has {told}."
        path = easier[circle[0]][circle[1 % len(circle)]]
        yield at(library, circle[0], path, CODE, message, "Take the one away that isn't easier.")
