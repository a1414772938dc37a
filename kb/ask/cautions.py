"""Words that are answered by a caution before anything else: pain, injury, illness, pregnancy, a child.

Never a diagnosis: what follows is whom to ask, not why it hurts. Pain plainly denied is none; what is said to be long
ago or healed, and the troubles of kb/ask/minors.py, are cautioned first, and then the rest of the words answered.
"""

import re
from collections.abc import Sequence
from typing import NamedTuple

from kb.ask.denied import DENIED, HEDGED, SENTENCE
from kb.ask.in_passing import HARD, IN_PASSING, LEAST_WORDS, MILD, SIGNS, VITAL, is_over
from kb.ask.mended import MENDED, MENDS, UNSETTLED, is_cleared
from kb.ask.minors import MINORS, tells
from kb.ask.misspelt import misspelt
from kb.ask.never import GROWN_IN_YEAR, NAMED_CHILD, NEVER, never_cleared
from kb.ask.told_otherwise import NOW, SOMEBODY, SOON
from kb.ask.told_plainly import PHRASES, STEMS
from kb.ask.youth import NAMED_YOUTH, YOUTH
from kb.words import fold

# fmt: off
__all__ = [
    "AFTER", "AT_ONCE", "CAUTION", "PHRASE", "SAME_DAY", "TODAY", "URGENT", "WORD",
    "Care", "care_of", "caution_for",
]
# fmt: on

CAUTION = (
    "Stop there, and ask someone qualified first: a doctor or a physiotherapist, and for a child, well or not, a coach"
    " trained to teach children, with the parents; a child who is well may run, jump, climb and play meanwhile, with no"
    " bar. Until then leave out what brings it on; dizzy under a bar, put it down at once."
    " Chest pain, fainting, or numbness that doesn't pass: get help at once, and"
    " leave nobody alone with it. drillpath gives no cause and no drill for pain, injury, illness, pregnancy or"
    " children."
)
"""The answer to a question of pain and the like: the whole of it, or what comes first."""

URGENT = (
    "Stop, and get medical help at once: an emergency call, not a coach. Leave them sitting or lying, and nobody alone"
    " with it. No more lifting until a doctor has allowed it, even if it goes off with rest. drillpath gives no cause"
    " and no drill for pain or illness."
)
"""The same for what can't wait."""

TODAY = (
    "Stop, and have a doctor see it today, or ring whoever is on duty; with a pregnancy the midwife. Don't wait for it"
    " to go off, though it may hurt little, and lift nothing until then. drillpath gives no cause and no drill for"
    " pain, injury, illness or pregnancy."
)
"""The same for what can't wait for days."""

_LIMBS = r"(?:wrist|elbow|shoulder|hand|thumb|finger|knee|hip|ankle|leg|foot|feet|back|neck|palm|shin|thigh)s?"
_CHEST = r"(?:(?:the|his|her|my|their) )?(?:\w+ )?(?:chest|breastbone)"

_TIGHT = rf"tight(?:ness)? (?:band |belt |feeling )?(?:across|in|round|around|over) {_CHEST}"
_WHERE = r"jaw|left (?:arm|hand)|stairs|uphill|walking|sitting|sat|rest(?:ed|ing|s)?"
_HEART = rf"(?:{_WHERE}|breathless|sweat\w*|gr[ea]y|pale|dizzy)"

_FAINT = r"(?:gr[ea]y|pale|dizzy|sweat\w*|breathless|out of breath|black|walking|at rest)"

_STROKE = (
    r"(?:(?:had|has|having|after|since|suffered|survived) (?:a |his |her |my )?(?:mini |small |minor )?strokes?"
    r"|(?<!of )(?<!rowing )(?<!each )(?<!every )(?:a|mini|his|her|my) stroke(?! (?:rate|of the|in (?:rowing"
    r"|swimming|the)))"
    r"|signs of (?:a )?stroke|strokes? (?:last|two|three|\d))"
)

