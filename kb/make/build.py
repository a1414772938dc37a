"""From a library to its catalogue and graphs, doing no more than what changed asks for.

Everything is imported where it is needed: when nothing changed, that is only what reads and compares files.
"""

import hashlib
import json
import os
import time
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

from kb.errors import BrokenLibrary, DrillpathError

if TYPE_CHECKING:
    from kb.make.library import Library

__all__ = ["CATALOGUE", "PARSED", "Report", "Texts", "build", "fresh_library", "graph_texts", "left_over"]

CATALOGUE = "catalogue.db"
"""Its name in the folder of outputs."""

PARSED = Path("parsed") / "entries.json"
"""Where, in the folder of outputs, every entry is kept parsed, so that only a changed one is read again."""

MADE = "made.json"
"""What the outputs were made of, by which program, and what each is: written last."""

PATIENCE_S = 1.0
"""How long to work before saying so, s."""

Texts = dict[Path, str]
"""What files should say."""


class Report(NamedTuple):
    """What a build did: the catalogue's path, and the files that were written or removed, in order."""

    catalogue: Path
    changed: tuple[Path, ...] = ()


def build(root: Path, out: Path, graphs: Path | None, *, progress: Callable[[str], None] | None = None) -> Report:
    """Bring `out` (catalogue, exported graphs, metadata) and `graphs` (a text graph a lift) up to date.

    Parameters
    ----------
    root
        The folder that holds drills/.
    out
        The folder of outputs that aren't committed; made if it isn't there.
    graphs
        The folder of text graphs; None writes none.
    progress
        Called with one line if it takes longer than `PATIENCE_S`.

    Raises
    ------
    BrokenLibrary
        If the library has structural problems: nothing is written then.
    DrillpathError
        If something can't be written.

    Notes
    -----
    The catalogue is written after the graphs, and what was made of what last of all, so that a build that
    is killed half way is done again by the next one. Two at once write the same or the later wins.
    """
    started = time.time_ns()
    try:
        if _is_fresh(root, out, graphs):
            report = Report(out / CATALOGUE)
        else:
            with _telling(progress, root):
                report = _build(root, out, graphs)
        # as old as what was read: an entry changed since is newer, one that says the same is no reason to ask again
        with suppress(OSError):
            os.utime(report.catalogue, ns=(started, started))
        return report
    except OSError as error:
        where = error.filename or out
        raise DrillpathError(f"{where} can't be written: {(error.strerror or str(error)).lower()}") from error


def _build(root: Path, out: Path, graphs: Path | None) -> Report:
    from kb.make.catalogue import write

    library = fresh_library(root, parsed=out / PARSED)
    texts, drawn = _exported(library, out)
    if graphs is not None:
        texts |= graph_texts(library, graphs)
    changed = put_all(texts)
    changed += _remove(left_over(library, graphs))
    write(library, out / CATALOGUE)
    changed.append(out / CATALOGUE)
    put_all({out / MADE: _made(out, library.content_hash, graphs, drawn, [*_drawings(out), *texts, out / CATALOGUE])})
    return Report(out / CATALOGUE, tuple(changed))


def fresh_library(root: Path, parsed: Path | None = None) -> "Library":
    """The library at `root`, whole.

    Raises
    ------
    BrokenLibrary
        With all its structural problems, if it has any.
    """
    from kb.make.library import load

    library = load(root, parsed=parsed)
    if library.problems:
        many = len(library.problems)
        says = "1 problem stops" if many == 1 else f"{many} problems stop"
        raise BrokenLibrary(f"{says} the build of {root}; nothing was written.", problems=library.problems)
    return library


def graph_texts(library: "Library", graphs: Path) -> Texts:
    """Each lift's text graph, by the file in `graphs` that holds it."""
    from kb.make.mermaid import texts

    return {graphs / f"{lift}.md": says for lift, says in texts(library).items()}


def left_over(library: "Library", graphs: Path | None) -> list[Path]:
    """Text graphs in `graphs` of lifts that are no more; files that weren't made here are let be."""
    from kb.make.mermaid import MARK

    if graphs is None:
        return []
    return [
        path
        for path in sorted(graphs.glob("*.md"))
        if path.stem not in library.lifts and path.read_text(encoding="utf-8", errors="replace").startswith(MARK)
    ]


