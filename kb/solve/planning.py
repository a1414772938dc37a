"""A class planned: those of one chain two by two, or each alone where that is the only way; proved where a solver is.

Imports no solver itself: where none is installed, plans are built in plain Python.
"""

from collections.abc import Callable, Sequence
from typing import NamedTuple

from kb.ask.class_.build import Matter, matter_of
from kb.ask.class_.greedy import greedy
from kb.ask.class_.own import Own, Shelves, own_of
from kb.ask.class_.people import Class
from kb.ask.class_.rotation import Plan, Rotation
from kb.ask.class_.short import Short, sentence_of, too_long, with_more
from kb.ask.class_.slots import ClassPlan, plan_of
from kb.errors import NoAnswer

__all__ = ["NoPlan", "Planned", "planned"]

TO_START = 120
"""Plans built in plain Python for the solver to start from."""

NONE_FOUND = (
    "no plan was found that keeps every rule, which doesn't prove that there is none: allow more minutes, more gear or"
    " more waiting"
)
MORE_WITH = "installed with `drillpath[class]`, the program looks further and proves what is short"

Told = Callable[[Sequence[Own]], tuple[Own, ...]]


class NoPlan(NoAnswer):
    """No plan keeps every rule; `short` says what would, where that is proved."""

    def __init__(self, message: str, short: tuple[Short, ...] = ()) -> None:
        super().__init__(message)
        self.short = short


class Planned(NamedTuple):
    """A class's plan, and whether a solver was there to look for it."""

    plan: ClassPlan
    solved: bool


class _Way(NamedTuple):
    """The class understood in one way, and the plan found for it."""

    matter: Matter
    plan: Plan
    solved: bool


def planned(asked: Class, shelves: Shelves, *, told: Told = tuple, prove: bool = True) -> Planned:
    """The class planned. `told` gives the lifters' drills their text, where the shelves' have none.

    Without `prove` no solver is asked: quick, and every rule is kept. Raises NoPlan where no plan is found, with what
    is short where that is proved.
    """
    try:
        matters = _ways(asked, shelves, told)
    except NoAnswer as none:
        raise NoPlan(str(none)) from None
    way = _best(matters, lambda more: _ways(more, shelves, told)) if prove else _built(matters, "")
    return Planned(plan_of(way.matter, way.plan), way.solved)


def _ways(asked: Class, shelves: Shelves, told: Told) -> list[Matter]:
    """The class understood: those of one chain two by two; and each alone, in case that is the only way."""
    owns = told(own_of(asked, shelves))
    paired = matter_of(asked, owns)
    alone = matter_of(asked, owns, pairs=False)
    return [paired] if alone.rotation == paired.rotation else [paired, alone]


def _best(matters: list[Matter], anew: Callable[[Class], list[Matter]]) -> _Way:
    """The best plan of the first way that has one.

    Raises NoPlan where there is none, with what is short; or where none was found and none is proved impossible.
    """
    try:
        from kb.solve.rotation import Undecided, best_plan
    except ImportError:
        return _built(matters, MORE_WITH)
    for matter in matters:
        try:
            found = best_plan(matter.rotation, greedy(matter.rotation, tries=TO_START))
        except Undecided:
            return _built(matters, "")
        if found is not None:
            return _Way(matter, found, solved=True)
    raise _impossible(matters, anew)


def _built(matters: list[Matter], more: str) -> _Way:
    """A plan built in plain Python; NoPlan where none was found, with what `more` would help."""
    for matter in matters:
        found = greedy(matter.rotation)
        if found is not None:
            return _Way(matter, found, solved=not more)
    over = too_long(matters[-1])
    if over is not None:
        raise NoPlan(f"{over[0]}'s drills alone take {over[1]} min more than the class has")
    raise NoPlan(f"{NONE_FOUND}; {more}" if more else NONE_FOUND)


def _impossible(matters: list[Matter], anew: Callable[[Class], list[Matter]]) -> NoPlan:
    """What to say where it is proved that there is no plan."""
    from kb.solve.short import shortages

    matter = matters[-1]

    def again(what: str, by: int) -> list[Rotation]:
        try:
            return [each.rotation for each in anew(with_more(matter.asked, what, by))]
        except NoAnswer:
            return []

    short = shortages(matter.rotation, again)
    groups, coaches = matter.rotation.groups, matter.asked.coaches
    over = too_long(matter)
    why = f"{over[0]}'s drills alone don't fit" if over else "this class has no plan that keeps every rule"
    if groups > matter.rotation.at_once:
        why += f": there are {groups} different chains, and {coaches} coach{'es' if coaches > 1 else ''} can run"
        why += f" {matter.rotation.at_once} at once"
    if short:
        return NoPlan(f"{why}. With {sentence_of(short)} it can be planned, with less it can't", short)
    return NoPlan(f"{why}. No one thing more was found that would give it one")
