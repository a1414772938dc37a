"""Troubles that are the grip's, the skin's or the bar's own: cautioned first, and then what was seen is answered.

Each only where nothing else of the body is in trouble: all that is left is for somebody qualified.
"""

import re
from typing import NamedTuple

__all__ = [
    "BRUISED",
    "KNOCKED",
    "LANDED",
    "MINORS",
    "NEXT_DAY",
    "RACKED",
    "SCRAPED",
    "SORE",
    "SPOTS",
    "SQUEEZE",
    "Minor",
    "tells",
]

SQUEEZE = (
    "A hook grip squeezes the thumb. What ends as the hand opens is the grip's own: tape round the thumb, the thinnest"
    " bar, short sets, the hand open in between, or no hook for today. Pain in the joint, pain that stays, a swollen or"
    " numb thumb: no hook, and ask someone qualified first."
)
"""What comes first where only the thumb is said to hurt, and only in the hook. Common practice, no source."""

SCRAPED = (
    "Broken skin: no more on it today. Wash it, cover it, and wipe the bar; long socks or trousers for shins, tape or"
    " an easier grip for palms. Deep, dirty, red round it or not closing: ask someone qualified first."
)
"""What comes first where only the skin of shins or palms is said to be open. Common practice, no source."""

BRUISED = (
    "A bruise where the bar meets hips, thighs or knees: no contact there until it is gone; then a brush and no bang,"
    " with a folded towel under the shorts if need be. Deep, spreading, or without a blow: ask someone qualified first."
)
"""What comes first where only the place that the bar meets is said to be bruised. Common practice, no source."""

NEXT_DAY = (
    "An ache that comes the day after and goes by itself: less of it, lighter, and not again before it is gone. One"
    " that is felt in the lift, sits in one spot, grows or stays: leave out what brings it on, and ask someone"
    " qualified first."
)
"""What comes first where limbs are said to ache the day after, and no more. Common practice, no source."""

SORE = (
    "Sore in the thick of the muscle, on both sides, a day to three after much or new work, and easing as it warms:"
    " come. Warm up ten minutes longer, then light and few, nothing deep or slow on what is sore, and nothing of what"
    " made it until it is gone. In one spot or on one side, swollen, not less on the third day, or dark urine: no"
    " training, and a doctor first."
)
"""What comes first where muscles are said to be sore from a session, and no more: whether to come at all. Common
practice, no source."""

RACKED = (
    "Wrists bent back under a bar ache. What goes as soon as the bar lies on the shoulders, or is put down, is the"
    " rack's own: a stick, open fingers or straps until it lies there, and no bar held in the hands. Pain in one spot,"
    " with swelling, numb fingers, or that stays: leave the rack alone, and ask someone qualified first."
)
"""What comes first where wrists are said to ache in the rack, and no more. Common practice, no source."""


KNOCKED = (
    "An elbow that meets the knee bends the wrist back hard, and wrists have broken so: no clean at full depth, and"
    " no weight in one, until the elbows pass the knees with a stick every time; meanwhile power cleans, and front"
    " squats with the elbows high. A wrist that was hurt by one hard knock, is swollen, or hurts at rest, in a grip or"
    " when pressed: someone qualified first."
)
"""What comes first where a wrist is said to hurt as elbow and knee meet, and only then. Common practice, no source."""


LANDED = (
    "A bar that drops on to the collarbones hurts: nothing more dropped on them today, and no weight that isn't met"
    " without a sound; a stick, then the lightest bar. A lump, pain on lifting the arm or on a breath, a blow to the"
    " throat, or what stays: ask someone qualified first."
)
"""What comes first where only a bar that lands on the collarbones is said to hurt. Common practice, no source."""


