"""What was done so far, as a plan goes on from it."""

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from kb.ask.plan.forms import Form
from kb.terms import DrillId, Load

__all__ = ["Done", "Past", "past_of"]


class Done(NamedTuple):
    """A drill done in session `session`, counted from 1, and whether its standard was met; `load` if it was said."""

    session: int
    drill: DrillId
    met: bool
    load: Load | None = None


class Past(NamedTuple):
    """Where a form stands: days it was met on, the session it last came in, the last gap in sessions (0: none).

    `tried` counts every time that it came, met or not. `waits` if something that it stands on isn't met: it comes after
    that, and its gaps then begin anew, for what was broken off isn't spaced.
    """

    met: int = 0
    last: int = 0
    gap: int = 0
    tried: int = 0
    waits: bool = False


def _after(past: Past, form: Form, done: Done) -> Past:
    """A form's standing after one more session: not met takes one day back, and the gaps begin anew."""
    if not done.met:
        return Past(max(min(past.met, form.exposures) - 1, 0), done.session, 0, past.tried + 1)
    gap = done.session - past.last if past.met else 0
    return Past(past.met + 1, done.session, gap, past.tried + 1)


def _form(own: Sequence[Form], past: Sequence[Past], load: Load | None) -> Form:
    """The form of a drill that a row is about: of its load, or the lightest that isn't held."""
    if load is not None:
        return max((form for form in own if form.load <= load), default=own[0], key=lambda form: form.load)
    return next((form for form in own if past[form.n].met < form.exposures), own[-1])


def _waits(form: Form, past: Sequence[Past]) -> bool:
    return not all(any(past[each].met for each in group) for group in form.needs)


def past_of(forms: Sequence[Form], done: Iterable[Done]) -> tuple[tuple[Past, ...], tuple[DrillId, ...]]:
    """Where each form stands, and the drills that were done but are not in the plan.

    A form met at some load has its lighter forms held with it: who has it heavier has it lighter.
    """
    past = [Past() for _ in forms]
    others: dict[DrillId, None] = {}
    for each in sorted(done, key=lambda each: (each.session, each.drill, each.load or Load.NONE)):
        own = [form for form in forms if form.drill.id == each.drill]
        if not own:
            others[each.drill] = None
            continue
        form = _form(own, past, each.load)
        past[form.n] = _after(past[form.n], form, each)
        for lighter in own:
            if each.met and lighter.load < form.load and past[lighter.n].met < lighter.exposures:
                past[lighter.n] = past[lighter.n]._replace(met=lighter.exposures, last=each.session)
    return tuple(past[form.n]._replace(waits=_waits(form, past)) for form in forms), tuple(others)
