"""`drillpath plan`: what it prints and writes, and how it refuses."""

import csv
import io
import json
import re
from itertools import groupby
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from small_answers import built

from kb.commands.group import drillpath


@pytest.fixture(autouse=True)
def _library(monkeypatch: pytest.MonkeyPatch) -> None:
    """Every question is asked of the small library."""
    monkeypatch.setenv("DRILLPATH_LIBRARY", str(built()))
    monkeypatch.setenv("COLUMNS", "80")


def ask(*arguments: str, code: int = 0) -> Result:
    """Run the command; it must exit with `code`."""
    result = CliRunner().invoke(drillpath, ["plan", *arguments])
    assert result.exit_code == code, (result.output, result.exception)
    return result


def test_a_plan_is_printed() -> None:
    """With what it was made for."""
    said = ask("jerk", "--kit", "hall").stdout
    assert said.startswith("Jerk ")
    assert "hall kit, 2 a week, 40 min" in said


def test_json_has_the_agreed_shape() -> None:
    """And dates only where a day was given."""
    answer = json.loads(ask("jerk", "--per-week", "3", "--minutes", "60", "--json").stdout)
    assert answer["version"] == 1
    assert answer["lower_bound"] <= len(answer["sessions"])
    first = answer["sessions"][0]
    assert (first["n"], first["date"]) == (1, None)
    assert {"id", "new", "exposure", "minutes"} <= set(first["drills"][0])
    dated = json.loads(ask("jerk", "--start", "2026-03-02", "--json").stdout)
    assert [session["date"] for session in dated["sessions"][:3]] == ["2026-03-02", "2026-03-05", "2026-03-09"]


def test_the_table_filled_in_is_what_was_done(tmp_path: Path) -> None:
    """A plan's own CSV, its first session met, goes back and the plan goes on from session 2."""
    lines = ask("clean-and-jerk", "--kit", "stick", "--csv").stdout.splitlines()
    at = lines[0].split(",").index("met")
    filled = [lines[0]]
    for line in lines[1:]:
        cells = line.split(",")
        cells[at] = "yes" if cells[0] == "1" else ""
        filled.append(",".join(cells))
    done = tmp_path / "done.csv"
    done.write_text("\n".join(filled), "utf-8")
    answer = json.loads(ask("clean-and-jerk", "--kit", "stick", "--done", str(done), "--json").stdout)
    before = json.loads(ask("clean-and-jerk", "--kit", "stick", "--json").stdout)
    assert answer["done"] == 1
    assert answer["sessions"][0]["n"] == 2
    assert len(answer["sessions"]) == len(before["sessions"]) - 1


def test_dates_go_on_from_the_next_session(tmp_path: Path) -> None:
    """After one session of two a week the next is the week's second: the third comes four days later."""
    done = tmp_path / "done.csv"
    done.write_text("date,drill,met\n2026-03-02,start-hold,yes\n", "utf-8")
    answer = json.loads(ask("clean", "--done", str(done), "--start", "2026-03-05", "--json").stdout)
    assert [session["date"] for session in answer["sessions"][:2]] == ["2026-03-05", "2026-03-09"]
    said = ask("clean", "--done", str(done), "--start", "2026-03-02", code=2).stderr
    assert "line 2, date: 2026-03-02 is not before 2026-03-02" in said


def test_a_calendar_and_a_sheet_are_written(tmp_path: Path) -> None:
    """Beside the answer, which is still printed."""
    calendar, sheet = tmp_path / "plan.ics", tmp_path / "plan.html"
    result = ask("jerk", "--calendar", str(calendar), "--at", "07:15", "--sheet", str(sheet), "--start", "2026-03-02")
    text = calendar.read_bytes()
    assert b"DTSTART:20260302T071500\r\n" in text
    assert text.count(b"BEGIN:VEVENT") == result.stdout.count("warm-up\n")
    assert sheet.read_text("utf-8").startswith("<!DOCTYPE html>")
    assert str(calendar) in result.stderr
    assert str(sheet) in result.stderr
    assert sorted(each.name for each in tmp_path.iterdir()) == ["plan.html", "plan.ics"]