SPOTS = (
    "Spots or grey sight under a bar: let it go in front at once, step back, sit or lie down, and no more bar today."
    " New, fainting or nearly, at less effort, at rest, or with chest pain, an odd heartbeat or a headache: a doctor"
    " first, and for chest pain or a faint an emergency call. Looked at, and nothing found: no bar against the throat,"
    " a little breath let out once past the hardest point, and no weight that isn't stood up briskly."
)
"""What comes first where sight greys after an effort and a doctor has looked. Common practice, no source."""


class Minor(NamedTuple):
    """A trouble that is the grip's or the skin's own: what comes first, and the patterns by which it is told.

    `speaks` must be there, `stays` mustn't, nor `lasts` within `NEAR` words of what is said, and nothing of pain may be
    left once `said` is taken out.
    """

    says: str
    speaks: re.Pattern[str]
    said: re.Pattern[str]
    stays: re.Pattern[str]
    lasts: re.Pattern[str] | None = None


NEAR = 5
"""Words on either side of a trouble in which a word of time is taken to be about it. Ours."""


def tells(minor: Minor, folded: str) -> bool:
    """Whether folded words speak of this trouble and of nothing that makes more of it.

    >>> tells(MINORS[0], "thumb hurts in the hook"), tells(MINORS[0], "in the hook the thumb still hurts after days")
    (True, False)
    """
    if not minor.speaks.search(folded) or minor.stays.search(folded):
        return False
    if minor.lasts is None:
        return True
    for found in minor.said.finditer(folded):
        before, after = folded[: found.start()].split()[-NEAR:], folded[found.end() :].split()[:NEAR]
        if minor.lasts.search(" ".join((*before, found.group(), *after))):
            return False
    return True


_SPOTS = r"(?:(?:white|black|grey|gray) (?:spots|dots|specks|stars)|(?:sees?|saw|seeing) (?:stars|spots))"
_SQUEEZES = r"(?:hurts?|hurting|sore|ach(?:es|ing)|pinch(?:es|ed|ing)?|painful|pain)"
_OPEN = r"(?:bleed(?:s|ing)?|bled|torn|scrap(?:es|ed|ing)|raw)"
_SKIN = r"(?:shins?|palms?|callus(?:es)?|skin)"
_BLEEDS = r"(?:bleed(?:s|ing)?|bled|scrap(?:es|ed|ing))"
_COLLAR = r"(?:collar ?bones?|clavicles?)"
_DROPS = (
    r"(?:crash(?:es|ing)?|bang(?:s|ing)?|slam(?:s|ming)?|drops?|dropping|lands?|landing|thumps?|thuds?|thudding|hits?"
    r"|smash(?:es|ing)?)"
)
_EACH, _KNOCKS = r"(?:when|each time|every time)", r"(?:happens?|hits?|touch(?:es)?|knocks?|meets?)"
_HURTS = r"(?:hurts?|hurting|sore|painful|bruis(?:e|es|ed|ing))"
_ACHES = r"(?:ach(?:es?|ing|y)|sore(?:ness)?)"
_LIMBS = r"(?:wrists?|forearms?|hands?|fingers?|thighs?|quads?|calf|calves|legs?|glutes|muscles?|upper arms?|traps)"
_THICK = (
    r"(?:thighs?|quads?|hamstrings?|calf|calves|legs?|glutes|buttocks|backside|bum|muscles?|upper arms?|triceps"
    r"|biceps)"
)
_FROM = (
    r"(?:yesterday|(?:on|since|from|after) (?:last )?(?:mon|tues|wednes|thurs|fri|satur|sun)days?(?: s)?"
    r"|(?:from|after|since) (?:\w+ ){0,3}?(?:squats|lunges|session|training|class|workout|lesson)"
    r"|(?:two|2) days ago|doms)"
)
_AFTER = r"(?:(?:the |a )?(?:next|following) (?:day|morning)|(?:the |a )?(?:day|morning) after)"

