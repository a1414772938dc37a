"""The command: every question through click, its exit codes, and what goes to which stream."""

import json
import os
import re
import shutil
import subprocess
import sys
from html import unescape
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from small_answers import SMALL, built

from kb import __version__, cli
from kb.commands.group import COMMANDS, drillpath
from kb.make.build import build


@pytest.fixture(autouse=True)
def _library(monkeypatch: pytest.MonkeyPatch) -> None:
    """Every question is asked of the small library."""
    monkeypatch.setenv("DRILLPATH_LIBRARY", str(built()))
    monkeypatch.setenv("COLUMNS", "80")


@pytest.fixture
def own(tmp_path: Path) -> Path:
    """A copy of the small library to change."""
    shutil.copytree(SMALL / "drills", tmp_path / "drills")
    build(tmp_path, tmp_path / "out", tmp_path / "graphs")
    return tmp_path


def ask(*arguments: str, code: int = 0) -> Result:
    """Run the command; it must exit with `code`."""
    result = CliRunner().invoke(drillpath, list(arguments))
    assert result.exit_code == code, (result.output, result.exception)
    return result


def as_json(*arguments: str, code: int = 0) -> dict:
    """Its answer for programs, which is all of standard output."""
    answer: dict = json.loads(ask(*arguments, "--json", code=code).stdout)
    assert answer["version"] == 1
    return answer


def test_help_lists_every_command_and_says_how_to_complete() -> None:
    """Questions first; each command has help of its own."""
    text = ask("--help").stdout
    places = [text.index(f"\n  {name} ") for name in COMMANDS]
    assert places == sorted(places)
    assert "_DRILLPATH_COMPLETE=bash_source" in text
    for name in COMMANDS:
        assert ask(name, "-h").stdout.startswith(f"Usage: drillpath {name}")


def test_the_version_is_the_packages() -> None:
    """As click says it."""
    assert ask("--version").stdout == f"drillpath, version {__version__}\n"


def test_an_unknown_command_is_not_understood() -> None:
    """Exit 2, with click's own words."""
    assert "No such command 'chian'" in ask("chian", code=2).stderr


def test_a_chain_is_printed_or_put_as_json() -> None:
    """The same question, twice."""
    assert ask("chain", "hips-rise-first").stdout.startswith("Hips rise first")
    assert as_json("chain", "hips-rise-first")["kit"] == "full"


def test_a_fault_may_be_named_in_many_ways() -> None:
    """Its id, its name, another name, a beginning; quoted or not."""
    for named in (["hips-rise-first"], ["Hips rise first"], ["hips", "rise"], ["the bar crashes onto"]):
        as_json("chain", *named)


def test_every_option_of_a_chain_counts() -> None:
    """Cause (a beginning will do), kit or gear, load, minutes, what is held, how many, how many ways, why."""
    assert as_json("chain", "hips-rise-first", "--cause", "hips-set")["cause"] == "hips-set-low"
    assert as_json("chain", "hips-rise-first", "--kit", "stick")["load"] == "stick"
    listed = as_json("chain", "hips-rise-first", "--have", "bar,Discs, headroom,drop-floor")
    assert (listed["kit"], listed["load"]) == (None, "light")
    assert as_json("chain", "hips-rise-first", "--load", "working")["load"] == "working"
    assert len(as_json("chain", "hips-rise-first", "--minutes", "12")["routes"][0]["sittings"]) == 2
    held = as_json("chain", "hips-rise-first", "--holds", "start-hold")["routes"][0]["drills"]
    assert held[0]["id"] != "start-hold"
    assert len(as_json("chain", "hips-rise-first", "--at-most", "2")["routes"][0]["sittings"]) > 1
    assert as_json("chain", "clean-bar-crashes", "--routes", "2", "--lift", "clean-and-jerk")["lift"] == (
        "clean-and-jerk"
    )
    assert "Why this way" in ask("chain", "hips-rise-first", "--why").stdout


