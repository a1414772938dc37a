"""What runs in the page answers as the command does: search, what gear allows."""

import random
from pathlib import Path
from typing import Any

import pytest
from browser import Chromium
from pages_shown import Place, Visit, visit

from kb.ask import read
from kb.ask.cautions import CAUTION, URGENT
from kb.ask.cleared import TICKED
from kb.ask.find import find
from kb.kit import fit
from kb.show.coach_words import plain_markdown

pytestmark = pytest.mark.no_cover

DATA = Path(__file__).parents[1] / "data"

ODD = (
    *"""|x|the|élan über bar crashes|hips rise first|Lowerback rounds|fullclean|bar crashs|__proto__|constructor|
    toString valueOf|a b c d e f g|snatch|clean jerk snatch|ﬁrst pull ﬁrst|½ depth squat|🏋️ bar loops""".split("|"),
    "knee" * 300,
)
"""What nobody says to a coach."""

PAIN = tuple(
    """my kneee hurts|prgnant lifter|sharp pain in the wrist|tingling hands in the rack|he is twelve years old|
    shoulder popped out last year|
    dizzy after the jerk|she has a slipped disc|numb fingers|blood pressure""".replace("\n    ", "").split("|")
)

SEARCH = """(texts) => texts.map((text) => window.drillpathFind(text))"""
CLEARED = """(texts) => texts.map((text) => window.drillpathFind(text, true))"""


def phrases() -> list[str]:
    """What coaches said, each once, words of pain and of pain denied or long ago among them."""
    files = (
        "phrasings.tsv",
        "cautions.tsv",
        "no_cautions.tsv",
        "mended.tsv",
        "niggles.tsv",
        "in_passing.tsv",
        "cleared.tsv",
        "squeezed.tsv",
        "scraped.tsv",
        "next_day.tsv",
        "sore.tsv",
        "knocked.tsv",
        "landed.tsv",
        "in_passing_over.tsv",
        "told_otherwise.tsv",
        "healthy.tsv",
        "youth.tsv",
    )
    lines = [line for file in files for line in (DATA / file).read_text("utf-8").splitlines()[1:]]
    return [line.split("\t")[0] for line in lines if line]


@pytest.fixture(scope="module")
def files(site: Path) -> Place:
    """The written pages, as files."""
    return Place(site.as_uri() + "/", files=True)


@pytest.mark.parametrize("every", [3, pytest.param(1, marks=pytest.mark.exhaustive)])
def test_search_in_the_page_finds_what_the_command_finds(
    browser: Chromium, files: Place, db: read.sqlite3.Connection, every: int
) -> None:
    """The same faults and drills in the same order with the same worth, for a share of the phrases and odd ones."""
    asked = [*phrases()[::every], *ODD]

    def look(it: Visit) -> list[dict[str, Any]]:
        it.to("find")
        return it.page.evaluate(SEARCH, asked)

    for text, theirs in zip(asked, visit(browser, files, look), strict=True):
        ours = find(db, text)
        assert (theirs["caution"], theirs["mayClear"]) == (ours.caution, ours.may_clear), text
        for kind in ("faults", "drills"):
            hits = [(hit.id, pytest.approx(hit.score, abs=2e-3)) for hit in getattr(ours, kind)]
            assert [tuple(hit) for hit in theirs[kind]] == hits, (text, kind)


def test_words_of_pain_are_answered_by_whom_to_ask_alone(
    browser: Chromium, files: Place, db: read.sqlite3.Connection
) -> None:
    """As the command does: the caution, and neither fault nor drill, on the page too."""

    def look(it: Visit) -> tuple[list[dict[str, Any]], str]:
        it.to("home")
        found = it.page.evaluate(SEARCH, list(PAIN))
        it.page.get_by_label("In your own words").fill(PAIN[0])
        it.page.get_by_role("button", name="Find").click()
        it.page.locator("#found .care").wait_for()
        assert it.page.locator("#found a").count() == 0
        return found, it.page.locator("#found .care").inner_text()

    found, shown = visit(browser, files, look)
    for text, theirs in zip(PAIN, found, strict=True):
        ours = find(db, text).caution
        assert ours in (CAUTION, URGENT), text
        assert theirs == {"caution": ours, "mayClear": find(db, text).may_clear, "faults": [], "drills": []}, text
    assert shown.split() == (find(db, PAIN[0]).caution or "").split()


