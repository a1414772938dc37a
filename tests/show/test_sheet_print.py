"""Sheets in a browser: one page of paper in black and grey, and one column on a phone that is easy to read."""

import io
import re
import struct
import subprocess
from pathlib import Path

import pypdf
import pytest
from browser import Chromium
from playwright.sync_api import Page
from sheet_cases import answered, every_chain, longest, made_hostile, made_long

from kb.ask.chain import Chain
from kb.ask.read import sqlite3
from kb.ask.shelf import Shelf
from kb.make.library import Library
from kb.show.care import NO_REVIEW, USUAL
from kb.show.figure.drawing import figure_svg
from kb.show.sheet.chain_sheet import chain_sheet
from kb.terms import LiftId, PositionId

pytestmark = pytest.mark.no_cover

# 12.04 ISO 216: A4 is 210 x 297 mm; letter is 8.5 x 11 in
PAPERS = {"a4": (210 / 25.4 * 72, 297 / 25.4 * 72), "letter": (8.5 * 72, 11 * 72)}
"""Sizes in points."""

LIFTS = ("snatch", "clean", "jerk", "clean-and-jerk")

Shelves = dict[LiftId, Shelf]
Figures = dict[PositionId, str]


@pytest.fixture(scope="module")
def chains(db: sqlite3.Connection, shelves: Shelves) -> dict[str, list[Chain]]:
    """The chain for every fault and cause of each lift."""
    return {lift: every_chain(db, shelves[LiftId(lift)]) for lift in LIFTS}


@pytest.fixture(scope="module")
def longest_chains(chains: dict[str, list[Chain]]) -> dict[str, Chain]:
    """The longest shipped chain of each lift."""
    return {lift: longest(found) for lift, found in chains.items()}


@pytest.fixture(scope="module")
def figures(library: Library) -> Figures:
    """The picture of every position."""
    return {each.id: figure_svg(each) for each in library.positions.values()}


def pages(pdf: bytes) -> list[pypdf.PageObject]:
    """The pages of a printed sheet."""
    return list(pypdf.PdfReader(io.BytesIO(pdf)).pages)


def words(text: str) -> str:
    """Letters and figures alone: a printed page breaks lines as it likes."""
    return re.sub(r"[^a-z0-9]", "", text.lower())


def assert_one_page(browser: Chromium, found: Chain, paper: str, figures: Figures) -> bytes:
    """A sheet takes one page of its paper, its last line on it; the PDF."""
    pdf = browser.pdf(chain_sheet(found, "full", paper, figures=figures))
    (page,) = pages(pdf)
    width, height = PAPERS[paper]
    assert float(page.mediabox.width) == pytest.approx(width, abs=1)
    assert float(page.mediabox.height) == pytest.approx(height, abs=1)
    assert words(NO_REVIEW) in words(page.extract_text())
    return pdf


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("lift", LIFTS)
def test_the_longest_chain_of_each_lift_is_one_page(
    browser: Chromium, longest_chains: dict[str, Chain], figures: Figures, lift: str, paper: str
) -> None:
    """With each drill's name, standard and first cue, the caution and the truth about reviews."""
    found = longest_chains[lift]
    text = words(pages(assert_one_page(browser, found, paper, figures))[0].extract_text())
    for entry in found.routes[0].entries:
        assert words(entry.drill.name) in text
        assert words(entry.drill.standard.seen) in text
        assert words(entry.drill.cues[0]) in text
    assert words(USUAL) in text
    assert words(found.matter.fault.name) in text


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("lift", ["snatch", "clean-and-jerk"])
def test_eight_drills_are_one_page_whichever_they_are(
    browser: Chromium, chains: dict[str, list[Chain]], figures: Figures, lift: str, paper: str
) -> None:
    """PAGES: one page for a chain of up to eight drills. Here the eight wordiest of a lift, half of them work."""
    assert_one_page(browser, made_long(chains[lift], 8), paper, figures)


def test_more_than_eight_take_more_pages_and_no_drill_is_split(
    browser: Chromium, chains: dict[str, list[Chain]]
) -> None:
    """What can't be one page says everything, each drill whole on one page."""
    found = made_long(chains["clean-and-jerk"], 14)
    texts = [words(page.extract_text()) for page in pages(browser.pdf(chain_sheet(found, "full")))]
    assert len(texts) > 1
    for entry in found.routes[0].entries:
        assert any(words(entry.drill.standard.seen) in text and words(entry.drill.name) in text for text in texts)


def test_a_sheet_is_printed_in_black_and_grey(
    browser: Chromium, longest_chains: dict[str, Chain], figures: Figures, tmp_path: Path
) -> None:
    """Every point of the printed page has the same red, green and blue; and it isn't blank."""
    path = tmp_path / "sheet.pdf"
    path.write_bytes(browser.pdf(chain_sheet(longest_chains["clean-and-jerk"], "full", figures=figures)))
    subprocess.run(["pdftoppm", "-r", "50", path, tmp_path / "page"], check=True, capture_output=True)
    (picture,) = tmp_path.glob("page*.ppm")
    header = re.match(rb"P6\s+(\d+)\s+(\d+)\s+255\s", picture.read_bytes())
    assert header is not None
    points = picture.read_bytes()[header.end() :]
    red, green, blue = points[0::3], points[1::3], points[2::3]
    assert red == green == blue
    assert 0.02 < sum(point < 128 for point in red) / len(red) < 0.3


