"""From what goes today to what is wished for: what should go, and what is lifted, in each session of the way."""

from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.plan.kilograms import EASY, Goal, rounded, session_kg
from kb.ask.plan.wave import by_then
from kb.ask.plan.weeks import Weeks

__all__ = ["Rise"]


class Rise(NamedTuple):
    """The way from `begin` to `end` kg over the sessions in which the weight goes up, the day being the last of them.

    Without a wish both are None, and so is every weight.
    """

    goal: Goal
    weeks: Weeks
    loaded: tuple[int, ...]
    begin: float | None
    end: float | None

    @property
    def day(self) -> int:
        """The session of the day."""
        return self.loaded[-1]

    def goes(self, n: int) -> float | None:
        """What should go by the loaded session `n`, kg; None in any other, and without a wish."""
        if self.begin is None or self.end is None or n not in self.loaded:
            return None
        return by_then(self.begin, self.end, self.loaded, self.weeks, n)

    def kg(self, n: int) -> float | None:
        """What the lift weighs in the loaded session `n`, kg; None in any other, and without a wish."""
        if self.begin is None or self.end is None or n not in self.loaded:
            return None
        return session_kg(self.goal, self.begin, self.end, self.loaded, self.weeks, n)

    def easy(self, n: int) -> float | None:
        """What the lift weighs in session `n` of a light week, kg; None in any other, and without a wish."""
        before = [each for each in self.loaded if each < n]
        if not self.weeks.light(n) or self.weeks.at_home(n) or n in self.loaded or not before:
            return None
        goes = self.goes(before[-1])
        return None if goes is None else rounded(self.goal, EASY * goes)

    def days_of_weeks(self) -> dict[int, list[int]]:
        """The loaded sessions of each week before that of the day, in order: the last of them is its heavy day."""
        found: dict[int, list[int]] = {}
        for n in self.loaded[:-1]:
            if self.weeks.week(n) < self.weeks.week(self.day):
                found.setdefault(self.weeks.week(n), []).append(n)
        return found

    def heavy(self) -> Sequence[int]:
        """The heavy days of the lift, those of the week of the day left out: it has none."""
        return [own[-1] for own in self.days_of_weeks().values()]
