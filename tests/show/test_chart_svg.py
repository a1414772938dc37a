"""The reach chart as SVG: valid, inert, and each bar where and how its drill says, read from the drawing alone."""

import re
from itertools import pairwise
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from small_answers import small_chain, small_shelf
from strategies import questions
from worlds import shelf_of

from kb.ask.chain import NoChain, chain
from kb.dials import Dials
from kb.show.bars import Bar, bands_of, route_bars
from kb.show.chart import chart
from kb.show.chart_heard import band_heard
from kb.show.chart_svg import chart_figure, chart_svg
from kb.show.setting import Setting
from kb.terms import Catch, Lift, Load, PositionId, Speed, Stage

CLEAN, BOTH, JERK = (small_shelf(lift).lift for lift in ("clean", "clean-and-jerk", "jerk"))
SVG = "{http://www.w3.org/2000/svg}"

Element = ElementTree.Element

DIALS = st.builds(
    lambda ends, left_out, speed, load, catch, helped: Dials(
        Stage.SEGMENT, min(ends), max(ends), left_out, speed, load, catch, helped
    ),
    st.tuples(st.integers(0, 5), st.integers(0, 5)),
    st.integers(0, 63),
    st.sampled_from(Speed),
    st.sampled_from(Load),
    st.sampled_from(Catch),
    st.booleans(),
)

BARS = st.lists(
    st.builds(
        Bar,
        name=st.text(min_size=1, max_size=60),
        seconds=st.integers(0, 4000),
        dials=st.none() | DIALS,
        said=st.text(max_size=40),
        work=st.booleans(),
        gateway=st.booleans(),
    ),
    max_size=8,
)


def bar(first: int = 0, last: int = 5, *, work: bool = True, name: str = "A drill", **dials: object) -> Bar:
    """A bar of the clean, free, at full speed with a stick and no catch unless said otherwise."""
    plain = Dials(Stage.SEGMENT, first, last, 0, Speed.FULL, Load.STICK, Catch.NONE, False)
    return Bar(name, 120, plain._replace(**dials), "", work)


def read(svg: str) -> Element:
    """A drawing as elements."""
    return ElementTree.fromstring(svg)  # noqa: S314  # our own text


def struck(path: Element) -> list[float]:
    """Where a path has strokes up and down."""
    return [float(x) for x in re.findall(r"M([\d.]+) [\d.]+v", path.get("d", ""))]


def ticks(root: Element) -> list[float]:
    """Where the timeline's points stand."""
    (line,) = [each for each in root.iter(f"{SVG}path") if each.get("class") == "timeline"]
    xs = struck(line)
    assert line.get("d", "").endswith(f"H{xs[-1]:g}")
    return xs


def drawn(one: Bar, lift: Lift = CLEAN, *, narrow: bool = False) -> tuple[list[float], Element]:
    """Where the timeline's points stand, and the group that draws one bar."""
    root = read(chart_svg(lift, [one], narrow=narrow))
    xs = ticks(root)
    group = next(each for each in root.iter(f"{SVG}g") if "bar" in each.get("class", "").split())
    return xs, group


def level(group: Element) -> list[tuple[float, float, float, str]]:
    """The level lines of a bar: from, to, thickness, dashes."""
    return [
        (
            float(line.get("x1", "")),
            float(line.get("x2", "")),
            float(line.get("stroke-width", "")),
            line.get("stroke-dasharray", ""),
        )
        for line in group.iter(f"{SVG}line")
        if line.get("y1") == line.get("y2")
    ]


def upright(group: Element) -> list[float]:
    """Where a bar has strokes across it."""
    lines = [float(line.get("x1", "")) for line in group.iter(f"{SVG}line") if line.get("x1") == line.get("x2")]
    return lines + [x for path in group.iter(f"{SVG}path") for x in struck(path)]


@pytest.mark.parametrize("narrow", [False, True])
@settings(max_examples=60, deadline=None)
@given(bars=BARS, bands=st.lists(st.tuples(st.integers(0, 5), st.integers(0, 5)).map(sorted).map(tuple), max_size=3))
def test_whatever_the_bars_it_is_valid_inert_and_within_its_edges(
    narrow: bool, bars: list[Bar], bands: list[tuple[int, int]]
) -> None:
    """XML that a strict policy lets stand: no script, no style, no address; nothing drawn past its edge."""
    root = read(chart_svg(CLEAN, bars, bands=bands, narrow=narrow))
    width, height = (float(each) for each in root.get("viewBox", "").split()[2:])
    for each in root.iter():
        assert each.tag.removeprefix(SVG) in {
            *("svg", "title", "desc", "defs", "pattern", "path", "rect", "line", "text", "g", "polygon")
        }
        for key, value in each.attrib.items():
            assert key != "style"
            assert not key.startswith("on")
            assert "href" not in key
            assert "url(" not in value or value.startswith("url(#reach-")
        assert all(0 <= x <= width for x in (struck(each) if each.tag == f"{SVG}path" else ()))
        if each.tag in (f"{SVG}line", f"{SVG}rect", f"{SVG}text"):
            for key in ("x", "x1", "x2"):
                assert 0 <= float(each.get(key, "0")) <= width
            for key in ("y", "y1", "y2"):
                assert 0 <= float(each.get(key, "0")) <= height
    numbers = [each for each in root.iter(f"{SVG}text") if each.get("class") == "number"]
    assert [each.text for each in numbers] == [f"{n}{'*' if one.gateway else ''}" for n, one in enumerate(bars, 1)]


