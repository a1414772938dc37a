"""Which library is in use, and its catalogue, made again when an entry is newer.

`--library DIR`, else DRILLPATH_LIBRARY, else the checkout that holds kb/, else the copy in the wheel; never
the working directory by chance. The catalogue lies in out/ beside drills/.

Paths are text here, not pathlib's: every question comes this way, and that module alone takes as long to
import as a catalogue takes to open.
"""

import os
import sqlite3
from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, NamedTuple

from kb.ask.read import open_catalogue
from kb.errors import BadInput, BrokenLibrary, DrillpathError

if TYPE_CHECKING:
    from pathlib import Path

__all__ = ["HERE", "VARIABLE", "Place", "catalogue_of", "place_of"]

VARIABLE = "DRILLPATH_LIBRARY"
"""The environment variable that names a library."""

HERE = os.path.dirname(os.path.abspath(__file__))
"""The folder of the package: kb/."""

Say = Callable[[str], None]


class Place(NamedTuple):
    """Where a library is: the folder that holds drills/, and its catalogue.

    The copy in the wheel is `shipped`: its catalogue came with it and is never made again.
    """

    root: str
    catalogue: str
    shipped: bool = False


def place_of(option: str | None, environ: Mapping[str, str] = os.environ, *, package: str = HERE) -> Place:
    """The library in use.

    Parameters
    ----------
    option
        What `--library` said, if anything.
    environ
        The environment, in which DRILLPATH_LIBRARY may name one.
    package
        The folder of the package, beside or in which a library may lie.

    Raises
    ------
    BadInput
        If a library that was named has no drills/, or if there is none at all.
    """
    join, is_folder = os.path.join, os.path.isdir
    for named, how in ((option, "--library"), (environ.get(VARIABLE), VARIABLE)):
        if named:
            if not is_folder(join(named, "drills")):
                raise BadInput(f"{how} names {named}, which holds no folder drills/")
            return Place(named, join(named, "out", "catalogue.db"))
    checkout, shipped = os.path.dirname(package), join(package, "shipped")
    if is_folder(join(checkout, "drills", "lifts")):
        return Place(checkout, join(checkout, "out", "catalogue.db"))
    if os.path.isfile(join(shipped, "catalogue.db")):
        return Place(shipped, join(shipped, "catalogue.db"), shipped=True)
    raise BadInput(f"there is no library here; name one with --library or {VARIABLE}")


def catalogue_of(place: Place, say: Say) -> sqlite3.Connection:
    """A library's catalogue, open, made again first if an entry or a folder of entries is newer.

    `say` gets a line when something is made, and a warning when the answer comes from an older catalogue
    or from one that can't be kept.

    Raises
    ------
    BrokenLibrary
        If the library has structural problems and there is no older catalogue.
    DrillpathError
        If the catalogue can't be read.
    """
    if place.shipped:
        return open_catalogue(place.catalogue)
    made = _modified(place.catalogue)
    if made is None:
        say("No catalogue yet: making it.")
    elif _newest(os.path.join(place.root, "drills")) > made:
        say("The library has changed: making its catalogue again.")
    else:
        found = _old(place)
        if found is not None:
            return found
        say("The catalogue can't be read: making it again.")
    return _made_again(place, say)


def _modified(path: str) -> int | None:
    try:
        return os.stat(path).st_mtime_ns
    except OSError:
        return None


def _newest(drills: str) -> int:
    """When an entry, or a folder that holds some, last changed, ns."""
    newest = os.stat(drills).st_mtime_ns
    with os.scandir(drills) as folders:
        for folder in folders:
            if not folder.is_dir(follow_symlinks=False):
                continue
            newest = max(newest, folder.stat().st_mtime_ns)
            with os.scandir(folder) as files:
                newest = max([newest, *(file.stat(follow_symlinks=False).st_mtime_ns for file in files)])
    return newest


def _old(place: Place) -> sqlite3.Connection | None:
    """The catalogue as it stands; None if there is none that this program reads."""
    try:
        return open_catalogue(place.catalogue) if os.path.isfile(place.catalogue) else None
    except DrillpathError:
        return None


def _made_again(place: Place, say: Say) -> sqlite3.Connection:
    from pathlib import Path

    from kb.make.build import build

    try:
        build(Path(place.root), Path(place.catalogue).parent, None)
        return open_catalogue(place.catalogue)
    except BrokenLibrary as broken:
        old = _old(place)
        if old is None:
            raise
        many = len(broken.problems)
        what = "1 problem" if many == 1 else f"{many} problems"
        say(f"Warning: the library has {what} (see `drillpath check`); this answer is from before.")
        return old
    except (DrillpathError, OSError) as error:
        old = _old(place)
        if old is not None:
            say(f"Warning: {error}; this answer is from before the library changed.")
            return old
        say(f"Warning: {error}; the catalogue is made for this answer only.")
        return _for_once(Path(place.root))


def _for_once(root: "Path") -> sqlite3.Connection:
    """A catalogue made in a temporary folder and held in memory."""
    from contextlib import closing
    from pathlib import Path
    from tempfile import TemporaryDirectory

    from kb.make.build import build

    with TemporaryDirectory(prefix="drillpath-") as folder:
        report = build(root, Path(folder), None)
        memory = sqlite3.connect(":memory:")
        with closing(open_catalogue(report.catalogue)) as made:
            made.backup(memory)
    return memory
