"""A standard can't be counted: nothing is named that one can point at, or it says "good" instead of what is seen.

What is `seen` names at least one part of the body, one piece of gear, one place or one number, and leaves
out words of judgement (good, proper, correct, nice, better, technique and their like). How many of how many
are looked at is `count` and `of`; whether the dose holds as many is judged by `impossible-standard`.

Why it matters: the standard decides when to move on. Two coaches who watch the same five must come to the
same number; "good position" is a different thing to each.

Wrong:

    standard: {count: 5, of: 5, seen: "good position and smooth movement"}

Right:

    standard: {count: 5, of: 5, seen: "bar over mid-foot at the knee, heels down"}
"""

import re
from collections.abc import Iterator

from kb.errors import Problem
from kb.make.library import Library
from kb.make.structure.known import at
from kb.terms import Drill, Lift
from kb.words import fold

__all__ = ["CODE", "JUDGEMENT", "THINGS", "rule"]

CODE = "uncountable-standard"

THINGS = frozenset(
    """
    ankle arm back ball belly belt body brow calf chest chin crease crown ear elbow eye face finger fingertip fist
    foot feet forearm forefoot forehead hamstring hand head heel hip hook jaw kneecap knee knuckle leg lap limb
    mouth neck nose palm pelvis rib seat shin shirt shoe shoulder skin sole spine stance tail thigh throat
    thumb toe tongue torso trunk waist weight wrist breastbone breath collarbone
    band bar bench block blocks box broom chair disc doorway dowel floor grip line mark partner phone plate platform
    rack stick strap tape towel wall wedge ceiling bell clock lamp
    above behind below beside level parallel vertical upright over under inside outside depth height width
    beat count cm degree lap metre minute pause rep repetition second set step stop time touch turn
    one two three four five six seven eight nine ten eleven twelve fifteen twenty thirty forty sixty half quarter
    locked straight bent flat shut closed open still silent
    """.split()
)
"""Words for what can be pointed at or counted, without the s of more than one."""

JUDGEMENT = frozenset(
    """
    good better best well fine nice nicely proper properly correct correctly right perfect perfectly acceptable decent
    okay ok optimal ideal excellent great solid technique form quality comfortable comfortably confident
    confidently appropriate appropriately efficient efficiently adequate adequately satisfactory
    """.split()
)
"""Words that say that somebody was content, not what was seen."""

_SIDE = re.compile(r"\b(right|left) (?:\w+ )?(hand|foot|arm|leg|knee|hip|side|elbow|shoulder|heel)\b")


def rule(library: Library) -> Iterator[Problem]:
    """Every standard of a drill or a lift that two coaches would count differently."""
    judged: tuple[Lift | Drill, ...] = (*library.lifts.values(), *library.drills.values())
    for record in judged:
        words = fold(_SIDE.sub(r"\2", record.standard.seen.lower())).split()
        judging = next((word for word in words if word in JUDGEMENT), None)
        if judging:
            message = f"`{judging}` can't be counted: it says that somebody was content, not what was seen."
            yield at(library, record.id, "standard", CODE, message, "Name what is where, still, straight or touching.")
        elif not any(_names_a_thing(word) for word in words):
            message = "Nothing is named that one can point at or count."
            help_ = "Name a part of the body, the bar, a place or a number."
            yield at(library, record.id, "standard", CODE, message, help_)


def _names_a_thing(word: str) -> bool:
    return word.isdigit() or word in THINGS or (word.endswith("s") and (word[:-1] in THINGS or word[:-2] in THINGS))
