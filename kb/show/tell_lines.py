"""How to tell a fault's causes apart, as a short list: the cheapest checks that do, in order."""

from collections.abc import Sequence

from kb.ask.tells import decide
from kb.show.coach_words import human, listed
from kb.show.setting import Setting, hanging, titled
from kb.terms import Fault

__all__ = ["tell_lines"]


def tell_lines(fault: Fault, setting: Setting) -> list[str]:
    """The checks: what to have done, what to look at, and which causes a yes and a no point to."""
    decision = decide(fault)
    lines: list[str] = []
    for n, tell in enumerate(decision.tells, 1):
        lines += hanging(f"  {n}. ", f"{tell.do} {tell.look}", setting)
        lines += hanging("     ", f"Yes: {_causes(tell.yes)}. No: {_causes(tell.no)}.", setting)
    if decision.left_together:
        pairs = listed([f"{human(a)} from {human(b)}" for a, b in decision.left_together])
        lines += hanging("  ", f"None of these tells {pairs}.", setting)
    return titled(f"To tell the causes apart ({decision.seconds} s)", lines, setting)


def _causes(ids: Sequence[str]) -> str:
    return listed([human(each) for each in ids], "or") or "nothing new"
