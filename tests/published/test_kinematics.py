"""Section 6 of the published values: the positions of skilled lifters; section 11: how bodies and bars fall.

A figure is no recording: whole degrees of one body against means of many lifters. Five degrees and three per cent of
stature are let pass where a source gives one number, and a source's own range where it gives one.
"""

import math

import pytest
from bodies import position, shipped

from kb.body.flight import fall_seconds, float_seconds, rise
from kb.body.pose import Pose, forward
from kb.body.proportions import USUAL

STARTS = ("snatch-start", "clean-start")


def _pose(name: str) -> Pose:
    return forward(USUAL, shipped()[name])


def _knee(name: str) -> float:
    """The included angle of the knee, as papers give it."""
    return 180 - shipped()[name].angles["knee"]


def _hip(name: str) -> float:
    return 180 - shipped()[name].angles["hip"]


@pytest.mark.parametrize("name", STARTS)
def test_6_02_the_start(name: str) -> None:
    """Trunk 25 to 50 degrees to the platform, shins forward, bar over the toe joints, shoulders just before it."""
    # 6.02 Drechsler 1998
    pose = _pose(name)
    assert 25 <= 90 - pose.lean <= 50
    assert shipped()[name].angles["ankle"] > 5
    assert pose.bar.x == pytest.approx(pose.legs[0].ball.x, abs=0.03)
    assert 0 <= pose.shoulder.x - pose.bar.x <= 0.10


@pytest.mark.parametrize(("lift", "slope"), [("snatch", 30), ("clean", 32)])
def test_6_03_the_trunk_keeps_its_slope(lift: str, slope: float) -> None:
    """About 30 (snatch) and 32 (clean) to the platform from the floor to the knee, and hardly changing."""
    # 6.03 Drechsler 1998; 6.10 Kipp 2012: better lifters hold it steadier
    leans = [_pose(f"{lift}-{point}").lean for point in ("start", "lift-off", "knee")]
    assert [90 - lean for lean in leans] == pytest.approx([slope] * 3, abs=5)
    assert max(leans) - min(leans) <= 3


@pytest.mark.parametrize("lift", ["snatch", "clean"])
def test_6_03_the_knees_open_and_the_shins_end_vertical(lift: str) -> None:
    """From 80-110 to 145-155 degrees."""
    # 6.03
    assert 80 <= _knee(f"{lift}-start") <= 110
    assert 145 <= _knee(f"{lift}-knee") <= 155
    assert shipped()[f"{lift}-knee"].angles["ankle"] == pytest.approx(0, abs=5)
    assert _knee(f"{lift}-start") < _knee(f"{lift}-lift-off") < _knee(f"{lift}-knee")


@pytest.mark.parametrize(("lift", "share"), [("clean", 0.31), ("snatch", 0.35)])
def test_6_04_the_bar_at_the_knee(lift: str, share: float) -> None:
    """31 and 35 % at the end of the first pull; ours, at the knee, are 28 and 31 (kb/docs/body.md says why)."""
    # 6.04, beside 1.01: the knee is at 28.5 %
    height = _pose(f"{lift}-knee").bar.y / 1.75
    assert 0.28 <= height <= share
    assert height == pytest.approx(share, abs=0.045)
    assert height == pytest.approx(0.285, abs=0.03)


def test_6_05_a_champions_knees() -> None:
    """155 at knee height and 135 at the end of the transition; ours 148 and 134."""
    # 6.05, low trust: ten degrees let pass
    assert _knee("snatch-knee") == pytest.approx(155, abs=10)
    assert _knee("snatch-hip") == pytest.approx(135, abs=10)


def test_6_01_the_knees_bend_again_in_the_transition() -> None:
    """Extension, flexion, extension: what parts first pull, transition and second pull."""
    # 6.01 Ho 2011; Enoka 1979
    for lift in ("snatch", "clean"):
        knees = [_knee(f"{lift}-{point}") for point in ("start", "knee", "hip", "extension")]
        assert knees[0] < knees[1] > knees[2] < knees[3]


@pytest.mark.from_memory
@pytest.mark.parametrize("name", ["snatch-hip", "clean-hip"])
def test_6_12_the_power_position(name: str) -> None:
    """Knee 125 to 145, hip 140 to 150, as in the isometric mid-thigh pull."""
    # 6.12 Comfort 2019
    assert 125 <= _knee(name) <= 145
    assert 140 <= _hip(name) <= 150


