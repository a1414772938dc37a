"""Section 5 of the published values: how far joints go, the lunge to the wall, squats and wedges."""

import math

import pytest
from bodies import position, shipped

from kb.body.demand import demand
from kb.body.inverse import inverse, least_ankle
from kb.body.limits import NOBODY, OPEN
from kb.body.measures import ankle_from_wall, wall_from_ankle, wedge_degrees
from kb.body.pose import Pose
from kb.body.proportions import USUAL, proportions

SQUATS = ("snatch-receive", "clean-receive")


# 5.01 and 5.05 Norkin & White app. A tab. A.1 (AAOS); 5.02 Boone & Azen 1979; 5.06 CDC (Soucie 2011), children
@pytest.mark.parametrize(
    ("joint", "norms"),
    [
        ("shoulder", (180, 167)),
        ("elbow", (150, 143, 145)),
        ("wrist", (70, 75)),
        ("knee", (135, 140, 152.6, 147.8)),
        ("ankle", (20, 24.8, 22.8)),
        ("hip", (125, 140, 131.1)),
    ],
)
def test_5_01_nobodys_limits_lie_beyond_the_norms(joint: str, norms: tuple[float, ...]) -> None:
    """What `check` calls impossible is above every published norm, and by less than a third."""
    most = NOBODY[joint].most
    assert max(norms) <= most
    if joint != "ankle":  # those norms are of a hanging foot: another scale (5.13)
        assert most <= max(norms) * 4 / 3


@pytest.mark.from_memory
def test_5_07_a_supple_lifter_is_near_the_norms_of_adults() -> None:
    """Hip 133.8, knee 141.9, elbow 150.0: OPEN lies within two deviations of ten degrees."""
    # 5.07 CDC (Soucie 2011), women of 20 to 44; 5.04 AAOS hip 120
    assert OPEN.hip == pytest.approx(133.8, abs=15)
    assert OPEN.elbow == 150.0
    assert OPEN.knee == pytest.approx(141.9, abs=20)


def test_5_08_the_lunges_mean_distance_gives_its_mean_angle() -> None:
    """11.7 cm and 40.6 degrees in men: ours is 39.3 at 175 cm, within half a deviation for any usual stature."""
    # 5.08 Calatayud 2015, 26 men: tape 11.6 (4.0) and 11.8 (4.2), goniometer 40.6 (5.2)
    for stature in (168, 175, 182):
        assert ankle_from_wall(proportions(stature), 11.7) == pytest.approx(40.6, abs=5.2 / 2)
    # a deviation of 4.1 cm moves ours by 7 degrees: more than the goniometer's 5.2, as a distance has a foot in it too
    spread = ankle_from_wall(USUAL, 11.7 + 4.1) - ankle_from_wall(USUAL, 11.7)
    assert 5.2 < spread < 2 * 5.2


def test_5_10_the_ratio_is_met_and_is_no_slope() -> None:
    """36 degrees at 10 cm, yet half as much a centimetre, and 20 to 27 degrees at 0 cm."""
    # 5.10, and section 13 row 3
    assert ankle_from_wall(USUAL, 10) == pytest.approx(36, abs=1)
    assert 20 <= ankle_from_wall(USUAL, 0) <= 27
    for distance in range(-5, 18):
        slope = ankle_from_wall(USUAL, distance + 1) - ankle_from_wall(USUAL, distance)
        assert 1.3 < slope < 2.2


def test_5_11_the_least_real_change_is_a_few_degrees() -> None:
    """1.6 to 1.9 cm, in geometry, are 2.5 to 3.5 degrees: inside the 4.6 that a goniometer needs."""
    # 5.11 Powden 2015; Konor 2012
    for distance in (1.6, 1.9):
        change = ankle_from_wall(USUAL, 10 + distance) - ankle_from_wall(USUAL, 10)
        assert 2.5 < change < 4.6


def test_5_12_the_norm_is_met() -> None:
    """10 cm lie in 30 to 38, as a podiatry page assumes."""
    # 5.12
    assert 30 <= ankle_from_wall(USUAL, 10) <= 38


@pytest.mark.from_memory
def test_5_12_the_other_norm_is_met() -> None:
    """And in 35 to 40."""
    # 5.12
    assert 35 <= ankle_from_wall(USUAL, 10) <= 40


def test_distance_and_angle_are_one_another_s_inverse() -> None:
    """Whatever the body."""
    for body in (USUAL, proportions(155), proportions(195, foot_cm=31)):
        for distance in (-4.0, 0.0, 6.5, 14.0):
            assert wall_from_ankle(body, ankle_from_wall(body, distance)) == pytest.approx(distance)


