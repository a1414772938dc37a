"""What one lifter does, in order, and how long that takes alone: what every way of making a list gives back."""

from collections.abc import Collection, Mapping
from typing import NamedTuple

from kb.ask.class_.people import PLENTY, Class, Lifter
from kb.ask.class_.rotation import TICK_S, Mode, ticks
from kb.ask.class_.turns import loading_seconds, steps_up
from kb.ask.shelf import Shelf
from kb.dose import check_seconds, work_seconds
from kb.kit import BAR, TRAINING_BAR, Gear, fit, gear_at
from kb.terms import Drill, DrillId, ItemId, Load

# fmt: off
__all__ = [
    "PARTNER", "Doing", "Own", "alone_s", "counted", "gear_of", "light_gear_of", "with_bar",
    "with_stick", "with_training_bar",
]
# fmt: on

PARTNER = ItemId("partner")


class Doing(NamedTuple):
    """One drill as one lifter does it. `light_gear` is what is taken where a stick serves for a bar, None where not.

    `deep` says that a bar is caught or lowered into at full depth. `by_stick` is what is taken where it is done with no
    more than a stick after all the rest, None where that is no way of doing it; `by_bar` what is taken for it with each
    kind of bar, where it was done without one; `training_gear` where a training bar serves for a bar, None where not.
    """

    drill: Drill
    load: Load
    work: bool
    gear: tuple[Gear, ...]
    light_gear: tuple[Gear, ...] | None = None
    deep: bool = False
    by_stick: tuple[Gear, ...] | None = None
    by_bar: tuple[tuple[Gear, ...], ...] = ()
    training_gear: tuple[Gear, ...] | None = None

    @property
    def key(self) -> tuple[DrillId, Load]:
        """What makes it the same thing for two lifters."""
        return self.drill.id, self.load

    def gear_in(self, mode: Mode) -> tuple[Gear, ...]:
        """What is taken for it in a mode."""
        if mode.light and self.light_gear is not None:
            return self.light_gear
        return self.training_gear if mode.training and self.training_gear is not None else self.gear


class Own(NamedTuple):
    """A lifter's own list; `knows` are drills that needn't be shown; `later` what is left for another day.

    `today` are the drills of the class's `today` that the list is made for, none where it is for something else; `left`
    are those of them that don't fit, and `left_s` how much longer it would take, s; `further` what comes after them on
    the path, done as there is time. `by_themselves` says that all of it is practice of what is held: no coach is needed
    to run it. `up` is the lift for who works up to a weight, and `after` what strengthens at the end, as there is time:
    what comes first, first. Who is `stiff` mends a fault that a joint makes.
    """

    lifter: Lifter
    doings: tuple[Doing, ...]
    knows: frozenset[DrillId]
    later: int = 0
    today: tuple[DrillId, ...] = ()
    left: tuple[Drill, ...] = ()
    left_s: int = 0
    further: tuple[Drill, ...] = ()
    by_themselves: bool = False
    after: tuple[Doing, ...] = ()
    up: Doing | None = None
    stiff: bool = False


def alone_s(asked: Class, own: Own) -> int:
    """How long a lifter's list takes with nobody else there, s: showings and the bar's loading with it."""
    whole = 0
    for doing in own.doings:
        whole += ticks(work_seconds(doing.drill) if doing.work else check_seconds(doing.drill))
        if doing.load is Load.WORKING:
            steps = len(steps_up(asked.bar_kg, own.lifter.weight_kg or 0.0))
            whole += ticks(loading_seconds(steps, doing.drill.dose, 1))
    drills = {doing.drill.id: doing.drill for doing in own.doings if doing.drill.id not in own.knows}
    return TICK_S * (whole + sum(ticks(drill.teach_s) for drill in drills.values()))


def gear_of(drill: Drill, load: Load, have: frozenset[ItemId], shelf: Shelf) -> tuple[Gear, ...]:
    """What is picked up for a drill at a load with what there is; nothing where it can't be done."""
    fitted = fit(drill, have, shelf.items)
    return gear_at(fitted, load, have, shelf.items) if fitted else ()


def with_stick(own: Own, have: frozenset[ItemId], shelf: Shelf) -> Own:
    """The same list, each of its drills with what is picked up where it is done with a stick."""
    doings = []
    for doing in own.doings:
        can = doing.load > Load.STICK and doing.drill.load[0] <= Load.STICK
        gear = gear_of(doing.drill, Load.STICK, have, shelf) if can else doing.gear
        doings.append(doing._replace(by_stick=gear if gear != doing.gear else None))
    return own._replace(doings=tuple(doings))


def with_bar(own: Own, have: frozenset[ItemId], shelf: Shelf, bars: Collection[ItemId]) -> Own:
    """The same list, each drill done with a stick that may be light with what is taken for it at each bar."""
    doings = []
    for doing in own.doings:
        drill = doing.drill
        found: list[tuple[Gear, ...]] = []
        if doing.load is Load.STICK and drill.load[0] <= Load.STICK and drill.load[1] >= Load.LIGHT:
            for bar in bars:
                there = have.difference(set(bars) - {bar})
                fitted = fit(drill, there, shelf.items) if bar in have else None
                if fitted is not None and fitted.load >= Load.LIGHT:
                    found.append(gear_at(fitted, Load.LIGHT, there, shelf.items))
        using = [gear for gear in found if any(each.using in bars for each in gear)]
        doings.append(doing._replace(by_bar=tuple(using)))
    return own._replace(doings=tuple(doings))


def with_training_bar(own: Own, have: frozenset[ItemId], shelf: Shelf) -> Own:
    """The same list, each drill at a light load with what is taken where a training bar serves for the bar."""
    if TRAINING_BAR not in have or own.lifter.weight_kg is not None:
        return own
    doings = []
    for doing in own.doings:
        found: tuple[Gear, ...] = ()
        if doing.load is Load.LIGHT and any(each.using == BAR for each in doing.gear):
            fitted = fit(doing.drill, have - {BAR}, shelf.items)
            if fitted is not None and fitted.load >= Load.LIGHT:
                found = gear_at(fitted, Load.LIGHT, have - {BAR}, shelf.items)
        doings.append(doing._replace(training_gear=found or None))
    return own._replace(doings=tuple(doings))


def light_gear_of(drill: Drill, load: Load, have: frozenset[ItemId], shelf: Shelf) -> tuple[Gear, ...] | None:
    """What is picked up where a stick serves for a bar: at a light load, if the drill may be done with a stick."""
    if load is not Load.LIGHT or drill.load[0] > Load.STICK or drill.id == shelf.lift.drill:
        return None
    gear = gear_of(drill, Load.STICK, have, shelf)
    return gear if gear != gear_of(drill, load, have, shelf) else None


def counted(gear: tuple[Gear, ...], have: Mapping[ItemId, int]) -> tuple[ItemId, ...]:
    """The things of a drill that are counted in this hall, each once; a partner is a person and not among them."""
    used = dict.fromkeys(each.using for each in gear if each.using != PARTNER)
    return tuple(item for item in used if have.get(item, 0) < PLENTY)
