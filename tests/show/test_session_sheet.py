"""The sheet of a session, judged from the session: its clock, its parts, what is done and what was left out."""

import io
import re
from functools import cache
from pathlib import Path

import pypdf
import pytest
from browser import Chromium
from click.testing import CliRunner
from sheet_cases import Element, read_page
from small_answers import SMALL, built, small_shelf

from kb.ask import read
from kb.ask.matter import matter_of
from kb.ask.question import ChainQuestion
from kb.ask.session.records import Session
from kb.ask.session.sessions import fault_sessions
from kb.ask.shelf import Shelf
from kb.commands.group import drillpath
from kb.commands.session_asked import with_texts
from kb.loading import Loaded
from kb.make.library import load
from kb.show.care import NO_REVIEW, USUAL
from kb.show.figure.drawing import figure_svg
from kb.show.session_text import Where, session_bars
from kb.show.sheet.session_sheet import session_sheet
from kb.terms import FaultId, LiftId


@cache
def where() -> Where:
    """The small library's whole kit."""
    shelf = small_shelf()
    return Where("full", shelf.kits["full"], shelf.items, shelf.drills)


@cache
def session(minutes: int = 45, fault: str = "clean-bar-crashes") -> Session:
    """A session of the small library, its drills with their text."""
    shelf = small_shelf()
    question = ChainQuestion(fault=FaultId(fault), have=shelf.kits["full"])
    found = fault_sessions(matter_of(shelf, question), minutes, weigh=lambda *_: None)
    db = read.open_catalogue(built() / "out" / "catalogue.db")
    try:
        return with_texts(db, found)[0]
    finally:
        db.close()


def sheet(found: Session) -> Element:
    """A session's sheet, read strictly."""
    return read_page(session_sheet(found, where()))


def test_every_block_is_there_with_its_clock_and_part() -> None:
    """In order, each at its minute and second; the parts headed where they begin."""
    found = session()
    page = sheet(found)
    drills = page.all("li", "drill")
    assert len(drills) == len(found.blocks)
    for block, element in zip(found.blocks, drills, strict=True):
        assert f"{block.start_s // 60}:{block.start_s % 60:02} · " in element.text
        assert block.drill.name in element.text
        assert block.drill.standard.seen in element.text
        assert ("warm-up" in element.classes) == (block.part == "warm-up")
        assert ("Less than the entry asks" in element.text) == block.cut
    headed = [each.text for each in page.all("p", "before")]
    parts = list(dict.fromkeys(block.part for block in found.blocks))
    assert len(headed) == len(parts)
    assert headed[parts.index("lift")] == "The lift"


def test_numbers_are_those_of_the_chart() -> None:
    """A drill has the number of its bar; what stands around the drills has none."""
    found = session()
    page = sheet(found)
    numbered = [
        (int(element.all("span", "number")[0].text), block.drill.name)
        for block, element in zip(found.blocks, page.all("li", "drill"), strict=True)
        if element.all("span", "number")
    ]
    assert numbered == [(n, bar.name) for n, bar in enumerate(session_bars(found), 1)]
    names = dict(numbered)
    for block, element in zip(found.blocks, page.all("li", "drill"), strict=True):
        if "go on to" in element.text:
            goes = int(element.text.split("go on to ")[1].split()[0])
            assert block.if_early == next(each.drill.id for each in found.blocks if each.drill.name == names[goes])


def test_boxes_are_as_many_as_are_counted() -> None:
    """As the standard counts, or all that are done where that is fewer."""
    found = session(20)
    for block, element in zip(found.blocks, sheet(found).all("li", "drill"), strict=True):
        (group,) = element.all("span", "boxes")
        count = len(group.all("input"))
        assert 1 <= count <= block.drill.standard.of


def test_what_was_left_out_is_said_with_its_reason() -> None:
    """And when it ends, the caution, and who has reviewed it."""
    found = session(20)
    text = sheet(found).all("body")[0].text
    ends = 60 * found.minutes - found.spare_s
    assert f"Ends at {ends // 60}:{ends % 60:02}" in text
    for left in found.left_out:
        assert f"{left.drill.name}: {left.why}" in text
    assert USUAL in text
    assert text.endswith(NO_REVIEW)


