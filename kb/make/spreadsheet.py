"""A kind's entries as a spreadsheet: CSV with a header row, one entry a row, one field of front matter a column."""

import csv
import io
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path, PurePosixPath
from typing import Any, NamedTuple

from kb.errors import BadInput, Problem
from kb.make.cells import cell_of, value_of
from kb.make.files import FOLDERS, EntryFile, Kind, find, is_id, nearest, read
from kb.make.front_matter import take_apart

__all__ = ["Row", "columns", "entries_of", "rows_of", "spreadsheet"]

_PLACE = ("id", "folder")
"""The columns that say where an entry stands; all others are fields."""


class Row(NamedTuple):
    """One row as read: its number in the sheet (the header's is 1), where its entry stands, and its fields.

    `fields` holds every column of the sheet; a field whose cell is empty is None and stands in no front matter.
    """

    number: int
    id: str
    folder: str
    fields: Mapping[str, Any]


def columns(kind: Kind) -> tuple[str, ...]:
    """The columns of a kind's spreadsheet, in order."""
    from kb.make.models import MODELS

    return (*_PLACE, *(field.alias or name for name, field in MODELS[kind].model_fields.items()))


def entries_of(root: Path, kind: Kind) -> Iterator[tuple[EntryFile, bytes]]:
    """Every entry of a kind in the library at `root`, with its bytes, in order of its id.

    Raises
    ------
    BadInput
        If one of them can't be read.
    """
    files, _ = find(root)
    for entry in sorted((each for each in files if each.kind == kind), key=lambda each: each.id):
        data = read(root, entry)
        if isinstance(data, Problem):
            raise BadInput(f"{entry.file}: {data.message}")
        yield entry, data


def spreadsheet(root: Path, kind: Kind) -> str:
    """All entries of a kind as CSV (RFC 4180) with a header row.

    Raises
    ------
    BadInput
        If the front matter of an entry can't be read.
    """
    out = io.StringIO(newline="")
    write = csv.writer(out)
    named = columns(kind)
    write.writerow(named)
    for entry, data in entries_of(root, kind):
        found = take_apart(entry.file, data)
        if found.value is None or found.problems:
            problem = found.problems[0]
            raise BadInput(f"{problem.file}:{problem.line}: {problem.message}")
        place = (entry.id, PurePosixPath(entry.file).parent.name)
        write.writerow([*place, *("" if (v := found.value.get(f)) is None else cell_of(v) for f in named[2:])])
    return out.getvalue()


def rows_of(file: str, text: str, kind: Kind) -> tuple[list[Row], list[Problem]]:
    """The rows of a spreadsheet, and a problem for each cell that can't be read.

    The separator may be a comma, a semicolon or a tab: whichever the header row has most of.

    Parameters
    ----------
    file
        What the spreadsheet is called, for problems.
    text
        What it says.
    kind
        The kind of its entries.
    """
    head = text.lstrip("\ufeff").split("\n", 1)[0]
    separator = max(",;\t", key=head.count)
    lines = csv.reader(io.StringIO(text.lstrip("\ufeff"), newline=""), delimiter=separator)
    try:
        table = [[cell.strip() for cell in line] for line in lines]
    except csv.Error as error:
        return [], [_problem(file, 1, f"The file can't be read as CSV: {error}.")]
    if not table or "id" not in table[0]:
        help_ = f"Begin with a header row: {', '.join(columns(kind)[:4])} and so on; `drillpath export` writes one."
        return [], [_problem(file, 1, "There is no header row with a column `id`.", help_)]
    header = table[0]
    problems = list(_wrong_header(file, header, columns(kind)))
    rows: list[Row] = []
    for number, line in enumerate(table[1:] if not problems else (), 2):
        if any(line):
            row, wrong = _row(file, number, header, line, kind)
            problems += wrong
            rows.append(row)
    problems += _twice(file, rows)
    return rows, problems


def _wrong_header(file: str, header: Sequence[str], known: Sequence[str]) -> Iterator[Problem]:
    for n, name in enumerate(header, 1):
        if name not in known:
            message = f"Column {n}, `{name}`, is no field of these entries."
            yield _problem(file, 1, message, nearest(name, tuple(known)) or f"Known are {', '.join(known)}.")
        elif name in header[: n - 1]:
            yield _problem(file, 1, f"Column {n}, `{name}`, stands in the header a second time.")


def _row(file: str, number: int, header: Sequence[str], line: Sequence[str], kind: Kind) -> tuple[Row, list[Problem]]:
    problems: list[Problem] = []
    if len(line) > len(header) and any(line[len(header) :]):
        problems.append(_problem(file, number, f"There are {len(line)} cells, and the header has {len(header)}."))
    cells = dict(zip(header, [*line, *[""] * (len(header) - len(line))], strict=False))
    id_, folder = cells.pop("id"), cells.pop("folder", "")
    if not is_id(id_):
        problems.append(_problem(file, number, f"`id`: `{id_}` isn't kebab-case.", "Small letters, digits, hyphens."))
    if folder and FOLDERS.get(folder) != kind:
        usual = tuple(name for name, of in FOLDERS.items() if of == kind)
        problems.append(_problem(file, number, f"`folder`: `{folder}` holds no such entries.", nearest(folder, usual)))
    fields: dict[str, Any] = {}
    for field, cell in cells.items():
        value, wrong = value_of(field, cell) if cell else (None, [])
        fields[field] = value
        problems += [_problem(file, number, f"`{field}`: {each.message}", each.help) for each in wrong]
    return Row(number, id_, folder, fields), problems


def _twice(file: str, rows: Sequence[Row]) -> Iterator[Problem]:
    first: dict[str, int] = {}
    for row in rows:
        if (before := first.setdefault(row.id, row.number)) != row.number:
            yield _problem(file, row.number, f"`id`: `{row.id}` stands in row {before} already.")


def _problem(file: str, row: int, message: str, help_: str = "") -> Problem:
    return Problem(file=file, line=row, code="bad-cell", message=message, help=help_)
