"""Sheets as text: what stands on them, judged from the chain; and how they come to a file."""

import os
import re
import stat
from base64 import b64encode
from collections.abc import Iterator
from hashlib import sha256
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from hypothesis import given, settings
from hypothesis import strategies as st
from sheet_cases import EVIL, Element, answered, every_chain, made_hostile, made_long, read_page
from small_answers import SMALL, built, small_chain

from kb.ask.chain import Chain
from kb.ask.read import sqlite3
from kb.ask.shelf import Shelf
from kb.commands.group import drillpath
from kb.make.library import Library, load
from kb.show.care import ASK_FIRST, NO_REVIEW, USUAL
from kb.show.coach_words import human
from kb.show.figure.drawing import figure_svg
from kb.show.sheet.chain_sheet import chain_sheet
from kb.show.sheet.fit import DETAILS, PAPERS, WAYS, Fixed, fit_of
from kb.show.sheet.letters import lines_of, wide
from kb.show.sheet.sheet import stylesheet
from kb.show.sheet.told import Told
from kb.terms import LiftId

Shelves = dict[LiftId, Shelf]

CRASH = small_chain("clean-bar-crashes")


def sheet(found: Chain, kit: str | None = "full", paper: str = "a4") -> Element:
    """A chain's sheet, read strictly."""
    return read_page(chain_sheet(found, kit, paper))


def drills(page: Element) -> list[Element]:
    """The drills of a sheet, in order."""
    return page.all("li", "drill")


def body(page: Element) -> str:
    """The words that are shown."""
    return page.all("body")[0].text


def test_it_begins_with_what_was_seen_and_ends_with_the_truth() -> None:
    """Title, facts, cause, chart, what to fetch, the caution before the drills; who has reviewed it, last."""
    text = body(sheet(CRASH))
    chain_name, cause = CRASH.matter.fault.name, CRASH.matter.cause
    order = [chain_name, "Clean · light bar · full kit · ", f"Because: {human(cause.id)}", cause.text, "Fetch", USUAL]
    order += [CRASH.routes[0].entries[0].drill.standard.seen, NO_REVIEW]
    places = [text.index(each) for each in order]
    assert places == sorted(places)
    assert text.endswith(NO_REVIEW)
    assert "your gear" in body(sheet(CRASH, None))


def test_each_drill_has_all_that_a_coach_needs() -> None:
    """Its number, minutes, dose, steps, what to look for, cues, standard and easier version, in the chain's order."""
    entries = CRASH.routes[0].entries
    found = drills(sheet(CRASH))
    assert len(found) == len(entries)
    for n, (entry, element) in enumerate(zip(entries, found, strict=True), 1):
        drill, text = entry.drill, element.text
        assert text.index(f"{n} {drill.name}") < text.index(f"{-(-entry.seconds // 60)} min")
        assert ("check" in element.classes) == (not entry.work)
        assert drill.standard.seen in text
        assert all(f"“{cue}”" in text for cue in drill.cues)
        for line in drill.sections["Do"].splitlines():
            assert re.sub(r"^\d+\. ", "", line) in text
        assert " ".join(drill.sections["Look for"].split()) in text
        assert f"Gear: {entry.gear[0].using}" in text


def boxes(element: Element) -> list[int]:
    """How many boxes each group of a drill has."""
    return [len(group.all("input")) for group in element.all("span", "boxes")]


def test_there_are_as_many_boxes_as_the_standard_counts(db: sqlite3.Connection, shelves: Shelves) -> None:
    """Of a check first those of its one round, then those of the work it becomes."""
    for found in every_chain(db, shelves[LiftId("snatch")], causes=1)[::2]:
        for entry, element in zip(found.routes[0].entries, drills(sheet(found)), strict=True):
            of, tries = entry.drill.standard.of, entry.drill.dose.reps * entry.drill.dose.sides
            if entry.work:
                assert boxes(element) == [of]
                assert f"{entry.drill.standard.count} of {of}: " in element.text
            else:
                assert boxes(element) == [of if of <= tries else max(1, tries), of]
                assert "Otherwise work on it" in element.text
        for group in sheet(found).all("span", "boxes"):
            assert group.attributes["role"] == "group"
            assert (group.attributes["aria-label"] or "").startswith("Tick what counted: ")


