"""What is seen only from some weight on isn't put down to what a stick shows too."""

import sqlite3

import pytest

from kb.ask import read
from kb.ask.under_weight import under_weight
from kb.terms import FaultId

pytestmark = pytest.mark.no_cover


@pytest.mark.parametrize(
    ("fault", "cause"),
    [
        ("bar-behind-overhead", "weak-upper-back"),
        ("back-rounds-off-floor", "weak-back"),
        ("jerk-recovers-wrong-foot", "weak-front-leg"),
        ("hips-rise-first", "weak-legs-off-floor"),
        ("bar-loops-out", None),
        ("clean-bar-crashes", None),
    ],
)
def test_a_cause_that_needs_weight_leads(db: sqlite3.Connection, fault: str, cause: str | None) -> None:
    """A stick that stays put clears position sense; strength is looked at first (common practice, no source)."""
    assert under_weight(read.faults(db)[FaultId(fault)]) == cause
