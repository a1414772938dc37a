"""`drillpath session` as it is typed: each form of the answer, and one sentence for what can't be understood."""

import json
import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from kb.ask.session.worth import WORTH
from kb.commands.group import drillpath

ROOT = Path(__file__).resolve().parents[1]


def run(*typed: str) -> Result:
    """The command as a user types it."""
    return CliRunner().invoke(drillpath, ["--library", str(ROOT), "session", *typed])


CRASH = ("--fault", "clean-bar-crashes", "--kit", "hall")


@pytest.mark.parametrize(
    "minutes", ["0", "-3", "nan", "10000", "ten", "2.5", "inf", "", " ", "1e2", "\N{SUPERSCRIPT TWO}", "241"]
)
def test_minutes_must_be_minutes(minutes: str) -> None:
    """One sentence, whatever was typed."""
    done = run(*CRASH, "--minutes", minutes)
    assert done.exit_code == 2
    assert done.stderr.strip() == f"Error: --minutes takes a whole number from 1 to 240, not {minutes!r}."


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ((), "Name one of --fault, --path and --drills"),
        (("--fault", "knees-cave", "--path", "clean"), "Name one of --fault, --path and --drills"),
        (("--drills", "tall-clean"), "--drills needs --lift"),
        (("--drills", ",", "--lift", "clean"), "--drills lists no drill"),
        (("--drills", "tall-klean", "--lift", "clean"), "tall-klean"),
        (("--path", "clean", "--lift", "clean"), "--path names the lift already"),
        (("--path", "clean", "--cause", "x"), "--cause and --load go with --fault"),
        (("--drills", "tall-clean", "--lift", "clean", "--holds", "rack-hold"), "leave out --holds"),
        (("--fault", "knees-cave"), "more than one lift"),
        (("--fault", "clean-bar-crashes", "--cause", "moon"), "no cause 'moon'"),
        (("--fault", "clean-bar-crashes", "--kit", "moon"), "no kit 'moon'"),
        (("--fault", "clean-bar-crashes", "--best", "snatch=nan"), "nan"),
        (("--fault", "clean-bar-crashes", "--session", "9"), "there is no session 9"),
        (("--fault", "clean-bar-crashes", "--pace", "--json"), "forms of one answer"),
        (("--fault", "shoulder hurts"), "qualified"),
    ],
)
def test_what_cannot_be_understood(typed: tuple[str, ...], said: str) -> None:
    """Exit 2, and why; never a traceback."""
    done = run(*typed, "--minutes", "20")
    assert done.exit_code == 2, done.output
    assert said.lower() in done.stderr.lower()
    assert "Traceback" not in done.output


def test_which_lift_is_asked_with_commands_to_paste() -> None:
    """Each command names the fault once, keeps what was typed, and answers when it is pasted."""
    typed = ("--fault", "knees-cave", "--minutes", "20", "--best", "clean=80", "--best", "snatch=60")
    lines = run(*typed).stderr.strip().splitlines()[1:]
    assert len(lines) > 1
    for line in lines:
        words = shlex.split(line)
        assert words.count("--fault") == words.count("knees-cave") == 1
        assert words.count("--best") == 2
        assert run(*words[words.index("session") + 1 :]).exit_code == 0
    guess = run("--fault", "bar crashes onto me", "--minutes", "20").stderr.splitlines()
    assert any("--fault clean-bar-crashes" in line for line in guess)


def test_too_short_says_the_least() -> None:
    """Exit 1 with the minutes that would do; for programs too."""
    done = run(*CRASH, "--minutes", "1")
    assert done.exit_code == 1
    assert "1 min is too short" in done.stderr
    answer = json.loads(run(*CRASH, "--minutes", "1", "--json").stdout)
    assert answer["sessions"] == answer["blocks"] == []
    assert "too short" in answer["why"]


def test_no_chain_says_where_to_look() -> None:
    """Exit 1, the reason, and the question that says what can be rehearsed."""
    done = run("--fault", "catches-high", "--lift", "clean", "--kit", "stick", "--minutes", "20")
    assert done.exit_code == 1
    assert "doesn't test this fault" in done.stderr
    assert "rehearsed" in done.stderr