MINORS = (
    Minor(
        SQUEEZE,
        re.compile(r"\b(?:hook(?:ed|ing)?|grip)\b"),
        re.compile(
            rf"\bthumbs?\b(?: (?!wrist|elbow|back|shoulder|hand)\w+){{0,4}}? {_SQUEEZES}\b"
            rf"|\b{_SQUEEZES} (?:\w+ ){{0,3}}?thumbs?\b"
        ),
        re.compile(
            r"\b(?:joint|knuckle|base|wrist|numb\w*|tingl\w*|sw[eo]ll\w*|blue|black|nail|sharp|injur\w*|broke\w*"
            r"|sprain\w*|jammed|child\w*|years? old)\b"
        ),
        re.compile(
            r"\b(?:still|days|weeks|months|afterwards|after(?! (?:\w+ )?rep)|night|always|since(?! (?:\w+ )?thumbs?))\b"
        ),
    ),
    Minor(
        BRUISED,
        re.compile(
            r"\bbar\b.*\b(?:kneecaps?|knees)\b|\b(?:kneecaps?|knees)\b.*\bbar\b|\b(?:hips?|thighs?|pelvis|pubic)\b"
        ),
        re.compile(r"\bbruis(?:e|es|ed|ing)\b"),
        re.compile(
            r"\b(?:pop\w*|swoll\w*|numb\w*|(?:after|from|in) (?:a|the) fall|fell on|deep|spread\w*|groin"
            r"|muscle(?! (?:snatch\w*|clean\w*))|forearm|elbow|knee|(?:lower|upper|mid|my|her|his|the|on) back|rib\w*"
            r"|child\w*|years? old|pregnan\w*)\b"
        ),
    ),
    Minor(
        LANDED,
        re.compile(rf"\b{_DROPS}\b(?: \w+){{0,10}}? {_COLLAR}\b|\b{_COLLAR}\b(?: \w+){{0,10}}? {_DROPS}\b"),
        re.compile(
            rf"\b(?:and |which |that |she says |he says )?(?:it |they |that )?{_HURTS}\b"
            rf"(?: (?:on )?(?:the |my |her |his )?{_COLLAR})?"
        ),
        re.compile(
            r"\b(?:pop\w*|crack\w*|lump\w*|swoll\w*|numb\w*|tingl\w*|throat|neck|windpipe|breath\w*|arms?"
            r"|shoulders? hurt|wrists?|knees?|back|still|always|days|weeks|since|night|broke\w*|fractur\w*|sharp"
            r"|one side|fell|child\w*|years? old|pregnan\w*)\b"
        ),
    ),
    Minor(
        KNOCKED,
        re.compile(r"\belbows?\b(?: \w+){0,8}? knees?\b|\bknees?\b(?: \w+){0,8}? elbows?\b"),
        re.compile(
            r"\b(?:it |that |which )?(?:hurts?|aches?)(?: a (?:bit|little))? (?:my |the |her |his )?wrists?"
            rf"(?: {_EACH}(?: (?:it|they|that))?(?: {_KNOCKS})?)\b"
            rf"|\bwrists? (?:hurts?|aches?) {_EACH}(?: (?:it|they|that))?(?: {_KNOCKS})\b"
        ),
        re.compile(
            r"\b(?:sharp|sw[eo]ll\w*|numb\w*|tingl\w*|pop\w*|crack\w*|click\w*|still|since|always|night|days|weeks"
            r"|broke\w*|sprain\w*|worse|grip\w*|at rest|child\w*|years? old|pregnan\w*)\b"
        ),
    ),
    Minor(
        NEXT_DAY,
        re.compile(rf"\b{_AFTER}\b"),
        re.compile(rf"\b{_LIMBS}(?: \w+){{0,4}}? {_ACHES}\b|\b{_ACHES} (?:\w+ ){{0,3}}?{_LIMBS}\b"),
        re.compile(
            r"\b(?:sharp|sw[eo]ll\w*|numb\w*|tingl\w*|joints?|pop\w*|click\w*|locks|spot|one side|worse|more each|night"
            r"|still|always|since|days|dark|brown|elbows? (?:hurt\w*|ach\w*)|fell|injur\w*|child\w*|years? old"
            r"|pregnan\w*)\b"
        ),
    ),
    Minor(
        SORE,
        re.compile(rf"\b{_FROM}\b"),
        re.compile(
            rf"\b{_THICK}(?: \w+){{0,5}}? {_ACHES}\b|\b{_ACHES} (?:\w+ ){{0,3}}?{_THICK}\b"
            r"|\b(?:doms|muscle soreness)\b|\b(?:no|not) (?:one |a )?sore spot\b"
            r"|\b(?:no|without) swelling\b"
        ),
        re.compile(
            r"\b(?:sharp|(?<!no )sw[eo]ll\w*|numb\w*|tingl\w*|joints?|pop\w*|click\w*|locks|one side|worse|night|always"
            r"|weeks|dark|brown|fell|injur\w*|pull(?:ed)? (?:a|my|his|her)|torn?|tear|child\w*|years? old"
            r"|pregnan\w*)\b"
            r"|(?<!no )(?<!no sore )(?<!no one )(?<!no one sore )(?<!not one sore )\bspot\b"
        ),
    ),
    Minor(
        RACKED,
        re.compile(r"\b(?:rack|elbows?|shoulders|fingers?|palms?|hands|front squats?)\b"),
        re.compile(
            rf"\bwrists? {_ACHES}\b|\b{_ACHES} (?:\w+ ){{0,2}}?wrists?\b"
            r"|\bwrists hurt(?: a (?:bit|little))? (?:afterwards|after it|in the (?:front )?rack)\b"
            r"|\bwrists hurt(?: a (?:bit|little))?\b(?! (?:when|in|at|on|for|since|all|every|even|still|most|after))"
        ),
        re.compile(
            r"\b(?:sharp|sw[eo]ll\w*|numb\w*|tingl\w*|joints?|pop\w*|click\w*|locks|spot|worse|night|still|always"
            r"|since|days|weeks|fell|injur\w*|broke\w*|break|operat\w*|child\w*|overhead|pregnan\w*"
            r"|(?:left|right|one) wrist)\b"
        ),
    ),
    Minor(
        SCRAPED,
        re.compile(rf"\b{_SKIN}\b|\bknees(?: \w+){{0,2}} {_BLEEDS}\b"),
        re.compile(
            rf"\b{_SKIN}(?: \w+){{0,3}}? {_OPEN}\b|\b{_OPEN} (?:\w+ ){{0,2}}?{_SKIN}\b"
            rf"|\b(?:knees|they)(?: \w+){{0,3}}? {_BLEEDS}\b|\b{_BLEEDS}\b"
        ),
        re.compile(
            r"\b(?:deep|stitch\w*|infect\w*|pus|swoll\w*|nose|head|mouth|ear|eye|muscle|tendon|ligament|still"
            r"|(?:won|doesn) ?t stop|child\w*|years? old|pregnan\w*)\b"
        ),
    ),
    Minor(
        SPOTS,
        re.compile(
            r"\b(?:checked|looked at|cleared|examined)(?: \w+){0,4} (?:doctor|gp|cardiologist)\b"
            r"|\bdoctor(?: \w+){0,3} (?:found nothing|cleared)\b"
        ),
        re.compile(rf"\b(?:(?:sees?|saw|seeing|with|has|gets?) )?{_SPOTS}\b"),
        re.compile(
            r"\b(?:not|t|never|without|yet|faint\w*|pass(?:ed|es) out|black\w* out|chest|heart\w*|headach\w*|head"
            r"|double|blind|slur\w*|fall\w*|fell|collapse[ds]?|collapsing|at rest|rested|worse"
            r"|each time sooner|speech|numb\w*|tingl\w*|child\w*|years? old|pregnan\w*)\b"
        ),
    ),
)
