"""What a lifter's bests say of one another: whether strength or skill is what there is less of."""

from collections.abc import Mapping
from typing import NamedTuple

from kb.bests import Best
from kb.terms import Lift

__all__ = ["RATIOS", "Ratio", "by_numbers"]


class Ratio(NamedTuple):
    """What share of `base`, per cent, `of` usually is, and what less and more than that mean."""

    of: str
    base: str
    least: int
    most: int
    less: str
    more: str


LEGS = (
    "the legs have more than the clean takes, so drills rather than squats are likely the main work",
    "nearly all that the legs have is used: a squat every week is the main work, and drills keep the clean",
)

HIGH = (
    "nearly as much is caught high as low: the way under is the main work, not more pulling",
    "far more is caught low than high: the pull may be what there is less of",
)

RATIOS = (
    Ratio("clean", "front-squat", 80, 90, *LEGS),
    Ratio("clean", "back-squat", 66, 78, *LEGS),
    Ratio(
        "clean",
        "deadlift",
        55,
        70,
        "the pull has strength to spare, and more deadlifts are unlikely to mend it",
        "nearly all that the back and legs can pull is used: pulls belong to every week",
    ),
    Ratio(
        "snatch",
        "overhead-squat",
        80,
        95,
        "more is held overhead than is snatched: the pull and the way under are the main work",
        "what is snatched is nearly all that can be held: overhead squats and holds belong to every week",
    ),
    Ratio(
        "snatch",
        "clean-and-jerk",
        76,
        84,
        "the snatch lags behind, and by skill more likely than by strength",
        "the snatch is ahead, and the clean and jerk lags behind it",
    ),
    Ratio(
        "snatch",
        "front-squat",
        58,
        76,
        "the legs have more than the snatch takes, so drills rather than squats are likely the main work",
        "the legs have little to spare for it: a squat every week stands beside the drills",
    ),
    Ratio("snatch", "power-snatch", 108, 130, *HIGH),
    Ratio("clean", "power-clean", 108, 130, *HIGH),
    Ratio(
        "clean-and-jerk",
        "jerk",
        92,
        100,
        "more is jerked from a rack than after a clean: the stand, the breath and the grip between are the main work",
        "the jerk alone isn't tried for heavier: nothing says that it lags",
    ),
    Ratio(
        "clean-and-jerk",
        "clean",
        90,
        100,
        "more is cleaned than is jerked after it: what comes after the clean is the main work",
        "the clean alone isn't tried for heavier: nothing says that it lags",
    ),
    Ratio(
        "jerk",
        "push-press",
        110,
        130,
        "much of the jerk is pressed: going under is the main work, not more pressing",
        "little is pressed and much is gone under: strength overhead may be what there is less of",
    ),
)
"""Shares as coaches expect them of those who have lifted for a year and more. Common practice, no source."""


def by_numbers(lift: Lift, bests: Mapping[str, Best], names: Mapping[str, str]) -> tuple[str, ...]:
    """A sentence for each pair of bests that says something of a lift or its parts; `names` by id."""
    found = []
    for each in RATIOS:
        if each.of not in {lift.id, *lift.parts} or each.of not in bests or each.base not in bests:
            continue
        if bests[each.of] is bests[each.base]:
            continue  # a part's best that only the whole lift tells says nothing of the whole
        if each.base == "back-squat" and "front-squat" in bests:
            continue  # two squats may say two things: the one that the clean ends in counts
        share = round(100 * bests[each.of].kg / bests[each.base].kg)
        usual = f"{each.least} to {each.most} % is usual after a year or more, common practice and no source"
        said = each.less if share < each.least else each.more if share > each.most else "neither stands out"
        of, base = names[each.of].lower(), names[each.base].lower()
        found.append(f"By the numbers: the {of} is {share} % of the {base} ({usual}), so {said}.")
    return tuple(found)
