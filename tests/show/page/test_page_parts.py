"""Parts of pages: text of entries as HTML, ways to chains, what is at hand, the graph's order."""

import json
import re

import pytest

from kb.ask import read
from kb.show.page.address import SERVED
from kb.show.page.content.at_hand import at_hand_page
from kb.show.page.content.find import find_page
from kb.show.page.content.graph import graph_script
from kb.show.page.content.path import path_page
from kb.show.page.content.plan import plan_page
from kb.show.page.markup import as_html
from kb.show.page.pages import page_at
from kb.show.page.prepared import prepare
from kb.show.page.render import html
from kb.show.page.stock import Stock, stock_of
from kb.terms import FaultId, ItemId


@pytest.fixture(scope="module")
def stock(db: read.sqlite3.Connection) -> Stock:
    """The shipped library as pages see it."""
    return stock_of(db)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("**Do** it.", "<p><strong>Do</strong> it.</p>"),
        ("[a book](https://example.org/x)", "<p>a book (https://example.org/x)</p>"),
        ("<https://example.org/>", "<p>https://example.org/</p>"),
        ("[here](javascript:x())", "<p>[here](javascript:x())</p>"),
        ("![x](https://example.org/y.png)", "<p>!x (https://example.org/y.png)</p>"),
        ("<b onclick='x()'>b</b>", "<p>&lt;b onclick='x()'&gt;b&lt;/b&gt;</p>"),
        ("## Heading", "<p><strong>Heading</strong></p>"),
    ],
)
def test_text_of_entries_leads_nowhere_and_runs_nothing(text: str, told: str) -> None:
    """Markdown is set; HTML, pictures and addresses are shown as text."""
    assert str(as_html(text)).strip() == told


@pytest.mark.parametrize("fault", ["clean-bar-crashes", "early-arm-bend", "jerk-short-split"])
def test_a_check_points_to_causes_on_the_same_page(fault: str, stock: Stock) -> None:
    """Every answer of every check leads to a cause that stands there; the checks come first."""
    page = html(page_at(f"fault/{fault}", stock, lambda each: prepare(stock, each)), SERVED)
    causes = {cause.id for cause in stock.faults[FaultId(fault)].causes}
    assert set(re.findall(r'href="#([\w-]+)"', page)) - {"answer"} <= causes
    assert set(re.findall(r'<li id="([\w-]+)"', page)) == causes
    assert page.index("Which cause is it?") < page.index("What to do, by cause")


def test_kits_that_lead_to_one_page_are_one_way(stock: Stock) -> None:
    """Each kit stands once, under the page that answers for it."""
    fault = FaultId("clean-bar-crashes")
    prepared = prepare(stock, fault)
    kits = stock.kits_by_size()
    for cause in stock.faults[fault].causes:
        for lift in stock.faults[fault].lifts:
            ways = prepared.ways(cause.id, lift, kits)
            assert sorted(kit for its in ways.values() for kit in its) == sorted(kits)
            assert all(prepared.name(cause.id, lift, kit) == name for name, its in ways.items() for kit in its)


def test_what_stands_in_is_said_once_for_all_it_stands_in_for(stock: Stock) -> None:
    """A broom for a bar and discs is one thing said, not two."""
    page = at_hand_page(stock, frozenset({ItemId("broom"), ItemId("wall")}))
    said = {link.beside for _, links in page.holds.room.stages for link in links if link.beside}
    assert any(re.fullmatch(r"broom for [\w ,]+ and [\w ]+", each) for each in said)
    assert not any(each.count("broom for") > 1 for each in said)
    names = [item.name for item in page.holds.items]
    assert names == sorted(names)


@pytest.mark.parametrize("lift", ["clean", "jerk", "snatch", "clean-and-jerk"])
def test_in_the_graph_what_builds_on_another_stands_below_it(lift: str, stock: Stock) -> None:
    """Where both stand in one column of one stage; and no two drills stand on each other."""
    script = graph_script(stock, next(each for each in stock.lifts if each == lift))
    graph = json.loads(script.removeprefix("window.drillpathGraph = ").rstrip(";\n"))
    places = {node["id"]: (node["x"] // 100, node["y"], node["group"]) for node in graph["nodes"]}
    assert len({place[:2] for place in places.values()}) == len(places)
    below = 0
    for edge in graph["edges"]:
        above, under = places[edge["from"]], places[edge["to"]]
        if above[0] == under[0] and above[2] == under[2]:
            assert above[1] < under[1], edge
            below += 1
    assert below or lift == "clean-and-jerk"


@pytest.mark.parametrize("name", ["clean.moon", "moon.hall", "clean", ""])
def test_there_is_no_plan_of_another_name(name: str, stock: Stock) -> None:
    """Of a lift and a kit that there are, and of nothing else."""
    with pytest.raises(KeyError):
        plan_page(stock, name)


def test_a_plan_without_a_path_says_why(stock: Stock) -> None:
    """In the path's own words."""
    page = plan_page(stock._replace(way=lambda *_: "nothing leads there"), "clean.hall")
    assert page.holds.why == "nothing leads there"
    assert "Nothing leads there." in html(page, SERVED)


def test_a_path_that_a_kit_doesn_t_lead_to_goes_as_far_as_it_can(stock: Stock) -> None:
    """The reason with its names as they are written, then how much of each drill, and when to move on."""
    few = {kit: frozenset({ItemId("bar")}) for kit in stock.kits}
    poor = stock._replace(way=lambda *_: "the clean needs Dr Ill", kits=few)
    page = path_page(poor, f"clean.{poor.kits_by_size()[0]}")
    said = html(page, SERVED)
    assert "The clean needs Dr Ill." in said
    assert "Towards it, as far as this gear goes, in order:" in said
    assert page.holds.way.steps
    assert all(step.changed and step.move_on for step in page.holds.way.steps)


def test_what_is_healed_is_cautioned_on_the_page_before_what_was_found(db: read.sqlite3.Connection) -> None:
    """Pain alone gets the caution alone."""
    said = html(find_page(db, "healed fracture, bar loops out"), SERVED)
    assert said.index("Stop there") < said.index("That comes first") < said.index("<h2>Faults</h2>")
    said = html(find_page(db, "my wrist hurts"), SERVED)
    assert "Stop there" in said
    assert "Nothing below" not in said
    assert "<h2>Faults</h2>" not in said
