"""A class as a page: what the command says, the gear that is out at each half minute, and where there is no plan."""

import json
import re
import sqlite3
from html import unescape
from pathlib import Path

import pytest

from kb.ask import read
from kb.ask.class_.build import matter_of
from kb.ask.class_.greedy import greedy
from kb.ask.class_.more import again_of
from kb.ask.class_.own import own_of
from kb.ask.class_.people import Class
from kb.ask.class_.rotation import TICK_S
from kb.ask.class_.slots import plan_of
from kb.ask.shelf import Shelf
from kb.intake.class_file import DEMO, class_file, demo_class
from kb.make import catalogue as made
from kb.make.library import load
from kb.show.class_hall import gear_rows, hall_row, hall_times
from kb.show.class_json import class_json
from kb.show.class_words import letters_of
from kb.show.page.address import SERVED, form_at
from kb.show.page.content.class_ import class_page
from kb.show.page.render import html
from kb.show.page.stock import NO_DEMO, Stock, stock_of
from kb.solve.planning import Planned
from kb.terms import LiftId

SMALL = Path(__file__).parents[2] / "data" / "small"


@pytest.fixture(scope="module")
def demo(db: sqlite3.Connection) -> Class:
    """The class that comes with the program."""
    return class_file(DEMO, db)


@pytest.fixture(scope="module")
def stock(db: sqlite3.Connection, demo: Class) -> Stock:
    """The shipped library as pages see it, with that class."""
    return stock_of(db, demo)


def _words(text: str) -> str:
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", text)).split())


def test_it_says_who_does_what_when_and_where(stock: Stock) -> None:
    """Each stretch of each lifter, by its time and place; each coach's duties; each drill's standard; the cautions."""
    found = stock.evening()
    assert isinstance(found, Planned)
    page = class_page(stock)
    text = html(page, SERVED)
    assert page.data == class_json(found.plan)
    for each in found.plan.lifters:
        own = _words(text[text.index(f"<h3>{each.lifter.name}: ") :].partition("</section>")[0])
        at = 0
        for slot in each.slots:
            at = own.index(f"{slot.start_s // 60}:{slot.start_s % 60:02} {slot.station} ", at)
            assert own.index(slot.drill.name, at) < at + 60 + len(slot.drill.name)
    for drill in {doing.drill.id: doing.drill for doings in found.plan.matter.doings for doing in doings}.values():
        assert f'href="/drill/{drill.id}">{drill.name}</a>' in text
        assert drill.standard.seen in _words(text)
    said = _words(text)
    assert said.count("Stand by") == sum(duty.does == "watch" for duty in found.plan.duties)
    assert "First, how to miss." in said
    assert "where there is pain" in said  # there is weight on the bar


@pytest.mark.parametrize("bars", [3, 6, 14])
def test_the_gear_that_is_out_is_what_the_rotation_takes(bars: int, demo: Class, shelves: dict[LiftId, Shelf]) -> None:
    """At each half minute, as the modes of what is under way have it, and what goes on; never more than there is."""
    asked = demo._replace(have={**demo.have, "bar": bars}, minutes=120, most_wait_s=1800)  # type: ignore[dict-item]
    matter = matter_of(asked, own_of(asked, shelves.__getitem__))
    plan = greedy(matter.rotation, tries=3)
    assert plan is not None
    shown = {
        item: [int(cell.text or 0) for cell in row for _ in range(cell.span)]
        for item, row in gear_rows(plan_of(matter, plan)).items()
    }
    rotation, want = matter.rotation, {item: [0] * len(row) for item, row in shown.items()}
    for u, unit in enumerate(rotation.units):
        for k in range(len(unit.tasks)):
            for item, count in plan.mode(rotation, u, k).gear:
                for tick in range(plan.starts[u][k], plan.end(rotation, u, k)):
                    if item in want:
                        want[item][tick] += count
    for each in again_of(matter, plan):
        for item, count in each.form.items:
            for tick in range(each.start, each.end):
                if item in want:
                    want[item][tick] += count
    assert shown == want
    assert max(shown["bar"]) <= bars  # type: ignore[index]


def test_every_row_of_the_hall_is_as_wide_as_its_time(stock: Stock) -> None:
    """Columns are half minutes, from the warm-up to when a lifter does no more; the head is as wide as the longest."""
    found = stock.evening()
    assert isinstance(found, Planned)
    plan, start = found.plan, found.plan.matter.asked.warm_up_s
    wide = [sum(cell.span for cell in hall_row(each, start, letters_of(plan))) for each in plan.lifters]
    ends = [each.more.end_s if each.more else each.slots[-1].end_s for each in plan.lifters]
    assert wide == [(end - start) // TICK_S for end in ends]
    assert sum(cell.span for cell in hall_times(plan)) == max(wide)
    assert all(sum(cell.span for cell in row) == max(wide) for row in gear_rows(plan).values())


@pytest.mark.no_cover
def test_where_there_is_no_plan_it_says_why_and_what_is_short(db: sqlite3.Connection, demo: Class) -> None:
    """One sentence, and for programs the answer of the command; no chart."""
    page = class_page(stock_of(db, demo._replace(minutes=15)))
    text = html(page, form_at("class"))
    assert page.data is not None
    assert page.data["lifters"] == []
    assert page.data["why"]
    assert page.data["why"][1:] in unescape(text)
    assert '<table class="hall">' not in text


def test_a_library_without_what_it_asks_for_says_so(tmp_path: Path) -> None:
    """No file of this machine is named."""
    made.write(load(SMALL), tmp_path / "catalogue.db")
    db = read.open_catalogue(tmp_path / "catalogue.db")
    assert demo_class(db) is None
    page = class_page(stock_of(db, demo_class(db)))
    assert NO_DEMO[1:] in unescape(html(page, SERVED))
    assert "/" not in json.dumps(page.data)
