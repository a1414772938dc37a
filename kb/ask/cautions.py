"""Words that are answered by a caution before anything else: pain, injury, illness, pregnancy, a child.

Never a diagnosis: what follows is whom to ask, not why it hurts.
"""

import re

from kb.words import fold

__all__ = ["CAUTION", "caution_for"]

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
ruptur sciatic seizure shingles sick$ sore(ness)?$ spasm sprain stitches strain stroke$ sublux surg swell
swollen tendin tendon tingl torn$ trimester twing unwell vertigo vomit wrenched
""".split()
"""Beginnings of folded words: a body in trouble, not a lift gone wrong."""

_PHRASES = r"""
blood pres+ure|(?:black|pass)(?:ed|es|ing)? out|heart (?:condition|attack|problem|trouble)|chest tight
pop(?:s|ped|ping)? out of|out of (?:its|the) socket|pins and needles|burning (?:in|feeling)|sharp \w+ in
stabbing
broke(?:n)? (?:(?:his|her|my|a|their) )?(?:wrist|arm|leg|ankle|foot|rib|bone|hand|collarbone|toe|finger)
expecting|(?:had|having) a baby|weeks (?:gone|along)|months (?:gone|along)|after (?:birth|giving birth)
breastfeeding|(?:my|her|his|our|the|a|young) (?:kid|child|daughter|son|toddler)|children|kids|child
\d+ ?(?:yrs?|years?|yo)(?: old)?|(?:five|six|seven|eight|nine|ten|eleven|twelve|thirteen) ?years? old
pulled (?:a|his|her|my) (?:muscle|hamstring|groin|back|calf|shoulder)
(?:back|knee|shoulder|wrist|elbow|hip|neck) (?:went|gave out|has gone|is bad|trouble|problem)
bad (?:back|knee|shoulder|wrist|elbow|hip|neck)s?|(?:hip|knee) replacement|new (?:hip|knee)|slipped dis[ck]
bulging dis[ck]|dis[ck] (?:bulge|problem)|tore (?:a|his|her|my|the) \w+
""".strip().splitlines()
_WORD = re.compile("^(?:" + "|".join(_STEMS) + ")")
_PHRASE = re.compile(r"\b(?:" + "|".join(_PHRASES) + r")\b")


def caution_for(text: str) -> str | None:
    """The caution, if a question speaks of pain, injury, illness, pregnancy or a child; else None.

    >>> caution_for("elbow hurts when I press out") is CAUTION
    True
    >>> caution_for("heels pop up at the bottom") is None
    True
    """
    folded = fold(text)
    if any(_WORD.match(word) for word in folded.split()) or _PHRASE.search(folded):
        return CAUTION
    return None