def test_who_asks_can_say_that_the_lifter_is_cleared(
    browser: Chromium, files: Place, app: Place, db: read.sqlite3.Connection
) -> None:
    """Only where that settles it; then the caution, and what the rest means; other words take it back."""
    asked = [*(DATA / "cleared.tsv").read_text("utf-8").splitlines()[1:], *PAIN, "my son's bar loops out"]

    def look(it: Visit) -> tuple[list[dict[str, Any]], str]:
        it.to("find")
        found = it.page.evaluate(CLEARED, asked)
        field = it.page.get_by_label("In your own words")
        field.fill("hip replacement, her bar loops out")
        tick = it.page.get_by_label(TICKED)
        tick.check()
        it.page.locator("#found a").first.wait_for()
        shown = it.page.locator("#found .care").inner_text()
        field.fill("my son's bar loops out and hurts")
        it.page.locator("#found a").first.wait_for(state="detached")
        assert tick.is_hidden()
        return found, shown

    found, shown = visit(browser, files, look)
    for text, theirs in zip(asked, found, strict=True):
        ours = find(db, text, cleared=True)
        assert (theirs["caution"], theirs["mayClear"]) == (ours.caution, ours.may_clear), text
        assert [each for each, _ in theirs["faults"]] == [hit.id for hit in ours.faults], text
    assert shown.split() == CAUTION.split()

    def served(it: Visit) -> int:
        it.to("find?q=hip+replacement,+her+bar+loops+out&cleared=yes")
        assert it.page.get_by_label(TICKED).is_checked()
        return it.page.locator("#found a").count()

    assert visit(browser, app, served)


def test_below_what_was_found_stands_how_the_first_looks(
    browser: Chromium, files: Place, app: Place, db: read.sqlite3.Connection
) -> None:
    """The same words whether the page searched or the server did, as in the entry."""
    text = "her bar loops out and round"
    first = find(db, text).faults[0]
    looks = plain_markdown(read.sections(db, "fault", [first.id])[first.id]["Looks like"])

    def typed(it: Visit) -> str:
        it.to("home")
        it.page.get_by_label("In your own words").fill(text)
        it.page.get_by_role("button", name="Find").click()
        it.page.get_by_role("heading", name=f"Is it the first? {first.name}").wait_for()
        return it.page.locator("#found").inner_text()

    def answered(it: Visit) -> str:
        it.to("find", "?q=" + text.replace(" ", "+"))
        return it.page.locator("#found").inner_text()

    here, there = visit(browser, files, typed), visit(browser, app, answered)
    assert here.split() == there.split()
    assert " ".join(looks.split()) in " ".join(here.split())
    assert "Look alike: " in here


def test_at_hand_in_the_page_is_what_kits_allow(browser: Chromium, files: Place, db: read.sqlite3.Connection) -> None:
    """The same drills for random sets of things, none and all of them too."""
    drills, items = read.drills(db), read.items(db)
    dice = random.Random(5)
    rooms = [dice.sample(sorted(items), dice.randint(1, len(items))) for _ in range(150)]
    rooms += [[], sorted(items), *([item] for item in items)]

    def look(it: Visit) -> list[list[str]]:
        it.to("at-hand")
        return it.page.evaluate("(rooms) => rooms.map((room) => window.drillpathCan(room))", rooms)

    for room, theirs in zip(rooms, visit(browser, files, look), strict=True):
        ours = {drill.id for drill in drills.values() if fit(drill, frozenset(room), items) is not None}
        assert set(theirs) == ours, room
        assert len(theirs) == len(ours)
