"""What strengthens for a lift once it is held: finish drills that the room allows and that stand on what is held."""

from collections.abc import Sequence

from kb import dose
from kb.ask.plan.forms import Form
from kb.ask.shelf import Shelf
from kb.dials import at_load, dials_of
from kb.kit import loads
from kb.terms import Catch, ItemId, Load, Speed, Stage

__all__ = ["finishing"]


def finishing(shelf: Shelf, have: frozenset[ItemId], forms: Sequence[Form]) -> tuple[Form, ...]:
    """The finish drills of a lift with what there is, those that take most weight first, each at its most.

    Only those whose prerequisites are among the plan's drills: nothing is loaded whose posture wasn't held.
    """
    held = {form.drill.id for form in forms}
    found: list[Form] = []
    for drill_id, fitted in shelf.fits(have).items():
        drill = shelf.drills[drill_id]
        if drill.stage is not Stage.FINISH or not all(held & set(group) for group in drill.groups):
            continue
        load = loads(drill, fitted, Load.WORKING)[-1]
        found.append(
            Form(
                n=0,
                drill_n=0,
                drill=drill,
                load=load,
                dials=at_load(dials_of(drill, shelf.lift), load, Speed.FULL, Catch.FULL),
                kind="slow",
                exposures=1,
                lighter=None,
                heavier=None,
                new=dose.minutes(dose.work_seconds(drill) + drill.teach_s),
                work=dose.minutes(dose.work_seconds(drill)),
                check=dose.minutes(dose.check_seconds(drill)),
                is_lift=False,
                whole=False,
                needs=(),
                known=True,
                at_home=False,
            )
        )
    found.sort(key=lambda form: (-form.load, form.drill.id))
    return tuple(form._replace(n=len(forms) + at, drill_n=forms[-1].drill_n + 1 + at) for at, form in enumerate(found))
