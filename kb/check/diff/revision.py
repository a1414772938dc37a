"""A library by the name of its folder, or by a revision of the repository that the library in use lies in.

A revision is read with `git archive` into a temporary folder: nothing in the repository is touched.
"""

import subprocess
import tarfile
from collections.abc import Iterator
from contextlib import contextmanager
from io import BytesIO
from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory

from kb.errors import BadInput

__all__ = ["found_at"]

LARGEST = 100_000_000
"""No library is larger, bytes: what a revision holds is unpacked no further."""


@contextmanager
def found_at(named: str, root: Path) -> Iterator[Path]:
    """The folder that holds drills/, for as long as the block lasts.

    Parameters
    ----------
    named
        A folder that holds drills/, that folder drills/ itself, or else a revision (`main~5`, a tag, a commit).
    root
        The library in use, whose repository knows the revision.

    Raises
    ------
    BadInput
        If it is neither.
    """
    if not named.strip() or "\0" in named:
        raise BadInput(f"{named!r} is no folder, and no name for a revision")
    folder = Path(named)
    if folder.is_dir():
        yield _holds_drills(folder)
        return
    with TemporaryDirectory(prefix="drillpath-diff-") as kept:
        _unpack(_archived(named, root), Path(kept), named)
        yield Path(kept)


def _holds_drills(folder: Path) -> Path:
    for held in (folder, folder.resolve().parent):
        if (held / "drills").is_dir() and (held == folder or folder.resolve() == (held / "drills").resolve()):
            return held
    raise BadInput(f"{folder} is a folder, but holds no folder drills/")


def _archived(revision: str, root: Path) -> bytes:
    if revision.startswith("-"):
        raise BadInput(f"{revision!r} is no folder, and no name for a revision")
    if _git(root, "rev-parse", "--is-inside-work-tree").strip() != b"true":
        raise BadInput(
            f"{revision!r} is no folder, and {root} lies in no git repository that could know it as a revision"
        )
    if not _git(root, "rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{commit}}"):
        raise BadInput(f"{revision!r} is no folder, and no revision that the repository of {root} knows")
    archive = _git(root, "archive", "--format=tar", revision, "--", "drills")
    if not archive:
        raise BadInput(f"at the revision {revision} there was no folder drills/ in {root}")
    return archive


def _git(root: Path, *arguments: str) -> bytes:
    """What git says; nothing if it refuses."""
    try:
        done = subprocess.run(  # noqa: S603  # the arguments are ours, but for a revision that git has verified
            ["git", "-C", str(root), *arguments],  # noqa: S607  # whichever git is there
            capture_output=True,
            check=False,
        )
    except OSError as error:
        raise BadInput(f"a revision can't be looked up without git: {error}") from None
    return done.stdout if done.returncode == 0 else b""


def _unpack(archive: bytes, folder: Path, revision: str) -> None:
    """Ordinary files below drills/ alone: links and whatever else a repository may hold are left out."""
    left = LARGEST
    with tarfile.open(fileobj=BytesIO(archive)) as packed:
        for member in packed:
            inside = PurePosixPath(member.name)
            if member.isdir() and inside.parts[:1] == ("drills",) and ".." not in inside.parts:
                folder.joinpath(*inside.parts).mkdir(parents=True, exist_ok=True)
            if not member.isfile() or inside.parts[:1] != ("drills",) or ".." in inside.parts:
                continue
            left -= member.size
            if left < 0:
                raise BadInput(f"drills/ at the revision {revision} is larger than {LARGEST // 1_000_000} MB")
            held = packed.extractfile(member)
            target = folder.joinpath(*inside.parts)
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(held.read() if held is not None else b"")
