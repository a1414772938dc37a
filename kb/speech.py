"""How coaches speak: words that carry nothing, words that mean the same, and the stem of a word."""

from functools import lru_cache

from kb.words import fold

__all__ = ["EMPTY", "ENDINGS", "IRREGULAR", "PAIRS", "SAME", "stem", "stems", "together"]

EMPTY = frozenset(
    """
    a about actually again ah ain all also always am an and any anymore are aren as at athlete be because been being
    bit bloody but by can cannot cant cause coz could couldn cuz damn did didn do does doesn doesnt doing don done dont
    each else even ever every for from gals gets get getting girl go goes going gonna got guy guys had has hasn have
    haven he her here hers herself him himself his how i if im in into is isn it its itself just keep keeps kid kind
    kinda lad lady let lets lifter lifters like ll look looking looks lot m man mate me more most must my myself need
    needs never no not now of oh ok okay on one or our ours people person please re really rep reps s seem seems set
    sets she should shouldn so some someone something sort still t than that thats the their them themselves then
    there they thing things this time times to today too try trying u up us ve very wanna want wants was wasn way we
    well were weren what when where which while who why will with woman won wont would wouldn you your yourself
    """.split()
)
"""Words that say nothing of a lift by themselves; a cue may still turn on them."""

IRREGULAR = {
    form: words[0]
    for line in """
    foot feet; come came; go gone went; fall fell fallen; bend bent bendy; lose lost loss; hold held; catch caught
    slide slid; sit sat; leave left; swing swung; drive drove driven; break broke broken; stand stood; hang hung
    rise rose risen; leap leapt; throw threw thrown; straight straighten straightened straightening straighter
    wide widen widens widened wider width; short shorten shortens shortened shorter; narrow narrower
    deep deeper depth; low lower lowers lowered; high higher height; long longer; quick quicker; fast faster
    slow slower; close closer; far further farther; shallow shallower; big bigger huge massive; small smaller
    early earlier; late later; soft soften softens softened softer; tight tighten tightens tightened tighter
    loose loosen loosens loosened; press prest; forward foward fowards forwards; shake shook shaky; meet met
    sink sank sunk; run ran; fly flew flies; die dies died dying dead; toe tiptoe tiptoes tippytoes; tip tippy
    wobble wobbly; droop droopy; flop floppy; stiff stiffen stiffens; weak weaken; finish unfinished
    extend extension extensions; balance unbalanced; recover recovery; lock lockout lockouts; thigh quad quads
    collarbone clavicle clavicles; arm biceps bicep; belly stomach; push shove shoved shoves shoving
    round around; upper up; whip whipped; pelvis pelvic; pop pops; centre center; programme program
    hyperextend overextend overextends hyperextends hyperextension; arch overarch overarches arched
    ankle ankles; press pressout pressouts; overhead; down downward downwards; up upward upwards; rush hurry hurries
    hurried hurrying rushes; tire tired tires exhausted gassed knackered; breath breathe breathes breathing
    """.replace("\n", ";").split(";")
    if (words := line.split())
    for form in words
}
"""Forms of a word that no ending explains, and words that are plainly another's double; each to its stem."""

PAIRS = {
    **{
        (side, limb): ("rearleg", limb) for side in ("back", "rear", "hind") for limb in ("leg", "foot", "knee", "heel")
    },
    **{(side, limb): ("frontleg", limb) for side in ("front", "lead") for limb in ("leg", "foot", "knee")},
    **{("leg", side): ("rearleg", "leg") for side in ("behind",)},
    **{(part, "back"): ("spin", "back") for part in ("low", "lumbar")},
    ("over", "head"): ("overhead",),
    ("turn", "over"): ("turnover",),
    ("turn", "round"): ("turnover",),
    ("knee", "cap"): ("knee",),
    ("collar", "bone"): ("collarbone",),
    ("tip", "toe"): ("toe",),
    ("front", "squat"): ("frontsquat", "rack", "squat"),
    ("front", "rack"): ("frontsquat", "rack"),
    ("overhead", "squat"): ("overhead", "squat"),
    ("dead", "straight"): ("straight",),
    ("good", "morn"): ("goodmorn",),
}
"""Two words that side by side mean something that neither means alone."""

