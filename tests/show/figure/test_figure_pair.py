"""Faults beside what they should be: the posture as said, drawn where it differs and nowhere else."""

import re
from typing import Any

import pytest
from svg_reading import circles, classed, read, said_by, transgressions

from kb.body.pose import forward
from kb.body.proportions import USUAL
from kb.make.library import Library
from kb.plain import fault_from, to_plain
from kb.show.figure.look import alone
from kb.show.figure.pair import pair_svg
from kb.show.figure.posture import taken
from kb.terms import Fault, FaultId, Position, PositionId, Posture

FRONT = {"feet-too-wide", "grip-opens", "jerk-tightrope-split", "knees-cave", "rushes-rack-to-jerk"}
"""Faults that only a view from in front shows."""


def shown(library: Library) -> list[tuple[Fault, Posture]]:
    """Every fault that is drawn."""
    return [(fault, fault.posture) for fault in library.faults.values() if fault.posture is not None]


def panel(fault: Fault, library: Library, side: str) -> Any:
    """One half of a pair: `right` or `fault`."""
    return classed(read(pair_svg(fault, library.positions)), side)[0]


def test_most_faults_seen_from_the_side_are_drawn(library: Library) -> None:
    """At least thirty; none that only a view from in front shows."""
    ids = {fault.id for fault, _ in shown(library)}
    assert len(ids) >= 30
    assert not ids & FRONT


def test_pairs_are_sound(library: Library) -> None:
    """Each is small XML that says both halves, breaks no strict policy, and comes out the same again."""
    for fault, posture in shown(library):
        svg = pair_svg(fault, library.positions)
        assert len(alone(svg).encode()) < 8500
        root = read(svg)
        assert transgressions(root, alone=False) == []
        assert transgressions(read(alone(svg)), alone=True) == []
        title, desc = said_by(root)
        assert title == fault.name
        assert desc.startswith(f"Left, {library.positions[posture.position].name} as it should be.")
        assert "Right, the fault." in desc
        assert pair_svg(fault, library.positions) == svg
        words = [text.text for text in root.iter() if text.tag.endswith("text")]
        assert words == ["As it should be", "The fault"]
        ids = re.findall(r' id="([^"]+)"', svg)
        assert len(ids) == len(set(ids))


def test_the_two_halves_differ_to_the_eye(library: Library) -> None:
    """Some joint or the bar stands at least 4 cm elsewhere, or the back bows: 3 px where a half is 120 wide."""
    for fault, _ in shown(library):
        halves = [list(circles(panel(fault, library, side))) for side in ("right", "fault")]
        (left, *_), (right, *_) = (sorted(circle.x for circle in half) for half in halves)
        moved = max(
            min(abs(circle.x - right - (other.x - left)) + abs(circle.y - other.y) for other in halves[0])
            for circle in halves[1]
        )
        assert moved >= 4 or left != right, fault.id


def test_bodies_stand_as_bodies_do(library: Library) -> None:
    """No posture bends a joint past its usual range (common practice, no source), and its hands reach the bar."""
    for fault, posture in shown(library):
        pose = forward(USUAL, taken(posture, library.positions[posture.position]))
        angles = pose.angles
        for joint, least, most in (
            ("ankle", -50, 45),
            ("knee", 0, 145),
            ("hip", -55, 150),
            ("elbow", 0, 150),
            ("shoulder", -60, 220),
        ):
            for name in (joint, f"front_{joint}", f"back_{joint}"):
                assert least <= angles.get(name, 0) <= most, (fault.id, name)
        assert pose.reach_short < 0.03, fault.id
        for leg in pose.legs:
            assert leg.heel.y >= -0.005
            assert abs(leg.ball.y) < 0.005


