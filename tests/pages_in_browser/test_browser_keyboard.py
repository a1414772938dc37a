"""The three journeys with Tab, Enter and Space alone; where the focus stands is always seen."""

from collections.abc import Callable

import pytest
from browser import Chromium
from pages_shown import Place, Visit, visit

pytestmark = pytest.mark.no_cover

PlaceOf = Callable[[str], Place]

PHONE = {"viewport": {"width": 390, "height": 844}, "service_workers": "block"}

MOST_TABS = 250

FOCUS = """() => {
  const each = document.activeElement, style = getComputedStyle(each), box = each.getBoundingClientRect();
  return {
    text: (each.tagName === "INPUT" ? each.labels?.[0]?.textContent : each.textContent).trim().replace(/\\s+/g, " "),
    tag: each.tagName,
    ringed: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2,
    seen: box.width > 0 && box.height > 0 && box.bottom > 0 && box.top < innerHeight && box.left >= 0,
  };
}"""


def _tab_to(it: Visit, text: str, tag: str = "A") -> None:
    """Press Tab until something with this text has the focus; every stop on the way is seen and ringed."""
    for _ in range(MOST_TABS):
        it.page.keyboard.press("Tab")
        focus = it.page.evaluate(FOCUS)
        if focus["tag"] == "BODY":
            continue
        assert focus["ringed"], focus
        assert focus["seen"], focus
        if focus["tag"] == tag and focus["text"].startswith(text):
            return
    raise AssertionError(f"Tab never comes to {text!r}")


def _skip(it: Visit) -> None:
    """The first stop of a page leads past its head."""
    it.page.keyboard.press("Tab")
    focus = it.page.evaluate(FOCUS)
    assert focus["text"] == "To the answer"
    assert focus["ringed"]
    assert focus["seen"]
    it.page.keyboard.press("Enter")
    it.page.keyboard.press("Tab")
    assert it.page.evaluate("document.querySelector('main').contains(document.activeElement)")


def _enter(it: Visit, heading: str) -> None:
    it.page.keyboard.press("Enter")
    it.page.get_by_role("heading", level=1, name=heading).wait_for()


@pytest.mark.parametrize("form", ["served", "file"])
def test_a_coach_gets_a_chain_by_keys_alone(form: str, browser: Chromium, place_of: PlaceOf) -> None:
    """Words, Enter, the fault, the cause that a check points to, the kit."""

    def look(it: Visit) -> None:
        it.to("home")
        _skip(it)  # comes to the field, the first thing in the answer
        assert it.page.evaluate("document.activeElement.id") == "q"
        it.page.keyboard.type("bar crashes on the shoulders")
        it.page.keyboard.press("Enter")
        it.page.locator("#found a").first.wait_for()
        if "The bar crashes" not in it.page.evaluate(FOCUS)["text"]:
            _tab_to(it, "The bar crashes onto the shoulders")
        _enter(it, "The bar crashes onto the shoulders")
        _skip(it)
        _tab_to(it, "drops away")
        it.page.keyboard.press("Enter")
        it.page.wait_for_url("**/*#drops-away")
        _tab_to(it, "stick, outdoors or school-hall 13 min")
        it.page.keyboard.press("Enter")
        it.page.locator(".card").first.wait_for()
        _tab_to(it, "How to do it", "SUMMARY")
        it.page.keyboard.press("Space")
        assert it.page.locator(".card details[open]").count() == 1
        _tab_to(it, "Print this", "BUTTON")

    visit(browser, place_of(form), look, **PHONE)


def test_a_path_by_keys_alone(browser: Chromium, place_of: PlaceOf) -> None:
    """The second door, a lift, its path's first drill."""

    def look(it: Visit) -> None:
        it.to("home")
        _tab_to(it, "A new lifter")
        _enter(it, "A new lifter")
        _skip(it)
        _tab_to(it, "Snatch")
        _enter(it, "Snatch")
        first = it.page.locator(".path > li a").first.inner_text()
        _tab_to(it, first)
        _enter(it, first)

    visit(browser, place_of("file"), look, **PHONE)


@pytest.mark.parametrize("form", ["served", "file"])
def test_an_athlete_finds_something_by_keys_alone(form: str, browser: Chromium, place_of: PlaceOf) -> None:
    """Two ticks by Space, the button, a part of the list opened, a drill."""

    def look(it: Visit) -> None:
        it.to("home")
        _tab_to(it, "Little equipment")
        _enter(it, "What is at hand")
        _tab_to(it, "Broom", "INPUT")
        it.page.keyboard.press("Space")
        _tab_to(it, "Wall", "INPUT")
        it.page.keyboard.press("Space")
        _tab_to(it, "Show", "BUTTON")
        it.page.keyboard.press("Enter")
        it.page.locator("#can summary").first.wait_for()
        _tab_to(it, "Positions", "SUMMARY")
        it.page.keyboard.press("Space")
        drill = it.page.locator("#can details[open] a").first.inner_text()
        _tab_to(it, drill)
        _enter(it, drill)

    visit(browser, place_of(form), look, **PHONE)


def test_the_graph_is_moved_and_searched_by_keys(browser: Chromium, place_of: PlaceOf) -> None:
    """A drill is found by its name; the drawing takes the focus; the drill's page is one Tab away."""

    def look(it: Visit) -> None:
        it.to("graph/clean")
        _tab_to(it, "Find a drill in the drawing", "INPUT")
        it.page.keyboard.type("tall clean")
        it.page.keyboard.press("Enter")
        it.page.locator("#told a").wait_for()
        assert it.page.locator("#told").inner_text().startswith("Chosen: Tall clean, with ")
        _tab_to(it, "Tall clean")
        _enter(it, "Tall clean")

    visit(browser, place_of("file"), look, **PHONE)
