"""Words that are answered by a caution before anything else: pain, injury, illness, pregnancy, a child.

Never a diagnosis: what follows is whom to ask, not why it hurts.
"""

import re

from kb.ask.spelling import one_edit_apart
from kb.words import fold

__all__ = ["CAUTION", "HARMLESS", "PHRASE", "SPELT", "WORD", "caution_for"]

CAUTION = (
    "Stop there, and ask someone qualified first: a doctor or a physiotherapist, and for a child a coach trained to"
    " teach children, with the parents. drillpath gives no cause and no drill for pain, injury, illness, pregnancy or"
    " children. Chest pain, fainting, or numbness that doesn't pass: get help at once."
)
"""The whole answer to a question of pain and the like."""

_STEMS = """
ach(e|es|ed|ing|y)$ achil agony allerg arthrit as(th)?ma bleed bruis bursit cancer cartilage cast$ concuss
diabet disloc diz+[iy] epilep fa[iy]nt fever fractur headach herni hurt hypertens illness impinge inflam?
inj[ue]r labrum lighthead ligament menisc migrain miscarr nause numb$ numbness operat(ed|ion) osteopor
pacemaker pa[iy]n(s|ed|ful|fully|ing)?$ palpitat physio pinch post(natal|partum) preg prolaps rehab rotator
ruptur sciatic seizure shingles sore(ness)?$ spasm sprain stitches strain stroke$ sublux surg swell
swollen tendin tendon tingl torn$ trimester twing unwell vertigo vomit wrenched
""".split()
"""Beginnings of folded words: a body in trouble, not a lift gone wrong."""

_PHRASES = r"""
blood pres+ure|(?:black|pass|grey|gray)(?:ed|es|ing)? out
(?:saw|sees?|seeing) stars
light headed|heart (?:condition|attack|problem|trouble)|chest tight
(?:shoulder|kneecap|hip) (?:\w+ )?(?:pop(?:s|ped|ping)?|slip(?:s|ped)?) out\b
shoulder (?:came|went) out(?! (?:in|over|past))
pop(?:s|ped|ping)? out of|out of (?:its|the) socket|pins and needles|burning (?:in|feeling)|sharp \w+ in
stabbing
(?:back|knee|shoulder|wrist|elbow|hip|neck|leg|arm|ankle|hand)s? (?:(?:is|are|was|s|really|just) )*kill(?:s|ed|ing)
(?:something|it) (?:go|goes|went|gave|pop|popped|snap|snapped|rip|ripped|tear) in (?:my|his|her|the)
(?:the|got|has|had|have|with|after|a) flu|acl|reconstruct(?:ed|ion)
sick(?! of)\b
broke(?:n)? (?:(?:his|her|my|a|their) )?(?:wrist|arm|leg|ankle|foot|rib|bone|hand|collarbone|toe|finger)
expecting(?: (?:a (?:baby|child)|twins|in \w+|again)|$)
(?:had|having) a baby|weeks (?:gone|along)|months (?:gone|along)|after (?:birth|giving birth)
breastfeeding|(?:my|her|his|our|the|a|young) (?:kid|daughter|son|toddler)|children|kids|child(?! s play)
\d+ ?(?:yrs?|years?|yo)(?: old)?|(?:five|six|seven|eight|nine|ten|eleven|twelve|thirteen) ?years? old
pulled (?:a|his|her|my) (?:muscle|hamstring|groin|back|calf|shoulder)
(?:back|knee|shoulder|wrist|elbow|hip|neck) (?:went|gave out|has gone|is bad|trouble|problem)
bad (?:back|knee|shoulder|wrist|elbow|hip|neck)s?|(?:hip|knee) replacement|new (?:hip|knee)|slipped dis[ck]
bulging dis[ck]|dis[ck] (?:bulge|problem)|tore (?:a|his|her|my|the) \w+
""".strip().splitlines()
SPELT = """
aches aching achilles allergy arthritis asthma bleeding bruise bruised bruising bursitis cancer cartilage children
concussed concussion daughter diabetes diabetic dislocate dislocated dizzy dizziness epilepsy faint fainted fainting
fever fracture fractured headache headaches hernia hurts hurting illness impingement inflamed inflammation injure
injured injuring injury injuries ligament meniscus migraine nausea nauseous numbness operation osteoporosis pacemaker
painful painfully physio physiotherapist postnatal pregnancy pregnant prolapse rehab ruptured sciatic sciatica seizure
soreness spasm spasms sprain sprained strained surgeon surgery swelling swells swollen tendinitis tendon tendonitis
tingle tingles tingling tingly toddler twinge unwell vertigo vomit vomiting
""".split()
"""Whole words that are often misspelt; their like is one edit away and begins alike."""

HARMLESS = frozenset(
    """
    acres arched arches arching ashes axes blending breeding canter feint fewer flint hunts hurling hurls
    shell shells smell smells spain spell spells spine stained strainer strainers sturgeon tangle tangled
    tangles tightly tinge tinges tinkling twine
    """.split()
)
"""Words as near as that which are none of theirs."""

WORD = re.compile("^(?:" + "|".join(_STEMS) + ")")
PHRASE = re.compile(r"\b(?:" + "|".join(_PHRASES) + r")\b")


def _misspelt(word: str) -> bool:
    if len(word) < 5 or len(word) > 20 or word in HARMLESS:
        return False
    return any(spelt[0] == word[0] and one_edit_apart(word, spelt) for spelt in SPELT)


def caution_for(text: str) -> str | None:
    """The caution, if a question speaks of pain, injury, illness, pregnancy or a child; else None.

    A misspelling of such a word counts as the word.

    >>> caution_for("elbow hurts when I press out") is CAUTION
    True
    >>> caution_for("pregnent and my hips rise first") is CAUTION
    True
    >>> caution_for("shoulder popped out last year") is CAUTION
    True
    >>> caution_for("heels pop up at the bottom") is None
    True
    """
    folded = fold(text)
    words = frozenset(folded.split())
    if PHRASE.search(folded) or any(WORD.match(word) for word in words) or any(_misspelt(word) for word in words):
        return CAUTION
    return None
