"""Builds: all outputs, no more work than a change asks for, and nobody ever sees half of one."""

import json
import os
import shutil
import sqlite3
import subprocess
import sys
import time
from contextlib import closing
from hashlib import sha256
from pathlib import Path

import pytest

from kb import produce as produce_module
from kb.errors import BrokenLibrary, DrillpathError
from kb.make import build as module
from kb.make.build import build
from kb.make.library import load
from kb.make.mermaid import MARK
from kb.produce import main, produce

REPOSITORY = Path(__file__).parents[2]
SMALL = REPOSITORY / "tests" / "data" / "small"


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The small library, built once."""
    root = tmp_path_factory.mktemp("library")
    shutil.copytree(SMALL / "drills", root / "drills")
    build(root, root / "out", root / "graphs")
    return root


@pytest.fixture
def root(made: Path, tmp_path: Path) -> Path:
    """A copy of it to change, built where it stands."""
    shutil.copytree(made / "drills", tmp_path / "drills")
    build(tmp_path, tmp_path / "out", tmp_path / "graphs")
    return tmp_path


def again(root: Path) -> list[str]:
    """Build once more; the names of what was written or removed."""
    return [path.name for path in build(root, root / "out", root / "graphs").changed]


def digest(path: Path) -> str:
    """What a file holds, in few letters: pytest would take long to compare more."""
    return sha256(path.read_bytes()).hexdigest()


def files(root: Path) -> dict[str, str]:
    """Every file below a folder and the digest of what it holds."""
    return {str(path.relative_to(root)): digest(path) for path in sorted(root.rglob("*")) if path.is_file()}


def entry(root: Path) -> Path:
    """An entry to change."""
    return root / "drills" / "clean" / "tall-clean.md"


def names_in(catalogue: Path) -> set[str]:
    """The drills' names in a catalogue, which is sound."""
    with closing(sqlite3.connect(f"file:{catalogue}?mode=ro", uri=True)) as db:
        assert db.execute("pragma quick_check").fetchall() == [("ok",)]
        return {name for (name,) in db.execute("select name from drill")}


def rename(root: Path, name: str) -> None:
    """Give the entry another name."""
    lines = entry(root).read_text(encoding="utf-8").splitlines(keepends=True)
    entry(root).write_text("".join([lines[0], f"name: {name}\n", *lines[2:]]), encoding="utf-8")


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


def break_it(root: Path) -> None:
    """A prerequisite that there isn't, and a file where none may stand."""
    text = entry(root).read_text(encoding="utf-8")
    entry(root).write_text(text.replace("\n---\n", "\nprerequisites: [no-such-drill]\n---\n", 1), encoding="utf-8")
    if text.count("prerequisites:"):
        lines = [line for line in text.splitlines() if not line.startswith("prerequisites:")]
        entry(root).write_text("\n".join(lines).replace("\n---\n", "\nprerequisites: [no-such-drill]\n---\n", 1) + "\n")


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


def command(root: Path, *arguments: str, watch: bool = False) -> list[str]:
    """build.py on a library, from another process; with `watch` what it imported is printed too."""
    if not watch:
        return [sys.executable, str(REPOSITORY / "build.py"), "--library", str(root), *arguments]
    script = (
        f"import sys; sys.path.insert(0, {str(REPOSITORY)!r}); from kb.produce import main\n"
        f"status = main(['--library', {str(root)!r}]); print(*sorted(sys.modules)); sys.exit(status)"
    )
    return [sys.executable, "-c", script]


def imported(root: Path) -> set[str]:
    """Which of the heavy libraries a build from a new process imports."""
    run = subprocess.run(command(root, watch=True), capture_output=True, text=True, check=True)
    heavy = {"markdown_it", "networkx", "numpy", "pandas", "pydantic", "sqlite_utils", "yaml"}
    return heavy & set(run.stdout.split())


def test_heavy_libraries_are_imported_late(root: Path) -> None:
    """None when nothing changed; networkx only when a graph did; pandas and numpy never."""
    assert imported(root) == set()
    with entry(root).open("a", encoding="utf-8") as file:
        file.write("The stick tells you first.\n")
    assert imported(root) == {"markdown_it", "pydantic", "sqlite_utils", "yaml"}
    rename(root, "Renamed")
    assert imported(root) == {"markdown_it", "networkx", "pydantic", "sqlite_utils", "yaml"}


def test_nothing_changed_is_quick(root: Path) -> None:
    """The whole process in less than half a second of the processor's time, interpreter and all."""
    resource = pytest.importorskip("resource")
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(command(root), capture_output=True, check=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    assert after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime < 0.5


def test_two_at_once_and_a_reader(root: Path) -> None:
    """Builds that overlap all end well, and whoever reads meanwhile sees a whole catalogue each time."""
    catalogue = root / "out" / "catalogue.db"
    seen = set()
    for turn in range(3):
        rename(root, f"Name {turn}")
        builders = [subprocess.Popen(command(root), stdout=subprocess.PIPE, stderr=subprocess.PIPE) for _ in range(2)]
        while any(builder.poll() is None for builder in builders):
            seen.add(frozenset(names_in(catalogue)))
        for builder in builders:
            _, errors = builder.communicate()
            assert (builder.returncode, b"Traceback" in errors) == (0, False), errors
        assert f"Name {turn}" in names_in(catalogue)
    assert len({len(names) for names in seen}) == 1
    assert not list(root.rglob("*.aside*"))
    assert again(root) == []


# -- produce and build.py -----------------------------------------------------------------------


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
    assert docs == {"reference-fields.md", "problems.md", *schemas}
    assert json.loads((checkout / "kb" / "docs" / "schema" / "drill.json").read_text())["type"] == "object"
    assert produce(checkout, checkout / "out") == (checkout / "out" / "catalogue.db", (), ())


def test_produce_leaves_the_documentation_of_another_library(root: Path) -> None:
    """A library elsewhere has no documentation to write, also if it has a folder of that name."""
    assert produce(root, root / "out").changed == ()
    (root / "kb" / "docs").mkdir(parents=True)
    assert produce(root, root / "out").changed == ()


def test_check_names_what_is_stale_and_writes_nothing(checkout: Path, capsys: pytest.CaptureFixture[str]) -> None:
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
