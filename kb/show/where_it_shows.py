"""How heavy each drill is for a fault that shows from some weight on: near it, not where nothing is wrong."""

from kb.ask.route import Entry
from kb.kit import BARS
from kb.show.heavy import Heavy
from kb.terms import Catch, Load, Stage

__all__ = ["from_where_it_shows", "passed_said"]

UP_TO, NEAR = 0.95, 0.8
"""Shares of the weight at which it shows: where the lift stops at first, and where the work begins at least. Common
practice, no source."""

HEAVY, JOINED, PULLED = 60, 0.85, 0.95
"""A drill whose own top is so many per cent of a best is done near where it shows: to these shares of it where the bar
is caught or pressed, and where it is only pulled, dipped with or driven. Common practice, no source."""

OF_A_BEST = 0.9
"""What the weight at which it shows is taken to be of a best that isn't known. Common practice, no source."""


def passed_said(kg: float) -> str:
    """What a fault that shows from some weight on means for the whole chain."""
    return (
        f"It shows from {kg:g} kg: a stick and a light bar prove nothing. One light round of each drill, to learn it,"
        f" then near its own top weight; the lift from {kg * NEAR:.0f} to {kg * UP_TO:.0f} kg. Past that by"
        " 2.5 kg, in singles, only on a day when all before were to standard; the first that shows it ends the day."
    )


def _range(least: float, most: float, bar: float) -> str:
    """From the one to the other, and neither less than the bar."""
    if most < bar:
        return f"no more than {most:.0f} kg: a lighter bar, or a stick"
    least = max(bar, least)
    return f"{most:.0f} kg" if round(least) == round(most) else f"{least:.0f} kg, up to {most:.0f} kg"


def _pulled(entry: Entry) -> bool:
    """Whether it is a pull near the whole weight, without a catch, of which another lift's best says the share."""
    share = entry.drill.load_from
    return share is not None and share.percent[1] >= HEAVY and entry.drill.catch is Catch.NONE


def from_where_it_shows(kg: float, best: float | None, lifts: frozenset[str], heavy: Heavy, bar_kg: float) -> Heavy:
    """Kilograms near where it shows, for drills whose weight is a share of one of these lifts; else as `heavy` says.

    `best` is the best of the lift, None where it isn't known: then what it shows at is taken to be nine tenths of it.
    """
    base = kg / OF_A_BEST if best is None else max(best, kg)

    def near(entry: Entry) -> str:
        share, drill = entry.drill.load_from, entry.drill
        bar = any(each.using in BARS for each in entry.gear)
        if (
            share is None
            or (share.lift not in lifts and not _pulled(entry))
            or not bar
            or entry.load < Load.LIGHT
            or drill.stage < Stage.SEGMENT
        ):
            return heavy(entry)
        if drill.stage is Stage.FINISH:
            return heavy(entry)
        if drill.stage is Stage.WHOLE and entry.load is Load.LIGHT:
            return "then up to " + _range(kg * NEAR, kg * NEAR, bar_kg).removeprefix("no more than ")
        if drill.stage is Stage.WHOLE:
            return f"{_range(kg * NEAR, kg * UP_TO, bar_kg)}, not to where it shows"
        most = share.percent[1] / 100 * base if share.lift in lifts else 0.0
        if share.percent[1] >= HEAVY:
            most = max(most, kg * (JOINED if drill.stage is Stage.JOIN else PULLED))
        most = min(most, kg * UP_TO)
        least = most * NEAR
        said = _range(least if entry.work else most, most, bar_kg)
        return said if most < bar_kg else f"then {said}"

    return near
