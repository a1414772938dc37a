"""Weeks in which the lifter is away: none of the plan's sessions, and what can be done there."""

from collections.abc import Sequence
from itertools import zip_longest
from typing import NamedTuple

from kb.ask.plan.finishing import finishing
from kb.ask.plan.forms import Form
from kb.ask.shelf import Shelf
from kb.dials import dials_of
from kb.kit import loads
from kb.terms import Catch, Drill, DrillId, ItemId, Load, Speed, Stage

__all__ = ["AWAY_FINISH", "AWAY_KNOWN", "Away", "first", "there", "unloaded"]

AWAY_FINISH, AWAY_KNOWN = 4, 3
"""What strengthens, and drills of the plan, named for a week away at most. Common practice, no source."""


class Away(NamedTuple):
    """Weeks without sessions, counted from 1 as the plan's, and what there is to `have` in them."""

    weeks: tuple[int, ...]
    have: frozenset[ItemId] = frozenset()


def there(shelf: Shelf, away: Away, forms: Sequence[Form]) -> tuple[Form, ...]:
    """What of a lift can be done with what there is in a week away: what strengthens, then drills of the plan itself.

    What strengthens keeps the legs and the back: the legs first, then a press or a hinge, then a carry or a hold, and
    round again. The drills nearest to the lift keep the movement; of them nothing that wasn't in the plan, that opens
    joints, or that is quick with a stand-in that doesn't move as a bar does.
    """
    found: list[Form] = []
    for form in reversed(forms):
        fitted = shelf.fits(away.have).get(form.drill.id)
        if fitted is None or form.drill.stage is Stage.PREPARE or fitted.catch < form.drill.catch:
            continue
        able, as_it_is = loads(form.drill, fitted, Load.STICK), all(gear.using == gear.item for gear in fitted.gear)
        if able and (as_it_is or form.drill.speed < Speed.FULL) and form.drill.id not in {it.drill.id for it in found}:
            dials = dials_of(form.drill, shelf.lift)
            found.append(form._replace(load=able[-1], dials=dials, lighter=None, heavier=None))
    finish = finishing(shelf, away.have, {form.drill.id for form in forms} | unloaded(shelf, away))
    return (*_strengthening(finish)[:AWAY_FINISH], *found[:AWAY_KNOWN])


def unloaded(shelf: Shelf, away: Away) -> frozenset[DrillId]:
    """The drills that can be done there with empty hands: what strengthens may stand on them, once each is held."""
    fits = shelf.fits(away.have)
    return frozenset(drill for drill in fits if shelf.drills[drill].load[0] is Load.NONE)


def first(shelf: Shelf, away: Away, form: Form, forms: Sequence[Form]) -> tuple[Drill, ...]:
    """What a drill that strengthens stands on and the plan hasn't: to be shown without weight first."""
    known, empty = {it.drill.id for it in forms}, unloaded(shelf, away)
    owed = [group for group in form.drill.groups if not known & set(group)]
    return tuple(shelf.drills[next(each for each in group if each in empty)] for group in owed if empty & set(group))


def _strengthening(finish: Sequence[Form]) -> list[Form]:
    """What strengthens, one of each group in turn: legs, presses and hinges, carries and holds."""
    groups: tuple[list[Form], ...] = ([], [], [])
    for form in finish:
        held = not form.drill.dose.reps
        groups[2 if held else 0 if form.drill.catch >= Catch.POWER else 1].append(form)
    return [form for turn in zip_longest(*groups) for form in turn if form is not None]
