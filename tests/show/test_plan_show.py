"""A plan as text, table, calendar and paper: all of it there, told alike, nothing too wide, nothing unescaped."""

import csv
import io
import re
import sqlite3
from collections.abc import Mapping
from datetime import date, datetime, time, timedelta
from html.parser import HTMLParser

import pytest
from icalendar import Calendar
from plan_paths import found_path

from kb.ask import read
from kb.ask.plan.past import Done
from kb.ask.plan.plan import Plan, plan
from kb.ask.plan.turns import day_of
from kb.ask.shelf import Shelf
from kb.show.care import NO_REVIEW, USUAL
from kb.show.plan_calendar import plan_calendar
from kb.show.plan_csv import COLUMNS, plan_csv
from kb.show.plan_json import plan_json
from kb.show.plan_sheet import plan_sheet
from kb.show.plan_text import plan_text
from kb.show.plan_words import short_of
from kb.show.setting import Setting
from kb.terms import DrillId, LiftId, Load

START = date(2026, 3, 2)


@pytest.fixture
def snatch(shelves: dict[LiftId, Shelf]) -> Plan:
    """To the snatch with everything there is, twice a week for 40 minutes."""
    return plan(found_path(shelves, "snatch", "full"), per_week=2, minutes=40)


@pytest.fixture
def held(shelves: dict[LiftId, Shelf]) -> Plan:
    """To a jerk that is held."""
    found = found_path(shelves, "jerk", "hall")
    done = [Done(n, DrillId("full-jerk"), True, Load.WORKING) for n in (1, 2)]
    return plan(found, per_week=2, minutes=40, done=done)


def days_of(planned: Plan) -> dict[int, date]:
    """Dates from START on."""
    return {
        session.n: START + timedelta(days=day_of(session.n, planned.weeks.per_week)) for session in planned.sessions
    }


def texts_of(db: sqlite3.Connection, planned: Plan) -> Mapping[str, Mapping[str, str]]:
    """The drills' sections."""
    return read.sections(db, "drill", {form.drill.id for form in planned.forms})


def lines_of(db: sqlite3.Connection, planned: Plan, width: int = 80, **more: object) -> list[str]:
    """As text."""
    have = planned.path.shelf.kits["full"]
    return plan_text(planned, "full", have, days_of(planned), texts_of(db, planned), Setting(width), **more)  # type: ignore[arg-type]


def test_the_answer_stands_first_and_the_cautions_last(db: sqlite3.Connection, snatch: Plan) -> None:
    """How long, then the sessions in order with their dates, then how to read it and what to mind."""
    lines = lines_of(db, snatch)
    assert lines[0].startswith("Snatch ")
    assert lines[1].startswith(
        f"{len(snatch.sessions)} sessions in 9 weeks. No plan under these rules is shorter. About 40 %"
    )
    heads = [line for line in lines if re.match(r" ?\d+, ", line)]
    assert len(heads) == len(snatch.sessions)
    assert heads[0].startswith(" 1, Mon 2 Mar 2026 ")
    assert heads[1].startswith(" 2, Thu 5 Mar 2026 ")
    assert lines.index("Week 4, light") < lines.index("Week 5")
    text = " ".join(lines)
    assert USUAL in text
    assert lines[-1] == NO_REVIEW


def test_how_to_miss_stands_once_before_the_first_loaded_drill(db: sqlite3.Connection, snatch: Plan) -> None:
    """In its session, before the drill."""
    lines = lines_of(db, snatch)
    (miss,) = (n for n, line in enumerate(lines) if "how to miss" in line)
    first = next(n for n, line in enumerate(lines) if "new" in line and ", light" in line)
    assert first - 8 < miss < first


@pytest.mark.parametrize("width", [40, 60, 80])
def test_no_line_is_wider_than_the_page(db: sqlite3.Connection, snatch: Plan, width: int) -> None:
    """At any width."""
    assert max(len(line) for line in lines_of(db, snatch, width)) <= width


def test_what_was_done_is_told(db: sqlite3.Connection, shelves: dict[LiftId, Shelf]) -> None:
    """What wasn't met says so, what isn't in the plan is named, sessions are counted on."""
    found = found_path(shelves, "clean", "stick")
    done = [Done(1, found.entries[0].drill.id, False), Done(1, DrillId("push-press"), True)]
    lines = lines_of(db, plan(found, per_week=1, minutes=40, done=done))
    assert "more sessions in" in lines[1]
    assert any("(not met yet)" in line for line in lines)
    assert "Done, but not in this plan: push-press." in lines
    assert "once a week" in lines[0]


def test_a_session_with_nothing_due_says_so(db: sqlite3.Connection, snatch: Plan) -> None:
    """It may be left out, or used for what is held."""
    empty = snatch.sessions[0]._replace(slots=(), more=())
    lines = lines_of(db, snatch._replace(sessions=(empty,)))
    assert "    nothing is due: rest, or go over what is known" in lines


def test_a_lift_that_is_held_says_so(db: sqlite3.Connection, held: Plan) -> None:
    """And nothing else; on paper too."""
    said = " ".join(lines_of(db, held)[1:])
    assert said == "Nothing left to plan: the jerk is held. Name a day (--weeks, --by), and it is built up to that."
    assert "Nothing left to plan" in plan_sheet(held, None, (), {}, {})
    assert plan_json(held, None, {})["sessions"] == []


def test_much_free_time_is_said_with_what_fills_it(snatch: Plan) -> None:
    """Where two new drills leave a third of a session and more; not where more were asked for, or little is free."""
    assert "About 40 % of the time is free: `--new 4`" in short_of(snatch)
    assert "free" not in short_of(snatch._replace(weeks=snatch.weeks._replace(most_new=4)))
    full = snatch._replace(sessions=tuple(each._replace(spare=2) for each in snatch.sessions))
    assert "free" not in short_of(full)


