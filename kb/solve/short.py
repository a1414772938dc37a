"""What is short in a class that has no plan, proved: for each thing alone, the least more of it that makes one.

Imports ortools, which is an extra: whoever imports this module must be ready for ImportError.
"""

from collections.abc import Callable, Iterator, Sequence

from ortools.sat.python import cp_model

from kb.ask.class_.rotation import TICK_S, Rotation
from kb.ask.class_.short import Short
from kb.dose import minutes
from kb.solve.model import Expr, Slack, built
from kb.solve.rotation import exists, solver_of

__all__ = ["shortages"]

Again = Callable[[str, int], Sequence[Rotation]]
"""A class begun anew with so much more of one thing: the rotations of which one would do; none where it can't be."""

NEAR = 4
"""How far from the first answer the least is looked for, when the class is planned anew."""

MOST_TICKS = 240
"""Two hours more than there are: beyond that nobody would ask."""


def shortages(rotation: Rotation, again: Again | None = None, effort: float = 2.0) -> tuple[Short, ...]:
    """For each thing that could run short, minutes, coaches and waiting: how much more of it alone would do.

    `again` plans the class anew with so much more of one thing, as more time or coaches may change what is done
    and with whom; without it everything else stays as it is. What alone doesn't help, or for which the least isn't
    proved within `effort` seconds a question, is left out.
    """
    found = []
    for what, slack in _each(rotation):
        model = built(rotation, slack)
        more: dict[str, tuple[Expr, int]] = {
            "minutes": (model.last, rotation.last),
            "wait": (model.wait, rotation.wait),
            "coaches": (model.coaches, rotation.coaches),
            **{item: (count, rotation.have[item]) for item, count in model.counts.items()},
        }
        wanted, there = more[what]
        model.model.minimize(wanted)
        solver = solver_of(effort)
        if solver.solve(model.model) != cp_model.OPTIMAL:
            continue
        by = round(solver.objective_value) - there
        by = minutes(by * TICK_S) if what == "minutes" else by
        if again is not None:
            by = _confirmed(again, what, by, effort)
        if by:
            found.append(_said(what, by))
    return tuple(found)


def _confirmed(again: Again, what: str, by: int, effort: float) -> int:
    """The least by which the class, planned anew, becomes possible, looked for around `by`; 0 if it isn't found."""

    def there(more: int) -> bool | None:
        known: list[bool | None] = []
        for each in again(what, more):
            known.append(exists(each, effort))
            if known[-1]:
                return True
        return None if None in known else False

    for more in range(by, by + NEAR):
        found = there(more)
        if found is None:
            return 0
        if found:
            while more > 1 and there(more - 1):
                more -= 1
            return more if more == 1 or there(more - 1) is False else 0
    return 0


def _each(rotation: Rotation) -> Iterator[tuple[str, Slack]]:
    for item in rotation.have:
        most = sum(max((c for t in u.tasks for m in t.modes for i, c in m.gear if i == item), default=0)
                   for u in rotation.units)  # fmt: skip
        yield item, Slack(items=((item, most),))
    yield "minutes", Slack(last=MOST_TICKS)
    yield "coaches", Slack(coaches=len(rotation.units))
    yield "wait", Slack(wait=rotation.last)


def _said(what: str, by: int) -> Short:
    if what == "minutes":
        return Short(what, by, "minute" if by == 1 else "minutes")
    if what == "wait":
        return Short(what, by * TICK_S, "seconds of waiting at a time")
    if what == "coaches":
        return Short(what, by, "coach" if by == 1 else "coaches")
    return Short(what, by, what if by == 1 else _plural(what))


def _plural(item: str) -> str:
    """A thing's id for more than one.

    >>> _plural("bar"), _plural("bench"), _plural("box"), _plural("discs")
    ('bars', 'benches', 'boxes', 'discs')
    """
    word = item.replace("-", " ")
    if word.endswith("s"):
        return word
    return f"{word}es" if word.endswith(("x", "ch")) else f"{word}s"
