"""The drawing of a lift's drills: one lift or one neighbourhood at a time, and the same where there are thousands."""

import json
import re
from collections.abc import Callable
from typing import Any

import pytest
from browser import Chromium
from pages_shown import Place, Visit, visit

from kb.ask import read
from kb.ask.shelf import with_drills
from kb.show.page.address import form_at
from kb.show.page.content.graph import graph_page, graph_script
from kb.show.page.render import html
from kb.show.page.stock import Stock, stock_of
from kb.terms import DrillId, LiftId

pytestmark = pytest.mark.no_cover

PlaceOf = Callable[[str], Place]

CLEAN = LiftId("clean")
NAME = "Hang clean"

SEARCH = """async (name) => {
  const begun = performance.now();
  document.getElementById("node").value = name;
  document.querySelector("#search button").click();
  await new Promise((go) => requestAnimationFrame(() => setTimeout(go, 0)));
  const told = document.getElementById("told").textContent;
  return { took: performance.now() - begun, shown: window.drillpathShown(), told };
}"""

DRAWN = """async () => {
  await new Promise((go) => requestAnimationFrame(() => setTimeout(go, 0)));
  const painted = performance.getEntriesByType("paint").find((each) => each.name === "first-contentful-paint");
  return { painted: painted.startTime, drawn: performance.now(), shown: window.drillpathShown() };
}"""


@pytest.fixture(scope="module")
def stock(db: read.sqlite3.Connection) -> Stock:
    """The shipped library as pages see it."""
    return stock_of(db)


