"""Drills as strips and in motion: the points they visit, the bar's path, and no motion nobody asked for."""

import math
import re
from base64 import b64encode
from hashlib import sha256
from itertools import pairwise

import pytest
from browser import Chromium
from svg_reading import SVG, circles, classed, read, said_by, transgressions

from kb.body.pose import forward
from kb.body.proportions import USUAL
from kb.make.library import Library
from kb.show.figure.look import STYLE, alone
from kb.show.figure.movement import STEPS, between, path_of
from kb.show.figure.moving import LONGEST_S, moving_svg
from kb.show.figure.outline import drawn
from kb.show.figure.passing import passed, serving
from kb.show.figure.strip import ACROSS, strip_svg
from kb.terms import Drill, DrillId, Lift, LiftId, PositionId


def drawable(library: Library) -> list[tuple[Drill, Lift]]:
    """Every drill with a reach, and its first lift."""
    return [(drill, library.lifts[drill.lifts[0]]) for drill in library.drills.values() if drill.reach]


def names(library: Library, drill: str, lift: str | None = None) -> list[str]:
    """The ids of the positions a drill passes."""
    found = library.drills[DrillId(drill)]
    return [each.id for each in passed(found, library.lifts[LiftId(lift or found.lifts[0])], library.positions)]


@pytest.mark.parametrize(
    ("drill", "lift", "due"),
    [
        ("full-snatch", "snatch", "start knee hip extension receive stand"),
        ("power-clean", "clean", "start knee hip extension power-receive stand"),
        ("muscle-snatch", "snatch", "hip extension turnover stand"),
        ("tall-clean", "clean", "extension receive"),
        ("lift-off-pause", "clean", "start lift-off knee"),
        ("hang-clean", "clean", "knee hang hip extension receive stand"),
        ("halting-deadlift", "snatch", "start knee hang hip"),
        ("start-hold", "clean", "start"),
        ("power-jerk", "jerk", "rack dip drive recovered"),
    ],
)
def test_a_drill_passes_the_points_it_visits(library: Library, drill: str, lift: str, due: str) -> None:
    """In order; the quarter squat for a high catch; a target off the timeline where its bar's height puts it."""
    assert names(library, drill, lift) == [f"{lift}-{point}" for point in due.split()]


def test_a_lift_of_parts_passes_both(library: Library) -> None:
    """The clean and jerk has the points of both, and what serves a part is drawn on the whole as on the part."""
    assert len(names(library, "full-clean-and-jerk")) == 11
    assert names(library, "tall-clean", "clean-and-jerk") == names(library, "tall-clean", "clean")


def test_from_behind_the_neck_the_bar_stays_there(library: Library) -> None:
    """The drive has the bar on the neck, not on the front of the shoulders."""
    found = passed(library.drills[DrillId("behind-neck-jerk")], library.lifts[LiftId("jerk")], library.positions)
    assert [each.bar for each in found] == ["neck", "neck", "overhead", "overhead"]


def test_what_passes_nothing_is_not_drawn(library: Library) -> None:
    """Preparation has no reach; a lift that a drill doesn't serve, and points that aren't there, give nothing."""
    prepare = library.drills[DrillId("stick-pass-through")]
    snatch, jerk = library.lifts[LiftId("snatch")], library.lifts[LiftId("jerk")]
    assert serving(prepare, library.lifts) is None
    assert strip_svg(prepare, snatch, library.positions) == ""
    assert moving_svg(prepare, snatch, library.positions) == ""
    pull = library.drills[DrillId("floor-pull")]
    assert passed(pull, jerk, library.positions) == ()
    assert passed(pull._replace(reach={LiftId("jerk"): ("rack", "knee")}), jerk, library.positions) == ()
    assert moving_svg(library.drills[DrillId("start-hold")], snatch, library.positions) == ""
    above = pull._replace(target_position={LiftId("snatch"): PositionId("jerk-recovered")})
    assert passed(above, snatch, library.positions) == passed(pull, snatch, library.positions)


