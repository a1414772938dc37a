"""What was said of the lifter beside the fault: what a coach minds in every drill because of it.

Words of pain, illness and the like are kb/ask/cautions.py's; here is the rest of the person and of the room.
"""

import re
from typing import NamedTuple

from kb.ask.changed import CHANGED
from kb.ask.places import PLACES
from kb.words import fold

__all__ = ["FAILED", "PERSON", "QUOTED", "TRIED", "Minded", "minded", "with_quotes_as_words"]

FAILED = "Words that were tried and didn't"
"""What begins the answer of who told of words that didn't help."""


class Minded(NamedTuple):
    """Something said, by a pattern of folded words, and what is minded because of it. Common practice, no source.

    `option` says what to ask for in a chain.
    """

    said: re.Pattern[str]
    minds: str
    option: str = ""


_QUOTE = re.compile(r"(?=[\"\u201c\u201d])")
"""Where a quotation begins or ends: what stands in it is somebody's words."""

QUOTED = re.compile(r"[\"\u201c\u201d]([^\"\u201c\u201d]{1,80})[\"\u201c\u201d]")
"""What somebody said, in quotation marks: it says nothing of the lifter."""

_BARE_AGE = re.compile(
    r"(^\s*|\b(?!Snatch|Clean|Jerk|Week|Set|Day|Rep)(?:[A-Z][a-z]+|gent\w*|in law|lady|wom[ae]n|m[ae]n|chap|bloke"
    r"|member|lifter|neighbour|friend|granny|grandad|grandfather|grandmother)(?:, | \())([678][0-9])(?=[,;.)])"
)
"""An age that the words begin with, or that stands after a name or a word for somebody."""

_OLD = r"(?:6[0-9]|7[0-9]|8[0-9])"
_WHO = r"(?:man|men|gentlem[ae]n|woman|women|lady|ladies|chap|bloke|guy|boy|fella|lifters?|members?|someone|somebody)"
_KIN = r"(?:dad|mum|mom|father|mother|wife|husband|uncle|aunt|friend|neighbou?r|lifter|member|athlete)"
_NO_KILOS = r"(?! ?(?:kg|kilos?|cm|lbs?|per|minutes?|mins?|m\b))"
_ANYONE = r"(?:i|i ve|my coach|coach|trainer|somebody|someone|they|we)"

TRIED = re.compile(
    r"\b(?<!nobody )(?<!no one )(?<!ever )(?:told|telling|tell|tells|cued|shouted at) (?:him|her|me|them)"
    r" (?!she|he|it|that|otherwise|i\b)\w+"
    rf"|\b(?:{_ANYONE}|club|internet|video|dad|mate|teacher) (?:\w+ ){{0,3}}?(?:say|says|said|saying|shout|shouted"
    r"|shouting|call|called|calls|teach|teaches|taught|teache[sd]|drummed|drilled|cues?|cued|repeats?|repeated|yells?|yelled)"
    r" (?:\w+ ){0,2}?(?=quoted\b)|\b(?:was|been|were) told (?=quoted\b|to\b)"
)
"""What says that words were tried, with the quoted ones as one word."""

