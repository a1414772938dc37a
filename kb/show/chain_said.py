"""Sentences that stand in the answer of a chain, and when."""

from kb.ask.chain import Chain
from kb.ask.matter import Matter
from kb.kit import fit, loads
from kb.show.coach_words import listed
from kb.show.telling import Telling
from kb.terms import Load

# fmt: off
__all__ = [
    "AT_WEIGHT", "HEAVIER", "NO_SPLIT", "NO_STICK", "UNSURE", "UNTIL", "UNTOLD",
    "after_said", "heavier_said", "only_heavy", "others_said",
]
# fmt: on

UNTIL = "Until a check says another"
"""What begins the cause that is taken meanwhile."""

HEAVIER = (
    "Only seen from some weight on? On the terminal `--shows-from 70` (or `85%`) puts the work near that, `--load"
    " working` ends there. Once the last standard is met, the lift goes on by 2.5 kg at a time to a step under where it"
    " shows; two misses running end it."
)
"""What to do where a chain at a light bar is too light to show it. Common practice, no source."""

AT_WEIGHT = (
    "At working weight begin a tenth below where it shows and go up by 1 to 2.5 kg at a time, singles or pairs, while"
    " the standard is met; two misses running end it. The light drills are passed as soon as theirs is met."
)
"""How the lift is loaded at the end of a chain for a fault that weight brings. Common practice, no source."""


UNSURE = "As you say, the cause isn't sure: these checks come first, and what they find says which drills follow."
"""Where it was named, and doubted in the same breath. Common practice, no source."""

UNTOLD = "What was said doesn't tell the cause: these checks come first, and say which drills follow."
"""Where a lifter was told of, and no cause. Common practice, no source."""

NO_SPLIT = (
    "Jerks without a split, or won't split? Nobody need: the power jerk ends the chain then, locked as the feet land"
    " and held. On the terminal `--to power-jerk`."
)
"""For who keeps another form of the jerk. Common practice, no source."""


NO_STICK = (
    'No stick was listed: where "stick first" stands below, a broom handle does, or the empty bar at half the speed.'
    " With `broom` in `--have` there may be more drills."
)
"""For who listed what there is, and no stick. Common practice, no source."""


def heavier_said(matter: Matter) -> str:
    """How to go on where the fault needs weight, or how to load at the end; nothing where there is no weight here."""
    if matter.load is Load.WORKING:
        return AT_WEIGHT
    drill, shelf = matter.shelf.drills[matter.shelf.lift.drill], matter.shelf
    fitted = fit(drill, matter.question.have, shelf.items)
    if matter.load is not Load.LIGHT or fitted is None or loads(drill, fitted, Load.WORKING)[-1:] != (Load.WORKING,):
        return ""
    return HEAVIER


def only_heavy(matter: Matter, telling: Telling) -> bool:
    """Whether it was told that it shows only from some weight on."""
    return telling.shows_from or matter.question.load is Load.WORKING


def after_said(chain: Chain) -> str:
    """What to say before the strengthening that follows a chain; nothing if there is nothing to say."""
    if chain.matter.worked_cause.kind != "strength":
        return "After training, for strength:" if chain.finish else ""
    if not chain.finish:
        return (
            "Strength comes slowly, over weeks: the drills above that are work, and not checks, are the main work, two"
            " or three times a week."
        )
    return (
        "Strength comes slowly, so what follows is the main work, over weeks: two or three times a week, after the"
        " lifts or on a day between, light on the first day, then 2.5 kg more a session as long as its standard is met."
        " The chain keeps the lift in order meanwhile."
    )


def others_said(chain: Chain) -> str:
    """The strengthening that isn't told in full, by name."""
    full = {entry.drill.id for entry in chain.strengthen}
    names = [drill.name for drill in chain.finish if drill.id not in full]
    if not names:
        return ""
    return f"{'Others' if full else 'Once what they build on is held'}: {listed(names)}."
