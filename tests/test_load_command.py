"""`drillpath load`: what is typed, what is answered, and what is refused in one sentence."""

import json

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
    result = CliRunner().invoke(drillpath, ["load", *arguments])
    assert result.exit_code == code, (result.output, result.exception)
    return result


def as_json(*arguments: str) -> dict:
    """Its answer for programs."""
    answer: dict = json.loads(ask(*arguments, "--json").stdout)
    assert answer["version"] == 1
    return answer


def test_the_weight_comes_first_then_the_discs() -> None:
    """50 to 90 % of 80 kg: 40 kg to begin with, up to 72."""
    lines = ask("full", "clean", "--best", "clean=80").stdout.splitlines()
    assert lines[0] == "Clean: 40 kg"
    assert lines[1] == "  Discs      10 on each side, bar 20 kg"
    assert lines[2] == "  Up to      72 kg: 25, 1 on each side, bar 20 kg"
    assert lines[3].startswith("  Why        50 to 90 % of the best clean, 80 kg; rounded down")
    assert max(map(len, lines)) <= 80


def test_the_answer_for_programs() -> None:
    """Kilograms, and pounds beside them where those were asked for."""
    answer = as_json("full-clean", "--best", "clean=81", "--collars")
    assert answer["drill"] == {"id": "full-clean", "name": "Clean"}
    assert answer["load"] == {"kg": 40, "bar_kg": 20, "discs_kg": [5, 2.5], "collars_kg": 5}
    assert answer["most"] == {"kg": 72, "bar_kg": 20, "discs_kg": [20, 2.5, 1], "collars_kg": 5}
    assert answer["best"] == {"kg": 81, "formula": None}
    assert answer["wanted_kg"] == [40.5, 72.9]
    pounds = as_json("full-clean", "--best", "clean=200", "--units", "lb", "--load", "working")["load"]
    assert (pounds["lb"], pounds["bar_lb"], pounds["discs_lb"]) == (180, 45, [45, 10, 10, 2.5])
    assert pounds["kg"] == pytest.approx(180 * 0.45359237, abs=0.001)


def test_after_misses_less_goes_on() -> None:
    """Nine tenths of the least that was missed, rounded down, in singles, below what was missed; no sets to go up to.

    Common practice, no source.
    """
    said = " ".join(ask("full-clean", "--best", "clean=80", "--missed", "75", "--missed", "72").stdout.split())
    assert said.startswith("Clean: 64 kg After 72 kg and 75 kg were missed: not that again today")
    assert "stop below 72 kg" in said
    assert "Up to" not in said
    answer = as_json("full-clean", "--missed", "72")
    assert answer["load"]["kg"] == 64
    assert answer["after"].startswith("After 72 kg was missed")
    assert "can't stand with --total" in ask("full-clean", "--missed", "72", "--total", "60", code=2).stderr
    assert "less than the bar" in ask("full-clean", "--missed", "21", code=2).stderr


def test_no_best_is_no_kilograms() -> None:
    """Nothing is guessed, and what to give is said."""
    assert as_json("full-clean")["load"] is None
    assert as_json("full-clean")["why"] == "a load that leaves two good reps in hand"
    said = ask("full-clean").stdout
    assert said.startswith("Clean: a load that leaves two good reps in hand.")
    assert "--best clean=80" in said


def test_a_best_may_be_the_wholes_or_the_drills_own() -> None:
    """Clean and jerk stands in for its parts; a lift's own drill is the lift; a squat may be told by a set."""
    assert as_json("full-clean", "--best", "clean-and-jerk=80")["load"]["kg"] == 40
    assert as_json("full-clean", "--best", "full clean=80")["load"]["kg"] == 40
    squat = as_json("back-squat", "--best", "back-squat=80x5", "--load", "working")
    assert squat["best"] == {"kg": 90, "formula": "Brzycki 1993"}


def test_bars_and_discs_that_there_are() -> None:
    """Another bar, a few discs, and a weight asked for outright."""
    assert as_json("full-clean", "--best", "clean=80", "--bar", "women")["load"]["discs_kg"] == [10, 2.5]
    few = as_json("full-clean", "--best", "clean=80", "--discs", "5x1,2.5x1", "--load", "working")["load"]
    assert few["kg"] == 35
    assert as_json("full-clean", "--total", "61")["load"]["discs_kg"] == [20, 0.5]


def test_a_kit_without_discs_or_bar() -> None:
    """The bar alone, or nothing."""
    bare = as_json("full-clean", "--best", "clean=80", "--have", "bar,drop-floor")
    assert bare["load"] == {"kg": 20, "bar_kg": 20, "discs_kg": [], "collars_kg": 0}
    nothing = as_json("full-clean", "--best", "clean=80", "--have", "stick")
    assert (nothing["load"], nothing["why"]) == (None, "there is no bar: take a stick, or ask `swap`")


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (
            ("full-clean", "--total", "60.5"),
            "60.5 kg can't be made with this bar and these discs. Did you mean 60 kg or",
        ),
        (("full-clean", "--total", "19"), "Did you mean 20 kg?"),
        (("full-clean", "--total", "nan"), "The total is a weight above 0, not 'nan'."),
        (("full-clean", "--total", "9999"), "A bar weighs more than 0 and at most 500 kg, not 9999 kg."),
        (("full-clean", "--best", "clean=80x3"), "give the heaviest single that was good, as in clean=80."),
        (("full-clean", "--best", "clean=0"), "The best of clean is a weight above 0, not '0'."),
        (("full-clean", "--best", "clean=80", "--best", "full-clean=90"), "The best of clean is given twice."),
        (("full-clean", "--best", "clen=80"), "There is no lift or drill 'clen' to have a best in."),
        (("full-clean", "--bar", "kids"), "Did you mean men, women or training?"),
        (("full-clean", "--discs", "25,25"), "The disc 25 is listed twice"),
        (("no such thing",), "There is no drill 'no such thing'"),
        (("full-clean", "--kit", "home", "--have", "bar"), "can't stand with --kit"),
    ],
)
def test_what_cant_be_understood_is_one_sentence(arguments: tuple[str, ...], says: str) -> None:
    """Exit 2, the nearest right values, no half answer."""
    result = ask(*arguments, code=2)
    assert says in result.stderr
    assert result.stdout == ""
    assert "Traceback" not in result.stderr
