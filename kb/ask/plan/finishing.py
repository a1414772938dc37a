"""What strengthens for a lift once it is held: finish drills that the room allows and that stand on what is held."""

from collections.abc import Collection

from kb import dose
from kb.ask.plan.forms import WORK_UP_S, Form
from kb.ask.shelf import Shelf
from kb.dials import at_load, dials_of
from kb.kit import loads
from kb.terms import Catch, Drill, DrillId, ItemId, Load, Speed, Stage

__all__ = ["beside_path", "finishing"]


def finishing(shelf: Shelf, have: frozenset[ItemId], held: Collection[DrillId]) -> tuple[Form, ...]:
    """The finish drills of a lift with what there is, those that take most weight first, each at its most.

    They are numbered by who puts them beside the path. Only those whose prerequisites are among `held`:
    nothing is loaded whose posture wasn't held.
    """
    there = frozenset(held)
    found: list[Form] = []
    for drill_id, fitted in shelf.fits(have).items():
        drill = shelf.drills[drill_id]
        if drill.stage is not Stage.FINISH or not all(there & set(group) for group in drill.groups):
            continue
        load = loads(drill, fitted, Load.WORKING)[-1]
        found.append(beside_path(shelf, drill, load))
    found.sort(key=lambda form: (-form.load, form.drill.id))
    return tuple(found)


def beside_path(shelf: Shelf, drill: Drill, load: Load) -> Form:
    """A drill that stands beside the path, at one load; its place in the plan's list is still to be set.

    Working up to a weight takes its minutes but for what strengthens, whose rounds are slow and begin light.
    """
    work_up = 0 if drill.stage is Stage.FINISH else WORK_UP_S.get(load, 0)
    return Form(
        n=0,
        drill_n=0,
        drill=drill,
        load=load,
        dials=at_load(dials_of(drill, shelf.lift), load, Speed.FULL, Catch.FULL),
        kind="slow",
        exposures=1,
        lighter=None,
        heavier=None,
        new=dose.minutes(dose.work_seconds(drill) + drill.teach_s + work_up),
        work=dose.minutes(dose.work_seconds(drill) + work_up),
        check=dose.minutes(dose.check_seconds(drill) + work_up),
        is_lift=False,
        whole=False,
        needs=(),
        known=True,
        at_home=False,
    )
