"""No tell separates two causes of a fault.

A tell separates two causes when one stands in its `yes` only and the other in its `no` only. A cause in
neither list is untouched by that tell.

Why it matters: the tells are how a coach finds out which chain to use. Two causes that every check leaves
together are one guess.

Wrong:

    causes: [{id: stiff-ankles, ...}, {id: lost-mid-foot, ...}]
    tells:
      - {do: "Squat with heels on a disc.", look: "Do the heels stay down?", seconds: 20, yes: [stiff-ankles]}

Right:

    tells:
      - {do: "Squat with heels on a disc.", look: "Do the heels stay down?", seconds: 20,
         yes: [stiff-ankles], no: [lost-mid-foot]}
"""

from collections.abc import Iterator
from itertools import combinations

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import Tell

__all__ = ["CODE", "rule"]

CODE = "untold-causes"


def rule(library: Library) -> Iterator[Problem]:
    """Every pair of causes that no tell puts apart, told at the later of the two."""
    for fault in library.faults.values():
        ids = [cause.id for cause in fault.causes]
        for (_, first), (n, second) in combinations(enumerate(ids), 2):
            if first != second and not any(_separates(tell, first, second) for tell in fault.tells):
                message = f"No tell separates `{second}` from `{first}`."
                help_ = "Put one in the `yes` and the other in the `no` of a tell, or add a tell."
                yield at(library, fault.id, f"causes.{n}", CODE, message, help_)


def _separates(tell: Tell, first: str, second: str) -> bool:
    sides = [(cause in tell.yes, cause in tell.no) for cause in (first, second)]
    return sorted(sides) == [(False, True), (True, False)]