FACTS = [
    # common practice, no source: what a coach would see in each, m and degrees, lifter facing right
    ("hips-rise-first", lambda right, wrong: wrong.hip.y > right.hip.y + 0.15 and wrong.lean > right.lean + 20),
    ("bar-behind-overhead", lambda right, wrong: wrong.bar.x < right.bar.x - 0.12),
    ("bar-forward-overhead", lambda right, wrong: wrong.bar.x > right.bar.x + 0.15),
    ("bar-drifts-forward", lambda _, wrong: wrong.bar.x > wrong.legs[0].knee.x + 0.15),
    ("bar-loops-out", lambda _, wrong: wrong.bar.x > wrong.hip.x + 0.35),
    ("catches-high", lambda _, wrong: wrong.hip.y > wrong.legs[0].knee.y + 0.15),
    ("heels-lift-in-catch", lambda right, wrong: wrong.legs[0].heel.y > 0.05 > right.legs[0].heel.y),
    ("weight-on-toes-early", lambda right, wrong: wrong.legs[0].heel.y > 0.05 > right.legs[0].heel.y),
    ("shoulders-fall-behind-early", lambda right, wrong: wrong.shoulder.x < wrong.bar.x < right.shoulder.x),
    ("cuts-pull-short", lambda right, wrong: wrong.hip.y < right.hip.y - 0.08 and wrong.shoulder.x > wrong.hip.x),
    ("early-arm-bend", lambda _, wrong: wrong.elbow.x < wrong.shoulder.x - 0.08),
    ("snatch-folds-in-catch", lambda right, wrong: wrong.lean > right.lean + 25),
    ("clean-folds-in-catch", lambda right, wrong: wrong.lean > right.lean + 25),
    ("clean-low-elbows", lambda right, wrong: wrong.elbow.y < right.elbow.y - 0.12),
    ("clean-bar-crashes", lambda _, wrong: wrong.bar.y > wrong.shoulder.y + 0.15),
    ("clean-bar-off-shoulders", lambda right, wrong: wrong.bar.x > right.bar.x + 0.06),
    ("jerk-dips-forward", lambda right, wrong: wrong.bar.x > right.bar.x + 0.05 and wrong.lean > 12),
    ("jerk-dips-too-deep", lambda right, wrong: wrong.hip.y < right.hip.y - 0.10),
    ("jerk-drives-forward", lambda _, wrong: wrong.bar.x > wrong.legs[0].toe.x),
    ("jerk-short-split", lambda _, wrong: wrong.legs[0].ball.x - wrong.legs[1].ball.x < 0.5),
    ("jerk-back-leg-locks", lambda _, wrong: wrong.angles["back_knee"] < 8),
    ("jerk-trunk-arches", lambda _, wrong: wrong.shoulder.x < wrong.hip.x - 0.08),
    ("jerk-rack-slips", lambda right, wrong: wrong.elbow.x < right.elbow.x - 0.08 and wrong.bar.x > right.bar.x),
]


@pytest.mark.parametrize(("name", "fact"), FACTS, ids=[name for name, _ in FACTS])
def test_a_fault_shows_what_it_says(library: Library, name: str, fact: Any) -> None:
    """What the entry's words describe is there in the posture, and not in the position beside it."""
    posture = library.faults[FaultId(name)].posture
    assert posture is not None
    right = library.positions[posture.position]
    poses = forward(USUAL, right), forward(USUAL, taken(posture, right))
    assert fact(*poses)
    assert not fact(poses[0], poses[0])


def test_an_elbow_reaches_the_thigh(library: Library) -> None:
    """Elbows touch the knees: within the thigh's thickness of its line."""
    posture = library.faults[FaultId("clean-elbows-hit-knees")].posture
    assert posture is not None
    right = library.positions[posture.position]
    gaps = []
    for position in (right, taken(posture, right)):
        pose = forward(USUAL, position)
        knee, hip = pose.legs[0].knee, pose.legs[0].hip
        along = (pose.elbow.x - hip.x) / (knee.x - hip.x)
        gaps.append(pose.elbow.y - (hip.y + along * (knee.y - hip.y)))
    assert gaps[1] < 0.14 < gaps[0]


def test_taken_leans_the_trunk_as_the_legs_do() -> None:
    """The trunk follows ankle, knee and hip; with the heels up its lean is what is said, or the position's own."""
    angles = {"ankle": 24.0, "knee": 94.0, "hip": 127.0, "trunk": 57.0, "shoulder": 51.0, "elbow": 0.0, "wrist": 0.0}
    position = Position(PositionId("clean-start"), "Start", angles, "floor", "feet-flat")
    other = taken(Posture(position.id, {"hip": 137.0, "back": 40.0}), position)
    assert other.angles == {**angles, "hip": 137.0, "trunk": 67.0, "back": 40.0}
    assert (other.bar, other.contact) == ("floor", "feet-flat")
    up = taken(Posture(position.id, {"hip": 137.0}, at="hands", contact="toes"), position)
    assert up.angles["trunk"] == 57.0
    assert (up.bar, up.contact) == ("hands", "toes")
    assert taken(Posture(position.id, {"trunk": 60.0}), position).angles["trunk"] == 60.0
    split = {"front_ankle": 2.0, "front_knee": 65.0, "front_hip": 63.0, "back_ankle": 5.0, "back_knee": 40.0}
    apart = Position(PositionId("jerk-split"), "Split", {**split, "back_hip": -25.0, **angles}, "overhead", "split")
    assert taken(Posture(apart.id, {"front_hip": 50.0}), apart).angles["trunk"] == -13.0


def test_without_posture_or_position(library: Library) -> None:
    """A fault that has none can't be drawn, nor one whose position isn't given."""
    bare = library.faults[FaultId("grip-opens")]
    with pytest.raises(ValueError, match="grip-opens has no posture"):
        pair_svg(bare, library.positions)
    with pytest.raises(KeyError):
        pair_svg(library.faults[FaultId("hips-rise-first")], {})


def test_words_can_be_left_out(library: Library) -> None:
    """For a reader who is to tell the two apart, nothing says which is which."""
    svg = pair_svg(library.faults[FaultId("hips-rise-first")], library.positions, words=False, stick=True)
    root = read(svg)
    assert not [each for each in root.iter() if each.tag.endswith("text")]
    assert not classed(root, "fault")
    assert len(classed(root, "stick")) == 2


def test_a_posture_is_kept_without_loss(library: Library) -> None:
    """A fault comes back from plain values as it went in, posture and all."""
    for fault, _ in shown(library):
        assert fault_from(to_plain(fault)) == fault
