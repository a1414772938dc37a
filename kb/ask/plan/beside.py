"""What stands beside the lift in the weeks in which it is built up, laid out for the weekdays of each block."""

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import NamedTuple

from kb.ask.plan.block import LIMITS, SQUAT, Limits, dealt, family, sparing, squats_of, turned, weekday
from kb.ask.plan.forms import Form
from kb.ask.plan.lagging import Lagging
from kb.ask.plan.weeks import Weeks
from kb.terms import DrillId

__all__ = ["BARE", "MOST_PARTS", "Beside", "Laid", "Layout"]

BARE = 2
"""Sessions with a coach, the day among them, in which nothing strengthens: fresh for the day. Common practice, no
source."""

MOST_PARTS = 2
"""Parts of the lift at weight in a session at most. Common practice, no source."""

MORE: Mapping[int, int] = MappingProxyType({})
"""No session in which the lift takes more."""


class Beside(NamedTuple):
    """What can stand beside the lift: its main `parts` at weight and `others`, what strengthens (`finish`).

    With `weak` the first of the parts is the one that lags behind, in its `lagging` sets: it begins the week,
    before the lift whatever it is. `limits` say how much of some of it there may be.
    """

    finish: tuple[Form, ...] = ()
    parts: tuple[Form, ...] = ()
    others: tuple[Form, ...] = ()
    weak: DrillId | None = None
    lagging: Lagging | None = None
    limits: Limits = LIMITS


class Laid(NamedTuple):
    """What a weekday of a block has: parts before the lift, and what strengthens after it."""

    parts: list[Form]
    finish: list[Form]


class Layout:
    """The blocks up to the day, each laid out once: the lift leaves `room` minutes, checks without parts `checks`.

    `more` are minutes that the lift takes besides in some sessions: they are left free on that weekday of the block.
    """

    def __init__(
        self, beside: Beside, weeks: Weeks, day: int, room: int, checks: int, more: Mapping[int, int] = MORE
    ) -> None:
        self.beside, self.weeks, self.day = beside, weeks, day
        self.room, self.checks, self.more = room, checks, more
        self.blocks: dict[int, list[Laid]] = {}

    def of(self, n: int) -> Laid:
        """What session `n` has.

        In the week of the day there is no squat but one that lags behind, and of what strengthens only presses; in the
        last session before it one part, no squat, and nothing strengthens.
        """
        block = self.weeks.block(n)
        if block not in self.blocks:
            self.blocks[block] = self._laid(block)
        parts, finish = self.blocks[block][weekday(self.weeks, n)]
        if n > self.day - self.weeks.place(self.day).of:
            weak = self.beside.weak
            parts = [form for form in parts if family(form.drill) != SQUAT or form.drill.id == weak]
            finish = sparing(finish)
        if sum(not self.weeks.at_home(each) for each in range(n, self.day + 1)) <= BARE:
            parts, finish = [form for form in parts if family(form.drill) != SQUAT][:1], []
        return Laid(parts, finish)

    def _laid(self, block: int) -> list[Laid]:
        left = self._left(block)
        parts = self._parts(block, left)
        rooms = [room - (sum(form.work for form in own) or self.checks) for room, own in zip(left, parts, strict=True)]
        trained = [frozenset(family(form.drill) for form in own) for own in parts]
        finish = dealt(self.beside.finish, rooms, block, trained, self.beside.limits)
        return [Laid(*each) for each in zip(parts, finish, strict=True)]

    def _left(self, block: int) -> list[int]:
        """The minutes that the lift leaves on each weekday of a block, in whichever week it takes most."""
        days = self.weeks.per_week - self.weeks.home
        most = [0] * days
        for n, minutes in self.more.items():
            if self.weeks.block(n) == block:
                most[weekday(self.weeks, n)] = max(most[weekday(self.weeks, n)], minutes)
        return [self.room - each for each in most]

    def _parts(self, block: int, left: Sequence[int]) -> list[list[Form]]:
        """Parts for each weekday, one to each in turn: the main ones, then the others, by turns from block to block.

        Each once a week, unless there are fewer than days. A second one only in half of what the lift leaves, and
        rather of another lift than the first; on the week's second day it is what lags behind, if that fits at all.
        """
        main, others = self.beside.parts, self.beside.others
        every = [*main, *turned(others, block)]
        queue, found = list(every), [list[Form]() for _ in left]
        for turn in range(MOST_PARTS):
            for day, own in enumerate(found):
                room = left[day] if not turn else left[day] // 2 - sum(form.work for form in own)
                if not queue and not turn and len(every) > 1:
                    queue = list(every)  # more days than parts: once more from the first
                free = left[day] - sum(form.work for form in own)
                again = self._again(own, free) if turn and day == 1 else None
                begins = queue[0] if self.beside.lagging is not None and not turn and not day else None
                squats = sum(map(squats_of, found)) < self.beside.limits.squats
                form = again or begins or _next(queue, own, room, squats=squats)
                if form is not None:
                    queue = [each for each in queue if each is not form]
                    own.append(form)
        return found

    def _again(self, own: Sequence[Form], room: int) -> Form | None:
        """What lags behind, for its easier day, if it fits and isn't there; a squat isn't wanted twice."""
        weak = self.beside.lagging.form if self.beside.lagging is not None else None
        if weak is None or weak.work > room or family(weak.drill) == SQUAT:
            return None
        return weak if weak.drill.id not in {form.drill.id for form in own} else None


def _next(queue: Sequence[Form], own: Sequence[Form], room: int, *, squats: bool) -> Form | None:
    """The next that fits, one of another lift than what is there if there is one; a squat only where it may be one."""
    fits = [form for form in queue if form.work <= room and form not in own and (squats or not squats_of([form]))]
    lifts = {lift for form in own for lift in form.drill.lifts}
    return next((form for form in fits if not lifts & set(form.drill.lifts)), next(iter(fits), None))