AT_ONCE = re.compile(
    rf"\b{_FAINT}\b.*\btight chest\b|\btight chest\b.*\b{_FAINT}\b|\btightness in {_CHEST}\b"
    rf"|\b{_TIGHT}\b.*\b{_HEART}\b|\b{_HEART}\b.*\b{_TIGHT}\b"
    rf"|\bchest (?:(?!{_LIMBS}\b)\w+ )?(?:pain\w*|ach\w+|hurt\w*|heavy|pressure|squeez\w*)\b"
    r"|\bchest (?:(?:is|was|felt|feels|gets|got|goes|went|so|all|very|really|quite) ){0,2}tight\w*\b"
    rf"|\b(?:squeez\w*|pressure|crushing|pain|ache|burning)\b(?: \w+){{0,2}} (?:across|in|behind) {_CHEST}\b"
    r"|\b(?:pain|ache|aching|squeez\w*)\b(?: \w+){0,6} (?:jaw|left arm)\b|\bfa[iy]nt\w*\b|\bpass(?:ed|es|ing)? out\b"
    rf"|\bblack(?:ed|ing)? out\b(?! the (?:\w+ )?(?:windows?|glass|mirrors?|lights?|screens?))"
    rf"|\b{_STROKE}\b|\bseizure\b"
    r"|\bheart attack\b|\bpalpitat\w*\b|\bunconscious\b"
    rf"|\bknocked out\b"
    r"|\b(?:grey|gray|pale|white|ashen)\b(?: \w+){0,4} (?:sweat\w*|clammy)\b"
    r"|\b(?:sweat\w*|clammy)\b(?: \w+){0,3} (?:grey|gray|pale|ashen)\b"
    r"|\bslurr\w*\b|\bface (?:\w+ )?droop\w*\b|\b(?:doesn ?t|not) know where (?:he|she|they) (?:is|are)\b"
    r"|\b(?:numb\w*|tingl\w*)\b(?: \w+){0,2} (?:between|round|around) (?:\w+ )?(?:legs|groin|seat|genitals)\b"
    r"|\b(?:trouble|hard|can ?t|cannot|unable|difficult\w*)\b(?: \w+){0,3} (?:pee|peeing|wee|urinat\w*|pass water)\b"
    rf"|\bnumb\w*\b(?: \w+){{0,6}} (?:won ?t|doesn ?t|not) (?:go|pass)\b|\b(?:{'|'.join(NOW)})\b"
)
"""Words of what can't wait: signs of heart attack, stroke, lost consciousness, and nerves of the lower spine pressed.

From memory: first aid as it is taught (European Resuscitation Council Guidelines 2021, First aid), and what textbooks
call red flags of the lower back.
"""

AFTER = (
    "That comes first. Free of pain today, and cleared to lift where something was hurt? Then what follows is for the"
    " rest of what you said: lighter than usual, unloaded first. If not, ask first."
)
"""What stands between the caution and what is found, where the rest of the words is answered."""

_BLEEDS = (
    r"(?:bleed\w*|bled|spotting|cramp\w*|waters? br\w+|(?:pulling|pains?|ache) in (?:the|her|my) (?:belly|abdomen))"
)
_WITH_CHILD = r"(?:pregnan\w*|weeks (?:gone|along))"
_GAVE = r"(?:pop(?:s|ped)?|snap(?:s|ped)?|crack(?:ed)?|ripped|tore|tear)"
_TINGLES = r"(?:tingl\w*|numb\w*|pins and needles)"
_WEAK = r"(?:weak(?:er|ness)?|drops? (?:his|her|my|a|the) (?:cup|mug|pen|phone|keys)|can ?t grip)"
_CANT = r"(?:can ?t|couldn ?t|cannot|could not|unable to)"
_HEEL = rf"{_CANT} (?:walk|stand|go)(?: up)? on (?:that|his|her|my|the|its|one) (?:\w+ )?(?:heel|toes)"
_TOES = r"(?:catch(?:es)?|catching|trips over|stubs|drags|dragging) (?:his|her|my|their) (?:own )?toes"
_CLUMSY = (
    r"(?:drop(?:s|ped|ping)? (?:a|his|her|my|the) (?:\w+ )?(?:mug|cup|pen|keys|fork|glass)"
    r"|fumbl\w*(?: \w+){0,3} buttons?"
    r"|(?:hand|arm|leg|foot) (?:has |is |s )?(?:got|gotten|become|gone|going|getting) (?:clumsy|weak|weaker|numb))"
)
_SHAPE = r"(?:bruis\w*|gap|lump|bulg\w*|dent|sits higher|rolled up)"

