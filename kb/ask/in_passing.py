"""A trouble of the body told in passing, in a long question about something else: mild, or of the past, and no more."""

import re
from collections.abc import Sequence

__all__ = ["HARD", "IN_PASSING", "LEAST_WORDS", "MILD", "NOT_OVER", "OVER", "SIGNS", "STAYS", "VITAL", "is_over"]

IN_PASSING = (
    "Said in passing, but it comes first: nothing that brings it on, lighter than usual, and stop when it is felt. Hurt"
    " there once: free of pain today, and cleared to lift? Felt in the lift itself, there for a fortnight, never looked"
    " at, or not sure: ask someone qualified first, a doctor or a physiotherapist."
)
"""What comes first there; then the rest of the words is answered. Common practice, no source."""

LEAST_WORDS = 20
"""A question of fewer words is about the trouble. Ours."""

MILD = re.compile(
    r"^(?:ach(?:e|es|ed|ing|y)|sore(?:ness)?|bruis\w*|twing\w*|niggl\w*|grumbl\w*|crank\w*|sprain\w*|strain\w*"
    r"|physio\w*"
    r"|rehab\w*|heal(?:ed|ing)|operat\w*|surg\w*|fractur\w*|inju?e?r\w*|stitches|ligament\w*|menisc\w*|cartilage|acl"
    r"|reconstruct\w*|(?:blue|white|red) in the face|broke.*|tore .*|torn|old .*|healed .*"
    r"|bad (?:knee|wrist|elbow|hip|ankle|(?:big )?toe)s?"
    r"|(?:knee|wrist|elbow|hip|ankle)s? (?:\w+ ){0,2}(?:crank|grumbl)\w*)$"
)
"""Words and phrases of trouble that are mild, or of the past."""

HARD = re.compile(
    r"\b(?:sharp (?:pain|ache|twinge|stab)|stab\w*|numb\w*|tingl\w*|pins and|sw[eo]ll\w*|breathless|faint\w*|dizz\w*"
    r"|light ?headed|pregnan\w*|fever|ill(?:ness)?|headach\w*|nause\w*|vomit\w*|pain\w*|hurt\w*|agony)\b"
)
"""Words that make more of it wherever they stand: then the caution stands alone."""

SIGNS = re.compile(
    r"\b(?:sharp|burn(?:s|ing)|nights?|locks up|giv(?:es|ing) way|weaker|getting worse|worsen\w*"
    r"|every (?:rep|time|lift)|click\w*|popped|breathing|this morning)\b"
)
"""Words that make more of it in the same sentence, or the next: the same."""

_MONTH = (
    r"(?:january|february|march|april|may|june|july|august|september|october|november|december|spring|summer|autumn"
    r"|winter|ramadan)"
)

OVER = re.compile(
    r"\b(?:ago|years back|last (?:year|winter|spring|summer|autumn|season|month)|(?:two|three|few) (?:winters|summers)"
    rf"|in (?:the )?(?:first half of |end of |new |early |late )?(?:{_MONTH}|year)|(?:back in|end of|start of) {_MONTH}"
    r"|at the (?:beginning|end|start) of|the first (?:two|few|couple)|way back|as one does"
    r"|as an? (?:child|kid|boy|girl|student|teenager)|(?:as|in|since) childhood|since (?:19|20)\d\d"
    r"|at (?:school|uni\w*|college|(?:eleven|twelve|(?:thir|four|fif|six|seven|eigh|nine)teen|twenty))"
    r"|once(?! (?:more|again|it|the|i|he|she|we|they))|in a comp|ended with|until (?:1[5-9]|[2-5]\d)"
    r"|(?:all |is |was )?over (?:now|since)|all over now|gone|(?:all )?(?:back to normal|balanced)"
    r"|used to (?:them|it) now|adapted|fine (?:this year|now|since)|all (?:good|fine|clear|well)"
    r"|no after ?effects|healed|well managed|approved"
    r"|never (?:once |without )?(?:hurt|hurting|been)|without (?:ever )?hurting|for decades"
    r"|long(?: since)? (?:ago|gone|past|over|healed)|(?:1|one|a) day|same (?:day|evening)|that (?:day|evening|time))\b"
)
"""What says that a trouble was, and is no more."""

NOT_OVER = re.compile(
    r"\b(?:still|again|today|tonight|yesterday|this (?:week|morning|evening)|last night"
    r"|(?:every|each) (?:rep|time|lift|night|day)|day after"
    r"|(?:when|whenever|if) (?:i|he|she|we|they|it|the|my|his|her)(?! (?:was|were|had))"
    r"|since (?:then|yesterday|last|this|the|a|he|she|i|mon|tues|wednes|thurs|fri|satur|sun)\w*"
    r"|at night|nights|wak(?:es|ing)|worse\w*|getting|keeps|comes back|now (?:it|he|she|i|my|his|her|every)"
    r"|sw[eo]ll\w*|giv(?:es|ing) way|tingl\w*|chest|heart|breath(?:less)?|faint\w*|black(?:s|ed)? out|clots?|strokes?"
    r"|seizure|fits?|concuss\w*|dislocat\w*|socket|came out|spin\w+|skull|head|neck|disc|pregnan\w*|birth|caesar\w*"
    r"|section|operat\w*|surgery|cancer|not (?:been |yet )?(?:cleared|checked|seen)|(?:\w+) days (?:ago|back|after))\b"
)
"""What says in the same sentence that it isn't, or isn't to be taken lightly."""

STAYS = re.compile(
    r"\b(?:still|again|worse\w*|keeps|comes back|came back|not (?:been |yet )?(?:cleared|checked|seen))\b"
)
"""The same in the next."""


def is_over(troubles: Sequence[tuple[str, str]]) -> bool:
    """Whether each sentence that tells of trouble, or the one behind it, says that it is over, neither that it isn't.

    >>> is_over([("sore lats in the first two weeks", "now they are used to it")])
    True
    >>> is_over([("the knee hurt last year", "it still does")])
    False
    """
    return all(
        OVER.search(f"{said} {behind}") and not NOT_OVER.search(said) and not STAYS.search(behind)
        for said, behind in troubles
    )


_MOVES = r"(?:back|away|forward|forwards|up|down|through|in front|first|falls?|drops?|dips?|tips?|leans?|collapses?)"

VITAL = re.compile(
    r"\b(?:heart|bug|flu|spine|spinal|discs?|dislocat\w*|sublux\w*"
    r"|(?<!behind my )(?<!behind his )(?<!behind her )(?<!behind the )"
    r"(?<!back of my )(?<!back of his )(?<!back of her )(?<!back of the )"
    rf"(?:head|neck|chest)(?! {_MOVES}))\b"
    r"|\bback (?:\w+ ){0,2}(?:ach\w*|sore)\b|\b(?:sore|aching|achy|bad) (?:\w+ )?back\b"
)
"""What isn't mild there, unless somebody who may has cleared it."""