def test_a_calendar_begins_today_if_nothing_is_said(tmp_path: Path) -> None:
    """In the evening."""
    ask("jerk", "--calendar", str(tmp_path / "plan.ics"))
    assert "T180000\r\n" in (tmp_path / "plan.ics").read_bytes().decode()


def test_a_lift_that_is_held_writes_no_calendar(tmp_path: Path) -> None:
    """It says so instead."""
    done = tmp_path / "done.csv"
    done.write_text("session,drill,met,load\n1,full-jerk,yes,working\n2,full-jerk,yes,working\n", "utf-8")
    result = ask("jerk", "--done", str(done), "--calendar", str(tmp_path / "plan.ics"))
    assert "nothing left to plan" in result.stderr
    assert not (tmp_path / "plan.ics").exists()


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--minutes", "0"], "--minutes"),
        (["--minutes", "nan"], "--minutes"),
        (["--minutes", "-3"], "--minutes"),
        (["--minutes", "inf"], "--minutes"),
        (["--minutes", "100000"], "--minutes"),
        (["--per-week", "0"], "--per-week"),
        (["--per-week", "15"], "--per-week"),
        (["--per-week", "2.5"], "--per-week"),
        (["--start", "2026-13-01"], "is no date"),
        (["--start", "1500-01-01"], "is not of these times"),
        (["--start", "2026-03-02", "--at", "soon"], "is no time of day"),
        (["--at", "18:00"], "--at says when"),
        (["--json", "--csv"], "--json and --csv"),
        (["--kit", "moon"], "here is no kit"),
        (["--holds", "no-such-drill"], "here is no drill"),
        (["--paper", "a4"], "--paper"),
        (["--sheet", "plan.txt"], ".html"),
        (["--done", "no-such-file.csv"], "can't be read"),
        (["--calendar", "."], "can't be written to .: it is a folder"),
        (["--calendar", "no-such-folder/plan.ics"], "there is no folder no-such-folder"),
    ],
)
def test_a_question_that_can_t_be_understood_exits_2(arguments: list[str], said: str) -> None:
    """With a sentence that names what is wrong, and no traceback."""
    result = ask("jerk", *arguments, code=2)
    assert said in result.stderr
    assert "Traceback" not in result.output
    assert result.stdout == ""


def test_an_unknown_lift_and_too_few_minutes() -> None:
    """Exit 2 and 1."""
    assert "here is no lift" in ask("deadlift", code=2).stderr
    assert "the least that will do is" in ask("jerk", "--minutes", "7", code=1).stderr


def test_every_option_of_a_plan_counts() -> None:
    """Order, kit and what is held change the path, and the plan with it."""
    plain = json.loads(ask("clean", "--kit", "stick", "--json").stdout)
    less = json.loads(
        ask(
            "clean",
            "--kit",
            "stick",
            "--holds",
            "start-hold,slow-lift-off,rack-hold,air-squat",
            "--json",
        ).stdout
    )
    assert len(less["sessions"]) < len(plain["sessions"])
    assert json.loads(ask("clean", "--have", "stick,headroom", "--order", "down", "--json").stdout)["kit"] is None


def test_a_day_with_a_weight_is_printed_with_its_kilograms() -> None:
    """From --from to --weight, and the day named; the same for programs and in the table."""
    to_a_day = ("--per-week", "3", "--weeks", "6", "--weight", "40", "--from", "30")
    asked = ("jerk", "--kit", "hall", "--returning", *to_a_day)
    said = ask(*asked).stdout
    assert "the lift goes from 30 to 40 kg" in " ".join(said.split())
    assert ", the day " in said
    assert "Jerk, 40 kg" in said
    answer = json.loads(ask(*asked, "--json").stdout)
    assert answer["until"]["reached_kg"] == answer["sessions"][-1]["drills"][-1]["kg"] == 40
    assert answer["until"]["sessions"] == answer["sessions"][-1]["n"] == 18
    assert answer["held_in"] < 18
    rows = ask(*asked, "--csv").stdout.splitlines()
    assert rows[0].endswith(",home,kg")
    assert rows[-1].endswith(",no,40")


