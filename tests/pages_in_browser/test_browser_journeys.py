"""What a coach, a new lifter's coach and an athlete with a broom do, over every pair of what can differ."""

import io
import re
from collections.abc import Callable
from itertools import combinations, product
from unicodedata import normalize

import pytest
from browser import Chromium
from pages_shown import Place, Row, Visit, visit
from pypdf import PdfReader

from kb.ask import read
from kb.ask.chain import chain
from kb.ask.question import ChainQuestion
from kb.ask.tells import decide
from kb.kit import fit
from kb.show.care import USUAL
from kb.terms import FaultId, ItemId, LiftId

pytestmark = pytest.mark.no_cover

PlaceOf = Callable[[str], Place]

ROWS = [
    # form, px, scheme, script: each pair of values of two columns stands together in some row
    Row("served", 390, "light", True),
    Row("served", 1280, "dark", False),
    Row("http", 390, "dark", False),
    Row("http", 1280, "light", True),
    Row("file", 390, "dark", True),
    Row("file", 1280, "light", False),
]

EACH_ROW = pytest.mark.parametrize("row", ROWS, ids=lambda row: "-".join(map(str, row)))
CRASHES = FaultId("clean-bar-crashes")


def test_the_rows_hold_every_pair() -> None:
    """Every two values of two columns are met together."""
    values = [["served", "http", "file"], [390, 1280], ["light", "dark"], [True, False]]
    for a, b in combinations(range(4), 2):
        assert {(row[a], row[b]) for row in ROWS} == set(product(values[a], values[b]))


@EACH_ROW
def test_a_coach_gets_a_chain_and_prints_it(
    row: Row, browser: Chromium, place_of: PlaceOf, db: read.sqlite3.Connection
) -> None:
    """A fault in words (or by the lists), its tells, a cause, a kit, the chain, on paper."""
    fault = read.fault(db, CRASHES)
    shelf = read.shelf(db, LiftId("clean"))
    expected = chain(shelf, ChainQuestion(fault=CRASHES, cause="drops-away", have=shelf.kits["stick"])).routes[0]

    def look(it: Visit) -> tuple[list[bytes], list[str]]:
        page = it.page
        it.to("home")
        if row.script or row.form == "served":
            page.get_by_label("In your own words").fill("it slams onto her shoulders in the clean")
            page.get_by_role("button", name="Find").click()
        else:
            page.get_by_role("link", name="A fault in class").click()
        page.get_by_role("link", name=fault.name, exact=True).first.click()
        page.wait_for_url(re.compile(CRASHES))
        assert page.locator(".tells > li").count() == len(decide(fault).tells)
        page.locator(".answers a", has_text="drops away").first.click()
        assert page.url.endswith("#drops-away")
        page.locator("#drops-away a.go", has_text="stick").click()
        page.wait_for_url(re.compile("chain"))
        assert page.get_by_role("heading", level=1).inner_text() == fault.name
        shown = page.locator(".reach:visible")
        assert shown.count() == 1
        box = shown.bounding_box()
        assert box is not None
        # what to do now is seen without scrolling
        assert box["y"] + box["height"] < (844 if row.width == 390 else 900)
        assert page.locator(".card h2 a").all_inner_texts() == [entry.drill.name for entry in expected.entries]
        cares = page.locator(".card .care").all_inner_texts()
        return [page.pdf(format=paper) for paper in ("A4", "Letter")], cares

    papers, cares = visit(browser, place_of(row.form), look, **row.options())
    for paper in papers:
        printed = PdfReader(io.BytesIO(paper))
        assert len(printed.pages) in (1, 2)
    # letters drawn as one (fi) are read as two
    said = normalize("NFKC", " ".join(" ".join(page.extract_text() for page in printed.pages).split()))
    for words in (*(entry.drill.name for entry in expected.entries), USUAL, *cares):
        assert words in said
    for left_out in ("At hand", "Print this", "This answer for programs"):
        assert left_out not in said