@pytest.mark.from_memory
@pytest.mark.parametrize("name", SQUATS)
def test_5_15_the_flat_squats_dorsiflexion(name: str) -> None:
    """38.5 with a deviation of 5.9: the catches have 40, on the same scale (the shank's lean)."""
    # 5.15 Hemmerich 2006
    assert demand(USUAL, shipped()[name]).angles["ankle"] == pytest.approx(38.5, abs=5.9)


@pytest.mark.from_memory
def test_5_13_who_cannot_squat_is_at_the_models_least() -> None:
    """A goniometer on a hanging foot reads less than the loaded shank leans; the groups keep their order and distance.

    Put those who squat with ease (23.1) at Hemmerich's 38.5; then those who squat with effort stand at 31.4 and those
    who can't at 24.7. Ours: the clean's squat needs 23.7 at the least, so whoever can't has next to nothing left, and
    with 31.4 it can be done, leaning more.
    """
    # 5.13 Ann Rehabil Med: 23.13, 16.03, 9.31; with 5.15, which is from memory
    offset = 38.5 - 23.13
    squat = shipped()["clean-receive"]
    least = least_ankle(USUAL, squat)
    assert least is not None
    assert least == pytest.approx(9.31 + offset, abs=2)
    effort = inverse(USUAL, squat, OPEN._replace(ankle=16.03 + offset))
    ease = inverse(USUAL, squat, OPEN._replace(ankle=23.13 + offset))
    assert effort.reachable
    assert effort.lean > ease.lean + 3


def test_5_14_knees_bend_less_in_a_catch_than_in_a_deep_squat() -> None:
    """157 with heels up: the catches' 137 leave room, and a supple lifter's limit lies within one deviation."""
    # 5.14 Hemmerich 2006: 157 (6)
    assert OPEN.knee == pytest.approx(157, abs=6)
    for name in SQUATS:
        assert shipped()[name].angles["knee"] < 157 - 6


def _arms(pose: Pose) -> tuple[float, float]:
    """How far knee and hip lie from the line of the bar, m, knee forward and hip back positive."""
    return pose.legs[0].knee.x - pose.bar.x, pose.bar.x - pose.hip.x


def test_5_17_knees_held_behind_the_toes_load_the_hip() -> None:
    """The shank kept back: less lever at the knee, more at the hip, as their torques went."""
    # 5.17 Fry 2003, n = 7
    squat = position(
        {"ankle": 34, "knee": 118, "hip": 112, "trunk": 28, "shoulder": 4, "elbow": 145, "wrist": 20}, "neck"
    )
    free = inverse(USUAL, squat)
    toes = USUAL.foot / 2
    assert free.pose.legs[0].knee.x > toes - 0.03
    held = inverse(USUAL, squat, OPEN._replace(ankle=26, back_hip=30))
    assert held.reachable
    (knee, hip), (knee_held, hip_held) = _arms(free.pose), _arms(held.pose)
    assert knee_held < knee
    assert hip_held > hip
    assert held.lean > free.lean


@pytest.mark.parametrize("name", SQUATS)
def test_5_18_wedges_lessen_the_lean_and_bend_the_knee(name: str) -> None:
    """At 0, 25 and 50 mm the trunk leans less and the knee bends more at each step."""
    # 5.18 Monteiro 2022
    found = [demand(USUAL, shipped()[name], wedge=wedge_degrees(USUAL, mm)) for mm in (0, 25, 50)]
    leans = [each.lean for each in found]
    knees = [each.angles["knee"] for each in found]
    assert leans == sorted(leans, reverse=True)
    assert knees == sorted(knees)
    # 5.18 Farhad 2024: a heel block lessens the lean by 3.1 (4.6); ours by 1.9 (25 mm) and 4.1 (50 mm)
    for lean in leans[1:]:
        assert leans[0] - lean == pytest.approx(3.1, abs=4.6 / 2)
    # and the ankle gets back about what the sole is tilted by, or a little less: the lifter sits more upright too
    ankles = [each.angles["ankle"] for each in found]
    for mm, ankle in zip((25, 50), ankles[1:], strict=True):
        assert 0.7 < (ankles[0] - ankle) / wedge_degrees(USUAL, mm) < 1.1


# 5.19, computed: asin(h / 200)
@pytest.mark.parametrize(("height", "tilt"), [(13, 3.73), (20, 5.74), (25, 7.18), (50, 14.48)])
def test_5_19_tilt_of_the_sole(height: float, tilt: float) -> None:
    """With 200 mm from heel to ball."""
    foot = USUAL._replace(foot=0.200 / 0.73)
    assert foot.ball == pytest.approx(0.2)
    assert wedge_degrees(foot, height) == pytest.approx(tilt, abs=0.005)
    assert wedge_degrees(foot, height) == pytest.approx(math.degrees(math.asin(height / 200)))
