"""Joint angles to coordinates, against complex numbers, and what must hold whoever the body is."""

import math

import pytest
from bodies import bodies, by_turning, position, shipped
from hypothesis import given, settings
from hypothesis import strategies as st

from kb.body.balance import balance, centre_of_mass, segment_centres
from kb.body.legs import leg_up
from kb.body.pose import DISC_RADIUS, SPREADS, Point, Pose, drawable, forward, place
from kb.body.proportions import GRIP, PALM, USUAL, Body, proportions
from kb.body.segments import LIMBS
from kb.terms import Position, PositionId

EXACT = 1e-9
ANGLES = st.fixed_dictionaries(
    {
        "ankle": st.floats(-30, 45),
        "knee": st.floats(0, 150),
        "hip": st.floats(-20, 135),
        "trunk": st.floats(-20, 80),
        "shoulder": st.floats(-40, 205),
        "elbow": st.floats(0, 150),
        "wrist": st.floats(-60, 80),
    }
)
LEVEL = {id_: each for id_, each in shipped().items() if each.contact != "split"}


def _close(point: Point, number: complex) -> bool:
    return abs(complex(*point) - number) < EXACT


@given(
    bodies(), ANGLES, st.sampled_from(("feet-flat", "toes")), st.sampled_from(("thigh", "overhead")), st.floats(0, 45)
)
@settings(max_examples=60, deadline=None)
def test_coordinates_are_those_of_turned_complex_numbers(
    body: Body, angles: dict[str, float], contact: str, bar: str, spread: float
) -> None:
    """Every joint and the bar, to a billionth of a metre."""
    pose = place(body, angles, contact, bar, spread=spread)
    pitch = angles["trunk"] - angles["hip"] + angles["knee"] - angles["ankle"] if contact == "toes" else 0.0
    read = by_turning(body, angles, spread, pitch)
    leg = pose.legs[0]
    # the foot turns about its ball: clockwise, heel up
    turn = complex(math.cos(math.radians(pitch)), -math.sin(math.radians(pitch)))
    ball = 0.73 * body.foot - body.foot / 2
    ankle = ball + (0.25 * body.foot - 0.73 * body.foot + 1j * body.ankle_height) * turn
    assert _close(leg.heel, ball - 0.73 * body.foot * turn)
    assert _close(leg.ankle, ankle)
    assert _close(leg.knee, ankle + read["knee"])
    for name in ("hip", "shoulder", "elbow", "wrist"):
        assert _close(getattr(pose, name), ankle + read[name])
    held = PALM if bar == "overhead" else GRIP
    assert _close(pose.bar, ankle + read["wrist"] + held * read["hand"])
    assert _close(pose.vertex, ankle + read["shoulder"] + body.head * 1j * _turned(-pose.lean / 2))
    assert leg.pitch == pytest.approx(pitch)


def _turned(degrees: float) -> complex:
    return complex(math.cos(math.radians(degrees)), math.sin(math.radians(degrees)))


@given(bodies(), ANGLES, st.floats(0, 45), st.floats(0, 200))
@settings(max_examples=60, deadline=None)
def test_the_centre_of_mass_is_the_weighted_mean(
    body: Body, angles: dict[str, float], spread: float, bar_kg: float
) -> None:
    """Against a sum written out here by complex numbers, for flat feet, to a billionth of a metre."""
    pose = place(body, angles, "feet-flat", "thigh", spread=spread)
    read = by_turning(body, angles, spread, 0.0)
    shares = body.shares
    ankle = 0.25 * body.foot - body.foot / 2 + 1j * body.ankle_height
    hip, knee, shoulder = read["hip"], read["knee"], read["shoulder"]
    if body.table == "winter":
        foot = (ankle + 0.73 * body.foot - body.foot / 2) / 2 - ankle
    else:
        foot = shares["foot"].centre * body.foot - body.foot / 2 + 1j * body.ankle_height / 2 - ankle
    head = body.head * 1j * _turned(-pose.lean / 2)
    where = {
        "foot": foot,
        "shank": knee + shares["shank"].centre * (0 - knee),
        "thigh": hip + shares["thigh"].centre * (knee - hip),
        "trunk": hip + shares["trunk"].centre * (shoulder - hip),
        "head": shoulder + shares["head"].centre * head,
        "upper_arm": shoulder + shares["upper_arm"].centre * (read["elbow"] - shoulder),
        "forearm": read["elbow"] + shares["forearm"].centre * (read["wrist"] - read["elbow"]),
        "hand": read["wrist"] + shares["hand"].centre * read["hand"],
    }
    whole = sum((2 if name in LIMBS else 1) * shares[name].mass for name in where)
    moment = sum((2 if name in LIMBS else 1) * shares[name].mass * at for name, at in where.items())
    of_body = ankle + moment / whole
    bar = complex(*pose.bar)
    assert _close(
        centre_of_mass(body, pose, bar_kg=bar_kg), (body.mass * of_body + bar_kg * bar) / (body.mass + bar_kg)
    )
    assert sum(mass for _, mass, _ in segment_centres(body, pose)) == pytest.approx(body.mass)