def test_what_goes_on_the_bar_is_said() -> None:
    """Where it is known: the weight, and the discs of one side."""
    found = session()
    blocks = tuple(
        block._replace(loaded=Loaded(40.0, 20.0, (10.0,))) if block.part == "lift" else block for block in found.blocks
    )
    drill = sheet(found._replace(blocks=blocks)).all("li", "drill")[[block.part for block in blocks].index("lift")]
    assert "40 kg: 10 a side" in drill.text


def test_a_session_without_a_fault_is_named_after_its_lift() -> None:
    """One along a path, or of one's own drills: no cause, no band; and which of several it is."""
    found = session()._replace(fault=None, cause=None, worked=None, n=2, of=3)
    page = sheet(found)
    assert page.all("h1")[0].text == "Clean"
    assert page.all("p", "facts")[0].text == "full kit · 45 min · session 2 of 3"
    assert not page.all("p", "because")
    assert not page.all("rect")


def test_a_fault_worked_on_before_another_is_named() -> None:
    """As in the chain."""
    found = session()
    other = found.fault._replace(id=FaultId("another"), name="Another fault")
    assert "So it works on what comes before it: Another fault." in sheet(found._replace(worked=other)).text


def test_the_command_writes_it(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Beside its answer, for the session asked for; a path that can't be written is one sentence."""
    monkeypatch.setenv("DRILLPATH_LIBRARY", str(built()))
    monkeypatch.chdir(tmp_path)
    asked = ["session", "--fault", "clean-bar-crashes", "--minutes", "45"]
    result = CliRunner().invoke(drillpath, [*asked, "--sheet", "s.html", "--paper", "letter"])
    assert result.exit_code == 0, result.output
    assert result.stderr == "The sheet is in s.html: for a phone, and for letter paper.\n"
    positions = load(SMALL).positions
    figures = {timed.position: figure_svg(positions[timed.position]) for timed in session().lift.timeline}
    assert (tmp_path / "s.html").read_text("utf-8") == session_sheet(session(), where(), "letter", figures=figures)
    result = CliRunner().invoke(drillpath, [*asked, "--sheet", "no/s.html"])
    assert (result.exit_code, result.stdout) == (2, "")
    assert "there is no folder no" in result.stderr


def printed(
    browser: Chromium, db: read.sqlite3.Connection, shelf: Shelf, fault: str, minutes: int, paper: str
) -> tuple[Session, list[str]]:
    """A session of the shipped library, and the letters and figures of its printed pages."""
    question = ChainQuestion(fault=FaultId(fault), have=shelf.kits["full"])
    (found, *_) = with_texts(db, fault_sessions(matter_of(shelf, question), minutes, weigh=lambda *_: None))
    there = Where("full", shelf.kits["full"], shelf.items, read.drills(db))
    figures = {timed.position: figure_svg(read.position(db, timed.position)) for timed in found.lift.timeline}
    pdf = browser.pdf(session_sheet(found, there, paper, figures=figures))
    pages = pypdf.PdfReader(io.BytesIO(pdf)).pages
    return found, [re.sub(r"[^a-z0-9]", "", page.extract_text().lower()) for page in pages]


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_session_is_one_page(
    browser: Chromium, db: read.sqlite3.Connection, shelves: dict[LiftId, Shelf], paper: str
) -> None:
    """Three quarters of an hour: warm-up, four drills and a finish."""
    _, pages = printed(browser, db, shelves[LiftId("clean")], "clean-bar-crashes", 45, paper)
    assert len(pages) == 1


def test_a_longer_one_takes_two_and_no_drill_is_split(
    browser: Chromium, db: read.sqlite3.Connection, shelves: dict[LiftId, Shelf]
) -> None:
    """An hour of the longest chain there is: each drill whole, on one page or the other."""
    found, pages = printed(browser, db, shelves[LiftId("clean-and-jerk")], "jerk-rack-slips", 60, "a4")
    assert 1 <= len(pages) <= 2
    for block in found.blocks:
        standard = re.sub(r"[^a-z0-9]", "", block.drill.standard.seen.lower())
        assert block.part == "warm-up" or any(standard in page for page in pages)