def test_early_goes_on_and_not_goes_back(db: sqlite3.Connection, shelves: Shelves) -> None:
    """Work done early goes on to the next number, never past the last; an easier version only with its gear there."""
    found = answered(db, shelves[LiftId("clean")], "clean-bar-crashes", "home")
    route, have = found.routes[0], found.matter.question.have
    for n, (entry, element) in enumerate(zip(route.entries, drills(sheet(found)), strict=True), 1):
        last = n == len(route.entries)
        assert (f"go on to {n + 1}" in element.text) == (entry.work and not last)
        easier = [
            shelves[LiftId("clean")].drills[each.drill]
            for each in entry.drill.regressions
            if each.drill in shelves[LiftId("clean")].drills
        ]
        if easier and set(easier[0].equipment) <= have:
            assert f"If not {easier[0].name}: " in element.text


def test_an_earlier_cause_says_what_is_worked_on(db: sqlite3.Connection, shelves: Shelves) -> None:
    """And its band is the earlier fault's."""
    shelf = shelves[LiftId("clean")]
    fault, cause = next(
        (fault, cause) for fault in shelf.faults.values() for cause in fault.causes if cause.earlier in shelf.faults
    )
    page = sheet(answered(db, shelf, fault.id, cause=cause.id))
    assert f"So the chain works on what comes before it: {shelf.faults[cause.earlier].name}" in body(page)


def test_sittings_say_where_they_begin(db: sqlite3.Connection, shelves: Shelves) -> None:
    """What doesn't fit one is cut, and the sheet says so above and where the second begins."""
    found = answered(db, shelves[LiftId("snatch")], "bar-forward-overhead", seconds=480)
    ways = found.routes[0].sittings
    assert len(ways) > 1
    page = sheet(found)
    assert f"{len(ways)} sittings: drills 1 to {ways[0][1]} (" in body(page)
    begins = [each.text for each in page.all("p", "before")]
    assert begins == [
        f"Sitting {n}: begin with {first + 1} again, as a check." for n, (first, _) in enumerate(ways[1:], 2)
    ]
    assert drills(page)[ways[1][0] + 1].text.startswith(begins[0])


def test_what_takes_weeks_and_who_should_ask_are_said(db: sqlite3.Connection, shelves: Shelves) -> None:
    """Mobility and strength come slowly; where the breath is held the sheet says whom to ask."""
    page = sheet(answered(db, shelves[LiftId("jerk")], "jerk-press-out", cause="stiff-shoulders"))
    text = body(page)
    assert text.count("Mobility comes slowly: do the opening on most days") == 1
    assert text.index("Because") < text.index("Mobility comes slowly") < text.index("Fetch")
    assert ASK_FIRST in text
    assert ASK_FIRST not in body(sheet(CRASH)) or any("breath" in e.drill.cautions for e in CRASH.routes[0].entries)


def test_strengthening_is_told_in_full() -> None:
    """After the drills a paragraph each: how much, how heavy, what to say, when to move on, what to mind."""
    found = small_chain("hips-rise-first", cause="weak-legs-off-floor")
    first, squat, *_ = [each.text for each in sheet(found).all("p", "after")]
    assert "the main work, over weeks" in first
    assert squat.startswith("Back squat: ")
    for part in ("rest", "working weight", "Say “", "Move on when", "Gear: ", "Mind: "):
        assert part in squat


def test_what_a_stand_in_loses_is_said_once(db: sqlite3.Connection, shelves: Shelves) -> None:
    """Where its gear isn't there."""
    page = sheet(answered(db, shelves[LiftId("clean")], "clean-bar-crashes", "stick"), "stick")
    lost = [each.text for each in page.all("p", "lost")]
    assert lost
    assert len(set(lost)) == len(lost)


def test_the_chart_is_there_for_eyes_and_ears() -> None:
    """Both forms, and its bars as a list."""
    page = sheet(CRASH)
    (figure,) = page.all("figure")
    assert len(figure.all("svg")) == 2
    assert len(figure.all("ol", "heard")[0].all("li")) == len(CRASH.routes[0].entries)


def test_pictures_give_way_to_larger_text(db: sqlite3.Connection, library: Library, shelves: Shelves) -> None:
    """A short chain has them in both forms; a long one, which would be set small, on the phone alone."""
    figures = {each.id: figure_svg(each) for each in library.positions.values()}
    short = answered(db, shelves[LiftId("clean")], "clean-bar-crashes")
    long = made_long(every_chain(db, shelves[LiftId("clean")], causes=1), 8)
    for found, printed in ((short, 6), (long, 0)):
        svgs = read_page(chain_sheet(found, "full", figures=figures)).all("figure")[0].all("svg", "reach")
        assert [len(each.all("svg", "lifter")) for each in svgs] == [6, printed]