@settings(max_examples=80, deadline=None)
@given(DIALS)
def test_a_bar_lies_where_its_reach_is(dials: Dials) -> None:
    """From the point where its reach begins to the one where it ends; broken at every point left out between."""
    xs, group = drawn(bar()._replace(dials=dials))
    pieces = level(group)
    low, high = min(piece[0] for piece in pieces), max(piece[1] for piece in pieces)
    thick = pieces[0][2]
    if dials.first == dials.last:
        assert low < xs[dials.first] < high
        assert high - low < xs[1] - xs[0]
        return
    assert low == pytest.approx(xs[dials.first], abs=thick)
    assert high == pytest.approx(xs[dials.last], abs=thick)
    for n, x in enumerate(xs):
        inside = dials.first < n < dials.last
        covered = any(start <= x <= end for start, end, _, _ in pieces)
        if inside:
            assert covered == (not dials.left_out >> n & 1)
    assert min(upright(group)) == pytest.approx(xs[dials.first], abs=0.1)


def test_speed_is_the_line() -> None:
    """Dotted held, dashed slow, notched paused, solid full: four kinds that a grey printer keeps."""
    kinds = {}
    for speed in Speed:
        _, group = drawn(bar(speed=speed))
        (piece,) = level(group)
        kinds[speed] = (piece[3].split(" ")[0] if piece[3] else "", len(upright(group)))
    assert kinds[Speed.HELD] == ("0", 1)
    assert kinds[Speed.SLOW] == ("9", 1)
    assert kinds[Speed.PAUSED][0] == ""
    assert kinds[Speed.PAUSED][1] > 5
    assert kinds[Speed.FULL] == ("", 1)


def test_load_is_the_thickness_and_a_check_is_thinner() -> None:
    """At each load that differs to the eye; a check of a load always thinner than its work."""
    thick = {(load, work): level(drawn(bar(load=load, work=work))[1])[0][2] for load in Load for work in (True, False)}
    assert thick[Load.NONE, True] == thick[Load.STICK, True] < thick[Load.LIGHT, True] < thick[Load.WORKING, True]
    assert all(thick[load, False] < thick[load, True] for load in Load)


def test_catch_is_the_right_hand_end() -> None:
    """Nothing, a short stroke, half a cup, a cup: all at the end, each drawn otherwise."""
    ends = []
    for catch in Catch:
        xs, group = drawn(bar(2, 4, catch=catch))
        paths = [path.get("d", "") for path in group.iter(f"{SVG}path")]
        ends.append("".join(paths))
        assert all(f"{xs[4]:g}" in path for path in paths)
    assert ends[0] == ""
    assert len(set(ends)) == 4
    assert [end.count("H") for end in ends] == [0, 0, 1, 2]


def test_help_is_a_prop_under_the_bar() -> None:
    """And nothing else is."""
    assert not list(drawn(bar())[1].iter(f"{SVG}polygon"))
    (prop,) = drawn(bar(helped=True))[1].iter(f"{SVG}polygon")
    ys = [float(point.split(",")[1]) for point in prop.get("points", "").split()]
    line = next(each for each in drawn(bar(helped=True))[1].iter(f"{SVG}line"))
    assert min(ys) > float(line.get("y1", ""))


@pytest.mark.parametrize("narrow", [False, True])
def test_the_band_is_behind_the_bars_with_its_label(narrow: bool) -> None:
    """A pattern as well as a colour; a little wider than its points; in the narrow form behind no name."""
    root = read(chart_svg(CLEAN, [bar(), bar(2, 4)], bands=[(3, 4)], narrow=narrow))
    xs = ticks(root)
    hatched = [each for each in root.iter(f"{SVG}rect") if each.get("fill", "").startswith("url(")]
    assert hatched
    for each in hatched:
        low = float(each.get("x", ""))
        assert xs[2] < low < xs[3]
        assert xs[4] < low + float(each.get("width", "")) < xs[5]
    order = [each.tag for each in root]
    assert order.index(f"{SVG}rect") < order.index(f"{SVG}g")
    assert [each.text for each in root.iter(f"{SVG}text") if each.get("class") == "band-name"] == ["where it shows"]
    if narrow:
        names = [float(each.get("y", "")) for each in root.iter(f"{SVG}text") if each.get("class") == "name"]
        for each in hatched:
            top = float(each.get("y", ""))
            assert not any(top < y - 1 < top + float(each.get("height", "")) for y in names)


