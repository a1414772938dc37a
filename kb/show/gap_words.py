"""What a new drill would have to be, said as one would ask for it."""

from typing import TYPE_CHECKING

from kb.show.coach_words import CATCHES, LOADS, SPEEDS, SPLIT_CATCHES, listed, place
from kb.terms import Catch

if TYPE_CHECKING:
    from kb.check.report.gaps import Gap

__all__ = ["gap_asked", "gap_worth"]

NOTCH = 300
"""What a notch of a step costs in a chain."""


def gap_asked(gap: "Gap") -> str:
    """The drill, by what it is for and where it would stand."""
    fault, cause = gap.works_on
    aim = f"for {cause} of {fault}"
    if (gap.fault, gap.cause) != gap.works_on:
        aim += f" (which makes {gap.fault})"
    if gap.reach is None:
        return f"{gap.lift}: preparation {aim}."
    first, last = gap.reach
    catches = SPLIT_CATCHES if "jerk" in gap.lift else CATCHES
    where = f"at {place(first)}" if first == last else f"from {place(first)} to {place(last)}"
    how = [where, SPEEDS[gap.speed], f"with a {LOADS[gap.load]}"]
    how += [catches[gap.catch]] if gap.catch is not Catch.NONE else []
    return f"{gap.lift}: a {gap.stage.word} {aim}: {', '.join(how)}."


def gap_worth(gap: "Gap") -> str:
    """What it would be worth, and how many drills act on that cause now."""
    parts = [f"opens its chain with {listed(gap.opens)}"] if gap.opens else []
    if gap.joins:
        parts.append("brings it within one sitting")
    if gap.saves:
        word = "saves" if gap.saves > 0 else "costs the others"
        parts.append(f"{word} {abs(gap.saves):,} ({abs(gap.saves) / NOTCH:.1f} notches)")
    now = f"{gap.acting} act{'s' * (gap.acting == 1)} on it now" if gap.acting else "none acts on it now"
    return f"{listed(parts)}; {now}"
