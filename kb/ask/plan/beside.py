"""What stands beside a lift that is built up: the drills next to it by turns, and a part of it at weight."""

from collections.abc import Sequence

from kb.ask.plan.fill import Slot
from kb.ask.plan.forms import WORK_UP_S, Form
from kb.ask.plan.kilograms import Goal, rounded
from kb.dose import minutes
from kb.errors import BadInput
from kb.terms import DrillId, Load, Stage

__all__ = ["PART", "WEAK_PART", "Turns", "part_of"]

FROM_THE_LAST = 6
"""How many of the drills nearest the lift those beside it are taken from, in turn. Common practice, no source."""

PART, WEAK_PART = 0.75, 0.85
"""What a part of the lift weighs, as a share of what the lift should go by then; and the part that lags behind. Common
practice, no source."""


class Turns:
    """Whose turn it is of the drills next to the lift: the one that was longest away.

    `whole` leaves only what puts most together, for who needs no single positions any more; `heavy` is when each was
    last done at weight.
    """

    def __init__(self, forms: Sequence[Form], seen: Sequence[Sequence[Slot]], begun: int, *, whole: bool) -> None:
        heaviest: dict[int, Form] = {}
        for form in forms:
            if not form.prepares and not form.is_lift and form.load <= Load.LIGHT:
                heaviest[form.drill_n] = form
        most = [form for form in heaviest.values() if form.drill.stage in (Stage.JOIN, Stage.WHOLE)]
        self.near = most if whole and len(most) > 1 else list(heaviest.values())
        self.last = {slot.form.n: n for n, slots in enumerate(seen, begun + 1) for slot in slots}
        self.heavy: dict[int, int] = {}

    def next(self, n: int, *, at_home: bool = False) -> list[Form]:
        """Forms in the order in which it is their turn in session `n`."""
        able = [form for form in self.near if form.at_home or not at_home][-FROM_THE_LAST:]
        return sorted(able, key=lambda form: (self.last.get(form.n, 0) - n, -form.n))


def part_of(turns: Turns, goal: Goal, by_then: float, n: int, weak: DrillId | None) -> list[Slot]:
    """A part of the lift in full at weight, in session `n`, `by_then` kg being what the lift should go: one, or none.

    `weak` where its turn is that of the part that lags behind. Raises BadInput where that is no part of the lift that
    takes weight.
    """
    able = [form for form in turns.next(n) if form.drill.load[1] is Load.WORKING]
    able.sort(key=lambda form: turns.heavy.get(form.n, 0))
    if weak is not None:
        able = [form for form in turns.near if form.drill.id == weak and form.drill.load[1] is Load.WORKING]
        if not able:
            parts = tuple(form.drill.id for form in turns.near if form.drill.load[1] is Load.WORKING)
            raise BadInput(f"{weak} is no part of this lift that takes weight", nearest=parts)
    if not able:
        return []
    form = able[0]
    turns.last[form.n] = turns.heavy[form.n] = n
    kg = rounded(goal, (WEAK_PART if weak else PART) * by_then)
    heavy = form._replace(load=Load.WORKING)
    return [Slot(heavy, form.exposures + 1, "part", form.work + minutes(WORK_UP_S[Load.WORKING]), kg=kg)]
