"""All that a library is turned into: catalogue and graphs, then the generated documentation."""

import json
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from kb.errors import BrokenLibrary, DrillpathError

if TYPE_CHECKING:
    from kb.make.files import Kind

__all__ = ["Produced", "main", "produce"]

DOCS = Path(__file__).parent / "docs"
"""The documentation, shipped with the package."""

KINDS: tuple["Kind", ...] = ("lift", "position", "fault", "equipment", "drill")
"""Kinds of entry, each with its schema."""


class Produced(NamedTuple):
    """The catalogue, the files that were written or removed, and, when only checking, those that are stale."""

    catalogue: Path
    changed: tuple[Path, ...] = ()
    stale: tuple[Path, ...] = ()


def produce(root: Path, out: Path, *, check: bool = False) -> Produced:
    """Bring everything that is made from the library at `root` up to date.

    The text graphs stand in `root`/graphs; the documentation is only written in a checkout, where it is
    this package's own. The figures stand in `out`/figures and aren't counted among what changed.

    Parameters
    ----------
    root
        The folder that holds drills/.
    out
        The folder of outputs that aren't committed.
    check
        Write nothing; find the committed files that don't say what they should.

    Raises
    ------
    BrokenLibrary
        If the library has structural problems.
    DrillpathError
        If something can't be read or written.
    """
    from kb.make.build import CATALOGUE, PARSED, build, put_all

    if check:
        return Produced(out / CATALOGUE, stale=_stale(root))
    report = build(root, out, root / "graphs", progress=_say)
    try:
        _draw(report.catalogue, out / "figures")
        return Produced(report.catalogue, (*report.changed, *put_all(_docs(root, out / PARSED))))
    except OSError as error:
        raise DrillpathError(f"{error.filename} can't be written: {(error.strerror or str(error)).lower()}") from error


def _say(line: str) -> None:
    print(line, file=sys.stderr, flush=True)  # noqa: T201


def _draw(catalogue: Path, folder: Path) -> None:
    """Bring the figures of everything in a catalogue up to date."""
    from contextlib import closing

    from kb.ask import read
    from kb.show.figure.write import Drawable, write_figures

    with closing(read.open_catalogue(catalogue)) as db:
        write_figures(Drawable(read.positions(db), read.faults(db), read.drills(db), read.lifts(db)), folder)


def _docs(root: Path, parsed: Path | None = None) -> dict[Path, str]:
    """The generated documentation, by file; none for a library outside the checkout."""
    if not (root / "kb" / "docs").is_dir() or not (root / "kb" / "docs").samefile(DOCS):
        return {}
    from kb.check.claims_page import claims_page
    from kb.check.table import explanations
    from kb.make.library import load
    from kb.make.schema import field_reference, json_schema

    schemas = {DOCS / "schema" / f"{kind}.json": json.dumps(json_schema(kind), indent=2) + "\n" for kind in KINDS}
    pages = {
        "reference-fields.md": field_reference(),
        "problems.md": explanations(),
        "claims.md": claims_page(load(root, parsed=parsed)),
    }
    return {DOCS / name: says for name, says in pages.items()} | schemas


def _stale(root: Path) -> tuple[Path, ...]:
    """Committed files that are missing, differ from what they should say, or should be gone."""
    from kb.make.build import fresh_library, graph_texts, left_over

    library = fresh_library(root)
    texts = graph_texts(library, root / "graphs") | _docs(root)
    differ = [path for path, says in texts.items() if not path.is_file() or path.read_bytes() != says.encode()]
    return (*differ, *left_over(library, root / "graphs"))


def main(arguments: Sequence[str] | None = None) -> int:
    """Build from the command line; the exit status: 0 done, 1 stale or broken, 2 not understood."""
    from argparse import ArgumentParser

    here = Path(__file__).parent.parent
    parser = ArgumentParser(prog="build.py", description="Make the catalogue, the graphs and the generated documents.")
    parser.add_argument("--library", type=Path, default=here, help="the folder that holds drills/ (default: this one)")
    parser.add_argument("--out", type=Path, help="the folder of outputs (default: out/ in the library)")
    parser.add_argument("--check", action="store_true", help="write nothing; exit 1 if a committed file is stale")
    options = parser.parse_args(arguments)
    try:
        produced = produce(options.library, options.out or options.library / "out", check=options.check)
    except BrokenLibrary as error:
        for problem in error.problems:
            _say(f"{problem.file}:{problem.line}: {problem.code}: {problem.message}")
        _say(str(error))
        return 1
    except DrillpathError as error:
        _say(str(error))
        return 1
    for path in produced.stale:
        _say(f"{_shown(path, options.library)} is stale; run build.py")
    if not options.check:
        written = len(produced.changed)
        print(f"{written} files written" if written > 1 else "1 file written" if written else "up to date")  # noqa: T201
    return 1 if produced.stale else 0


def _shown(path: Path, root: Path) -> str:
    path, root = path.resolve(), root.resolve()
    return path.relative_to(root).as_posix() if path.is_relative_to(root) else str(path)
