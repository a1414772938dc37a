"""A body in trouble, told without a word of pain or illness: by what is seen, lost, taken or worn.

Patterns of folded words, a line each. They say whom to ask, and how soon; never what it is. From memory: first aid as
it is taught, and what textbooks of physiotherapy call red flags.
"""

__all__ = ["NOW", "SOMEBODY", "SOON"]

_BREAST = r"(?:chest|breastbone|breast bone|sternum)"
_MOUTH = r"(?:eyelid|eye lid|mouth|lip|side of (?:the|his|her|my) face)"
_JAW = r"jaw (?:\w+ ){0,2}(?:tight|numb|stiff|heavy)"
_PART = r"(?:shoulder|knee|back|hip|arm|elbow|neck|leg|wrist)"
_LIMB = r"(?:fingers?|hands?|arms?|foot|feet|toes?|thumbs?)"
_CANT = r"(?:can ?t|couldn ?t|cannot|could not)"
_THEN = r"(?! (?:in (?:19|20)\d\d|as a|at (?:\w+teen|twenty|\d\d)|(?:\w+ )?years|long ago|when))"
_ONE = r"(?:somebody|someone|something)"
_PUS = r"(?:yellow|green) (?:stuff|goo)|pus|oozing"

NOW = rf"""
(?:elephant|brick|vice|{_ONE} (?:was |is )?sitting)(?: \w+){{0,3}} (?:on|across|round|around) (?:\w+ )?{_BREAST}
{_JAW}\b(?: \w+){{0,12}} {_BREAST}|{_BREAST}(?: \w+){{0,14}} {_JAW}
{_MOUTH}(?: \w+){{0,3}} (?:droop\w*|hang\w*|sagg?\w*|crooked)
words? (?:\w+ )?(?:came|come|comes|coming|went) (?:out )?(?:mushy|wrong|jumbled|muddled|garbled)
(?:mushy|jumbled|garbled|muddled) (?:speech|words)|{_CANT} find (?:the|his|her|my|any) words
(?:what (?:i|he|she|they) pass(?:es)?|pee|peeing)(?: \w+){{0,3}} (?:brown|cola|tea|coke|red|black)
(?:cola|coke|tea) colou?red|(?:wee|pee|urine)(?: \w+){{0,3}} (?:cola|coke|tea)|thunderclap|worst headache
curtain (?:\w+ ){{0,3}}(?:over|across)(?: \w+){{0,8}} eye|{_CANT} feel (?:the )?(?:saddle|seat|toilet)
(?:come|came) (?:round|to) (?:sitting|lying|on the (?:floor|platform))|half a breath
(?:saddle|between the legs)(?: \w+){{0,4}} (?:numb|dead|no feeling|asleep)
(?:did|does|do) ?(?:n t|not) know (?:where|who) (?:he|she|they|we|i) (?:was|is|were|am|are)|not know what day
asked (?:\w+ )?(?:what|which) day|head(?: \w+){{0,24}} (?:foggy|dazed|confused)
(?:pressure|weight|fist|tightness)(?: \w+){{0,5}} (?:in|on|across|behind|of) (?:\w+ )?{_BREAST}
(?:inside|back|skin) of (?:my|his|her|both|the) (?:thighs?|legs?)(?: \w+){{0,10}} (?:toilet|loo|numb|bladder)
(?:toilet|loo) (?:is|has been|feels) (?:\w+ )?(?:odd|strange|different|difficult)
head(?: \w+){{0,20}} (?:lights? (?:are |is )?too bright|forgets which|keeps forgetting|repeats (?:him|her)self)
""".strip().splitlines()
"""What can't wait: signs of the heart, the brain, the lower spine, and of muscle that breaks down."""