def test_what_to_look_at_first_leads_on_paper_too(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """By its number, as it stands in the shipped entry; a number that there isn't is refused, and nothing written."""
    monkeypatch.delenv("DRILLPATH_LIBRARY")
    asked = ("chain", "jerk-press-out", "--kit", "hall", "--first")
    said = as_json(*asked, "2", "--json")["first"]
    assert said.startswith("First: ")
    assert " ".join(ask(*asked, "2").stdout.split()).index(said) < 200
    sheet = tmp_path / "chain.html"
    ask(*asked, "2", "--sheet", str(sheet))
    assert said in unescape(sheet.read_text("utf-8"))
    sheet.unlink()
    assert said.endswith("So the drills are for that one.")
    stays = ask(*asked, "2", "--cause", "slow-lockout").stdout
    assert stays.startswith("Presses out the jerk")
    assert not ask(*asked, "2").stdout.startswith("Presses out the jerk")
    two = ask("chain", "clean-bar-crashes", "--kit", "hall", "--first", "1").stdout
    assert two.startswith("The bar crashes onto the shoulders"), "it names two faults, so neither is taken"
    assert "things to look at first" in ask(*asked, "9", "--sheet", str(sheet), code=2).stderr
    assert not sheet.exists()


def test_an_unknown_fault_comes_with_commands_to_paste() -> None:
    """The three best of `find`, the rest of the command as it was typed; each of them works."""
    refused = ask("chain", "bar drops on my collarbone", "--kit", "stick", "--why", "--cause", "x", code=2)
    sentence, *commands = refused.stderr.splitlines()
    assert sentence == "Error: There is no fault 'bar drops on my collarbone'. Did you mean:"
    assert commands[0] == "  drillpath chain clean-bar-crashes --kit stick --why"
    assert 1 <= len(commands) <= 3
    for command in commands:
        ask(*command.split()[1:])


def test_the_library_that_was_named_stays_in_the_command() -> None:
    """What is pasted asks the same one."""
    refused = ask("--library", str(built()), "chain", "bar drops on my collarbone", code=2)
    assert f"drillpath --library {built()} chain clean-bar-crashes" in refused.stderr


def test_words_that_mean_nothing_are_said_to() -> None:
    """Exit 2, without a guess."""
    assert "nor any that these words speak of" in ask("chain", "qqqq", code=2).stderr


def test_words_of_pain_are_answered_by_the_caution() -> None:
    """Never with a fault."""
    assert ask("chain", "my shoulder hurts", code=2).stderr.startswith("Error: Stop there, and ask someone qualified")
    found = as_json("find", "my shoulder hurts")
    assert found["caution"]
    assert found["faults"] == found["drills"] == []


def test_a_fault_of_several_lifts_asks_which(own: Path) -> None:
    """With a command for each; `--lift` answers."""
    path = own / "drills" / "faults" / "hips-rise-first.md"
    path.write_text(path.read_text(encoding="utf-8").replace("lifts: [clean]", "lifts: [clean, clean-and-jerk]"))
    build(own, own / "out", None)
    refused = ask("--library", str(own), "chain", "hips-rise-first", code=2)
    assert "hips-rise-first is seen in more than one lift. Which do you mean?".lower() in refused.stderr.lower()
    assert "chain hips-rise-first --lift clean-and-jerk" in refused.stderr
    assert as_json("--library", str(own), "chain", "hips-rise-first", "--lift", "clean")["lift"] == "clean"
    guessed = ask("--library", str(own), "chain", "hips shoot up rising", code=2)
    assert "chain hips-rise-first --lift clean" in guessed.stderr


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (("--lift", "snatch"), "There is no lift 'snatch'"),
        (("--lift", "jerk"), "is not a fault of the jerk"),
        (("--lift", "jerk", "--cause", "hips"), "is not a fault of the jerk"),
        (("--cause", "nonsense"), "Did you mean lost-back-angle, hips-set-low"),
        (("--kit", "hal"), "There is no kit 'hal'. Did you mean full, hall, home or stick?"),
        (("--kit", "hall", "--have", "bar"), "--have lists exactly what is there"),
        (("--have", "barr"), "There is no equipment 'barr'. Did you mean bar"),
        (("--holds", "start-hodl"), "Did you mean start-hold"),
        (("--load", "heavy"), "'heavy' is not one of"),
        (("--minutes", "0"), "0 is not in the range"),
    ],
)
def test_what_cant_be_understood_exits_2_with_the_nearest(arguments: tuple[str, ...], says: str) -> None:
    """All on standard error."""
    refused = ask("chain", "hips-rise-first", *arguments, code=2)
    assert says in refused.stderr
    assert refused.stdout == ""


