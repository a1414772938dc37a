"""Builds: all outputs, and no more work than a change asks for."""

import json
import os
import shutil
import sqlite3
import time
from contextlib import closing
from pathlib import Path

import pytest
from building import again, break_it, digest, entry, files, names_in, rename, small_library

from kb.errors import BrokenLibrary, DrillpathError
from kb.make import build as module
from kb.make.build import build
from kb.make.library import load
from kb.make.mermaid import MARK


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The small library, built once."""
    return small_library(tmp_path_factory.mktemp("library"))


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """A copy of it to change, built where it stands."""
    return small_library(tmp_path)


def test_a_build_makes_all_of_it(made: Path) -> None:
    """The catalogue, the graph for other programs, Datasette's metadata, a text graph a lift."""
    lifts = {path.stem for path in (made / "drills" / "lifts").iterdir()}
    assert {path.stem for path in (made / "graphs").iterdir()} == lifts
    assert {path.name for path in (made / "out").iterdir()} == {
        "catalogue.db", "graphs", "made.json", "metadata.json", "parsed"
    }  # fmt: skip
    assert {path.name for path in (made / "out" / "graphs").iterdir()} == {"library.graphml", "library.json"}
    assert len(names_in(made / "out" / "catalogue.db")) == len(load(made).drills)
    assert json.loads((made / "out" / "metadata.json").read_text())["title"] == "drillpath"


def test_builds_are_the_same_wherever_they_stand(made: Path, root: Path) -> None:
    """The same entries give the same bytes, what was kept of the way there aside."""
    one, other = files(made), files(root)
    for kept in ("out/made.json", "out/parsed/entries.json"):
        del one[kept], other[kept]
    assert one == other


def test_nothing_changed(root: Path) -> None:
    """Then nothing is written."""
    before = files(root)
    assert again(root) == []
    assert files(root) == before


def test_without_text_graphs(root: Path) -> None:
    """A question that makes the catalogue again leaves the committed graphs alone; they needn't even be there."""
    shutil.rmtree(root / "graphs")
    assert build(root, root / "out", None).changed == ()
    rename(root, "Renamed")
    assert build(root, root / "out", None).changed[-1] == root / "out" / "catalogue.db"
    assert not (root / "graphs").exists()
    assert "clean.md" in again(root)


def test_words_changed(root: Path) -> None:
    """Another sentence in a body changes the catalogue and no graph."""
    with entry(root).open("a", encoding="utf-8") as file:
        file.write("The stick tells you first.\n")
    assert again(root) == ["catalogue.db"]


def test_graph_changed(root: Path) -> None:
    """Another name changes the graphs of the drill's lifts and of the library too."""
    rename(root, "Renamed")
    assert sorted(again(root)) == ["catalogue.db", "clean-and-jerk.md", "clean.md", "library.graphml", "library.json"]
    assert "Renamed" in names_in(root / "out" / "catalogue.db")


def test_an_entry_saved_as_it_was(root: Path) -> None:
    """Touched, not changed: nothing is made again, and the catalogue isn't older than the entry any more."""
    catalogue = root / "out" / "catalogue.db"
    later = time.time_ns() + 1
    os.utime(entry(root), ns=(later, later))
    assert catalogue.stat().st_mtime_ns < later
    assert again(root) == []
    assert catalogue.stat().st_mtime_ns >= later


