"""`drillpath screen` as people and programs get it, from the shipped library's own positions."""

import json
import re
import shutil
from pathlib import Path

import jsonschema
import pytest
from click.testing import CliRunner, Result

from kb.commands.group import drillpath
from kb.make.build import build
from kb.show.care import NO_REVIEW, USUAL

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def shipped(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the shipped library, built once."""
    root = tmp_path_factory.mktemp("shipped")
    shutil.copytree(ROOT / "drills", root / "drills")
    build(root, root / "out", None)
    return root


@pytest.fixture(autouse=True)
def _library(monkeypatch: pytest.MonkeyPatch, shipped: Path) -> None:
    """Every question is asked of it."""
    monkeypatch.setenv("DRILLPATH_LIBRARY", str(shipped))
    monkeypatch.setenv("COLUMNS", "80")


def ask(*arguments: str, code: int = 0) -> Result:
    """Run the command; it must exit with `code`."""
    result = CliRunner().invoke(drillpath, ["screen", *arguments])
    assert result.exit_code == code, (result.output, result.exception)
    return result


def as_json(*arguments: str) -> dict:
    """Its answer for programs, which is all of standard output."""
    answer: dict = json.loads(ask(*arguments, "--json").stdout)
    return answer


STIFF = ("--stature", "175", "--wall", "4", "--reach", "12", "--elbows", "12", "--hinge", "105", "--squat", "8")

NUMBER = {"type": "number"}
TEXT = {"type": "string"}
SHAPE = {
    "type": "object",
    "required": ["version", "lifts", "mobility", "aids", "measured", "caution"],
    "properties": {
        "version": {"const": 1},
        "lifts": {
            "type": "array",
            "items": {
                "type": "object",
                "required": ["lift", "positions"],
                "properties": {
                    "positions": {
                        "type": "array",
                        "items": {
                            "type": "object",
                            "required": [
                                "id",
                                "reachable",
                                "binds",
                                "short_by_deg",
                                "short",
                                "leans_more_deg",
                                "angles",
                            ],
                            "properties": {
                                "id": TEXT,
                                "reachable": {"type": "boolean"},
                                "binds": {"type": ["string", "null"]},
                                "short_by_deg": {"type": "number", "minimum": 0},
                                "short": {"type": "object", "additionalProperties": NUMBER},
                                "leans_more_deg": NUMBER,
                                "angles": {"type": "object", "additionalProperties": NUMBER},
                            },
                        },
                    }
                },
            },
        },
        "mobility": {"type": "array", "items": {"type": "object", "required": ["id", "name", "for"]}},
        "aids": {"type": "array", "items": {"type": "object", "required": ["item", "gives_deg", "opens"]}},
        "measured": {"type": "object", "additionalProperties": NUMBER},
        "caution": TEXT,
    },
}


@pytest.mark.parametrize(
    "arguments", [STIFF, ("--stature", "160"), (*STIFF, "--lift", "jerk"), (*STIFF, "--kit", "home")]
)
def test_json_has_the_agreed_shape(arguments: tuple[str, ...]) -> None:
    """DESIGN section 6, and what was added."""
    answer = as_json(*arguments)
    jsonschema.validate(answer, SHAPE)
    for lift in answer["lifts"]:
        for each in lift["positions"]:
            assert each["reachable"] == (each["binds"] is None) == (each["short_by_deg"] == 0) == (not each["short"])


def test_text_says_first_what_is_in_the_way_and_last_whom_to_ask() -> None:
    """The answer, lift by lift, drills, what helps now, measurements, cautions."""
    text = ask(*STIFF).stdout
    lines = text.splitlines()
    assert lines[0].startswith("Out of reach: ")
    assert max(map(len, lines)) <= 80
    parts = [
        "Clean: ",
        "Jerk: ",
        "Snatch: ",
        "To tell apart",
        "What acts on it",
        "What helps now",
        "From your",
        "A tape",
    ]
    places = [text.index(part) for part in parts]
    assert places == sorted(places)
    said = " ".join(text.split())
    assert "ask a doctor or a physiotherapist" in said
    assert USUAL in said
    assert NO_REVIEW in said
    assert "only without load" in said


def test_every_drill_named_can_be_shown() -> None:
    """The ids under what acts on it are the library's."""
    text = ask(*STIFF).stdout
    block = text[text.index("What acts on it") : text.index("What helps now")]
    ids = [line.split()[0] for line in block.splitlines()[1:] if line.startswith("  ") and "more (" not in line]
    assert len(ids) == 6
    for drill in ids:
        assert CliRunner().invoke(drillpath, ["show", drill]).exit_code == 0


def test_a_supple_lifter_gets_a_short_answer() -> None:
    """One line a lift, and what wasn't measured."""
    text = ask("--stature", "175").stdout
    assert "Clean: all within reach" in text
    assert "Not measured" in text
    assert "What acts on it" not in text
    assert ask("--stature", "175", "--wall", "15").stdout.startswith("Every position is within reach of this body.")


def test_a_lean_worth_a_word_is_said() -> None:
    """An ankle of some 27 degrees is enough for the dip, leaning more."""
    assert "within reach, leaning" in ask("--stature", "175", "--wall", "4", "--lift", "jerk").stdout


def test_a_file_is_written_and_read_and_an_option_outranks_it(tmp_path: Path) -> None:
    """The same answer from the file; what is typed counts more than what is written."""
    path = tmp_path / "lifter.yaml"
    first = ask(*STIFF, "--save", str(path))
    assert f"Measurements written to {path}." in first.stderr
    assert ask("--file", str(path)).stdout == first.stdout
    assert as_json("--file", str(path), "--wall", "12")["measured"]["ankle"] > 35
    assert [each.name for each in tmp_path.iterdir()] == ["lifter.yaml"]


def test_nothing_is_written_where_the_question_fails(tmp_path: Path) -> None:
    """A refused screen leaves no file."""
    path = tmp_path / "lifter.yaml"
    ask("--stature", "175", "--squat", "70", "--save", str(path), code=2)
    assert not path.exists()
    ask("--stature", "175", "--save", str(tmp_path), code=2)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (("--wall", "3"), "The height (stature, cm) is needed"),
        (("--stature", "175", "--wall", "nan"), "Wall nan cm can't be"),
        (("--stature", "175", "--wedge", "0"), "A wedge of 0 mm can't be"),
        (("--stature", "175", "--wedge", "nan"), "A wedge of nan mm can't be"),
        (("--stature", "175", "--lift", "snatsh"), "snatch"),
        (("--stature", "175", "--kit", "attic"), "There is no kit 'attic'"),
        (("--stature", "tall"), "not a valid float"),
        (("--file", "/nowhere/at/all"), "can't be read"),
    ],
)
def test_what_cannot_be_is_refused_in_one_sentence(arguments: tuple[str, ...], message: str) -> None:
    """Exit 2, no traceback, nothing on standard output."""
    refused = ask(*arguments, code=2)
    assert message in " ".join(refused.stderr.split())
    assert refused.stdout == ""
    assert "Traceback" not in refused.stderr


