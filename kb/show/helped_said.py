"""What is said of what made it right at once: how long it stays, or where it doesn't belong."""

import re

from kb.words import fold

__all__ = ["helped_said"]

_KINDS: tuple[tuple[re.Pattern[str], str], ...] = (
    (
        re.compile(r"\bstraps?\b"),
        "In pulls and deadlifts they may stay while the hook is learned, a set fewer each week; never in what is"
        " caught.",
    ),
    (
        re.compile(
            r"\b(?:plates?|discs?|books?|boards?|wedges?|blocks?|something)\b(?: \w+){0,3} (?:heels?|foot|feet)\b"
            r"|\bheels? (?:raised|up|on)\b"
        ),
        "That says what is short; the way there is firm raised shoes, which stay. Discs or boards are for slow squats"
        " with a stick, never to lift or land on.",
    ),
    (
        re.compile(r"\b(?:blocks?|raised (?:bar|start)|bar (?:was )?raised|from (?:the )?(?:hang|knees?))\b"),
        "So the work begins there: whole sets from it, then a disc's thickness lower, or the next part further down,"
        " once three sets running are right. Nothing is swapped within a set, and the lift comes last.",
    ),
    (
        re.compile(r"\b(?:mirrors?|window|film\w*|video|screen)\b"),
        "So it leads, and fades: two with it, then two without and a guess before looking, and gone before the last"
        " drill. No bar before glass: there a phone, from the side or well off.",
    ),
    (
        re.compile(
            r"\b(?:outside|outdoors|garden|yard|concrete|platform|shoes?|barefoot|soles?|rest\w*|chalk"
            r"|(?:thinner|other|another|women\w*) bar|(?:wider|narrower|closer) (?:grip|hands?|stance|feet)"
            r"|(?:grip|hands?|stance|feet) (?:\w+ ){0,2}(?:wider|narrower|closer)"
            r"|other foot|(?:left|right) foot (?:in front|first))\b"
        ),
        "So it leads and simply stays: the first set of each session begins with it, and it is marked or written down."
        " Nothing goes to and fro.",
    ),
)
"""What says which kind of help it was, in folded words, and what becomes of it. Common practice, no source."""

_FADES = (
    "So it leads. A grip, a stance, firm shoes or a limit simply stays. A word, a mark, a count or a stop fades: one"
    " set of just that first, every repetition of drill 1 with it, then every other one, in the lift the first of each"
    " set; gone once three running are right without it, back as soon as the fault is. A hand on the bar, or anything"
    " loose underfoot, is no help."
)
"""What becomes of any other. Common practice, no source."""


def helped_said(helped: str) -> str:
    """What made it right at once, and what becomes of it.

    >>> helped_said("straps")
    'Helped at once: straps. In pulls and deadlifts they may stay while the hook is learned, a set fewer each week; \
never in what is caught.'
    """
    folded = fold(helped)
    told = next((text for pattern, text in _KINDS if pattern.search(folded)), _FADES)
    return f"Helped at once: {helped}. {told}"