def test_paper_is_white_in_a_dark_scheme_too(browser: Chromium, longest_chains: dict[str, Chain]) -> None:
    """Nobody prints a black page."""
    html = chain_sheet(longest_chains["clean"], "full")
    look = "() => getComputedStyle(document.documentElement).getPropertyValue('--paper')"
    assert browser.evaluate(html, look, media="print", scheme="dark").strip() == "#fff"


OVERLAPS = """() => {
  const boxes = [...document.querySelectorAll('h1, h2, p, .do, .reach')]
    .filter(each => each.getClientRects().length && getComputedStyle(each).display !== 'inline'
                    && getComputedStyle(each).position !== 'absolute')
    .map(each => [each, each.getBoundingClientRect()]);
  const found = [];
  for (const [n, [a, x]] of boxes.entries())
    for (const [b, y] of boxes.slice(n + 1))
      if (!a.contains(b) && !b.contains(a) && x.left < y.right - 1 && y.left < x.right - 1
          && x.top < y.bottom - 1 && y.top < x.bottom - 1)
        found.push([a.textContent.slice(0, 40), b.textContent.slice(0, 40)]);
  return found;
}"""

OUTSIDE = """() => [...document.querySelectorAll('main *')]
  .filter(each => each.getClientRects().length && !each.closest('.heard, defs, title, desc, .lifter'))
  .filter(each => { const box = each.getBoundingClientRect(); return box.left < -1 || box.right > innerWidth + 1; })
  .map(each => each.outerHTML.slice(0, 80))"""

CHART_TEXTS = """() => [...document.querySelectorAll('.reach')].filter(each => each.getClientRects().length)
  .flatMap(svg => { const edge = svg.getBoundingClientRect();
    const boxes = [...svg.querySelectorAll('text')].map(each => [each.textContent, each.getBoundingClientRect()]);
    const out = boxes.filter(([, box]) => box.left < edge.left - 1 || box.right > edge.right + 1).map(([text]) => text);
    for (const [n, [a, x]] of boxes.entries())
      for (const [b, y] of boxes.slice(n + 1))
        if (x.left < y.right - 1 && y.left < x.right - 1 && x.top < y.bottom - 3 && y.top < x.bottom - 3)
          out.push(a + ' / ' + b);
    return out; })"""


VIEWS = ((390, "screen"), (320, "screen"), (1280, "screen"), (711, "print"))
"""Widths of a phone, a narrow one, a screen, and A4 between its margins, CSS pixels."""


@pytest.mark.parametrize("lift", LIFTS)
def test_nothing_overlaps_and_nothing_is_cut(
    browser: Chromium, longest_chains: dict[str, Chain], figures: Figures, lift: str
) -> None:
    """On phones, a screen and paper: no text over another, none past the edge, nothing to scroll sideways."""

    def look(page: Page) -> dict[tuple[int, str], list[object]]:
        found = {}
        for width, media in VIEWS:
            page.set_viewport_size({"width": width, "height": 844})
            page.emulate_media(media=media)
            wide = page.evaluate("() => document.documentElement.scrollWidth")
            found[width, media] = [page.evaluate(each) for each in (OVERLAPS, OUTSIDE, CHART_TEXTS)] + [wide <= width]
        return found

    seen = browser.on_page(chain_sheet(longest_chains[lift], "full", figures=figures), look)
    assert seen == {view: [[], [], [], True] for view in VIEWS}


def test_a_phone_shows_large_type_in_one_column(browser: Chromium, longest_chains: dict[str, Chain]) -> None:
    """At 390 px: no text under 14 px (labels of the chart) or 16 (all else), and boxes to tick that a finger meets."""
    script = """() => [
        [...document.querySelectorAll('main :is(p, h1, h2, li, span, text)')]
          .filter(each => each.getClientRects().length && !each.closest('.heard'))
          .map(each => [each.tagName, parseFloat(getComputedStyle(each).fontSize)
                        * (each.ownerSVGElement ? each.getCTM().a : 1)]),
        [...document.querySelectorAll('input')].map(each => each.getBoundingClientRect().toJSON()),
        [...new Set([...document.querySelectorAll('.drill')].map(each => each.getBoundingClientRect().left))],
    ]"""
    sizes, boxes, columns = browser.evaluate(chain_sheet(longest_chains["clean-and-jerk"], "full"), script)
    assert min(size for tag, size in sizes if tag != "text") >= 16
    assert min(size for tag, size in sizes if tag == "text") >= 13.8
    # 12.03 WCAG 2.2 SC 2.5.8: targets at least 24 by 24 CSS px
    assert boxes
    assert all(box["width"] >= 24 and box["height"] >= 24 for box in boxes)
    assert len(columns) == 1


