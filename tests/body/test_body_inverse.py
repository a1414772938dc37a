"""The angles a body must take: against a general optimiser, and the laws that coaches know."""

import math

import numpy as np
import pytest
from bodies import bodies, limits, position, shipped
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy.optimize import minimize

from kb.body.balance import balance
from kb.body.demand import demand
from kb.body.family import ELBOWS_DROP, LEAN_MORE
from kb.body.inverse import WEIGHTS, Taken, inverse, least_ankle
from kb.body.limits import OPEN, Limits
from kb.body.measures import wedge_degrees
from kb.body.pose import DISC_RADIUS, SPREADS, forward, place
from kb.body.proportions import USUAL, Body, proportions
from kb.terms import Position

NAMES = sorted(shipped())
LEVEL = [name for name in NAMES if shipped()[name].contact == "feet-flat"]
SQUATS = ["snatch-receive", "clean-receive", "snatch-power-receive", "clean-power-receive", "jerk-power-receive"]
FREE = ("ankle", "knee", "hip", "trunk", "shoulder")


def _standing(body: Body, posture: Position) -> float:
    return body.ankle_height + body.shank + (body.thigh if posture.bar in ("thigh", "hip") else 0)


def _fixed(body: Body, posture: Position, angles: dict[str, float]) -> list[float]:
    """What the position fixes, read again here from coordinates: everything is zero where all of it is met."""
    ref = forward(USUAL, posture)
    pose = place(body, angles, posture.contact, posture.bar, spread=ref.spread)
    own = posture.angles
    met = [
        angles["hip"] - angles["knee"] + angles["ankle"] + pose.legs[0].pitch - angles["trunk"],
        pose.legs[0].pitch - ref.legs[0].pitch,
        1000 * (pose.bar.x / body.foot - ref.bar.x / USUAL.foot),
    ]
    if posture.bar in ("shoulders", "neck", "overhead"):
        met.append((angles["knee"] - angles["ankle"]) - (own["knee"] - own["ankle"]))
    else:
        height = DISC_RADIUS
        if posture.bar != "floor":
            height = ref.bar.y / _standing(USUAL, posture) * _standing(body, posture)
        met.append(1000 * (pose.bar.y - height))
    if posture.bar not in SPREADS:
        met.append((angles["shoulder"] - angles["trunk"]) - (own["shoulder"] - own["trunk"]))
    return met


def _room(posture: Position, angles: dict[str, float], limit: Limits) -> list[float]:
    """What is left before each limit, degrees: nothing below zero where all are kept."""
    own = posture.angles
    room = [
        limit.ankle - angles["ankle"],
        limit.knee - angles["knee"],
        min(limit.hip, limit.hinge + 0.4 * (angles["knee"] - 20)) - angles["hip"],
        angles["knee"] - min(0, own["knee"]),
        own["trunk"] + LEAN_MORE - angles["trunk"],
    ]
    if posture.bar in SPREADS:
        held = own["shoulder"] - own["trunk"] + angles["trunk"]
        return [
            *room,
            limit.rack - angles["shoulder"],
            angles["shoulder"] - held + ELBOWS_DROP,
            held - angles["shoulder"],
        ]
    return [*room, limit.shoulder - angles["shoulder"]]


def _cost(posture: Position, angles: dict[str, float]) -> float:
    return float(sum(WEIGHTS[joint] * (angles[joint] - posture.angles[joint]) ** 2 for joint in FREE))


def _general(body: Body, posture: Position, limit: Limits, start: dict[str, float]) -> tuple[float, bool]:
    """The least cost that a general optimiser finds, and whether it kept to everything."""

    def angles(x: np.ndarray) -> dict[str, float]:
        return {**posture.angles, **dict(zip(FREE, x, strict=True))}

    found = minimize(
        lambda x: _cost(posture, angles(x)),
        [start[joint] for joint in FREE],
        method="SLSQP",
        constraints=[
            {"type": "eq", "fun": lambda x: _fixed(body, posture, angles(x))},
            {"type": "ineq", "fun": lambda x: _room(posture, angles(x), limit)},
        ],
        options={"maxiter": 300, "ftol": 1e-10},
    )
    kept = max(map(abs, _fixed(body, posture, angles(found.x)))) < 1e-4
    return float(found.fun), kept and min(_room(posture, angles(found.x), limit)) > -1e-4