def test_every_id_is_the_only_one_and_every_name_leads_to_one(library: Library) -> None:
    """Two forms of a chart and their pictures stand on one page, and no part of one borrows from another."""
    figures = {each.id: figure_svg(each) for each in library.positions.values()}
    everything = read_page(chain_sheet(CRASH, "full", figures=figures)).all()
    ids = [each.attributes["id"] for each in everything if "id" in each.attributes]
    assert len(set(ids)) == len(ids)
    named = [name for each in everything for name in (each.attributes.get("aria-labelledby") or "").split()]
    used = [(each.attributes.get("href") or "#").removeprefix("#") for each in everything if each.name == "use"]
    assert named
    assert used
    assert set(named) | set(used) <= set(ids)


def test_a_strict_policy_can_stand() -> None:
    """No script, no style in an element, one stylesheet, which the policy names by its digest."""
    html = chain_sheet(CRASH, "full")
    page = read_page(html)
    assert not page.all("script")
    everything = page.all()
    assert not any("style" in each.attributes for each in everything)
    assert not any(key.startswith("on") for each in everything for key in each.attributes)
    (style,) = re.findall(r"<style>(.*?)</style>", html, re.DOTALL)
    digest = b64encode(sha256(style.encode()).digest()).decode()
    (policy,) = [each.attributes["content"] for each in page.all("meta") if "http-equiv" in each.attributes]
    assert policy == f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"
    assert style.startswith(stylesheet())
    assert "http:" not in html.replace("http://www.w3.org/2000/svg", "")


def test_hostile_text_is_text() -> None:
    """Whatever an entry holds is read back as it was, never as an element."""
    html = chain_sheet(made_hostile(CRASH), "full")
    page = read_page(html)
    assert not {"script", "img", "a"} & {each.name for each in page.all()}
    assert len(page.all("style")) == 1
    assert page.all("h1")[0].text == " ".join(EVIL.split())
    assert "49" not in page.all("h1")[0].text
    assert len(drills(page)) == len(CRASH.routes[0].entries)


@pytest.mark.parametrize(("paper", "size"), [("a4", "A4"), ("letter", "letter")])
def test_the_paper_is_named(paper: str, size: str) -> None:
    """The one rule in which papers differ."""
    assert f"@page {{ size: {size}; margin: 7mm 9mm; }}" in chain_sheet(CRASH, "full", paper)


def test_every_size_and_detail_has_its_rules() -> None:
    """A class that the stylesheet doesn't know would print at another size than was reckoned."""
    css = stylesheet()
    for size, detail in WAYS:
        assert f".pt-{round(size * 10)} {{ font-size: {size:g}pt; }}" in css
        assert detail == "all" or f".detail-{DETAILS.index(detail)} " in css
    assert all(f".share-{share} " in css for share in range(40, 61, 2) if share != 50)


TOLD = st.fixed_dictionaries(
    {
        "number": st.integers(1, 12),
        "name": st.text("abc ", min_size=1, max_size=40),
        "work": st.booleans(),
        "minutes": st.integers(1, 20),
        "dose": st.just("3 x 5"),
        "counted": st.just("4 of 5"),
        "seen": st.text("abcde ", max_size=120),
        "boxes": st.integers(1, 15),
        "brief": st.booleans(),
        "steps": st.lists(st.text("abcde ", max_size=150), max_size=6).map(tuple),
        "look": st.text("abcde ", max_size=120),
        "cues": st.lists(st.text("abcde ", max_size=40), max_size=3).map(tuple),
    }
).map(lambda fields: Told(**fields))


@settings(max_examples=25, deadline=None)
@given(st.lists(TOLD, max_size=9), st.sampled_from(list(PAPERS.values())))
def test_more_to_say_is_never_set_larger(told: list[Told], paper: object) -> None:
    """A drill more, or a title longer, and the page is set no larger; columns hold every drill in order."""
    fixed = Fixed("A title", ("a paragraph",), 0.2)
    fit = fit_of(told, fixed, paper)  # type: ignore[arg-type]
    assert 0 <= fit.left <= len(told)
    order = [(size, detail) for size, detail in WAYS]
    for more in (
        fit_of([*told, *told[:1]], fixed, paper),  # type: ignore[arg-type]
        fit_of(told, fixed._replace(paragraphs=("word " * 300,)), paper),  # type: ignore[arg-type]
    ):
        if more.one_page:
            assert fit.one_page
            assert order.index((more.size, more.detail)) >= order.index((fit.size, fit.detail))


def test_what_fits_no_page_takes_several(db: sqlite3.Connection, shelves: Shelves) -> None:
    """Then one list goes on from page to page."""
    page = sheet(made_long(every_chain(db, shelves[LiftId("clean-and-jerk")], causes=1), 14))
    (main,) = page.all("body")
    assert "several" in main.classes
    assert len(page.all("ol", "drills")) == 1


