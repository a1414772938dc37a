"""A body from a tape measure: what is kept, what stretches, and what is refused."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kb.body.proportions import USUAL, proportions
from kb.errors import BadInput

near = st.floats(0.9, 1.1)


@given(st.floats(130, 220), near, near, near)
@settings(max_examples=50)
def test_the_whole_is_the_stature(stature: float, inseam: float, thigh: float, trunk: float) -> None:
    """Whatever was measured, ankle to crown is the height, and each measurement is kept."""
    body = proportions(
        stature,
        inseam_cm=0.47 * stature * inseam,
        thigh_cm=0.245 * stature * thigh,
        trunk_cm=0.288 * stature * trunk,
    )
    assert body.ankle_height + body.shank + body.thigh + body.trunk + body.head == pytest.approx(stature / 100)
    assert body.thigh == pytest.approx(0.00245 * stature * thigh)
    assert body.trunk == pytest.approx(0.00288 * stature * trunk)
    assert min(body[2:11]) > 0


def test_a_longer_inseam_lengthens_shank_and_thigh_alike() -> None:
    """And shortens what is above."""
    long = proportions(175, inseam_cm=0.47 * 175 + 5)
    assert long.shank + long.thigh == pytest.approx(USUAL.shank + USUAL.thigh + 0.05)
    assert long.thigh / long.shank == pytest.approx(USUAL.thigh / USUAL.shank)
    assert long.trunk / long.head == pytest.approx(USUAL.trunk / USUAL.head)
    assert long.trunk < USUAL.trunk


def test_a_wider_span_lengthens_both_arms() -> None:
    """Ten centimetres are five an arm, shared out by length."""
    wide = proportions(175, span_cm=185)
    arm, usual = (b.upper_arm + b.forearm + b.hand for b in (wide, USUAL))
    assert arm == pytest.approx(usual + 0.05)
    assert wide.upper_arm / wide.hand == pytest.approx(USUAL.upper_arm / USUAL.hand)


@pytest.mark.parametrize(
    ("said", "message"),
    [
        ({"stature_cm": 99}, "between 100 and 250"),
        ({"stature_cm": float("nan")}, "nan"),
        ({"mass_kg": float("inf")}, "inf"),
        ({"mass_kg": 0}, "between 20 and 300"),
        ({"inseam_cm": 40}, "for this stature"),
        ({"thigh_cm": 80}, "for this stature"),
        ({"trunk_cm": -50}, "for this stature"),
        ({"span_cm": float("nan")}, "for this stature"),
        ({"foot_cm": 266}, "for this stature"),
        ({"inseam_cm": 56, "thigh_cm": 56}, "too little for the shanks"),
        ({"inseam_cm": 100, "trunk_cm": 60}, "too little for the head and neck"),
    ],
)
def test_what_no_body_has_is_refused(said: dict[str, float], message: str) -> None:
    """One sentence each."""
    with pytest.raises(BadInput, match=message):
        proportions(**said)  # type: ignore[arg-type]
