"""`--done FILE`: what was done so far, as a table of comma-separated values.

A header row names the columns: `drill`, `met` (yes or no) and `session` (a number) or `date` (YYYY-MM-DD); `load` may
say how heavy. What else a plan's own table has is passed over, so that it can be filled in and handed back: a row
whose `met` is empty is not done yet.
"""

import csv
import io
import sqlite3
from collections.abc import Iterator, Mapping
from datetime import date
from difflib import get_close_matches
from pathlib import Path
from typing import NamedTuple

from kb.ask.names import resolve
from kb.ask.plan.past import Done
from kb.errors import BadInput
from kb.show.plan_csv import COLUMNS
from kb.terms import DrillId, Load

__all__ = ["LARGEST", "MOST_SESSIONS", "done_file"]

LARGEST = 1_000_000
"""Bytes of a file at most: a lifetime of training is smaller."""

MOST_SESSIONS = 999
"""The highest number that a session may have."""

ANSWERS = {"yes": True, "y": True, "no": False, "n": False}
LOADS = {load.word: load for load in Load}


class _Row(NamedTuple):
    """A row as read: where it stands, and its cells by column."""

    where: str
    cells: Mapping[str, str]


def _text(path: Path) -> str:
    """What a file says. Raises BadInput where it can't be read as text."""
    try:
        if path.is_file() and path.stat().st_size > LARGEST:
            raise BadInput(f"{path} is too large for a list of what was done ({LARGEST // 1_000_000} MB at most)")
        return path.read_text("utf-8-sig")
    except UnicodeDecodeError:
        raise BadInput(f"{path} isn't plain text in UTF-8") from None
    except (OSError, ValueError) as error:
        reason = (getattr(error, "strerror", None) or str(error)).lower()
        raise BadInput(f"{path} can't be read: {reason}") from None


def _header(path: Path, header: list[str]) -> list[str]:
    """The columns, which must be known, given once, and enough."""
    names = [name.strip().lower() for name in header]
    where = f"{path}, line 1"
    for name in names:
        if name not in COLUMNS:
            raise BadInput(
                f"{where}: there is no column {name!r}", nearest=tuple(get_close_matches(name, COLUMNS, n=1))
            )
        if names.count(name) > 1:
            raise BadInput(f"{where}: the column {name} is there twice")
    for needed in ("drill", "met"):
        if needed not in names:
            raise BadInput(f"{where}: the header has no column {needed}; it needs drill, met, and session or date")
    if "session" not in names and "date" not in names:
        raise BadInput(f"{where}: the header has neither session nor date; one of them says when it was done")
    return names


def _rows(path: Path) -> Iterator[_Row]:
    """The rows that are filled in."""
    lines = csv.reader(io.StringIO(_text(path), newline=""), strict=True)
    try:
        names = _header(path, next(lines, []))
        for cells in lines:
            where = f"{path}, line {lines.line_num}"
            if not any(cell.strip() for cell in cells):
                continue
            if len(cells) != len(names):
                raise BadInput(f"{where}: {len(cells)} values under {len(names)} columns")
            row = dict(zip(names, (cell.strip() for cell in cells), strict=True))
            if row["met"]:
                yield _Row(where, row)
    except csv.Error as error:
        raise BadInput(f"{path}, line {lines.line_num}: broken table ({error})") from None


def _when(row: _Row) -> int | date:
    """The session's number, or else its date."""
    number, day = row.cells.get("session", ""), row.cells.get("date", "")
    if number:
        if not (number.isascii() and number.isdigit() and 1 <= int(number[:9]) <= MOST_SESSIONS and len(number) < 9):
            raise BadInput(f"{row.where}, session: {number!r} is no session's number (1 to {MOST_SESSIONS})")
        return int(number)
    if not day:
        column = "session" if "session" in row.cells else "date"
        raise BadInput(f"{row.where}, {column}: nothing says when this was done")
    try:
        return date.fromisoformat(day)
    except ValueError:
        raise BadInput(f"{row.where}, date: {day!r} is no date; write it as 2026-03-09") from None


def _drill(row: _Row, db: sqlite3.Connection) -> DrillId:
    named = row.cells["drill"]
    if not named:
        raise BadInput(f"{row.where}, drill: nothing says which drill")
    try:
        return DrillId(resolve(db, "drill", named))
    except BadInput as unknown:
        raise BadInput(f"{row.where}, drill: {unknown}", nearest=unknown.nearest) from None


def _met(row: _Row) -> bool:
    met = row.cells["met"].lower()
    if met not in ANSWERS:
        raise BadInput(f"{row.where}, met: {row.cells['met']!r} is neither yes nor no")
    return ANSWERS[met]


def _load(row: _Row) -> Load | None:
    said = row.cells.get("load", "").lower()
    if said and said not in LOADS:
        near = tuple(get_close_matches(said, LOADS, n=1)) or tuple(LOADS)
        raise BadInput(f"{row.where}, load: {said!r} is no load", nearest=near)
    return LOADS[said] if said else None


def done_file(path: Path, db: sqlite3.Connection, *, before: date | None = None) -> tuple[Done, ...]:
    """What a file says was done, in the order of its rows.

    Sessions given by date are numbered in the order of their dates.

    Parameters
    ----------
    path
        The file.
    db
        The catalogue, for the drills' names.
    before
        The day of the next session; whatever was done was done before it.

    Raises
    ------
    BadInput
        If the file can't be read or understood, naming file, line and column.
    """
    found: list[tuple[int | date, _Row, DrillId, bool, Load | None]] = []
    seen: dict[tuple[int | date, DrillId, Load | None], str] = {}
    for row in _rows(path):
        when, drill, met, load = _when(row), _drill(row, db), _met(row), _load(row)
        if found and isinstance(when, int) != isinstance(found[0][0], int):
            raise BadInput(
                f"{row.where}: some rows have a session's number and some a date; use one of them throughout"
            )
        if before is not None and isinstance(when, date) and when >= before:
            raise BadInput(f"{row.where}, date: {when} is not before {before}, the day of the next session")
        key = (when, drill, load)
        if key in seen:
            raise BadInput(f"{row.where}: {drill} is there already on {seen[key]}, in the same session")
        seen[key] = row.where.rpartition(", ")[2]
        found.append((when, row, drill, met, load))
    days = {day: n for n, day in enumerate(sorted({when for when, *_ in found if isinstance(when, date)}), 1)}
    return tuple(
        Done(when if isinstance(when, int) else days[when], drill, met, load) for when, _, drill, met, load in found
    )