def words_of(root: Element, name: str) -> list[str]:
    """The texts of a class, in order."""
    return [each.text or "" for each in root.iter(f"{SVG}text") if each.get("class") == name]


def test_it_says_what_the_terminal_says() -> None:
    """The same names, minutes and words in the same order, and the same legend."""
    found = small_chain("clean-bar-crashes")
    lift = found.matter.shelf.lift
    bars = route_bars(found.routes[0], lift)
    root = read(chart_svg(lift, bars, bands=bands_of(found.matter.worked, lift)))
    heading, *lines = chart(lift, bars, Setting(100))
    assert heading.split() == ["start", "knee", "hip", "ext.", "receive", "stand"] == words_of(root, "point")
    for line, name, time in zip(lines, words_of(root, "name"), words_of(root, "time"), strict=False):
        assert name in line
        assert time in line
    assert words_of(root, "said") == [each.said for each in bars if each.said]
    assert words_of(root, "key") == ["(1 min) a check: one round, drawn thinner"]


def test_a_legend_says_what_needs_saying() -> None:
    """Each kind of line, weight, end and mark that is used and tells bars apart."""
    bars = [
        bar(speed=Speed.HELD, load=Load.NONE),
        bar(speed=Speed.SLOW, load=Load.LIGHT, catch=Catch.STANDING),
        bar(speed=Speed.PAUSED, left_out=2, catch=Catch.POWER),
        bar(helped=True, catch=Catch.FULL)._replace(gateway=True),
    ]
    said = words_of(read(chart_svg(CLEAN, bars)), "key")
    assert said[:3] == ["held", "slow", "with a pause"]
    assert said[3:5] == ["empty-handed or stick", "light"]
    assert said[5:] == [
        *("caught standing", "caught high", "full depth", "helped", "a gap: left out"),
        "* every way to the lift passes here",
    ]
    assert words_of(read(chart_svg(CLEAN, [bar(), bar()])), "key") == []


def heard(figure: str) -> list[str]:
    """The items of the list beside a chart."""
    return [re.sub(r"<.*?>", "", each) for each in re.findall(r"<li>(.*?)</li>", figure)]


def test_a_screen_reader_hears_every_bar_in_order() -> None:
    """PAGES: "1. Tall clean, from tall to rack, 3 minutes; then ..., changes: ..."."""
    found = small_chain("clean-bar-crashes")
    lift = found.matter.shelf.lift
    figure = chart_figure(lift, route_bars(found.routes[0], lift), bands=bands_of(found.matter.worked, lift))
    assert heard(figure) == [
        "Tall clean, from full height to the catch, 5 minutes; at full speed, light load, full depth.",
        "High-hang clean, from the hip to standing, 2 minutes, a check of one round; at full speed, light load,"
        " full depth; changes: from the hip.",
        "Clean, from the floor to standing, 9 minutes; at full speed, light load, full depth; changes: from the floor.",
    ]
    assert figure.count("<svg") == 2
    assert figure.count('role="img"') == 2
    assert "The fault shows from extension to receive. The list after it says each bar." in figure


def test_what_is_drawn_without_words_is_heard() -> None:
    """What is left out, help, a pause, preparation, one point, a gateway; and alone, the description has it all."""
    bars = [
        Bar("Reach up", 50, None, "opens shoulder"),
        bar(1, 4, left_out=0b1100, helped=True, speed=Speed.PAUSED, name="B"),
        bar(2, 2, load=Load.WORKING, name="C")._replace(gateway=True),
    ]
    assert heard(chart_figure(CLEAN, bars)) == [
        "Reach up, 1 minute; opens shoulder.",
        "B, from the knee to the catch, 2 minutes; with a pause, stick, helped, leaves out the hip and full height.",
        "C, at the hip, 2 minutes, every way to the lift passes here; at full speed, working weight.",
    ]
    description = read(chart_svg(CLEAN, bars)).findtext(f"{SVG}desc") or ""
    assert "2. B, from the knee" in description
    assert band_heard(CLEAN, [(0, 1), (2, 2)]) == "The fault shows from start to knee and at hip."