@given(bodies(), st.sampled_from(sorted(LEVEL)))
@settings(max_examples=60, deadline=None)
def test_the_trunk_leans_by_hip_less_knee_plus_ankle(body: Body, name: str) -> None:
    """On flat feet; and on the toes as the position says."""
    posture = LEVEL[name]
    pose = forward(body, posture)
    lean = math.degrees(math.atan2(pose.shoulder.x - pose.hip.x, pose.shoulder.y - pose.hip.y))
    angles = posture.angles
    flat = angles["hip"] - angles["knee"] + angles["ankle"]
    assert lean == pytest.approx(flat if posture.contact == "feet-flat" else angles["trunk"])
    assert pose.lean == pytest.approx(lean)


@given(bodies(), st.floats(-40, -5), st.floats(10, 70), st.floats(-10, 20))
@settings(max_examples=60, deadline=None)
def test_both_feet_of_a_split_are_on_the_floor(body: Body, hip: float, knee: float, ankle: float) -> None:
    """The back ball is brought down by the least change of its leg's angles, and x = 0 lies between the feet."""
    own = {**shipped()["jerk-split"].angles, "back_hip": hip, "back_knee": knee, "back_ankle": ankle}
    pose = forward(body, position(own, contact="split"))
    front, back = pose.legs
    assert front.heel.y == pytest.approx(0, abs=EXACT)
    assert back.ball.y == pytest.approx(0, abs=1e-8)
    assert front.hip == pytest.approx(back.hip, abs=EXACT)
    assert (front.heel.x + front.toe.x) / 2 == pytest.approx(-back.ball.x, abs=EXACT)
    changed = sum((pose.angles[joint] - own[joint]) ** 2 for joint in own)
    assert pose.closed == pytest.approx(max(abs(pose.angles[joint] - own[joint]) for joint in own), abs=1e-9)
    # no other leg that closes is nearer: go round the ones about it
    for dx, dy in ((0.5, 0), (-0.5, 0), (0, 0.5), (0, -0.5), (0.3, 0.3), (-0.3, -0.3)):
        near = _closed_by_ankle(body, pose, dx, dy)
        if near is not None:
            assert sum((near[joint] - own[joint]) ** 2 for joint in near) >= changed - 1e-6


def _closed_by_ankle(body: Body, pose: Pose, hip: float, knee: float) -> dict[str, float] | None:
    """Back hip and knee changed a little, and the ankle that still puts the ball on the floor, by bisection."""
    angles = {joint: pose.angles[joint] for joint in ("back_hip", "back_knee", "back_ankle")}
    angles["back_hip"] += hip
    angles["back_knee"] += knee

    def above(ankle: float) -> float:
        pitch = pose.lean - angles["back_hip"] + angles["back_knee"] - ankle
        return pose.hip.y - leg_up(body, ankle, angles["back_knee"], pitch).hip.y

    low, high = angles["back_ankle"] - 30, angles["back_ankle"] + 30
    if above(low) * above(high) > 0:
        return None
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if above(low) * above(middle) > 0 else (low, middle)
    return {**angles, "back_ankle": low}


@given(bodies(), ANGLES)
@settings(max_examples=40, deadline=None)
def test_turning_every_joint_the_other_way_mirrors_the_body(body: Body, angles: dict[str, float]) -> None:
    """From the ankle up: forward and back change places, heights stay."""
    pose = place(body, angles, "feet-flat", "thigh", spread=10)
    other = place(body, {joint: -degrees for joint, degrees in angles.items()}, "feet-flat", "thigh", spread=10)
    for name in ("hip", "shoulder", "elbow", "wrist", "bar", "vertex"):
        here, there = getattr(pose, name), getattr(other, name)
        ankle = pose.legs[0].ankle
        assert here.x - ankle.x == pytest.approx(ankle.x - there.x, abs=EXACT)
        assert here.y == pytest.approx(there.y, abs=EXACT)