def grown(stock: Stock, many: int) -> Stock:
    """As many drills of the clean: copies with names of their own, each building on those of its own copy."""
    base = stock.shelves[CLEAN].drills
    drills = {}
    for n in range(-(-many // len(base))):
        for drill in base.values():
            first = tuple(tuple(_copy(each, n, base) for each in group) for group in drill.prerequisites)
            its = _copy(drill.id, n, base)
            drills[its] = drill._replace(id=its, name=f"{drill.name} {n}", prerequisites=first)
    kept = dict(list(drills.items())[:many])
    shelves = {**stock.shelves, CLEAN: with_drills(stock.shelves[CLEAN], kept)}
    return stock._replace(drills={**stock.drills, **drills}, shelves=shelves)


def _copy(drill: DrillId, n: int, base: Any) -> DrillId:
    return DrillId(f"{drill}-{n}") if drill in base else drill


def _given(it: Visit, large: Stock) -> dict[str, Any]:
    """Open the page of a grown library: its own page and data, as the site would write them."""
    script = graph_script(large, CLEAN)
    page = html(graph_page(large, "clean"), form_at("graph/clean"))
    it.page.route("**/graph/clean.html", lambda route: route.fulfill(body=page, content_type="text/html"))
    it.page.route("**/graph-clean.js", lambda route: route.fulfill(body=script, content_type="text/javascript"))
    it.to("graph/clean")
    data: dict[str, Any] = json.loads(script.partition(" = ")[2].rstrip(";\n"))
    return data


def _near(data: dict[str, Any], drill: str) -> tuple[set[str], set[str]]:
    """What a drill builds on, and what builds on it, by the arrows."""
    over = {edge["from"] for edge in data["edges"] if edge["to"] == drill}
    return over, {edge["to"] for edge in data["edges"] if edge["from"] == drill} - over


def _check(shown: list[dict[str, Any]], data: dict[str, Any], drill: str) -> None:
    """Exactly a drill's neighbours stand round it, those it builds on above it, none upon another."""
    at = {each["id"]: (each["x"], each["y"]) for each in shown}
    over, under = _near(data, drill)
    assert set(at) == {drill} | over | under
    assert all(at[each][1] < at[drill][1] for each in over)
    assert all(at[each][1] > at[drill][1] for each in under)
    places = sorted(at.values())
    for n, (x, y) in enumerate(places):
        assert all(abs(x - other) >= 200 or abs(y - down) >= 60 for other, down in places[n + 1 :])


def _told(data: dict[str, Any], drill: str, name: str) -> str:
    over, under = map(len, _near(data, drill))
    return f"Chosen: {name}, with {over} that it builds on above and {under} that build on it below."


@pytest.mark.parametrize("width", [390, 1280])
def test_a_drill_stands_alone_with_its_neighbours(width: int, browser: Chromium, place_of: PlaceOf) -> None:
    """Drills of the clean, chosen by their names; the whole lift comes back by a button that takes the focus on."""

    def look(it: Visit) -> None:
        it.to("graph/clean")
        data = it.page.evaluate("window.drillpathGraph")
        every = sorted(node["id"] for node in data["nodes"])
        assert sorted(each["id"] for each in it.page.evaluate("window.drillpathShown()")) == every
        assert it.page.locator("#whole").is_hidden()
        for node in data["nodes"][:: 1 if width == 1280 else 5]:
            got = it.page.evaluate(SEARCH, node["title"])
            _check(got["shown"], data, node["id"])
            assert got["told"] == _told(data, node["id"], node["title"])
        it.page.get_by_role("button", name="Show the whole lift").click()
        assert len(it.page.evaluate("window.drillpathShown()")) == len(every)
        assert it.page.evaluate("document.activeElement.id") == "node"
        missed = it.page.evaluate(SEARCH, "no such drill")
        assert missed["told"] == "No drill of this lift is called that."
        assert len(missed["shown"]) == len(every)

    visit(browser, place_of("file"), look, viewport={"width": width, "height": 900}, service_workers="block")


@pytest.mark.parametrize("many", [450, pytest.param(2000, marks=pytest.mark.exhaustive)])
def test_a_lift_of_very_many_drills_begins_with_a_neighbourhood(
    many: int, browser: Chromium, folder_served: Place, stock: Stock, record_property: Any
) -> None:
    """What is sought stands there with its neighbours; the times are printed."""
    large = grown(stock, many)

    def look(it: Visit) -> dict[str, float]:
        data = _given(it, large)
        it.page.locator("#graph canvas").wait_for()
        first = it.page.evaluate(DRAWN)
        (start,) = [each["id"] for each in first["shown"] if each["x"] == each["y"] == 0]
        _check(first["shown"], data, start)
        assert len(first["shown"]) < 40
        searched = []
        for node in data["nodes"][:: many // 10]:
            got = it.page.evaluate(SEARCH, node["title"])
            _check(got["shown"], data, node["id"])
            searched.append(got["took"])
        it.page.get_by_role("button", name="Show the whole lift").click()
        assert len(it.page.evaluate("window.drillpathShown()")) == many
        it.context.new_cdp_session(it.page).send("Emulation.setCPUThrottlingRate", {"rate": 4})
        slow = it.page.evaluate(SEARCH, data["nodes"][0]["title"])
        return {
            "painted": first["painted"],
            "drawn": first["drawn"],
            "search": sorted(searched)[len(searched) // 2],
            "search at a quarter speed": slow["took"],
        }

    took = visit(browser, folder_served, look, viewport={"width": 1280, "height": 900}, service_workers="block")
    record_property("graph_ms", took)
    print(f"a drawing of {many} drills, ms: " + ", ".join(f"{key} {ms:.0f}" for key, ms in took.items()))  # noqa: T201


def test_the_page_of_very_many_drills_is_set_quickly(stock: Stock) -> None:
    """Each drill's list says what builds on it, in their order."""
    large = grown(stock, 450)
    page = graph_page(large, "clean")
    text = html(page, form_at("graph/clean"))
    drills = large.shelves[CLEAN].drills
    nodes = {node.drill.name: node for _, stage in page.holds.stages for node in stage}
    assert set(nodes) == set(drills)
    for drill in list(drills.values())[::7]:
        after = {other.id for other in drills.values() if any(drill.id in group for group in other.groups)}
        assert {link.name for link in nodes[drill.id].leads_to} == after
        assert len(nodes[drill.id].leads_to) == len(after)
    assert len(re.findall("<li id=", text)) == 450