PERSON = (
    Minded(
        re.compile(
            rf"\b{_OLD} (?:year olds?|years? old|yrs? old|yo|retired)\b"
            rf"|\b(?:aged?|he s|she s|i m|i am|{_KIN} s|(?:he|she|who|{_KIN}) is) {_OLD}\b{_NO_KILOS}"
            rf"|\b{_WHO} (?:of |is |now |aged )?{_OLD}\b{_NO_KILOS}|\b(?:over|past) (?:60s|sixties|65s)\b"
            r"|\b(?:in (?:his|her|my|their) (?:mid |late |early )?|(?:mid|late|early) )(?:sixties|seventies|eighties)\b"
        ),
        "Past sixty: ask first about heart, blood pressure, thin bones, falls, joints replaced, medicines, and what"
        " their doctor allows. New or back to it: half the sets at first. Rests as long as they like, a day between,"
        " weight in the smallest steps; something firm to hold on to where there is no bar, nothing loose near one. No"
        " full squat is needed: a catch a quarter deep is a lift.",
        "`--to power-clean`, `power-snatch` or `power-jerk` ends the chain so.",
    ),
    Minded(
        re.compile(
            r"\b(?:hates?|refuses?|won ?t|doesn ?t (?:like|want)|don ?t (?:like|want)|never) (?:\w+ ){0,3}?split\w*"
            r"|\bcan ?t split\b"
            r"|\bmake (?:him|her|them|me) split\b|\bsplit(?:s|ting)? feels? (?:silly|wrong|stupid)\b"
        ),
        "Won't split, or needn't: nobody has to. Level feet are a jerk like any other, but the bar must go higher, and"
        " straight up, for the base is one shoe long. Only if they want to know: light splits beside it for six weeks,"
        " then see which goes better. Something hurts in it: no trying out; ask someone qualified first.",
        "`--to power-jerk` ends the chain so.",
    ),
    Minded(
        re.compile(
            r"\b(?:can ?t|cannot|could ?n ?t|doesn ?t|won ?t|no|not|isn ?t allowed|unable to) (?:\w+ ){0,3}?"
            r"(?:squat (?:\w+ ){0,2}?(?:deep|low|below|to parallel)|deep squats?|full squats?|below parallel"
            r"|to depth)\b"
        ),
        "No deep squat: caught only as low as the heels stay down and the back flat; whoever forbade it says how low."
        " A bar that would take them lower is let go in front, and weight comes off.",
        "`--to power-clean` or `--to power-snatch` holds nothing deeper.",
    ),
    Minded(
        re.compile(
            r"\b(?:self coached|self taught|train(?:s|ing)? (?:alone|on my own|by myself)|(?:i m|i am|lift) alone"
            r"|no coach|no one (?:to )?watch(?:es|ing)?|nobody (?:to )?watch(?:es|ing)?"
            r"|(?:gym|garage|home|all|only) by myself|learning from (?:a book|videos?))\b"
        ),
        "Alone: a phone three metres to the side, at hip height. Two lifts, say what they were, then look at the film."
        " How to miss is rehearsed first, nothing goes on that can't be let go or put down, and somebody knows where"
        " you are and until when.",
    ),
    Minded(
        re.compile(
            r"\b(?:others? in (?:the )?(?:class|room|group|session)|(?:class|group) of \w+"
            r"|(?:two|three|four|five|six|seven|eight|nine|ten|\d+) others|in the class"
            r"|can ?t (?:stand|stay) (?:with|by|over) (?:him|her|them))\b"
        ),
        "Others in the room: show one drill, say its standard as a number, go round, and look again after two rounds."
        " In pairs meanwhile: one lifts, one counts aloud two metres off. Whoever is new to it has a stick overhead,"
        " and a bar only while you look. One cue in one evening.",
    ),
    Minded(
        re.compile(
            r"\b(?:(?:\d+|two|three|four|five|six|ten|fifteen|twenty|many) (?:years|months)"
            r" (?:off|away|out|break)(?! (?:the|every|of)\b)"
            r"|(?:back|return\w*|coming back) (?:after|from) (?!the (?:knee|hip|bar|floor))(?:\w+ ){0,4}?"
            r"(?:years|months|break|off|layoff)"
            r"|used to (?:snatch|clean|jerk|lift|compete))\b"
        ),
        "Back after long: ask why they stopped; after illness, an operation or a birth, cleared first. Weights come"
        " from what is met now, never from old bests. For three weeks no best is tried, and each set ends with as many"
        " left as were done; tendons come back later than strength.",
    ),
    Minded(
        TRIED,
        FAILED + ' mend it go: say so ("forget what you were told"), and leave them out of the'
        " whole chain. One cue, the drill's own; if five don't change with it, show it instead.",
    ),
    Minded(
        re.compile(
            r"\b(?<!not )(?<!n t )(?<!no longer )(?:scared|afraid(?! (?:the )?(?:ref\w*|judges?|that|it s|they))"
            r"|frightened|terrified|petrified"
            r"|panics?|bottles? it|freezes?"
            r"|lost (?:his|her|my) nerve)\b"
        ),
        "Afraid: the way out first, with a stick, until five are easy. They name the weight and the depth; up by the"
        " smallest discs, one thing more at a time, and back as soon as they ask. Never pushed, surprised or watched by"
        " many. What frightened them once (a loose mat, a slip) is put right and shown.",
    ),
    Minded(
        re.compile(r"\b(?:deaf|hard of hearing|lip ?reads?|hearing aids?|can ?t hear)\b"),
        "Hears little: face them, agree on signs before, and never speak to their back. The beat is seen or felt: a"
        " hand that drops, a tap between the shoulder blades with leave, a foot on the boards beside them, slow film"
        " side by side. Where a drill says listen or a clap, take these.",
    ),
    Minded(
        re.compile(r"\b(?:blind|partially sighted|visually impaired|(?:weak|poor|bad|little) (?:eye)?sight)\b"),
        "Sees little: marks that are felt, a cord under tape at toes and heels, a seam on the bar; your voice from"
        " one fixed side; say every weight and who stands where. Floor clear and left as it was. Where a drill says"
        " look or a mark, take these, or a face turned to a voice.",
    ),
    Minded(
        re.compile(
            r"\b(?:night ?shifts?|(?<!neighbour )(?<!neighbor )works? (?:\w+ )?nights|night (?:worker|work|duty)"
            r"|after (?:his|her|my|a|the) (?:\w+ )?shift|nights this week"
            r"|slept (?:badly|rubbish|terribly|little)|no sleep|(?:off|after) nights"
            r"|on (?:two|three|four|five|2|3|4|5) hours(?: of)? sleep)\b"
        ),
        "Short of sleep: the easy day, whatever the plan says; two thirds of the usual weight, few lifts, nothing new"
        " or frightening. Who nods off or sways lifts nothing. A fault that is there only then is most likely"
        " tiredness: look again after two nights' sleep before anything is mended.",
    ),
    Minded(
        re.compile(
            r"\b(?:meet|comp|competition|contest|test day|platform)(?: \w+){0,4}"
            r" (?:tomorrow|in (?:two|three|2|3) days|this weekend)\b"
            r"|\btomorrow(?: \w+){0,5} (?:meet|comp|competition|contest|platform)\b"
        ),
        "Days before it counts: nothing is mended now. A few singles at 60 to 80 % that are met, one cue, the"
        " commands and the warm-up rehearsed, early to bed. The opener is one that goes on any day, nine tenths of"
        " the best or less.",
    ),
    Minded(
        re.compile(
            r"\b(?:(?:should i|i should) bother|leave it or|is it (?:a fault|wrong|bad)"
            r"|leave (?:it|him|her) (?:alone|be)|worth (?:changing|fixing)|(?:does|do) it matter|problem at all)\b"
        ),
        "Is it one? The same in every lift, light or heavy, the bar balanced over the mid-foot, nine of ten made,"
        " nothing hurts: leave it, note it, and look again when it grows, or lifts are lost. Only what costs lifts,"
        " or could hurt, is mended; then what follows.",
    ),
    Minded(
        re.compile(
            r"\b(?:blocks?|boards?|raised?|plates under)\b(?! (?:\w+ ){0,5}(?:thighs?|hips?|knees?|pockets?|above))"
            r"(?: \w+){0,10} (?:better|fine|clean(?! \w)|tidy|good)\b"
            r"|\bdoesn ?t fit the floor\b|\b(?:6 ?7|6 ?8|2 ?m|two met(?:re|er)s) tall\b"
        ),
        "Better from a raised bar: then that height is the start for now, and no cheating. Everything below is done"
        " from it; a board lower when ten of ten look alike, and never lower than the back stays flat.",
    ),
    Minded(
        re.compile(
            r"\b(?:new(?:ly)?|suddenly|never (?:did|used to)|since (?:christmas|easter|summer|autumn|winter|spring"
            r"|new year))\b"
            r"(?: \w+){0,14} (?:left|right|one (?:side|arm|leg|elbow))\b"
            r"|\b(?:left|right|one) (?:side|arm|leg|elbow|hand)\b(?: \w+){0,10}"
            r" (?:since (?:christmas|easter|summer|autumn|winter|spring|new year)|suddenly|all of a sudden)\b"
        ),
        "New on one side, for no reason they know: somebody qualified looks at it before it is trained, and until then"
        " nothing that it can't hold level.",
    ),
    Minded(
        re.compile(
            r"\b(?:meets?|comp(?:s|etitions?)?|platform|in front of (?:people|judges|a crowd))\b(?: \w+){0,12}"
            r" (?:nerves|nervous|shak(?:y|es|ing)|rush\w*|bomb\w*|goes to pieces)\b"
            r"|\b(?:nerves|nervous|shaky|bombs|goes to pieces)\b(?: \w+){0,10} (?:meets?|comp(?:s|etitions?)?"
            r"|platform)\b"
            r"|\bfine in (?:the gym|training)\b(?: \w+){0,12} (?:meets?|comp(?:s|etitions?)?|platform)\b"
        ),
        "Only before people: the lift is held, so no drills for it. The day is rehearsed once a week: what is worn, a"
        " name called, a minute on a clock, two who watch and judge; chalk, grip, breath, go, the same four steps"
        " every time. The opener is one made in any week, 88 to 90 %; after a miss the same again.",
    ),
    Minded(
        re.compile(
            r"\b(?:grass|gravel|(?<!bags of )(?<!bag of )sand|slop(?:e|es|y|ing)"
            r"|uneven (?:floor|ground)|wet (?:floor|ground)|carpet)\b"
        ),
        "Grass, a slope or carpet: soles catch or slide, so feet don't move as they do indoors. A flat, dry board or"
        " two rubber mats side by side that can't shift; else no jump, and a split only short and stepped, until then."
        " Twice on firm floor first: if it goes there, it is the ground.",
    ),
    Minded(
        re.compile(
            r"\b(?:post ?(?:birth|natal|partum)\w*|new (?:mum|mom|mother)|(?:first|second|third) baby"
            r"|after (?:the )?birth|had a baby|pelvic (?:physio\w*|floor))\b"
        ),
        "After a birth: breath out on the effort, nothing held for long, short sets. Leaking, heaviness, a bulge"
        " along the belly, bleeding or pain ends that drill, and it is for whoever cleared them before the next. Half"
        " of what was at first, and no old bests.",
    ),
    Minded(
        re.compile(r"\b(?:big|large|round|bit of a|beer) (?:belly|stomach|tummy|gut)\b|\bbig (?:chest|bust|bosom)\b"),
        "A belly or a chest in the way is build: feet a shoe wider, toes out, hands a thumb wider, and from blocks or"
        " boards at shin height, so that a breath goes in, taken standing. A small arc round it is theirs; judge"
        " whether the bar is met, not whether it brushes the shirt.",
    ),
    Minded(
        re.compile(
            r"\b(?:(?:english|language) (?:\w+ ){0,4}?(?:not|isn ?t|poor|little|first)"
            r"|(?:not|doesn ?t|don ?t) (?:speak|understand) (?:\w+ )?english|not (?:our|his|her|my) first language)\b"
        ),
        "Few words in common: first agree on stop, let go and it hurts, by a word or a sign, and show the way out. Show"
        " it twice, slowly, from the side, and let them copy. The same one word each time, a clap for the beat, and a"
        " film of a good one beside a film of theirs.",
    ),
    *(Minded(said, minds) for said, minds in (*PLACES, *CHANGED)),
)


