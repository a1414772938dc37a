"""When the sessions are: days of the week, the light week, and the minutes that are left for drills."""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.plan.forms import Form
from kb.ask.plan.turns import PerWeek, Place, place_of, turns_of
from kb.errors import NoAnswer
from kb.terms import Load

__all__ = [
    "LIGHT_EVERY",
    "LONGEST",
    "MOST_A_WEEK",
    "MOST_LOOKED_AT",
    "MOST_NEW",
    "Weeks",
    "warm_up",
    "weeks_of",
]

MOST_A_WEEK = 7
"""Sessions a week at most: what was new needs a night before it comes again."""

LONGEST = 240
"""Minutes of a session at most; more is a slip of the pen."""

LIGHT_EVERY = 4
"""Every so many weeks one is light and ends with a new placement. Common practice, no source."""

MOST_NEW, MOST_LOOKED_AT = 2, 6
"""New drills, or drills at a new weight, in one session at most, if no more are asked for; and drills once held that
are looked at again."""

LEAST_RAISE, MOST_WARM_UP = 5, 10
"""Warm-up, min: raising the pulse takes 5 to 10, joints and muscles about 5 more (Jeffreys 2007, "Warm up
revisited"; durations from secondary pages). 10 is both at their least."""


class Weeks(NamedTuple):
    """How sessions lie in weeks. `room` is a session's minutes for drills, `light_room` those in a light week.

    A week has `per_week` sessions, or where weeks differ so many by `turns`, `per_week` in the fullest. Of the sessions
    a week `home` are done alone at home. `most_new` drills are new in one session at most. In the weeks
    of `away`, in order, there are no sessions. `day_week` is the week of a day that was named.
    """

    per_week: int
    warm_up: int
    room: int
    light_room: int
    home: int = 0
    most_new: int = MOST_NEW
    away: tuple[int, ...] = ()
    day_week: int | None = None
    turns: tuple[int, ...] = ()

    @property
    def by_turns(self) -> tuple[int, ...]:
        """Sessions of each week by turns, those at home among them."""
        return self.turns or (self.per_week,)

    @property
    def on_average(self) -> float:
        """Sessions a week on average, those at home among them."""
        return sum(self.by_turns) / len(self.by_turns)

    def place(self, n: int) -> Place:
        """Where session `n` lies in its week; weeks away are passed over."""
        return place_of(n, self.by_turns, self.away)

    def week(self, n: int) -> int:
        """The week of session `n`, both counted from 1; those away are passed over."""
        return self.place(n).week

    def week_begins(self, n: int) -> int:
        """The first session of the week of session `n`."""
        return n - self.place(n).at

    def _ends_block(self, week: int) -> bool:
        """Whether a block ends with a week: every so many, counted anew after one away; one away ends it too."""
        last = max((each for each in self.away if each < week), default=0)
        return week in self.away or ((week - last) % LIGHT_EVERY == 0 and not self._eased(week))

    def _eased(self, week: int) -> bool:
        """Whether a week needs no light one: the next is away, or it is the last before that of the day, or this."""
        return week + 1 in self.away or (self.day_week is not None and week >= self.day_week - 1)

    def block(self, n: int) -> int:
        """The block of session `n`, from 0: the weeks up to a light week, or one away; as many where none is light."""
        return sum(self._ends_block(each) for each in range(1, self.week(n)))

    def light(self, n: int) -> bool:
        """Whether session `n` is in a light week: nothing new, nothing at working weight, half the drills' time.

        Once a week with a coach is light enough: such a plan has none. A week away is one, and the count begins anew.
        None is right before the week of the day, which is easy itself.
        """
        return self.on_average - self.home > 1 and self._ends_block(self.week(n))

    def at_home(self, n: int) -> bool:
        """Whether session `n` is done alone at home: those with a coach begin the week and lie evenly in it.

        >>> [Weeks(3, 5, 15, 7, home=2).at_home(n) for n in range(1, 5)]
        [False, True, True, False]
        """
        _, place, of = self.place(n)
        coached = of - self.home
        return place not in {-(-at * of // coached) for at in range(coached)}

    def places(self, n: int) -> bool:
        """Whether session `n` is the last with a coach in a light week, with a look at where the lifter stands."""
        rest = range(n + 1, self.week_begins(n) + self.place(n).of)
        return self.light(n) and not self.at_home(n) and all(self.at_home(each) for each in rest)

    def shows(self, n: int) -> bool:
        """Whether anything may be new in session `n`."""
        return not self.light(n) and not self.at_home(n)

    def room_in(self, n: int) -> int:
        """Minutes for drills in session `n`."""
        return self.light_room if self.light(n) else self.room

    def allows(self, n: int, form: Form, *, new: bool) -> bool:
        """Whether a form may come in session `n`, its time aside; `new` if it was never tried.

        Alone at home nothing is new, and nothing is at working weight.
        """
        if self.at_home(n) and (new or not form.at_home or form.load is Load.WORKING):
            return False
        return not self.light(n) or not (new or form.load is Load.WORKING)

    def beside(self, form: Form, new: Sequence[Form]) -> bool:
        """Whether a form may be new in a session beside the `new` ones that are in it.

        So many at most, and of drills shown for the first time only one that puts most together.
        """
        first_whole = form.shown and form.whole
        return len(new) < self.most_new and not (first_whole and any(each.shown and each.whole for each in new))


def warm_up(minutes: int) -> int:
    """Minutes of a session that go into warming up: a quarter, from 5 to 10.

    Five raise the pulse; the joints are opened by the drills themselves, which begin unloaded, so that a short
    session keeps most of its time. From 40 minutes on there are five more for the joints.

    >>> warm_up(20), warm_up(40), warm_up(60)
    (5, 10, 10)
    """
    return min(max(minutes // 4, LEAST_RAISE), MOST_WARM_UP)


def weeks_of(
    forms: tuple[Form, ...],
    per_week: PerWeek,
    minutes: int,
    *,
    home: int = 0,
    most_new: int = MOST_NEW,
    away: Sequence[int] = (),
    day_week: int | None = None,
) -> Weeks:
    """The weeks of a plan, `home` of `per_week` sessions alone at home, `most_new` new drills in one at most.

    `away` are weeks without sessions, `day_week` is that of a day that was named.

    Raises NoAnswer, with the least minutes that would do, if a drill doesn't fit a session.
    """
    longest = max(forms, key=lambda form: (max(form.new, form.work, form.check), -form.n))
    needed = max(longest.new, longest.work, longest.check)
    room = minutes - warm_up(minutes)
    if room < needed:
        least = next(
            each for each in range(minutes, minutes + needed + MOST_WARM_UP + 1) if each - warm_up(each) >= needed
        )
        raise NoAnswer(
            f"{longest.drill.name} takes {needed} min after a warm-up of {warm_up(least)},"
            f" so a session of {minutes} min is too short: the least that will do is {least}"
        )
    checks = [form.check for form in forms if form.load is not Load.WORKING]
    most_new = MOST_LOOKED_AT if any(form.known for form in forms) else most_new
    turns = turns_of(per_week)
    half = max([room // 2, *checks])
    return Weeks(max(turns), warm_up(minutes), room, half, home, most_new, tuple(sorted(away)), day_week, turns)