@given(st.floats(110, 240), st.sampled_from(sorted(shipped())))
@settings(max_examples=60, deadline=None)
def test_a_body_of_another_stature_is_the_same_body_scaled(stature: float, name: str) -> None:
    """All coordinates grow alike, but for the floor's bar, whose disc has one size."""
    posture = shipped()[name]
    small, large = forward(USUAL, posture), forward(proportions(stature), posture)
    scale = stature / 175
    points = ["hip", "shoulder", "vertex", "chin"] + ([] if posture.bar == "floor" else ["elbow", "wrist", "bar"])
    for point in points:
        assert getattr(large, point) == pytest.approx([each * scale for each in getattr(small, point)], abs=1e-7)


@pytest.mark.parametrize("name", sorted(shipped()))
def test_every_position_is_drawn(name: str) -> None:
    """No point is missing, feet are on the floor, hands on the bar, and a bar on the floor at half a disc."""
    posture = shipped()[name]
    pose = forward(USUAL, posture)
    assert drawable(posture)
    assert all(math.isfinite(each) for leg in pose.legs for point in leg.points for each in point)
    assert min(point.y for leg in pose.legs for point in leg.points) == pytest.approx(0, abs=1e-8)
    if posture.bar == "floor":
        assert pose.bar.y == pytest.approx(DISC_RADIUS)
    if posture.bar in SPREADS:
        assert pose.reach_short == 0
        assert math.dist(pose.wrist, pose.bar) == pytest.approx(PALM * USUAL.hand)
    assert balance(USUAL, pose).inside or posture.contact == "toes"


def test_what_a_figure_cannot_be_drawn_from_is_told() -> None:
    """A split needs both legs' angles, and every position its arms'."""
    angles = shipped()["jerk-split"].angles
    assert not drawable(position({**angles}, contact="feet-flat"))
    assert not drawable(Position(PositionId("a"), "A", {}, "hip", "toes"))


def test_a_back_leg_that_cannot_turn_stays_as_it_is() -> None:
    """Straight down from the hip no small change moves the ball: the leg is left in the air rather than lost."""
    own = {**shipped()["jerk-split"].angles, "back_hip": 0.0, "back_knee": 0.0, "back_ankle": -90.0}
    pose = forward(USUAL, position(own, contact="split"))
    assert all(math.isfinite(each) for leg in pose.legs for point in leg.points for each in point)


def test_hands_too_far_above_the_floor_stay_where_the_arms_end() -> None:
    """The grip brings hands to a bar on the floor only where some grip does."""
    standing = position(shipped()["snatch-stand"].angles, "floor")
    assert forward(USUAL, standing).bar.y > 1
    assert forward(USUAL, shipped()["snatch-start"], spread=0).bar.y < DISC_RADIUS


def test_an_elbow_at_the_bar_is_no_division_by_nothing() -> None:
    """A racked bar exactly at the elbow puts the wrist there too."""
    arms = USUAL._replace(upper_arm=1e-12)
    assert math.isfinite(forward(arms, shipped()["clean-stand"]).wrist.x)


def test_feet_turned_out_are_shorter_from_the_side() -> None:
    """What lies level of the leg shrinks by the cosine; heights stay."""
    angles = shipped()["snatch-receive"].angles
    straight = place(USUAL, angles, "feet-flat", "overhead", spread=26)
    turned = place(USUAL, angles, "feet-flat", "overhead", spread=26, turn_out=60)
    assert turned.legs[0].knee.x == pytest.approx(straight.legs[0].knee.x / 2)
    assert turned.hip.y == pytest.approx(straight.hip.y)


def test_a_heel_raised_lifts_the_foots_centre() -> None:
    """In de Leva's tables a foot's centre turns about the ball with the heel."""
    women = proportions(table="women")
    up, flat = (forward(women, shipped()[name]) for name in ("clean-extension", "clean-stand"))
    centres = {at.y for pose in (up, flat) for name, _, at in segment_centres(women, pose) if name == "foot"}
    assert max(centres) > min(centres) == pytest.approx(women.ankle_height / 2)
