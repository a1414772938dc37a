"""A new entry to fill in: the front matter with what may stand in it, and every heading with what belongs there."""

from pathlib import Path

from kb.errors import BadInput
from kb.make.files import FOLDERS, is_id
from kb.words import fold

__all__ = ["FAMILIES", "family_of", "new_drill"]

FAMILIES = tuple(folder for folder, kind in FOLDERS.items() if kind == "drill")
"""The folders of drills."""

_LIFTS = {"snatch": "snatch", "clean": "clean", "jerk": "jerk", "squat": "clean", "pull": "snatch, clean"}
"""What a drill of a family most often serves."""

_WORDS = {
    "overhead": "snatch",
    "rack": "clean",
    "split": "jerk",
    "dip": "jerk",
    "deadlift": "pull",
    "stretch": "mobility",
}
"""Words of a name that give its family away, besides the families' own."""

_HEAD = """\
---
name: {name}
also: []                      # other names that coaches use
lifts: [{lifts}]
"""

_MOVES = """\
stage: segment                # position, segment, join, whole, or finish for strengthening
target_position: fill-in      # the posture it is for: a file in drills/positions
reach: [{reach}]           # first and last point of the timeline
speed: full                   # held, slow, paused, full
load: [stick, light]          # none, stick, light, working: a value, or the least and the most
catch: none                   # none, standing, power, full
feet: still                   # still, step (moved without a bang), land (leave the floor and come down)
aid: free                     # or a list of what helps: [wall]
"""

_OPENS = """\
stage: prepare
opens: [shoulder]             # joints or muscles it opens
for: [fill-in]                # the positions it is for
"""

_TAIL = """\
faults:                       # what it works on, each with the cause it acts on
  - {{fault: fill-in, cause: fill-in}}
prerequisites: []             # only what it is unsafe or meaningless without; an inner list means any one of
regressions: []               # easier versions: {{drill: ..., eases: "..."}}
equipment: [{equipment}]
dose: {{rounds: 3, reps: 3, rest_s: 45}}
standard: {{count: 4, of: 5, seen: "fill in what is seen in a good one, so that it can be counted"}}
cautions: []                  # shoulder, wrist, elbow, back, knee, hip, ankle, neck, head-clearance, breath, drop-zone
---
## Set up
Fill in: where the lifter stands, how the bar is held.

## Do
1. Fill in: short sentences, to the lifter.

## Look for
Fill in: where the coach stands, and what to see.

## Say
- Fill in a cue: six words at most, one of them about the bar or the floor
{miss}
## Slips
- Fill in a common error: its fix.

## Why
Fill in two sentences: what it changes, and why it is worth the minutes.
"""

_MISS = """
## Miss
Fill in how to get out, or take this section away if the bar is never overhead or racked above a stick.
"""


def family_of(name: str) -> str | None:
    """The family that a drill's name gives away; None if no word of it does.

    >>> family_of("High-hang snatch, slow"), family_of("Something new")
    ('snatch', None)
    """
    words = fold(name).split()
    for word in words:
        if word in FAMILIES:
            return word
    return next((_WORDS[word] for word in words if word in _WORDS), None)


def new_drill(root: Path, name: str, family: str | None = None) -> Path:
    """Write a drill's entry to fill in, never over a file that is there.

    Until the places that say `fill-in` are filled, `drillpath check` reports them and nothing is built.

    Parameters
    ----------
    root
        The folder that holds drills/.
    name
        What the drill is called; its id is made of it.
    family
        The folder it goes to; told from the name if nothing is said.

    Returns
    -------
    Path
        The entry's file.

    Raises
    ------
    BadInput
        If the name makes no id, the family can't be told, or an entry of that id is there.
    """
    name = " ".join(name.split())
    drill_id = fold(name).replace(" ", "-")
    if not is_id(drill_id):
        raise BadInput(f"{name!r} makes no id: it must begin with a letter from a to z")
    family = family or family_of(name)
    if family is None:
        raise BadInput(f"{name!r} doesn't say which family it is of; add --family", nearest=FAMILIES)
    taken = sorted(root.glob(f"drills/*/{drill_id}.md"))
    if taken:
        raise BadInput(f"{taken[0].relative_to(root).as_posix()} is there already")
    path = root / "drills" / family / f"{drill_id}.md"
    path.parent.mkdir(parents=True, exist_ok=True)
    try:
        with path.open("x", encoding="utf-8", newline="\n") as file:
            file.write(_text(name, family))
    except FileExistsError:
        raise BadInput(f"{path.relative_to(root).as_posix()} is there already") from None
    return path


def _text(name: str, family: str) -> str:
    from json import dumps

    prepares = family == "mobility"
    reach = "rack, drive" if family == "jerk" else "start, hip"
    # a JSON text is a YAML text, whatever the name holds
    quoted = name if all(char.isalnum() or char in " -" for char in name) else dumps(name, ensure_ascii=False)
    head = _HEAD.format(name=quoted, lifts=_LIFTS.get(family, "snatch, clean"))
    dials = _OPENS if prepares else _MOVES.format(reach=reach)
    return head + dials + _TAIL.format(equipment="" if prepares else "bar", miss="" if prepares else _MISS)
