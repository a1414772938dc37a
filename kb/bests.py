"""A lifter's bests: how they are written, and what a set of several repetitions says about a best.

The three formulas of the trade are estimates from sets done to the last good repetition, in presses and squats.
None holds past ten repetitions, and none was made for the snatch, clean or jerk, which are lost to timing
before they are lost to strength: there a best is the heaviest single, and nothing is estimated.
"""

import re
from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import NamedTuple

from kb.discs import MOST_KG, Unit, kg_of, weight
from kb.errors import BadInput
from kb.terms import Catch, Drill, Lift, LiftId, Speed, Stage

__all__ = [
    "FORMULAS",
    "MOST_REPS",
    "RECKONED",
    "SHARE_OF_REPS",
    "Best",
    "Said",
    "best_of",
    "brzycki",
    "epley",
    "estimate",
    "lombardi",
    "of_the_lifts",
    "reckoned",
    "said",
    "with_parts",
]

MOST_REPS = 10
"""No formula is used past this: they part company there, and a set gets as much of endurance as of strength."""

SHARE_OF_REPS: Mapping[int, int] = MappingProxyType(
    {1: 100, 2: 95, 3: 93, 4: 90, 5: 87, 6: 85, 7: 83, 8: 80, 9: 77, 10: 75}
)
"""Per cent of a best at which so many repetitions can just be done (3.07, a printed strength table)."""


RECKONED = "reckoned"
"""What a best is by that isn't known, and is taken from another lift's."""

SHARES: Mapping[str, Mapping[str, float]] = MappingProxyType(
    {
        "clean": {"front-squat": 0.85, "back-squat": 0.72, "snatch": 1.25, "deadlift": 0.5},
        "jerk": {"push-press": 1.2, "clean": 0.95},
        "snatch": {"overhead-squat": 0.9, "clean": 0.75},
    }
)
"""What share of another best a lift's usually is, to choose a drill's weight by. Common practice, no source."""


class Said(NamedTuple):
    """A best as it was typed: of what, how many kilograms, for how many repetitions."""

    name: str
    kg: float
    reps: int = 1


class Best(NamedTuple):
    """The most a lifter does once, kg; `formula` names what it was estimated by, None for one that was done."""

    kg: float
    formula: str | None = None


def epley(kg: float, reps: int) -> float:
    """A best from a set, kg: kg (1 + reps / 30); one repetition is its own best.

    References
    ----------
    Epley 1985, Poundage chart. For 2 to 10 repetitions (3.01).
    """
    return kg if reps == 1 else kg * (1 + reps / 30)


def brzycki(kg: float, reps: int) -> float:
    """A best from a set, kg: 36 kg / (37 - reps).

    References
    ----------
    Brzycki 1993, Strength testing: predicting a one-rep max from reps-to-fatigue. For 1 to 10 repetitions (3.02).
    """
    return kg * 36 / (37 - reps)


def lombardi(kg: float, reps: int) -> float:
    """A best from a set, kg: kg reps^0.10.

    References
    ----------
    Lombardi 1989, Beginning weight training. For 1 to 10 repetitions (3.03).
    """
    return float(kg * reps**0.10)


FORMULAS: Mapping[str, Callable[[float, int], float]] = MappingProxyType(
    {"Epley 1985": epley, "Brzycki 1993": brzycki, "Lombardi 1989": lombardi}
)
"""The formulas by author and year."""


def estimate(kg: float, reps: int) -> Best:
    """A best from a set, the least of what the formulas give; a single is what it is.

    Raises BadInput for a set of more than ten repetitions, or of none.
    """
    if reps == 1:
        return Best(kg)
    if not 1 <= reps <= MOST_REPS:
        raise BadInput(f"a best is estimated from a set of 1 to {MOST_REPS} repetitions, not of {reps}")
    least = min(FORMULAS, key=lambda name: FORMULAS[name](kg, reps))
    return Best(FORMULAS[least](kg, reps), least)


_WRITTEN = re.compile(
    r"\s*(?P<name>[^=]*?)\s*=\s*(?P<kg>[^=x\xd7]*?)\s*(?P<unit>kg|lbs?)?\s*(?:[x\xd7]\s*(?P<reps>[^=]*?))?\s*",
    re.IGNORECASE,
)


def said(text: str, unit: Unit = "kg") -> Said:
    """A best as it is typed: `snatch=60`, or from a set `front-squat=80x5`; `135lb` overrules `unit`.

    Raises BadInput, in one sentence, for what is no weight or no number of repetitions.
    """
    found = _WRITTEN.fullmatch(text)
    if found is None or not found["name"]:
        raise BadInput(f"a best is written like snatch=60 or front-squat=80x5, not {text!r}")
    kg = weight(found["kg"], f"the best of {found['name']}")
    kg = kg_of(kg, "lb" if (found["unit"] or unit).lower().startswith("lb") else "kg")
    if kg > MOST_KG:
        raise BadInput(f"the best of {found['name']} can't be more than {MOST_KG:g} kg")
    reps = found["reps"]
    if reps is not None and not (reps.isascii() and reps.isdigit() and 1 <= int(reps[:4]) <= MOST_REPS):
        raise BadInput(f"a set is of 1 to {MOST_REPS} repetitions, as in {found['name']}=80x5, not {reps!r}")
    return Said(found["name"], kg, int(reps or 1))


def of_the_lifts(drill: Drill) -> bool:
    """Whether a drill is one of the lifts or a form of them: put together, or caught at full speed.

    Squats, presses and pulls are the rest: they are lost to strength, so that sets tell of a best.
    """
    if drill.stage in (Stage.JOIN, Stage.WHOLE):
        return True
    return drill.speed is Speed.FULL and drill.catch > (Catch.STANDING if drill.stage is Stage.FINISH else Catch.NONE)


def best_of(found: Said, drill: Drill | None) -> Best:
    """A best for reckoning; `drill` is None when it is of a lift.

    Raises BadInput when a set of several is given for a lift, or a drill that is a form of one.
    """
    if found.reps > 1 and (drill is None or of_the_lifts(drill)):
        said_once = f"{found.name}={found.kg:g}"
        raise BadInput(
            f"the best {found.name} isn't estimated from a set of {found.reps}, because it is lost to timing before"
            f" strength; give the heaviest single that was good, as in {said_once}"
        )
    return estimate(found.kg, found.reps)


def with_parts(bests: Mapping[str, Best], lifts: Mapping[LiftId, Lift]) -> dict[str, Best]:
    """Bests, and of each part of a lift done whole at least as much: who clean and jerks it has cleaned it."""
    known = dict(bests)
    for lift in lifts.values():
        for part in lift.parts if lift.id in bests else ():
            known[part] = max(bests[lift.id], known.get(part, bests[lift.id]), key=lambda best: best.kg)
    return known


def reckoned(bests: Mapping[str, Best]) -> dict[str, Best]:
    """Bests, and what those of other lifts say of a lift of which none is known: the least that any of them says.

    >>> reckoned({"front-squat": Best(50), "snatch": Best(37)})["clean"]
    Best(kg=42.5, formula='reckoned')
    """
    known = dict(bests)
    for lift, shares in SHARES.items():
        said = [bests[other].kg * share for other, share in shares.items() if other in bests]
        if lift not in bests and said:
            known[lift] = Best(min(said), RECKONED)
    return known
