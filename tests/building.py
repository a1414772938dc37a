"""What tests of builds share: the small library on disk, ways to change it, and build.py run on it."""

import shutil
import sqlite3
import sys
from contextlib import closing
from hashlib import sha256
from pathlib import Path

from kb.make.build import build

__all__ = [
    "REPOSITORY",
    "again",
    "break_it",
    "command",
    "digest",
    "entry",
    "files",
    "names_in",
    "rename",
    "small_library",
]

REPOSITORY = Path(__file__).parents[1]


def small_library(root: Path) -> Path:
    """The small library of tests/data, copied to `root` and built there."""
    shutil.copytree(REPOSITORY / "tests" / "data" / "small" / "drills", root / "drills")
    build(root, root / "out", root / "graphs")
    return root


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


def break_it(root: Path) -> None:
    """A prerequisite that there isn't."""
    lines = entry(root).read_text(encoding="utf-8").splitlines(keepends=True)
    kept = [line for line in lines if not line.startswith("prerequisites:")]
    entry(root).write_text("".join([kept[0], "prerequisites: [no-such-drill]\n", *kept[1:]]), encoding="utf-8")


def command(root: Path, *arguments: str, watch: bool = False) -> list[str]:
    """build.py on a library, from another process; with `watch` what it imported is printed too."""
    if not watch:
        return [sys.executable, str(REPOSITORY / "build.py"), "--library", str(root), *arguments]
    script = (
        f"import sys; sys.path.insert(0, {str(REPOSITORY)!r}); from kb.produce import main\n"
        f"status = main(['--library', {str(root)!r}]); print(*sorted(sys.modules)); sys.exit(status)"
    )
    return [sys.executable, "-c", script]
