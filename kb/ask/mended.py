"""What says that an injury is long over: healed, cleared, or not, and which injuries mend."""

import re

__all__ = ["CLEARED", "MENDED", "MENDS", "UNCLEARED", "UNSETTLED", "is_cleared"]

_ASIDE = "fracture|injury|operation|surgery|sprain|strain|break"
_LIMB = "(?:wrist|arm|forearm|elbow|leg|shin|knee|ankle|foot|rib|bone|hand|thumb|finger|toe|collarbone)"
_OF = rf"(?: (?:of|in|to|on) (?:the|my|his|her|a|one) {_LIMB})?"
_COUNT = r"(?:\d+|two|three|four|five|six|seven|eight|nine|ten|twelve|twenty|many|several|some)"
_VITAL = r"heart|head|skull|neck|spin\w+|back|brain|eye|stomach|disc"

MENDED = re.compile(
    rf"\b(?:(?:old|healed) (?:(?:left|right) )?(?:{_LIMB} )?(?:{_ASIDE}){_OF}"
    rf"|(?:{_COUNT} )?(?:years|yrs|winters|summers|seasons) (?:ago|back)|long (?:ago|gone|over)"
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
    r"|(?:(?:a )?(?:mild|slight) )?concussion|(?:pelvic )?physio\w*|post ?(?:birth|natal|partum)\w*"
    r"|(?:after|since) (?:(?:a|the|her|my|giving|having) ){0,2}(?:\w+ )?(?:birth|baby)|(?:gave|given|giving) birth"
    r"|new (?:mum|mom|mother)|(?:had|having) a baby)\b"
)
"""Injuries that mend. A joint that came out isn't among them: it may come out again."""


_WHO = (
    r"(?:(?:women s )?(?:health )?physio\w*|cardiologist|doctors?|gp|surgeon|hospital|consultant|neurologist"
    r"|specialist|clinic)"
)
_FINE = r"(?:happy|fine|ok|okay|content|satisfied)"

_SAYS = r"(?:has |have )?(?:said|says|told (?:me|him|her|them|us)) (?:that |yes )?"
_LOOKED = r"(?:has |have )?(?:checked|examined|looked at|looked over|saw|tested|scanned) (?:\w+ ){1,6}?(?:and )?"

CLEARED = re.compile(
    rf"\b(?:(?:cleared|signed off|passed fit|given the (?:go ahead|all clear|ok)|ok(?:ay)?ed) (?:\w+ ){{0,3}}?by"
    rf" (?:a |the |my |his |her |their )?(?:own )?{_WHO}"
    rf"|{_WHO} (?:has |have |s |ve )?(?:already |now |fully |since |long ago |long since |years ago ){{0,2}}"
    r"(?:cleared|signed|passed|ok(?:ay)?ed) (?:it|me|him|her|them)\b"
    rf"|{_WHO} (?:has |have |s |ve )?(?:given|gave) (?:me |him |her |them |it )?the (?:go ahead|all clear|ok)"
    rf"|{_WHO} (?:has |have |s |ve )?seen (?:it|him|her|me) and (?:is|s|was) {_FINE}"
    rf"|{_WHO} (?:(?:has|have|s|is|was|are|were) )?(?:very |quite |perfectly |now )?(?:happy|content|satisfied)"
    rf"|{_WHO} {_SAYS}(?:it |i |he |she |everything )?(?:s |is |was |m )?(?:all )?(?:{_FINE}|good|clear|sound|healed)"
    r"(?! (?:to|for) (?:walk|sit|work|swim|cycle))"
    rf"|{_WHO} {_SAYS}(?:i|he|she) (?:can|may) (?:train|lift)"
    rf"|{_WHO} {_LOOKED}"
    rf"(?:\w+ ){{0,3}}?(?:all (?:good|fine|clear|well|ok)|nothing (?:wrong|found)|found nothing|(?:is|was|s) {_FINE})"
    rf"|all clear (?:\w+ ){{0,2}}?from (?:a |the |my |his |her )?{_WHO})\b"
)
"""What says that somebody who may has cleared it: then it is settled whenever it was."""

UNCLEARED = re.compile(
    r"\b(?:not|t|never|until|till|unless|if|when|once|wants?|hop(?:es?|ing)|wait(?:s|ing)|before|yet|needs?|must|should"
    r"|will|ll|to|being|getting)"
    r" (?:\w+ ){0,3}?(?:cleared|signed off|passed fit|given the|ok(?:ay)?ed|all clear|seen|checked)\b"
    rf"|\b(?:if|when|once|until|till|unless|wants?|hop(?:es?|ing)|wait(?:s|ing)) (?:\w+ ){{0,3}}?{_WHO}\b"
    r"|\b(?:not|isn t|wasn t|never|no|less than) (?:\w+ )?(?:happy|content|satisfied|fine|good|clear|sound|healed)\b"
    r"|\b(?:but|though|although|just|only) (?:not|no)\b"
    r"|\bstill (?:\w+ ){0,2}(?:hurt|pain|ach|sore|tingl|numb|dizz|swell|swoll)\w*"
    r"|\b(?:hurts|aches|stings) (?:when|if|in|at|on|under|every|again|each|now|today)\b"
)
"""What says that it isn't yet."""


def is_cleared(said: str) -> bool:
    """Whether folded words say that somebody who may has cleared it, and that it isn't yet to come."""
    return bool(CLEARED.search(said)) and not UNCLEARED.search(said)
