"""What others advise, or the coach asks about, beside the fault: more strength, more stretching, the lift anew."""

import re

from kb.ask.person import with_quotes_as_words
from kb.terms import Cause

__all__ = ["advised"]

_MORE = r"(?:heavier|heavy|more|extra|harder|some|do|doing|needs?|adds?|want\w*)"
_WHAT = r"(?:(?:heavy|heavier|more|extra|back|front|overhead|strict|shoulder|leg|clean|snatch|push|of|the|to) ){0,3}?"

STRONGER = re.compile(
    rf"\b{_MORE} {_WHAT}(?:pulls?|pulling|squats?|squatting|press(?:es|ing)?|deadlifts?|deadlifting|strength\w*)\b"
    r"|\b(?:get(?:s|ting)?|be|grow|am i just|is (?:he|she|it) just) (?:stronger|too weak)\b"
    r"|\bnot strong enough\b|\bjust weak\b"
)
STRETCHED = re.compile(rf"\b{_MORE} {_WHAT}(?:stretch\w*|mobility\w*|yoga)\b")
ANEW = re.compile(
    r"\b(?:relearn\w*|rebuild\w*|from scratch|start(?:ing)? (?:all )?over|(?:technique|start|lift) is (?:all )?broken"
    r"|(?:learn|teach) (?:him |her |me |them )?(?:the )?(?:\w+ )?(?:again|anew))\b"
)
"""What was advised, or is asked, in folded words."""

SAID = {
    "strength": "Heavier pulls, squats or presses? They won't mend it alone, for by this cause strength isn't what is"
    " short: {kind}. They keep the place they had, after the drills; more of them is for another day.",
    "mobility": "More stretching? It won't mend it, for by this cause no joint stops it: {kind}. What was stretched"
    " before stays.",
    "anew": "The lift anew? No: what is right stays untouched. Only this fault is worked on, and the whole lift is done"
    " in every session, at a weight at which it goes well.",
}
"""What is answered, by what it would train. Common practice, no source."""

KINDS = {
    "mobility": "a joint stops it",
    "strength": "strength is what is short",
    "position-sense": "it is felt wrongly",
    "timing": "it comes at the wrong time",
    "understanding": "they do what they think is right",
    "set-up": "it begins in how one stands and holds",
    "nerve": "it is fear",
    "earlier": "it is made earlier in the lift",
}
"""A cause's kind, as the end of a sentence."""


def advised(text: str | None, cause: Cause) -> tuple[str, ...]:
    """What is answered to advice in the words beside a fault, where it isn't what this cause calls for.

    >>> from kb.terms import Cause
    >>> [each[:15] for each in advised("do we need heavier pulls?", Cause(id="late", kind="timing", text=""))]
    ['Heavier pulls, ']
    """
    if text is None:
        return ()
    said, kind = with_quotes_as_words(text), KINDS[cause.kind]
    found = []
    if STRONGER.search(said) and cause.kind not in {"strength", "earlier"}:
        found.append(SAID["strength"].format(kind=kind))
    if STRETCHED.search(said) and cause.kind not in {"mobility", "earlier"}:
        found.append(SAID["mobility"].format(kind=kind))
    if ANEW.search(said):
        found.append(SAID["anew"])
    return tuple(found)
