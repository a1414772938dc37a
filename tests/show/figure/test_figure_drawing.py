"""Figures of positions: sound SVG, and the very joints that forward kinematics gives."""

import math
import re
from collections.abc import Mapping
from itertools import pairwise

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from svg_reading import SVG, Circle, circles, classed, read, said_by, transgressions

from kb.body.pose import Point
from kb.make.library import Library
from kb.show.figure.drawing import BOX, figure_svg
from kb.show.figure.heard import heard
from kb.show.figure.look import alone
from kb.show.figure.outline import LAP, Round, chain, number
from kb.terms import Position, PositionId

H = 175.0
# 1.01, 1.02, 1.03 Winter 2009, fig. 4.1: shares of stature
ANKLE, SHANK, THIGH, TRUNK = 0.039 * H, 0.246 * H, 0.245 * H, 0.288 * H
UPPER, FOOT = 0.186 * H, 0.152 * H

TOGETHER = ("ankle", "knee", "hip")
SPLIT = tuple(f"{side}_{joint}" for side in ("front", "back") for joint in TOGETHER)
REST = ("trunk", "shoulder", "elbow", "wrist")


def position(angles: Mapping[str, float], bar: str = "thigh", contact: str = "feet-flat") -> Position:
    """A posture to draw."""
    return Position(
        id=PositionId("snatch-some"), name="Some & other <posture>", angles=angles, bar=bar, contact=contact
    )


def joints(angles: Mapping[str, float]) -> dict[str, tuple[float, float]]:
    """Ankle to shoulder of a body on flat feet, cm from mid-foot, y down: trigonometry on published lengths.

    The ankle stands over a quarter of the foot from the heel (kb/body, common practice).
    """
    x, y = -FOOT / 4, -ANKLE
    found = {"ankle": (x, y)}
    lean = angles["ankle"]
    turns = (("knee", SHANK, -angles["knee"]), ("hip", THIGH, angles["hip"]), ("shoulder", TRUNK, 0.0))
    for joint, length, turn in turns:
        x, y = x + length * math.sin(math.radians(lean)), y - length * math.cos(math.radians(lean))
        found[joint] = (x, y)
        lean += turn
    return found


def nearest(found: list[Circle], at: tuple[float, float]) -> float:
    """How far the nearest circle's centre is from a point, cm."""
    return min(math.hypot(circle.x - at[0], circle.y - at[1]) for circle in found)


def test_joints_are_where_forward_kinematics_has_them(library: Library) -> None:
    """On flat feet the near leg is hung on ankle, knee and hip, the arm on the shoulder, to 2 mm."""
    checked = 0
    for each in library.positions.values():
        if each.contact != "feet-flat":
            continue
        (near,) = classed(read(figure_svg(each)), "near")
        found, own = list(circles(near)), joints(each.angles)
        for at in own.values():
            assert nearest(found, at) < 0.2, each.id
        checked += 1
    assert checked > 15


def test_a_joint_elsewhere_is_not_found(library: Library) -> None:
    """The check above can fail: a knee bent ten degrees less stands a hand's breadth off."""
    each = library.positions[PositionId("snatch-receive")]
    (near,) = classed(read(figure_svg(each)), "near")
    other = joints({**each.angles, "knee": each.angles["knee"] - 10})
    assert nearest(list(circles(near)), other["hip"]) > 3


@pytest.mark.parametrize(
    ("bar", "least", "most"),
    [
        ("floor", 22.4, 22.6),  # 2.04: discs of 450 mm, so the bar's centre is 225 mm up
        ("below-knee", 24, 42),
        ("knee", 42, 58),
        ("thigh", 55, 84),
        ("hip", 70, 95),
        ("shoulders", 75, 155),
        ("neck", 140, 160),
        ("overhead", 130, 215),
    ],
)
def test_the_bar_is_where_the_position_says(library: Library, bar: str, least: float, most: float) -> None:
    """Its height above the floor, cm, and its disc is 450 mm across (2.04); overhead it is over the feet."""
    there = [each for each in library.positions.values() if each.bar == bar]
    assert there
    for each in there:
        (disc,) = circles(classed(read(figure_svg(each)), "disc")[0])
        assert least <= -disc.y <= most, each.id
        assert disc.r == 22.5
        if bar == "overhead":
            assert abs(disc.x) < 12


