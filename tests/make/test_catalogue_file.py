"""The catalogue's file: the same bytes for the same library, and there whole or not at all."""

import json
import os
import signal
import sqlite3
import subprocess
import sys
import time
from contextlib import closing
from pathlib import Path
from typing import Any

import pytest
from handmade import library

from kb.errors import DrillpathError
from kb.make import catalogue
from kb.make.catalogue import write

TESTS = Path(__file__).parent.parent

SCRIPT = """
import sys
from pathlib import Path
from handmade import library
from kb.make.catalogue import write
write(library(), Path(sys.argv[1]))
print(sorted({"numpy", "pandas", "networkx", "pydantic"} & set(sys.modules)))
"""


def in_a_process(path: Path, **environment: str) -> subprocess.CompletedProcess[str]:
    """Write the catalogue from another interpreter."""
    paths = os.pathsep.join(map(str, (TESTS, TESTS.parent)))
    return subprocess.run(
        [sys.executable, "-c", SCRIPT, str(path)],
        env={**os.environ, "PYTHONPATH": paths, **environment},
        capture_output=True,
        text=True,
        check=True,
    )


def same(one: Path, other: Path) -> bool:
    """Whether two files hold the same bytes (which pytest would take long to compare)."""
    return one.read_bytes() == other.read_bytes()


def test_the_same_library_gives_the_same_bytes(tmp_path: Path) -> None:
    """Whatever the hash seed, and however often."""
    write(library(), tmp_path / "here.db")
    for seed in ("0", "1", "4242"):
        assert in_a_process(tmp_path / f"{seed}.db", PYTHONHASHSEED=seed).stdout == "[]\n", "too much imported"
        assert same(tmp_path / f"{seed}.db", tmp_path / "here.db")


def turned_round(value: Any) -> Any:
    """The same value with every mapping in it the other way round."""
    if isinstance(value, dict):
        return {key: turned_round(value[key]) for key in reversed(value)}
    if hasattr(value, "_fields"):
        return type(value)(*map(turned_round, value))
    return tuple(map(turned_round, value)) if isinstance(value, tuple) else value


def test_equal_libraries_give_the_same_bytes(tmp_path: Path) -> None:
    """The order of what has no order (entries, sections, what is by lift) doesn't come through."""
    made = library()
    kinds = ("lifts", "positions", "faults", "items", "drills")
    sections = {"Why": "Because.", "Set up": "Stand.", "Other": "Said.", "Do": "Lift."}
    drill = made.drills["full-clean"]._replace(
        sections=sections, lifts=("clean", "jerk"), reach={"jerk": ("rack", "split"), "clean": ("start", "receive")}
    )
    one = library(drills={**made.drills, drill.id: drill})
    other = library(**{kind: turned_round(getattr(one, kind)) for kind in kinds})
    assert one == other
    write(one, tmp_path / "one.db")
    write(other, tmp_path / "other.db")
    assert same(tmp_path / "one.db", tmp_path / "other.db")
    with closing(sqlite3.connect(tmp_path / "one.db")) as db:
        stored = db.execute("select sections from drill where id = 'full-clean'").fetchone()[0]
    assert list(json.loads(stored)) == ["Set up", "Do", "Why", "Other"], "the usual order, then any others"


def test_an_empty_library_has_an_empty_catalogue(tmp_path: Path) -> None:
    """Nothing in, every table there, nothing in them."""
    write(library(lifts={}, positions={}, faults={}, items={}, drills={}), tmp_path / "empty.db")
    with closing(sqlite3.connect(tmp_path / "empty.db")) as db:
        assert db.execute("select count(*) from drill").fetchone() == (0,)
        assert db.execute("select * from kit").fetchall() == [("full",)]


def test_an_old_catalogue_stands_until_the_new_one_is_whole(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A failure on the way leaves the old file as it was, and nothing beside it."""
    path = tmp_path / "catalogue.db"
    path.write_bytes(b"old")

    def fails(_: Path) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(catalogue, "_settle", fails)
    with pytest.raises(DrillpathError, match=r"can't be written to .*catalogue\.db.*[Nn]o space left"):
        write(library(), path)
    assert path.read_bytes() == b"old"
    assert list(tmp_path.iterdir()) == [path]


def test_where_it_cannot_be_written(tmp_path: Path) -> None:
    """A file where the folder should be: one sentence, no traceback of SQLite's."""
    (tmp_path / "file").write_text("")
    with pytest.raises(DrillpathError, match="can't be written"):
        write(library(), tmp_path / "file" / "catalogue.db")


KILLED = SCRIPT.replace(
    "write(", "import kb.make.catalogue as c, time\nc._settle = lambda path: time.sleep(60)\nwrite(", 1
)


def test_a_killed_build_leaves_no_half(tmp_path: Path) -> None:
    """Killed before the rename: the old file stands, and the next build clears what was left aside."""
    path = tmp_path / "catalogue.db"
    write(library(content_hash="old"), path)
    old = path.read_bytes()
    paths = os.pathsep.join(map(str, (TESTS, TESTS.parent)))
    script = [sys.executable, "-c", KILLED, str(path)]
    with subprocess.Popen(script, env={**os.environ, "PYTHONPATH": paths}) as process:
        deadline = time.monotonic() + 30
        while len(list(tmp_path.iterdir())) < 2 and time.monotonic() < deadline:
            time.sleep(0.01)
        process.send_signal(signal.SIGKILL)
    assert path.read_bytes() == old
    assert len(list(tmp_path.iterdir())) >= 2
    write(library(), path)
    assert path.read_bytes() != old
    assert list(tmp_path.iterdir()) == [path]