def test_a_day_that_comes_too_soon_says_what_would_do() -> None:
    """How many sessions are missing, options ready to add, and a line where the day falls."""
    said = " ".join(ask("jerk", "--kit", "hall", "--by", "2026-03-20", "--start", "2026-03-02").stdout.split())
    assert "too few. In time: --" in said
    assert "The day what comes after it is too late" in said


LESSONS = ("jerk", "--kit", "hall", "--lessons", "2")


def test_so_many_lessons_say_what_they_end_in(tmp_path: Path) -> None:
    """Drill by drill, with what is taken home and how the next is asked for; the same in every form."""
    sheet, calendar = tmp_path / "lessons.html", tmp_path / "lessons.ics"
    dated = (*LESSONS, "--start", "2026-03-02", "--sheet", str(sheet), "--calendar", str(calendar))
    said = ask(*dated).stdout
    for part in ("Lesson 1: ", ", Mon 2 Mar 2026", "Lesson 2: ", ", Thu 5 Mar 2026", "To take home", "If not "):
        assert part in said
    answer = json.loads(ask(*LESSONS, "--json").stdout)
    assert [session["n"] for session in answer["sessions"]] == [1, 2]
    names = [line["name"] for session in answer["sessions"] for line in session["drills"]]
    page, events = sheet.read_text("utf-8"), calendar.read_text("utf-8")
    assert all(name in " ".join(said.split()) or name[0].lower() + name[1:] in " ".join(said.split()) for name in names)
    assert page.count('<section class="lesson">') == events.count("BEGIN:VEVENT") == 2
    rows = ask(*LESSONS, "--csv").stdout.splitlines()
    drills = {(session["n"], line["id"], line["load"]) for session in answer["sessions"] for line in session["drills"]}
    assert len(rows) == 1 + len(drills)
    if answer["next"]["drill"] is not None:
        assert answer["next"]["command"] in said
        assert "--lessons 1" in answer["next"]["command"]


def test_the_command_for_the_next_lesson_is_ready_to_paste() -> None:
    """With what was typed: sessions a week as they were said."""
    answer = json.loads(ask(*LESSONS[:-1], "1", "--per-week", "1", "--json").stdout)
    assert "--per-week 1 " in answer["next"]["command"] + " "
    assert "(" not in answer["next"]["command"]


def test_lessons_after_which_nothing_is_left_say_so_on_paper(tmp_path: Path) -> None:
    """What comes then is the same on a terminal and on paper, where a command isn't marked as one."""
    sheet = tmp_path / "lessons.html"
    said = " ".join(ask("jerk", "--kit", "hall", "--lessons", "9", "--sheet", str(sheet)).stdout.split())
    page = sheet.read_text("utf-8")
    assert "a day to build it up to (`--weeks`)" in said
    assert "a day to build it up to (--weeks)" in page
    assert "`" not in page


def test_lessons_go_on_from_what_was_met(tmp_path: Path) -> None:
    """Their own table, filled in, goes back: what was met isn't shown again, and the count goes on."""
    lines = ask(*LESSONS, "--csv").stdout.splitlines()
    header = lines[0].split(",")
    met, session = header.index("met"), header.index("session")
    rows = [line.split(",") for line in lines[1:]]
    first = [row for row in rows if row[session] == "1"]
    for row in first:
        row[met] = "yes"
    done = tmp_path / "done.csv"
    done.write_text("\n".join([lines[0], *(",".join(row) for row in first)]), "utf-8")
    answer = json.loads(ask(*LESSONS, "--done", str(done), "--json").stdout)
    assert (answer["done"], answer["sessions"][0]["n"]) == (1, 2)
    shown = {row[header.index("drill")] for row in first if row[header.index("new")] == "yes"}
    assert not shown & {line["id"] for line in answer["sessions"][0]["drills"] if line["new"]}