def test_letters_are_reckoned_wide() -> None:
    """A letter of an unknown script takes a whole em; a long word is broken."""
    assert wide("深") == 1.0
    assert wide("é") < 1.0
    assert lines_of("m" * 200, 50, 10) > lines_of("i" * 200, 50, 10) > 1
    assert lines_of("", 50, 10, "Label") == 1


@pytest.fixture
def ask(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Iterator[Path]:
    """The small library is asked; the folder in which sheets are put."""
    monkeypatch.setenv("DRILLPATH_LIBRARY", str(built()))
    monkeypatch.chdir(tmp_path)
    yield tmp_path
    assert not list(tmp_path.glob("**/.*")), "nothing is left aside"


def run(*arguments: str, code: int = 0) -> Result:
    """Run the command; it must exit with `code`."""
    result = CliRunner().invoke(drillpath, list(arguments))
    assert result.exit_code == code, (result.output, result.exception)
    return result


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_sheet_is_written_beside_the_answer(ask: Path, paper: str) -> None:
    """The answer as ever on standard output, one line on the other stream, the page in its file."""
    result = run("chain", "bar crashes", "--sheet", "crash.html", "--paper", paper)
    assert result.stdout == run("chain", "bar crashes").stdout
    assert result.stderr == f"The sheet is in crash.html: for a phone, and for {paper} paper.\n"
    positions = load(SMALL).positions
    figures = {timed.position: figure_svg(positions[timed.position]) for timed in CRASH.matter.shelf.lift.timeline}
    assert (ask / "crash.html").read_text("utf-8") == chain_sheet(CRASH, "full", paper, figures=figures)


def test_a_sheet_and_an_answer_for_programs_go_together(ask: Path) -> None:
    """JSON alone on standard output; the file as ever."""
    assert run("chain", "bar crashes", "--json", "--sheet", "a.HTM").stdout.startswith('{"version": 1')
    assert (ask / "a.HTM").is_file()


def test_an_old_sheet_is_replaced_whole(ask: Path) -> None:
    """And no sheet is written where there is no chain."""
    (ask / "a.html").write_text("old")
    run("chain", "hips-rise-first", "--sheet", "a.html")
    assert (ask / "a.html").read_text("utf-8").startswith("<!DOCTYPE html>")
    before = (ask / "a.html").read_bytes()
    run("chain", "bar crashes", "--minutes", "1", "--sheet", "a.html", code=1)
    assert (ask / "a.html").read_bytes() == before


@pytest.mark.parametrize(
    ("path", "said"),
    [
        ("nowhere/a.html", "there is no folder nowhere"),
        ("folder.html", "it is a folder"),
        ("a\0b.html", "null"),
        ("x" * 300 + ".html", "name too long"),
    ],
)
def test_a_path_that_cannot_be_written_is_one_sentence(ask: Path, path: str, said: str) -> None:
    """Exit 2, and no answer half given."""
    (ask / "folder.html").mkdir()
    result = run("chain", "bar crashes", "--sheet", path, code=2)
    assert result.stdout == ""
    assert result.stderr.count("\n") == 1
    assert "the sheet can't be written to" in result.stderr.lower()
    assert said in result.stderr.lower()


def test_a_folder_that_may_not_be_written(ask: Path) -> None:
    """Nor is that a traceback. (Root may write anywhere, so there this shows that it may.)"""
    shut = ask / "shut"
    shut.mkdir(mode=stat.S_IRUSR | stat.S_IXUSR)
    run("chain", "bar crashes", "--sheet", "shut/a.html", code=0 if os.geteuid() == 0 else 2)


@pytest.mark.parametrize("name", ["sheet", "sheet.pdf", "drills.md", "a.html.txt"])
def test_a_sheet_must_be_named_as_a_page(ask: Path, name: str) -> None:
    """So that no entry or module is written over by a slip."""
    (ask / name).write_text("mine")
    assert "must end in .html" in run("chain", "bar crashes", "--sheet", name, code=2).stderr
    assert (ask / name).read_text() == "mine"


@pytest.mark.usefixtures("ask")
def test_paper_needs_a_sheet() -> None:
    """And is one of two."""
    assert "needs --sheet" in run("chain", "bar crashes", "--paper", "letter", code=2).stderr
    assert "a4" in run("chain", "bar crashes", "--sheet", "a.html", "--paper", "a3", code=2).stderr


def test_the_small_library_is_left_alone() -> None:
    """Nothing was written into what is committed."""
    assert not list(SMALL.glob("**/*.html"))
