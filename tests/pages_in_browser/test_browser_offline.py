"""After one visit the pages are there without any signal; a new version replaces the old one as a whole."""

import re
import shutil
from contextlib import ExitStack
from pathlib import Path

import pytest
from browser import Chromium
from pages_shown import Visit, over_app, over_http, visit

pytestmark = pytest.mark.no_cover

WAIT_UNTIL_KEPT = """async (version) => {
  const kept = async () => {
    const names = (await caches.keys()).filter((name) => name.startsWith("drillpath-"));
    if (names.length !== 1 || (version && names[0] !== `drillpath-${version}`)) return false;
    const text = await (await fetch("sw.js", { cache: "no-store" })).text();
    const { first, rest } = JSON.parse(text.split("\\n", 1)[0].replace(/^[^=]*= /, "").replace(/;$/, ""));
    const many = (await (await caches.open(names[0])).keys()).length;
    return many >= new Set([...first, ...rest]).size && navigator.serviceWorker.controller !== null;
  };
  while (!(await kept())) await new Promise((go) => setTimeout(go, 50));
}"""
"""Comes back when every page of a version is kept."""


NEW = "f" * 16


@pytest.mark.parametrize("form", ["served", "http"])
def test_all_pages_are_there_after_one_visit(form: str, browser: Chromium, small: Path, small_site: Path) -> None:
    """One page is visited, the rest is kept, the server goes away: what was never seen opens, and search works."""
    server = ExitStack()
    place = server.enter_context(over_app(small) if form == "served" else over_http(small_site))

    def look(it: Visit) -> None:
        page = it.page
        it.to("home")
        page.evaluate(WAIT_UNTIL_KEPT, None)
        it.context.set_offline(True)
        server.close()
        it.to("fault/clean-bar-crashes")
        assert page.get_by_role("heading", level=1).inner_text() == "The bar crashes onto the shoulders"
        page.locator("a.go").first.click()
        page.wait_for_url(re.compile("chain/"))
        page.locator("main h1").wait_for()
        it.to("home")
        page.get_by_label("In your own words").fill("hips shoot up first")
        page.get_by_role("button", name="Find").click()
        page.locator("#found a").first.wait_for()
        it.to("at-hand")
        page.get_by_label("Broom", exact=True).check()
        page.locator("#can summary").first.wait_for()
        # words in the address, which only the server could answer, are answered by the page's own search
        it.to("find", "?q=hips+shoot+up+first")
        page.locator("#found a").first.wait_for()

    with server:
        visit(browser, place, look)


def test_a_new_version_replaces_the_old_one(browser: Chromium, small_site: Path, tmp_path: Path) -> None:
    """What was kept of the old library is gone after a visit with signal, and nothing is mixed."""
    folder = tmp_path / "site"
    shutil.copytree(small_site, folder)

    def renew() -> None:
        worker = folder / "sw.js"
        version = re.search(r'"version":"(\w+)"', worker.read_text("utf-8"))
        assert version is not None
        worker.write_text(worker.read_text("utf-8").replace(version[1], "f" * 16), "utf-8")
        for page in folder.rglob("*.html"):
            page.write_text(page.read_text("utf-8").replace("</h1>", " (new)</h1>"), "utf-8")

    def look(it: Visit) -> None:
        it.to("home")
        it.page.evaluate(WAIT_UNTIL_KEPT, None)
        renew()
        it.to("home")
        it.page.evaluate(WAIT_UNTIL_KEPT, NEW)
        it.to("fault/clean-bar-crashes")
        assert it.page.get_by_role("heading", level=1).inner_text().endswith("(new)")

    with over_http(folder) as place:
        visit(browser, place, look)
