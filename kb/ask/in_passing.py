"""A trouble of the body told in passing, in a long question about something else: mild, or of the past, and no more."""

import re

__all__ = ["HARD", "IN_PASSING", "LEAST_WORDS", "MILD", "SIGNS", "VITAL"]

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

_MOVES = r"(?:back|away|forward|forwards|up|down|through|in front|first|falls?|drops?|dips?|tips?|leans?|collapses?)"

VITAL = re.compile(
    r"\b(?:heart|bug|flu|spine|spinal|discs?|dislocat\w*|sublux\w*"
    r"|(?<!behind my )(?<!behind his )(?<!behind her )(?<!behind the )"
    r"(?<!back of my )(?<!back of his )(?<!back of her )(?<!back of the )"
    rf"(?:head|neck|chest)(?! {_MOVES}))\b"
    r"|\bback (?:\w+ ){0,2}(?:ach\w*|sore)\b|\b(?:sore|aching|achy|bad) (?:\w+ )?back\b"
)
"""What isn't mild there, unless somebody who may has cleared it."""
