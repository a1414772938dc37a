"""What the catalogue's tables and columns are, for Datasette: read from the comments of tables.sql."""

import re
from collections.abc import Iterator
from typing import Any, NamedTuple

from kb.make.catalogue import SCHEMA

__all__ = ["Column", "Table", "metadata", "tables"]

HIDDEN = frozenset({"profile", "step_row", "said"})
"""Tables for the search alone, which people needn't be shown."""

_OPENING = re.compile(r"CREATE (TABLE|VIEW|VIRTUAL TABLE) (\w+)")
_COLUMN = re.compile(r'^    "?(\w+)"? ([A-Z]+)?.*?-- (?:\[(\w+)\] )?(.+)$')


class Column(NamedTuple):
    """A column, what it holds, and its unit if it has one."""

    name: str
    says: str
    unit: str | None = None
    kind: str = "TEXT"


class Table(NamedTuple):
    """A table or view, what it holds, and its columns (a view's are those of the tables it joins)."""

    name: str
    says: str
    columns: tuple[Column, ...] = ()
    view: bool = False


def tables() -> Iterator[Table]:
    """Every table and view of the catalogue, in the order in which they are made."""
    for part in SCHEMA.read_text(encoding="utf-8").split(";\n"):
        opening = _OPENING.search(part)
        if opening is None:
            continue
        comment = part[: opening.start()].strip().split("\n\n")[-1]
        says = " ".join(line.removeprefix("--").strip() for line in comment.splitlines())
        columns = tuple(
            Column(found[1], found[4], found[3], found[2])
            for line in part[opening.end() :].splitlines()
            if (found := _COLUMN.match(line))
        )
        yield Table(opening[2], says, columns, opening[1] == "VIEW")


def _described(table: Table) -> dict[str, Any]:
    described: dict[str, Any] = {"description": table.says}
    if table.columns:
        described["columns"] = {
            column.name: f"{column.says} ({column.unit})" if column.unit else column.says for column in table.columns
        }
    # a unit is multiplied by the value to show it, which only a number bears
    units = {column.name: column.unit for column in table.columns if column.unit and column.kind != "TEXT"}
    if units:
        described["units"] = units
    if table.name in HIDDEN:
        described["hidden"] = True
    return described


def metadata() -> dict[str, Any]:
    """The metadata that Datasette shows beside the catalogue."""
    return {
        "title": "drillpath",
        "description": "Drills for the snatch, clean and jerk: what each is for, what it builds on, how it is done.",
        "databases": {"catalogue": {"tables": {table.name: _described(table) for table in tables()}}},
    }
