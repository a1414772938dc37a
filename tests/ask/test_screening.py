"""What a lifter's tape measure says: limits, positions, what binds, what acts on it, what helps."""

import math
from pathlib import Path

import pytest
from broken_cases import SMALL
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from kb.ask.screen import OPENS, Screen, positions_of, screen
from kb.body.inverse import inverse
from kb.body.limits import OPEN
from kb.body.measures import ankle_from_wall, wall_from_ankle
from kb.body.tape import JOINT_OF, MEASURES, Tape, body_of, limits_of, tape_of
from kb.errors import BadInput
from kb.make.library import Library, load
from kb.terms import ItemId, LiftId, Stage

SHIPPED = load(Path(__file__).parents[2])
SIMPLE = tuple(lift for lift in SHIPPED.lifts.values() if not lift.parts)


def asked(tape: Tape, library: Library = SHIPPED, have: frozenset[str] | None = None, **more: float) -> Screen:
    """The screen of a tape, over every lift of a library with everything there."""
    return screen(
        tape,
        [lift for lift in library.lifts.values() if not lift.parts],
        positions=library.positions,
        drills=library.drills.values(),
        have=frozenset(library.items) if have is None else frozenset(ItemId(item) for item in have),
        items=library.items,
        **more,
    )


@st.composite
def tapes(draw: st.DrawFn) -> Tape:
    """Measurements of people stiff and supple."""
    stature = draw(st.floats(150, 200))
    some = {
        "wall": st.floats(-2, 14),
        "reach": st.floats(0, 25),
        "elbows": st.floats(-10, 20),
        "hinge": st.floats(0.53 * stature, 0.7 * stature),
        "squat": st.floats(-8, 20),
    }
    return Tape(stature, **{name: draw(st.none() | values) for name, values in some.items()})


@pytest.mark.no_cover
@given(tapes())
@settings(max_examples=20, deadline=None)
def test_every_position_is_judged_by_the_inverse(tape: Tape) -> None:
    """Reachable is what the body's own limits allow, once a position, whatever the lift; the worst joint binds."""
    found = asked(tape)
    body = body_of(tape)
    limits = limits_of(body, tape)
    for lift in found.lifts:
        ids = [reached.position.id for reached in lift.positions]
        assert ids == list(positions_of(lift.lift, SHIPPED.drills.values()))
        for reached in lift.positions:
            taken = inverse(body, reached.position, limits)
            assert (reached.binds is None) == taken.reachable
            assert sum(reached.short.values()) == pytest.approx(sum(taken.short.values()))
            joints = [by for joint, by in reached.short.items() if joint != "depth"]
            assert joints == sorted(joints, reverse=True)
            assert reached.short_by == pytest.approx(taken.short_by)


@given(tapes())
@settings(max_examples=20, deadline=None)
def test_drills_act_on_what_binds_for_what_is_out_of_reach(tape: Tape) -> None:
    """Each opens a part that is short and is for a position that is; those for most come first; none is left out."""
    found = asked(tape)
    short = {
        reached.position.id: {part for joint in reached.short for part in OPENS.get(joint, ())}
        for lift in found.lifts
        for reached in lift.positions
        if reached.binds
    }
    expected = {
        drill.id: {each for each in drill.for_positions if each in short and short[each] & set(drill.opens)}
        for drill in SHIPPED.drills.values()
        if drill.stage is Stage.PREPARE
    }
    assert {acting.drill.id: set(acting.positions) for acting in found.mobility} == {
        drill: serves for drill, serves in expected.items() if serves
    }
    served = [len(acting.positions) for acting in found.mobility]
    assert served == sorted(served, reverse=True)


@given(tapes(), st.floats(5, 25))
@settings(max_examples=15, deadline=None)
def test_aids_open_what_they_say(tape: Tape, wedge_mm: float) -> None:
    """Only where the ankle is short; a wedge gives degrees, and with so much more ankle what it opens is open."""
    found = asked(tape, wedge_mm=wedge_mm)
    stopped = {
        reached.position.id
        for lift in found.lifts
        for reached in lift.positions
        if {"ankle", "lengths"} & set(reached.short) and reached.position.contact == "feet-flat"
    }
    assert bool(found.aids) <= bool(stopped)
    for aid in found.aids:
        assert aid.gives_deg > 0
        assert set(aid.opens) <= stopped
    if found.aids:
        assert found.aids[0].item == "wedge"


@pytest.mark.no_cover
@given(tapes(), st.floats(0.5, 6))
@settings(max_examples=20, deadline=None)
def test_a_freer_ankle_closes_nothing(tape: Tape, more: float) -> None:
    """Every position within reach stays so when the knee gets further past the toes."""
    assume(tape.wall is not None and tape.wall + more < 16)
    before, after = asked(tape), asked(tape._replace(wall=(tape.wall or 0) + more))
    for old, new in zip(before.lifts, after.lifts, strict=True):
        for was, now in zip(old.positions, new.positions, strict=True):
            assert was.binds is not None or now.binds is None


def test_a_supple_lifter_reaches_everything() -> None:
    """With nothing measured but the height, and with good measurements."""
    for tape in (Tape(175), Tape(175, wall=15, reach=0, elbows=-8, hinge=95, squat=-8)):
        found = asked(tape)
        assert all(reached.binds is None for lift in found.lifts for reached in lift.positions)
        assert (found.mobility, found.aids) == ((), ())