def test_a_stick_has_no_disc(library: Library) -> None:
    """A stick is a small circle in the same place."""
    each = library.positions[PositionId("clean-start")]
    root = read(figure_svg(each, stick=True))
    assert not classed(root, "disc")
    (stick,) = circles(classed(root, "stick")[0])
    assert stick.r < 3
    assert abs(stick.y + 22.5) < 0.1


def test_the_far_side_is_drawn_lighter_and_behind(library: Library) -> None:
    """Far limbs come before near ones, in another tone: repeated on level feet, a leg of their own in a split."""
    for each in library.positions.values():
        root = read(figure_svg(each))
        order = [found.get("class") for found in root.iter() if found.get("class") in ("far", "trunk", "near")]
        assert order == ["far", "trunk", "near"]
        far = classed(root, "far")[0]
        assert far.get("fill") != "currentColor"
        assert len(far.findall(f"{SVG}use")) == (1 if each.contact == "split" else 2)
    split = read(figure_svg(library.positions[PositionId("jerk-split")]))
    near = min(circle.x for circle in circles(classed(split, "near")[0]))
    far = min(circle.x for circle in circles(classed(split, "far")[0]))
    assert far < near - 40  # the back foot stands far behind all of the near side


def test_heels_are_up_where_the_position_is_on_the_toes(library: Library) -> None:
    """A shoe on the floor reaches it at heel and ball; on the toes only the front does."""
    for name, up in (("snatch-hip", False), ("snatch-extension", True), ("jerk-drive", True)):
        (near,) = classed(read(figure_svg(library.positions[PositionId(name)])), "near")
        heel = min(circles(near[0][0]), key=lambda circle: circle.x - circle.r)
        assert (heel.y + heel.r < -2) == up
        assert max(circle.y + circle.r for circle in circles(near)) < 0.5


def test_figures_of_the_library_are_sound(library: Library) -> None:
    """Each is XML under 6 kB alone, says what it is, breaks no strict policy, and fits the one box."""
    for each in library.positions.values():
        svg = figure_svg(each)
        whole = alone(svg)
        assert len(whole.encode()) < 6000
        for text, by_itself in ((svg, False), (whole, True)):
            root = read(text)
            assert transgressions(root, alone=by_itself) == []
            assert said_by(root) == (each.name, heard(each))
            assert root.get("viewBox") == BOX.said
            assert root.get("role") == "img"
            ids = [found.get("id") for found in root.iter() if found.get("id")]
            assert len(ids) == len(set(ids))
        assert figure_svg(each) == svg


def test_a_key_makes_ids_its_own(library: Library) -> None:
    """Two of the same figure in a page share no id, if they are given keys."""
    each = library.positions[PositionId("jerk-split")]
    ids = [set(re.findall(r' id="([^"]+)"', figure_svg(each, key=key))) for key in ("one", "two")]
    assert ids[0]
    assert not ids[0] & ids[1]


angle = st.floats(-180, 220, allow_nan=False)
postures = st.one_of(
    st.builds(
        position,
        st.fixed_dictionaries(dict.fromkeys(TOGETHER + REST, angle), optional={"back": st.floats(-120, 120)}),
        bar=st.sampled_from(["floor", "knee", "hip", "shoulders", "neck", "overhead", "hands"]),
        contact=st.sampled_from(["feet-flat", "toes"]),
    ),
    st.builds(
        position,
        st.fixed_dictionaries(dict.fromkeys(SPLIT + REST, angle), optional={"back": st.floats(-120, 120)}),
        bar=st.sampled_from(["shoulders", "overhead", "hands"]),
        contact=st.just("split"),
    ),
)