_BEAT = (
    r"heart (?:\w+ ){0,2}?(?:skip\w*|flutter\w*|miss(?:es|ed|ing) (?:a )?beats?|jump(?:s|ed|ing)? (?:about|sometimes))"
)

SAME_DAY = re.compile(
    rf"\b(?:{_HEEL}|{_TOES}|{_CLUMSY})\b|\b{_WITH_CHILD}\b.*\b{_BLEEDS}\b|\b{_BLEEDS}\b.*\b{_WITH_CHILD}\b"
    rf"|\b{_TINGLES}\b.*\b{_WEAK}\b|\b{_WEAK}\b.*\b{_TINGLES}\b"
    rf"|\b{_GAVE}\b.*\b{_SHAPE}\b|\b{_SHAPE}\b.*\b{_GAVE}\b"
    r"|\b(?:hand|arm|finger|foot|leg)s? (?:\w+ )?(?:go|goes|going|went|turns?|is|are) (?:\w+ )?(?:cold|pale|blue)\b"
    rf"|\b{_BEAT}\b"
    r"|\b(?:arm|calf|leg)\b(?: \w+){0,4} sw[eo]ll\w*|\b(?:dark|brown|red) (?:urine|pee|wee)\b"
    r"|\b(?:outline|shape|shoulder)\b(?: \w+){0,4} (?:squared? off|square|flattened|stepped)\b"
    r"|\bshoulder (?:won ?t|doesn ?t|can ?t|cannot) (?:lift|move|go|rise)\b"
    r"|\b(?:can ?t|cannot) (?:put (?:any )?weight on|bear weight|walk on)\b"
    r"|\b(?:landed|fell|dropped|came down) on (?:his|her|my|their|the) (?:head|neck)\b"
    rf"|\b(?:{'|'.join(SOON)})\b"
)
"""Words of what a doctor should see the same day: bleeding in pregnancy, a tendon that may have torn, a limb that is
cold, swollen, or weak while it tingles, a heart that skips, a foot that drags or a hand that grows clumsy, dark urine,
no weight borne, a fall on the head. From memory: first-aid teaching, and what textbooks of sports medicine call
urgent."""

WORD = re.compile("^(?:" + "|".join(STEMS) + ")")
PHRASE = re.compile(
    r"\b(?:" + "|".join((*NEVER, *YOUTH, *PHRASES, *SOMEBODY, *SOON, _HEEL, _TOES, _CLUMSY, _BEAT)) + r")\b"
)


OTHERWISE = re.compile(r"\b(?:" + "|".join((*SOMEBODY, *SOON)) + r")\b")
"""What is told without a word of pain: that is over only where somebody who may says so."""


class Care(NamedTuple):
    """The caution that words call for, None for none; and the words to be answered after it, None for none of them.

    `may_clear`: they would be, were it said that all of it is settled.
    """

    caution: str | None
    rest: str | None
    may_clear: bool = False


def _told(word: str) -> bool:
    return bool(WORD.match(word)) or misspelt(word)


def _troubled(folded: str) -> bool:
    return bool(PHRASE.search(folded)) or any(map(_told, frozenset(folded.split())))


def _untroubled(said: str) -> str:
    """The words that don't speak of trouble."""
    return " ".join(word for word in PHRASE.sub(" ", said).split() if not _told(word))


def care_of(text: str, *, cleared: bool = False) -> Care:
    """What a question that may speak of pain, injury, illness, pregnancy or a child calls for.

    A misspelling of such a word counts as the word; pain that is plainly denied doesn't. Only where all of it is an
    injury that mends, said to be long ago or healed, or is the grip's or the skin's own, or is told in passing, mild or
    of the past, in a long question about something else, or where somebody who may has cleared it, are the other words
    answered. `cleared`: whoever asks says that the lifter is free of pain and well today, and cleared to lift. That
    doesn't hold for what can't wait, a child, a pregnancy or an eating disorder.

    >>> care_of("no pain until the elbows lock") == Care(CAUTION, None, may_clear=True)
    True
    >>> care_of("hip replacement in spring, the bar swings away", cleared=True).rest
    'in spring the bar swings away'
    """
    care, said = _read(text)
    if care.caution != CAUTION or care.rest is not None or never_cleared(said):
        return care
    rest = _untroubled(said)
    return Care(CAUTION, rest) if cleared and rest else care._replace(may_clear=bool(rest))


