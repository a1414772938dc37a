"""Every kind of page: accessible, within its width, asking nothing of anyone else, quiet under its policy."""

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

import axe_playwright_python
import pytest
from browser import Chromium
from pages_shown import KINDS, Place, Visit, visit

pytestmark = pytest.mark.no_cover

PlaceOf = Callable[[str], Place]

AXE = Path(axe_playwright_python.__file__).parent / "axe.min.js"

ASKED = {
    "found": ("find", "?q=bar+crashes+on+the+shoulders"),
    "nothing found": ("find", "?q=zzzz"),
    "pain": ("find", "?q=my+knee+hurts"),
    "answered": ("ask", "?fault=clean-bar-crashes&kit=hall&minutes=10"),
    "not understood": ("ask", "?fault=clean-bar-crashes&minutes=zero"),
    "ticked": ("at-hand", "?have=broom&have=wall"),
    "no such page": ("drill/no-such-drill", ""),
    "the catalogue": ("catalogue", ""),
    "a table": ("catalogue/drill", "?_facet=stage"),
    "a row": ("catalogue/drill/tall-clean", ""),
    "a canned question": ("catalogue/ask_drills_for_fault", "?fault=clean-bar-crashes"),
}
"""What only a server answers, by the kind of page that comes."""

REFUSED = {"not understood": 400, "no such page": 404}

EACH_KIND = pytest.mark.parametrize("kind", KINDS)
EACH_ASKED = pytest.mark.parametrize("kind", ASKED)

RUN_AXE = """async (only) => {
  const some = only ? { runOnly: { type: "rule", values: [only] } } : {};
  const found = await axe.run(document, { preload: false, ...some });
  const where = (nodes) => nodes.slice(0, 4).map((node) => node.target).join(" | ");
  return found.violations.map((each) => `${each.id}: ${each.help} (${where(each.nodes)})`);
}"""

NOTE_VIOLATIONS = """
window.violations = [];
document.addEventListener("securitypolicyviolation", (event) => {
  window.violations.push(`${event.violatedDirective} ${event.blockedURI}`);
});
"""

PHONE = {"viewport": {"width": 390, "height": 844}, "service_workers": "block"}


def test_no_kind_of_page_is_left_out(site: Path) -> None:
    """Every folder of the site, and every page that is alone of its kind, is among those looked at."""
    alone = {path.stem.replace("index", "home") for path in site.glob("*.html")}
    folders = {path.parent.name for path in site.glob("*/*.html")}
    assert alone | folders == {path.partition("/")[0] for path in KINDS.values()}


def _axe(it: Visit) -> list[str]:
    """What axe finds wrong, in both schemes; the second time only colours can differ."""
    it.page.add_script_tag(path=str(AXE))
    it.page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true; })")
    wrong: list[str] = it.page.evaluate(RUN_AXE, None)
    it.page.emulate_media(color_scheme="dark")
    return wrong + [f"dark: {each}" for each in it.page.evaluate(RUN_AXE, "color-contrast")]


@EACH_ASKED
def test_axe_finds_nothing_wrong_in_an_answer(kind: str, browser: Chromium, app: Place) -> None:
    """Nor where only a server answers."""

    def look(it: Visit) -> list[str]:
        it.to(*ASKED[kind])
        it.complaints.clear()  # the browser notes a status of 400 or 404
        return _axe(it)

    assert visit(browser, app, look, bypass_csp=True, **PHONE) == []


def test_axe_finds_nothing_wrong_while_at_hand_is_used(browser: Chromium, place_of: PlaceOf) -> None:
    """Nor in what script has put there: ticks, and what was found for some words."""

    def look(it: Visit) -> list[str]:
        it.to("at-hand")
        it.page.get_by_label("Broom", exact=True).check()
        wrong = _axe(it)
        it.to("home")
        it.page.get_by_label("In your own words").fill("bar crashes")
        it.page.locator("#found a").first.wait_for()
        return wrong + _axe(it)

    assert visit(browser, place_of("file"), look, bypass_csp=True, **PHONE) == []


def test_axe_can_fail(browser: Chromium, place_of: PlaceOf) -> None:
    """A picture without words and pale text are found."""

    def look(it: Visit) -> str:
        it.to("faults")
        it.page.evaluate(
            """() => {
                document.querySelector("h1").innerHTML = '<img src="assets/icon.svg">';
                document.querySelector("main a").style.color = "#d5cab6";
            }"""
        )
        return " ".join(_axe(it))

    wrong = visit(browser, place_of("file"), look, bypass_csp=True, **PHONE)
    assert "image-alt" in wrong
    assert "color-contrast" in wrong


def _too_wide(it: Visit) -> list[int]:
    """The widths at which something stands to the right of what is seen."""
    found = []
    for width in (320, 390, 1280):
        it.page.set_viewport_size({"width": width, "height": 844})
        if it.page.evaluate("document.documentElement.scrollWidth") > width:
            found.append(width)
    return found


BROKEN = """async () => {
  await Promise.all([...document.images].map((each) => each.decode().catch(() => undefined)));
  return [...document.images].filter((each) => !each.naturalWidth).map((each) => each.src);
}"""