def test_what_can_be_rehearsed_makes_a_session() -> None:
    """The command below a rehearsal answers with its drills, in their order and at their loads."""
    typed = ["--library", str(ROOT), "chain", "catches-high", "--lift", "clean", "--kit", "stick"]
    none = CliRunner().invoke(drillpath, typed)
    assert none.exit_code == 1
    answer = json.loads(CliRunner().invoke(drillpath, [*typed, "--json"]).stdout)
    command = next(line.strip() for line in none.stdout.splitlines() if line.startswith("  drillpath session"))
    assert command == answer["session"]
    rehearsed = [(each["id"], each["load"]) for each in answer["rehearse_in_full"]]
    assert [each["id"] for each in answer["rehearse"]][: len(rehearsed)] == [each for each, _ in rehearsed]
    done = run(*shlex.split(command)[2:], "--json")
    assert done.exit_code == 0, done.output
    blocks = [
        (block["drill"]["id"], block["how_heavy"])
        for block in json.loads(done.stdout)["blocks"]
        if block["part"] == "chain"
    ]
    assert blocks
    assert blocks == [each for each in rehearsed if each in blocks]


def test_each_form_answers() -> None:
    """Text, JSON, pace and message of the same session; with bests the kilograms are there."""
    text = run(*CRASH, "--minutes", "20", "--best", "clean=80")
    assert text.exit_code == 0, text.output
    assert " kg: " in text.stdout
    assert text.stdout.count("without a weight met the standard") == 1
    answer = json.loads(run(*CRASH, "--minutes", "20", "--best", "clean=80", "--json").stdout)
    assert sum(block["seconds"] for block in answer["blocks"]) + answer["spare_s"] == 1200
    assert answer["blocks"][-1]["load"]["kg"] > 20
    assert run(*CRASH, "--minutes", "20", "--pace").stdout.startswith("  0:00  ")
    assert run(*CRASH, "--minutes", "20", "--message").stdout.startswith("The bar crashes onto the shoulders: 20 min")


def test_a_path_and_a_list_answer() -> None:
    """The next session from what is held, and a coach's own drills."""
    path = run("--path", "jerk", "--minutes", "30", "--kit", "hall", "--teach")
    assert path.exit_code == 0, path.output
    assert "session 1 of " in path.stdout
    own = run(
        "--drills", "tall-jerk,dip-hold", "--lift", "jerk", "--minutes", "25", "--have", "bar,headroom,discs,drop-floor"
    )
    assert own.exit_code == 0, own.output
    assert own.stdout.index("Tall jerk") < own.stdout.index("Dip hold") or "dip" in own.stdout.lower()


def test_without_discs_no_discs_are_counted_out() -> None:
    """Where the room has none, what goes on the bar is the bar."""
    typed = ("--drills", "dip-and-drive", "--lift", "jerk", "--minutes", "25", "--best", "jerk=80")
    done = run(*typed, "--have", "bar,headroom,drop-floor", "--json")
    assert done.exit_code == 0, done.output
    assert {tuple(block["load"]["discs_kg"]) for block in json.loads(done.stdout)["blocks"] if block["load"]} == {()}


def test_the_page_about_sessions_is_true() -> None:
    """What kb/docs/session.md shows is what is printed, and its points are those that decide."""
    page = (ROOT / "kb" / "docs" / "session.md").read_text("utf-8")
    command, shown = page.split("```text\n$ drillpath session ")[1].split("```")[0].split("\n", 1)
    assert run(*command.split()).stdout.startswith(shown)
    table = {name: int(points) for name, points in re.findall(r"^\| `(\w+)` \| (-?\d+) \|", page, re.MULTILINE)}
    assert table == {name: points for name, (points, _) in WORTH.items()}


def test_a_session_starts_quickly() -> None:
    """For programs: nothing of the build, of other questions, or of what sets text is imported."""
    script = (
        "import sys\nfrom kb.cli import main\ntry:\n    main()\nexcept SystemExit:\n    pass\n"
        "print(*sys.modules, file=sys.stderr)"
    )
    typed = ["--library", str(ROOT), "session", *CRASH, "--minutes", "20", "--json"]
    done = subprocess.run([sys.executable, "-c", script, *typed], capture_output=True, text=True, cwd=ROOT, check=True)
    modules = set(done.stderr.split())
    assert "kb.ask.session.sessions" in modules
    slow = {"pydantic", "networkx", "sqlite_utils", "markdown_it", "yaml", "jinja2", "ortools", "textwrap"}
    assert not modules & {*slow, "kb.ask.path", "kb.ask.session.path_course", "kb.ask.find", "kb.show.session_text"}
