"""The files of a library: which are entries, which stand where no entry may, and their bytes.

Nothing here trusts what it finds: links aren't followed, only ordinary files are opened, and no more
than `LARGEST` bytes are read of any.
"""

import os
import re
import stat
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from kb.errors import Problem

__all__ = ["FOLDERS", "LARGEST", "EntryFile", "Kind", "find", "is_id", "nearest", "read", "shown"]

Kind = Literal["lift", "position", "fault", "equipment", "drill"]

FOLDERS: dict[str, Kind] = {
    "lifts": "lift",
    "positions": "position",
    "faults": "fault",
    "equipment": "equipment",
    "snatch": "drill",
    "clean": "drill",
    "jerk": "drill",
    "squat": "drill",
    "pull": "drill",
    "mobility": "drill",
}
"""Each folder under drills/ and the kind of its entries; the drills' folders are families."""

LARGEST = 200_000
"""No entry is larger, bytes: a hundred times what a real one needs, and still read in a blink."""

_ID = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
_UNSHOWABLE = re.compile(r"[\x00-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069]")


@dataclass(frozen=True, slots=True)
class EntryFile:
    """A file that stands where an entry may: its name relative to the library, its kind and its id."""

    file: str
    kind: Kind
    id: str


def is_id(text: str) -> bool:
    """Whether `text` is kebab-case: small letters and digits, single hyphens, a letter first."""
    return _ID.fullmatch(text) is not None


def nearest(wrong: str, right: Iterator[str] | list[str] | tuple[str, ...]) -> str:
    """The right value most like a wrong one, as a help sentence; empty if none is near."""
    from difflib import get_close_matches

    found = get_close_matches(wrong, list(right), n=1)
    return f"Did you mean `{found[0]}`?" if found else ""


def shown(name: str) -> str:
    """A file name that can be printed: undecodable bytes and control characters are spelt out."""
    safe = os.fsencode(name).decode("utf-8", "backslashreplace")
    return _UNSHOWABLE.sub(lambda found: f"\\u{ord(found[0]):04x}", safe)


def find(root: Path) -> tuple[list[EntryFile], list[Problem]]:
    """Every entry file of the library at `root`, in order of its name, and what stands there wrongly."""
    problems: list[Problem] = []
    entries: list[EntryFile] = []
    top = root / "drills"
    if not top.is_dir():
        return [], [_problem("drills", "no-library", "There is no folder `drills` here, so no library.")]
    for item in _listed(top, "drills", problems):
        file = f"drills/{item.name}"
        if item.is_symlink():
            if _is_markdown(item.name) or _leads_to_folder(item):
                problems.append(_link(file))
        elif not item.is_dir(follow_symlinks=False):
            if _is_markdown(item.name):
                problems.append(_stray(file))
        elif item.name in FOLDERS:
            entries += _entries_of(item, FOLDERS[item.name], problems)
        else:
            problems += _unknown_folder(item)
    return entries, problems


def read(root: Path, entry: EntryFile) -> bytes | Problem:
    """The bytes of an entry, or why it can't be read."""
    # not to follow a link put there since it was listed, nor to wait for ever on a pipe
    flags = os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0)
    try:
        with os.fdopen(os.open(root / entry.file, flags), "rb") as handle:
            if not stat.S_ISREG(os.fstat(handle.fileno()).st_mode):
                return _problem(entry.file, "unreadable", "This isn't an ordinary file.")
            data = handle.read(LARGEST + 1)
    except OSError as error:
        return _problem(entry.file, "unreadable", f"This can't be read: {_reason(error)}.")
    if len(data) > LARGEST:
        return _problem(entry.file, "too-big", f"This is larger than {LARGEST // 1000} kB, which no entry needs.")
    return data


def _entries_of(folder: os.DirEntry[str], kind: Kind, problems: list[Problem]) -> Iterator[EntryFile]:
    for item in _listed(folder.path, f"drills/{folder.name}", problems):
        file = f"drills/{folder.name}/{item.name}"
        if item.is_symlink():
            if _is_markdown(item.name) or _leads_to_folder(item):
                problems.append(_link(file))
        elif item.is_dir(follow_symlinks=False):
            strays = [file] if _is_markdown(item.name) else _markdown_below(item.path, file)
            problems += (_stray(stray) for stray in strays)
        elif item.name.endswith(".md") and is_id(item.name[:-3]):
            yield EntryFile(file, kind, item.name[:-3])
        elif _is_markdown(item.name):
            problems.append(_bad_id(file, item.name))


def _leads_to_folder(link: os.DirEntry[str]) -> bool:
    try:
        return link.is_dir()
    except OSError:  # it leads round to itself
        return False


def _listed(folder: str | Path, file: str, problems: list[Problem]) -> list[os.DirEntry[str]]:
    try:
        with os.scandir(folder) as found:
            return sorted(found, key=lambda item: item.name)
    except OSError as error:
        problems.append(_problem(file, "unreadable", f"This folder can't be read: {_reason(error)}."))
        return []


def _markdown_below(folder: str, file: str) -> list[str]:
    """Every Markdown file at any depth below a folder, links not followed."""
    found = []
    for here, _, names in os.walk(folder):
        inside = file + here[len(folder) :].replace(os.sep, "/")
        found += [f"{inside}/{name}" for name in names if _is_markdown(name)]
    return sorted(found)


def _unknown_folder(folder: os.DirEntry[str]) -> list[Problem]:
    file = f"drills/{folder.name}"
    if not _is_markdown(folder.name) and not _markdown_below(folder.path, file):
        return []
    message = f"`{shown(folder.name)}` is no folder of entries, so nothing in it is read."
    help_ = nearest(folder.name, tuple(FOLDERS)) or f"The folders are {', '.join(FOLDERS)}."
    return [_problem(file, "unknown-folder", message, help_)]


def _bad_id(file: str, name: str) -> Problem:
    message = f"`{shown(name)}` is no name for an entry: small letters, digits and single hyphens, then `.md`."
    likely = re.sub(r"[^a-z0-9]+", "-", re.sub(r"\.md$", "", name.lower())).strip("-")
    return _problem(file, "bad-id", message, f"Rename it to `{likely}.md`." if is_id(likely) else "")


def _is_markdown(name: str) -> bool:
    return name.lower().endswith((".md", ".markdown"))


def _stray(file: str) -> Problem:
    message = "Entries stand at exactly `drills/FOLDER/ID.md`, so this one isn't read."
    return _problem(file, "stray-file", message, "Move it into its folder, or out of `drills`.")


def _link(file: str) -> Problem:
    return _problem(file, "symlink", "This is a symbolic link, and links aren't followed.", "Put the file itself here.")


def _reason(error: OSError) -> str:
    return (error.strerror or type(error).__name__).lower()


def _problem(file: str, code: str, message: str, help_: str = "") -> Problem:
    return Problem(file=shown(file), line=1, code=code, message=message, help=help_)
