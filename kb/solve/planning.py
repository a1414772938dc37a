"""A class planned: those of one chain two by two, or each alone where that is the only way; proved where a solver is.

Where there is no plan because the bars don't go round, some or all do without, and the plan says who.

Imports no solver itself: where none is installed, plans are built in plain Python.
"""

from collections.abc import Callable, Iterator, Sequence
from contextlib import suppress
from typing import NamedTuple

from kb.ask.class_.build import Matter, matter_of
from kb.ask.class_.doing import Own
from kb.ask.class_.greedy import greedy
from kb.ask.class_.own import Shelves, own_of
from kb.ask.class_.people import Class
from kb.ask.class_.rotation import Plan, Rotation
from kb.ask.class_.short import Short, sentence_of, too_long, with_more
from kb.ask.class_.slots import ClassPlan, plan_of
from kb.ask.class_.spared import crowded, spared
from kb.ask.class_.spread import spread
from kb.ask.class_.turns import MOST_AT_A_BAR
from kb.ask.class_.walks import Walk, remembering
from kb.ask.class_.with_sticks import stick_s
from kb.errors import NoAnswer
from kb.kit import BARS

__all__ = ["NoPlan", "Planned", "planned"]

TO_START = 120
"""Plans built in plain Python for the solver to start from."""

NONE_FOUND = (
    "no plan was found that keeps every rule, which doesn't prove that there is none: allow more minutes, more gear or"
    " more waiting"
)
MORE_WITH = "installed with `drillpath[class]`, the program looks further and proves what is short"

SPARE_S = (300, 600, 900)
"""How much shorter than the class the lists of `today` are made where they can't be planned otherwise, s. Ours."""

WORTH_MORE_S = 480
"""Time left after everyone's list of `today` from which on one more drill is tried, s. Ours."""

MOST_FURTHER = 2
"""How many drills more at most: new ones, after all that `today` led through. Ours."""

CLOSER_S = 3.0
"""How long each further plan is looked for, s: more to a bar, shorter lists, more after them. Ours."""

Told = Callable[[Sequence[Own]], tuple[Own, ...]]


class NoPlan(NoAnswer):
    """No plan keeps every rule; `short` says what would, where that is proved."""

    def __init__(self, message: str, short: tuple[Short, ...] = ()) -> None:
        super().__init__(message)
        self.short = short


class _Impossible(NoAnswer):
    """It is proved that there is no plan, however the class is understood."""

    def __init__(self, matters: list[Matter]) -> None:
        super().__init__("this class has no plan that keeps every rule")
        self.matters = matters


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

    Without `prove` no solver is asked: quick, and every rule is kept. Where no plan is found, one is looked for in
    which some do without a bar (`spared`). Raises NoPlan where there is none either, with what is short where that is
    proved.
    """
    walk = remembering()

    def anew(more: Class) -> list[Matter]:
        return _ways(more, shelves, told, walk)

    def tried(other: Class, seconds: float | None = None) -> _Way | None:
        try:
            return _best(anew(other), prove=prove, seconds=seconds)
        except NoAnswer:
            return None

    try:
        way = _best(anew(asked), prove=prove)
    except NoAnswer as none:
        others = _others(asked, _held(asked, shelves, walk))
        found = next(filter(None, (tried(each, CLOSER_S) for each in others)), None)
        if found is None:
            raise _reason(none, anew) from None
        way = found
    way = next(filter(None, (tried(each, CLOSER_S) for each in _further(way))), way)
    told_way = Planned(plan_of(way.matter, way.plan), way.solved)
    for other in filter(None, (tried(more, CLOSER_S) for more in _closer(way))):
        closer = _spread_out(Planned(plan_of(other.matter, other.plan), other.solved), other)
        told_way = min(told_way, closer, key=lambda each: (stick_s(each.plan), each.plan.idle_s))
        if not stick_s(told_way.plan):
            break
    return told_way


def _spread_out(told: Planned, way: _Way) -> Planned:
    """A plan in which many take turns at few bars, with idle bars handed out too: nobody loses a bar by it."""
    free, least = matter_of(way.matter.asked._replace(sparing=False), way.matter.owns), stick_s(told.plan)
    plan = spread(way.matter, way.plan, free, lambda wider: stick_s(plan_of(free, wider)) > least)
    return told if plan is None else told._replace(plan=plan_of(free, plan))


def _closer(way: _Way) -> Iterator[Class]:
    """Where some hold a stick who could have a bar: the class with four to a bar, then three."""
    asked = way.matter.asked
    if 0 < _bars(asked) < len(asked.lifters) and stick_s(plan_of(way.matter, way.plan)):
        yield from (asked._replace(to_a_bar=count, sparing=True) for count in range(MOST_AT_A_BAR, 2, -1))


def _bars(asked: Class) -> int:
    return sum(asked.have.get(item, 0) for item in BARS)


def _others(asked: Class, held: Sequence[int]) -> Iterator[Class]:
    """The class otherwise: shorter lists, more at a bar, longer waits unless it is said how long; some without bars."""
    yield from _shorter(asked)
    yield from crowded(asked)
    if asked.longer_s > asked.most_wait_s:
        longer = asked._replace(most_wait_s=asked.longer_s)
        yield from (longer, *crowded(longer))
    yield from spared(asked, held)


def _held(asked: Class, shelves: Shelves, walk: Walk) -> list[int]:
    """Who holds what they do, by number."""
    with suppress(NoAnswer):
        return [n for n, own in enumerate(own_of(asked, shelves, walk)) if own.by_themselves]
    return []


def _further(way: _Way) -> Iterator[Class]:
    """Where all who learn do the same today and minutes are left: the class goes on by two drills more, then by one."""
    asked = way.matter.asked
    left = 60 * asked.minutes - plan_of(way.matter, way.plan).end_s
    if asked.today and left >= WORTH_MORE_S:
        yield from (asked._replace(further=count) for count in range(MOST_FURTHER, 0, -1))


def _shorter(asked: Class) -> Iterator[Class]:
    """Where all who learn do the same today: the class with shorter lists, as everyone's waits take time too."""
    if asked.today:
        yield from (asked._replace(spare_s=spare) for spare in SPARE_S)