@EACH_ROW
def test_a_coach_makes_a_path_for_a_new_lifter(row: Row, browser: Chromium, place_of: PlaceOf) -> None:
    """The second door, a lift, the path from nothing with what each step must show, the same with less gear."""

    def look(it: Visit) -> None:
        page = it.page
        it.to("home")
        page.get_by_role("link", name="A new lifter").click()
        page.get_by_role("heading", name="A new lifter").wait_for()
        page.get_by_role("heading", level=2).get_by_role("link", name="Snatch", exact=True).click()
        steps = page.locator(".path > li")
        steps.first.wait_for()
        assert steps.count() > 8
        assert all("Move on when" in step for step in steps.all_inner_texts())
        assert "gateway" in page.locator(".path").inner_text()
        page.get_by_role("link", name=re.compile("From nothing, with the stick")).click()
        page.get_by_role("heading", level=1, name=re.compile("From nothing, with the stick")).wait_for()
        name = page.locator(".path > li a").first.inner_text()
        page.locator(".path > li a").first.click()
        page.get_by_role("heading", level=1, name=name, exact=True).wait_for()
        assert page.get_by_role("heading", name="Do", exact=True).is_visible()

    visit(browser, place_of(row.form), look, **row.options())


@EACH_ROW
def test_an_athlete_with_a_broom_and_a_wall_finds_something_to_do(
    row: Row, browser: Chromium, place_of: PlaceOf, db: read.sqlite3.Connection
) -> None:
    """The third door: two ticks; in a folder without script, a whole kit instead."""
    drills, items = read.drills(db), read.items(db)
    have = frozenset({ItemId("broom"), ItemId("wall")})
    ours = sum(fit(drill, have, items) is not None for drill in drills.values())

    def look(it: Visit) -> None:
        page = it.page
        it.to("home")
        page.get_by_role("link", name="Little equipment").click()
        page.get_by_role("heading", name="What is at hand").wait_for()
        if row.script or row.form == "served":
            page.get_by_label("Broom", exact=True).check()
            page.get_by_label("Wall", exact=True).check()
            page.locator(".submit button").click()
            can = page.locator("#can section h2")
            can.wait_for()
            assert f"{ours} drills" in can.inner_text()
            if row.script and row.form != "file":
                assert page.url.endswith("?have=broom,wall")
            assert page.get_by_label("Broom", exact=True).is_checked()
        else:
            page.get_by_role("link", name="home", exact=True).click()
            page.get_by_role("heading", name=re.compile("With the home kit")).wait_for()
        page.locator("summary", has_text="Positions").click()
        drill = page.locator("#can details[open] a").first
        name = drill.inner_text()
        drill.click()
        page.get_by_role("heading", level=1, name=name, exact=True).wait_for()

    visit(browser, place_of(row.form), look, **row.options())


def test_what_was_ticked_is_kept_on_the_device(browser: Chromium, folder_served: Place) -> None:
    """Ticks come back on the next visit; a kit's own page shows the kit whatever was ticked."""

    def look(it: Visit) -> None:
        it.to("at-hand")
        it.page.get_by_label("Broom", exact=True).check()
        it.to("faults")
        it.to("at-hand")
        ticked = it.page.locator("#at-hand input:checked")
        assert [box.get_attribute("value") for box in ticked.all()] == ["broom"]
        it.to("at-hand/stick")
        assert "stick" in [box.get_attribute("value") for box in ticked.all()]
        assert "With the stick kit" in it.page.locator("#can h2").inner_text()

    visit(browser, folder_served, look)


@pytest.mark.parametrize("form", ["http", "file"])
def test_the_form_for_a_chain_leads_to_a_page_in_a_folder(form: str, browser: Chromium, place_of: PlaceOf) -> None:
    """In a folder the form opens the prepared page for what was chosen."""

    def look(it: Visit) -> None:
        it.to("ask")
        it.page.get_by_label("What you saw").select_option(CRASHES)
        it.page.get_by_label("What is in the room").select_option("stick")
        it.page.get_by_role("button", name="Show the drills").click()
        it.page.wait_for_url(re.compile(f"chain/{CRASHES}"))
        assert "the stick" in it.page.locator(".above").inner_text()

    visit(browser, place_of(form), look)


@pytest.mark.parametrize("script", [True, False])
def test_the_form_for_a_chain_is_answered_when_served(script: bool, browser: Chromium, app: Place) -> None:
    """Minutes, load and gear, as plain GET, with and without script."""

    def look(it: Visit) -> None:
        it.to("ask")
        it.page.get_by_label("What you saw").select_option(CRASHES)
        it.page.get_by_label("Minutes there are").fill("10")
        it.page.get_by_role("button", name="Show the drills").click()
        it.page.locator(".card").first.wait_for()
        assert "minutes=10" in it.page.url

    visit(browser, app, look, java_script_enabled=script)
