"""How coaches speak: words that carry nothing, words that mean the same, and the stem of a word."""

from kb.words import fold

__all__ = ["SAME", "lifts_named", "stem", "stems"]

_EMPTY = frozenset(
    [
        "a",
        "about",
        "again",
        "ah",
        "all",
        "also",
        "always",
        "am",
        "an",
        "and",
        "any",
        "are",
        "as",
        "at",
        "be",
        "because",
        "been",
        "being",
        "but",
        "by",
        "can",
        "cant",
        "coming",
        "could",
        "did",
        "do",
        "does",
        "doesn",
        "doing",
        "don",
        "dont",
        "each",
        "even",
        "every",
        "for",
        "from",
        "get",
        "gets",
        "getting",
        "go",
        "goes",
        "going",
        "got",
        "guy",
        "had",
        "has",
        "have",
        "he",
        "her",
        "hers",
        "him",
        "his",
        "how",
        "i",
        "if",
        "in",
        "into",
        "is",
        "isn",
        "it",
        "its",
        "itself",
        "just",
        "keep",
        "keeps",
        "kind",
        "lady",
        "lifter",
        "like",
        "lot",
        "m",
        "man",
        "me",
        "my",
        "no",
        "not",
        "of",
        "oh",
        "on",
        "one",
        "or",
        "our",
        "ours",
        "re",
        "really",
        "s",
        "seems",
        "she",
        "so",
        "some",
        "still",
        "t",
        "than",
        "that",
        "the",
        "their",
        "them",
        "then",
        "there",
        "they",
        "thing",
        "this",
        "to",
        "too",
        "up",
        "us",
        "ve",
        "very",
        "was",
        "we",
        "well",
        "were",
        "what",
        "when",
        "where",
        "which",
        "while",
        "who",
        "why",
        "will",
        "with",
        "woman",
        "would",
        "you",
        "your",
        "athlete",
        "girl",
        "lad",
        "person",
        "people",
        "bit",
        "way",
        "looks",
        "look",
        "looking",
        "ok",
        "okay",
    ]
)

SAME: tuple[tuple[str, ...], ...] = (
    ("hip", "butt", "bum", "backside", "arse", "ass", "rear", "seat", "bottom", "tail", "glute"),
    ("bar", "barbell", "weight", "stick", "broom", "it"),
    ("shoulder", "delt", "collarbone"),
    ("back", "spine", "lumbar", "torso"),
    ("trunk", "torso", "chest", "upper", "body"),
    ("round", "hunch", "curl", "cat", "bend", "slump", "banana"),
    ("elbow", "arm"),
    ("straight", "lock", "lockout", "locked", "stiff"),
    ("soft", "bent", "bend", "unlock", "unlocked", "loose", "shaky"),
    ("early", "soon", "quick", "before", "premature", "first", "rush"),
    ("slow", "late", "lazy", "sluggish", "lag"),
    ("forward", "front", "forwards", "ahead", "out", "away"),
    ("behind", "backward", "backwards", "back"),
    ("floor", "ground", "platform", "deck"),
    ("foot", "feet", "shoe", "sole"),
    ("toe", "ball", "forefoot"),
    ("heel", "heal"),
    ("knee", "leg"),
    ("cave", "collapse", "knock", "valgus", "inward", "in", "buckle", "inside"),
    ("crash", "slam", "smash", "thump", "bang", "land", "drop", "fall", "hit", "clatter", "whack"),
    ("wide", "starfish", "apart", "splay", "broad", "far"),
    ("narrow", "short", "tight", "close", "small", "stubby"),
    ("jump", "hop", "leap", "travel"),
    ("catch", "receive", "receiving", "land", "landing"),
    ("squat", "bottom", "hole", "depth", "deep", "low"),
    ("under", "beneath", "below"),
    ("pull", "finish", "extend", "extension", "triple"),
    ("press", "push", "grind"),
    ("lift", "rise", "shoot", "pop", "come", "raise", "off"),
    ("dip", "bend", "sink"),
    ("drive", "push", "punch", "leg"),
    ("split", "lunge", "scissor", "stride"),
    ("wobble", "wobbly", "unsteady", "unstable", "shaky", "stagger", "balance", "sway", "totter", "step"),
    ("recover", "recovery", "stand"),
    ("grip", "hand", "hook", "finger", "hold", "grasp", "thumb"),
    ("open", "slip", "slide", "lose", "let", "peel"),
    ("rack", "shoulder"),
    ("loop", "swing", "arc", "circle", "banana", "rainbow", "orbit", "round"),
    ("bang", "bump", "hump", "bash", "thrust", "hit"),
    ("cut", "short", "incomplete", "unfinish", "unfinished", "half"),
    ("overhead", "above", "top"),
    ("fold", "tip", "lean", "pitch", "cave", "collapse", "topple"),
    ("rear", "behind", "back"),
    ("arch", "lean", "hyperextend", "bow", "rib", "flare"),
    ("tightrope", "line", "rail", "inline", "track", "narrow"),
    ("stuck", "pin", "pinned", "bury", "buried", "stall", "fail"),
    ("scared", "afraid", "fear", "nervous", "frightened", "hesitate"),
    ("rush", "hurry", "fast", "quick", "straight"),
    ("tired", "gas", "gassed", "spent", "dead", "exhausted", "fatigue", "nothing"),
)
"""Groups of words that a coach may use for one another; a word may be in several."""

_LIFTS = {
    "snatch": "snatch",
    "clean": "clean",
    "jerk": "jerk",
    "jerks": "jerk",
    "snatches": "snatch",
    "cleans": "clean",
}


def stem(word: str) -> str:
    """A word without its commonest endings, so that forms of one word meet.

    >>> [stem(word) for word in ("elbows", "dropping", "dropped", "drops", "catches", "knees", "bodies", "press")]
    ['elbow', 'drop', 'drop', 'drop', 'catch', 'knee', 'body', 'press']
    """
    if word == "feet":
        return "foot"
    for ending, instead in (("ies", "y"), ("ches", "ch"), ("shes", "sh"), ("sses", "ss"), ("xes", "x")):
        if word.endswith(ending) and len(word) > len(ending) + 2:
            return word[: -len(ending)] + instead
    for ending in ("ing", "ed"):
        if word.endswith(ending) and len(word) > len(ending) + 2 and set(word[: -len(ending)]) & set("aeiouy"):
            base = word[: -len(ending)]
            if base[-1] == base[-2] and base[-1] not in "sle":
                return base[:-1]
            return base[:-1] if base.endswith("e") else base
    if word.endswith("ly") and len(word) > 4:
        return word[:-2]
    if word.endswith("s") and not word.endswith(("ss", "us")) and len(word) > 3:
        word = word[:-1]
    return word[:-1] if word.endswith("e") and len(word) > 4 and not word.endswith("ee") else word


def stems(text: str) -> list[str]:
    """The stems of the words of a text that carry something, in order."""
    return [stem(word) for word in fold(text).split() if word not in _EMPTY and len(word) > 1]


def lifts_named(text: str) -> frozenset[str]:
    """The lifts that a question names."""
    return frozenset(_LIFTS[word] for word in fold(text).split() if word in _LIFTS)
