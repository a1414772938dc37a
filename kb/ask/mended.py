"""What says that an injury is long over: healed, cleared, or not, and which injuries mend."""

import re

__all__ = ["CLEARED", "MENDED", "MENDS", "UNSETTLED"]

_ASIDE = "fracture|injury|operation|surgery|sprain|strain|break"
_LIMB = "(?:wrist|arm|forearm|elbow|leg|shin|knee|ankle|foot|rib|bone|hand|thumb|finger|toe|collarbone)"
_OF = rf"(?: (?:of|in|to|on) (?:the|my|his|her|a|one) {_LIMB})?"
_COUNT = r"(?:\d+|two|three|four|five|six|seven|eight|nine|ten|twelve|twenty|many|several|some)"
_VITAL = r"heart|head|skull|neck|spin\w+|back|brain|eye|stomach|disc"

MENDED = re.compile(
    rf"\b(?:(?:old|healed) (?:(?:left|right) )?(?:{_LIMB} )?(?:{_ASIDE}){_OF}"
    rf"|(?:{_COUNT} )?(?:years|yrs|winters|summers|seasons) (?:ago|back)|long ago"
    r"|(?:long since )?healed|old(?= (?:broken|fractured))"
    r"|(?:all |fully |been )?signed off|in (?:19|20)\d\d|(?:19|20)\d\d(?= (?:and|all|fully))"
    r"|(?:in|since) (?:his |her |my |their )?childhood|childhood(?= (?:fracture|break|injury|broken))"
    r"|as a (?:child|kid|boy|girl|youngster)|(?:only|just) a bruise"
    r"|(?:(?:was |been |got )?checked (?:over|out)|(?:when (?:he|she|i) was|at) (?:[4-9]|1[0-9])"
    r"(?! ?(?:kg|kilos?|lbs?|per|minutes?|o clock)))"
    r"|(?:(?:my|the|his|her|their) )?(?:physio\w*|doctors?|gp|surgeon) (?:has |have )?(?:said|says?)"
    r"(?: (?:it s|it is|he s|she s|i m|i can|yes|to))? (?:go for it|fine|ok(?:ay)?|good to go|no problem)"
    r"|cleared by (?:a |the |my |his |her |their )?(?:physio\w*|doctors?|gp|surgeon|hospital)|knee scoped)(?!\w)"
)
"""What says that an injury is long ago or healed."""

UNSETTLED = re.compile(
    r"\b(?:not|t|never|half|partly|almost|nearly|badly|barely|hardly|until|when|once|if|get|getting)(?: \w+){0,2}"
    r" (?:healed|(?:years|long) ago|signed off)\b|\bnot (?:an |that )?old\b|\bhealing\b"
    r"|\b(?:years?|yrs?|yo) old\b|\b(?:again|last(?! year)|today|yesterday|recent\w*|new)\b"
    r"|\b(?<! a )(?<!per )(?<!each )(?<!every )(?:days?|weeks?|months?)(?! (?:in|of|a|until|to|away|before)\b)"
    rf"|\b(?:{_VITAL}) (?:{_ASIDE})|\b(?:{_ASIDE})(?: \w+){{0,3}} (?:{_VITAL})\b"
)
"""What says that it isn't, or isn't to be taken lightly: the caution stands alone then."""

MENDS = re.compile(
    rf"\b(?:(?:fractur\w*|operat(?:ed|ion)|surg(?:ery|eries)|sprain\w*|strain\w*|bruis\w*|inju?e?r\w*){_OF}"
    r"|(?:(?:left|right|old) )?acl(?: (?:reconstruct\w*|repair\w*|op|surgery|done))*"
    r"|ligament (?:repair\w*|reconstruct\w*)"
    rf"|stitches|broke(?:n)? (?:(?:his|her|my|a|their|the) )?(?:(?:left|right) )?{_LIMB}"
    r"|(?:(?:a )?(?:mild|slight) )?concussion|(?:pelvic )?physio\w*|post ?(?:birth|natal|partum)\w*)\b"
)
"""Injuries that mend. A joint that came out isn't among them: it may come out again."""


CLEARED = re.compile(
    r"\b(?<!not )(?<!n t )(?<!until )(?<!unless )(?<!if )(?<!when )(?<!once )(?<!be )(?<!get )(?<!never )"
    r"cleared by (?:a |the |my |his |her |their )?(?:doctors?|gp|physio\w*|surgeon|hospital|consultant|neurologist)\b"
)
"""What says that somebody who may has cleared it: then it is settled whenever it was."""