SOON = rf"""
calf (?:\w+ ){{0,8}}(?:bigger|thicker|fatter|warm|hot)|(?:bigger|thicker|warm|hot) calf
(?:red|hot)(?: \w+){{0,3}} (?:stripe|streak|line) (?:\w+ ){{0,2}}(?:up|towards)|{_PUS}
(?:bang|pop|snap|crack|kick)(?: \w+){{0,5}} back of (?:his|her|my|the) (?:ankle|calf|heel|leg)
(?:someone|somebody) (?:had )?kicked (?:him|her|me)|walks? flat footed
foot slaps|{_CANT} get up on (?:my|his|her|the) toes
heard (?:a |something )?(?:rip|tear|pop|snap|crack) in|biceps (?:\w+ ){{0,3}}(?:ball|bunched)
{_PART}(?: \w+){{0,3}} (?:blew up|ballooned|like a (?:melon|balloon|football|grapefruit))|arms? (?:\w+ )?like balloons
(?:since|overnight|this morning|yesterday)(?: \w+){{0,6}} won ?t (?:go straight|straighten|bend)
(?:buzz\w*|electric\w*)(?: \w+){{0,4}} (?:spine|neck|back|arms?|legs?)
(?:suddenly|overnight|out of nowhere)(?: \w+){{0,5}} (?:half as strong|no strength|lost (?:all|its|his|her|my))
{_CANT} (?:push|open|lift|hold|turn)(?: \w+){{0,2}} (?:door|kettle|cup|mug|jar|key)
trips? (?:on|over) (?:kerbs?|curbs?|carpets?|rugs?)|(?:legs?|feet) (?:are |is |feel |got )?clumsy
(?:heart|pulse)(?: \w+){{0,6}} (?:like a bird|gallop\w*|all over the place|out of rhythm|irregular\w*|skipping)
running (?:a bit |a little )?(?:hot|a temperature)|high temperature|shiver\w*|temperature of (?:3[89]|40)
(?:stops?|sits?|rests?)(?: \w+){{0,5}} (?:landing|stairs|steps)(?: \w+){{0,5}} (?:wind|breath)
gasp\w* for (?:\w+ ){{0,2}}(?:minutes|hours)|wheez\w*
heart (?:goes|went|is|was|beats|does|did|keeps)(?: \w+){{0,4}} (?:flop\w*|flutter\w*|fish|jump\w*|stumbl\w*|skips?)
something (?:\w+ )?(?:popped|tore|ripped|snapped|gave)
{_CANT} (?:straighten|bend|close|lift|raise) (?:it|the|my|his|her)\b
bent (?:the wrong way|in a (?:funny|odd|strange|wrong) (?:direction|way))|blue to the (?:wrist|elbow|knee|ankle)
thick as a|{_PART} is (?:like )?a (?:balloon|melon|football|grapefruit)
(?:thumb|finger|toe|arm|wrist|nose) (?:is |s )?(?:bent|crooked|pointing)(?: \w+){{0,6}} (?:since|yesterday|after)
cramps? (?:all over|everywhere)
""".strip().splitlines()
"""What a doctor should see the same day: a limb that swells, warms or goes weak, a wound that spreads, fever, a heart
out of step, breath that is short on the stairs."""

