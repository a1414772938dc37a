"""What stands beside a path's drills in a plan, with its place in the plan's list."""

from collections.abc import Callable, Sequence

from kb.ask.plan.beside import Beside
from kb.ask.plan.block import LIMITS, SQUAT, Limits, family
from kb.ask.plan.finishing import finishing
from kb.ask.plan.forms import Form
from kb.ask.plan.lagging import Lagging, lagging
from kb.ask.plan.parts import parts_of, weak_part
from kb.ask.plan.weeks import warm_up
from kb.ask.shelf import Shelf
from kb.errors import BadInput, NoAnswer
from kb.terms import DrillId, ItemId

__all__ = ["beside_of"]


def beside_of(
    shelf: Shelf,
    have: frozenset[ItemId],
    forms: Sequence[Form],
    minutes: int,
    *,
    held: bool,
    weak: DrillId | None = None,
    limits: Limits = LIMITS,
    part: Callable[[int], int] = int,
) -> Beside:
    """What can stand beside the lift once it is held, numbered after the path's own drills.

    `part` says which part of a session's minutes for drills is the lift's: all of them, but beside a second one.
    A `weak` part comes first of all, and of the others those of the same lift. Raises BadInput where it is no
    part, or a squat where `limits` allow none, NoAnswer where a session of so many minutes is too short for it and the
    lift.
    """

    def spared(form: Form) -> bool:
        return family(form.drill) in limits.spares

    main, others = parts_of(shelf, have, forms, held=held)
    main, others = (tuple(form for form in each if not spared(form)) for each in (main, others))
    behind: Lagging | None = None
    if weak is not None:
        first = weak_part(shelf, have, forms, weak, held=held)
        if not limits.squats and family(first.drill) == SQUAT:
            raise BadInput(f"{first.drill.name} lags behind and is a squat, so no squats at all (--squats 0) can't be")
        behind = lagging(shelf, first, have)
        first = behind.form._replace(work=behind.longest)
        _fits(first, forms[-1], minutes, part)
        lifts = set(first.drill.lifts)
        main = (first, *(form for form in main if form.drill.id != weak))
        rest = [form for form in others if form.drill.id != weak]
        others = tuple(sorted(rest, key=lambda form: lifts.isdisjoint(form.drill.lifts)))
    n, drill_n = len(forms), forms[-1].drill_n + 1
    of_path = {form.drill.id: form.drill_n for form in forms}
    numbered: list[Form] = []
    strong = [form for form in finishing(shelf, have, of_path) if not spared(form)]
    for at, form in enumerate([*main, *others, *strong]):
        numbered.append(form._replace(n=n + at, drill_n=of_path.get(form.drill.id, drill_n + at)))
    parts = len(main) + len(others)
    behind = behind.numbered(numbered[0]) if behind is not None else None
    return Beside(
        tuple(numbered[parts:]), tuple(numbered[: len(main)]), tuple(numbered[len(main) : parts]), weak, behind, limits
    )


def _fits(weak: Form, lift: Form, minutes: int, part: Callable[[int], int]) -> None:
    """Raise NoAnswer, with the least minutes that would do, where what lags behind doesn't fit beside the lift."""
    needed = weak.work + lift.work
    if part(minutes - warm_up(minutes)) >= needed:
        return
    least = next(each for each in range(minutes, minutes + 3 * needed) if part(each - warm_up(each)) >= needed)
    raise NoAnswer(
        f"{weak.drill.name} takes {weak.work} min and {lift.drill.name.lower()} {lift.work}, so a session of {minutes}"
        f" min is too short for both: the least that will do is {least}"
    )
