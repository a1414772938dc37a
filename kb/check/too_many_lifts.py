"""The lifts are dosed past Prilepin's table at 70 % of a best and more.

Of the snatch, clean and jerk and their forms the table allows, in one set and in one session: at 70 to 80 % of
a best 6 and 24 repetitions, above that 4 and 20, above 90 % 2 and 10. Two prints of it differ at the edges of
its rows; what either allows passes. The dose is judged at the top of `load_from`. Fewer than the table's range is
no problem: it counts a whole session, and a drill is a part of one. Squats, pulls, presses and holds aren't
judged by it.

Why it matters: past these numbers speed and shape go before the lifter notices, and a drill that teaches the
lift then teaches something else. The source is Prilepin 1974.

Wrong:

    dose: {rounds: 5, reps: 5, rest_s: 90}
    load_from: {lift: snatch, percent: [70, 85]}

Right:

    dose: {rounds: 5, reps: 3, rest_s: 90}
    load_from: {lift: snatch, percent: [70, 85]}
"""

from collections.abc import Iterator

from kb.bests import of_the_lifts
from kb.dose import sets
from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.prilepin import most
from kb.terms import Dose

__all__ = ["CODE", "FROM_PERCENT", "rule"]

CODE = "too-many-lifts"

FROM_PERCENT = 70
"""Below this the prints part company, and it is teaching rather than training."""


def _done(dose: Dose) -> tuple[int, int]:
    """Repetitions of the largest set and of all, each side."""
    if dose.good and not (dose.reps and dose.success):  # an impossible dose, which has its own problem
        return 0, 0
    done = sets(dose) or (0,)
    return max(done), sum(done) * dose.sides


def rule(library: Library) -> Iterator[Problem]:
    """Every dose of a lift that is past the table."""
    for drill in library.drills.values():
        share = drill.load_from
        if share is None or not FROM_PERCENT <= share.percent[1] <= 150 or not of_the_lifts(drill):
            continue
        of_a_set, of_all = most(share.percent[1])
        largest, total = _done(drill.dose)
        allowed = f"at {share.percent[1]} % of a best Prilepin's table (1974) allows"
        if largest > of_a_set:
            message = f"A set has {largest} lifts, and {allowed} {of_a_set}."
            yield at(library, drill.id, "dose", CODE, message, "Do fewer in a set, or lower `load_from`.")
        if total > of_all:
            message = f"The dose has {total} lifts, and {allowed} {of_all} in a session."
            yield at(library, drill.id, "dose", CODE, message, "Do fewer rounds, or lower `load_from`.")
