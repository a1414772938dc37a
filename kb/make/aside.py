"""Files that appear whole or not at all: written aside in the same folder, then renamed over the old one."""

import os
import secrets
import time
import zlib
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

__all__ = ["aside", "clear", "put"]

ABANDONED_S = 24 * 3600
"""Age after which a file aside is taken to be left behind, s, when who wrote it can't be asked."""

SUFFIX = ".aside"


def _here() -> str:
    """The machine, as far as a process number means something on it."""
    return f"{zlib.crc32(os.uname().nodename.encode() if hasattr(os, 'uname') else b''):08x}"


@contextmanager
def aside(path: Path) -> Iterator[Path]:
    """A new path beside `path` to write to; renamed to `path` at the end, removed on any failure.

    Two who write at once each have their own, and the later rename stands.
    """
    clear(path)
    beside = path.with_name(f".{path.name}.{_here()}.{os.getpid()}.{secrets.token_hex(4)}{SUFFIX}")
    try:
        yield beside
        beside.replace(path)
    finally:
        for left in path.parent.glob(f"{beside.name}*"):
            left.unlink(missing_ok=True)


def clear(path: Path) -> None:
    """Remove what earlier writers of `path` left behind when they were killed."""
    # SQLite puts a journal beside what it writes
    for left in path.parent.glob(f".{path.name}.*{SUFFIX}*"):
        with suppress(OSError):
            if _abandoned(left, path):
                left.unlink()


def _abandoned(left: Path, path: Path) -> bool:
    machine, _, rest = left.name[len(path.name) + 2 :].partition(".")
    process = rest.partition(".")[0]
    if time.time() - left.stat().st_mtime > ABANDONED_S:
        return True
    return machine == _here() and process.isdigit() and not _alive(int(process))


def _alive(process: int) -> bool:
    if os.name == "nt":  # pragma: no cover: there a signal 0 would end it
        return True
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    except (PermissionError, OverflowError):
        return True
    return True


def put(path: Path, text: str) -> bool:
    """Write a text file unless it says that already; whether it was written."""
    data = text.encode()
    with suppress(FileNotFoundError):
        if path.read_bytes() == data:
            return False
    path.parent.mkdir(parents=True, exist_ok=True)
    with aside(path) as beside:
        beside.write_bytes(data)
    return True