@pytest.mark.from_memory
def test_6_13_knees_of_the_pull() -> None:
    """About 145, 125-130 and 160-165; ours 148, 134 and 170, five degrees off at most."""
    # 6.13 Gourgoulis 2000, low trust
    assert _knee("snatch-knee") == pytest.approx(145, abs=5)
    assert 125 - 5 <= _knee("snatch-hip") <= 130 + 5
    assert 160 - 5 <= _knee("snatch-extension") <= 165 + 5


def _dip() -> float:
    """How far the bar goes down from rack to dip, share of stature."""
    return (_pose("jerk-rack").bar.y - _pose("jerk-dip").bar.y) / 1.75


def test_6_14_the_jerks_dip() -> None:
    """8 to 12 % of stature, knee 99 to 111 degrees: ours 9.0 % and 110."""
    # 6.14; 6.15 says about 13 % (Grabe & Widule 1988): section 13 row 1 lets either stand
    assert 0.08 <= _dip() <= 0.12
    assert 99 <= _knee("jerk-dip") <= 111


def test_6_16_knees_of_the_dip_at_80_per_cent() -> None:
    """58 degrees of flexion at 80 %; ours 70, between that and the 81 that 6.14's 99 leaves."""
    # 6.16 ISBS 2006
    assert 58 <= shipped()["jerk-dip"].angles["knee"] <= 81


# 6.17, computed: law of cosines on 1.03, trunk upright
@pytest.mark.parametrize(("knee", "drop"), [(99, 11.76), (105, 10.15), (111, 8.64), (122, 6.16)])
def test_6_17_drop_of_the_hip_by_the_knees_angle(knee: float, drop: float) -> None:
    """The hip straight above the ankle: the legs' chord, against the model's own coordinates."""
    shank, thigh = USUAL.shank, USUAL.thigh
    bent = math.radians(180 - knee)
    # the shank leans so that the hip stays above the ankle
    ankle = math.degrees(math.atan2(thigh * math.sin(bent), shank + thigh * math.cos(bent)))
    angles = {"ankle": ankle, "knee": 180.0 - knee, "hip": 180.0 - knee - ankle}
    pose = forward(USUAL, position({**angles, "trunk": 0, "shoulder": 48, "elbow": 145, "wrist": 60}, "shoulders"))
    assert pose.hip.x == pytest.approx(pose.legs[0].ankle.x)
    standing = USUAL.ankle_height + shank + thigh
    assert (standing - pose.hip.y) / 1.75 * 100 == pytest.approx(drop, abs=0.005)
    # 6.17 agrees with 6.14: 8 to 12 % at 99 to 111 degrees
    assert (8 <= drop <= 12) == (99 <= knee <= 111)


# 11.01, computed: t = sqrt(2 h / g)
@pytest.mark.parametrize(
    ("height", "seconds"), [(0.20, 0.2020), (0.25, 0.2258), (0.30, 0.2474), (0.40, 0.2856), (0.50, 0.3193)]
)
def test_11_01_free_fall(height: float, seconds: float) -> None:
    """How long a fall takes."""
    assert fall_seconds(height) == pytest.approx(seconds, abs=5e-5)


# 11.02, computed: v2/2g and v/g at the speeds of 6.06
@pytest.mark.parametrize(
    ("speed", "height", "seconds"),
    [
        (1.2, 0.0734, 0.1224),
        (1.6, 0.1305, 0.1632),
        (1.65, 0.1388, 0.1683),
        (1.8, 0.1652, 0.1835),
        (2.05, 0.2143, 0.2090),
    ],
)
def test_11_02_a_bar_let_go(speed: float, height: float, seconds: float) -> None:
    """How far and how long it still rises."""
    assert rise(speed) == pytest.approx(height, abs=5e-5)
    assert float_seconds(speed) == pytest.approx(seconds, abs=5.1e-5)


def test_a_snatch_at_top_speed_could_rise_to_its_catch() -> None:
    """From full extension at 1.65 to 2.05 m/s the bar still rises 14 to 21 cm; the catch is 50 cm above it.

    So the pull goes on with the arms while the body goes down: the figures ask for no flight that physics forbids, for
    a bar pulled 29 to 36 cm past extension.
    """
    # 6.06 with 11.02
    up = _pose("snatch-receive").bar.y - _pose("snatch-extension").bar.y
    assert rise(2.05) < up < 0.6