def test_without_bars_it_is_the_timeline_with_its_band() -> None:
    """As on a fault's page; with neither, the lift alone."""
    root = read(chart_svg(CLEAN, [], bands=[(3, 4)]))
    assert len(words_of(root, "point")) == 6
    assert root.findtext(f"{SVG}desc") == "The fault shows from extension to receive."
    assert read(chart_svg(CLEAN, [])).findtext(f"{SVG}desc") == "Reach chart of the clean"
    assert "<ol" not in chart_figure(CLEAN, [])


@pytest.mark.parametrize("lift", [CLEAN, JERK, BOTH], ids=lambda lift: lift.id)
@pytest.mark.parametrize("narrow", [False, True])
def test_labels_of_points_have_room(lift: Lift, narrow: bool) -> None:
    """Whole or shortened, on one line or two; never one over another, by the widest letters."""
    root = read(chart_svg(lift, [], narrow=narrow))
    labels = [each for each in root.iter(f"{SVG}text") if each.get("class") == "point"]
    assert len(labels) == len(lift.points)
    by_line: dict[str, list[tuple[float, float]]] = {}
    for each in labels:
        wide = len(each.text or "") * float(each.get("font-size", "")) * 0.55
        x, anchor = float(each.get("x", "")), each.get("text-anchor")
        low = x - wide / 2 if anchor == "middle" else x - wide if anchor == "end" else x
        by_line.setdefault(each.get("y", ""), []).append((low, low + wide))
    for spans in by_line.values():
        assert all(a[1] < b[0] for a, b in pairwise(spans))
    assert len(by_line) == (2 if lift is BOTH else 1)


def test_figures_stand_over_their_points() -> None:
    """Each picture over the points that take it; what is no picture is refused."""
    start = CLEAN.timeline[0].position
    picture = (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 20" width="90" class="f"><path id="leg" d="M0 0"/>'
    )
    picture += '<use href="#leg"/></svg>'
    root = read(chart_svg(CLEAN, [bar()], figures={start: picture, PositionId("elsewhere"): "no"}))
    (figure,) = [each for each in root.iter(f"{SVG}svg") if each.get("class") == "f"]
    middle = float(figure.get("x", "")) + float(figure.get("width", "")) / 2
    assert middle == pytest.approx(ticks(root)[0], abs=0.1)
    assert figure.get("viewBox") == "0 0 10 20"
    leg, use = figure
    assert use.get("href") == f"#{leg.get('id')}" != "#leg"
    assert leg.get("id") not in chart_svg(CLEAN, [bar()], figures={start: picture}, narrow=True)
    label = next(each for each in root.iter(f"{SVG}text") if each.get("class") == "point")
    assert float(label.get("y", "")) > float(figure.get("height", ""))
    with pytest.raises(ValueError, match="svg element"):
        chart_svg(CLEAN, [], figures={start: "<b>no</b>"})


def test_what_xml_cannot_hold_is_left_out() -> None:
    """Control characters, halves of letters and what is no character at all; everything else is kept."""
    name = "a\x00b\x1b\ud800c\ufffe<d>&'\"\u00e9\U0001f3cb"
    root = read(chart_svg(CLEAN, [bar(name=name)]))
    assert "".join("".join(words_of(root, "name")).split()) == "abc<d>&'\"\u00e9\U0001f3cb"


def test_names_of_parts_differ_between_charts_and_not_between_runs() -> None:
    """Several charts may stand on a page; the same bars give the same text."""
    one, two, narrow = (
        chart_svg(CLEAN, [each], bands=[(0, 1)], narrow=narrow)
        for each, narrow in ((bar(), False), (bar(2, 4), False), (bar(), True))
    )
    assert one == chart_svg(CLEAN, [bar()], bands=[(0, 1)])
    ids = [re.findall(r' id="([^"]+)"', each) for each in (one, two, narrow)]
    assert len({name for each in ids for name in each}) == 9


@settings(max_examples=40, deadline=None)
@given(questions(least=4, most=14))
def test_every_drill_of_any_chain_is_drawn(asked: tuple) -> None:
    """Whatever the library: one bar a drill that has a place, each within the band's lift."""
    world, question = asked
    try:
        found = chain(shelf_of(world), question)
    except NoChain:
        return
    lift = found.matter.shelf.lift
    bars = route_bars(found.routes[0], lift)
    for narrow in (False, True):
        root = read(chart_svg(lift, bars, bands=bands_of(found.matter.worked, lift), narrow=narrow))
        groups = [each for each in root if each.tag == f"{SVG}g"]
        assert len(groups) >= sum(each.dials is not None for each in bars)
        assert len(words_of(root, "time")) == len(bars)
