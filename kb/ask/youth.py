"""Who is sixteen or seventeen: no child to be sent away, and not yet to be trained like an adult."""

from kb.ask.named import named

__all__ = ["NAMED_YOUTH", "YOUTH", "YOUTH_SAYS"]

YOUTH_SAYS = (
    "Sixteen or seventeen: with a parent's leave, by the club's rules, and with a coach in the room who is trained to"
    " teach the young. Technique before weight; more goes on only while all repetitions look alike, and no best is"
    " tried while they are growing fast. An ache at heel, shin, knee, hip, back or wrist that is there the next day: no"
    " lifting, and a doctor or a physiotherapist first."
)
"""What comes first where nothing but that age calls for it. Common practice, no source."""

_NO_AGE = r"(?! (?:\d|kilos?|kg|cm|reps?|(?:months|weeks|min\w*)\b|years? (?!old)))"

YOUTH = rf"""
(?:1[67]|sixteen|seventeen) ?(?:(?:yrs?|years?) old|yo)
(?:boy|girl|lad|lass|pupil|aged|kid|daughter|son|teen(?:ager)?) (?:\w+ )?(?:of |aged |is |s )?1[67]\b{_NO_AGE}
(?:boy|girl|lad|lass|pupil|aged|kid|daughter|son) (?:\w+ )?(?:of |aged |is |s )?(?:six|seven)teen(?! years? (?!o))
(?:he|she|who|nephew|niece|cousin|brother|sister|lifter|trainee|student|friend|member) (?:is|s) 1[67]\b{_NO_AGE}
(?:girl|boy|lad|lass|pupil|kid|student|lifter|junior)(?: \w+){{0,4}} (?:is|s) 1[67]\b{_NO_AGE}
(?:is|s|m|am|im|still|only|just) (?:sixteen|seventeen)\b(?! (?:reps|sets|kilos?|kg|cm|weeks|months))
(?:turn(?:s|ed)?|nearly|be|aged) (?:sixteen|seventeen)\b(?! (?:reps|sets|kilos?|kg|cm|weeks|months))
(?:im|i m|i am|ll be|will be|turn(?:s|ed)?|just turned|still|aged) 1[67]\b{_NO_AGE}
(?:sixteen|seventeen) in age|(?:six|seven)teenth birthday|1[67]th birthday|turns? (?:18|eighteen) (?:in|next|soon)
(?:(?:my|our|his|her) )?(?:son|daughter|kid) (?:\w+ )?(?:is |aged )?1[67] (?:1 2|and a half) (?:yrs?|years?) old
(?:my|our|his|her) (?:son|daughter) (?:\w+ ){{0,3}}(?:(?:six|seven)teenth|1[67]th) birthday
1[67] (?:1 2|and a half) (?:yrs?|years?) old|sixth form\w*|lower sixth|(?:year|grade) (?:12|twelve|eleven)\b(?! of)
(?:high school )(?:junior|sophomore|senior)
(?:father|mother|mum|mom|dad|parents?) of \w+ (?:aged? )?1[67]\b(?! (?:kilos?|kg|weeks|months))
""".strip().splitlines()
"""Patterns of folded words that say so."""

NAMED_YOUTH = named("1[67]")
"""A name with that age behind it, in words as they were typed: "Milo, 17, swings it"."""