def _drawings(out: Path) -> tuple[Path, Path]:
    return out / "graphs" / "library.graphml", out / "graphs" / "library.json"


def _exported(library: "Library", out: Path) -> tuple[Texts, str]:
    """What Datasette says of the catalogue, the graph for other programs unless it stands, and its fingerprint."""
    from kb.make.describe import metadata
    from kb.make.graph import fingerprint, graphml, node_link, whole

    texts = {out / "metadata.json": json.dumps(metadata(), indent=1) + "\n"}
    drawn = fingerprint(library)
    before = _before(out, None)
    # networkx takes longer to import than the catalogue to write, and most edits are of words
    if before is None or before["drawn"] != drawn or before["program"] != _program():
        graph = whole(library)
        texts |= zip(_drawings(out), (graphml(graph), node_link(graph)), strict=True)
    return texts, drawn


def put_all(texts: Texts) -> list[Path]:
    """Write the files that don't say what they should; which those were."""
    from kb.make.aside import put

    return [path for path, says in texts.items() if put(path, says)]


def _remove(paths: Iterable[Path]) -> list[Path]:
    removed = list(paths)
    for path in removed:
        path.unlink(missing_ok=True)
    return removed


# -- what was made of what ----------------------------------------------------------------------


def _program() -> str:
    """A name for the program that makes outputs, from its own source: no number to remember to change."""
    from kb import __version__

    here = Path(__file__).parent
    digest = hashlib.sha256(__version__.encode())
    for path in sorted([*here.glob("*.py"), *here.glob("*.sql"), *here.parent.glob("*.py")]):
        digest.update(path.read_bytes())
    return digest.hexdigest()


def _content_hash(root: Path) -> str | None:
    """What `Library.content_hash` would be, without parsing; None where something stands that shouldn't."""
    from kb.make.files import find, read

    entries, problems = find(root)
    if problems:
        return None
    whole = hashlib.sha256()
    for entry in entries:
        found = read(root, entry)
        if not isinstance(found, bytes):
            return None
        whole.update(f"{entry.file}\0{hashlib.sha256(found).hexdigest()}\n".encode())
    return whole.hexdigest()


def _made(out: Path, content_hash: str, graphs: Path | None, drawn: str, files: Iterable[Path]) -> str:
    digests = {str(path.absolute()): hashlib.sha256(path.read_bytes()).hexdigest() for path in files}
    folder = None if graphs is None else str(graphs.absolute())
    made = {
        "out": str(out.absolute()),
        "content_hash": content_hash,
        "program": _program(),
        "graphs": folder,
        "drawn": drawn,
        "files": digests,
    }
    return json.dumps(made, indent=1) + "\n"


def _before(out: Path, graphs: Path | None) -> dict[str, Any] | None:
    """What was made of what by the last build, if all of it that is asked for still stands as it was made."""
    here = out.absolute()
    try:
        made: dict[str, Any] = json.loads((out / MADE).read_bytes())
        if made["out"] != str(here):  # copied or moved: it speaks of files elsewhere
            return None
        for path, digest in made["files"].items():
            asked = graphs is not None or Path(path).is_relative_to(here)
            if asked and hashlib.sha256(Path(path).read_bytes()).hexdigest() != digest:
                return None
        return made if {"content_hash", "program", "graphs", "drawn"} <= made.keys() else None
    except (OSError, ValueError, TypeError, LookupError, AttributeError):
        return None


def _is_fresh(root: Path, out: Path, graphs: Path | None) -> bool:
    """Whether every output asked for stands as it was last made, of the same entries by the same program."""
    before = _before(out, graphs)
    if before is None or before["program"] != _program():
        return False
    drawn = graphs is None or before["graphs"] == str(graphs.absolute())
    return drawn and bool(before["content_hash"] == _content_hash(root))


@contextmanager
def _telling(progress: Callable[[str], None] | None, root: Path) -> Iterator[None]:
    """Say once what is being done, if it takes long."""
    if progress is None:
        yield
        return
    from threading import Timer

    timer = Timer(PATIENCE_S, progress, [f"Building the catalogue of {root} ..."])
    timer.daemon = True
    timer.start()
    try:
        yield
    finally:
        timer.cancel()
