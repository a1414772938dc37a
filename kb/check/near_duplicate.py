"""Two drills are nearly the same: all dials and the faults they address are equal, or their texts read alike.

Preparation has no dials: there what is opened, for which positions and with what, is compared. Texts read
alike when at least six of ten runs of three words that either has, both have.

Why it matters: a drill that only renames another makes chains longer and choices harder, and the two drift
apart as one of them is mended. Near-duplicates are found by their runs of words as in A. Z. Broder, "On the
resemblance and containment of documents", Proceedings of Compression and Complexity of Sequences, 1997,
pp. 21-29.

Wrong:

    # pull/hang-pull.md and pull/pull-from-hang.md, both with
    reach: [knee, extension]
    speed: full
    load: [stick, light]
    faults: [{fault: cuts-pull-short, cause: in-a-hurry-under}]

Right:

    # pull/hang-pull.md alone
    also: [pull from hang]
"""

from collections import Counter
from collections.abc import Hashable, Iterator, Mapping
from itertools import combinations

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import Drill, DrillId, Stage
from kb.words import fold

__all__ = ["ALIKE", "CODE", "RUN", "resemblance", "rule"]

CODE = "near-duplicate"

ALIKE = (6, 10)
"""Shared runs to all runs from which two texts read alike: half a text copied and changed stays below it."""

RUN = 3
"""Words of a run: fewer are shared by any two texts about lifting, more miss a text lightly reworded."""


def rule(library: Library) -> Iterator[Problem]:
    """Every pair of drills that are nearly the same, told once, at the later of the two."""
    told: set[tuple[DrillId, DrillId]] = set()
    by_profile: dict[Hashable, list[DrillId]] = {}
    for drill in library.drills.values():
        by_profile.setdefault(_profile(drill), []).append(drill.id)
    for alike in by_profile.values():
        for first, second in combinations(alike, 2):
            told.add((first, second))
            prepares = library.drills[first].stage is Stage.PREPARE
            what = "opens the same with the same gear" if prepares else "has the same dials"
            message = f"`{first}` {what} and addresses the same faults."
            help_ = "Make one of them an other name, or let what each is for differ."
            yield at(library, second, "stage", CODE, message, help_)
    shared, total = ALIKE
    for (first, second), share in resemblance(library.drills).items():
        if share[0] * total >= shared * share[1] and (first, second) not in told:
            message = f"This reads like `{first}`: {share[0]} of {share[1]} runs of {RUN} words are the same."
            yield at(library, second, "## Set up", CODE, message, "Write what is different, or keep one of them.")


def _profile(drill: Drill) -> Hashable:
    """What two drills mustn't share: dials, reach and faults; for preparation what it opens, for what, with what."""
    faults = frozenset(drill.faults)
    if drill.stage is Stage.PREPARE:
        return drill.stage, frozenset(drill.opens), frozenset(drill.for_positions), frozenset(drill.equipment), faults
    return (
        drill.stage,
        frozenset(drill.reach.items()),
        frozenset(drill.leaves_out),
        drill.speed,
        drill.load,
        drill.catch,
        frozenset(drill.aid),
        frozenset(drill.made_of),
        faults,
    )


def _runs(drill: Drill) -> set[str]:
    words = [fold(text).split() for heading, text in drill.sections.items() if heading != "Sources"]
    return {" ".join(said[n : n + RUN]) for said in words for n in range(len(said) - RUN + 1)}


def resemblance(drills: Mapping[DrillId, Drill]) -> dict[tuple[DrillId, DrillId], tuple[int, int]]:
    """Of each two drills whose texts share a run of words: how many runs both have, and how many either."""
    size: dict[DrillId, int] = {}
    having: dict[str, list[DrillId]] = {}
    for drill in drills.values():
        runs = _runs(drill)
        size[drill.id] = len(runs)
        for run in runs:
            having.setdefault(run, []).append(drill.id)
    both: Counter[tuple[DrillId, DrillId]] = Counter()
    for ids in having.values():
        both.update(combinations(ids, 2))
    return {pair: (count, size[pair[0]] + size[pair[1]] - count) for pair, count in sorted(both.items())}