def test_strips_are_sound(library: Library) -> None:
    """One figure a posture, in rows; the path ends at the bar; every element as a strict policy has it."""
    for drill, lift in drawable(library):
        svg = strip_svg(drill, lift, library.positions)
        root = read(svg)
        assert transgressions(root, alone=False) == []
        assert said_by(root)[0] == drill.name
        postures = passed(drill, lift, library.positions)
        assert len(classed(root, "disc")) == len(postures)
        assert len(classed(root, "path")) == len(postures) - 1
        assert len(alone(svg).encode()) < 4500 * len(postures) + 1500
        ids = re.findall(r' id="([^"]+)"', svg)
        assert len(ids) == len(set(ids))
        _, _, width, _ = map(float, (root.get("viewBox") or "").split())
        assert all(circle.x <= width + 100 for circle in circles(root))
        for one in (each for each in root if classed(each, "path")):
            (disc,) = circles(classed(one, "disc")[0])
            place = re.fullmatch(r"translate\((\S+) (\S+)\)", one.get("transform", ""))
            assert place
            numbers = re.findall(r"-?(?:\d+\.?\d*|\.\d+)", classed(one, "path")[0][1].get("d", ""))
            assert math.dist(map(float, numbers[-2:]), (disc.x, disc.y)) < 0.2


def test_a_long_strip_has_rows(library: Library) -> None:
    """Eleven postures stand in two rows of at most six."""
    drill = library.drills[DrillId("full-clean-and-jerk")]
    root = read(strip_svg(drill, library.lifts[LiftId("clean-and-jerk")], library.positions, stick=True))
    assert len({each.get("transform", "").split()[1] for each in root if each.get("transform")}) == 2
    assert len([each for each in root if each.get("transform")]) == 11 > ACROSS
    assert len(classed(root, "stick")) == 11


def test_the_way_goes_through_the_postures(library: Library) -> None:
    """Each group ends in its position's own pose, to 2 mm, and no joint leaps on the way."""
    for lift in library.lifts.values():
        postures = [library.positions[timed.position] for timed in lift.timeline]
        groups = between(postures)
        assert len(groups) == len(postures)
        for posture, group in zip(postures, groups, strict=True):
            own, pose = forward(USUAL, posture), group[-1]
            for name in ("hip", "shoulder", "elbow", "wrist", "bar", "vertex"):
                assert math.dist(getattr(own, name), getattr(pose, name)) < 0.002, (posture.id, name)
            for mine, yours in zip(own.legs, pose.legs, strict=False):
                assert math.dist(mine.knee, yours.knee) < 0.002
        poses = [pose for group in groups for pose in group]
        for one, other in pairwise(poses):
            for name in ("hip", "shoulder", "bar"):
                assert math.dist(getattr(one, name), getattr(other, name)) < 0.3, (lift.id, name)
        assert path_of(groups) == [pose.bar for pose in poses]


def test_the_bar_rises_close_to_the_body(library: Library) -> None:
    """Between the extension and the catch it stays within two hands' breadth of where it was (common practice)."""
    for lift in ("snatch", "clean"):
        out, into = (library.positions[PositionId(f"{lift}-{point}")] for point in ("extension", "receive"))
        first, way = between([out, into])
        assert len(way) == 2 * STEPS
        assert all(abs(pose.bar.x - first[0].bar.x) < 0.16 for pose in way)
        assert max(pose.bar.y for pose in way) > forward(USUAL, into).bar.y - 0.001


def test_bones_keep_their_length(library: Library) -> None:
    """Shank, thigh and trunk are as long on the way as they are in the postures."""
    drill = library.drills[DrillId("full-clean-and-jerk")]
    postures = passed(drill, library.lifts[LiftId("clean-and-jerk")], library.positions)
    for pose in (pose for group in between(postures) for pose in group):
        assert len(pose.legs) == 2
        for leg in pose.legs:
            assert math.dist(leg.ankle, leg.knee) == pytest.approx(USUAL.shank)
            assert math.dist(leg.knee, leg.hip) == pytest.approx(USUAL.thigh)
        assert math.dist(pose.hip, pose.shoulder) == pytest.approx(USUAL.trunk)


