"""How heavy each drill is for a fault that shows from some weight on: near it, not where nothing is wrong."""

from kb.ask.route import Entry
from kb.kit import BARS
from kb.show.heavy import Heavy
from kb.terms import Load, Stage

__all__ = ["from_where_it_shows", "passed_said"]

UP_TO, NEAR = 0.95, 0.8
"""Shares of the weight at which it shows: where the lift stops at first, and where the work begins at least. Common
practice, no source."""

OF_A_BEST = 0.9
"""What the weight at which it shows is taken to be of a best that isn't known. Common practice, no source."""


def passed_said(kg: float) -> str:
    """What a fault that shows from some weight on means for the whole chain."""
    return (
        f"It shows from {kg:g} kg: a stick and a light bar prove nothing. One light round of each drill, to learn it,"
        f" then near its own top weight; the lift from {kg * NEAR:.0f} to {kg * UP_TO:.0f} kg. Past that by"
        " 2.5 kg, in singles, only on a day when all before were to standard; the first that shows it ends the day."
    )


def from_where_it_shows(kg: float, best: float | None, lifts: frozenset[str], heavy: Heavy) -> Heavy:
    """Kilograms near where it shows, for drills whose weight is a share of one of these lifts; else as `heavy` says.

    `best` is the best of the lift, None where it isn't known: then what it shows at is taken to be nine tenths of it.
    """
    base = max(best or 0.0, kg / OF_A_BEST)

    def near(entry: Entry) -> str:
        share, drill = entry.drill.load_from, entry.drill
        bar = any(each.using in BARS for each in entry.gear)
        if (
            share is None
            or share.lift not in lifts
            or not bar
            or entry.load < Load.LIGHT
            or drill.stage < Stage.SEGMENT
        ):
            return heavy(entry)
        if drill.stage is Stage.FINISH:
            return heavy(entry)
        if drill.stage is Stage.WHOLE and entry.load is Load.LIGHT:
            return f"then up to {kg * NEAR:.0f} kg"
        if drill.stage is Stage.WHOLE:
            return f"{kg * NEAR:.0f} kg, up to {kg * UP_TO:.0f} kg, not to where it shows"
        most = min(share.percent[1] / 100 * base, kg * UP_TO)
        least = max(share.percent[0] / 100 * base, most * NEAR)
        return f"then {least:.0f} kg, up to {most:.0f} kg" if entry.work else f"{most:.0f} kg"

    return near
