"""The build, beside one process that reads, parses, renders and inserts the same entries and no more.

Wanted: cold at most 1.5 times that; nothing changed under 0.5 s; one entry changed under 0.8 s.
"""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
FLOOR = """
import sys, pathlib
sys.modules.update(numpy=None, pandas=None)  # the build keeps sqlite-utils and networkx from importing them
import networkx, sqlite_utils, yaml
from pydantic import BaseModel  # pydantic itself is imported only when something is taken from it
from markdown_it import MarkdownIt
reader = MarkdownIt("commonmark")
db = sqlite_utils.Database(sys.argv[2])
db["entry"].create({"id": str, "front": str, "body": str}, pk="id")
db["entry"].enable_fts(["front", "body"], tokenize="porter")
rows = []
for path in sorted(pathlib.Path(sys.argv[1], "drills").glob("*/*.md")):
    _, front, body = path.read_text("utf-8").split("---\\n", 2)
    yaml.load(front, yaml.CSafeLoader)
    reader.parse(body)
    rows.append({"id": path.stem, "front": front, "body": body})
db["entry"].insert_all(rows, batch_size=1000)
db["entry"].populate_fts(["front", "body"])
"""
BUILD = ROOT / "build.py"


def run(*arguments: object) -> None:
    plain = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    subprocess.run([sys.executable, *map(str, arguments)], env=plain, check=True, capture_output=True)


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A copy of the shipped library, built once."""
    shutil.copytree(ROOT / "drills", tmp_path / "drills")
    run(BUILD, "--library", tmp_path)
    return tmp_path


@pytest.mark.benchmark(group="build, whole process")
def test_floor_reads_parses_inserts(benchmark, tmp_path: Path) -> None:
    """The floor."""

    def fresh() -> tuple[tuple[object, ...], dict[str, object]]:
        (tmp_path / "floor.db").unlink(missing_ok=True)
        return ("-c", FLOOR, ROOT, tmp_path / "floor.db"), {}

    benchmark.pedantic(run, setup=fresh, rounds=5, warmup_rounds=1)


@pytest.mark.benchmark(group="build, whole process")
def test_cold(benchmark, copy: Path) -> None:
    """Nothing kept from before."""

    def fresh() -> tuple[tuple[object, ...], dict[str, object]]:
        shutil.rmtree(copy / "out", ignore_errors=True)
        shutil.rmtree(copy / "graphs", ignore_errors=True)
        return (BUILD, "--library", copy), {}

    benchmark.pedantic(run, setup=fresh, rounds=5, warmup_rounds=1)


@pytest.mark.benchmark(group="build, whole process")
def test_nothing_changed(benchmark, copy: Path) -> None:
    """Compared and found the same."""
    benchmark.pedantic(run, args=(BUILD, "--library", copy), rounds=5, warmup_rounds=1)


@pytest.mark.benchmark(group="build, whole process")
def test_one_entry_changed(benchmark, copy: Path) -> None:
    """One drill's text grows by a word each time."""
    entry = copy / "drills" / "clean" / "hang-clean.md"

    def changed() -> tuple[tuple[object, ...], dict[str, object]]:
        entry.write_text(entry.read_text("utf-8").rstrip() + " Again.\n", "utf-8")
        return (BUILD, "--library", copy), {}

    benchmark.pedantic(run, setup=changed, rounds=5, warmup_rounds=1)
