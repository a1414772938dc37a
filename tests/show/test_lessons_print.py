"""Lessons in a browser: a page of paper for each and one to take home, and one column on a phone."""

import io
from pathlib import Path

import pypdf
import pytest
from browser import Chromium
from click.testing import CliRunner

from kb.commands.group import drillpath


@pytest.mark.no_cover
@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize(
    ("lift", "count", "more"),
    [
        ("clean", 1, ("--minutes", "45", "--stiff", "wrist")),
        ("snatch", 3, ("--minutes", "60", "--stiff", "ankle,shoulder", "--start", "2026-03-02")),
        ("clean-and-jerk", 2, ("--minutes", "90", "--kit", "hall", "--home-kit", "home")),
    ],
)
def test_a_lesson_prints_on_one_page(
    browser: Chromium, tmp_path: Path, lift: str, count: int, more: tuple[str, ...], paper: str
) -> None:
    """The fullest too; nothing is fetched for it, and a phone need not scroll sideways."""
    sheet = tmp_path / "lessons.html"
    asked = [lift, "--lessons", str(count), *more, "--sheet", str(sheet), "--paper", paper]
    assert CliRunner().invoke(drillpath, ["plan", *asked]).exit_code == 0
    html = sheet.read_text("utf-8")
    pages = [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(browser.pdf(html))).pages]
    assert len(pages) == count + 1
    assert all(f"Lesson {n}" in page for n, page in enumerate(pages[:-1], 1))
    assert "To take home" in pages[-1]
    assert browser.asked == []
    assert browser.evaluate(html, "() => document.documentElement.scrollWidth", width=390) <= 390