@EACH_KIND
def test_a_page_is_accessible_keeps_within_its_width_and_asks_only_its_own_folder(
    kind: str, browser: Chromium, place_of: PlaceOf
) -> None:
    """axe finds nothing on a phone, light and dark; no sideways scrolling; every picture is there."""

    def look(it: Visit) -> tuple[list[str], list[int], list[str]]:
        it.to(KINDS[kind])
        return _axe(it), _too_wide(it), it.page.evaluate(BROKEN)

    assert visit(browser, place_of("file"), look, bypass_csp=True, **PHONE) == ([], [], [])


def _quiet(it: Visit, which: list[tuple[str, str, int]]) -> dict[str, dict[str, str]]:
    """The headers of each page (path, query and the status it must have), opened side by side; none may complain."""
    it.context.add_init_script(NOTE_VIOLATIONS)
    opened, headers = [], {}
    for path, query, status in which:
        page = it.context.new_page()
        answer = page.goto(it.place.at(path, query))
        assert answer is not None
        assert answer.status == status, path
        headers[path + query] = answer.headers
        opened.append((path, page, status))
    for path, page, status in opened:  # each has been at rest for a while when the last has been waited for
        page.wait_for_load_state("networkidle")
        assert page.evaluate("window.violations") == [], path
        if status != 200:
            noted = [n for n, each in enumerate(it.complaints) if f"status of {status}" in each]
            del it.complaints[noted[0]]
        page.close()
    return headers


AT_ONCE = 6
"""Pages opened side by side."""


def _some(kinds: Iterable[str]) -> list[list[str]]:
    every = list(kinds)
    return [every[n : n + AT_ONCE] for n in range(0, len(every), AT_ONCE)]


@pytest.mark.parametrize("kinds", _some(KINDS), ids="-".join)
def test_served_pages_are_quiet_under_a_strict_policy(kinds: list[str], browser: Chromium, app: Place) -> None:
    """Nothing inline, nothing from elsewhere, no complaint, no request to another origin."""
    which = [(KINDS[kind], "", 200) for kind in kinds]
    for headers in visit(browser, app, lambda it: _quiet(it, which), service_workers="block").values():
        _strict(headers)


@pytest.mark.parametrize("kinds", _some(ASKED), ids="-".join)
def test_served_answers_are_quiet_under_a_strict_policy(kinds: list[str], browser: Chromium, app: Place) -> None:
    """The same for what only a server answers."""
    which = [(*ASKED[kind], REFUSED.get(kind, 200)) for kind in kinds]
    for headers in visit(browser, app, lambda it: _quiet(it, which), service_workers="block").values():
        _strict(headers)


def _strict(headers: dict[str, str]) -> None:
    parts = [part.split() for part in headers["content-security-policy"].split(";")]
    policy = {part[0]: part[1:] for part in parts if part}
    assert policy["default-src"] == ["'none'"]
    assert policy["script-src"] == ["'self'"]
    assert policy["style-src"] == ["'self'"]
    assert policy["base-uri"] == policy["frame-ancestors"] == ["'none'"]
    assert "unsafe" not in headers["content-security-policy"]
    assert headers["x-content-type-options"] == "nosniff"
    assert headers["referrer-policy"] == "no-referrer"


def test_a_request_to_another_origin_is_noticed(browser: Chromium, place_of: PlaceOf) -> None:
    """The check that fails on one can fail."""

    def look(it: Visit) -> None:
        it.to("faults")
        with it.page.expect_event("requestfailed"):
            it.page.evaluate("() => { new Image().src = 'http://127.0.0.1:9/elsewhere.png'; }")

    with pytest.raises(AssertionError, match="elsewhere"):
        visit(browser, place_of("file"), look)


def test_text_stands_for_the_chart_and_the_graph(browser: Chromium, place_of: PlaceOf) -> None:
    """The chart's picture has a name and its bars follow as a list in order; so do the graph's drills."""

    def look(it: Visit) -> tuple[str, list[str], str, dict[str, Any]]:
        it.to(KINDS["chain"])
        chart = it.page.locator(".reach-chart").aria_snapshot()
        names = it.page.locator(".card h2 a").all_inner_texts()
        it.to(KINDS["graph"])
        after = it.page.evaluate(
            """() => {
                const list = [...document.querySelectorAll(".graph-list > li")];
                const drawing = document.getElementById("graph"), after = Node.DOCUMENT_POSITION_FOLLOWING;
                return {
                    after: list.every((each) => drawing.compareDocumentPosition(each) & after),
                    listed: list.map((each) => each.querySelector("a").textContent),
                    drawn: window.drillpathGraph.nodes.map((each) => each.title),
                };
            }"""
        )
        return chart, names, it.page.locator("#graph").get_attribute("aria-label") or "", after

    chart, names, label, graph = visit(browser, place_of("file"), look, **PHONE)
    assert 'img "Reach chart of the clean' in chart
    at = chart.index("- list:")
    for name in names:
        at = chart.index(name, at) + 1
    assert "list below" in label
    assert graph["after"]
    assert sorted(graph["listed"]) == sorted(graph["drawn"])
