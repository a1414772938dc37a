"""A body in trouble, told in plain words: pain, injury, illness, as beginnings of words and as phrases."""

__all__ = ["PHRASES", "STEMS"]

STEMS = """
ach(e|es|ed|ing|y)$ achil agony allerg arthrit as(th)?ma bleed bruis bursit cancer cartilage cast$ concuss
diabet disloc diz+[iy] epilep fa[iy]nt fever fractur headach heal(ed|ing)$ herni hurt hypertens illness impinge inflam?
inj[ue]r labrum lighthead ligament menisc migrain miscarr nause niggl numb$ numbness operat(ed|ion) osteopor
pacemaker pa[iy]n(s|ed|ful|fully|ing)?$ palpitat physio pinch post(natal|partum) preg prolaps rehab rotator
ruptur sciatic seizure shingles sore(ness)?$ spasm sprain stitches strain sublux surg swell
swollen tendin tendon tingl torn$ trimester twing unwell vertigo vomit wrenched
""".split()
"""Beginnings of folded words: a body in trouble, not a lift gone wrong."""

PHRASES = r"""
blood pres+ure|(?:black|pass|grey|gray)(?:ed|es|ing)? out
(?:saw|sees?|seeing) (?:\w+ )?(?:stars|black|spots|double)|(?:black|white|grey|gray) (?:spots|dots|specks)
(?:everything|it all|all|vision|sight|eyes?) (?:\w+ ){0,2}(?:grey|gray|black|dark|dim|blurry|blurred|swam|swims)
(?:go|goes|going|went|turn|turns|turned) (?:all )?(?:grey|gray|pale)
sank to (?:his|her|my|the|their) knees?|knees? buckled|hold on to the (?:rack|wall) (?:or|not to)
light headed|swimmy|woozy|queasy
(?:head|room|everything) (?:\w+ )?(?:spins?|spinning|swims?|swimming|went funny)
(?:feels?|felt|feeling) (?:it|this|that|them) in (?:his|her|my|the|their) (?:low(?:er)? )?back
(?:grey|gray|pale|white|blue) in the face
(?:look(?:s|ed|ing)?|gone|turn(?:s|ed)?|face is|face was) (?:\w+ ){0,2}(?:grey|gray|pale|ashen)
cough\w*|chesty|(?:chest|head|bad|heavy|streaming|has a|had a|have a|having a) cold\b|(?:with|got|after|over) a cold\b
getting over (?:a |the )?(?:bug|illness)|(?:first|second|third|new) baby|baby (?:\w+ ){0,3}(?:months|weeks)
(?:chest |throat |viral )?infections?|virus|viral|covid|antibiotics?|tonsil\w*|bronchit\w*
pneumon\w*|throwing up|threw up|heart (?:condition|attack|problem|trouble)|chest tight
(?:shoulder|kneecap|hip) (?:\w+ )?(?:pop(?:s|ped|ping)?|slip(?:s|ped)?) out\b
shoulder (?:came|went) out(?! (?:in|over|past))
pop(?:s|ped|ping)? out of|out of (?:its|the) socket|pins and needles|burning (?:in|feeling)|sharp \w+ in
stabbing
(?:back|knee|shoulder|wrist|elbow|hip|neck|leg|arm|ankle|hand)s? (?:(?:is|are|was|s|really|just) )*kill(?:s|ed|ing)
(?:something|it) (?:go|goes|went|gave|pop|popped|snap|snapped|rip|ripped|tear) in (?:my|his|her|the)
(?:the|got|has|had|have|with|after|a) flu|acl|reconstruct(?:ed|ion)
sick(?! of)\b|(?:short of|out of|no) breath at rest|(?:dark|brown|red) (?:urine|pee|wee)
(?:cutting|weight|diet) (?:plan|cut)|cut(?:ting)? weight|mak(?:e|es|ing) weight|los(?:e|ing) (?:\d+|\w+) kilos?
(?:hand|arm|finger|foot|leg)s? (?:\w+ )?(?:go|goes|going|went|turns?|is|are) (?:\w+ )?(?:cold|pale|blue|white)
(?:landed|fell|dropped|came down) on (?:his|her|my|their|the) (?:head|neck|face)
broke(?:n)? (?:(?:his|her|my|a|their|the) )?(?:(?:left|right) )?(?:wrist|arm|elbow|leg|ankle|foot|rib|bone|hand)
broke(?:n)? (?:(?:his|her|my|a|their|the) )?(?:(?:left|right) )?(?:collarbone|toe|finger)
pulled (?:a|his|her|my) (?:muscle|hamstring|groin|back|calf|shoulder)
(?:back|knee|shoulder|wrist|elbow|hip|neck) (?:went|gave out|has gone|is bad|trouble|problem)
(?:cranky|grumbly|grumbling) (?:back|knee|shoulder|wrist|elbow|hip|neck|ankle)s?
(?:back|knee|shoulder|wrist|elbow|hip|neck|ankle)s? (?:(?:is|are|gets?|a bit) )*(?:cranky|grumbl(?:e|es|ing|y))
bad (?:back|knee|shoulder|wrist|elbow|hip|neck|(?:big )?toe)s?
(?:hip|knee) replace(?:ment|d)|new (?:hip|knee)|slipped dis[ck]
(?:old|healed) (?:\w+ )?break
bulging dis[ck]|dis[ck] (?:bulge|problem)|tore (?:a|his|her|my|the) \w+
(?:had|having) a baby|(?:after|since) (?:(?:a|the|her|my|giving) )?birth(?!day)|(?:gave|given|giving) birth|breastfe\w*
(?:hand|finger|thumb|foot)s? (?:\w+ ){0,3}(?:sleepy|asleep|fuzzy|buzz\w*)
(?:hand|arm|foot|finger)s? (?:go\w*|went) to sleep
slept (?:wrong|funny|awkward\w*)|pulling (?:feeling|sensation)|pulling between (?:\w+ ){0,3}(?:blades?|neck|and)
new (?:mum|mom|mother)|urine|bladder|pelvic|pees?|peed|peeing|(?:dragging|heaviness) (?:\w+ ){0,3}(?:low|down|below)
(?:i|she|they|bit|little|still|always|sometimes) leak(?:s|ed|ing)?(?! (?:power|energy|speed|force|forward|out|away))
""".strip().splitlines()
"""Patterns of folded words that say so, a line each."""