def _ways(asked: Class, shelves: Shelves, told: Told, walk: Walk) -> list[Matter]:
    """The class understood: those of one chain two by two; and each alone, in case that is the only way."""
    owns = told(own_of(asked, shelves, walk))
    paired = matter_of(asked, owns)
    alone = matter_of(asked, owns, pairs=False)
    return [paired] if alone.rotation == paired.rotation else [paired, alone]


def _best(matters: list[Matter], *, prove: bool, seconds: float | None = None) -> _Way:
    """The best plan of the first way that has one; searched for so many seconds at most, where they are given.

    Raises _Impossible where it is proved that there is none, NoPlan where none was found.
    """
    if not prove:
        return _built(matters, "")
    try:
        from kb.solve.rotation import Effort, Undecided, best_plan
    except ImportError:
        return _built(matters, MORE_WITH)
    effort = Effort() if seconds is None else Effort(seconds / 2, seconds / 2, seconds / 2)
    for matter in matters:
        try:
            found = best_plan(matter.rotation, greedy(matter.rotation, tries=TO_START), effort)
        except Undecided:
            return _built(matters, "")
        if found is not None:
            return _Way(matter, found, solved=True)
    raise _Impossible(matters)


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


def _reason(none: NoAnswer, anew: Callable[[Class], list[Matter]]) -> NoPlan:
    """What to say where there is no plan: what is short, where that is proved."""
    if not isinstance(none, _Impossible):
        return none if isinstance(none, NoPlan) else NoPlan(str(none))
    from kb.solve.short import shortages

    matter = none.matters[-1]
    held = [n for n, own in enumerate(matter.owns) if own.by_themselves]

    def again(what: str, by: int) -> list[Rotation]:
        found: list[Rotation] = []
        more = with_more(matter.asked, what, by)
        for each in (more, *_others(more, held)):
            with suppress(NoAnswer):
                found += [way.rotation for way in anew(each)]
        return found

    short = shortages(matter.rotation, again)
    groups, coaches = len(matter.rotation.led), matter.asked.coaches
    over = too_long(matter)
    why = f"{over[0]}'s drills alone don't fit" if over else "this class has no plan that keeps every rule"
    if groups > matter.rotation.at_once:
        why += f": there are {groups} different chains, and {coaches} coach{'es' if coaches > 1 else ''} can run"
        why += f" {matter.rotation.at_once} at once"
    if short:
        return NoPlan(f"{why}. With {sentence_of(short)} it can be planned, with less it can't", short)
    return NoPlan(f"{why}. No one thing more was found that would give it one")