_ASKED = re.compile(
    r"\b(?:or|if|whether|could be|maybe|perhaps|might be|is)(?: (?:that|just|it|only))? (?:he|she|they|i)"
    r"(?: (?:s|is|are|m|am|be))? (?:just |really |simply )?"
    r"(?:scared|afraid|frightened|terrified|panic\w*|freezes|freezing)\b"
)
"""Fear that somebody only wonders about: no fear is told."""


def _aged(text: str) -> str:
    """The words, with a bare age told as one."""
    return _BARE_AGE.sub(r"\1\2 years old ", text)


def with_quotes_as_words(text: str) -> str:
    """Folded words in which "quoted" stands where a quotation begins and ends."""
    return fold(_QUOTE.sub(" quoted ", _aged(text)))


def minded(text: str, *, in_a_chain: bool = True) -> tuple[str, ...]:
    """What is minded because of what was said, in the table's order; `in_a_chain` with what to ask for there.

    >>> [each.partition(":")[0] for each in minded("He's 67, hates splitting, I keep telling him to punch")]
    ['Past sixty', "Won't split, or needn't", "Words that were tried and didn't mend it go"]
    """
    folded, without = with_quotes_as_words(text), _ASKED.sub(" ", fold(QUOTED.sub(" ", _aged(text))))
    found = [each for each in PERSON if each.said.search(folded if each.said is TRIED else without)]
    return tuple(f"{each.minds} {each.option}".strip() if in_a_chain else each.minds for each in found)
