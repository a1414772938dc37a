"""Which standards two coaches would count alike."""

import pytest
from handmade import bare, drill

from kb.check.uncountable_standard import rule
from kb.terms import Standard

COUNTABLE = [
    "bar over mid-foot at the knee",
    "heels down",
    "knee touches the wall with the big toe 10 cm from it, heel down",
    "two still seconds in the dip, then hips straight before the elbows move at all",
    "right foot back first, level with the left",
    "both feet on the marks",
    "right front knee over the toes",
    "benches level",
]
UNCOUNTABLE = [
    "good",
    "a good position of the back",
    "correct bar path",
    "hips in the right place",
    "everything smooth and controlled",
    "as crisp as the first",
    "it feels better than before",
    "proper technique",
]


@pytest.mark.parametrize(("seen", "ok"), [(s, True) for s in COUNTABLE] + [(s, False) for s in UNCOUNTABLE])
def test_what_is_seen(seen: str, ok: bool) -> None:
    """Something to point at or count, and no word of judgement."""
    judged = drill("a", standard=Standard(count=3, of=3, seen=seen))
    assert (list(rule(bare({judged.id: judged}))) == []) is ok
