"""Chains as text that a coach can read: each file of tests/spec/ holds cases, each of five parts that a dot closes.

    # A title, and the coach's question in a sentence
    .
    the command
    .
    each entry: drill, load, work or check; then the cost
    .
    the chain as printed
    .
    why it is right
    .

`python tests/spec_cases.py` writes parts three and four anew, for a reader to judge in the diff.
"""

import json
import shlex
import sys
from pathlib import Path
from typing import NamedTuple

from click.testing import CliRunner

from kb.commands.group import drillpath

__all__ = ["FOLDER", "Case", "answered", "cases"]

FOLDER = Path(__file__).parent / "spec"
WIDTH = "80"


class Case(NamedTuple):
    """One question and the answer expected, as data and as text."""

    file: str
    question: str
    command: str
    data: str
    text: str
    why: str


def cases() -> list[Case]:
    """Every case of every file of the folder; a file without one is an error."""
    found = []
    for path in sorted(FOLDER.iterdir()):
        parts, part = [], list[str]()
        for line in path.read_text(encoding="utf-8").splitlines():
            if line == ".":
                parts.append("\n".join(part).strip("\n"))
                part = []
            else:
                part.append(line)
        if path.suffix != ".md" or not parts or len(parts) % 5 or any(line.strip() for line in part):
            raise ValueError(f"{path.name} isn't cases of five parts, each closed by a line with a dot")
        found += [Case(path.name, *parts[at : at + 5]) for at in range(0, len(parts), 5)]
    return found


def _run(arguments: list[str]) -> str:
    result = CliRunner().invoke(drillpath, arguments, env={"COLUMNS": WIDTH, "LANG": "C"}, prog_name="drillpath")
    if result.exception and not isinstance(result.exception, SystemExit):
        raise result.exception
    return result.output


def answered(command: str) -> tuple[str, str]:
    """A command's answer: as data (entries and cost), and as printed without the ends of lines that are blank."""
    program, *arguments = shlex.split(command)
    if program != "drillpath":
        raise ValueError(f"{command!r} isn't a command of drillpath")
    answer = json.loads(_run([*arguments, "--json"]))
    lines = [f"{entry['id']} {entry['load']} {entry['as']}" for route in answer["routes"] for entry in route["drills"]]
    lines += [f"cost {route['cost']}" for route in answer["routes"]]
    return "\n".join(lines), "\n".join(line.rstrip() for line in _run(arguments).splitlines())


def _rewrite() -> None:
    for path in sorted(FOLDER.glob("*.md")):
        own = [case for case in cases() if case.file == path.name]
        parts = [part for case in own for part in (case.question, case.command, *answered(case.command), case.why)]
        path.write_text("".join(f"{part}\n.\n" for part in parts), encoding="utf-8")


if __name__ == "__main__":
    sys.exit(_rewrite())
