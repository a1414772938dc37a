"""Whose text has the feet do something else than its `feet` says."""

from typing import Any

import pytest
from handmade import SEEN, bare, drill

from kb.check.feet_disagree import rule

LAND: dict[str, Any] = {"feet": "land"}


def judged(text: str, heading: str = "Do", **said: Any) -> bool:
    """Whether a drill with that text is found fault with."""
    one = drill("judged", sections={heading: text}, **said)
    return bool(list(rule(bare({one.id: one}))))


@pytest.mark.parametrize(
    "text",
    [
        "Dip and jump straight up.",
        "Find the stance first: three small hops. Hop three times.",
        "Then let the floor go: both feet fly at once.",
        "Snap the feet out to the landing stance.",
        "Land flat on the outer prints and freeze.",
    ],
)
def test_feet_that_land_are_not_still(text: str) -> None:
    """Still is said, or nothing; a step and a landing are not judged by it."""
    assert judged(text)
    assert not judged(text, feet="step")
    assert not judged(text, feet="land")


@pytest.mark.parametrize(
    "text",
    [
        "Let the bar hop off the shoulders as high as the legs send it.",
        "Feet where they land in the clean.",
        "Freeze at the place: heels down, no jump and no shrug.",
        "Whip the elbows round and land the bar on the shoulders.",
        "On to the balls of the feet, and let the bar fly.",
        "The other foot leaves the floor without a hop.",
    ],
)
def test_a_bar_that_hops_and_a_hop_that_is_forbidden_are_no_landing(text: str) -> None:
    """Nor is the stance in which one would land."""
    assert not judged(text)


def test_the_way_out_of_a_miss_is_not_read() -> None:
    """Feet may always leave the floor there."""
    assert not judged("In front: push it away and jump back.", "Miss")


def test_feet_that_never_leave_the_floor_do_not_land() -> None:
    """In the text or in the standard."""
    assert judged("Go under from there, feet glued.", **LAND)
    assert judged("Go under.", standard=SEEN._replace(seen="heels and toes never leave the floor"), **LAND)
    assert not judged("Go under from there, feet glued.")
