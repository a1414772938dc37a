"""Filling sessions one after another: what is due, what is new, and what keeps known drills fresh.

Written for a guess of the lift day, on which the widest gaps depend. What comes out is lawful if it ends by then.
"""

from collections.abc import Sequence
from itertools import product
from typing import Literal, NamedTuple

from kb.ask.plan.forms import Form
from kb.ask.plan.mixed import mixed
from kb.ask.plan.past import Past
from kb.ask.plan.spacing import least_gap
from kb.ask.plan.weeks import Weeks
from kb.terms import Load

__all__ = ["ENOUGH", "WAYS", "Kind", "Slot", "Way", "fill"]

FEW, ENOUGH = 4, 6
"""Drills in a session up to which time left is filled with known ones: with those whose gap has grown up to
`ENOUGH`, with those whose gap has at least not shrunk up to `FEW`. Common practice, no source."""

Kind = Literal["new", "work", "check", "keep", "part", "build", "finish", "day"]
"""What a form is there for: shown, worked on, checked, kept; once the lift is held also a part of it at weight,
built up, strengthened for, and lifted on its day."""


class Slot(NamedTuple):
    """A form in a session. `exposure` counts the days it is met on; `again` if it was tried before and not met.

    `kg` is what the lift, or a part of it, weighs that day, where a weight is to be reached; so many `singles` after
    the dose weigh `singles_kg`, on the last heavy days before it; one `rehearses` the first of the day's `tries`.
    In a plan for several all of these are in per cent of each one's best: `unit`.
    """

    form: Form
    exposure: int
    kind: Kind
    minutes: int
    again: bool = False
    kg: float | None = None
    singles_kg: float | None = None
    singles: int = 0
    rehearses: bool = False
    tries: tuple[float, ...] = ()
    unit: str = "kg"


class Way(NamedTuple):
    """What goes first where a session can't take everything.

    Before what is new come the drills due again that have fewer than `pressing` sessions to spare; a new drill comes
    before a known one at a new weight, or as the path has them; `one_new` of both at most, or as many as may be.
    """

    pressing: int
    drills_first: bool
    one_new: bool


WAYS = tuple(Way(*each) for each in product((999, 0, 1, 2, 3), (False, True), (False, True)))
"""Tried in this order; a later one is taken only if its plan is shorter."""


class _Taken:
    """What a session holds so far, and the minutes that are left."""

    def __init__(self, room: int) -> None:
        self.forms: list[Form] = []
        self.room = room