@given(bodies(), st.sampled_from(LEVEL), limits())
@settings(max_examples=40, deadline=None)
def test_nothing_nearer_is_found_by_a_general_optimiser(body: Body, name: str, limit: Limits) -> None:
    """Ours keeps what the position fixes and every limit, and SLSQP finds nothing nearer that does too."""
    posture = shipped()[name]
    taken = inverse(body, posture, limit)
    if not taken.reachable:
        return
    angles = dict(taken.angles)
    assert max(map(abs, _fixed(body, posture, angles))) < 1e-6
    assert min(_room(posture, angles, limit)) > -1e-5
    assert taken.distance == pytest.approx(_cost(posture, angles), abs=1e-9)
    for start in (angles, dict(posture.angles)):
        cost, kept = _general(body, posture, limit, start)
        if kept:
            assert taken.distance <= cost * (1 + 1e-5) + 1e-3


@given(bodies(), st.sampled_from(LEVEL), limits())
@settings(max_examples=30, deadline=None)
def test_what_is_out_of_reach_is_found_by_no_general_optimiser(body: Body, name: str, limit: Limits) -> None:
    """Where ours says it can't, SLSQP gets there from nowhere either."""
    posture = shipped()[name]
    taken = inverse(body, posture, limit)
    assume(not taken.reachable and taken.short_by > 0.01)
    for start in (dict(taken.angles), dict(posture.angles)):
        assert not _general(body, posture, limit, start)[1]


def _opened(limit: Limits, short: dict[str, float], by: float) -> Limits:
    """Limits raised by what was short, and a little."""
    raised = {joint: getattr(limit, joint) + degrees + by for joint, degrees in short.items() if joint != "lengths"}
    if "hip" in short:
        raised["hinge"] = limit.hinge + short["hip"] + by
    return limit._replace(**raised)


@given(bodies(), limits(), st.data())
@settings(max_examples=60, deadline=None)
def test_infeasible_says_which_limit_binds_and_by_how_much(body: Body, limit: Limits, data: st.DataObject) -> None:
    """With what is short given, it is within reach; with half a degree less, it isn't.

    Most bodies reach most positions, so that one is drawn which this body doesn't.
    """
    every = {each: inverse(body, shipped()[each], limit) for each in NAMES}
    short = [each for each, taken in every.items() if not taken.reachable and "lengths" not in taken.short]
    assume(short)
    name = data.draw(st.sampled_from(short))
    taken = every[name]
    assert taken.binds in taken.short
    assert taken.short_by == max(taken.short.values())
    assert inverse(body, shipped()[name], _opened(limit, dict(taken.short), 1e-3)).reachable
    if taken.short_by > 0.6:
        assert not inverse(body, shipped()[name], _opened(limit, dict(taken.short), -0.5)).reachable


@given(bodies(), st.sampled_from(NAMES))
@settings(max_examples=60, deadline=None)
def test_inverse_after_forward_returns_the_angles(body: Body, name: str) -> None:
    """Read on the same body, a position's own angles are what it asks for."""
    posture = shipped()[name]
    pose = forward(body, posture)
    asked = dict(pose.angles)
    assume(posture.bar != "floor" or abs(pose.bar.y - DISC_RADIUS) < 1e-9)  # else these arms don't reach it so
    taken = inverse(body, posture, Limits(*(300.0,) * len(Limits._fields)), reference=body)
    for joint, degrees in asked.items():
        assert taken.angles[joint] == pytest.approx(degrees, abs=1e-5)


@given(bodies(), st.sampled_from(SQUATS), st.floats(1.01, 1.15), st.floats(20, 60))
@settings(max_examples=60, deadline=None)
def test_a_longer_femur_at_the_same_limits_leans_the_trunk_more(
    body: Body, name: str, longer: float, ankle: float
) -> None:
    """With everything else as it was: the hips go back, and the trunk has to bring the bar over the foot."""
    posture = shipped()[name]
    limit = Limits(ankle, *(300.0,) * (len(Limits._fields) - 1))
    before, after = inverse(body, posture, limit), inverse(body._replace(thigh=body.thigh * longer), posture, limit)
    assume(before.reachable and after.reachable)
    assert after.lean > before.lean - 1e-6


