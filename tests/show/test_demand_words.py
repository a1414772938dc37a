"""What a position asks of a body, as it is said."""

import pytest
from bodies import shipped

from kb.ask.by_screen import Verdict
from kb.show.by_screen_text import by_screen_json, by_screen_line, by_screen_text
from kb.show.demand_words import asked
from kb.show.setting import Setting
from kb.terms import Cause, PositionId


@pytest.mark.parametrize(
    ("name", "said"),
    [
        (
            "snatch-receive",
            "ankles that bend 40 degrees under load (with more lean, 33 at the least) and 20 degrees from the upper"
            " back, past the shoulders' 180",
        ),
        ("jerk-split", "a back hip that opens 26 degrees"),
        ("snatch-stand", ""),
        ("clean-extension", ""),
    ],
)
def test_what_a_position_asks_for(name: str, said: str) -> None:
    """Much of the ankle, the upper back or the back hip is said; little isn't."""
    assert asked(shipped()[name]) == said


STIFF = Cause("stiff-ankles", "mobility", "The ankles stop.")
NAMES = {PositionId("a"): "Snatch catch"}


@pytest.mark.parametrize(
    ("verdict", "said"),
    [
        (Verdict(STIFF, "up", "ankle", PositionId("a"), 6.4, lacks=True), "ankle: 6 degrees short for snatch catch"),
        (Verdict(STIFF, "up", "ankle", PositionId("a"), 0.2, lacks=True), "ankle: 1 degree short for snatch catch"),
        (
            Verdict(STIFF, "up", "ankle", PositionId("a"), 5),
            "ankle: snatch catch is within reach only by leaning 5 degrees more",
        ),
        (Verdict(STIFF, "down", "ankle", PositionId("a"), 41), "ankle: 41 degrees, and snatch catch is within reach"),
        (Verdict(STIFF, joint="ankle"), "not measured (knee to wall: --wall)"),
        (Verdict(STIFF), "no tape tells"),
    ],
)
def test_why_a_cause_stands_where_it_does(verdict: Verdict, said: str) -> None:
    """The joint, how much, and where; on a line, for programs and in the text."""
    assert by_screen_line([verdict], NAMES) == f"By the measurements, stiff ankles first: {said}."
    (row,) = by_screen_json([verdict], NAMES)
    assert row == {"cause": "stiff-ankles", "moved": verdict.moved or None, "why": said}
    text = " ".join(" ".join(by_screen_text([verdict], NAMES, Setting())).split())
    assert said[1:] in text
