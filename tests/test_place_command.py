"""`drillpath place`: asked on the terminal, by programs, broken off and gone on with."""

import json
from pathlib import Path
from shlex import split
from typing import Any

import click
import pytest
from click.testing import CliRunner, Result
from small_answers import built

from kb.commands.group import drillpath
from kb.show.care import NO_REVIEW, USUAL

CLEAN = ["air-squat", "rack-hold", "slow-lift-off", "front-squat", "tall-clean", "high-hang-clean", "full-clean"]
BELOW = {"front-squat": {"air-squat", "rack-hold"}, "full-clean": set(CLEAN) - {"tall-clean", "high-hang-clean"}}


@pytest.fixture(autouse=True)
def _library(monkeypatch: pytest.MonkeyPatch) -> None:
    """Every question is asked of the small library."""
    monkeypatch.setenv("DRILLPATH_LIBRARY", str(built()))
    monkeypatch.setenv("COLUMNS", "80")


def ask(*arguments: str, typed: str = "", code: int = 0) -> Result:
    """Run the command with something typed; it must exit with `code`."""
    result = CliRunner().invoke(drillpath, list(arguments), input=typed)
    assert result.exit_code == code, (result.output, result.exception)
    return result


def place(*arguments: str, **more: Any) -> Result:
    """Place a lifter."""
    return ask("place", *arguments, **more)


def answer_of(*arguments: str) -> dict[str, Any]:
    """The answer for programs."""
    found: dict[str, Any] = json.loads(place(*arguments, "--json").stdout)
    assert found["version"] == 1
    return found


def written(path: Path, *answers: tuple[str, str]) -> str:
    """A file of answers."""
    path.write_text(json.dumps([{"id": drill, "answer": says} for drill, says in answers]))
    return str(path)


# --- for programs ---


def test_a_first_question(tmp_path: Path) -> None:
    """Nothing answered: nothing held, and a check with all that is needed to set it up."""
    found = answer_of("clean")
    assert list(found) == [
        *("version", "lift", "kit", "holds", "sure", "checks", "next", "budget", "states", "passed", "granted"),
        *("likely", "ready"),
    ]
    assert (found["lift"], found["kit"], found["holds"], found["checks"]) == ("clean", "full", [], [])
    assert list(found["likely"]) == CLEAN
    assert found["sure"] == round(1 / found["states"], 4)
    assert set(found["next"]) == {"id", "name", "load", "gear", "standard", "cautions"}
    assert found["next"]["id"] in CLEAN
    assert answer_of("clean", "--answers", written(tmp_path / "a.json")) == found


@pytest.mark.parametrize("true", [[], ["air-squat", "rack-hold"], CLEAN[:4], CLEAN])
def test_a_program_places_a_lifter(true: list[str], tmp_path: Path) -> None:
    """Asked for as long as there is a next check, and answered as one who holds `true`: that is what comes out."""
    answers: list[tuple[str, str]] = []
    while (found := answer_of("clean", "--answers", written(tmp_path / "a.json", *answers)))["next"]:
        drill = found["next"]["id"]
        answers.append((drill, "yes" if drill in true else "no"))
    assert found["passed"] == true
    assert found["checks"] == [{"id": drill, "answer": says} for drill, says in answers]
    assert len(answers) <= found["budget"]
    assert set(found["holds"]) >= set(true)
    assert sorted([*found["passed"], *found["granted"]]) == found["holds"]
    ask("path", "clean", *(["--holds", ",".join(found["holds"])] if true else []))


def test_less_gear_fewer_checks() -> None:
    """What can't be done isn't asked; with `--have` no kit is named."""
    found = answer_of("clean", "--have", "rack")
    assert (list(found["likely"]), found["kit"], found["states"], found["budget"]) == (["air-squat"], None, 2, 2)


def test_an_answer_for_which_there_is_no_gear_counts(tmp_path: Path) -> None:
    """It was given elsewhere."""
    file = written(tmp_path / "a.json", ("rack-hold", "yes"))
    found = answer_of("clean", "--have", "rack", "--answers", file)
    assert (found["passed"], found["next"]["id"]) == (["rack-hold"], "air-squat")


# --- on the terminal ---


def test_a_dialogue() -> None:
    """The cautions, then check by check; at the end what is held, how sure, what is next, and a command that works."""
    text = place("clean", "--kit", "stick", typed="y\n" * 20).stdout
    opening, _, rest = text.partition("\n 1  ")
    flat = " ".join(opening.split())
    assert opening.startswith("How much of the clean is held?")
    assert "stick kit" in opening
    for said in (USUAL, NO_REVIEW, "a past dislocation", "Answer y met, n not met, s skip it, q stop."):
        assert said in flat
    assert "Set up" in rest
    assert "Look" in rest
    assert "Met      when" in rest
    assert "of at most" in rest
    assert "\nHolds    Slow squat without a bar; " in rest
    assert "Not yet" not in rest
    assert max(map(len, text.partition("Go on with")[0].splitlines())) <= 80
    (command,) = (line for line in text.splitlines() if line.startswith("  drillpath "))
    assert ask(*split(command)[1:]).stdout.startswith("Clean")
    assert command.endswith(" --kit stick")


def test_a_dialogue_is_the_programs() -> None:
    """The same checks in the same order as by file."""
    text = place("clean", typed="y\nno\nYES\nn\nq\n").stdout
    assert text.count("Met? ") == 5
    assert "after 4 checks, " in text
    text = place("clean", typed="y\nq\n").stdout
    assert "after 1 check, " in text
    assert "% held)" in text.partition("\nDoubt    ")[2]


