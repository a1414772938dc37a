"""What the rules of postures let pass and what they don't, on the small library with a number changed."""

from dataclasses import replace

import pytest
from bodies import shipped
from broken_cases import sound

from kb.body.pose import Point, forward
from kb.body.proportions import USUAL
from kb.body.touch import CORES, nearest_to, through
from kb.check import angles_disagree, bar_through_body, beyond_joint, off_balance, timeline_jumps
from kb.make.library import Library
from kb.terms import LiftId, Position, PositionId, Timed

RULES = (angles_disagree, bar_through_body, beyond_joint, off_balance, timeline_jumps)


def _with(position: str, **angles: float) -> Library:
    """The small library, one position's angles changed."""
    library = sound()
    old = library.positions[PositionId(position)]
    return replace(library, positions={**library.positions, old.id: old._replace(angles={**old.angles, **angles})})


def _codes(library: Library) -> set[str]:
    return {problem.code for module in RULES for problem in module.rule(library)}


@pytest.mark.parametrize("name", sorted(shipped()))
def test_shipped_positions_add_up_exactly(name: str) -> None:
    """Whole degrees, and the trunk leans by hip less knee plus ankle, though three degrees would pass."""
    posture = shipped()[name]
    if posture.contact == "feet-flat":
        angles = posture.angles
        assert angles["trunk"] == angles["hip"] - angles["knee"] + angles["ankle"]
    assert all(float(degrees).is_integer() for degrees in posture.angles.values())


@pytest.mark.parametrize(("off", "told"), [(3, False), (-3, False), (4, True), (-4, True)])
def test_three_degrees_of_lean_pass(off: float, told: bool) -> None:
    """And no more."""
    assert ("angles-disagree" in _codes(_with("clean-receive", trunk=24 + off))) is told


@pytest.mark.parametrize(
    ("joint", "degrees", "told"), [("wrist", 85, False), ("wrist", 86, True), ("ankle", 51, True), ("ankle", -51, True)]
)
def test_the_ends_of_a_joint(joint: str, degrees: float, told: bool) -> None:
    """Its limits belong to it."""
    assert ("beyond-joint" in _codes(_with("clean-stand", **{joint: degrees}))) is told


def test_a_split_is_judged_by_its_front_leg() -> None:
    """The trunk is what the front leg makes it."""
    (problem,) = list(angles_disagree.rule(_with("jerk-split", trunk=8)))
    assert "front leg" in problem.message


def test_hands_below_the_floor_are_told() -> None:
    """A start folded so far that the hands would be under the bar."""
    low = _with("clean-start", knee=130, hip=196, trunk=90, shoulder=90)
    assert any("below it" in problem.message for problem in angles_disagree.rule(low))


def test_on_the_toes_nobody_has_to_balance() -> None:
    """The drive leans where standing would fall."""
    assert "off-balance" not in _codes(_with("jerk-drive", trunk=-20))


def test_a_deeper_step_of_the_timeline_is_told() -> None:
    """Knees that turn by more than 140 degrees between two points."""
    deep = _with("clean-receive", knee=150, hip=134)
    assert ["`knee` turns by 150" in problem.message for problem in timeline_jumps.rule(deep)] == [True]


def test_a_bar_that_swings_is_told() -> None:
    """Arms that reach far forward at the knee, and come back."""
    swung = _with("clean-knee", shoulder=85)
    found = [problem.message for problem in timeline_jumps.rule(swung)]
    assert found
    assert all("forward or back" in message for message in found)


def test_a_timeline_of_unknown_or_broken_positions_is_left_to_others() -> None:
    """What isn't there can't be measured."""
    library = sound()
    clean = library.lifts[LiftId("clean")]
    gone = clean._replace(timeline=(Timed("start", PositionId("nowhere")), *clean.timeline[1:]))
    bare = Position(PositionId("clean-knee"), "Bare", {}, "knee", "feet-flat")
    broken = replace(library, lifts={clean.id: gone}, positions={**library.positions, PositionId("clean-knee"): bare})
    assert _codes(broken) == set()


def test_a_joint_that_only_one_of_two_positions_has() -> None:
    """A split's front leg stands for both; a joint found nowhere is a mistake of ours."""
    split = sound().positions[PositionId("jerk-split")]
    assert timeline_jumps._same(split, "knee") == split.angles["front_knee"]  # the rule's own reading
    with pytest.raises(KeyError):
        timeline_jumps._same(split, "neck")


def test_distance_from_a_stretch() -> None:
    """Beside it, beyond either end, and from a stretch without length."""
    start, end = Point(0, 0), Point(2, 0)
    assert nearest_to(Point(1, 1), start, end) == 1
    assert nearest_to(Point(-3, 4), start, end) == 5
    assert nearest_to(Point(5, -4), start, end) == 5
    assert nearest_to(Point(3, 4), start, start) == 5


def test_the_core_is_inside_the_limb() -> None:
    """A bar on the thigh's skin passes, one in its middle doesn't."""
    hang = shipped()["clean-hip"]
    assert through(USUAL, forward(USUAL, hang)) == ()
    (near,) = through(USUAL, forward(USUAL, hang._replace(angles={**hang.angles, "shoulder": 10})))
    assert near.part == "thigh"
    assert near.distance < near.least == pytest.approx(CORES["thigh"] * 1.75 + 0.014)
