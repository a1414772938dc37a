"""What is answered to what others advise: only where it isn't what the cause calls for."""

import pytest

from kb.ask.advice import KINDS, SAID, advised
from kb.terms import Cause

pytestmark = pytest.mark.no_cover

ASKED = (
    ("strength", "do we need heavier pulls?"),
    ("strength", "my mate says do more squats"),
    ("strength", "the club wants extra overhead pressing"),
    ("strength", "is she just weak?"),
    ("mobility", "should I do more stretching"),
    ("mobility", "he was told he needs mobility work"),
    ("anew", "he wants to relearn the jerk"),
    ("anew", "thinks his technique is broken"),
)

NOT_ASKED = (
    "from blocks he pulls 80 easily",
    "front squat 110, deadlift 170",
    "her shoulders stretch well",
    "he presses the bar out",
    "she cleans more when nobody looks",
)


@pytest.mark.parametrize(("what", "said"), ASKED)
def test_it_is_answered_unless_the_cause_calls_for_it(what: str, said: str) -> None:
    """The lift anew is never called for."""
    for kind in KINDS:
        found = advised(said, Cause(id="one", kind=kind, text=""))  # type: ignore[arg-type]
        called_for = kind == what or (kind == "earlier" and what != "anew")
        assert bool(found) != called_for
        assert all(text.startswith(SAID[what].split("{")[0]) for text in found)


@pytest.mark.parametrize("said", NOT_ASKED)
def test_what_is_only_told_is_not_taken_for_advice(said: str) -> None:
    """Bests, and what the lifter does."""
    assert advised(said, Cause(id="one", kind="timing", text="")) == ()


def test_nothing_said_is_nothing_advised() -> None:
    """No words, no answer."""
    assert advised(None, Cause(id="one", kind="timing", text="")) == ()