@given(bodies(), st.sampled_from(SQUATS), st.floats(0, 40), st.floats(1, 20))
@settings(max_examples=50, deadline=None)
def test_a_wedge_never_raises_the_demand_on_the_ankle(body: Body, name: str, low: float, more: float) -> None:
    """Neither what the position asks nor the least with which it can be done; and the trunk leans no more for it."""
    posture = shipped()[name]
    before, after = (demand(body, posture, wedge=wedge_degrees(body, mm)) for mm in (low, low + more))
    assert after.angles["ankle"] < before.angles["ankle"] + 1e-6
    assert after.lean < before.lean + 1e-6
    if before.least_ankle is not None and after.least_ankle is not None:
        assert after.least_ankle < before.least_ankle + 1e-6


@given(bodies(), st.sampled_from(SQUATS), st.floats(0, 20), st.floats(1, 20))
@settings(max_examples=60, deadline=None)
def test_feet_further_out_never_ask_more_of_the_ankle(body: Body, name: str, low: float, more: float) -> None:
    """With the knees over the toes the thigh is shorter from the side, so the hips stay nearer the feet."""
    posture = shipped()[name]
    before, after = (least_ankle(body, posture, turn_out=turn) for turn in (low, low + more))
    if before is not None and after is not None:
        assert after < before + 1e-6


@given(st.floats(120, 230), st.sampled_from([n for n in NAMES if shipped()[n].bar != "floor"]), limits())
@settings(max_examples=60, deadline=None)
def test_stature_alone_changes_no_angle(stature: float, name: str, limit: Limits) -> None:
    """Of two bodies of the same proportions both take a position alike (a bar on the floor has a height of its own)."""
    small, large = (inverse(body, shipped()[name], limit) for body in (USUAL, proportions(stature)))
    assert small.binds == large.binds
    for joint, degrees in small.angles.items():
        assert large.angles[joint] == pytest.approx(degrees, abs=1e-3)


@given(bodies(), st.sampled_from(SQUATS), st.floats(15, 40), st.floats(1, 10))
@settings(max_examples=60, deadline=None)
def test_an_ankle_that_stops_short_leans_the_trunk(body: Body, name: str, ankle: float, less: float) -> None:
    """The stiffer the ankle, the more lean, never less."""
    free, stiff = (inverse(body, shipped()[name], OPEN._replace(ankle=a)) for a in (ankle, ankle - less))
    assume(free.reachable and stiff.reachable)
    assert stiff.lean > free.lean - 1e-6


@given(bodies(), st.sampled_from([n for n in NAMES if shipped()[n].contact == "feet-flat"]), limits())
@settings(max_examples=60, deadline=None)
def test_what_is_within_reach_balances(body: Body, name: str, limit: Limits) -> None:
    """With a bar as heavy as the lifter the weight stays over the foot, whatever was traded."""
    taken = inverse(body, shipped()[name], limit)
    assume(taken.reachable)
    assert balance(body, taken.pose, bar_kg=body.mass).inside


def test_elbows_wrists_and_depth_are_traded_for_nothing() -> None:
    """They are short by just what is missing, beside what else is."""
    catch = shipped()["clean-receive"]
    taken = inverse(USUAL, catch, OPEN._replace(elbow=140, wrist=52, depth=90))
    assert dict(taken.short) == {"elbow": 5, "wrist": 8, "depth": pytest.approx(7)}
    assert taken.binds == "wrist"
    assert inverse(USUAL, catch, OPEN._replace(depth=90)).binds == "depth"


def test_in_the_split_every_joint_stands_alone() -> None:
    """A back hip that opens less is short by that, and nothing is traded for it."""
    taken = inverse(USUAL, shipped()["jerk-split"], OPEN._replace(back_hip=20, shoulder=178))
    assert taken.binds == "back_hip"
    assert taken.short["shoulder"] == pytest.approx(2)
    assert taken.short_by == pytest.approx(-taken.angles["back_hip"] - 20)
    assert least_ankle(USUAL, shipped()["jerk-split"]) is None


