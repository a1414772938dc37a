"""Pages on paper: a drill fits one sheet of either paper; a class keeps within its width, a lifter on one page."""

import io
import re
from collections.abc import Iterator
from pathlib import Path
from unicodedata import normalize

import pytest
from browser import Chromium
from pages_shown import Place, Visit, visit
from pypdf import PdfReader

pytestmark = pytest.mark.no_cover

PAPERS = ("A4", "Letter")

HEAVIEST = 6
"""Drills of the longest texts that the suite prints; the exhaustive run prints all."""

WORDS = re.compile(r"<[^>]+>|\s+")


def _pages(it: Visit, paper: str) -> int:
    return len(PdfReader(io.BytesIO(it.page.pdf(format=paper))).pages)


@pytest.fixture(scope="module")
def heaviest(site: Path) -> list[str]:
    """Every drill, those with the longest pages first."""
    length = {file.stem: len(WORDS.sub("", file.read_text("utf-8"))) for file in (site / "drill").glob("*.html")}
    return sorted(length, key=lambda drill: (-length[drill], drill))


def _too_long(it: Visit, drills: list[str]) -> Iterator[tuple[str, str, int]]:
    for drill in drills:
        it.to(f"drill/{drill}")
        for paper in PAPERS:
            pages = _pages(it, paper)
            if pages != 1:
                yield drill, paper, pages


@pytest.mark.parametrize("many", [HEAVIEST, pytest.param(None, marks=pytest.mark.exhaustive)])
def test_a_drill_fits_one_sheet(many: int | None, browser: Chromium, folder_served: Place, heaviest: list[str]) -> None:
    """On A4 and on letter, whatever it has to say."""
    drills = heaviest[:many]
    for n in range(0, len(drills), 50):  # a visit may not take longer than two minutes
        taken = drills[n : n + 50]
        assert visit(browser, folder_served, lambda it, its=taken: list(_too_long(it, its))) == []


def test_a_drill_of_twice_the_text_does_not(browser: Chromium, folder_served: Place, heaviest: list[str]) -> None:
    """The check above can fail."""

    def look(it: Visit) -> list[int]:
        it.to(f"drill/{heaviest[0]}")
        it.page.evaluate("() => { const text = document.querySelector('.halves'); text.innerHTML += text.innerHTML; }")
        return [_pages(it, paper) for paper in PAPERS]

    assert min(visit(browser, folder_served, look)) > 1


def test_a_class_is_printed_within_its_width(browser: Chromium, folder_served: Place) -> None:
    """The whole chart of the hall stands on the paper, and each lifter's list on one page."""

    def look(it: Visit) -> tuple[list[int], bytes, list[str]]:
        it.to("class")
        it.page.emulate_media(media="print")
        over = []
        for width in (703, 725):  # what A4 and letter leave between the margins, CSS pixels
            it.page.set_viewport_size({"width": width, "height": 900})
            over += it.page.evaluate(
                """(width) => [...document.querySelectorAll("main *")]
                    .map((each) => Math.ceil(each.getBoundingClientRect().right))
                    .filter((right) => right > width + 1)""",
                width,
            )
        return over, it.page.pdf(format="A4"), it.page.locator(".person").all_inner_texts()

    over, paper, people = visit(browser, folder_served, look)
    assert over == []
    pages = [_plain(page.extract_text()) for page in PdfReader(io.BytesIO(paper)).pages]
    assert len(pages) <= 5
    assert len(people) == 12
    for person in people:
        lines = [_plain(line) for line in person.splitlines() if line.strip()]
        assert any(all(line in page for line in lines) for page in pages), person


def _plain(text: str) -> str:
    return re.sub(r"\W+", "", normalize("NFKC", text))  # letters drawn as one (fi) are read as two
