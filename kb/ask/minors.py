"""Troubles that are the grip's, the skin's or the bar's own: cautioned first, and then what was seen is answered.

Each only where nothing else of the body is in trouble: all that is left is for somebody qualified.
"""

import re
from typing import NamedTuple

from kb.ask.minor_texts import (
    BACK_AFTER,
    BRUISED,
    KNOCKED,
    LANDED,
    NEXT_DAY,
    NIGGLE,
    ONE_WRIST,
    PINCH,
    RACKED,
    SCRAPED,
    SORE,
    SPOTS,
    SQUEEZE,
    STRETCHED,
    TOE,
)
from kb.ask.youth import YOUTH, YOUTH_SAYS

__all__ = ["MINORS", "Minor", "tells"]


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


def tells(minor: Minor, folded: str, near: str | None = None) -> bool:
    """Whether folded words speak of this trouble and of nothing that makes more of it.

    That is looked for in what stands `near` the trouble: in all of it where that isn't said.

    >>> tells(MINORS[0], "thumb hurts in the hook"), tells(MINORS[0], "in the hook the thumb still hurts after days")
    (True, False)
    """
    if not minor.speaks.search(folded) or minor.stays.search(folded if near is None else near):
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

_BIG_TOE = r"(?:(?:bad|stiff|sore|dodgy) )?(?:big |great )?toes?"
_NIGGLES = r"(?:niggl(?:e|es|ing|y)|crank(?:y|iness)|grumbl(?:e|es|ing|y))"

_YOUTH = re.compile(r"\b(?:" + "|".join(YOUTH) + r")\b")

