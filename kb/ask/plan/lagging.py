"""The part of a lift that lags behind: a heavy day a week near what it fails at, an easier one, and their sets.

Every number here is common practice, no source.
"""

from typing import NamedTuple

from kb.ask.plan.finishing import beside_path
from kb.ask.plan.forms import Form
from kb.ask.plan.kilograms import rounded
from kb.ask.plan.rise import Rise
from kb.ask.shelf import Shelf
from kb.terms import Catch, Load, Stage

__all__ = ["BACK", "HEAVY", "OTHER", "REST_S", "SETS", "Lagging", "heavy_days", "lagging", "weak_kg", "weak_sets"]

HEAVY = (0.89, 0.97)
"""From which share of what the lift should go by then the part's heavy day rises, and to which."""

OTHER = 0.82
"""The same on the part's other days."""

BACK = 1.0
"""By how many kilograms at least the first heavy day after a light week, or one away, stays below the last."""

SETS = ((0.90, 3, 3), (0.94, 4, 2), (1.0, 5, 1))
"""Up to which share of what the lift should go by then: rounds, and repetitions in each. Triples, doubles, singles."""

REST_S = 120
"""Rest between the sets of a heavy day, s."""


class Lagging(NamedTuple):
    """The part as its entry has it (`form`), and on heavy days: in triples, doubles and singles, as in `SETS`.

    Only a lift by itself, at working weight, has heavy sets of its own: `sets` is empty for any other, which keeps to
    its entry.
    """

    form: Form
    sets: tuple[Form, ...] = ()

    @property
    def longest(self) -> int:
        """Minutes that it takes at most."""
        return max(form.work for form in (self.form, *self.sets))

    def numbered(self, like: Form) -> "Lagging":
        """The same with another form's place in the plan's list."""
        own = [form._replace(n=like.n, drill_n=like.drill_n) for form in (self.form, *self.sets)]
        return Lagging(own[0], tuple(own[1:]))


def lagging(shelf: Shelf, form: Form) -> Lagging:
    """A part that lags behind, with its heavy sets if it can be taken as a lift by itself."""
    drill = form.drill
    if drill.stage is not Stage.WHOLE or form.load is not Load.WORKING or drill.catch is Catch.NONE:
        return Lagging(form)
    found = []
    for _, rounds, reps in SETS:
        own = drill.dose._replace(rounds=rounds, reps=reps, rest_s=max(drill.dose.rest_s, REST_S))
        found.append(beside_path(shelf, drill._replace(dose=own), form.load))
    return Lagging(form, tuple(found))


def heavy_days(rise: Rise) -> dict[int, float]:
    """What the part weighs on its heavy days, kg: the first session of each week before that of the day.

    It rises from week to week by its share of what should go, and with that. No two heavy days running weigh the same:
    it goes a kilogram up instead, or down if that were above its share. After a week without one it begins lower. Empty
    without a wish.
    """
    days = [own[0] for own in rise.days_of_weeks().values()]
    if rise.begin is None:
        return {}
    found: dict[int, float] = {}
    for at, n in enumerate(days):
        goes = rise.goes(n) or 0.0
        share = HEAVY[0] + (HEAVY[1] - HEAVY[0]) * at / max(len(days) - 1, 1)
        kg, most = rounded(rise.goal, share * goes), rounded(rise.goal, HEAVY[1] * goes)
        if found:
            before, last = next(reversed(found.items()))
            if rise.weeks.week(n) > rise.weeks.week(before) + 1:
                kg = min(kg, last - BACK)
            elif kg <= last:
                kg = last + 1 if last + 1 <= most else last - 1
        found[n] = max(kg, rise.goal.bar_kg)
    return found


def weak_kg(rise: Rise, n: int, most: float) -> float | None:
    """What the part weighs in the loaded session `n`, kg; no more than the share `most` of what should go by then."""
    goes = rise.goes(n)
    if goes is None:
        return None
    heavy = heavy_days(rise).get(n)
    return min(rounded(rise.goal, most * goes), heavy if heavy is not None else rounded(rise.goal, OTHER * goes))


def weak_sets(found: Lagging, rise: Rise, n: int, kg: float | None) -> Form:
    """The part in the sets of session `n`: heavy ones on a heavy day of a lift by itself, else as its entry has it."""
    goes = rise.goes(n)
    if not found.sets or kg is None or not goes or n not in heavy_days(rise):
        return found.form
    return next(form for (share, _, _), form in zip(SETS, found.sets, strict=True) if kg <= share * goes)