def test_what_is_at_home_needs_no_days_there_beside_lessons() -> None:
    """It is for what is taken home."""
    answer = json.loads(ask(*LESSONS, "--home-have", "stick", "--json").stdout)
    assert answer["home"]["have"] == ["stick"]


def test_a_week_away_is_said_where_it_lies_and_is_in_no_calendar(tmp_path: Path) -> None:
    """Between its neighbours, on the terminal and on paper, with what can be done there; nothing on its dates."""
    sheet, calendar = tmp_path / "plan.html", tmp_path / "plan.ics"
    asked = ("jerk", "--kit", "hall", "--away", "3", "--away-have", "stick,headroom", "--start", "2026-03-02")
    lines = ask(*asked, "--sheet", str(sheet), "--calendar", str(calendar)).stdout.splitlines()
    weeks = [line.split(",")[0] for line in lines if line.startswith("Week ")]
    assert weeks[:4] == ["Week 1", "Week 2", "Week 3", "Week 4"]
    at = lines.index("Week 3, away")
    assert "With headroom and stick" in lines[at + 1]
    assert lines[at + 2 : lines.index("Week 4")]
    assert "<h2>Week 3, away</h2>" in sheet.read_text("utf-8")
    dates = [
        line.removeprefix("DTSTART:")[:8] for line in calendar.read_text("utf-8").splitlines() if "DTSTART" in line
    ]
    days = sorted(set(dates))
    assert days
    assert not any("20260316" <= day <= "20260322" for day in days)
    answer = json.loads(ask(*asked, "--json").stdout)
    assert answer["away"] == [3]
    assert 3 not in {session["week"] for session in answer["sessions"]}


def test_days_at_home_are_marked(tmp_path: Path) -> None:
    """On the terminal, on paper, in a calendar."""
    asked = ("jerk", "--kit", "hall", "--per-week", "1", "--home-days", "2")
    said = ask(*asked).stdout
    assert "hall kit, once a week, 2 at home, 40 min" in said
    assert "2, at home" in said
    assert "At home, alone: what has been shown" in said
    sheet, dates = tmp_path / "plan.html", tmp_path / "plan.ics"
    ask(*asked, "--sheet", str(sheet), "--calendar", str(dates), "--start", "2026-03-02")
    assert "at home" in sheet.read_text("utf-8")
    assert "at home" in dates.read_text("utf-8")