def test_no_chain_exits_1_with_what_can_be_rehearsed() -> None:
    """The reason on standard error, what helps on standard output."""
    none = ask("chain", "hips-rise-first", "--have", "bar,headroom", code=1)
    assert (
        none.stderr == "No chain: The clean itself can't be done with this kit without discs and floor for dropping.\n"
    )
    answer = as_json("chain", "hips-rise-first", "--have", "bar,headroom", code=1)
    assert (answer["routes"], answer["why"]) == (
        [],
        "the clean itself can't be done with this kit without discs and floor for dropping",
    )
    assert answer["would_open"]


def test_too_short_a_time_opens_nothing() -> None:
    """What is missing then is minutes; but a kit that is too small is that, whatever the time."""
    answer = as_json("chain", "hips-rise-first", "--minutes", "1", code=1)
    assert "takes at least" in answer["why"]
    assert answer["rehearse"] == answer["would_open"] == []
    assert answer["session"] is None
    assert as_json("chain", "hips-rise-first", "--minutes", "30", "--have", "bar,headroom", code=1)["would_open"]


def test_too_short_a_time_for_a_chain_names_the_session_that_fits() -> None:
    """A command ready to paste that is answered, with all that was said but what a session doesn't take."""
    typed = ("chain", "hips-rise-first", "--kit", "hall", "--minutes", "8", "--at-most", "7", "--why")
    refused = ask(*typed, code=1)
    assert "What does fit" in refused.stderr
    command = refused.stderr.splitlines()[-1].split()
    assert command == "drillpath session --fault hips-rise-first --kit hall --minutes 8".split()
    assert ask(*command[1:]).stdout
    assert as_json(*typed[:-1], code=1)["session"].split() == command


def test_a_path_to_a_part_of_a_lift() -> None:
    """Shorter than to the lift, under the part's own name; a plan goes the same way."""
    part = as_json("path", "clean", "--to", "tall clean")["drills"]
    assert part[-1]["id"] == "tall-clean"
    assert len(part) < len(as_json("path", "clean")["drills"])
    assert ask("path", "clean", "--to", "tall-clean").stdout.startswith("Tall clean")
    assert ask("plan", "clean", "--to", "tall-clean").stdout.startswith("Tall clean")


def test_a_path_from_nothing_and_from_what_is_held() -> None:
    """In either order, with any kit."""
    whole = as_json("path", "clean")["drills"]
    held = as_json("path", "clean", "--holds", "front-squat,rack-hold", "--order", "down", "--kit", "hall")["drills"]
    assert len(held) < len(whole)
    assert "from what is held" in ask("path", "clean", "--holds", "front-squat").stdout
    assert "from nothing" in ask("path", "clean").stdout


def test_a_kit_that_doesnt_lead_there_exits_1() -> None:
    """With the reason, and the path as far as it goes."""
    assert ask("path", "clean", "--have", "", code=1).stderr.startswith("Error: The clean itself can't be done")
    none = ask("path", "clean", "--have", "bar", code=1)
    assert none.stdout.startswith("Towards the clean, as far as it goes")
    answer = as_json("path", "clean", "--have", "bar", code=1)
    assert answer["why"].startswith("the clean itself can't be done")
    assert answer["drills"] == []
    assert [each["name"] in none.stdout for each in answer["towards"]] == [True, True]
    assert "Towards" not in ask("path", "clean", "--have", "", "--holds", "air-squat", code=1).stdout


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("tall-clean", "drill"),
        ("hips-rise-first", "fault"),
        ("clean-receive", "position"),
        ("clean", "lift"),
        ("bar", "equipment"),
        ("Tall cle", "drill"),
    ],
)
def test_any_entry_can_be_shown(name: str, kind: str) -> None:
    """Its id wins over another entry's name."""
    answer = as_json("show", name)
    assert answer["kind"] == kind
    assert answer["sections"]
    assert ask("show", name).stdout.startswith(answer["name"])


