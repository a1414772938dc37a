"""`drillpath next`: what is ready, what is shaky, and why."""

import json
from typing import Any

import pytest
from click.testing import CliRunner, Result
from small_answers import built

from kb.commands.group import drillpath
from kb.show.care import NO_REVIEW, USUAL


@pytest.fixture(autouse=True)
def _library(monkeypatch: pytest.MonkeyPatch) -> None:
    """Every question is asked of the small library."""
    monkeypatch.setenv("DRILLPATH_LIBRARY", str(built()))
    monkeypatch.setenv("COLUMNS", "80")


def ask(*arguments: str, code: int = 0) -> Result:
    """Ask what is next; it must exit with `code`."""
    result = CliRunner().invoke(drillpath, ["next", *arguments])
    assert result.exit_code == code, (result.output, result.exception)
    return result


def answer_of(*arguments: str) -> dict[str, Any]:
    """The answer for programs."""
    found: dict[str, Any] = json.loads(ask(*arguments, "--json").stdout)
    assert found["version"] == 1
    return found


def ids(found: dict[str, Any], key: str) -> list[str]:
    """The ids of a list."""
    return [each["id"] for each in found[key]]


def test_for_programs() -> None:
    """Both fringes, each with a reason, and what was taken for granted."""
    found = answer_of("--holds", "front-squat", "--lift", "clean")
    assert list(found) == ["version", "lift", "kit", "holds", "granted", "any_of", "ready", "other_gear", "shaky"]
    assert (found["lift"], found["kit"]) == ("clean", "full")
    assert found["holds"] == ["air-squat", "front-squat", "rack-hold"]
    assert found["granted"] == ["air-squat", "rack-hold"]
    assert ids(found, "shaky") == ["front-squat"]
    assert not {"front-squat", "back-squat"} & set(ids(found, "ready"))
    for each in (*found["ready"], *found["shaky"]):
        assert each["why"][0].isupper()
        assert each["why"].endswith(".")


def test_whether_to_go_on_and_how_far_it_is_comes_first() -> None:
    """With when to go back, and nothing of it where no lift is named; the way is that of `path`."""
    said = " ".join(ask("--holds", "front-squat", "--lift", "clean", "--kit", "hall").stdout.split())
    way = json.loads(
        CliRunner().invoke(drillpath, ["path", "clean", "--kit", "hall", "--holds", "front-squat", "--json"]).stdout
    )
    names = list(dict.fromkeys(each["name"] for each in way["drills"] if each["stage"] != "prepare"))
    assert f"Yes, on to {names[0]}: all that it needs is held." in said
    assert f"in this order: {'; '.join(names)}." in said
    assert "a week of Front squat again" in said
    assert "Yes, on to" not in ask("--holds", "front-squat").stdout


def test_a_fault_that_is_still_seen_comes_first(monkeypatch: pytest.MonkeyPatch) -> None:
    """Not yet, what mends it as a command that works, and when; it needs a lift, and a fault of that lift."""
    monkeypatch.delenv("DRILLPATH_LIBRARY", raising=False)
    asked = ("--holds", "hang-snatch", "--lift", "snatch", "--kit", "hall", "--seen")
    said = ask(*asked, "bar-loops-out").stdout
    assert "Not yet: Bar loops out is still seen" in said
    assert said.index("Not yet:") < said.index("Yes, on to")
    (command,) = [line.split()[1:] for line in said.splitlines() if line.startswith("  drillpath chain")]
    assert "Bar loops out" in CliRunner().invoke(drillpath, command).stdout
    assert json.loads(ask(*asked, "bar-loops-out", "--json").stdout)["seen"]["fault"] == "bar-loops-out"
    assert "name it with --lift" in ask("--seen", "bar-loops-out", code=2).stderr
    assert "is not a fault of the snatch" in ask(*asked, "jerk-press-out", code=2).stderr


def test_all_lifts_without_one_named() -> None:
    """Then a drill of the jerk is ready too."""
    found = answer_of()
    assert (found["lift"], found["holds"], found["shaky"]) == (None, [], [])
    assert {"air-squat", "split-hold"} <= set(ids(found, "ready"))
    assert "split-hold" not in ids(answer_of("--lift", "clean"), "ready")


def test_on_the_terminal() -> None:
    """The most useful first with why, gear and standard; then the rest, the shaky, the granted, the cautions."""
    text = ask("--holds", "slow-lift-off,front-squat", "--lift", "clean", "--kit", "stick").stdout
    flat = " ".join(text.split())
    assert text.startswith("Ready now for the clean ")
    assert "5 drills held, stick kit" in text
    assert "Why      Every way to the clean leads through it." in text
    assert "Move on  when " in text
    assert "begin with a stick" in text
    assert "Look at again before you go on\n - " in text
    assert "Taken for granted\n  " in text
    assert "what was named is built on it." in flat
    assert flat.endswith(NO_REVIEW)
    assert USUAL in flat
    assert max(map(len, text.splitlines())) <= 80


def test_the_lift_is_held() -> None:
    """It is said, and what is left is told."""
    text = ask("--holds", "full-clean", "--lift", "clean").stdout
    assert "\nThe clean itself is held.\n" in text


def test_nothing_ready_with_this_gear() -> None:
    """What would be, with other gear, is named."""
    text = ask("--lift", "clean", "--holds", "air-squat", "--have", "rack").stdout
    assert "\nNothing new is ready with this gear.\n" in text
    assert "Ready, but for gear\n  " in text
    assert "your gear" in text


def test_nothing_is_named_twice() -> None:
    """What is ready isn't held, and what is shaky is; with other gear is none of the two."""
    found = answer_of("--holds", "slow-dip,jerk-overhead-hold", "--have", "stick")
    lists = [ids(found, key) for key in ("ready", "other_gear")]
    assert not set(lists[0]) & set(lists[1])
    assert not (set(lists[0]) | set(lists[1])) & set(found["holds"])
    assert set(ids(found, "shaky")) <= set(found["holds"])


def test_what_is_refused() -> None:
    """Unknown drills and lifts, with the nearest."""
    assert "There is no drill 'front-squad'. Did you mean front-squat" in ask("--holds", "front-squad", code=2).stderr
    assert "There is no lift 'clen'. Did you mean clean" in ask("--lift", "clen", code=2).stderr