def test_what_moves_is_sound(library: Library) -> None:
    """Without style it stands still; it begins by itself, ends within five seconds (WCAG 2.2, 2.2.2) and stays."""
    for drill, lift in drawable(library):
        svg = moving_svg(drill, lift, library.positions)
        if not svg:
            continue
        root = read(svg)
        assert transgressions(root, alone=False) == []
        assert transgressions(read(alone(svg)), alone=True) == []
        assert said_by(root)[0] == f"{drill.name}, moving"
        assert len(alone(svg).encode()) < 40_000
        (moving,) = classed(root, "moving")
        assert moving.get("display") == "none"
        assert classed(root, "still")
        parts = [each for each in root.iter() if each.tag in (f"{SVG}animate", f"{SVG}animateTransform")]
        assert parts
        for part in parts:
            assert float((part.get("dur") or "").removesuffix("s")) <= LONGEST_S < 5
            assert part.get("fill") == "freeze"
            assert part.get("repeatCount") is None
            assert part.get("begin") == f"0s;{root.get('id')}.click"


def test_the_bar_moves_along_its_path(library: Library) -> None:
    """The disc's places are those of the path, from its first."""
    drill, lift = library.drills[DrillId("full-snatch")], library.lifts[LiftId("snatch")]
    (moving,) = classed(read(moving_svg(drill, lift, library.positions)), "moving")
    holder = next(each for each in moving.iter() if any("bar" in (child.get("class") or "") for child in each))
    (disc,) = circles(classed(holder, "disc")[0])
    carried = holder.find(f"{SVG}animateTransform")
    assert carried is not None
    places = [tuple(map(float, each.split())) for each in carried.get("values", "").split(";")]
    path = path_of(between(passed(drill, lift, library.positions)))
    assert len(places) == len(path)
    for (dx, dy), point in zip(places, path, strict=True):
        assert math.dist((disc.x + dx, disc.y + dy), drawn(point)) < 0.2


def test_a_browser_moves_it_under_a_strict_policy(library: Library, browser: Chromium) -> None:
    """With no script and only our style allowed it moves; less motion preferred or printed, it stands still."""
    drill, lift = library.drills[DrillId("tall-clean")], library.lifts[LiftId("clean")]
    allowed = sha256(STYLE.encode())
    policy = f"default-src 'none'; style-src 'sha256-{b64encode(allowed.digest()).decode()}'"
    page = (
        f'<!doctype html><meta http-equiv="Content-Security-Policy" content="{policy}"><style>{STYLE}</style>'
        + moving_svg(drill, lift, library.positions)
    )
    places = """() => {
        const svg = document.querySelector('svg');
        const disc = svg.querySelector('.moving .disc');
        const at = (seconds) => {
            svg.pauseAnimations(); svg.setCurrentTime(seconds);
            return disc.getBoundingClientRect().y;
        };
        return [getComputedStyle(svg.querySelector('.moving')).display,
                getComputedStyle(svg.querySelector('.still')).display, at(0), at(0.45), at(5)];
    }"""
    moving, still, first, middle, last = browser.evaluate(page, places)
    assert (moving, still) == ("inline", "none")
    assert middle < first  # the bar rises,
    assert middle < last  # and is met lower
    assert browser.evaluate(page, places, media="print")[:2] == ["none", "inline"]

    def less(page_: object) -> list[str]:
        page_.emulate_media(reduced_motion="reduce")  # type: ignore[attr-defined]
        found: list[str] = page_.evaluate(places)[:2]  # type: ignore[attr-defined]
        return found

    assert browser.on_page(page, less) == ["none", "inline"]