@given(postures)
@example(
    position(
        {"ankle": 123.75, "knee": 205.5625, "hip": 0, "trunk": 0, "shoulder": 0, "elbow": 26, "wrist": 0},
        bar="floor",
        contact="feet-flat",
    )
)
@settings(max_examples=120, deadline=None)
def test_any_angles_give_a_figure_inside_its_box(posture: Position) -> None:
    """Whatever an entry may say is drawn as sound XML, with every limb inside what is seen."""
    root = read(figure_svg(posture))
    assert said_by(root)[0] == posture.name
    left, top, width, height = map(float, (root.get("viewBox") or "").split())
    assert left <= BOX.left
    assert top <= BOX.top
    for circle in circles(root):
        assert left - 0.2 <= circle.x - circle.r
        assert circle.x + circle.r <= left + width + 0.2
        assert top - 0.2 <= circle.y - circle.r
        assert circle.y + circle.r <= top + height + 0.2


coordinate = st.floats(-3, 3, allow_nan=False)
rounds = st.builds(Round, st.builds(Point, coordinate, coordinate), st.integers(5, 120).map(lambda mm: mm / 10))


@given(st.lists(rounds, min_size=1, max_size=4))
@settings(max_examples=100, deadline=None)
def test_a_chain_is_hung_on_its_circles(given: list[Round]) -> None:
    """Every circle is in the outline, to 2 mm, and the corners of what joins two stand on both."""
    root = read(f'<svg xmlns="http://www.w3.org/2000/svg"><path d="{chain(given)}"/></svg>')
    found = list(circles(root))
    assert len(found) == len(given)
    for each, circle in zip(given, found, strict=True):
        assert abs(circle.x - 100 * each.at.x) + abs(circle.y + 100 * each.at.y) < 0.2
        assert circle.r == each.radius
    joins = re.findall(r"M([^Maz]*)z", chain(given))
    assert len(joins) == len(given) - 1
    for (one, other), join in zip(pairwise(given), joins, strict=True):
        numbers = [float(said) for said in re.findall(r"-?(?:\d+\.?\d*|\.\d+)", join)]
        corners = list(zip(numbers[::2], numbers[1::2], strict=True))
        for corner, each in zip(corners, (one, one, other, other), strict=True):
            apart = math.dist(corner, (100 * each.at.x, -100 * each.at.y))
            assert apart == pytest.approx(each.radius, abs=0.15 + LAP * each.radius)


@pytest.mark.parametrize(
    ("value", "said"),
    [(0.0, "0"), (-0.04, "0"), (0.26, ".3"), (-0.26, "-.3"), (12.0, "12"), (12.34, "12.3"), (-7.96, "-8")],
)
def test_numbers_are_short(value: float, said: str) -> None:
    """To the millimetre, without what can be left out."""
    assert number(value) == said


def test_what_is_heard() -> None:
    """From the floor up: feet, knees and hips, trunk, elbows, bar."""
    angles = dict.fromkeys((*TOGETHER, *REST), 0.0) | {"knee": 30, "hip": -5, "trunk": -8, "elbow": 45, "back": 60}
    assert heard(position(angles, bar="hands", contact="toes")) == (
        "Seen from the side, facing right: heels lifted; knee bent 30°, hip \N{MINUS SIGN}5°; trunk 8° back of upright,"
        " back rounded; elbow bent 45°; the bar is in the hands, away from the body."
    )
    split = dict.fromkeys((*SPLIT, *REST), 0.0) | {"back": -40}
    assert heard(position(split, bar="overhead", contact="split")) == (
        "Seen from the side, facing right: feet split, the back heel lifted; front knee bent 0°, back knee 0°;"
        " trunk upright, back hollow; elbows straight; the bar is overhead."
    )
