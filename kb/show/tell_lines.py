"""How to tell a fault's causes apart, as a short list: the cheapest checks that do, in order."""

import re
from collections.abc import Sequence

from kb.ask.tells import decide
from kb.show.coach_words import human, listed
from kb.show.setting import Setting, hanging, titled
from kb.terms import Fault

__all__ = ["only_heavy_said", "tell_lines"]

_LIGHT_BAR = re.compile(r"\b(?:light|empty) bar\b", re.IGNORECASE)

ONLY_HEAVY = (
    "Where it shows only from some weight on, a light bar proves nothing: make that check at the least weight that"
    " shows it, if that went well today, for one round."
)
"""Said beside checks with a light bar. Common practice, no source."""


FROM_A_WEIGHT = (
    "It shows only from some weight on: a check with a stick or a light bar that shows nothing proves nothing. Film two"
    " lifts at the least weight that shows it, if the day is good, and look there for the same sign; eyes open, and"
    " nothing else that a check asks for is tried with that weight."
)
"""Said beside all checks where the weight from which it shows is told. Common practice, no source."""


def only_heavy_said(fault: Fault) -> str:
    """What to do with checks that ask for a light bar where the fault is heavier; nothing where none does."""
    return ONLY_HEAVY if any(_LIGHT_BAR.search(tell.do) for tell in decide(fault).tells) else ""


def tell_lines(fault: Fault, setting: Setting, *, shows_from: bool = False) -> list[str]:
    """The checks: what to have done, what to look at, and which causes a yes and a no point to.

    `shows_from` says that it isn't seen under some weight.
    """
    decision = decide(fault)
    if not decision.tells:
        return []
    lines: list[str] = []
    for n, tell in enumerate(decision.tells, 1):
        lines += hanging(f"  {n}. ", f"{tell.do} {tell.look}", setting)
        lines += hanging("     ", f"Yes: {_causes(tell.yes)}. No: {_causes(tell.no)}.", setting)
    if decision.left_together:
        pairs = listed([f"{human(a)} from {human(b)}" for a, b in decision.left_together])
        lines += hanging("  ", f"None of these tells {pairs}.", setting)
    heavy = FROM_A_WEIGHT if shows_from else only_heavy_said(fault)
    lines += hanging("  ", heavy, setting) if heavy else []
    return titled(f"To tell the causes apart ({decision.seconds} s)", lines, setting)


def _causes(ids: Sequence[str]) -> str:
    return listed([human(each) for each in ids], "or") or "nothing new"