_SAME = """
    hip butt bum backside arse ass seat bottom tail glute rear rump pelvis buttock
    bar barbell weight stick broom
    shoulder delt collarbone shelf rack frontsquat
    spin back torso lumbar trunk
    trunk torso chest upper body sternum
    hunch round curl cat slump banana curv bow flex
    fold collaps cave jackknif crumpl hing topple pitch tip lean bow bend goodmorn
    elbow arm
    arm bicep hand upper
    straight lock stiff rigid pole peg prop
    soft bend unlock loose shak give wobble noodle jelly squidg rebend flop buckl
    early soon quick before prematur first rush ahead
    slow lat lazy sluggish lag delay forever age asleep behind
    forward front ahead out away toward
    behind backward back backwards rear
    floor ground platform deck board
    foot shoe sole feet
    toe ball forefoot
    heel heal
    knee kneecap
    leg knee thigh quad
    knee thigh leg lap
    cave collaps knock valgu inward in buckl inside together knockknee kiss touch
    crash slam smash thump bang drop fall clatter whack hard jolt hammer ton brick heavy
    land hit arriv drop
    wide starfish apart splay broad split spread
    narrow tight close line
    short small tiny stubb cramp baby barely
    jump hop leap travel bound
    move step walk travel drift shift
    catch receiv land meet
    squat bottom hol depth deep low full sit
    hol bottom
    under beneath below
    finish extend extension tripl complet tall stand
    press push grind shov heav muscl
    pull yank rip heav row tug drag
    sink rid float down
    lift rise shoot pop come rais off up peel float
    rise shoot up quick
    dip sink bend
    driv push punch leg power explod
    split lung scissor strid
    wobble unsteady unstable shak stagger balance sway totter step stumbl danc wander walk chas save
    recover stand recovery ris up
    grip hand hook finger hold grasp thumb clutch
    open slip slid los let peel rip tear undon
    slip slid roll shift mov come drop
    loop swing arc circl rainbow orbit round banana kettlebell
    bang bump hump bash thrust hit contact brush knock clip smack strik slap touch
    cut short incomplet half abort
    overhead abov top
    rearleg behind rear back hind
    frontleg front
    arch lean hyperextend bow rib flar bend limbo hollow sway banana
    tightrope lin rail inlin track beam catwalk narrow rope
    stuck pin bury stall fail die dead trap glue
    scar afraid fear nerv frighten hesitat wary timid chicken dare
    rush straight immediat bounc fast quick pause
    tir spent dead fatigu noth empt jelly left gas
    breath air lung
    reset settl pause set ready organis
    away gap daylight space far distance from off mil out
    close against brush drag skim near
    vertical upright tall open up
    turnover flip whip rotat spin pull punch elbow wrist
    shallow short small
    deep low far much
    drop sag droop sink low down fall point hang
    hunch spin
    miss los drop dump fail
    neck throat chin collarbone
    wing elbow arm
    plant flat
    duck div drop under
    palm hand grip
    fail miss
    wreck destroy kill tir spent
    trap stapl pin stuck bury
    head face ear forehead eye
    in together first
"""
SAME: tuple[tuple[str, ...], ...] = tuple(tuple(line.split()) for line in _SAME.splitlines() if line.strip())
"""Groups of words that a coach may use for one another, as stems; a word may be in several."""

ENDINGS = (("ies", "y"), ("ches", "ch"), ("shes", "sh"), ("sses", "ss"), ("xes", "x"), ("ingly", ""))


@lru_cache(maxsize=8192)
def stem(word: str) -> str:
    """A word without its commonest endings, so that forms of one word meet.

    >>> [stem(word) for word in ("elbows", "dropping", "dropped", "drops", "catches", "knees", "bodies", "press")]
    ['elbow', 'drop', 'drop', 'drop', 'catch', 'knee', 'body', 'press']
    >>> [stem(word) for word in ("feet", "lost", "losing", "travelled", "traveling", "early", "slowly")]
    ['foot', 'los', 'los', 'travel', 'travel', 'early', 'slow']
    """
    word = IRREGULAR.get(word, word)
    for ending, instead in ENDINGS:
        if word.endswith(ending) and len(word) > len(ending) + 2:
            return word[: -len(ending)] + instead
    for ending in ("ing", "ed"):
        base = word.removesuffix(ending)
        if base != word and len(base) > 2 and base[-1] != "e" and set(base) & set("aeiouy"):
            if base[-1] == base[-2] and (base[-1] not in "sl" or len(base) > 5):
                return base[:-1] if base[-1] != "s" else base
            return base
    if word.endswith("ly") and len(word) > 5:
        return word[:-2]
    if word.endswith("s") and not word.endswith(("ss", "us")) and len(word) > 3:
        word = word[:-1]
    return word[:-1] if word.endswith("e") and len(word) > 3 and not word.endswith(("ee", "oe")) else word


_BEGINS = frozenset(first for first, _ in PAIRS)


def together(found: list[str]) -> list[str]:
    """Stems with each pair that means something of its own replaced by what it means."""
    if _BEGINS.isdisjoint(found):
        return found
    at = 0
    joined: list[str] = []
    while at < len(found):
        pair = PAIRS.get((found[at], found[at + 1])) if at + 1 < len(found) else None
        joined += pair or (found[at],)
        at += 2 if pair else 1
    return joined


def stems(text: str) -> list[str]:
    """The stems of the words of a text that carry something, in order."""
    return together([stem(word) for word in fold(text).split() if word not in EMPTY and len(word) > 1])
