"""Files that appear whole or not at all, and what killed writers left behind."""

import os
import subprocess
import sys
import time
from pathlib import Path

import pytest

from kb.make import aside as module
from kb.make.aside import aside, clear, put


def test_the_new_file_is_there_at_the_end_alone(tmp_path: Path) -> None:
    """Until then the old one is; then nothing stands beside it."""
    path = tmp_path / "file.txt"
    path.write_text("old")
    with aside(path) as beside:
        beside.write_text("new")
        assert beside.parent == tmp_path
        assert path.read_text() == "old"
    assert path.read_text() == "new"
    assert list(tmp_path.iterdir()) == [path]


def test_a_failure_leaves_the_old_file_and_nothing_else(tmp_path: Path) -> None:
    """Also what SQLite put beside the one aside goes."""
    path = tmp_path / "file.txt"
    path.write_text("old")

    def fails() -> None:
        with aside(path) as beside:
            beside.write_text("half")
            beside.with_name(f"{beside.name}-journal").write_text("journal")
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        fails()
    assert path.read_text() == "old"
    assert list(tmp_path.iterdir()) == [path]


def left_by(process: int, path: Path, machine: str | None = None) -> Path:
    """A file as a writer of that process number left it."""
    left = path.with_name(f".{path.name}.{machine or module._here()}.{process}.0badcafe.aside")
    left.write_text("half")
    return left


def test_files_of_dead_writers_are_cleared_and_of_living_ones_kept(tmp_path: Path) -> None:
    """A writer that still runs, another's whom we may not signal, another machine's, another file's: all kept."""
    path = tmp_path / "file.txt"
    ended = subprocess.Popen([sys.executable, "-c", ""])
    ended.wait()
    kept = {
        left_by(os.getpid(), path),
        left_by(1, path),
        left_by(10**30, path),
        left_by(ended.pid, path, machine="elsewhere"),
        left_by(ended.pid, tmp_path / "other.txt"),
    }
    left_by(ended.pid, path)
    clear(path)
    assert set(tmp_path.iterdir()) == kept


def test_the_process_of_another_user_is_alive(monkeypatch: pytest.MonkeyPatch) -> None:
    """That it may not be signalled says that it is there."""

    def refuses(*_: int) -> None:
        raise PermissionError

    monkeypatch.setattr(os, "kill", refuses)
    assert module._alive(1)


def test_a_day_old_is_abandoned_whoever_wrote_it(tmp_path: Path) -> None:
    """No build takes a day, and another machine's writers can't be asked."""
    path = tmp_path / "file.txt"
    left = left_by(1, path, machine="elsewhere")
    clear(path)
    assert left.exists()
    os.utime(left, (0, time.time() - 2 * module.ABANDONED_S))
    clear(path)
    assert not left.exists()


def test_put_writes_only_what_changes(tmp_path: Path) -> None:
    """Saying the same again leaves the file alone; folders are made as needed."""
    path = tmp_path / "new" / "file.txt"
    assert put(path, "one\n")
    os.utime(path, (0, 0))
    assert not put(path, "one\n")
    assert path.stat().st_mtime == 0
    assert put(path, "zwei\n")
    assert path.read_bytes() == b"zwei\n"
