"""How heavy each drill is for a fault that shows from some weight on: near it, not where nothing is wrong."""

import math
from collections.abc import Mapping

from kb.ask.route import Entry
from kb.bests import SHARE_OF_REPS
from kb.show.heavy import Heavy, with_bar
from kb.terms import Catch, Drill, Lift, Load, Stage

__all__ = ["KG", "from_where_it_shows", "passed_said", "top_of"]

UP_TO, NEAR = 0.95, 0.8
"""Shares of the weight at which it shows: where the lift stops at first, and where the work begins at least. Common
practice, no source."""

HEAVY = 60
"""A drill whose own top is so many per cent of a best is done near where it shows: where the bar is caught or pressed
to `NEAR` of it, where it is only pulled, dipped with or driven to `UP_TO`. Common practice, no source."""

KG = " kg"
"""What weights are told in where nothing else is said."""

MORE = 1.25
"""And where it is caught, to no more than so many times its own top. Common practice, no source."""

OF_THE_BEST = 0.9
"""The most that is done of a best that is known, in sets of two or three. Common practice, no source."""

OF_A_BEST = 0.9
"""What the weight at which it shows is taken to be of a best that isn't known. Common practice, no source."""


def top_of(kg: float, best: float | None) -> float:
    """The most that the lift is done with at first, kg: short of where it shows, and of what only a best is."""
    return kg * UP_TO if best is None else min(kg * UP_TO, best * OF_THE_BEST)


def passed_said(kg: float, best: float | None, heaviest: float = math.inf, unit: str = KG) -> str:
    """What a fault that shows from some weight on means for the whole chain; `best` of the lift, kg, if known.

    `heaviest` is all that there is to lift, kg. In another `unit` all of them are in that.
    """
    if heaviest < kg:
        return _too_little(kg, heaviest)
    top = top_of(kg, best)
    return (
        f"It shows from {kg:g}{unit}: a stick and a light bar prove nothing. One light round of each drill, to learn"
        f" it, then by steps to near its own top weight; the lift from {top * NEAR / UP_TO:.0f} to {top:.0f}{unit}."
        " Past that by 2.5 kg, in singles, only on a day when all before were to standard; the first that shows it ends"
        " the heavy ones."
    )


def _too_little(kg: float, heaviest: float) -> str:
    return (
        f"It shows from {kg:g} kg, and {heaviest:g} kg is all there is: the drills make the right way a habit, but"
        " whether the fault is gone shows only where there is more. Slower, held longer, a set or two more: that may"
        " make up for some of it."
    )


def _range(least: float, most: float, bar: float, unit: str = KG) -> str:
    """From the one to the other, and neither less than the bar."""
    if most < bar:
        return f"no more than {most:.0f}{unit}: a lighter bar, or a stick"
    least = max(bar, least)
    if round(least) == round(most):
        return f"{most:.0f}{unit}"
    return f"{least:.0f}{unit}, up to {most:.0f}{unit}" if unit == KG else f"{least:.0f} to {most:.0f}{unit}"


def _pulled(entry: Entry) -> bool:
    """Whether it is a pull near the whole weight, without a catch, of which another lift's best says the share."""
    share = entry.drill.load_from
    return share is not None and share.percent[1] >= HEAVY and entry.drill.catch is Catch.NONE


def _own(drill: Drill, bests: Mapping[str, float]) -> float:
    """What leaves two good repetitions in hand by the best of the drill itself, kg; nothing where that isn't known."""
    return bests.get(drill.id, 0.0) * SHARE_OF_REPS.get(drill.dose.reps + 2, 0) / 100


def from_where_it_shows(
    kg: float, lift: Lift, bests: Mapping[str, float], heavy: Heavy, bar_kg: float, unit: str = KG
) -> Heavy:
    """Kilograms near where it shows, for drills whose weight is a share of the lift or its parts; else as `heavy` says.

    `bests` are those that were told, kg, by id of a lift or drill; where the lift's isn't among them, what it shows at
    is taken to be nine tenths of it. In another `unit` all of them are in that.
    """
    best, lifts = bests.get(lift.id), {lift.id, *lift.parts}
    top = top_of(kg, best)
    base = kg / OF_A_BEST if best is None else max(best, kg)

    def near(entry: Entry) -> str:
        share, drill = entry.drill.load_from, entry.drill
        if not with_bar(entry) or entry.load < Load.LIGHT or not Stage.SEGMENT <= drill.stage < Stage.FINISH:
            return heavy(entry)
        if share is None and drill.catch is Catch.NONE:
            return f"then by steps to {_range(kg * NEAR, kg * NEAR, bar_kg, unit)}"
        if share is None or (share.lift not in lifts and not _pulled(entry)):
            return heavy(entry)
        if drill.stage is Stage.WHOLE and entry.load is Load.LIGHT:
            least = top * NEAR / UP_TO
            return "then up to " + _range(least, least, bar_kg, unit).removeprefix("no more than ")
        if drill.stage is Stage.WHOLE:
            return f"{_range(top * NEAR / UP_TO, top, bar_kg, unit)}, not to where it shows"
        most = share.percent[1] / 100 * base if share.lift in lifts else 0.0
        if _pulled(entry):
            most = max(most, kg * UP_TO)
        elif share.percent[1] >= HEAVY and drill.stage is Stage.JOIN:
            most = max(most, min(kg * NEAR, most * MORE))
        most = min(max(most, _own(drill, bests)), top)
        least = most * NEAR
        said = _range(least if entry.work else most, most, bar_kg, unit)
        return said if most < bar_kg else f"then {said}" if entry.work else f"then by steps to {said}"

    return near
