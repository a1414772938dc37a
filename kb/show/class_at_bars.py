"""Who is at which bar from when, in one table, and what who doesn't lift can do: for the coach's page."""

from collections.abc import Iterator

from kb.ask.class_.slots import ClassPlan, LifterPlan
from kb.kit import BARS, RACK
from kb.show.coach_words import human, listed
from kb.show.session_words import clock

__all__ = ["bars_table", "helpers_said"]


def bars_table(plan: ClassPlan) -> list[tuple[str, str]]:
    """Each bar and who comes to it from when, in that order; for the day's weights, what is on it when they have it."""
    came: dict[str, dict[str, int]] = {}
    kg: dict[str, list[tuple[int, str]]] = {}
    for each in plan.lifters:
        for station, start, loaded in _at_bars(each):
            at = came.setdefault(station, {})
            at[each.lifter.name] = min(start, at.get(each.lifter.name, start))
            if loaded and each.lifter.weight_kg:
                kg.setdefault(station, []).append((start, f"{each.lifter.weight_kg:g} kg ({each.lifter.name})"))
    found = []
    for station in sorted(came, key=lambda name: (name.rstrip("0123456789"), int(name.split()[-1]))):
        since: dict[int, list[str]] = {}
        for name, start in came[station].items():
            since.setdefault(start, []).append(name)
        who = "; ".join(f"{listed(names)} from {clock(start)}" for start, names in sorted(since.items()))
        loads = listed([said for _, said in sorted(kg.get(station, []))])
        found.append((human(station), f"{who}.{f' It goes up to {loads}.' if loads else ''}"))
    return [*found, *_racks(plan)]


def _racks(plan: ClassPlan) -> list[tuple[str, str]]:
    """Who has the racks from when, where they are counted: those who take turns at one bar together."""
    if not any(use.item == RACK and use.peak for use in plan.gear):
        return []
    since: dict[tuple[int, int], list[str]] = {}
    for each in plan.lifters:
        for slot in (*each.slots, *each.strength):
            if slot.racked and slot.part != "loading":
                since.setdefault((slot.start_s, slot.end_s), []).append(each.lifter.name)
    said = (f"{listed(names)}, {clock(start)} to {clock(end)}" for (start, end), names in sorted(since.items()))
    return [("rack", f"{'; '.join(said)}.")]


def _at_bars(each: LifterPlan) -> Iterator[tuple[str, int, bool]]:
    """Each stretch that a lifter has at a numbered bar: where, from when, and whether it is the day's weight."""
    kinds = {str(item) for item in BARS}
    for slot in (*each.slots, *each.strength):
        if slot.station.rstrip("0123456789 ") in kinds and slot.station[-1].isdigit():
            yield slot.station, slot.start_s, slot.part == "work" and slot in each.slots and slot.load.word == "working"
    for more in each.goes_on:
        if more.station.rstrip("0123456789 ") in kinds and more.station[-1].isdigit():
            yield more.station, more.start_s, False


def helpers_said(helpers: int) -> list[str]:
    """What grown-ups who don't lift can do; nothing where there are none. Common practice, no source."""
    if not helpers:
        return []
    rest = " They show and correct nothing, and touch no bar that is lifted."
    if helpers == 1:
        said = "Who helps and doesn't lift keeps the time, calls the changes, reads the standard on the card aloud and"
        return [f"{said} counts the tries that meet it.{rest}"]
    said = (
        "Those who help and don't lift keep the time, call the changes, read the standards on the cards aloud, each at"
    )
    return [f"{said} another bar, and count the tries that meet them.{rest}"]