def test_what_is_at_home_can_be_listed() -> None:
    """A kit's items one by one are the same plan as the kit; fewer items are another."""
    asked = ("jerk", "--kit", "hall", "--per-week", "1", "--home-days", "2")
    kits = {
        each["id"]: each["items"]
        for each in json.loads(CliRunner().invoke(drillpath, ["kits", "--json"]).stdout)["kits"]
    }
    assert ask(*asked, "--home-have", ",".join(kits["home"])).stdout == ask(*asked).stdout
    assert ask(*asked, "--home-have", "headroom").stdout != ask(*asked).stdout


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (("--weight", "40"), "name it with --weeks or --by"),
        (("--weeks", "3", "--by", "2026-03-20"), "both name the day"),
        (("--by", "soon"), "--by 'soon' is no date; write it as 2026-05-01"),
        (("--by", "2026-02-01", "--start", "2026-03-02"), "is before the next session, 2026-03-02"),
        (("--by", "2036-02-01", "--start", "2026-03-02"), "more than 104 weeks away"),
        (("--weeks", "3", "--from", "20"), "say with --weight where it goes"),
        (("--weeks", "3", "--weight", "heavy"), "--weight"),
        (("--weeks", "3", "--weight", "40", "--bar", "mens"), "here is no bar 'mens'"),
        (("--home-days", "2", "--home-kit", "hom"), "here is no kit 'hom'"),
        (("--home-days", "2", "--home-have", "stik"), "stick"),
        (("--home-days", "2", "--home-have", "stick", "--home-kit", "home"), "can't stand with --home-kit"),
        (("--home-have", "stick"), "say with --home-days"),
        (("--weak", "jerk"), "name it with --weeks or --by"),
        (("--lessons", "3", "--weeks", "9"), "so it can't stand with --weeks"),
        (("--lessons", "3", "--to", "push-press"), "so it can't stand with --to"),
        (("--lessons", "3", "--home-days", "2"), "so it can't stand with --home-days"),
        (("--lessons", "3", "--returning"), "so it can't stand with --returning"),
        (("--lessons", "3", "--finish", "0"), "so it can't stand with --finish"),
        (("--lessons", "3", "--also-weight", "40"), "so it can't stand with --also-weight"),
        (("--lessons", "3", "--stiff", "tail"), "opens a joint 'tail'"),
        (("--stiff", "ankle"), "say with --lessons how many"),
        (("--afraid",), "say with --lessons how many"),
        (("--best", "60"), "name it with --weeks or --by"),
        (("--weeks", "3", "--opener", "85"), "say with --weight or --best"),
        (("--weeks", "3", "--best", "60", "--weight", "62"), "leave out --weight"),
        (("--weeks", "3", "--spare", "neck"), "doesn't know 'neck'"),
        (("--spare", "back"), "name it with --weeks or --by"),
        (("--away", "0"), "is no week away; write numbers from 2 to 104"),
        (("--away", "5,next"), "is no week away"),
        (("--away", "1"), "is no week away"),
        (("--away-have", "dumb-bell"), "say with --away which weeks they are"),
        (("--away", "9", "--weeks", "9"), "eek 9 can't be away: the day is in week 9"),
        (("--weak", "clean", "--weeks", "9"), "lean is no part of the jerk"),
        (("--home-days", "6", "--per-week", "3"), "from 1 to 7 in all"),
    ],
)
def test_a_wish_that_cannot_be_is_refused_in_a_sentence(options: tuple[str, ...], says: str) -> None:
    """With the option, and the nearest right value where there is one."""
    assert says in ask("jerk", *options, code=2).stderr


def test_the_part_that_lags_behind_is_said() -> None:
    """By the lift's name, in the text and in the JSON."""
    asked = ("clean-and-jerk", "--holds", "full-clean-and-jerk", "--weeks", "9", "--weak", "jerk")
    said = " ".join(ask(*asked).stdout.split())
    assert "lags behind, so it begins each week" in said
    assert json.loads(ask(*asked, "--json").stdout)["weak"] == "full-jerk"


def test_a_best_is_no_goal_but_what_the_goal_is_reckoned_from() -> None:
    """A little more than it, from nine tenths; the opener as light as was asked for, the second half-way."""
    asked = ("clean-and-jerk", "--holds", "full-clean-and-jerk", "--weeks", "10", "--best", "75", "--opener", "84")
    said = " ".join(ask(*asked, "--kit", "hall", "--bar", "women").stdout.split())
    assert "goes from 67, nine tenths of the best, to 77 kg, a little more than the 75 of the best" in said
    assert "First try, 64 kg" in said
    assert "Second try, 70 kg" in said
    assert "announced, two people looking on" in said
    assert "% more" not in said


