"""One lesson filled: what opens it, what comes back, what is new, how it ends, and what the minutes left are for."""

from collections.abc import Collection, Iterator, Sequence
from typing import NamedTuple

from kb.ask.plan.goals import nearest_first, other_half
from kb.ask.plan.lesson import MISS_MIN, Line, LineKind, is_way_out, line_minutes, moves, new_dose
from kb.ask.plan.packed import Stand, checked, end_of, opening, raised, room, round_of
from kb.ask.plan.stiff import aids, own
from kb.ask.plan.strengthen import strengthening
from kb.ask.plan.teaching import Teaching, at_stick, easier, lightest_bar
from kb.dose import shorter
from kb.terms import Catch, Dose, Drill, DrillId, ItemId, Load

__all__ = ["LEFT_OPEN", "Lesson", "filled"]

LEFT_OPEN = 5
"""Minutes of a lesson that may be left without a drill: questions, and what wasn't met. Common practice, no source."""


class Lesson(NamedTuple):
    """A lesson, counted from 1, with its drills in order; `raised` minutes warm up, `left` have no drill.

    `end` is the movement it ends with; None where nothing moves yet. `other` is the furthest of a lift's other half,
    where that is known too.
    """

    n: int
    raised: int
    lines: tuple[Line, ...]
    left: int
    end: Drill | None
    other: Drill | None = None

    @property
    def minutes(self) -> int:
        """Its minutes, those that are left aside."""
        return self.raised + sum(line.minutes for line in self.lines)

    @property
    def shown(self) -> tuple[Drill, ...]:
        """The drills that were shown for the first time, in order."""
        return tuple(line.drill for line in self.lines if line.kind == "new")


def _line(
    teaching: Teaching,
    kind: LineKind,
    drill: Drill,
    given: Dose,
    *,
    teach: bool = False,
    load: Load | None = None,
    using: ItemId | None = None,
) -> Line:
    load = at_stick(teaching, drill) if load is None else load
    return Line(
        kind,
        drill,
        load,
        given,
        line_minutes(drill, given, teach=teach),
        using,
        easier(teaching, drill),
        own(teaching.shelf, drill, teaching.stiff),
        aids(teaching.shelf, drill, load, teaching.stiff, teaching.have) if kind != "miss" else (),
    )


def _fitting(drill: Drill, minutes: int) -> Dose | None:
    """The most of a drill's dose that fits the minutes; None if not even one round does."""
    return next(
        (each for each in (drill.dose, *shorter(drill.dose)) if line_minutes(drill, each) <= minutes),
        None,
    )


def _ways_out(teaching: Teaching, end: Drill, known: Collection[DrillId]) -> Iterator[tuple[str, Line | None]]:
    """How the way out of a movement is practised, each under a name: by its own drill, else as its entry says.

    No line where its entry knows none: nothing can go wrong there.
    """
    for drill in teaching.shelf.drills.values():
        able = is_way_out(drill) and drill.id in teaching.fits and set(drill.lifts) & set(end.lifts)
        if able and all(set(known) & set(group) for group in drill.groups):
            yield drill.id, _line(teaching, "miss", drill, drill.dose, teach=drill.id not in known)
    own_way = _line(teaching, "miss", end, round_of(end.dose))._replace(minutes=MISS_MIN, easier=None)
    yield _out_name(end), own_way if end.id in teaching.misses else None


def _out_name(drill: Drill) -> str:
    """Under what a movement's way out is known: it is one for all that a lift catches high, another for low."""
    return f"{drill.lifts[0]} {'low' if drill.catch is Catch.FULL else 'high'}"


def _at_bar(teaching: Teaching, stand: Stand, end: Drill, known: Collection[DrillId], spare: int) -> list[Line]:
    """The furthest movement at the lightest bar, after the way out where that wasn't practised; none without room."""
    bar = lightest_bar(teaching, end)
    if bar is None:
        return []
    for name, out in _ways_out(teaching, end, known):
        lines = [out] if out is not None and name not in stand.out else []
        given = _fitting(end, spare - sum(line.minutes for line in lines))
        if given is not None:
            return [*lines, _line(teaching, "lift", end, given, load=Load.LIGHT, using=bar)]
    return []


def filled(teaching: Teaching, stand: Stand, new: Sequence[Drill]) -> tuple[Lesson, Stand]:
    """A lesson with these new drills, and where the lifter stands after it.

    It opens what is stiff, goes over last time's drills in a round each, shows the new, and ends with the furthest
    movement known, once more at the lightest bar where one is there. What is left goes to a second dose of that, then
    to what strengthens, then to today's drills once more.
    """
    end = end_of(teaching, stand, new)
    known = stand.known | {each.id for each in new}
    opened = [_line(teaching, "open", each, each.dose, teach=stand.n == 0) for each in opening(teaching, stand)]
    shown = [_line(teaching, "new", each, new_dose(each), teach=True) for each in new]
    spare = room(teaching, stand) - sum(line.minutes for line in shown)
    ends: list[Line] = []
    if end is not None and not (new and new[-1] == end):
        given = _fitting(end, spare) or round_of(end.dose)
        ends = [_line(teaching, "lift", end, given)]
        spare -= ends[0].minutes
    other = _other_half(teaching, known, end)
    half = [] if other is None or other in new else _half(teaching, other, spare)
    spare -= sum(line.minutes for line in half)
    looked: list[Line] = []
    for each in reversed(checked(stand, end)):
        line = _line(teaching, "check", each, round_of(each.dose))
        if line.minutes <= spare:
            looked.insert(0, line)
            spare -= line.minutes
    if end is not None:
        at_bar = _at_bar(teaching, stand, end, known, spare)
        ends += at_bar
        spare -= sum(line.minutes for line in at_bar)
    first, ends, finish = _left_over(teaching, stand, [*looked, *shown], ends, end, spare)
    lines = (*opened, *first, *half, *ends, *finish)
    lesson = Lesson(stand.n + 1, raised(teaching, stand), lines, 0, end, other)
    lesson = lesson._replace(left=teaching.minutes - lesson.minutes)
    return lesson, _after(stand, lesson, known)