def _read(text: str) -> tuple[Care, str]:
    """What the words themselves call for; and the words, without what was denied."""
    text = GROWN_IN_YEAR.sub(r"\1", text)
    text = NAMED_YOUTH.sub(" 17 years old ", NAMED_CHILD.sub(" a child ", text))
    folded = fold(text)
    if AT_ONCE.search(folded):
        return Care(URGENT, None), folded
    if not _troubled(folded):
        return Care(None, text), folded
    parts = [fold(part) for part in SENTENCE.split(text)]
    hedged = any(HEDGED.search(part) for part in parts)
    if not hedged:
        parts = [" ".join(DENIED.sub(" ", part).split()) for part in parts]
    said = folded if hedged else " ".join(DENIED.sub(" ", folded).split())
    if not _troubled(said):
        return Care(None, said), said
    if SAME_DAY.search(said):
        return Care(TODAY, None), said
    troubled = [n for n, part in enumerate(parts) if _troubled(part)]
    near = [part for n, part in enumerate(parts) if any(abs(n - each) < 2 for each in troubled)]
    says, left = [], said
    for minor in MINORS:
        without = " ".join(minor.said.sub(" ", left).split())
        if without != left and tells(minor, said, " ".join(near)):
            says.append(minor.says)
            left = without
    if says and left and not _troubled(left):
        return Care(" ".join(says), left), said
    rest = " ".join(MENDS.sub(" ", MENDED.sub(" ", left)).split())
    fresh = any(UNSETTLED.search(parts[n]) for n in troubled)
    over = is_cleared(said) or (MENDED.search(said) and not fresh)
    if over and rest and not _troubled(rest):
        return Care(" ".join((CAUTION, *says)), rest), said
    others = _untroubled(said)
    told = [(parts[n], parts[n + 1] if n + 1 < len(parts) else "") for n in troubled]
    if told and others and len(said.split()) >= LEAST_WORDS and _settled(told, near, said):
        return Care(" ".join((IN_PASSING, *says)), others), said
    return _in_passing(said, near), said


def _settled(told: Sequence[tuple[str, str]], near: Sequence[str], said: str) -> bool:
    """Whether all trouble that is told is over, and none of it is for somebody qualified whenever it was."""
    return is_over(told) and not any(map(SIGNS.search, near)) and not OTHERWISE.search(said) and not never_cleared(said)


def _in_passing(said: str, near: Sequence[str]) -> Care:
    """What is due where all trouble was cleared, or a long question tells it in passing: its care, and the other words.

    In passing it is mild, or of the past. Neither holds beside a word that makes more of it: in the same sentence, or
    one `near` it.
    """
    if HARD.search(said) or any(map(SIGNS.search, near)):
        return Care(CAUTION, None)
    rest = _untroubled(said)
    if is_cleared(said) and rest and not never_cleared(said):
        return Care(CAUTION, rest)
    words = said.split()
    troubles = [*(each.group() for each in PHRASE.finditer(said)), *filter(_told, words)]
    if len(words) < LEAST_WORDS or any(map(VITAL.search, near)) or not all(MILD.match(each) for each in troubles):
        return Care(CAUTION, None)
    return Care(IN_PASSING, rest)


def caution_for(text: str) -> str | None:
    """The caution, if a question calls for it; else None.

    >>> caution_for("elbow hurts when I press out") is CAUTION
    True
    >>> caution_for("pregnent and my hips rise first") is CAUTION
    True
    >>> caution_for("shoulder popped out last year") is CAUTION
    True
    >>> caution_for("heels pop up at the bottom") is None
    True
    """
    return care_of(text).caution
