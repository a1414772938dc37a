"""The timer of a session: it keeps the clock's time over a reload, and its figures are read from three metres."""

import re

import pytest
from browser import Chromium
from pages_shown import KINDS, Place, Visit, visit

pytestmark = pytest.mark.no_cover


def test_the_timer_keeps_time_over_a_reload(browser: Chromium, app: Place) -> None:
    """Started, left for ten seconds, reloaded, left for twelve more: it is where the clock is."""

    def look(it: Visit) -> None:
        page = it.page
        page.clock.install(time=0)
        page.clock.pause_at(1_000_000)
        it.to(KINDS["session"])
        left, now = page.locator("#left"), page.locator("#now")
        assert re.fullmatch(r"\d+:\d\d", left.inner_text())
        begun, first = _seconds(left.inner_text()), now.inner_text()
        assert first == page.locator(".card h2 a").first.inner_text()
        page.get_by_role("button", name="Start").click()
        page.clock.run_for(10_000)
        assert _seconds(left.inner_text()) == begun - 10
        page.reload()
        page.clock.run_for(12_000)
        assert _seconds(left.inner_text()) == begun - 22
        page.get_by_role("button", name="Pause").click()
        page.clock.run_for(60_000)
        assert _seconds(left.inner_text()) == begun - 22
        page.get_by_role("button", name="Next").click()
        page.clock.run_for(1_000)
        assert _seconds(left.inner_text()) != begun - 22
        assert page.locator(".card.current").count() == 1

    visit(browser, app, look, service_workers="block", viewport={"width": 390, "height": 844})


def _seconds(clock: str) -> int:
    minutes, seconds = clock.split(":")
    return 60 * int(minutes) + int(seconds)


@pytest.mark.parametrize("width", [390, 1280])
def test_the_figures_are_read_from_three_metres(width: int, browser: Chromium, app: Place) -> None:
    """A figure is at least 1.7 cm high on a phone, and more on a wide screen."""

    def look(it: Visit) -> float:
        it.to(KINDS["session"])
        return it.page.evaluate("parseFloat(getComputedStyle(document.getElementById('left')).fontSize)")

    # common practice, no source: a centimetre of letter for three metres; a figure is about 0.7 of its type's size,
    # and a centimetre 38 CSS pixels
    high = visit(browser, app, look, service_workers="block", viewport={"width": width, "height": 844})
    assert 0.7 * high >= 66
