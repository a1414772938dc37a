"""Whom being cleared never clears: a child, a pregnancy, an eating disorder."""

import re

from kb.ask.named import named
from kb.ask.spelling import one_edit_apart

__all__ = [
    "GROWN_IN_YEAR",
    "NAMED_CHILD",
    "NEVER",
    "NEVER_CLEARED",
    "NEVER_SPELT",
    "never_cleared",
]

_OLDER = (
    r"(?! (?:\w+ ){0,2}(?:1[6-9]|[2-9]\d|s\w+teen)\b(?! ?(?:kg|kilos?|cm|reps?|minutes?)))"
    r"(?! (?:\w+ ){0,3}\w+teenth)(?! (?:asleep|(?:was|is|got) born))"
    r"(?! s (?:hamster|dog|cat|room|birth))"
)
"""What stands behind a son or a daughter who is no child, or not who lifts."""

_COUNTED = r"(?! (?:reps|sets|kilos?|kg|cm|weeks|months|years? (?!o)|times|of|seconds|minutes|per|or|to|singles))"
"""What stands behind a number in words that is no age."""

NEVER = (
    r"""
(?:\w+ )?periods? (?:have |has |had )?(?:stopped|gone|stayed away|missing)|(?:missed|lost|no) (?:her |my )?periods?
eating disorder|anorex\w*|bulimi\w*|starv(?:es|ed|ing)|purg(?:es|ed|ing)|turns away from food|stopped eating|hardly eats
expecting(?: (?:a (?:baby|child)|twins|in \w+|again)|$)
weeks (?:gone|along)|months (?:gone|along)|expecting (?:early|\w+ (?:weeks|months))
(?<!wife )(?<!partner )(?:m|is|am|are|re) expecting(?! (?:to|a|the|him|her|it|that)\b)
(?:hasn t|has not|not|without) (?:had )?(?:a |her |my )?periods?(?: \w+){0,3} (?:since|for|months)
(?:my|our|his|her) (?:foster|god|step) ?(?:son|daughter|child){_OLDER}
i have (?:[6-9]|1[0-5]) years?(?! (?:of|in|train\w*|with|under|behind|exper\w*))
(?:lifter|youngest|smallest|kid|cousin|neighbour|nephew|niece) (?:is |who is |aged )?(?:seven|eight|nine|ten){_COUNTED}
(?:lifter|youngest|smallest|kid|cousin|neighbour|nephew|niece) (?:is |who is |aged )?(?:eleven|twelve){_COUNTED}
(?:lifter|youngest|smallest|kid|cousin|neighbour|nephew|niece) (?:is |who is |aged )?(?:thir|four|fif)teen{_COUNTED}
(?:my|her|his|our|the|(?<!as )a|young) (?:kid|daughter|son|toddler){_OLDER}
(?<!as a )(?<!like a )child(?! s play)(?!hood)
(?:father|mother|mum|mom|dad|parents?) of \w+ (?:aged? )?(?:[4-9]|1[0-5])(?! (?:kilos?|kg|weeks|months))
(?:in|at school in) (?:school )?year (?:[7-9]|1[01]|seven|eight|nine|ten|eleven)\b(?! of)
(?:boy|girl|lad|lass|pupil|son|daughter|at school|school)(?: \w+){0,4} in year (?:[3-6]|three|four|five|six)\b
in year (?:[3-6]|three|four|five|six)(?: \w+){0,6} (?:school|parents?|teacher)\b
(?:turn(?:s|ed)?|turning) (?:[6-9]|1[0-5]|thirteen|fourteen|fifteen|twelve)\b(?! (?:kilos?|kg|cm|degrees|reps))
(?:ninth|tenth|eleventh|twelfth|thirteenth|fourteenth|fifteenth|1[0-5]th) birthday
primary school(?! teacher)|year (?:7|8|9|10|11) (?:boy|girl|pupil|lad|lass)
(?:seventh|eighth|ninth|tenth|sixth|fifth) grader?s?
(?:coach\w*|teach\w*|train\w*|groups? of) (?:\w+ ){0,2}?(?:children|kids)\b(?! (?:get|sw|nap|sleep|are|at|from|in))
(?:class(?:es)? (?:of|for)|for|with) (?:\w+ ){0,2}?(?:children|kids)\b(?! (?:get|sw|nap|sleep|are|at|from|in))
(?:children|kids) (?:s )?(?:class|group|session|team|club)
(?:[4-9]|1[0-5]|five|six|seven|eight|nine|ten|eleven|twelve|(?:thir|four|fif)teen) ?(?:(?:yrs?|years?) old|yo)
(?:boy|girl|lad|lass|pupil|aged) (?:of |aged )?(?:[4-9]|1[0-5])(?! (?:\d|kilos?|kg|cm|m[oi]n|week|years? (?!old)))
(?:he|she) (?:is|s) (?:[4-9]|1[0-5])(?! (?:kilos?|kg|cm|m[oi]n|week|years? (?!old)))
(?:boy|girl|lad|lass) (?:of |aged )?(?:five|six|seven|eight|nine|ten|eleven|twelve)(?! years? (?!o))
(?:boy|girl|lad|lass) (?:of |aged )?(?:thir|four|fif)teen(?! years? (?!o))
(?:pupil|aged) (?:of |aged )?(?:five|six|seven|eight|nine|ten|eleven|twelve)(?! years? (?!o))
(?:pupil|aged) (?:of |aged )?(?:thir|four|fif)teen(?! years? (?!o))
""".strip()
    .replace("{_OLDER}", _OLDER)
    .replace("{_COUNTED}", _COUNTED)
    .splitlines()
)
"""Patterns of folded words that say so."""

GROWN_IN_YEAR = re.compile(
    r"(\b(?:lady|woman|man|bloke|chap|guy|grown\W?up|adult|fe?male|(?:1[89]|[2-7]\d)(?: ?(?:yrs?|years?)\W?old)?)\b"
    r"(?:\W+(?:who|is|s|she|he|m|f|now|and)\b){0,3}\W+)in year \w+",
    re.IGNORECASE,
)
"""A grown lifter's year of lifting, in words as they were typed: "a lady of 30 in year three". It isn't a school's."""

NAMED_CHILD = named("[4-9]|1[0-5]")
"""A name with a child's age behind it, in words as they were typed: "Milo, 12, swings it", "Milo (12)"."""

NEVER_CLEARED = re.compile(r"\b(?:" + "|".join((r"pregnan\w*|preggers|trimester|midwife", *NEVER)) + r")\b")
"""All that isn't cleared by a word."""

NEVER_SPELT = ("children", "daughter", "pregnancy", "pregnant", "toddler", "trimester")
"""The same as whole words, which are often misspelt."""


def never_cleared(folded: str) -> bool:
    """Whether folded words speak of a child, a pregnancy or an eating disorder."""
    words = folded.split()
    return bool(NEVER_CLEARED.search(folded)) or any(
        one_edit_apart(word, each) for word in words for each in NEVER_SPELT
    )