@pytest.mark.no_cover
def test_a_back_that_is_slow_to_be_fresh_is_spared(monkeypatch: pytest.MonkeyPatch) -> None:
    """No hinge and no slow pull in any session, of either lift; without the wish there are some."""
    monkeypatch.delenv("DRILLPATH_LIBRARY")  # the small library has no snatch
    asked = ("clean", "--holds", "full-clean", "--weeks", "8", "--best", "75", "--also", "snatch")
    asked += ("--also-best", "58", "--kit", "hall", "--minutes", "75", "--per-week", "3", "--json")
    found = []
    for more in ((), ("--spare", "back")):
        sessions = json.loads(ask(*asked, *more).stdout)["sessions"]
        drills = {each["id"] for session in sessions for each in session["drills"]}
        found.append({each for each in drills if "pull" in each or "deadlift" in each or "row" in each})
    assert found[0]
    assert found[1] == set()


def test_a_plan_for_several_is_in_per_cent_of_each_ones_best(monkeypatch: pytest.MonkeyPatch) -> None:
    """Both lifts; the same shares as in kilograms for bests of a hundred, up to rounding; no kilograms anywhere."""
    monkeypatch.delenv("DRILLPATH_LIBRARY")  # the small library has no snatch
    asked = ("clean-and-jerk", "--holds", "full-clean-and-jerk", "--weeks", "4", "--also", "snatch", "--kit", "hall")
    text = ask(*asked, "--per-cent").stdout
    assert "kg" not in text.split("new: shown")[0].replace("kilograms", "")
    shares = json.loads(ask(*asked, "--per-cent", "--json").stdout)["sessions"]
    kilograms = json.loads(ask(*asked, "--best", "100", "--also-best", "100", "--json").stdout)["sessions"]
    weights = [
        [(each["id"], each["kg"]) for session in plan for each in session["drills"] if each["kg"] is not None]
        for plan in (shares, kilograms)
    ]
    assert len(weights[0]) > 20
    for (one, share), (other, kg) in zip(*weights, strict=True):
        assert one == other
        assert abs(share - kg) <= 1
    assert {each.get("unit") for session in shares for each in session["drills"]} == {"%"}


@pytest.mark.parametrize(
    ("more", "says"),
    [
        (("--weeks", "4", "--best", "60"), "can't stand with --best"),
        (("--weeks", "4", "--also", "snatch", "--also-weight", "60"), "can't stand with --also-weight"),
        ((), "name it with --weeks or --by"),
        (("--weeks", "4", "--csv"), "can't stand with --per-cent"),
    ],
)
def test_per_cent_stands_with_no_kilograms(more: tuple[str, ...], says: str) -> None:
    """One sentence that says what to leave out, or what is missing."""
    assert says in ask("clean", "--holds", "full-clean", "--per-cent", *more, code=2).stderr


@pytest.mark.parametrize(("first", "much"), [("48", True), ("58", False)])
def test_a_wish_far_above_what_goes_today_is_called_one(first: str, much: bool) -> None:
    """Twenty-five per cent in fourteen weeks, beside a little more; of who holds the lift."""
    asked = ("clean-and-jerk", "--holds", "full-clean-and-jerk", "--weeks", "14", "--weight", "60", "--from", first)
    said = " ".join(ask(*asked, "--kit", "hall").stdout.split())
    assert ("That is 25 % more" in said) is much


@pytest.mark.parametrize("option", ["--squats", "--finish"])
def test_a_limit_of_what_strengthens_needs_a_day(option: str) -> None:
    """Until the lift is held nothing strengthens."""
    said = ask("jerk", option, "1", code=2).stderr
    assert f"{option} is about the weeks up to a day" in said


def test_weeks_by_turns_are_asked_for_with_commas() -> None:
    """Monday and Wednesday, and every other Friday."""
    answer = json.loads(ask("jerk", "--per-week", "2,3", "--start", "2026-03-02", "--json").stdout)
    assert (answer["per_week"], answer["turns"]) == (3, [2, 3])
    days = ["2026-03-02", "2026-03-04", "2026-03-09", "2026-03-11", "2026-03-13", "2026-03-16"]
    assert [session["date"] for session in answer["sessions"][:6]] == days
    assert "2 and 3 a week by turns" in ask("jerk", "--per-week", "2,3").stdout.replace("\n", " ")
    for wrong in ("2,", "2,9", "two", "2;3"):
        assert "--per-week" in ask("jerk", "--per-week", wrong, code=2).stderr


