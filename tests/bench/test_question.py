"""A question as a whole process, beside an interpreter that imports click and sqlite3 and reads one row.

Wanted: `chain --json` at most 1.5 times that, drawn at most 2.2 times.
"""

import os
import subprocess
import sys
from pathlib import Path

import pytest

FLOOR = (
    "import click, sqlite3, sys\n"
    "db = sqlite3.connect(f'file:{sys.argv[1]}?mode=ro&immutable=1', uri=True)\n"
    "print(db.execute('select * from drill limit 1').fetchone()[0])\n"
)
COMMAND = "from kb.cli import main; main()"
QUESTION = ("chain", "clean-bar-crashes", "--kit", "hall")
ROUNDS = {"rounds": 15, "warmup_rounds": 2, "iterations": 1}


def run(arguments: list[str]) -> bytes:
    # byte code is kept, as on any machine where the program is used twice
    plain = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    return subprocess.run([sys.executable, *arguments], env=plain, check=True, capture_output=True).stdout


@pytest.mark.benchmark(group="one question, whole process")
def test_floor_reads_one_row(benchmark, catalogue: Path) -> None:
    """The floor."""
    assert benchmark.pedantic(run, args=(["-c", FLOOR, str(catalogue)],), **ROUNDS)


@pytest.mark.benchmark(group="one question, whole process")
def test_chain_as_json(benchmark) -> None:
    """Read, search, JSON."""
    assert b'"routes"' in benchmark.pedantic(run, args=(["-c", COMMAND, *QUESTION, "--json"],), **ROUNDS)


@pytest.mark.benchmark(group="one question, whole process")
def test_chain_drawn(benchmark) -> None:
    """Read, search, and the whole sheet as text."""
    assert b"Clean" in benchmark.pedantic(run, args=(["-c", COMMAND, *QUESTION],), **ROUNDS)