def test_a_longer_plan_says_how_much_shorter_it_could_be(snatch: Plan) -> None:
    """Against the bound, and in the singular where there is one."""
    loose = snatch._replace(least=snatch.least._replace(chain=3, new=3, minutes=3))
    assert short_of(loose).partition(" About")[0].endswith("No plan under these rules is shorter than 3.")
    one = snatch._replace(sessions=snatch.sessions[:1])
    assert short_of(one).startswith("1 session in 1 week.")


def test_the_table_has_a_row_a_drill_and_goes_back_as_it_is(snatch: Plan) -> None:
    """Its header is the documented one, `met` is empty, lines end as RFC 4180 has them."""
    text = plan_csv(snatch, days_of(snatch))
    assert text.count("\r\n") == text.count("\n")
    rows = list(csv.DictReader(io.StringIO(text)))
    assert tuple(rows[0]) == COLUMNS
    assert len(rows) == sum(len(session.slots) for session in snatch.sessions)
    assert {row["met"] for row in rows} == {""}
    assert rows[0]["load"] == ""
    assert rows[0]["date"] == "2026-03-02"
    assert {row["date"] for row in csv.DictReader(io.StringIO(plan_csv(snatch, {})))} == {""}


def test_json_and_table_say_the_same(snatch: Plan) -> None:
    """Drill by drill."""
    answer = plan_json(snatch, "full", days_of(snatch))
    rows = csv.DictReader(io.StringIO(plan_csv(snatch, days_of(snatch))))
    flat = [(session, drill) for session in answer["sessions"] for drill in session["drills"]]
    for (session, drill), row in zip(flat, rows, strict=True):
        assert (str(session["n"]), session["date"]) == (row["session"], row["date"])
        assert (drill["id"], drill["load"] or "", drill["as"]) == (row["drill"], row["load"], row["as"])
        assert [str(drill[key]) for key in ("exposure", "of", "minutes")] == [
            row["exposure"],
            row["of"],
            row["minutes"],
        ]
        assert (row["new"] == "yes") == drill["new"]


def test_a_calendar_reads_it_back(snatch: Plan) -> None:
    """Another library's reading: an event a session, at its time, as long as a session, each with its own identity."""
    text = plan_calendar(snatch, days_of(snatch), time(18, 30), datetime(2026, 3, 1, 12, 0))
    events = Calendar.from_ical(text).walk("VEVENT")
    assert len(events) == len(snatch.sessions)
    assert len({str(event["UID"]) for event in events}) == len(events)
    assert events[1]["DTSTART"].dt == datetime(2026, 3, 5, 18, 30)
    assert {event["DURATION"].dt for event in events} == {timedelta(minutes=40)}
    assert "new: Stick pass-through, Build the start in order" in str(events[0]["SUMMARY"])
    assert str(events[6]["SUMMARY"]) == "Snatch 7: light"
    assert any(str(event["SUMMARY"]).endswith("nothing new") for event in events)
    assert USUAL in str(events[0]["DESCRIPTION"])
    assert "drillpath place snatch" in str(events[7]["DESCRIPTION"])


class Read(HTMLParser):
    """The tags that are open, and all text."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.said: list[str] = []
        self.boxes = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Void elements stay closed."""
        self.boxes += tag == "input"
        assert "style" not in dict(attrs)
        assert tag != "script"
        if tag not in ("meta", "input"):
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        """Each closes the last opened."""
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        """What is read."""
        self.said.append(data)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_a_sheet_has_a_box_for_every_drill(db: sqlite3.Connection, snatch: Plan, paper: str) -> None:
    """Well formed, without script; how to miss, what is left and the cautions are on it."""
    html = plan_sheet(snatch, "full", snatch.path.shelf.kits["full"], days_of(snatch), texts_of(db, snatch), paper)
    page = Read()
    page.feed(html)
    assert page.open == []
    assert page.boxes == sum(len(session.slots) for session in snatch.sessions)
    text = " ".join(page.said)
    for said in (USUAL, NO_REVIEW, "First, how to miss.", "Left: ", "drillpath place snatch", "Mon 2 Mar 2026"):
        assert said in text
    assert f"size: {'A4' if paper == 'a4' else 'letter'};" in html


def test_names_on_a_sheet_stay_text(db: sqlite3.Connection, snatch: Plan) -> None:
    """Whatever an entry is called."""
    evil = snatch.forms[0]._replace(drill=snatch.forms[0].drill._replace(name='<img src=x onerror="x">&'))
    slot = snatch.sessions[0].slots[0]._replace(form=evil)
    first = snatch.sessions[0]._replace(slots=(slot,), more=(evil,))
    html = plan_sheet(snatch._replace(sessions=(first,)), "full", (), {}, texts_of(db, snatch))
    assert "<img" not in html


def test_a_crowded_sheet_gets_smaller_and_leaves_out_what_is_left(
    db: sqlite3.Connection, shelves: dict[LiftId, Shelf]
) -> None:
    """Longer plans are printed smaller; the longest without what to do with time left."""
    sizes = []
    for lift in ("jerk", "snatch", "clean-and-jerk"):
        shelf = shelves[LiftId(lift)]
        planned = plan(found_path(shelves, lift, "full"), per_week=2, minutes=40)
        html = plan_sheet(planned, "full", shelf.kits["full"], {}, texts_of(db, planned))
        sizes.append(float(re.findall(r"body { font-size: ([\d.]+)pt", html)[0]))
    assert sizes == sorted(sizes, reverse=True)
    assert sizes[0] > sizes[-1]
    assert ".left { display: none; }" in html