def test_a_session_is_asked_for_the_cause_that_was_taken(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where nobody named it: the command that fills the minutes names the one the chain is for."""
    monkeypatch.delenv("DRILLPATH_LIBRARY")
    asked = ("chain", "hips-rise-first", "--lift", "clean", "--kit", "hall", "--minutes", "60")
    assert "--cause weak-legs-off-floor" in " ".join(ask(*asked, "--load", "working").stdout.split())
    assert "--cause" not in " ".join(ask(*asked).stdout.split()).split("drillpath session")[1].split(" 60")[0]


def test_nothing_strengthens_in_the_last_two_weeks(monkeypatch: pytest.MonkeyPatch) -> None:
    """Before a day that counts what tires is left out: common practice in tapering, no source."""
    monkeypatch.delenv("DRILLPATH_LIBRARY")
    asked = ("chain", "grip-opens", "--lift", "clean", "--kit", "hall", "--weeks")
    assert "waits until after the day" in ask(*asked, "2").stdout
    assert "waits until after the day" not in ask(*asked, "3").stdout


def test_who_is_unsure_of_the_cause_has_the_checks_before_the_drills(monkeypatch: pytest.MonkeyPatch) -> None:
    """Though it was named; who is sure has them after."""
    monkeypatch.delenv("DRILLPATH_LIBRARY")
    asked = ("chain", "bar-forward-overhead", "--cause", "lost-bar-line", "--kit", "stick", "--said")
    doubted, sure = ask(*asked, "is it my shoulders or what?").stdout, ask(*asked, "the shoulders are fine").stdout
    assert doubted.index("To tell the causes apart") < doubted.index("Move on")
    assert "the cause isn't sure" in doubted
    assert sure.index("Move on") < sure.index("To tell the causes apart")


def test_what_was_said_of_the_lifter_comes_before_other_answers_too() -> None:
    """In a swap and a plan as in a chain: what is minded first, a trouble of the body alone; JSON stays JSON."""
    assert ask("swap", "tall clean", "--said", "he is 67").stdout.startswith("For this lifter\n  - Past sixty")
    assert "For this lifter" in ask("plan", "clean", "--kit", "hall", "--said", "trains alone").stdout
    told = ask("swap", "tall clean", "--json", "--said", "he is 67")
    assert json.loads(told.stdout)["drill"] == "tall-clean"
    assert "Past sixty" in told.stderr
    hurt = ask("swap", "tall clean", "--said", "her knee hurts", code=2)
    assert hurt.stdout == ""
    assert "ask someone qualified first" in hurt.stderr


def test_found_swapped_and_the_kits() -> None:
    """In text and as JSON."""
    assert as_json("find", "hips", "come", "up", "--lift", "clean")["faults"][0]["id"] == "hips-rise-first"
    assert "hips-rise-first" in ask("find", "hips come up").stdout
    assert as_json("swap", "tall-clean", "--have", "stick")["using"] == {"bar": "stick"}
    assert ask("swap", "tall clean").stdout.startswith("Tall clean can be done as it is.")
    instead = ask("swap", "tall clean", "--instead").stdout
    assert instead.startswith("Instead, nearest first")
    assert "can be done" not in instead
    assert as_json("swap", "tall-clean", "--without", "full-squat")["barred"] == ["it goes into the full squat"]
    assert "behind-neck" in ask("swap", "tall-clean", "--without", "neck", code=2).stderr
    assert [kit["id"] for kit in as_json("kits")["kits"]] == ["full", "hall", "home", "stick"]
    assert ask("kits").stdout.startswith("full ")


def test_check_reports_all_and_exits_1(own: Path) -> None:
    """One line a problem in a pipe; text, JSON and annotations where they are asked for."""
    path = own / "drills" / "clean" / "tall-clean.md"
    path.write_text(path.read_text(encoding="utf-8").replace("stage: segment", "stage: nonsense"), encoding="utf-8")
    lines = ask("check", str(own), code=1).stdout.splitlines()
    assert any(line.startswith("drills/clean/tall-clean.md:5: ") for line in lines)
    answer = as_json("check", str(own), code=1)
    assert len(answer["problems"]) == len(lines)
    text = ask("check", str(own), "--format", "text", code=1).stdout
    assert "  | stage: nonsense" in text
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(own.parent)
        annotated = ask("--library", str(own), "check", "--format", "github", code=1).stdout
        assert f"::error file={own.name}/drills/clean/tall-clean.md,line=5" in annotated
    assert (
        "::error file=drills/clean/tall-clean.md,line=5" in ask("check", str(own), "--format", "github", code=1).stdout
    )


def test_check_shows_no_line_where_there_is_none(own: Path) -> None:
    """Of a file that can't be read as text."""
    (own / "drills" / "clean" / "tall-clean.md").write_bytes(b"---\nname: \xff\n---\n")
    assert "tall-clean.md" in ask("check", str(own), "--format", "text", code=1).stdout


def test_check_explains_a_code() -> None:
    """The same text as the documentation; an unknown code has its nearest."""
    assert ask("check", "--explain", "long-cue").stdout.startswith("long-cue\n")
    assert "Did you mean long-cue" in ask("check", "--explain", "long-cu", code=2).stderr


def test_a_new_drill_is_an_entry_to_fill_in(own: Path) -> None:
    """In its family; never over one; never in the program's own copy."""
    made = ask("--library", str(own), "new", "drill", "Slow", "hang", "clean").stdout
    assert made.splitlines()[0] == str(own / "drills" / "clean" / "slow-hang-clean.md")
    assert "is there already" in ask("--library", str(own), "new", "drill", "Slow hang clean", code=2).stderr
    refused = ask("--library", str(own), "new", "drill", "A", "--family", "row", code=2).stderr
    assert "There is no family 'row'. Did you mean snatch, clean" in refused


def test_the_programs_own_copy_isnt_written_to(own: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Neither built nor added to."""
    package = own / "site" / "kb"
    shutil.copytree(own / "drills", package / "shipped" / "drills")
    shutil.copy(own / "out" / "catalogue.db", package / "shipped" / "catalogue.db")
    monkeypatch.delenv("DRILLPATH_LIBRARY")
    monkeypatch.setattr("kb.where.place_of.__kwdefaults__", {"package": str(package)})
    assert as_json("chain", "hips-rise-first")["fault"] == "hips-rise-first"
    assert "isn't for writing in" in ask("new", "drill", "Slow clean", code=2).stderr
    assert "is built already" in ask("build", code=2).stderr


def test_the_schema_is_for_people_and_for_editors() -> None:
    """The reference of fields, or one kind's JSON Schema."""
    assert ask("schema").stdout.startswith("# Fields of an entry")
    assert json.loads(ask("schema", "fault").stdout)["title"].startswith("Fault")


def test_build_does_what_changed_and_check_writes_nothing(own: Path) -> None:
    """Counts files; names what is stale; stops at a broken library with all its problems."""
    assert ask("--library", str(own), "build").stdout == "Up to date.\n"
    (own / "graphs" / "clean.md").unlink()
    stale = ask("--library", str(own), "build", "--check", code=1)
    assert "graphs/clean.md is stale: run `drillpath build`." in stale.stderr
    assert "written." in ask("--library", str(own), "build").stdout
    path = own / "drills" / "clean" / "tall-clean.md"
    path.write_text(path.read_text(encoding="utf-8").replace("stage: segment", "stage: nonsense"), encoding="utf-8")
    broken = ask("--library", str(own), "build", code=1).stderr
    assert broken.startswith("drills/clean/tall-clean.md:5: ")
    assert "`drillpath check` lists them." in broken


def completed(line: str) -> list[str]:
    """What a shell is offered for the last word of a line."""
    words = line.split(" ")
    environment = {"COMP_WORDS": line, "COMP_CWORD": str(len(words) - 1), "_DRILLPATH_COMPLETE": "bash_complete"}
    result = CliRunner().invoke(drillpath, env=environment, prog_name="drillpath")
    return [row.partition(",")[2] for row in result.stdout.split()]


def test_names_are_completed() -> None:
    """Of the kind that is asked for; in a list, the last of it; nothing, and no error, without a library."""
    assert completed("drillpath chain hip") == ["hips-rise-first"]
    assert completed("drillpath show clean-re") == ["clean-receive", "clean-reset-jerk"]
    assert completed("drillpath path clean --holds start-hold,fro") == [
        "start-hold,front-squat",
        "start-hold,front-squat-jerk",
    ]
    assert completed("drillpath --library nowhere chain hip") == []


def test_the_console_script_answers_from_anywhere(tmp_path: Path) -> None:
    """And a terminal that can't show a character gets a question mark."""
    environment = {**os.environ, "DRILLPATH_LIBRARY": str(built()), "PYTHONIOENCODING": "ascii", "PYTHONPATH": "."}
    environment["PYTHONPATH"] = str(Path(cli.__file__).parents[1])
    run = "from kb.cli import main; main()"
    done = subprocess.run(
        [sys.executable, "-c", run, "show", "tall-clean"],
        env=environment,
        cwd=tmp_path,
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout.startswith("Tall clean")


def test_main_leaves_the_streams_it_is_given(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Those that can't be set otherwise too; the collector is switched on again here."""
    import gc

    monkeypatch.setattr(sys, "argv", ["drillpath", "kits"])
    try:
        with pytest.raises(SystemExit) as ended:
            cli.main()
    finally:
        gc.enable()
        gc.unfreeze()
    assert ended.value.code == 0
    assert capsys.readouterr().out.startswith("full ")


def test_weeks_and_bests_are_told_in_every_form(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """On a terminal, on paper and for programs: the same sentences."""
    monkeypatch.delenv("DRILLPATH_LIBRARY")
    asked = ("chain", "clean-bar-crashes", "--kit", "hall", "--best", "clean=60", "--best", "front-squat=72")
    asked += ("--weeks", "5")
    answer = as_json(*asked)
    sheet = tmp_path / "chain.html"
    said = " ".join(ask(*asked).stdout.split())
    ask(*asked, "--sheet", str(sheet))
    paper = unescape(sheet.read_text("utf-8"))
    assert len(answer["weeks"]) == 4
    assert "is 83 % of the front squat" in answer["numbers"][0]
    for each in (*answer["weeks"], *answer["numbers"]):
        assert each in said
        assert each in paper
    assert "up to 45 kg" in paper
    assert {"weeks", "numbers"}.isdisjoint(as_json(*asked[:4]))


def test_what_was_seen_too_chooses_the_cause_and_is_told(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """On a terminal, on paper and for programs; a cause that was named stays."""
    monkeypatch.delenv("DRILLPATH_LIBRARY")
    asked = ("chain", "bar-behind-overhead", "--kit", "hall", "--also-seen")
    answer = as_json(*asked, "bar-loops-out", "--json")
    assert answer["cause"] == "made-by-loop"
    (seen,) = answer["also_seen"]
    assert seen["relation"] == "makes"
    assert seen["taken"]
    sheet = tmp_path / "chain.html"
    text = " ".join(ask(*asked, "bar-loops-out", "--sheet", str(sheet)).stdout.split())
    assert "what else was seen points to it" in text
    assert seen["said"] in text
    assert seen["said"] in unescape(sheet.read_text("utf-8"))
    named = as_json(*asked, "bar-loops-out", "--cause", "weak-upper-back", "--json")
    assert named["cause"] == "weak-upper-back"
    assert not named["also_seen"][0]["taken"]
    apart = " ".join(ask(*asked, "jumps-forward", "--also-seen", "grip-opens").stdout.split())
    assert "Seen too: Jumps forward." in apart
    assert "Seen too: Grip opens. It shows earlier in the lift" in apart
    assert "For grip opens, once it is its turn" in apart
    assert "names another fault" in ask(*asked, "bar-behind-overhead", code=2).stderr
    afraid = ask("chain", "jerk-catches-high", "--cause", "keeps-way-out", "--also-seen", "jerk-short-split").stdout
    assert "One fear can make both." in afraid
    drills = " ".join(
        ask("chain", "yanks-bar-off-floor", "--lift", "clean", "--also-seen", "bar-drifts-forward").stdout.split()
    )
    assert "in what follows acts on it too" in drills


def test_a_chain_ends_in_a_part_of_the_lift(monkeypatch: pytest.MonkeyPatch) -> None:
    """In a power jerk for who doesn't split, told as such; a fault that it doesn't show is refused with the way out."""
    monkeypatch.delenv("DRILLPATH_LIBRARY")
    asked = ("--to", "power-jerk", "--kit", "hall")
    answer = as_json("chain", "jerk-press-out", *asked, "--json")
    assert [each["id"] for each in answer["routes"][0]["drills"]][-1] == "power-jerk"
    text = ask("chain", "jerk-press-out", *asked).stdout
    assert "power jerk, light bar" in text
    assert "won't split?" not in text
    assert "ask without `--to`" in ask("chain", "jerk-tightrope-split", *asked, code=1).stderr


def test_where_it_only_shows_from_some_weight_the_work_is_near_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """The lift ends at working weight, four fifths of it to 95 %; no drill above that; parts of it as ever.

    Common practice, no source.
    """
    monkeypatch.delenv("DRILLPATH_LIBRARY")
    asked = ("chain", "bar-behind-overhead", "--cause", "weak-upper-back", "--kit", "full")
    plain, near = as_json(*asked), as_json(*asked, "--shows-from", "85", "--best", "snatch=98")
    assert plain["load"] == "light"
    assert near["load"] == "working"
    assert near["numbers"][0].startswith("It shows from 85 kg")
    said = " ".join(ask(*asked, "--shows-from", "85", "--best", "snatch=98").stdout.split())
    assert "68 kg, up to 81 kg, not to where it shows" in said
    upto = [int(each) for each in re.findall(r"up to (\d+) kg", said.split("After training")[0].split("Over weeks")[0])]
    assert max(upto) == 81
    without_best = " ".join(ask(*asked, "--shows-from", "85").stdout.split())
    assert "68 kg, up to 81 kg" in without_best
    assert "is not between 1 and 500 kg" in ask(*asked, "--shows-from", "0", code=2).stderr
    assert "is not between 1 and 110 %" in ask(*asked, "--shows-from", "130%", code=2).stderr
    assert "neither kilograms, as 70, nor a share" in ask(*asked, "--shows-from", "heavy", code=2).stderr
    share = " ".join(ask(*asked, "--shows-from", "85%").stdout.split())
    assert "It shows from 85 % of the best snatch" in share
    assert "68 to 81 % of the best snatch, not to where it shows" in share
    known = " ".join(ask(*asked, "--shows-from", "50%", "--best", "snatch=170").stdout.split())
    assert "It shows from 85 kg" in known
    far = (
        "chain",
        "slow-off-floor",
        "--cause",
        "patience-as-slow",
        "--lift",
        "clean",
        "--kit",
        "hall",
        "--shows-from",
        "60",
        "--best",
        "clean=120",
    )
    assert "then 46 kg, up to 57 kg" in " ".join(ask(*far).stdout.split())
    without_training = ("--have", "bar,discs,stick,headroom,drop-floor,mat,wall")
    assert "no more than 18 kg: a lighter bar, or a stick" in " ".join(
        ask(*asked[:2], *without_training, "--shows-from", "22").stdout.split()
    )
    assert "30 kg is all there is" in " ".join(ask(*asked, "--shows-from", "40", "--heaviest", "30").stdout.split())
    arms = ("chain", "early-arm-bend", "--lift", "snatch", "--kit", "hall", "--shows-from", "40", "--best", "snatch=45")
    heavy = " ".join(ask(*arms).stdout.split())
    assert "light bar, then by steps to 32 kg" in heavy  # caught from the hang, to four fifths of 40 kg
    assert "light bar, then by steps to 38 kg" in heavy  # only pulled, to 0.95, though its share is of a clean
    behind = ("chain", "bar-behind-overhead", "--cause", "made-by-jumping-back", "--kit", "full")

    def hangs(*more: str) -> set[str]:
        drills = as_json(*behind, *more)["routes"][0]["drills"]
        return {each["load"] for each in drills if each["id"] in ("hang-snatch", "high-hang-power-snatch")}

    assert "stick" in hangs()
    assert hangs("--shows-from", "56") == {"light"}


def test_a_joint_that_a_check_found_is_the_one_that_is_opened(monkeypatch: pytest.MonkeyPatch) -> None:
    """The opener opens it; a joint that none of the fault's drills opens is refused with those there are."""
    monkeypatch.delenv("DRILLPATH_LIBRARY")
    asked = ("chain", "clean-low-elbows", "--lift", "clean", "--cause", "stiff-wrists-lats", "--kit", "home", "--stiff")
    for joint in ("wrist", "lat"):
        first = as_json(*asked, joint)["routes"][0]["drills"][0]["id"]
        assert joint in as_json("show", first)["opens"]
    assert "wrist" in ask(*asked, "knee", code=2).stderr


def test_minutes_that_are_left_over_name_the_session_that_fills_them() -> None:
    """A command ready to paste; nothing where the chain takes most of the time, or no time was named."""
    typed = ("chain", "hips-rise-first", "--kit", "hall")
    lines = ask(*typed, "--minutes", "60").stdout.splitlines()
    command = next(line for line in lines if line.startswith("  drillpath session --fault hips-rise-first")).split()
    assert command[-2:] == ["--minutes", "60"]
    assert ask(*command[1:]).stdout
    assert "That is" not in ask(*typed).stdout
    least = next(n for n in range(1, 61) if CliRunner().invoke(drillpath, [*typed, "--minutes", str(n)]).exit_code == 0)
    assert "That is" not in ask(*typed, "--minutes", str(least)).stdout


@pytest.mark.parametrize(("minutes", "stream"), [("60", "stdout"), ("5", "stderr")])
def test_a_session_is_named_without_what_it_does_not_take(
    minutes: str, stream: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where minutes are left over and where they are too few: a command that is answered as it stands."""
    monkeypatch.delenv("DRILLPATH_LIBRARY")
    typed = ["chain", "jerk-press-out", "--kit", "hall", "--minutes", minutes, "--cause", "slow-lockout"]
    more = ["--first", "4", "--weeks", "3", "--best", "jerk=60"]
    said = getattr(CliRunner().invoke(drillpath, [*typed, *more]), stream)
    (command,) = [line.split() for line in said.splitlines() if line.startswith("  drillpath session")]
    assert command[-2:] == ["--best", "jerk=60"]
    assert ask(*command[1:]).stdout


def test_what_helped_at_once_leads_and_what_was_advised_is_answered(monkeypatch: pytest.MonkeyPatch) -> None:
    """In the text, in the JSON, and on the sheet."""
    monkeypatch.delenv("DRILLPATH_LIBRARY")
    asked = ("chain", "hips-rise-first", "--lift", "snatch", "--kit", "hall", "--cause", "rushed-off-floor")
    more = ("--helped", "a stop at the knee", "--said", "do we need heavier pulls?")
    said = " ".join(ask(*asked, *more).stdout.split())
    assert "Helped at once: a stop at the knee. So it leads" in said
    assert "Heavier pulls, squats or presses? They won't mend it" in said
    assert "that helped at once comes first" not in said
    found = as_json(*asked, *more)
    assert found["helped"] == "a stop at the knee"
    assert len(found["advice"]) == 1
    assert {"helped", "advice"}.isdisjoint(as_json(*asked))
