"""Where lessons go: the whole lift and its parts, nearest first, and the way to each from what is known."""

from collections.abc import Collection, Sequence
from itertools import pairwise

from kb import dials
from kb.ask.ability.standing import standing
from kb.ask.path import path
from kb.ask.plan.stiff import unspared
from kb.ask.plan.teaching import Teaching
from kb.ask.shelf import Shelf, ending_in
from kb.errors import NoAnswer
from kb.kit import BARS
from kb.terms import Catch, Drill, DrillId, ItemId, LiftId, Load, Speed, Stage

__all__ = [
    "LESSON_BUDGET",
    "Goals",
    "behind",
    "furthest",
    "nearest_first",
    "needed",
    "other_half",
    "parts_by_nearness",
    "shed",
]

WEIGHTS = ItemId("hand-weight-pair")
"""What takes a bar's place where there is none."""

MOST_ADDED = 2
"""Small steps that a way is given for who is afraid, at most. Common practice, no source."""

LESSON_BUDGET = 400
"""States a path may be looked for among, of a part of a lift for some lessons: there are many parts to try."""


def parts_by_nearness(shelf: Shelf, have: frozenset[ItemId], holds: Collection[DrillId]) -> tuple[DrillId, ...]:
    """The lift and the parts of it at full speed that lessons can end in, not held yet: the smallest step first."""
    fits = shelf.fits(have)
    parts = [
        drill
        for drill in shelf.drills.values()
        if drill.id in fits and drill.id not in holds and _whole(drill) and fits[drill.id].speed is Speed.FULL
    ]
    return tuple(drill.id for drill in sorted(parts, key=lambda drill: (_left(shelf, drill), drill.id)))


def _whole(drill: Drill) -> bool:
    """Whether a drill is the lift or a part of it put together, at full speed, that is learnt without weight."""
    return drill.stage in (Stage.JOIN, Stage.WHOLE) and drill.speed is Speed.FULL and drill.load[0] <= Load.STICK


def _left(shelf: Shelf, drill: Drill) -> int:
    """How far a drill is from the whole lift: the step between them, 0 for the lift itself."""
    if drill.id == shelf.lift.drill:
        return -1
    return dials.step(shelf.dials[drill.id], shelf.dials[shelf.lift.drill], dials.spans(shelf.lift))


def behind(shelf: Shelf, reached: Collection[Drill]) -> tuple[frozenset[LiftId], int]:
    """Of a lift of parts those that have been come less far in, and the stage that the others are at.

    None where all are as far, or there are no parts.
    """
    far = {
        part: max((int(each.stage) for each in reached if part in each.lifts and _whole(each)), default=0)
        for part in shelf.lift.parts
    }
    least = min(far.values(), default=0)
    late = frozenset(part for part, stage in far.items() if stage == least)
    return (late, max(far.values())) if len(late) < len(far) else (frozenset(), 0)


def other_half(shelf: Shelf, drills: Collection[Drill], end: Drill) -> Drill | None:
    """The furthest movement of the parts of a lift that `end` is none of; None without parts, or if none is known."""
    theirs = set(shelf.lift.parts) & set(end.lifts)
    other = set(shelf.lift.parts) - theirs
    there = [each for each in drills if other & set(each.lifts) and not theirs & set(each.lifts)]
    return next((each for each in nearest_first(shelf, there) if theirs and _whole(each)), None)


def furthest(shelf: Shelf, drills: Collection[Drill]) -> Drill | None:
    """The movement nearest to the whole lift: of what is put together, else of what moves; None if nothing does."""
    return next(iter(nearest_first(shelf, drills)), None)


def nearest_first(shelf: Shelf, drills: Collection[Drill]) -> list[Drill]:
    """The drills that move something, nearest to the whole lift first: of what is put together, then of the others."""
    moving = [each for each in drills if each.stage in (Stage.SEGMENT, Stage.JOIN, Stage.WHOLE)]
    return sorted(moving, key=lambda each: (not _whole(each), _left(shelf, each), each.id))


def needed(way: Sequence[Drill], known: Collection[DrillId]) -> list[bool]:
    """Of each drill of a way, whether a later one stands on it; the last is what it leads to."""
    found = []
    for at in range(len(way)):
        there = {*known, *(each.id for n, each in enumerate(way) if n != at)}
        later = way[at + 1 :]
        found.append(at == len(way) - 1 or any(not there & set(group) for each in later for group in each.groups))
    return found


def shed(shelf: Shelf, way: Sequence[Drill], known: Collection[DrillId], count: int) -> tuple[Drill, ...] | None:
    """A way without `count` of the drills that only bridge it, those first without which the steps are smallest.

    What opens joints and nothing stands on is left out besides. None where fewer only bridge it.
    """
    spans = dials.spans(shelf.lift)
    left = [each for each, owed in zip(way, needed(way, known), strict=True) if owed or each.stage is not Stage.PREPARE]

    def steps(drills: Sequence[Drill]) -> int:
        turns = [shelf.dials[each.id] for each in drills if each.stage is not Stage.PREPARE]
        return sum(dials.step(a, b, spans) for a, b in pairwise(turns))

    for _ in range(count):
        spare = [at for at, owed in enumerate(needed(left, known)) if not owed]
        if not spare:
            return None
        del left[min(spare, key=lambda at: (steps(left[:at] + left[at + 1 :]), at))]
    return tuple(left)


