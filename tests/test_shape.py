"""The project's own rules on its shape: small modules, documented commands, a README that is true."""

import ast
import re
import subprocess
import sys
from pathlib import Path

import click
import pytest
from readme_commands import blocks

from kb.commands.group import drillpath

ROOT = Path(__file__).resolve().parents[1]
MODULES = sorted([*(ROOT / "kb").rglob("*.py"), ROOT / "build.py"])
DOCS = "\n".join(path.read_text("utf-8") for path in [ROOT / "README.md", *sorted((ROOT / "kb" / "docs").glob("*.md"))])


@pytest.mark.parametrize("module", MODULES, ids=lambda path: str(path.relative_to(ROOT)))
def test_modules_and_functions_are_short(module: Path) -> None:
    """No module over 300 lines, no function over 60."""
    source = module.read_text("utf-8")
    assert len(source.splitlines()) <= 300
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, (ast.FunctionDef, ast.AsyncFunctionDef)):
            assert (node.end_lineno or 0) - node.lineno < 60, node.name


@pytest.mark.parametrize("module", MODULES, ids=lambda path: str(path.relative_to(ROOT)))
def test_public_names_are_declared_and_documented(module: Path) -> None:
    """`__all__` names what the module defines, and every public function has a docstring."""
    tree = ast.parse(module.read_text("utf-8"))
    assert ast.get_docstring(tree), "a module says what it is"
    for node in tree.body:
        if isinstance(node, (ast.FunctionDef, ast.ClassDef)) and not node.name.startswith("_"):
            assert ast.get_docstring(node), node.name


@pytest.mark.parametrize("command", drillpath.list_commands(click.Context(drillpath)))
def test_every_command_is_in_the_docs(command: str) -> None:
    """Each command is spoken of in the README or kb/docs/."""
    assert f"drillpath {command}" in DOCS


def test_the_readme_has_its_two_commands_first() -> None:
    """Its first two blocks set up and answer, then set up and test."""
    first, second = blocks((ROOT / "README.md").read_text("utf-8"))
    assert "python build.py" in first
    assert "drillpath chain" in first
    assert "pytest" in second
    assert "venv" in first
    assert "venv" in second


def test_what_the_readme_shows_is_what_is_printed() -> None:
    """Each further block that begins with `$ drillpath` shows the start of what that command prints today."""
    readme = (ROOT / "README.md").read_text("utf-8")
    shown = re.findall(r"^```text\n\$ drillpath (.*?)\n(.*?)^```$", readme, re.MULTILINE | re.DOTALL)
    assert len(shown) >= 3
    for command, output in shown:
        ran = subprocess.run(
            f"{sys.executable} -c 'from kb.cli import main; main()' {command}",
            shell=True,
            capture_output=True,
            text=True,
            cwd=ROOT,
            env={"COLUMNS": "80", "LANG": "C", "PYTHONPATH": str(ROOT)},
            check=False,
        )
        printed = [line.rstrip() for line in ran.stdout.splitlines()]
        wanted = [line.rstrip() for line in output.splitlines()]
        at = 0
        for line in wanted:
            if line.strip() == "...":
                continue
            assert line in printed[at:], f"drillpath {command}: {line}"
            at = printed.index(line, at) + 1


def test_the_lock_file_names_no_address() -> None:
    """Names, versions and hashes only."""
    lock = (ROOT / "requirements.lock").read_text("utf-8")
    assert not re.search(r"https?:|file:|index-url|find-links", lock)