@pytest.mark.parametrize("name", ["snatch-extension", "clean-extension", "jerk-drive"])
def test_on_the_toes_the_posture_is_as_drawn(name: str) -> None:
    """Passed through, so no length of limb keeps anyone from it; a joint that is short is short by itself."""
    legs = proportions(190, inseam_cm=99)
    taken = inverse(legs, shipped()[name])
    assert taken.reachable
    assert {**taken.angles} == {**shipped()[name].angles}
    stiff = inverse(legs, shipped()[name], OPEN._replace(elbow=120, rack=0, shoulder=0))
    expected = {"elbow", "rack"} if name == "jerk-drive" else {"shoulder"}
    assert set(stiff.short) == expected
    assert least_ankle(legs, shipped()[name]) is None


def test_two_stiff_joints_share_what_is_missing() -> None:
    """An ankle and a shoulder that both stop early are both named, neither for all of it."""
    catch = shipped()["snatch-receive"]
    both = inverse(USUAL, catch, OPEN._replace(ankle=30, shoulder=185))
    assert set(both.short) == {"ankle", "shoulder"}
    # with an ankle of 30 degrees the arms are upright at 207.8: the shoulder alone would lack 22.8
    assert 0 < both.short["shoulder"] < 22.8 - 1
    assert both.short["ankle"] > 0
    stiffer = inverse(USUAL, catch, OPEN._replace(ankle=22, shoulder=195))
    assert stiffer.binds == "ankle"
    alone = inverse(USUAL, catch, OPEN._replace(shoulder=185))
    assert set(alone.short) == {"shoulder"}


def test_lengths_that_cannot_close_are_named() -> None:
    """No joint could help a body whose trunk can't reach over the foot."""
    stub = USUAL._replace(trunk=0.05, shank=0.05)
    taken = inverse(stub, shipped()["snatch-receive"])
    assert (taken.binds, taken.reachable) == ("lengths", False)
    assert least_ankle(stub, shipped()["snatch-receive"]) is None
    arms = inverse(USUAL._replace(upper_arm=0.05, forearm=0.05), shipped()["clean-start"])
    assert not arms.reachable


def test_a_body_that_would_have_to_fold_over_is_told() -> None:
    """Only more lean than the position allows would do: that is no joint's doing."""
    legs = USUAL._replace(thigh=USUAL.thigh * 1.5)
    taken = inverse(legs, shipped()["snatch-receive"])
    assert not taken.reachable


def test_demand_of_the_snatch_catch_names_the_upper_back() -> None:
    """Arms that are upright over a trunk that leans ask for more than the shoulder's 180."""
    found = demand(USUAL, shipped()["snatch-receive"])
    assert found.upper_back == pytest.approx(20)
    assert found.lean == pytest.approx(22)
    assert found.least_ankle is not None
    assert found.least_ankle < 40
    assert demand(USUAL, shipped()["clean-receive"]).upper_back == 0


def test_the_pose_is_the_angles() -> None:
    """What is drawn is what is said."""
    taken: Taken = inverse(USUAL, shipped()["clean-receive"], OPEN._replace(ankle=30))
    shank = taken.pose.legs[0]
    lean = math.degrees(math.atan2(shank.knee.x - shank.ankle.x, shank.knee.y - shank.ankle.y))
    assert lean == pytest.approx(30) == pytest.approx(taken.angles["ankle"])
    assert taken.lean == pytest.approx(taken.angles["trunk"])


def test_a_made_up_position_is_taken_like_a_shipped_one() -> None:
    """A squat with the bar behind the neck."""
    squat = position(
        {"ankle": 30, "knee": 115, "hip": 115, "trunk": 30, "shoulder": 6, "elbow": 145, "wrist": 20}, "neck"
    )
    assert inverse(USUAL, squat).distance == pytest.approx(0, abs=1e-6)


def test_the_trunk_counts_double() -> None:
    """As kb/docs/body.md says, and every joint once."""
    assert dict(WEIGHTS) == {"ankle": 1, "knee": 1, "hip": 1, "trunk": 2, "shoulder": 1}