class Goals:
    """The parts of one lift and the ways to them, each looked for once."""

    def __init__(self, teaching: Teaching) -> None:
        self.teaching = teaching
        self._ways: dict[DrillId, tuple[Drill, ...] | None] = {}

    def ahead(self, known: frozenset[DrillId]) -> list[list[Drill]]:
        """The parts nearer to the whole lift than any known one of the same lift, nearest first.

        In groups: those that spare what is stiff come before the others, then those with a bar, where there is one,
        before those with two weights in its place. Of a lift of two halves the one that is
        behind, as far as it can be done.
        """
        shelf, drills = self.teaching.shelf, self.teaching.shelf.drills
        reached = [drills[each] for each in known if each in drills and _whole(drills[each])]

        def beaten(drill: Drill) -> bool:
            return any(
                _left(shelf, each) <= _left(shelf, drill)
                and (set(each.lifts) & set(drill.lifts) or shelf.lift.id in each.lifts)
                for each in reached
            )

        parts = [drills[each] for each in parts_by_nearness(shelf, self.teaching.have, known)]
        later, stage = behind(shelf, reached)
        halves = [each for each in parts if later & set(each.lifts)]
        parts = [each for each in halves if each.stage <= stage] or halves or parts
        groups: dict[tuple[int, bool], list[Drill]] = {}
        for drill in parts:
            if not beaten(drill):
                spared = unspared(drill, self.teaching.stiff, self.teaching.have)
                groups.setdefault((spared, self._for_a_bar(drill)), []).append(drill)
        return [groups[each] for each in sorted(groups)]

    def _for_a_bar(self, drill: Drill) -> bool:
        """Whether two weights take the place of a bar that is there."""
        return WEIGHTS in drill.equipment and any(bar in self.teaching.have for bar in BARS)

    def caught(self, known: frozenset[DrillId]) -> list[Drill]:
        """The movements at full speed that end in a catch though they aren't put together yet, nearest first."""
        drills, fits = self.teaching.shelf.drills, self.teaching.fits
        parts = [
            drills[each]
            for each in fits
            if drills[each].stage is Stage.SEGMENT
            and drills[each].speed is fits[each].speed is Speed.FULL
            and drills[each].catch > Catch.NONE
            and drills[each].load[0] is Load.STICK
            and each not in known
        ]
        return nearest_first(self.teaching.shelf, parts)

    def _in_steps(self, way: tuple[Drill, ...], known: frozenset[DrillId]) -> tuple[Drill, ...]:
        """A way with two small steps more, each as soon as what it stands on is known; the last drill stays the last.

        Steps that move: fear is of what moves.
        """
        asked, found = self.teaching, list[Drill]()
        steps = [
            each
            for each in asked.steps or ()
            if each.id in asked.fits
            and each.speed > Speed.HELD
            and each.stage is not Stage.PREPARE
            and each.load[0] <= Load.STICK
            and each.id not in {*known, *(there.id for there in way)}
        ]
        added = 0
        for drill in way:
            there = {*known, *(each.id for each in found)}
            ready = [each for each in steps if all(there & set(group) for group in each.groups)][: MOST_ADDED - added]
            steps = [each for each in steps if each not in ready]
            added += len(ready)
            found += [*ready, drill]
        return tuple(found)

    def least(self, goal: Drill, known: frozenset[DrillId]) -> int:
        """Drills that must be shown for a part at least: those without which nothing that it stands on can be done."""
        drills, fits = self.teaching.shelf.drills, self.teaching.fits
        owed, waiting = set[DrillId](), [goal.id]
        while waiting:
            drill = waiting.pop()
            if drill in owed or drill not in drills:
                continue
            owed.add(drill)
            for group in drills[drill].groups:
                able = [each for each in group if each in fits]
                if len(able) == 1 and not known & set(group):
                    waiting.append(able[0])
        return len(owed)

    def way(self, goal: Drill, known: frozenset[DrillId]) -> tuple[Drill, ...] | None:
        """The drills to a part from what is known, each once and in order; None where there is no path.

        It is looked for once, from what was known first; from then on what is known by now is left out of it.
        """
        if goal.id not in self._ways:
            self._ways[goal.id] = self._path(goal, known)
        way = self._ways[goal.id]
        return None if way is None else tuple(each for each in way if each.id not in known)

    def _path(self, goal: Drill, known: frozenset[DrillId]) -> tuple[Drill, ...] | None:
        asked = self.teaching
        try:
            found = path(
                ending_in(asked.shelf, goal.id),
                have=asked.have,
                holds=standing(asked.shelf, known),
                order=asked.order,
                budget=LESSON_BUDGET,
            )
        except NoAnswer:
            return None
        drills = dict.fromkeys(entry.drill.id for entry in found.entries if entry.drill.id not in known)
        way = tuple(asked.shelf.drills[each] for each in drills)
        way = way if asked.steps is None else self._in_steps(way, known)
        return way if all(drill.load[0] <= Load.STICK for drill in way) else None