@pytest.mark.no_cover
def test_a_second_lift_is_asked_for_with_its_weight(monkeypatch: pytest.MonkeyPatch) -> None:
    """And says what is missing. The small library has no snatch. A jerk, as its path is soon found."""
    monkeypatch.delenv("DRILLPATH_LIBRARY")
    day = ["--weeks", "5", "--weight", "62", "--from", "58", "--holds", "full-jerk", "--bar", "women"]
    second = ["--also", "snatch", "--also-weight", "38", "--also-from", "34"]
    said = ask("jerk", *day, *second, "--minutes", "60").stdout
    assert said.startswith("Snatch, jerk")
    assert "First in each session, the snatch goes from 34 to 38 kg." in " ".join(said.split())
    answer = json.loads(ask("jerk", *day, *second, "--minutes", "60", "--json").stdout)
    assert (answer["second"]["lift"], answer["second"]["weight_kg"]) == ("snatch", 38.0)
    tries = [each["tries"] for each in answer["sessions"][-1]["drills"] if each["tries"]]
    assert [each[-1] for each in tries] == [38.0, 62.0]
    assert "say with --also-weight" in ask("jerk", *day, "--also", "snatch", code=2).stderr
    assert "name it with --also" in ask("jerk", *day, "--also-weight", "38", code=2).stderr
    assert "both held today" in ask("jerk", *day[:6], *second, code=2).stderr


def test_two_lifts_take_turns_in_lessons(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """Numbers, table, calendar and pages go through both; what the first lesson has shown isn't shown anew."""
    monkeypatch.delenv("DRILLPATH_LIBRARY")  # the small library has no snatch
    asked = ("snatch", "--also", "clean", "--lessons", "5", "--minutes", "30", "--kit", "hall")
    answer = json.loads(ask(*asked, "--json").stdout)
    assert (answer["lift"], answer["also"]["lift"]) == ("snatch", "clean")
    assert [each["n"] for each in answer["sessions"]] == [1, 3, 5]
    assert [each["n"] for each in answer["also"]["sessions"]] == [2, 4]
    first = {drill["id"] for drill in answer["sessions"][0]["drills"]}
    assert not any(drill["as"] == "new" and drill["id"] in first for drill in answer["also"]["sessions"][0]["drills"])
    said = ask(*asked).stdout
    assert said.startswith("By turns, a lesson each: 1, 3 and 5 of the snatch; 2 and 4 of the clean.")
    assert said.count("Stop on pain, not on effort.") == 1
    rows = list(csv.DictReader(io.StringIO(ask(*asked, "--csv").stdout)))
    assert [int(n) for n, _ in groupby(rows, key=lambda row: row["session"])] == [1, 2, 3, 4, 5]
    sheet, calendar = tmp_path / "lessons.html", tmp_path / "lessons.ics"
    ask(*asked, "--sheet", str(sheet), "--calendar", str(calendar), "--start", "2026-03-02")
    assert re.findall(r"<h2>Lesson (\d)", sheet.read_text("utf-8")) == ["1", "2", "3", "4", "5"]
    starts = re.findall(r"DTSTART[^:]*:(\d+)", calendar.read_text("utf-8"))
    assert len(starts) == 5
    assert starts == sorted(starts)


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (("snatch", "--also", "clean", "--lessons", "1"), "say --lessons 2 at least"),
        (("clean", "--also", "clean", "--lessons", "4"), "is the lift itself"),
        (("clean", "--also", "press", "--lessons", "4"), "press"),
    ],
)
def test_what_cannot_take_turns(options: tuple[str, ...], says: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """One lesson, the same lift, no lift."""
    monkeypatch.delenv("DRILLPATH_LIBRARY")
    assert says in ask(*options, code=2).stderr
