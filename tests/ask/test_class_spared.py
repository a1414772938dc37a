"""Who does without a bar where the bars don't go round."""

import pytest

from kb.ask.class_.people import PLENTY, Class, Lifter
from kb.ask.class_.spared import crowded, spared
from kb.terms import FaultId, ItemId, LiftId

BAR, TRAINING = ItemId("bar"), ItemId("training-bar")


def ways(bars: int, weights: str, training: int = 0) -> list[str]:
    """Each way as how many share a bar, then a letter a lifter: a bar, no bar, none of either.

    `w` marks who has a day's weight, else a fault.
    """
    lifters = tuple(
        Lifter(str(n), LiftId("snatch"), FaultId("f" if each == "w" else each), weight_kg=40 if each == "w" else None)
        for n, each in enumerate(weights)
    )
    letters = {frozenset[ItemId](): "b", frozenset({BAR}): "t", frozenset({BAR, TRAINING}): "s"}
    asked = Class("c", lifters, {BAR: bars, TRAINING: training}, 60, 1)
    return [
        f"{way.to_a_bar}{''.join(letters[each.without] for each in way.lifters)}"
        for way in (*crowded(asked), *spared(asked))
    ]


@pytest.mark.parametrize(
    ("bars", "weights", "training", "expected"),
    [
        (1, "......", 0, ["3bbbbbb", "4bbbbbb", "4bbbbtt", "3bbbttt", "2bbtttt", "2bttttt", "2tttttt"]),
        (1, "......", 1, ["3bbbbbb", "4bbbbbb", "4bbbbtt", "3bbbttt", "2bbtttt", "2bttttt", "2tttttt", "2ssssss"]),
        (1, "...w..", 0, ["3bbbbbb", "4bbbbbb", "4bbbbtt", "3bbtbtt", "2bttbtt", "2tttbtt"]),
        (1, ".w.www", 0, ["3bbbbbb", "4bbbbbb", "4tbtbbb"]),
        (2, "....", 0, ["3bbbb", "4bbbb", "2bbbt", "2bbtt", "2bttt", "2tttt"]),
        (4, "fgfgfgfg", 0, ["3bbbbbbbb", "4bbbbbbbb", "2bbbbbtbt", "2bbbtbtbt", "2btbtbtbt", "2btbttttt", "2tttttttt"]),
        (8, "wggfgffgf", 0, ["3bbbbbbbbb", "4bbbbbbbbb", "2bbbbbbbtb", "2bttbtbbtb", "2bttbtbbtt", "2btttttttt"]),
        (1, "www", 0, ["3bbb", "4bbb"]),
        (0, "......", 4, []),
        (6, "......", 0, []),
        (PLENTY, "......", 0, []),
    ],
    ids=["four stay, then fewer, then none", "a light bar first", "a weight first", "weights alone", "two to a bar",
         "whole chains", "a weight, then whole chains", "all", "none", "each", "uncounted"],
)  # fmt: skip
def test_most_stay_first_then_ever_fewer(bars: int, weights: str, training: int, expected: list[str]) -> None:
    """From two at a bar down; who has a weight first, then whole chains in the file's order; nobody leaves what isn't
    short."""
    assert ways(bars, weights, training) == expected
