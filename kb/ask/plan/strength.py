"""Which strengthening comes in which session: the same on the same day of every week, and in each block some new."""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.plan.forms import Form
from kb.ask.plan.weeks import LIGHT_EVERY
from kb.terms import Lift, Load

__all__ = ["MOST_STRENGTHENING", "Day", "strengthening"]

MOST_STRENGTHENING = 4
"""Strengthening drills in a session at most. Common practice, no source."""

MAIN_A_DAY = 2
"""Main ones in a session: of legs, top and pull two by turns, so that two sessions have each once. Common practice, no
source."""


class Day(NamedTuple):
    """A session in which the weight goes up: of `of` such in its `week`, counted from 1, the one at `at`, from 0."""

    week: int
    at: int
    of: int

    @property
    def block(self) -> int:
        """Weeks up to a light one, counted from 0: within them strengthening stays the same, so that it can go up."""
        return (self.week - 1) // LIGHT_EVERY


def strengthening(finish: Sequence[Form], lift: Lift, day: Day) -> list[Form]:
    """What strengthens on a day, in the order in which minutes are given to it.

    Main is what takes working weight in repetitions, by where on the lift it helps: legs (the catch and the dip), top
    (drive, lock-out and rack), pull (all before the catch). Two kinds a day, by turns; of a kind that has its turn
    twice in a week the first comes every week, the others change from block to block. Then one of the rest. Common
    practice, no source.
    """
    kinds = [kind for kind in _mains(finish, lift) if kind]
    a_day = min(MAIN_A_DAY, len(kinds))
    found: list[Form] = []
    for turn in range(day.at * a_day, (day.at + 1) * a_day):
        kind, before = turn % len(kinds), turn // len(kinds)
        in_week = sum(each % len(kinds) == kind for each in range(day.of * a_day))
        found.append(_chosen(kinds[kind], before, in_week, day.block))
    rest = [form for form in finish if not _is_main(form)]
    more = [rest[(day.block + 2 * day.at + turn) % len(rest)] for turn in range(min(len(rest), 2))]
    return list({form.n: form for form in [*found, *more]}.values())[:MOST_STRENGTHENING]


def _chosen(kind: Sequence[Form], before: int, in_week: int, block: int) -> Form:
    """Of a kind the one whose turn it is, after `before` of `in_week` in this week."""
    if in_week == 1:
        return kind[block % min(len(kind), 2)]
    others = kind[1:] or kind
    return kind[0] if before == 0 else others[(block + before - 1) % len(others)]


def _is_main(form: Form) -> bool:
    return form.load is Load.WORKING and form.drill.dose.reps > 0


def _mains(finish: Sequence[Form], lift: Lift) -> tuple[list[Form], list[Form], list[Form]]:
    """The main ones: legs, top, pull; those first whose place on the lift comes first, and of these what takes most."""
    places = {timed.position: timed.at for timed in lift.timeline}
    legs: list[Form] = []
    top: list[Form] = []
    pull: list[Form] = []
    for form in finish:
        if not _is_main(form):
            continue
        at = [places[each] for each in form.drill.target_position.values() if each in places]
        if any(point in ("receive", "dip") for point in at):
            legs.append(form)
        elif any(point in ("rack", "drive", "split", "recovered", "stand") for point in at):
            top.append(form)
        else:
            pull.append(form)
    order = [timed.at for timed in lift.timeline]

    def key(form: Form) -> tuple[int, int, str]:
        at = [order.index(places[each]) for each in form.drill.target_position.values() if each in places]
        share = form.drill.load_from.percent[1] if form.drill.load_from else 0
        return min(at, default=0), -share, form.drill.id

    return sorted(legs, key=key), sorted(top, key=key), sorted(pull, key=key)
