"""`drillpath check --report` and `--reviewed`: on the small library, as text and as JSON."""

import json
import shutil
from pathlib import Path

import pytest
from broken_cases import SMALL
from click.testing import CliRunner

from kb.commands.group import drillpath


@pytest.fixture(scope="module")
def library(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the small library, of which one entry was read and changed since."""
    root = tmp_path_factory.mktemp("report")
    shutil.copytree(SMALL / "drills", root / "drills")
    status, said = _run(root, "--reviewed", "tall-clean, bar", "--by", "a reader")
    assert (status, said) == (0, f"2 entries noted as read in {root / 'drills/reviewed.tsv'}.\n")
    entry = root / "drills" / "clean" / "tall-clean.md"
    entry.write_text(entry.read_text("utf-8") + "\n", "utf-8")
    return root


def _run(root: Path, *arguments: str) -> tuple[int, str]:
    done = CliRunner().invoke(drillpath, ["check", str(root), *arguments])
    return done.exit_code, done.output


def test_as_text(library: Path) -> None:
    """What to look at first, then the counts; no line is too long, and twice it is the same."""
    status, said = _run(library, "--report")
    assert status == 0
    titles = [line for line in said.splitlines() if line and not line.startswith(" ")]
    for title in (
        "Drills that nothing would miss",
        "Thin places",
        "Kits",
        "Hardest to read",
        "What each drill is good for",
    ):
        assert title in titles
    assert "tall-clean  last read" in said
    assert max(map(len, said.splitlines())) <= 80
    assert _run(library, "--report") == (status, said)


def test_as_json(library: Path) -> None:
    """All of it, in the shape of answers.md: every drill once, and counts that agree with one another."""
    status, said = _run(library, "--report", "--json")
    answer = json.loads(said)
    assert (status, answer["version"]) == (0, 1)
    drills = {each["id"]: each for each in answer["drills"]}
    assert len(drills) == len(answer["drills"]) == answer["entries"]["drill"]
    assert set(answer["idle"]) == {id_ for id_, each in drills.items() if not each["counts"]}
    for each in drills.values():
        for use in (each["chains"], each["paths"], each["swaps"]):
            assert set(use) == {"holds", "lost", "dearer", "more"}
    assert answer["questions"]["asked"] == sum(
        kit["asked"] for kit in answer["kits"] if kit["id"] in answer["asked_with"]
    )
    for kit in answer["kits"]:
        assert kit["asked"] - kit["answered"] == len(kit["unanswered"])
        assert kit["faults"] + len(kit["without"]) == kit["of_faults"] == answer["entries"]["fault"]
    for coverage in answer["coverage"]:
        assert sum(sum(each[stage] for stage in coverage["stages"]) for each in coverage["stretches"]) <= sum(
            coverage["stages"].values()
        )
    eases = [each["ease"] for each in answer["reading"]]
    assert eases == sorted(eases)
    assert [each["id"] for each in answer["unreviewed"]["changed"]] == ["tall-clean"]
    assert "bar" not in answer["unreviewed"]["never"]
    for gap in answer["gaps"]:
        assert gap["opens"] or gap["joins"] or gap["saves"] > 0


def test_with_every_kit(library: Path) -> None:
    """Then what a drill is good for is asked with all of them, and never comes out as less."""
    some = json.loads(_run(library, "--report", "--json")[1])
    every = json.loads(_run(library, "--report", "--every-kit", "--json")[1])
    assert set(some["asked_with"]) < set(every["asked_with"]) == {kit["id"] for kit in every["kits"]}
    assert every["questions"]["asked"] == sum(kit["asked"] for kit in every["kits"])
    counts = {each["id"] for each in some["drills"] if each["counts"]}
    assert counts <= {each["id"] for each in every["drills"] if each["counts"]}


def test_a_broken_library_is_refused_in_a_sentence(tmp_path: Path) -> None:
    """Nothing can be asked of it: exit 1, and where to look."""
    shutil.copytree(SMALL / "drills", tmp_path / "drills")
    (tmp_path / "drills" / "clean" / "tall-clean.md").unlink()
    status, said = _run(tmp_path, "--report")
    assert status == 1
    assert "in structure: nothing can be asked" in said
    assert "`drillpath check` lists them" in said
    assert len(said.strip().splitlines()) == 1


def test_what_cant_be_marked_is_a_sentence(library: Path) -> None:
    """An unknown entry with the nearest, no name, and no entry: exit 2."""
    for arguments in (
        ("--reviewed", "tall-claen", "--by", "me"),
        ("--reviewed", "bar"),
        ("--reviewed", " , ", "--by", "me"),
    ):
        status, said = _run(library, *arguments)
        assert status == 2
        assert len(said.strip().splitlines()) == 1
    assert "Did you mean tall-clean" in _run(library, "--reviewed", "tall-claen", "--by", "me")[1]