def test_a_stiff_ankle_is_named_with_what_helps() -> None:
    """Knee to wall of 6 cm: the snatch's catch lacks ankle, half way to it a little; a wedge opens it, drills act."""
    found = asked(Tape(175, wall=6))
    (lift,) = [each for each in found.lifts if each.lift.id == "snatch"]
    short = {reached.position.id: reached for reached in lift.positions if reached.binds}
    # half way down the shank leans nearly as far: the trunk stays upright there
    assert set(short) == {"snatch-receive", "overhead-squat-halfway"}
    assert short["overhead-squat-halfway"].short_by < short["snatch-receive"].short_by
    assert short["snatch-receive"].binds == "ankle"
    # by hand: 33.4 degrees at the least, and the shank leans asin((0.1995 + 0.06 - 0.04375) / 0.4305) = 30.1
    assert short["snatch-receive"].short_by == pytest.approx(3.3, abs=0.1)
    assert found.aids[0].item == "wedge"
    assert "snatch-receive" in found.aids[0].opens
    assert found.mobility[0].drill.opens[0] in ("ankle", "calf")


def test_the_back_of_the_thigh_has_a_name_of_its_own() -> None:
    """A hinge that stops high keeps the start out of reach, and hamstring drills act on it."""
    found = asked(Tape(175, wall=10, hinge=118))
    names = {reached.position.id: reached.binds for lift in found.lifts for reached in lift.positions if reached.binds}
    assert {names["snatch-start"], names["clean-start"]} == {"hinge"}
    assert any("hamstring" in acting.drill.opens for acting in found.mobility)


def test_only_drills_that_can_be_done_are_named() -> None:
    """Without a wall no drill that needs one."""
    found = asked(Tape(175, wall=3), have=frozenset())
    assert found.mobility
    assert all(not acting.drill.equipment for acting in found.mobility)


def test_a_lift_of_parts_has_its_parts_positions() -> None:
    """The clean and jerk goes from the clean's start to the jerk's recovery."""
    ids = positions_of(SHIPPED.lifts[LiftId("clean-and-jerk")], SHIPPED.drills.values())
    assert ids[0] == "clean-start"
    assert "jerk-recovered" in ids
    assert len(ids) == len(set(ids))


def test_the_small_library_is_screened_too() -> None:
    """Positions without prepare drills are no trouble."""
    small = load(SMALL)
    assert asked(Tape(175, wall=2), small).lifts


# what a tape says

BODY = body_of(Tape(175))


def test_limits_come_from_the_tape_and_nothing_else() -> None:
    """What isn't measured stands at a supple lifter's."""
    limits = limits_of(BODY, Tape(175, wall=9))
    assert limits == OPEN._replace(ankle=ankle_from_wall(BODY, 9))
    assert set(JOINT_OF.values()) <= set(OPEN._fields)
    assert set(MEASURES) == set(Tape._fields)


def test_each_test_by_hand() -> None:
    """Elbows level with the shoulder are 90 degrees; hands on the wall 200; thighs level 90; a flat hinge 110."""
    limits = limits_of(BODY, Tape(175, reach=0, elbows=0, squat=0))
    assert (limits.shoulder, limits.rack, limits.depth) == (200, 90, 90)
    level = (BODY.ankle_height + BODY.shank + BODY.thigh * math.cos(math.radians(20))) * 100
    assert limits_of(BODY, Tape(175, hinge=level)).hinge == pytest.approx(110)
    arm = (BODY.upper_arm + BODY.forearm + BODY.hand / 2) * 100
    assert limits_of(BODY, Tape(175, reach=arm / 2)).shoulder == pytest.approx(200 - 30)
    assert limits_of(BODY, Tape(175, squat=BODY.thigh * 50)).depth == pytest.approx(60)
    out = BODY.upper_arm * math.cos(math.radians(25)) * 100
    assert limits_of(BODY, Tape(175, elbows=out / 2)).rack == pytest.approx(60)


@given(st.floats(150, 200), st.floats(-5, 14), st.floats(0.1, 2))
@settings(max_examples=50, deadline=None)
def test_more_distance_is_more_ankle_and_back_again(stature: float, wall: float, more: float) -> None:
    """The lunge's angle rises with the distance, and its inverse returns it."""
    body = body_of(Tape(stature))
    assert ankle_from_wall(body, wall + more) > ankle_from_wall(body, wall)
    assert wall_from_ankle(body, ankle_from_wall(body, wall)) == pytest.approx(wall)


@pytest.mark.parametrize(
    ("said", "message"),
    [
        ({"wall": 5.0}, "the height"),
        ({"stature": float("nan")}, "stature nan cm can't be"),
        ({"stature": float("inf")}, "stature inf cm can't be"),
        ({"stature": 0.0}, "between 100 and 250"),
        ({"stature": -175.0}, "stature -175 cm can't be"),
        ({"stature": 1.75}, "stature 1.75 cm can't be"),
        ({"stature": 175.0, "wall": 1e300}, "wall 1e\\+300 cm can't be"),
    ],
)
def test_what_cannot_be_measured_is_refused(said: dict[str, float], message: str) -> None:
    """One sentence with the measurement and its range."""
    with pytest.raises(BadInput, match=message):
        tape_of(said)


@pytest.mark.parametrize(
    "tape",
    [
        Tape(175, wall=30),
        Tape(175, reach=90),
        Tape(175, elbows=50),
        Tape(175, hinge=200),
        Tape(175, hinge=20),
        Tape(175, squat=70),
    ],
)
def test_measurements_that_fit_no_such_body_are_refused(tape: Tape) -> None:
    """A sine above one is a mistake of the tape, not of the body."""
    with pytest.raises(BadInput, match="measure again"):
        limits_of(body_of(tape), tape)


@pytest.mark.parametrize("name", ["inseam", "span", "thigh", "foot"])
def test_lengths_far_from_the_stature_are_refused(name: str) -> None:
    """A third off is a slip of the pen."""
    tape = Tape(175)._replace(**{name: MEASURES[name].least})
    with pytest.raises(BadInput, match="for this stature"):
        body_of(tape)