def test_an_entry_changed_while_building_is_newer(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The catalogue is as old as the start of its build, so the next question sees that something came after."""
    from kb.make import catalogue

    really = catalogue.write

    def slowly(*arguments: object) -> None:
        time.sleep(0.05)
        rename(root, "Meanwhile")
        really(*arguments)  # type: ignore[arg-type]

    monkeypatch.setattr(catalogue, "write", slowly)
    rename(root, "Before")
    again(root)
    assert entry(root).stat().st_mtime_ns > (root / "out" / "catalogue.db").stat().st_mtime_ns


@pytest.mark.parametrize(
    "output", ["out/catalogue.db", "out/graphs/library.json", "out/metadata.json", "graphs/clean.md", "out/made.json"]
)
@pytest.mark.parametrize("how", ["gone", "changed", "emptied"])
def test_an_output_that_does_not_stand(root: Path, output: str, how: str) -> None:
    """Removed, edited or emptied by hand: it is made again as it was."""
    path = root / output
    was = digest(path)
    if how == "gone":
        path.unlink()
    else:
        path.write_bytes(b"" if how == "emptied" else path.read_bytes() + b" \n[")
    assert again(root)
    assert digest(path) == was


@pytest.mark.parametrize("damage", ["[]", '{"files": []}', '{"files": {}}', '{"files": {"/": "0"}}', "{"])
def test_what_was_made_is_forgotten(root: Path, damage: str) -> None:
    """Any damage to the note of what was made of what means no more than building again."""
    (root / "out" / "made.json").write_text(damage)
    assert again(root) == ["catalogue.db"] or "library.json" not in again(root)


def test_another_program_builds_again(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """When the program's own source changes, what it made before is not trusted."""
    monkeypatch.setattr(module, "_program", lambda: "another")
    assert again(root) == ["catalogue.db"]
    assert again(root) == []


def test_the_hash_without_parsing_is_the_library_s(made: Path, tmp_path: Path) -> None:
    """What is compared before anything is parsed is what the catalogue then holds."""
    assert module._content_hash(made) == load(made).content_hash
    with closing(sqlite3.connect(made / "out" / "catalogue.db")) as db:
        assert db.execute("select value from meta where key = 'content_hash'").fetchone() == (load(made).content_hash,)
    assert module._content_hash(tmp_path) is None


def test_a_lift_that_is_no_more(root: Path) -> None:
    """Its text graph goes; a file that wasn't made here stays."""
    (root / "graphs" / "snotch.md").write_text(f"{MARK}\n# Snotch\n")
    (root / "graphs" / "README.md").write_text("# By hand\n")
    rename(root, "Renamed")
    assert "snotch.md" in again(root)
    assert (root / "graphs" / "README.md").exists()
    assert not (root / "graphs" / "snotch.md").exists()


def test_a_broken_library_is_refused(root: Path) -> None:
    """All problems at once, nothing written, the old catalogue as it was."""
    break_it(root)
    (root / "drills" / "stray.md").write_text("stray")
    before = files(root / "out") | files(root / "graphs")
    with pytest.raises(BrokenLibrary, match=r"2 problems stop the build") as caught:
        again(root)
    assert [problem.file for problem in caught.value.problems] == ["drills/clean/tall-clean.md", "drills/stray.md"]
    after = files(root / "out") | files(root / "graphs")
    del before["parsed/entries.json"], after["parsed/entries.json"]
    assert after == before


def test_a_stray_file_alone_is_seen(root: Path) -> None:
    """Entries unchanged, but a file where none may stand: not passed over as unchanged."""
    (root / "drills" / "stray.md").write_text("stray")
    with pytest.raises(BrokenLibrary, match="1 problem stops the build"):
        again(root)


def test_an_entry_that_cannot_be_read_is_seen(root: Path) -> None:
    """Too large to be an entry: the hash without parsing is not to be had, and the build says why."""
    entry(root).write_bytes(b"#" * 300_000)
    assert module._content_hash(root) is None
    with pytest.raises(BrokenLibrary):
        again(root)


def test_where_nothing_can_be_written(root: Path) -> None:
    """A file where the folder of outputs should be: one sentence that names it."""
    (root / "file").write_text("")
    with pytest.raises(DrillpathError, match=r"file.* can't be written"):
        build(root, root / "file", None)


def test_it_says_so_when_it_takes_long(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One line, only past its patience, and none when nothing is to be done."""
    said: list[str] = []
    build(root, root / "out", root / "graphs", progress=said.append)
    rename(root, "Renamed")
    monkeypatch.setattr(module, "PATIENCE_S", 60.0)
    build(root, root / "out", root / "graphs", progress=said.append)
    assert said == []
    rename(root, "Renamed again")
    monkeypatch.setattr(module, "PATIENCE_S", 0.0)
    build(root, root / "out", root / "graphs", progress=said.append)
    assert said == [f"Building the catalogue of {root} ..."]


def test_a_moved_library_is_built_again(tmp_path: Path) -> None:
    """What was made elsewhere doesn't vouch for a copy that has lost its catalogue."""
    root = Path(__file__).resolve().parents[1] / "data" / "small"
    first, second = tmp_path / "first", tmp_path / "second"
    shutil.copytree(root / "drills", first / "drills")
    build(first, first / "out", None)
    shutil.copytree(first, second)
    (second / "out" / "catalogue.db").unlink()
    assert build(second, second / "out", None).catalogue.is_file()