def _other_half(teaching: Teaching, known: Collection[DrillId], end: Drill | None) -> Drill | None:
    drills = teaching.shelf.drills
    there = [drills[each] for each in known if each in teaching.fits and drills[each].load[0] <= Load.STICK]
    return None if end is None else other_half(teaching.shelf, there, end)


def _half(teaching: Teaching, other: Drill, spare: int) -> list[Line]:
    """A lift's other half, as much of it as fits."""
    given = _fitting(other, spare)
    return [] if given is None else [_line(teaching, "lift", other, given)]


def _after(stand: Stand, lesson: Lesson, known: frozenset[DrillId]) -> Stand:
    """Where the lifter stands after a lesson: what was shown, and the ways out that were practised."""
    out = set(stand.out)
    for line in lesson.lines:
        if line.kind == "miss":
            out |= {_out_name(line.drill), line.drill.id, *line.drill.lifts}
    shown = {line.drill.id for line in lesson.lines if line.kind in ("miss", "finish")}
    return Stand(known | shown, lesson.shown or stand.last, frozenset(out), stand.n + 1)


def _left_over(
    teaching: Teaching, stand: Stand, before: Sequence[Line], ends: Sequence[Line], end: Drill | None, spare: int
) -> tuple[list[Line], list[Line], list[Line]]:
    """What the minutes left are for: a second dose of the lesson's end, what strengthens, all the rest once more.

    What comes back: `before` with second doses in their places, the lesson's end, and what strengthens.
    """
    first, last, finish = list(before), list(ends), list[Line]()
    if end is not None and sum(line.kind != "miss" for line in last) + any(line.drill == end for line in first) < 2:
        spare -= _once_more(teaching, last, end, spare)
    today = {line.drill.id for line in before}
    out = stand.out | {lift for line in last if line.kind == "miss" for lift in line.drill.lifts}
    for drill in strengthening(teaching, stand.known, stand.known | today, today | ({end.id} if end else set())):
        bar = lightest_bar(teaching, drill) if drill.load[0] is Load.LIGHT else None
        line = _line(teaching, "finish", drill, drill.dose, teach=drill.id not in stand.known, using=bar)
        safe = line.load <= Load.STICK or drill.id not in teaching.misses or bool(set(drill.lifts) & out)
        if safe and line.minutes <= spare:
            finish.append(line)
            spare -= line.minutes
    for line in [each for each in before if (moves(each.drill) or end is None) and each.drill != end]:
        at, looked = first.index(line), line.kind == "check"
        given = _fitting(line.drill, spare + (line.minutes if looked else 0)) if spare > LEFT_OPEN else None
        if given is None or (looked and given == line.dose):
            continue
        more = _line(teaching, "again", line.drill, given)
        first[at : at + 1] = [more] if looked else [line, more]
        spare -= more.minutes - (line.minutes if looked else 0)
    for drill in _known_besides(teaching, stand, [*before, *last, *finish]):
        if spare > LEFT_OPEN and (given := _fitting(drill, spare)) is not None:
            first.append(_line(teaching, "again", drill, given))
            spare -= first[-1].minutes
    for _ in range(MOST_MORE):
        if end is not None and spare > LEFT_OPEN:
            spare -= _once_more(teaching, last, end, spare)
    return first, last, finish


def _known_besides(teaching: Teaching, stand: Stand, lines: Collection[Line]) -> list[Drill]:
    """What was known before a lesson and isn't in it, nearest to the whole lift first: to be gone over again."""
    here, drills = {line.drill.id for line in lines}, teaching.shelf.drills
    known = [drills[each] for each in stand.known - here if each in teaching.fits]
    return [each for each in nearest_first(teaching.shelf, known) if each.load[0] <= Load.STICK][:MOST_AGAIN]


def _once_more(teaching: Teaching, last: list[Line], end: Drill, spare: int) -> int:
    """As much more of the furthest movement without weight as fits, up to its dose; the minutes that it takes."""
    at = next((n for n, line in enumerate(last) if line.kind == "lift" and not line.using), None)
    if at is None:
        given = _fitting(end, spare)
        if given is not None:
            last.insert(0, _line(teaching, "lift", end, given))
        return last[0].minutes if given is not None else 0
    line = last[at]
    for less in (end.dose, *shorter(end.dose)):
        given = line.dose._replace(rounds=line.dose.rounds + less.rounds, good=line.dose.good + less.good)
        more = line_minutes(end, given) - line.minutes
        if more <= spare:
            last[at] = line._replace(dose=given, minutes=line.minutes + more)
            return more
    return 0


MOST_AGAIN = 4
"""Drills known before that a lesson goes over again at most. Common practice, no source."""

MOST_MORE = 2
"""Doses of the furthest movement added at most where nothing else is left: the same more often is no lesson. Common
practice, no source."""