MINORS = (
    Minor(
        SQUEEZE,
        re.compile(r"\b(?:hook(?:ed|ing)?|grips?|gripping|holds? so)\b"),
        re.compile(
            rf"\bthumbs?\b(?: (?!wrist|elbow|back|shoulder|hand)\w+){{0,4}}? {_SQUEEZES}\b"
            rf"|\b{_SQUEEZES} (?:\w+ ){{0,3}}?thumbs?\b|\bhook(?: (?:grip|thing|bit|one))? (?:\w+ )?{_SQUEEZES}\b"
            rf"|\bthumb (?:grip |thing |bit )?{_SQUEEZES}\b"
            r"|\b(?:tight\w*|hard) that (?:\w+ )?(?:hands?|fingers?) hurts?\b"
        ),
        re.compile(
            r"\b(?:joint|knuckle|base|wrist|numb\w*|tingl\w*|sw[eo]ll\w*|blue|black|nail|sharp|injur\w*|broke\w*"
            r"|sprain\w*|jammed|child\w*|years? old)\b"
        ),
        re.compile(
            r"\b(?:still|days|weeks|months|afterwards|after(?! (?:\w+ )?rep)|night"
            r"|always|since (?:then|last|yesterday|the(?! thumb)|a|mon|tues|wednes|thurs|fri|satur|sun|\d)\w*)\b"
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
            r"|\bwrists (?:are |get )?hurt(?:ing)?(?: a (?:bit|little))?"
            r" (?:afterwards|after(?! (?:a|the|his|her|my) (?:fall|knock|crash))|in the (?:front )?rack)\b"
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
            rf"|\b{_SPOTS} (?:\w+ ){{0,4}}(?:for fun|jok\w*|laugh\w*)\b"
        ),
        re.compile(rf"\b(?:(?:sees?|saw|seeing|with|has|gets?) )?{_SPOTS}\b"),
        re.compile(
            r"\b(?:not|t|never|without|yet|faint\w*|pass(?:ed|es) out|black\w* out|chest|heart\w*|headach\w*|head"
            r"|double|blind|slur\w*|fall\w*|fell|collapse[ds]?|collapsing|at rest|rested|worse"
            r"|each time sooner|speech|numb\w*|tingl\w*|child\w*|years? old|pregnan\w*)\b"
        ),
    ),
    Minor(
        TOE,
        re.compile(r"\b(?:split|lung|power jerk|push jerk)"),
        re.compile(rf"\b(?:split\w*|lung\w*) {_HURTS} (?:his|her|my|the) {_BIG_TOE}\b|\b{_BIG_TOE} {_HURTS}\b"),
        re.compile(
            r"\b(?:sw[eo]ll\w*|red|hot|gout|numb\w*|tingl\w*|broke\w*|stubbed|at rest|night|diabet\w*|fell|child\w*"
            r"|years? old|pregnan\w*)\b"
        ),
    ),
    Minor(
        ONE_WRIST,
        re.compile(r"\b(?:rack|elbows?|fingers?|cleans?|hands|power cleans?)\b"),
        re.compile(
            r"\b(?:(?:left|right|one) )?wrists? (?:(?:is|was|gets?|getting|got|a bit|a little|quite) )*sore\b"
            r"|\b(?:left|right) wrist aches\b|\bsore wrists?(?: a day after)?\b"
        ),
        re.compile(
            r"\b(?:sharp|sw[eo]ll\w*|numb\w*|tingl\w*|pop\w*|click\w*|night|rest|weeks|months|always|since|still|fell|fall"
            r"|broke\w*|operat\w*|kettle|jar|overhead|snatch\w*|child\w*|pregnan\w*)\b"
        ),
    ),
    Minor(
        STRETCHED,
        re.compile(r"\bstretch\w*\b"),
        re.compile(r"\b(?:it |that |which )?(?:makes?|gets?|leaves?) (?:it|me|him|her|the elbow|the shoulder) sore\b"),
        re.compile(
            r"\b(?:sharp|sw[eo]ll\w*|numb\w*|tingl\w*|locks|catch(?:es|ing)|night|weeks|worse|pop\w*|child\w*"
            r"|pregnan\w*)\b"
        ),
    ),
    Minor(
        BACK_AFTER,
        re.compile(
            r"\b(?:goes|gone|well|fine|over) (?:\w+ )?(?:by (?:the )?|the )?(?:next )?morning\b"
            r"|\b(?:gone|fine) the next day\b"
        ),
        re.compile(
            r"\b(?:low(?:er)? )?back aches?(?: (?:mildly|slightly|a bit|a little))? after(?! every)\b"
            r"|\bnothing down the legs?\b"
        ),
        re.compile(
            r"\b(?:sharp|sw[eo]ll\w*|numb\w*|tingl\w*|pins|spasm\w*|locks|night|always|still|worse|weeks|months|weak"
            r"|down (?:his|her|my|the) (?:leg|thigh|calf)|into (?:his|her|my|the) (?:leg|buttock)|bladder|fell|child\w*"
            r"|pregnan\w*)\b"
        ),
    ),
    Minor(
        PINCH,
        re.compile(
            r"\b(?:hips?|groin)\b.*\b(?:bottom|deep)\b|\b(?:bottom|deep)\b.*\b(?:hips?|groin)\b|\bpinch together\b"
        ),
        re.compile(r"\b(?:just |only )?(?:a )?(?:bit of a )?pinch(?:es|y|ing)?(?: (?:feeling|ish|together))?\b"),
        re.compile(
            r"\b(?:pain\w*|hurt\w*|ach\w*|sharp|sw[eo]ll\w*|numb\w*|tingl\w*|pop\w*|click\w*|catches|catching in|locks"
            r"|night|always|every time|worse|weeks|fell|torn?|thumbs?|shoulders?|elbows?|knee hurts"
            r"|(?<!with flat )back(?! (?:flat|rounds))|neck"
            r"|child\w*|years? old|pregnan\w*)\b"
        ),
    ),
    Minor(
        NIGGLE,
        re.compile(rf"\b{_NIGGLES}\b"),
        re.compile(rf"\b(?:not hurt (?:just )?)?{_NIGGLES}\b|\bnot (?:hurt|injured|sharp)\b"),
        re.compile(
            r"\b(?:(?<!not )sharp|sw[eo]ll\w*|numb\w*|tingl\w*|pop\w*|catch(?:es|ing)? in|locks|giv\w+ way|worse|night"
            r"|months|weeks|fell|torn?|tear|child\w*|years? old|pregnan\w*)\b"
        ),
    ),
    Minor(YOUTH_SAYS, _YOUTH, _YOUTH, re.compile(r"\bchild\w*\b")),
)