def luminance(colour: tuple[float, float, float]) -> float:
    """Relative luminance of sRGB in 0 to 255 (WCAG 2.2, definition)."""
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in (part / 255 for part in colour)]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(a: tuple[float, float, float], b: tuple[float, float, float]) -> float:
    """The contrast ratio of two colours (WCAG 2.2, definition)."""
    high, low = sorted((luminance(a), luminance(b)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_the_contrast_here_is_wcags() -> None:
    """12.02: ratios on white as published: 000000 21.0, 767676 4.54, 777777 4.48, FF0000 3.998, 0000FF 8.59."""
    white = (255, 255, 255)
    for grey, ratio in ((0x00, 21.0), (0x76, 4.54), (0x77, 4.48), (0x94, 3.03), (0x95, 2.995)):
        assert contrast((grey,) * 3, white) == pytest.approx(ratio, abs=0.01)
    assert contrast((255, 0, 0), white) == pytest.approx(3.998, abs=0.001)
    assert contrast((0, 0, 255), white) == pytest.approx(8.59, abs=0.01)


COLOURS = """() => {
  const numbers = text => (text.match(/[\\d.]+/g) || []).map(Number).slice(0, 3);
  const paper = numbers(getComputedStyle(document.body).backgroundColor);
  return [...document.querySelectorAll('main :is(p, h1, h2, li, span, text)')]
    .filter(each => each.getClientRects().length)
    .map(each => [each, getComputedStyle(each)])
    .map(([each, style]) => [each.textContent.slice(0, 30), each.ownerSVGElement ? style.fill : style.color])
    .map(([text, ink]) => [text, numbers(ink), paper]);
}"""


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_every_text_stands_out_from_the_paper(browser: Chromium, longest_chains: dict[str, Chain], scheme: str) -> None:
    """12.01: at least 4.5 to 1 whatever its size, and 7 to 1 for all but the labels; in either scheme."""
    html = chain_sheet(longest_chains["snatch"], "stick")
    seen = browser.evaluate(html, COLOURS, scheme=scheme)
    assert len(seen) > 40
    papers = {tuple(paper) for _, _, paper in seen}
    assert len(papers) == 1
    assert (luminance(papers.pop()) > 0.5) == (scheme == "light")
    assert min(contrast(tuple(ink), tuple(paper)) for _, ink, paper in seen) >= 4.5
    assert sum(contrast(tuple(ink), tuple(paper)) >= 7 for _, ink, paper in seen) >= 0.9 * len(seen)


def test_hostile_text_stays_text(browser: Chromium, longest_chains: dict[str, Chain]) -> None:
    """Nothing that an entry holds runs, is fetched, or changes how the page looks."""
    hostile = made_hostile(longest_chains["clean"])
    look = """() => [document.title, document.querySelectorAll('script, img, a').length,
        getComputedStyle(document.body).display, document.documentElement.scrollWidth]"""
    title, elements, display, width = browser.evaluate(chain_sheet(hostile, "full"), look)
    assert title.startswith("<script>")
    assert (elements, display) == (0, "block")
    assert width <= 390
    assert browser.asked == []


def test_the_page_uses_its_own_style_under_its_own_policy(browser: Chromium, longest_chains: dict[str, Chain]) -> None:
    """The policy's digest is the stylesheet's, or the page would come out bare; nothing else is asked for."""
    html = chain_sheet(longest_chains["clean"], "full")
    assert browser.evaluate(html, "() => getComputedStyle(document.body).fontSize") == "18px"
    assert browser.asked == []


def test_a_box_can_be_ticked(browser: Chromium, db: sqlite3.Connection, shelves: Shelves) -> None:
    """With a finger or the keyboard, without script."""
    html = chain_sheet(answered(db, shelves[LiftId("clean")], "clean-bar-crashes"), "full")

    def tick(page: Page) -> object:
        page.locator("input").first.check()
        return page.evaluate("() => document.querySelectorAll('input:checked').length")

    assert browser.on_page(html, tick) == 1


def test_the_whole_phone_page_can_be_pictured(browser: Chromium, longest_chains: dict[str, Chain]) -> None:
    """A picture 390 px wide: no wider than the phone."""
    picture = browser.picture(chain_sheet(longest_chains["jerk"], "full"))
    width, height = struct.unpack(">II", picture[16:24])
    assert width == 390
    assert height > 844


@pytest.mark.exhaustive
@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("lift", LIFTS)
def test_every_shipped_chain_is_one_page(
    browser: Chromium, db: sqlite3.Connection, shelves: Shelves, figures: Figures, lift: str, paper: str
) -> None:
    """Every fault, cause and two kits; what comes out alike is printed once."""
    found = every_chain(db, shelves[LiftId(lift)], ("full", "home"))
    sheets = {chain_sheet(each, "full", paper): each for each in found}
    for each in sheets.values():
        assert_one_page(browser, each, paper, figures)
    print(f"{lift}, {paper}: {len(found)} chains, {len(sheets)} sheets")  # noqa: T201