def test_a_single_degree_is_one() -> None:
    """Words agree with numbers, whatever they are."""
    for wall in range(16):
        text = ask("--stature", "175", "--wall", str(wall)).stdout
        assert " 1 degrees" not in text
        assert " 1 positions" not in text
        assert " 0 degree" not in text


def test_a_narrow_terminal_is_kept_to(monkeypatch: pytest.MonkeyPatch) -> None:
    """Forty columns."""
    monkeypatch.setenv("COLUMNS", "40")
    assert max(map(len, ask(*STIFF).stdout.splitlines())) <= 40


def test_the_documents_examples_are_true(tmp_path: Path) -> None:
    """Every line of the blocks in kb/docs/screen.md is what the command prints, in that order."""
    text = (ROOT / "kb" / "docs" / "screen.md").read_text("utf-8")
    command, answer, causes = re.findall(r"```\n(.*?)```", text, re.DOTALL)
    asked = command.split()
    assert asked[:2] == ["drillpath", "screen"]
    printed = ask(*asked[2:]).stdout
    path = tmp_path / "lifter.yaml"
    path.write_text("stature: 175\nwall: 12\n")
    arguments = ["chain", "heels-lift-in-catch", "--lift", "snatch", "--screen", str(path)]
    chained = CliRunner().invoke(drillpath, arguments).stdout
    for block, given in ((answer, printed), (causes, chained)):
        places = [given.index(line) for line in block.splitlines() if line.strip() not in ("", "...")]
        assert places == sorted(places)


def test_lengths_that_close_on_no_bar_are_told_as_such() -> None:
    """Very long thighs over short feet: no joint is blamed, and what helps is still looked for."""
    odd = ("--stature", "165", "--inseam", "95", "--thigh", "52", "--foot", "18", "--lift", "snatch")
    assert "out of reach of these lengths" in " ".join(ask(*odd).stdout.split())
    (hip,) = [each for each in as_json(*odd)["lifts"][0]["positions"] if each["id"] == "snatch-hip"]
    assert (hip["reachable"], hip["binds"]) == (False, "lengths")
