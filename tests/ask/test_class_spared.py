"""Who does without a bar where the bars don't go round."""

import pytest

from kb.ask.class_.people import PLENTY, Class, Lifter
from kb.ask.class_.spared import spared
from kb.terms import FaultId, ItemId, LiftId

BAR, TRAINING = ItemId("bar"), ItemId("training-bar")


def ways(bars: int, weights: str, training: int = 0) -> list[str]:
    """Each way as a letter a lifter: a bar, no bar, none of either; `w` marks who has a day's weight, else a fault."""
    lifters = tuple(
        Lifter(str(n), LiftId("snatch"), FaultId("f" if each == "w" else each), weight_kg=40 if each == "w" else None)
        for n, each in enumerate(weights)
    )
    letters = {frozenset[ItemId](): "b", frozenset({BAR}): "t", frozenset({BAR, TRAINING}): "s"}
    asked = Class("c", lifters, {BAR: bars, TRAINING: training}, 60, 1)
    return ["".join(letters[each.without] for each in way.lifters) for way in spared(asked)]


@pytest.mark.parametrize(
    ("bars", "weights", "training", "expected"),
    [
        (1, "......", 0, ["bbtttt", "bttttt", "tttttt"]),
        (1, "......", 1, ["bbtttt", "bttttt", "tttttt", "ssssss"]),
        (1, "...w..", 0, ["bttbtt", "tttbtt"]),
        (1, ".w.www", 0, ["tbtbbb"]),
        (2, "....", 0, ["bbbt", "bbtt", "bttt", "tttt"]),
        (4, "fgfgfgfg", 0, ["bbbbbtbt", "bbbtbtbt", "btbtbtbt", "btbttttt", "tttttttt"]),
        (4, "wggfgffgf", 0, ["bbbbbbbtb", "bbtbtbbtb", "bttbtbbtb", "bttbtbbtt", "bttbttttt", "btttttttt"]),
        (1, "www", 0, []),
        (0, "......", 4, []),
        (6, "......", 0, []),
        (PLENTY, "......", 0, []),
    ],
    ids=["two stay, then one, then none", "a light bar first", "a weight first", "weights alone", "two to a bar",
         "whole chains", "a weight, then whole chains", "all", "none", "each", "uncounted"],
)  # fmt: skip
def test_most_stay_first_then_ever_fewer(bars: int, weights: str, training: int, expected: list[str]) -> None:
    """From two at a bar down; who has a weight first, then whole chains in the file's order; nobody leaves what isn't
    short."""
    assert ways(bars, weights, training) == expected
