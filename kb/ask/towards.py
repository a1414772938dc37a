"""Where a kit doesn't lead to the lift: the path as far as it goes."""

from collections.abc import Mapping
from typing import NamedTuple

from kb.ask.path import Order, Path, closure, path
from kb.ask.shelf import Shelf
from kb.dose import work_seconds
from kb.errors import NoAnswer
from kb.kit import Fit, Gear, gear_at, loads, missing
from kb.terms import Drill, DrillId, ItemId, Load

__all__ = ["Toward", "towards"]


class Toward(NamedTuple):
    """One drill of the way, as heavy as the path begins it if the kit gives that; what is picked up; its time, s."""

    drill: Drill
    load: Load
    gear: tuple[Gear, ...]
    seconds: int


def towards(
    shelf: Shelf, *, have: frozenset[ItemId], holds: frozenset[DrillId] = frozenset(), order: Order = "either"
) -> tuple[Toward, ...]:
    """What a kit that doesn't lead to the lift allows of the way there, in order; nothing where it allows none of it.

    It is the path with what the lift lacks (else with all there is), less what this kit can't do. What is left keeps
    every prerequisite: where the path's own choice of several falls out, the gentlest that can be done takes its place.
    """
    whole = _whole(shelf, have, holds, order)
    if whole is None:
        return ()
    fits = shelf.fits(have)
    rounds = closure(shelf, fits, holds)
    found: dict[DrillId, Load] = {}
    for entry in whole.entries:
        if entry.drill.id in rounds and entry.drill.id not in holds:
            _add(shelf, fits, rounds, holds, found, entry.drill.id, entry.load)
    return tuple(
        Toward(
            shelf.drills[each],
            load,
            gear_at(fits[each], load, have, shelf.items),
            work_seconds(shelf.drills[each]),
        )
        for each, load in found.items()
    )


def _whole(shelf: Shelf, have: frozenset[ItemId], holds: frozenset[DrillId], order: Order) -> Path | None:
    lacking = have | set(missing(shelf.drills[shelf.lift.drill], have, shelf.items))
    for room in (lacking, have | set(shelf.items)):
        try:
            return path(shelf, have=room, holds=holds, order=order)
        except NoAnswer:
            continue
    return None


def _add(
    shelf: Shelf,
    fits: Mapping[DrillId, Fit],
    rounds: Mapping[DrillId, int],
    holds: frozenset[DrillId],
    found: dict[DrillId, Load],
    drill_id: DrillId,
    limit: Load,
) -> None:
    """A drill, after what must come before it: of several what can be done soonest, then the gentlest."""
    drill = shelf.drills[drill_id]
    for group in drill.groups:
        if any(member in found or member in holds for member in group):
            continue
        before = [m for m in group if rounds.get(m, len(rounds) + 1) < rounds[drill_id]]
        first = min(before, key=lambda m: (rounds[m], shelf.drills[m].stage, shelf.drills[m].load[0], m))
        _add(shelf, fits, rounds, holds, found, first, Load.LIGHT)
    if drill_id not in found:
        able = loads(drill, fits[drill_id], limit)
        found[drill_id] = able[-1] if able else drill.load[0]
