"""The parts of a lift at weight, beside it: its halves and what is nearest to it, with a share of what should go."""

from collections.abc import Collection, Sequence

from kb.ask.plan.finishing import beside_path
from kb.ask.plan.forms import Form
from kb.ask.shelf import Shelf
from kb.errors import BadInput
from kb.kit import Fit, loads
from kb.terms import Catch, Drill, DrillId, ItemId, Lift, Load, Speed, Stage

__all__ = ["MOST_OF_IT", "NEAR", "is_part", "is_squat", "part_form", "parts_of", "share_of", "weak_part"]

NEAR, NEAR_SQUAT = 65, 50
"""From which share of a best, per cent, at its most, a drill at full speed, or a squat in the lift's own hold, is near
enough to the lift to be trained for it. Common practice, no source."""

MOST_OF_IT = 0.8
"""The share of what should go by then that a part with a catch, or a squat, takes at most: it is for how it is done.
Common practice, no source."""

SNATCH_OF_CLEAN = 0.8
"""What a snatch goes to, of a clean: for a pull whose load is said as a share of the clean. Common practice, no
source."""


def share_of(drill: Drill, lift: Lift, *, weak: bool = False) -> float | None:
    """What a part weighs, as a share of what the lift should go by then; None where its entry has no share of a lift.

    The most that its entry has, no more than `MOST_OF_IT`, or than the lift itself for a pull or for what lags behind:
    that is trained near what it fails at, and a lift by itself (`Stage.WHOLE`) whatever its entry, which is for who
    learns it.
    """
    if drill.load_from is None:
        return None
    most = drill.load_from.percent[1] / 100
    own = {lift.id, *lift.parts}
    if drill.load_from.lift not in own:
        most /= SNATCH_OF_CLEAN
    if weak:
        return 1.0 if drill.stage is Stage.WHOLE and drill.load[1] is Load.WORKING else min(most, 1.0)
    return min(most, 1.0 if drill.catch is Catch.NONE else MOST_OF_IT)


def is_part(drill: Drill) -> bool:
    """Whether a drill is a part of its lift to be trained at weight: at full speed, or the squat that it has in it."""
    if drill.load_from is None or drill.stage in (Stage.PREPARE, Stage.FINISH):
        return False
    most = drill.load_from.percent[1]
    return most >= NEAR if drill.speed is Speed.FULL else is_squat(drill) and most >= NEAR_SQUAT


def weak_part(shelf: Shelf, have: frozenset[ItemId], forms: Sequence[Form], weak: DrillId, *, held: bool) -> Form:
    """The part that lags behind, at weight.

    Raises BadInput, with the parts that there are, for what is none, stands on what isn't held, or gets no weight here.
    """
    main, others = parts_of(shelf, have, forms, held=held)
    nearest = tuple(form.drill.id for form in [*main, *others])[:3]
    drill, name = shelf.drills.get(weak), shelf.lift.name.lower()
    if drill is None or drill.id == shelf.lift.drill or drill.stage in (Stage.PREPARE, Stage.FINISH):
        raise BadInput(f"{weak} is no part of the {name} that could lag behind it", nearest=nearest)
    known = {form.drill.id for form in forms if held or form.load >= Load.LIGHT}
    if drill.load_from is None or not _standing([drill], known) or (not held and drill.id not in known):
        raise BadInput(f"{drill.name} is no part of the {name} that this plan has at a weight", nearest=nearest)
    form = part_form(shelf, have, drill)
    if form is None:
        raise BadInput(f"{drill.name} gets no weight with what there is", nearest=nearest)
    return form


def is_squat(drill: Drill) -> bool:
    """Whether a part is the lift's squat alone: it stands after the lift, for the legs are wanted fresh for that."""
    return drill.stage is Stage.SEGMENT and drill.speed is Speed.SLOW and drill.catch is Catch.FULL


def part_form(shelf: Shelf, have: frozenset[ItemId], drill: Drill) -> Form | None:
    """A drill at the most it is done at; None where this gear, or the drill, makes no weight of it, or less of it."""
    fitted: Fit | None = shelf.fits(have).get(drill.id)
    if fitted is None or fitted.speed < drill.speed or fitted.catch < drill.catch:
        return None
    able = loads(drill, fitted, Load.WORKING)
    return beside_path(shelf, drill, able[-1]) if able and able[-1] >= Load.LIGHT else None


def parts_of(
    shelf: Shelf, have: frozenset[ItemId], forms: Sequence[Form], *, held: bool
) -> tuple[tuple[Form, ...], tuple[Form, ...]]:
    """The main parts of a lift at weight, and the others, the heaviest first.

    Main are lifts that are part of it, else the nearest to it, then its squat. Who learnt the lift by the plan (not
    `held`) has only what the plan has at a weight; who holds it, whatever stands on what the path leads through.
    """
    known = {form.drill.id for form in forms if held or form.load >= Load.LIGHT}
    near = [drill for drill in shelf.drills.values() if is_part(drill) and drill.id != shelf.lift.drill]
    found: dict[DrillId, Form] = {}
    for drill in _standing(near, known) if held else [drill for drill in near if drill.id in known]:
        form = part_form(shelf, have, drill)
        if form is not None:
            found[drill.id] = form
    ordered = sorted(found.values(), key=_first)
    lifts = [form for form in ordered if form.drill.stage is Stage.WHOLE and form.load is Load.WORKING]
    quick = [form for form in ordered if form.drill.catch is not Catch.NONE and not is_squat(form.drill)]
    main = [*(lifts or quick[:1]), *[form for form in ordered if is_squat(form.drill)][:1]]
    others = [form for form in ordered if form not in main and not is_squat(form.drill)]
    return tuple(main), tuple(others)


def _first(form: Form) -> tuple[int, int, int, str]:
    """Order of parts: the most weight, most of the lift, then what needs the least gear."""
    most = form.drill.load_from.percent[1] if form.drill.load_from else 0
    return -most, -form.drill.stage, len(form.drill.equipment), form.drill.id


def _standing(near: Sequence[Drill], known: Collection[DrillId]) -> list[Drill]:
    """Of some drills those that are known, or that stand on what is, each other among it."""
    found: list[Drill] = []
    had, more = set(known), True
    while more:
        new = [
            drill
            for drill in near
            if drill not in found and (drill.id in had or all(had & set(group) for group in drill.groups))
        ]
        found += new
        had |= {drill.id for drill in new}
        more = bool(new)
    return found
