"""A spreadsheet taken into a library: only what a cell changes is written, and all of it or nothing.

Of an entry only the lines of a changed field are replaced; its other fields, comments and body stay as they
are, byte for byte. What the sheet doesn't name stays too: an entry without a row, a field without a column.
"""

import shutil
from collections.abc import Mapping, Sequence
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from kb.errors import BadInput, Problem
from kb.make.aside import put
from kb.make.body_text import SECTIONS
from kb.make.cells import cell_of
from kb.make.files import FOLDERS, Kind
from kb.make.front_matter import FrontMatter, take_apart
from kb.make.library import Library, load
from kb.make.spreadsheet import Row, columns, entries_of, rows_of

__all__ = ["take_in"]


def take_in(root: Path, kind: Kind, file: str, text: str, *, write: bool = True) -> tuple[list[str], list[Problem]]:
    """Change a library's entries to what a spreadsheet says.

    Parameters
    ----------
    root
        The folder that holds drills/.
    kind
        The kind of the sheet's entries.
    file, text
        What the sheet is called, for problems, and what it says.
    write
        False to say what would change and change nothing.

    Returns
    -------
    tuple
        The files changed or made, relative to `root`, in order; and the problems, each at the row it comes
        from. With a problem nothing is written.

    Raises
    ------
    BadInput
        If an entry of the library can't be read, or has a problem of its own already.
    """
    rows, problems = rows_of(file, text, kind)
    if problems:
        return [], problems
    before = load(root)
    if before.problems:
        first = before.problems[0]
        raise BadInput(f"mend the library first; {first.file}:{first.line}: {first.message}")
    texts, row_of, problems = _texts(root, kind, file, rows)
    problems += _in_the_library(root, texts, row_of, file) if texts and not problems else []
    if problems:
        return [], problems
    if write:
        for name, says in texts.items():
            put(root / name, says)
    return sorted(texts), []


def _texts(
    root: Path, kind: Kind, file: str, rows: Sequence[Row]
) -> tuple[dict[str, str], dict[str, int], list[Problem]]:
    """The new text of every entry that changes, the row it comes from, and rows that have no place."""
    there = {entry.id: (entry.file, data) for entry, data in entries_of(root, kind)}
    texts: dict[str, str] = {}
    row_of: dict[str, int] = {}
    problems: list[Problem] = []
    folders = [folder for folder, of in FOLDERS.items() if of == kind]
    for row in rows:
        name, data = there.get(row.id, ("", b""))
        folder = row.folder or (folders[0] if len(folders) == 1 else "")
        if not name and not folder:
            message = f"Row {row.number}: `{row.id}` is new, and no `folder` says where it goes."
            help_ = f"One of {', '.join(folders)}."
            problems.append(Problem(file=file, line=row.number, code="bad-cell", message=message, help=help_))
            continue
        says = _changed(data, row, kind) if name else _new(row, kind)
        if says is not None:
            name = name or f"drills/{folder}/{row.id}.md"
            texts[name], row_of[name] = says, row.number
    return texts, row_of, problems


def _new(row: Row, kind: Kind) -> str:
    """A new entry: its fields in order, and every heading with nothing under it."""
    fields = [f"{f}: {_written(row.fields[f])}" for f in columns(kind)[2:] if row.fields.get(f) is not None]
    body = [f"## {heading}\n" for heading in SECTIONS[kind] if heading != "Miss"]
    return "\n".join(["---", *fields, "---", *body])


def _written(value: Any) -> str:
    """A value as it stands after a field's name; text as an item of a list would, so that nothing in it misleads."""
    return cell_of([value])[1:-1] if isinstance(value, str) else cell_of(value)


def _changed(data: bytes, row: Row, kind: Kind) -> str | None:
    """An entry's text with the fields that a row changes; None if it changes none."""
    found = take_apart("", data)
    old: Mapping[str, Any] = found.value or {}
    differ = {field: value for field, value in row.fields.items() if value != old.get(field)}
    if not differ:
        return None
    lines = data.decode("utf-8-sig").splitlines(keepends=True)
    blocks = _blocks(found, lines)
    order = columns(kind)
    for field, value in differ.items():
        says = [] if value is None else [f"{field}: {_written(value)}\n"]
        if field in blocks:
            comments = [line for line in blocks[field][1:] if line.lstrip().startswith("#")]
            blocks[field] = says + comments
        else:
            before = [each for each in blocks if each in order and order.index(each) < order.index(field)]
            blocks[max(before, key=order.index) if before else ""] += says
    end = found.body_line - 2
    return "".join([*(line for block in blocks.values() for line in block), *lines[end:]])


def _blocks(found: FrontMatter, lines: Sequence[str]) -> dict[str, list[str]]:
    """The lines of each field in the file's order, what stands before the first under ""."""
    starts = sorted((line, path) for path, line in found.lines.items() if path in (found.value or {}))
    ends = [line - 1 for line, _ in starts[1:]] + [found.body_line - 2]
    blocks = {"": list(lines[: starts[0][0] - 1])}
    return blocks | {path: list(lines[line - 1 : end]) for (line, path), end in zip(starts, ends, strict=True)}


def _in_the_library(root: Path, texts: Mapping[str, str], row_of: Mapping[str, int], file: str) -> list[Problem]:
    """What would be wrong in the library with these entries in it, each at the row it comes from."""
    with TemporaryDirectory(prefix="drillpath-import-") as folder:
        beside = Path(folder)
        shutil.copytree(root / "drills", beside / "drills")
        for name, says in texts.items():
            (beside / name).parent.mkdir(exist_ok=True)
            (beside / name).write_text(says, encoding="utf-8", newline="")
        tried: Library = load(beside)
    return [_at_cell(problem, tried, row_of, file) for problem in tried.problems]


def _at_cell(problem: Problem, tried: Library, row_of: Mapping[str, int], file: str) -> Problem:
    row = row_of.get(problem.file)
    if row is None:  # an entry that the sheet doesn't touch, and that what it changes no longer suits
        return problem
    lines = next((source.lines for source in tried.sources.values() if source.file == problem.file), {})
    above = [(line, path) for path, line in lines.items() if path and line <= problem.line and "." not in path]
    column = f", `{max(above)[1]}`" if above and not max(above)[1].startswith("## ") else ""
    return problem._replace(file=file, line=row, message=f"Row {row}{column}: {problem.message}")