SOMEBODY = rf"""
blood thinn\w*|thin(?:s|ning)? (?:his|her|my|the) blood|warfarin|apixaban|rivaroxaban|heparin|anticoag\w*|thrombos\w*
(?:a|the|blood) clots?|clots? (?:in|on)|stents?|angioplast\w*|bypass (?:op\w*|surgery)|heart valve|insulin
c section|c(?:a)?esar\w*|monthlies|(?:little one|baby) on the way
(?:belly|tummy|middle)(?: \w+){{0,4}} (?:ridge|doming|tent)
(?:woke|wakes?)(?: \w+){{0,5}} (?:arm|leg|neck|shoulder) (?:won ?t|can ?t)
antidepressant\w*|zaps|(?:platform|room) tilts
(?:electric|burning) (?:line|streak|feeling|zap)
(?:gallbladder|appendix|tonsils|womb|kidney) (?:\w+ )?out{_THEN}
keyhole
came off (?:\w+ )?(?:medic\w*|tablets|pills|meds)|spitting (?:since|to|for)|sauna (?:\w+ ){{0,3}}(?:weigh|class)
(?:lump|bulge)(?: \w+){{0,5}} (?:groin|belly|navel|breast|armpit|neck)|push (?:it|them) back in
throb\w*|{_PART}(?: \w+){{0,3}} (?:wakes?|woke|waking) (?:me|him|her)
(?:wakes?|woke|waking) (?:\w+ ){{0,6}}(?:with|from) (?:my|his|her|the) {_PART}
(?:sheets|pyjamas)(?: \w+){{0,2}} soaked|night sweats
(?:dropped|lost) (?:\w+ ){{0,3}}(?:kilos?|kg|pounds?|weight) without
{_LIMB}(?: \w+){{0,8}} (?:gone|go|goes|going|went|fall|falls|fell) (?:to sleep|asleep)
(?:knee|leg|ankle|hip) (?:just |simply |suddenly )?(?:wasn ?t|was not|isn ?t) there
(?:folded|folds|collapsed|buckled) (?:\w+ ){{0,2}}under (?:me|him|her)\b(?! and the bar)
(?:silver|flashing|flickering|zigzag|sparkly) (?:\w+ )?(?:lights?|dots|lines)
room (?:go\w*|went|gets?|got) (?:dark|black|gr[ea]y)
could (?:\w+ ){{0,3}}(?:his|her|my|the) (?:arm|leg|knee|neck)(?: \w+){{0,8}} now (?:it|he|she|i) (?:stops?|can|won)
tender to|tender shins?|lives? on (?:\w+ ){{0,4}}(?:coffee|cakes|salad|shakes|air)
about to (?:drop|fall) out|cutting water|water cut
(?:stitches|staples) (?:are |came |were )?out
(?:clunk\w*|slides? out|slips? out|pops? out|jumps? out) (?:\w+ ){{0,12}}(?:back in|in again|by itself)
(?:hot|scalding) baths?(?: \w+){{0,12}} (?:water|scale|kilos?|spit\w*)|no water since|spitting in|laxatives?
diuretics?|water tablets?|sweat ?suits?|salt off|nothing to drink|sauna the (?:night|day|evening) before
(?:litres?|liters?) (?:\w+ ){{0,8}}then nothing|(?:eats?|eating) (?:only )?once a day
(?:like|as if) (?:a )?(?:knife|needle|electric\w*)|electric\w*(?: \w+){{0,4}} (?:foot|toes?|leg|arm|hand|thumb|fingers?)
(?:buzz\w*|current)(?: \w+){{0,4}} (?:thumb|fingers?|hand|arm|foot|toes?|leg)
(?:takes?|took) (?:my|his|her) breath away
beta ?blockers?|tablets? for (?:\w+ )?(?:pressure|heart|fits?|epilep\w*|sugar)
pills? for (?:the |my |his |her )?(?:fits?|epilep\w*|heart|pressure|sugar)
{_PART} (?:is |s |has been |keeps |been ){{0,2}}stuck
(?:fingers?|hands?|forearms?|toes?) (?:go|goes|went|turns?|turn|is|are) (?:\w+ )?(?:white|cold|blue)
(?:he|she|i) limps?|limping|stairs (?:are |is )?one at a time|crutches|in a (?:boot|cast|sling|splint|brace)
hand (?:opens|lets go|drops things) (?:by itself|on its own|without)|tell it to hold
(?:knee|leg|ankle|hip) (?:gives|gave|giving) way(?: \w+){{0,5}} (?:stairs|walking|under (?:me|him|her)|standing|street)
shakes? (?:the|his|her|my) leg(?: \w+){{0,6}} (?:opens|unlocks|loosens)|unlocks? (?:\w+ ){{0,3}}(?:knee|noise)
painkillers?|ibuprofen|paracetamol|anti ?inflammator\w*|cortisone|steroid (?:shots?|injection\w*)
(?:shots?|injections?|jabs?) in (?:the|my|his|her) {_PART}|told (?:me|him|her) to rest (?:it|the|my|his|her)
look left (?:but|and) not right|look right (?:but|and) not left|since (?:the|a|his|her|my) (?:fall|tumble|crash)\b
since (?:i|he|she) (?:fell|crashed|came off)|(?:can ?t|cannot) push up (?:out of|from)
(?:knee|hip|shoulder|wrist|ankle|elbow|back|hernia|heart) op(?:s|eration)?\b
(?:physio\w*|doctors?|gp|surgeon|cardiologist)(?: \w+)? (?:isn t|is not|wasn t|not) (?:\w+ )?(?:happy|pleased)
(?:days?|weeks?) (?:back |ago |after |since |from |post )+(?:\w+ ){{0,3}}(?:surgery|operation|keyhole|arthroscop\w*)
(?:surgery|operation)(?: \w+){{0,5}} (?:days?|weeks) ago|(?:stabs?|stabbing|catches) (?:\w+ )?when (?:\w+ )?breath\w*
""".strip().splitlines()
"""What is for somebody qualified before any lifting: what is taken for the blood or the heart, a wall of the belly that
gave, nights that are broken, a limb that sleeps or gives, reach that is newly lost, eating and drinking held back."""
