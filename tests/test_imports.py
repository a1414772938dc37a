"""A question starts quickly: what it must not import."""

import os
import subprocess
import sys

import pytest
from small_answers import built

NEVER = (
    *("pydantic", "networkx", "sqlite_utils", "markdown_it", "yaml", "rich", "numpy", "jinja2", "hatchling"),
    *("difflib", "dataclasses", "textwrap", "shutil", "tempfile", "pathlib", "urllib", "random", "decimal"),
    *("kb.make", "kb.check", "kb.produce", "kb.ask.find", "kb.ask.path", "kb.ask.swap", "kb.ask.rehearse"),
)
"""Modules of the build, of errors and of other questions."""

PRINTED = ("dataclasses", "textwrap", "shutil", "re")
"""What setting text may import besides."""

ASK = """
import sys
from kb.cli import main
try:
    main()
except SystemExit as end:
    assert end.code == 0, end.code
print(*sorted(sys.modules), file=sys.stderr)
"""


def imported(*arguments: str) -> set[str]:
    """What a whole process imports to answer a question."""
    environment = {**os.environ, "DRILLPATH_LIBRARY": str(built())}
    done = subprocess.run(
        [sys.executable, "-S", "-c", _with_path() + ASK, *arguments],
        env=environment,
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout
    return set(done.stderr.split())


def _with_path() -> str:
    """The interpreter starts bare, so that nothing but the question imports anything."""
    return f"import sys; sys.path[:0] = {[path for path in sys.path if path]!r}\n"


def among(modules: set[str], names: tuple[str, ...]) -> set[str]:
    """Those of `names` that were imported, themselves or something in them."""
    return {name for name in names if any(each == name or each.startswith(f"{name}.") for each in modules)}


def test_a_chain_for_programs_imports_nothing_of_the_build() -> None:
    """Nor what sets text, nor what other questions need."""
    modules = imported("chain", "hips-rise-first", "--json")
    assert {"click", "sqlite3", "kb.ask.chain"} <= modules
    assert among(modules, NEVER) == set()
    assert {each for each in modules if each.startswith("kb.show.")} == {"kb.show.as_json"}


def test_a_chain_in_words_imports_no_session() -> None:
    """Only where there is none, and what can be rehearsed is made a session."""
    assert among(imported("chain", "hips-rise-first"), ("kb.ask.session",)) == set()


@pytest.mark.parametrize(
    "question",
    [
        ("chain", "hips-rise-first"),
        ("path", "clean"),
        ("path", "clean", "--json"),
        ("find", "hips"),
        ("show", "tall-clean"),
        ("swap", "tall-clean", "--kit", "stick"),
        ("kits",),
    ],
)
def test_no_question_imports_the_build(question: tuple[str, ...]) -> None:
    """However its answer is set."""
    heavy = tuple(name for name in NEVER if name not in PRINTED and not name.startswith("kb.ask"))
    if question[0] == "find":
        heavy = tuple(name for name in heavy if name != "difflib")
    assert among(imported(*question), heavy) == set()
