"""The catalogue: one SQLite file with everything that questions are answered from."""

import os
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from kb import __version__
from kb.errors import DrillpathError
from kb.make.aside import aside
from kb.make.derived_rows import DERIVED_ROWS, step_tables
from kb.make.drill_rows import DRILL_ROWS
from kb.make.library import Library
from kb.make.rows import ENTRY_ROWS, Row
from kb.make.unimported import unimported

if TYPE_CHECKING:
    from sqlite_utils import Database

__all__ = ["SCHEMA", "SCHEMA_VERSION", "write"]

SCHEMA_VERSION = "4"

SCHEMA = Path(__file__).with_name("tables.sql")
"""Its tables and views, described."""

PAGE_SIZE = 8192
"""Bytes; rows of about 2 kB pack better than in the default 4096."""


def _by_id(library: Library) -> Library:
    """The same library with its entries in id order, as `load` gives them."""
    return replace(
        library,
        lifts=dict(sorted(library.lifts.items())),
        positions=dict(sorted(library.positions.items())),
        faults=dict(sorted(library.faults.items())),
        items=dict(sorted(library.items.items())),
        drills=dict(sorted(library.drills.items())),
    )


def _rows(library: Library) -> Iterator[tuple[str, list[Row]]]:
    """Each table's name and rows, in the order in which they are written."""
    yield (
        "meta",
        [("content_hash", library.content_hash), ("schema_version", SCHEMA_VERSION), ("version", __version__)],
    )
    for rows in (ENTRY_ROWS, DRILL_ROWS, DERIVED_ROWS):
        for table, rows_of in rows.items():
            yield table, list(rows_of(library))
    places, steps = step_tables(library)
    yield "profile", places
    yield "step_row", steps


def _fill(db: "Database", library: Library) -> None:
    db.execute(f"PRAGMA page_size = {PAGE_SIZE}")
    with db.atomic():
        for statement in SCHEMA.read_text(encoding="utf-8").split(";\n"):
            db.execute(statement)
        for name, rows in _rows(library):
            if rows:
                # insert_all asks each table for its columns first: a tenth of the build
                db.conn.executemany(f"INSERT INTO {name} VALUES ({', '.join('?' * len(rows[0]))})", rows)
        db.execute("INSERT INTO search (search) VALUES ('optimize')")


def write(library: Library, path: Path) -> None:
    """Write a library's catalogue to `path`, whole or not at all; the same library gives the same bytes.

    It is made in memory and copied out without free space, so there is no journal for a killed build to
    leave; readers see the old file until the new one is renamed over it.

    Raises
    ------
    DrillpathError
        If it can't be written there.
    """
    with unimported("numpy", "pandas"):
        from sqlite_utils import Database

    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with aside(path) as beside, closing(Database(memory=True, execute_plugins=False)) as db:
            _fill(db, _by_id(library))
            db.execute("VACUUM INTO ?", [str(beside)])
            _settle(beside)
    except (OSError, sqlite3.OperationalError) as error:
        raise DrillpathError(f"the catalogue can't be written to {path}: {error}") from error


def _settle(path: Path) -> None:
    """Have a file on the disk before its name is, so that losing power can't leave the name without it."""
    with path.open("rb") as file:
        os.fsync(file.fileno())
