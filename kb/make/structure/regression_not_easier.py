"""An easier version isn't easier on any dial.

It must turn some dial down: an earlier stage, a shorter reach, a lower speed, a lighter load, less of a
catch, or help where there was none. And it must not ask for a heavier load than the drill it eases: its
least load is no higher. Preparation is easier than anything but preparation, and as easy as that.

Why it matters: it is offered to a lifter who just failed. Harder than that, it makes failure sure.

Wrong:

    # snatch/tall-power-snatch.md (load: stick, catch: power)
    regressions: [{drill: tall-snatch, eases: "no stop"}]       # (load: stick, catch: full)

Right:

    # snatch/tall-snatch.md (load: stick, catch: full)
    regressions: [{drill: tall-power-snatch, eases: "a higher catch"}]
"""

from collections.abc import Iterator

from kb.dials import serves
from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.make.structure.visits import visited
from kb.terms import Drill, Stage

__all__ = ["CODE", "rule"]

CODE = "regression-not-easier"


def rule(library: Library) -> Iterator[Problem]:
    """Every easier version that isn't."""
    for drill in library.drills.values():
        for n, said in enumerate(drill.regressions):
            easier = library.drills.get(said.drill)
            if easier is None or easier.id == drill.id or easier.stage is Stage.PREPARE:
                continue
            if easier.load[0] > drill.load[0]:
                message = (
                    f"`{easier.id}` asks for a load of {easier.load[0].word} at least, this for {drill.load[0].word}."
                )
                yield at(library, drill.id, f"regressions.{n}", CODE, message, "Lower its least load, or take it out.")
            elif not _lower_dial(easier, drill) and not _shorter(easier, drill, library):
                message = f"`{easier.id}` is no easier on any dial."
                yield at(
                    library, drill.id, f"regressions.{n}", CODE, message, "Turn a dial of it down, or take it out."
                )


def _lower_dial(easier: Drill, drill: Drill) -> bool:
    return (
        easier.stage < drill.stage
        or easier.speed < drill.speed
        or easier.catch < drill.catch
        or easier.load < drill.load
        or (bool(easier.aid) and not drill.aid)
    )


def _shorter(easier: Drill, drill: Drill, library: Library) -> bool:
    """Whether it visits fewer points on every lift that both serve; true where they share none."""
    for lift in library.lifts.values():
        if not serves(easier, lift) or not serves(drill, lift):
            continue
        for part in lift.serves:
            there, here = visited(easier, part, library), visited(drill, part, library)
            if there and here and len(there) >= len(here):
                return False
    return True
