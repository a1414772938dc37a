"""What becomes of what helped at once. Common practice, no source."""

import pytest

from kb.show.helped_said import helped_said


@pytest.mark.parametrize(
    ("helped", "says"),
    [
        ("straps from the hang", "never in what is caught"),
        ("plates under my heels", "never to lift or land on"),
        ("the big mirror", "No bar before glass"),
        ("low blocks", "the work begins there"),
        ("hands three fingers wider", "simply stays"),
        ("a thinner bar", "simply stays"),
        ("the left foot in front", "simply stays"),
        ("a stop of two counts", "gone once three running are right"),
        ("a word as it leaves the floor", "gone once three running are right"),
    ],
)
def test_each_kind_of_help_stays_or_fades_as_it_can(helped: str, says: str) -> None:
    """Nothing that can't stay under a catch is told to; what is for good isn't taken away."""
    said = helped_said(helped)
    assert said.startswith(f"Helped at once: {helped}. ")
    assert says in said
