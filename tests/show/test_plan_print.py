"""A plan in a browser: one page of paper for every plan of 40 minutes, and one column on a phone."""

import io
import sqlite3
from datetime import date, timedelta

import pypdf
import pytest
from browser import Chromium
from plan_paths import found_path

from kb.ask import read
from kb.ask.plan.plan import Plan, plan
from kb.ask.plan.turns import day_of
from kb.ask.shelf import Shelf
from kb.show.plan_sheet import plan_sheet
from kb.terms import LiftId


def sheet(db: sqlite3.Connection, planned: Plan, paper: str) -> str:
    """As asked for with dates, which take more room."""
    days = {
        session.n: date(2026, 3, 2) + timedelta(days=day_of(session.n, planned.weeks.per_week))
        for session in planned.sessions
    }
    texts = read.sections(db, "drill", {form.drill.id for form in planned.forms})
    return plan_sheet(planned, "full", planned.path.shelf.kits["full"], days, texts, paper)


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("lift", ["jerk", "clean", "snatch", "clean-and-jerk"])
def test_a_plan_prints_on_one_page(
    browser: Chromium, db: sqlite3.Connection, shelves: dict[LiftId, Shelf], lift: str, paper: str
) -> None:
    """The longest ones too; nothing is fetched for it, and a phone need not scroll sideways."""
    planned = plan(found_path(shelves, lift, "full"), per_week=2, minutes=40)
    html = sheet(db, planned, paper)
    assert len(pypdf.PdfReader(io.BytesIO(browser.pdf(html))).pages) == 1
    assert browser.asked == []
    assert browser.evaluate(html, "() => document.documentElement.scrollWidth", width=390) <= 390
