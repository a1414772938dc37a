"""A value of front matter as the text of a spreadsheet's cell, and back: nothing is lost on the way.

A list or a map is written as it would be on one line of an entry; text stands as it is. Text that would be
read as something else is put in double quotes.
"""

import json
import re
from typing import Any

from kb.errors import Problem
from kb.make.front_matter import take_apart

__all__ = ["cell_of", "value_of"]

_NUMBER = re.compile(r"-?(0|[1-9][0-9]{0,8})(\.[0-9]{1,9})?")
_PLAIN = re.compile(r"[A-Za-z][\w /.()+-]*", re.ASCII)
_BENT = frozenset({"y", "n", "yes", "no", "on", "off", "true", "false", "null"})
"""Words that YAML reads as something other than text, in lower case."""

_BEGINS_YAML = ("[", "{", '"')
_BEGINS_FORMULA = ("=", "+", "-", "@")
"""What a spreadsheet program would take for a sum to work out."""


def cell_of(value: Any) -> str:
    """A value as a cell says it.

    >>> cell_of(["wall", "stick hold"]), cell_of({"rounds": 3}), cell_of("bar, close: always"), cell_of("12")
    ('[wall, stick hold]', '{rounds: 3}', 'bar, close: always', '"12"')
    """
    if isinstance(value, str):
        stands = value == value.strip() and value and "\n" not in value
        stands = stands and not value.startswith((*_BEGINS_YAML, *_BEGINS_FORMULA))
        return value if stands and not _NUMBER.fullmatch(value) else json.dumps(value, ensure_ascii=False)
    return _flow(value)


def _flow(value: Any) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, dict):
        return "{" + ", ".join(f"{_flow(key)}: {_flow(each)}" for key, each in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(map(_flow, value)) + "]"
    if isinstance(value, str):
        plain = _PLAIN.fullmatch(value) and value == value.strip() and value.lower() not in _BENT
        return value if plain else json.dumps(value, ensure_ascii=False)
    return str(value)


def value_of(field: str, cell: str) -> tuple[Any, list[Problem]]:
    """What a cell of a field's column says, and what is wrong with it; problems carry no file and no line.

    >>> value_of("equipment", "[stick, wall]"), value_of("name", "Tall clean"), value_of("teach_s", "40")
    ((['stick', 'wall'], []), ('Tall clean', []), (40, []))
    """
    said = cell.strip()
    written = said
    if not said.startswith(_BEGINS_YAML) and not _NUMBER.fullmatch(said) and field != "bridge":
        written = json.dumps(said, ensure_ascii=False)
    elif "\n" in said:
        written = " ".join(said.split("\n"))
    found = take_apart("", f"---\n{field}: {written}\n---\n".encode())
    problems = [problem._replace(line=0) for problem in found.problems]
    return (found.value or {}).get(field), problems