def test_stopped_at_once() -> None:
    """At the end of input, and by q: what is known, which is nothing, and what a new lifter is ready for."""
    for typed in ("", "q\n", "stop\n"):
        text = place("clean", typed=typed).stdout
        assert "after 0 checks, " in text
        assert "Holds    none of the checks" in text
        assert "Ready next" in text
        assert "\n  drillpath path clean\n" in text


def test_broken_off(monkeypatch: pytest.MonkeyPatch) -> None:
    """Ctrl-C ends it as politely."""

    def interrupted(_: str) -> str:
        raise KeyboardInterrupt

    monkeypatch.setattr(click.termui, "visible_prompt_func", interrupted)
    # click's runner puts its own in place; the real prompt is asked here
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("click.prompt", _real_abort)
        assert "after 0 checks" in place("clean").stdout


def _real_abort(*_: object, **__: object) -> str:
    raise click.Abort


def test_what_is_not_understood_is_asked_again() -> None:
    """It costs nothing."""
    text = place("clean", typed="maybe\n\ny\nq\n").stdout
    assert text.count("Answer y met, n not met, s skip it, q stop.") == 3
    assert "after 1 check, " in text


def test_skipped(tmp_path: Path) -> None:
    """Another check comes in its place, with the same number, and it isn't asked again."""
    text = place("clean", "--save", str(tmp_path / "a"), typed="s\n" * 9).stdout
    skipped = (tmp_path / "a").read_text().splitlines()
    assert 3 <= len(skipped) == len(set(skipped)) < len(CLEAN)  # what most likely isn't within reach is never asked
    assert text.partition("Ready next")[0].count("\n 1  ") == len(skipped)
    assert "after 0 checks" in text


def test_once_more() -> None:
    """Where answers disagree a check comes again, and says so without repeating how to set it up."""
    text = place("clean", "--have", "rack", "--budget", "5", typed="n\nq\n").stdout
    assert "once more" not in text
    text = place("jerk", "--budget", "40", typed="y\nn\n" * 20).stdout
    again = text.partition(", once more")[2].partition("Met? ")[0]
    assert "It was done before and there is still doubt" in " ".join(again.split())
    assert "Set up" not in again
    assert "Met      when" in again


def test_a_budget() -> None:
    """No more checks than that."""
    text = place("clean", "--budget", "2", typed="y\n" * 9).stdout
    assert "at most 2 checks" in text
    assert "after 2 checks" in text
    assert "at most 1 check\n" in place("clean", "--budget", "1", typed="q\n").stdout


def test_saved_and_gone_on_with(tmp_path: Path) -> None:
    """Answers are kept as they are given; the same command goes on from them, also after its end."""
    file = tmp_path / "ann.yaml"
    first = place("clean", "--save", str(file), typed="y\ny\n").stdout
    assert file.read_text().count("answer: yes") == 2
    second = place("clean", "--save", str(file), typed="n\n" * 9).stdout
    assert "\n 3  " in second.partition("\nHolds")[0]
    assert "\n 1  " not in second.partition("\nHolds")[0]
    assert first.count("Met? ") == 3
    third = place("clean", "--save", str(file)).stdout
    assert "Met? " not in third
    assert third.strip() == second[second.rindex("\nClean  ") :].strip()
    assert answer_of("clean", "--answers", str(file))["next"] is None
    assert answer_of("clean", "--save", str(file))["next"] is None


# --- what is refused ---


def test_what_is_refused(tmp_path: Path) -> None:
    """An unknown lift, kit and drill, a file that isn't there, both files, no budget; a lift without checks."""
    assert "There is no lift 'clen'. Did you mean clean" in place("clen", code=2).stderr
    assert "There is no kit 'gym'" in place("clean", "--kit", "gym", code=2).stderr
    file = written(tmp_path / "a.json", ("slow-dip", "yes"))
    assert (
        f"{file}, line 1: `id`: `slow-dip` is no check for the clean."
        in place("clean", "--answers", file, code=2).stderr
    )
    assert "can't be read: no such file" in place("clean", "--answers", str(tmp_path / "b"), code=2).stderr
    both = place("clean", "--answers", file, "--save", file, code=2).stderr
    assert "is there already and is gone on from, so --answers can't stand beside it" in both
    assert "0 is not in the range" in place("clean", "--budget", "0", code=2).stderr
    none = place("clean-and-jerk", code=1).stderr
    assert none == "Error: No drills are named that place a lifter in the clean and jerk.\n"
    assert "None of the checks for the jerk can be done" in place("jerk", "--have", "", code=1).stderr


def test_a_file_that_cannot_be_saved(tmp_path: Path) -> None:
    """It is said at the first answer."""
    folder = tmp_path / "a-file"
    folder.write_text("")
    refused = place("clean", "--save", str(folder / "answers"), typed="y\n", code=2)
    assert "The answers can't be saved in" in refused.stderr


def test_the_library_named_stays_in_the_command() -> None:
    """What is pasted asks the same one, and with the same gear."""
    text = ask("--library", str(built()), "place", "clean", "--have", "stick, bar", typed="q\n").stdout
    (command,) = (line for line in text.splitlines() if line.startswith("  drillpath "))
    assert split(command)[1:] == ["--library", str(built()), "path", "clean", "--have", "stick, bar"]