class _Filling:
    """One guess of the lift day, filled session by session."""

    def __init__(self, forms: Sequence[Form], past: Sequence[Past], weeks: Weeks, last_day: int, way: Way) -> None:
        self.forms, self.weeks, self.last_day, self.way = forms, weeks, last_day, way
        self.met = [each.met for each in past]
        self.last = [each.last for each in past]
        self.gap = [each.gap for each in past]
        self.tried = [each.tried for each in past]
        self.waits = [each.waits for each in past]
        self.orders: list[list[int]] = []

    def left(self, form: Form) -> int:
        """Days that a form is still to be met on."""
        return max(form.exposures - self.met[form.n], 0)

    def over(self) -> bool:
        """Whether everything is held."""
        return not any(self.left(form) for form in self.forms)

    def _slack(self, form: Form, n: int) -> int:
        """Sessions to spare if a form is met in session `n`, before it or what comes heavier after it ends too late."""
        at, gap = n, 0 if self.waits[form.n] else n - self.last[form.n]
        for _ in range(self.left(form) - 1):
            gap = least_gap(gap, max(self.last_day - at, 0), self.weeks.on_average)
            at += gap
        heavier = form.heavier
        while heavier is not None:
            at, heavier = at + self.left(self.forms[heavier]), self.forms[heavier].heavier
        return self.last_day - at

    def _gap(self, form: Form) -> int:
        """The last gap of a form; none where it was broken off."""
        return 0 if self.waits[form.n] else self.gap[form.n]

    def _apart(self, form: Form, n: int) -> bool:
        wait = least_gap(self._gap(form), max(self.last_day - self.last[form.n], 0), self.weeks.on_average)
        return n - self.last[form.n] >= wait

    def _stands(self, form: Form) -> bool:
        """Whether what a form is built on is met: after a day on which it was not, that comes first."""
        return all(any(self.met[each] for each in group) for group in form.needs)

    def _due(self, n: int) -> list[Form]:
        """Forms to be met again now, the most pressing first."""
        due = [
            form
            for form in self.forms
            if self.met[form.n]
            and self.left(form)
            and self.weeks.allows(n, form, new=False)
            and self._stands(form)
            and self._apart(form, n)
            and not (form is self.forms[-1] and self.left(form) == 1 and self.weeks.at_home(n))
        ]
        return sorted(due, key=lambda form: (self._slack(form, n), form.n))

    def _fresh(self, n: int, chosen: Sequence[Form]) -> Form | None:
        """The next form that is new, after those chosen."""
        begun = {form.n for form in chosen}
        waiting = [form for form in self.forms if not self.met[form.n] and form.n not in begun]
        first = next((form for form in waiting if form.lighter is None), None)
        heavier = next((form for form in waiting if form.lighter is not None), None)
        if heavier is not None and not (self._held_before(heavier, n) and self._stands(heavier)):
            heavier = None
        options = [
            form
            for form in (first, heavier)
            if form is not None and self.weeks.allows(n, form, new=not self.tried[form.n])
        ]
        if self.way.drills_first:
            return next(iter(options), None)
        return min(options, key=lambda form: form.n, default=None)

    def _held_before(self, form: Form, n: int) -> bool:
        """Whether the lighter form was held in a session before `n`."""
        lighter = form.lighter
        return lighter is None or (not self.left(self.forms[lighter]) and self.last[lighter] < n)

    def _ends(self, form: Form, chosen: Sequence[Form]) -> bool:
        """Whether this would be the lift's last day while something else isn't held: the lift is held last."""
        if form is not self.forms[-1] or self.left(form) > 1:
            return False
        there = {each.n for each in chosen}
        return any(self.left(other) > (other.n in there) for other in self.forms[:-1])

    def _kept(self, n: int) -> list[Form]:
        """Held forms that may come again, most overdue first; stretches belong to the warm-up."""
        found = [
            form
            for form in self.forms
            if self.met[form.n]
            and not self.left(form)
            and not form.prepares
            and (form.heavier is None or not self.met[form.heavier])
            and self.weeks.allows(n, form, new=False)
            and self._stands(form)
            and self._apart(form, n)
        ]
        return sorted(found, key=lambda form: (self.last[form.n] + self._gap(form), form.n))

    def session(self, n: int) -> list[Slot]:
        """What session `n` holds, in the order in which it is done."""
        taken = _Taken(self.weeks.room_in(n))
        due = sorted(self._due(n), key=lambda form: form is self.forms[-1] and self.left(form) == 1)
        for form in due:
            if self._slack(form, n) < self.way.pressing:
                self._take(form, taken)
        self._take_new(n, taken)
        for form in due:
            self._take(form, taken)
        kept = self._kept(n)
        for form in [each for each in kept if n - self.last[each.n] > self._gap(each)] + kept:
            wider = n - self.last[form.n] > self._gap(form)
            heavier = form.heavier is not None and self.forms[form.heavier] in taken.forms
            if len(taken.forms) < (ENOUGH if wider else FEW) and not heavier:
                self._take(form, taken)
        return self._done(n, taken.forms)

    def _take(self, form: Form, taken: "_Taken") -> bool:
        minutes = form.minutes(self.met[form.n] + 1, again=bool(self.tried[form.n]))
        if minutes > taken.room or form in taken.forms or self._ends(form, taken.forms):
            return False
        taken.forms.append(form)
        taken.room -= minutes
        return True

    def _take_new(self, n: int, taken: "_Taken") -> None:
        while True:
            new = [form for form in taken.forms if not self.met[form.n]]
            fresh = self._fresh(n, taken.forms)
            if (
                fresh is None
                or (self.way.one_new and new)
                or not self.weeks.beside(fresh, new)
                or not self._take(fresh, taken)
            ):
                return

    def _done(self, n: int, chosen: Sequence[Form]) -> list[Slot]:
        """The chosen forms as done, in order: stretches, what is known, what is new, the lift, working weight."""
        known = [form.n for form in chosen if self.met[form.n] and self._mixes(form)]
        self.orders.append(mixed(known, self.orders, n))
        places = {each: at for at, each in enumerate(self.orders[-1])}

        def place(form: Form) -> tuple[int, int]:
            if form.prepares:
                return 0, form.n
            if form.n in places:
                return 1, places[form.n]
            if form.load is Load.WORKING or (form.is_lift and self.met[form.n]):
                return 3, form.n
            return 2, form.n

        slots = []
        for form in sorted(chosen, key=place):
            exposure = self.met[form.n] + 1
            again = bool(self.tried[form.n]) and not self.met[form.n]
            minutes = form.minutes(exposure, again=again)
            slots.append(Slot(form, exposure, _kind(form, exposure, again=again), minutes, again))
        for form in chosen:
            spaced = self.met[form.n] and not self.waits[form.n]
            self.gap[form.n] = n - self.last[form.n] if spaced else 0
            self.waits[form.n] = False
            self.met[form.n] += 1
            self.last[form.n] = n
            self.tried[form.n] += 1
        return slots

    def _mixes(self, form: Form) -> bool:
        return not (form.prepares or form.is_lift or form.load is Load.WORKING)


def _kind(form: Form, exposure: int, *, again: bool) -> Kind:
    if exposure == 1 and not (form.known and not again and form.exposures == 1):
        return "work" if again or form.known else "new"
    if exposure > form.exposures:
        return "keep"
    return "work" if exposure < form.exposures else "check"


def fill(
    forms: Sequence[Form], past: Sequence[Past], weeks: Weeks, *, begun: int, last_day: int, way: Way
) -> list[list[Slot]] | None:
    """The sessions after `begun` until everything is held; None if that isn't by the lift day."""
    filling, sessions = _Filling(forms, past, weeks, last_day, way), list[list[Slot]]()
    while not filling.over():
        if begun + len(sessions) >= last_day:
            return None
        sessions.append(filling.session(begun + len(sessions) + 1))
    return sessions
