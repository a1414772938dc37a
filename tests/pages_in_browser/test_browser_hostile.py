"""Entries whose text means harm: it is shown as text, on every page and in every answer for programs."""

import json
import re
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest
from browser import Chromium
from hostile_library import HARM, hostile
from pages_shown import Place, Visit, over_app, visit

from kb.ask import read
from kb.make import catalogue as made
from kb.show.page.site import write_site

pytestmark = pytest.mark.no_cover


@pytest.fixture(scope="module")
def harmful(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A catalogue of it."""
    path = tmp_path_factory.mktemp("hostile") / "catalogue.db"
    made.write(hostile(), path)
    return path


@pytest.fixture(scope="module")
def harmful_site(harmful: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Its pages, written as files."""
    folder = tmp_path_factory.mktemp("hostile-site") / "site"
    with closing(read.open_catalogue(harmful)) as db:
        write_site(db, folder)
    return folder


@pytest.fixture(scope="module")
def harmful_app(harmful: Path) -> Iterator[Place]:
    """Its pages, served."""
    with over_app(harmful) as place:
        yield place


HARMLESS = """() => {
  const values = (name) => [...document.querySelectorAll(`[${name}]`)].map((each) => each.getAttribute(name));
  const handled = (each) => [...each.attributes].some((one) => one.name.startsWith("on"));
  return {
    scripts: [...document.scripts].map((each) => each.getAttribute("src")),
    handlers: [...document.querySelectorAll("*")].filter(handled).length,
    links: ["href", "src", "action"].flatMap(values),
  };
}"""

NOTE = "window.harms = 0; window.harmed = () => { window.harms += 1; };"


def test_harm_is_shown_as_text_on_every_page(browser: Chromium, harmful_site: Path) -> None:
    """No script of an entry's runs, no link of its runs one, nothing is asked of anyone else."""
    place = Place(harmful_site.as_uri() + "/", files=True)
    kinds: dict[Path, list[Path]] = {}
    for path in sorted(harmful_site.rglob("*.html")):
        kinds.setdefault(path.parent, []).append(path)
    # every page that is alone of its kind, the first few of the others
    pages = [path for kind, its in kinds.items() for path in (its if kind == harmful_site else its[:4])]
    assert len(pages) > 40

    def look(it: Visit) -> None:
        it.context.add_init_script(NOTE)
        shown = 0
        for path in pages:
            it.page.goto(path.as_uri())
            found = it.page.evaluate(HARMLESS)
            assert it.page.evaluate("window.harms") == 0, path
            assert found["handlers"] == 0, path
            assert all(re.fullmatch(r"(\.\./)*assets/[a-z-]+(\.min)?\.js", src or "") for src in found["scripts"]), path
            for link in found["links"]:
                assert not re.match(r"\s*(javascript|data|vbscript|https?|file):|//", link, re.I), (path, link)
            shown += "<script>harmed()" in it.page.locator("main").inner_text()
        assert shown > 30  # it was there to be seen

    visit(browser, place, look)


def test_harm_does_nothing_in_what_script_writes(browser: Chromium, harmful_site: Path) -> None:
    """Search and what is at hand write the same names, as text."""

    def look(it: Visit) -> None:
        it.context.add_init_script(NOTE)
        it.to("find", "?q=bar+crashes+</script><script>harmed()</script>")
        it.page.locator("#found a").first.wait_for()
        it.to("at-hand")
        for box in it.page.locator("#at-hand input[type=checkbox]").all():
            box.check()
        it.page.locator("#can summary").first.click()
        assert "<script>" in it.page.locator("#can").inner_text()
        it.to("graph/clean")
        it.page.locator("#graph canvas").wait_for()
        it.page.locator("#node").fill("tall")
        it.page.get_by_role("button", name="Show").click()
        it.page.locator("#told a").wait_for()
        assert it.page.evaluate("window.harms") == 0

    visit(browser, Place(harmful_site.as_uri() + "/", files=True), look)


def test_harm_is_data_in_every_answer_for_programs(harmful_site: Path) -> None:
    """Each file is JSON that holds the text as it is."""
    held = 0
    for path in harmful_site.rglob("*.json"):
        held += HARM in json.dumps(json.loads(path.read_text("utf-8")), ensure_ascii=False).replace('\\"', '"')
    assert held > 20


@pytest.mark.parametrize("path", ["drill/tall-clean.json", "fault/clean-bar-crashes.json", "find.json?q=bar"])
def test_harm_is_data_where_a_browser_opens_it(path: str, browser: Chromium, harmful_app: Place) -> None:
    """An answer for programs is never taken for a page, though it holds one."""

    def look(it: Visit) -> str:
        it.context.add_init_script(NOTE)
        it.context.route("**/favicon.ico", lambda route: route.fulfill(status=204))  # no icon is named in it
        it.page.goto(it.place.at(path))
        assert it.page.evaluate("window.harms") == 0
        assert it.page.locator("script, img").count() == 0
        it.page.wait_for_load_state("networkidle")
        return it.page.evaluate("document.contentType")

    assert visit(browser, harmful_app, look, service_workers="block") == "application/json"


@pytest.mark.parametrize(
    ("path", "query"),
    [
        ("find", "?q=%3C/script%3E%3Cscript%3Eharmed()%3C/script%3E"),
        ("find", "?q=%22%3E%3Cimg%20src=x%20onerror=harmed()%3E"),
        ("ask", "?fault=%3Cscript%3Eharmed()%3C/script%3E"),
        ("ask", "?fault=clean-bar-crashes&minutes=%22onfocus=%22harmed()%22autofocus=%22"),
        ("at-hand", "?have=%3Cscript%3Eharmed()%3C/script%3E"),
        ("drill/%3Cscript%3Eharmed()%3C%2Fscript%3E", ""),
        ("fault/..%2F..%2Fetc%2Fpasswd", ""),
        ("assets/..%2Fsite.py", ""),
        ("fault/clean-bar-crashes", ""),
        ("drill/tall-clean", ""),
    ],
)
def test_harm_in_an_address_is_text(path: str, query: str, browser: Chromium, harmful_app: Place) -> None:
    """A hostile question gets a plain page with the right status, and runs nothing."""

    def look(it: Visit) -> None:
        it.context.add_init_script(NOTE)
        answer = it.page.goto(it.place.at(path, query))
        assert answer is not None
        assert answer.status in (200, 400, 404)
        it.page.wait_for_load_state("networkidle")
        assert it.page.evaluate("window.harms") == 0
        assert it.page.evaluate(HARMLESS)["handlers"] == 0
        it.complaints[:] = [each for each in it.complaints if f"status of {answer.status}" not in each]

    visit(browser, harmful_app, look, service_workers="block")
