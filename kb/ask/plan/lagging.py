"""The part of a lift that lags behind: a heavy day a week near what it fails at, an easier one, and their sets.

Every number here is common practice, no source.
"""

from typing import NamedTuple

from kb.ask.plan.finishing import beside_path
from kb.ask.plan.forms import Form
from kb.ask.plan.kilograms import rounded
from kb.ask.plan.rise import Rise
from kb.ask.shelf import Shelf
from kb.terms import Catch, Drill, ItemId, Load, Stage

__all__ = [
    "BACK",
    "FROM_A_CLEAN",
    "HEAVY",
    "OTHER",
    "REST_S",
    "SETS",
    "Lagging",
    "heavy_days",
    "lagging",
    "weak_kg",
    "weak_sets",
]

HEAVY = (0.89, 0.97)
"""From which share of what the lift should go by then the part's heavy day rises, and to which."""

FROM_A_CLEAN = 0.93
"""To which share it rises where the part can't be taken without the rest, as a jerk without a rack or blocks: then the
rest comes before it once in each set, and near the most that would be the whole lift once more."""

STANDS = frozenset(map(ItemId, ("rack", "blocks")))
"""What holds a bar for a part that begins where the rest has brought it."""

OTHER = 0.82
"""The same on the part's other days."""

BACK = 1.0
"""By how many kilograms at least the first heavy day after a week away stays below the last."""

SETS = ((0.90, 3, 3), (0.94, 4, 2), (1.0, 5, 1))
"""Up to which share of what the lift should go by then: rounds, and repetitions in each. Triples, doubles, singles."""

REST_S = 120
"""Rest between the sets of a heavy day, s."""


class Lagging(NamedTuple):
    """The part as its entry has it (`form`), and on heavy days: in triples, doubles and singles, as in `SETS`.

    Only a lift by itself, at working weight, has heavy sets of its own: `sets` is empty for any other, which keeps to
    its entry. The heavy day rises to `most`, a share of what the lift should go by then; `after` names what comes
    before the part in each set, where nothing holds the bar for it.
    """

    form: Form
    sets: tuple[Form, ...] = ()
    most: float = HEAVY[1]
    after: str | None = None

    @property
    def longest(self) -> int:
        """Minutes that it takes at most."""
        return max(form.work for form in (self.form, *self.sets))

    def numbered(self, like: Form) -> "Lagging":
        """The same with another form's place in the plan's list."""
        own = [form._replace(n=like.n, drill_n=like.drill_n) for form in (self.form, *self.sets)]
        return self._replace(form=own[0], sets=tuple(own[1:]))


def _after(shelf: Shelf, drill: Drill, have: frozenset[ItemId]) -> str | None:
    """What must bring the bar to where a part begins: the part of the lift before it, where nothing there holds one."""
    own = next((part for part in shelf.lift.parts if part in drill.reach), None)
    if own is None or own == shelf.lift.parts[0] or STANDS & have:
        return None
    return shelf.lift.parts[shelf.lift.parts.index(own) - 1]


def lagging(shelf: Shelf, form: Form, have: frozenset[ItemId]) -> Lagging:
    """A part that lags behind, with its heavy sets if it can be taken as a lift by itself, with what there is."""
    after = _after(shelf, form.drill, have)
    drill = form.drill._replace(name=f"{form.drill.name} after one {after}") if after else form.drill
    form = form._replace(drill=drill)
    if drill.stage is not Stage.WHOLE or form.load is not Load.WORKING or drill.catch is Catch.NONE:
        return Lagging(form, after=after)
    found = []
    for _, rounds, reps in SETS:
        own = drill.dose._replace(rounds=rounds, reps=reps, rest_s=max(drill.dose.rest_s, REST_S))
        found.append(beside_path(shelf, drill._replace(dose=own), form.load))
    return Lagging(form, tuple(found), FROM_A_CLEAN if after else HEAVY[1], after)


def heavy_days(rise: Rise, top: float = HEAVY[1]) -> dict[int, float]:
    """What the part weighs on its heavy days, kg: the first session of each week before that of the day.

    It rises from week to week by its share of what should go, to `top`, and with that. No two heavy days running weigh
    the same: it goes a kilogram up instead, or down if that were above its share. After a week away it begins
    lower. Empty without a wish.
    """
    days = [own[0] for own in rise.days_of_weeks().values()]
    if rise.begin is None:
        return {}
    found: dict[int, float] = {}
    for at, n in enumerate(days):
        goes = rise.goes(n) or 0.0
        share = HEAVY[0] + (top - HEAVY[0]) * at / max(len(days) - 1, 1)
        kg, most = rounded(rise.goal, share * goes), rounded(rise.goal, top * goes)
        if found:
            before, last = next(reversed(found.items()))
            if any(rise.weeks.week(before) < week < rise.weeks.week(n) for week in rise.weeks.away):
                kg = min(kg, last - BACK)
            elif kg <= last:
                kg = last + 1 if last + 1 <= most else last - 1
        found[n] = max(kg, rise.goal.bar_kg)
    return found


def weak_kg(found: Lagging, rise: Rise, n: int, most: float) -> float | None:
    """What the part weighs in the loaded session `n`, kg; no more than the share `most` of what should go by then."""
    goes = rise.goes(n)
    if goes is None:
        return None
    heavy = heavy_days(rise, found.most).get(n)
    return min(rounded(rise.goal, most * goes), heavy if heavy is not None else rounded(rise.goal, OTHER * goes))


def weak_sets(found: Lagging, rise: Rise, n: int, kg: float | None) -> Form:
    """The part in the sets of session `n`: heavy ones on a heavy day of a lift by itself, else as its entry has it."""
    goes = rise.goes(n)
    if not found.sets or kg is None or not goes or n not in heavy_days(rise):
        return found.form
    return next(form for (share, _, _), form in zip(SETS, found.sets, strict=True) if kg <= share * goes)
