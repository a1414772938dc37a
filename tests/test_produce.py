"""All outputs from one call and one command, and which of the committed ones are stale."""

import json
import shutil
import subprocess
from pathlib import Path

import pytest
from building import break_it, command, entry, files, small_library

from kb import produce as produce_module
from kb.make.mermaid import MARK
from kb.produce import main, produce


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """The small library, built."""
    return small_library(tmp_path)


@pytest.fixture
def checkout(root: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A library that is a checkout: its kb/docs is the package's."""
    docs = root / "kb" / "docs"
    docs.mkdir(parents=True)
    monkeypatch.setattr(produce_module, "DOCS", docs)
    return root


def test_produce_writes_the_generated_documentation(checkout: Path) -> None:
    """The field reference, a schema a kind, and the problems; then nothing more to write."""
    produced = produce(checkout, checkout / "out")
    docs = {str(path.relative_to(checkout / "kb" / "docs")) for path in produced.changed}
    schemas = {f"schema/{kind}.json" for kind in ("lift", "position", "fault", "equipment", "drill")}
    assert docs == {"reference-fields.md", "problems.md", "claims.md", *schemas}
    assert json.loads((checkout / "kb" / "docs" / "schema" / "drill.json").read_text())["type"] == "object"
    assert produce(checkout, checkout / "out") == (checkout / "out" / "catalogue.db", (), ())


def test_produce_leaves_the_documentation_of_another_library(root: Path) -> None:
    """A library elsewhere has no documentation to write, also if it has a folder of that name."""
    assert produce(root, root / "out").changed == ()
    (root / "kb" / "docs").mkdir(parents=True)
    assert produce(root, root / "out").changed == ()


def test_check_names_what_is_stale_and_writes_nothing(
    checkout: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """Missing, differing and left-over files, one line each, exit status 1; up to date, status 0 and no word."""
    produce(checkout, checkout / "out")
    assert main(["--library", str(checkout), "--check"]) == 0
    assert capsys.readouterr() == ("", "")
    (checkout / "graphs" / "clean.md").write_text("old")
    (checkout / "graphs" / "jerk.md").unlink()
    (checkout / "graphs" / "snotch.md").write_text(f"{MARK}\n")
    (checkout / "kb" / "docs" / "problems.md").write_text("old")
    shutil.rmtree(checkout / "out")
    before = files(checkout)
    assert main(["--library", str(checkout), "--check"]) == 1
    stale = ["graphs/clean.md", "graphs/jerk.md", "graphs/snotch.md", "kb/docs/problems.md"]
    said = capsys.readouterr()
    assert sorted(said.err.splitlines()) == [f"{file} is stale; run build.py" for file in stale]
    assert said.out == ""
    monkeypatch.chdir(checkout)
    assert main(["--library", ".", "--check"]) == 1
    assert sorted(capsys.readouterr().err.splitlines()) == sorted(said.err.splitlines())
    assert files(checkout) == before


def test_main_says_what_it_did(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """How many files were written, or that none had to be."""
    out = root / "elsewhere"
    assert main(["--library", str(root), "--out", str(out)]) == 0
    assert main(["--library", str(root), "--out", str(out)]) == 0
    (root / "graphs" / "clean.md").unlink()
    (root / "drills" / "clean" / "again.txt").write_text("no entry")
    with entry(root).open("a", encoding="utf-8") as file:
        file.write("The stick tells you first.\n")
    assert main(["--library", str(root), "--out", str(out)]) == 0
    with entry(root).open("a", encoding="utf-8") as file:
        file.write("It does.\n")
    assert main(["--library", str(root), "--out", str(out)]) == 0
    assert capsys.readouterr().out == "4 files written\nup to date\n2 files written\n1 file written\n"


def test_main_prints_every_problem(root: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """`file:line: code: message`, a line each, then that nothing was written; status 1."""
    break_it(root)
    (root / "drills" / "stray.md").write_text("stray")
    assert main(["--library", str(root)]) == 1
    first, second, last = capsys.readouterr().err.splitlines()
    assert first.startswith("drills/clean/tall-clean.md:")
    assert ": unknown-drill: " in first
    assert second.startswith("drills/stray.md:1: stray-file: ")
    assert last == f"2 problems stop the build of {root}; nothing was written."
    assert main(["--library", str(root), "--check"]) == 1


def test_main_fails_in_one_sentence(checkout: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Where something can't be written, or there is no library: a sentence and status 1, no traceback."""
    (checkout / "kb" / "docs" / "schema").write_text("in the way")
    assert main(["--library", str(checkout)]) == 1
    assert capsys.readouterr().err.endswith("lift.json can't be written: not a directory\n")
    (checkout / "graphs" / "clean.md").unlink()
    (checkout / "graphs" / "clean.md").mkdir()
    assert main(["--library", str(checkout)]) == 1
    assert capsys.readouterr().err.endswith("clean.md can't be written: is a directory\n")
    assert main(["--library", str(checkout), "--check"]) == 1
    assert "graphs/clean.md is stale" in capsys.readouterr().err
    (checkout / "file").write_text("")
    assert main(["--library", str(checkout), "--out", str(checkout / "file")]) == 1
    assert "can't be written" in capsys.readouterr().err
    assert main(["--library", str(checkout / "nowhere")]) == 1
    assert capsys.readouterr().err.splitlines()[0].startswith("drills:1: no-library: ")


def test_build_py_is_the_same_command(root: Path) -> None:
    """The script at the top of the repository, on another library."""
    run = subprocess.run(command(root), capture_output=True, text=True, check=True)
    assert run.stdout == "up to date\n"
    shutil.rmtree(root / "graphs")
    run = subprocess.run(command(root, "--check"), capture_output=True, text=True, check=False)
    assert (run.returncode, "graphs/clean.md is stale" in run.stderr) == (1, True)
