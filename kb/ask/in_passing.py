"""A trouble of the body told in passing, in a long question about something else: mild, or of the past, and no more."""

import re

__all__ = ["HARD", "IN_PASSING", "LEAST_WORDS", "MILD"]

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
    r"\b(?:sharp|stab\w*|burn(?:s|ing)|night|numb\w*|tingl\w*|pins|sw[eo]ll\w*|locks up|giv(?:es|ing) way|weaker"
    r"|getting worse"
    r"|worsen\w*|every (?:rep|time|lift)|click\w*|dislocat\w*|sublux\w*|popped|chest|heart|breath(?:less|ing)|faint\w*"
    r"|dizz\w*|light ?headed|pregnan\w*|fever|ill(?:ness)?|bug|flu|pain\w*|hurt\w*|agony|neck|spine|spinal|disc|head"
    r"|last night|this morning|child|kid|daughter|son|boy|girl)\b"
    r"|\bback (?:\w+ ){0,2}(?:ach\w*|sore)\b|\b(?:sore|aching|achy|bad) (?:\w+ )?back\b"
)
"""Words that make more of it: then the caution stands alone."""
