"""What says that there is no trouble of the body after all, and what takes that back."""

import re

__all__ = ["DENIED", "HEDGED", "SENTENCE"]

_WITHOUT = r"(?:without (?:any )?pain|with no pain|pain free)"
_ILL = (
    r"(?:pain(?! (?:killers?|relief|meds?)\b)|(?:old |past |previous )?injur(?:y|ies)|pinch(?:ing)?|ache|aching"
    r"|numbness|tingling|swelling|dizziness)"
)
_NO_PAIN = (
    rf"(?:(?:no|without) {_ILL}(?: (?:or|and|nor|no) {_ILL})*|(?:doesn ?t|does not|don ?t|do not) (?:hurt|ache)"
    r"|(?:nothing|neither|none of it) (?:hurts|aches|is sore|is painful)|not (?:sore|painful|torn)"
    r"|(?:not|isn ?t|aren ?t) in (?:any )?pain|in no pain|never (?:hurts?|aches)"
    r"|never had (?:any |an? )?(?:\w+ )?(?:problems?|trouble|pains?|injur(?:y|ies)|illness(?:es)?)"
    r"|no (?:heart|health|back|knee|shoulder|wrist|hip|medical)"
    r" (?:problems?|troubles?|issues?|complaints?|conditions?))"
)
_UNHURT = (
    r"(?:(?:and|but|she|he|i|they) )?(?:wasn ?t|weren ?t|isn ?t|(?:was|were|is|am|are|got) not|didn ?t get)"
    r" (?:hurt|injured)(?! (?:until|till?|unless|except|much|badly|too|at first|as|that|when|then))"
    r"|(?:nobody|no one) (?:was|got|gets) hurt|without (?:getting hurt|hurting (?:anyone|anybody|themselves))"
    r"|not injured(?! (?:until|till?|unless|except|much|badly|too|at first|as|when))"
)

_FIGURE = (
    r"looks? painful|a (?:real |right )?pain (?:in the neck )?to \w+|hurts (?:my eyes|to (?:look at|watch|see))"
    r"|(?:physically )?hurts to (?:look|watch)|eyes (?:are )?bleed\w*|cold sores?|hay fever|not pain"
    r"|(?:flu|covid|tetanus|booster) (?:jab|shot)|dentist(?: \w+){0,12} numb"
    r"|(?:isn ?t|is not|not|never) dizzy(?: or anything)?"
    r"|(?:red )?(?:lights?|losses|losing|misses|defeats?) (?:that |which )?(?:really |still )?hurts?"
)

_TRADE = r"i (?:m|am) a (?:\w+ )?physio\w*(?: by (?:day|trade))?|works? as a physio\w*|tree surgeons?|surgeon by trade"
_STUDIES = r"physio\w*(?: therapy)? (?:student|trainee|assistant)|(?:student|trainee) physio\w*"
_COLD_OVER = (
    r"(?:had |has had |after )?(?:(?:a|the|her|his|my) (?:\w+ )?(?:cold|sniffles?|runny nose)|(?:the )?flu)"
    r"(?: \w+){0,5}? (?:(?:all )?gone|over|fine|ok|well|better|back to normal)(?: (?:now|again))?\b"
    r"(?! (?:but|except|apart))"
)
_ANOTHERS = (
    r"(?:her|his|my|their|a) (?:friend|mate|team ?mate|sister|brother)(?: \w+){0,2} (?:bruis\w*|broke\w*|hurt|injur\w*)"
    r"(?: (?:a |his |her |the )?(?:\w+ ?bones?|wrist|arm|back|toe|nose))?"
)
_THING = r"(?:windows?|glass|mirrors?|lights?|screens?)"
_PET = r"(?:cat|dog|pet|horse|puppy|kitten)"
_FIGURES = (
    r"numb with (?:boredom|cold)|bored (?:\w+ )?numb|bleed(?:s|ing)? (?:speed|power|energy|height|time)"
    r"|pregnant women (?:\w+ ){0,3}for a living"
    rf"|blacked out the (?:\w+ )?{_THING}|sick (?:of|to death)"
    rf"|{_PET} (?:s )?(?:(?:was|is|got|had|has|an?|been) ){{0,3}}(?:sick|operat\w*|ill|injured|surgery)"
    r"|(?:heart|brain|dental|veterinary|eye|hand|orthop\w+) surgeon(?! (?:said|says|cleared|told))"
)
_WATCHES = (
    r"(?:my|our|his|her) (?:son|daughter|kid|boy|girl|child|toddler|little one) (?:\w+ ){0,4}?"
    r"(?:(?:counts?|films?|filmed|filming|watch\w*|claps?|cheers?|times) (?:for )?(?:me|us|my|our)|watched(?= at))"
)
_OF_AGE = r"(?:1[89]|[2-9][0-9]) (?:years? olds?|yrs? old|yo)"

DENIED = re.compile(
    rf"\b(?:{_WITHOUT}|{_NO_PAIN}|{_UNHURT}|{_FIGURE}|{_TRADE}|{_STUDIES}|{_COLD_OVER}|{_OF_AGE}|{_ANOTHERS}"
    rf"|{_FIGURES}|{_WATCHES})\b"
)
"""Pain denied, or of the pride alone; a physiotherapist who asks; a cold that is over; of age; another's or a figure of
speech; a child who looks on."""

HEDGED = re.compile(
    rf"\b(?:{_WITHOUT}|{_NO_PAIN})(?: \w+){{0,4}} (?:until|till?|unless|except|apart|when|whenever|while|if|only|much"
    r"|most|mostly|usually|normally|often|always|yet|before|below|under|this|today|so far|as|more|left|right|one"
    r"|other)\b"
    r"|\bt(?: \w+){0,6} with(?:out (?:any )?| no )pain\b|\bt(?: \w+)? pain free\b"
    r"|\b(?:not|never|cannot|cant|hardly|barely|rarely|seldom|nearly|almost|mostly|only|just|how|can|could|want"
    r"|wants|wish|hope|way|try|trying|used|get|getting|be|was|were|until|unless|if|when|longer|first|after|before|since"
    rf"|should|would|will)(?: \w+){{0,6}} {_WITHOUT}\b"
    r"|\b(?:if|when|once|until|unless|almost|nearly|that|which|what|where|only|had|was|were|used|not)"
    rf"(?: \w+){{0,2}} {_NO_PAIN}\b"
)
"""Pain denied at times, elsewhere or as a wish: that is pain."""


SENTENCE = re.compile(
    r"[.;!?\n]+(?!\s*(?:except|only (?:when|if|in|at|on|after|under|with|once|for)|unless|until|till|but|apart|when|if"
    r"|though|however|save|and|or)\b)",
    re.IGNORECASE,
)
"""Where a sentence ends: what is said in the next is about something else, unless it takes back what was said."""
