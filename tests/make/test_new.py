"""An entry to fill in: where it goes, and that it is never written over another."""

import shutil
from pathlib import Path

import pytest
from small_answers import SMALL

from kb.errors import BadInput
from kb.make.library import load
from kb.make.new import FAMILIES, family_of, new_drill


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """A copy of the small library."""
    shutil.copytree(SMALL / "drills", tmp_path / "drills")
    return tmp_path


@pytest.mark.parametrize("family", FAMILIES)
def test_only_what_says_fill_in_stops_a_build(root: Path, family: str) -> None:
    """Everything else of a new entry is sound in structure."""
    path = new_drill(root, "Something new", family)
    assert path == root / "drills" / family / "something-new.md"
    problems = load(root).problems
    assert problems
    assert all(problem.file == f"drills/{family}/something-new.md" for problem in problems)
    assert {problem.code for problem in problems} <= {"unknown-position", "unknown-fault", "unknown-lift"}


@pytest.mark.parametrize("name", ["Slow: the 'odd' one", 'A "quoted" clean', "Épaulé lent", "Clean, from #3"])
def test_any_name_can_be_written(root: Path, name: str) -> None:
    """As it was given, however YAML would read it bare."""
    path = new_drill(root, name, "clean")
    broken = {problem.code for problem in load(root).problems if problem.file.endswith(path.name)}
    assert broken == {"unknown-position", "unknown-fault"}


@pytest.mark.parametrize(
    ("name", "family"),
    [
        ("High-hang snatch, slow", "snatch"),
        ("Overhead something", "snatch"),
        ("Split jump", "jerk"),
        ("Calf stretch", "mobility"),
        ("Something", None),
    ],
)
def test_a_name_gives_its_family_away(name: str, family: str | None) -> None:
    """By the family's own word, or one that belongs to it."""
    assert family_of(name) == family


def test_nothing_is_written_over(root: Path) -> None:
    """Not in its own family, not in another."""
    before = (root / "drills" / "clean" / "tall-clean.md").read_text(encoding="utf-8")
    for family in ("clean", "snatch"):
        with pytest.raises(BadInput, match=r"drills/clean/tall-clean\.md is there already"):
            new_drill(root, "Tall clean", family)
    assert (root / "drills" / "clean" / "tall-clean.md").read_text(encoding="utf-8") == before


def test_two_at_once_dont_write_over_each_other(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The file may appear after it was looked for."""
    new_drill(root, "Late clean")
    monkeypatch.setattr(Path, "glob", lambda *_: iter(()))
    with pytest.raises(BadInput, match="is there already"):
        new_drill(root, "Late clean")


@pytest.mark.parametrize("name", ["", "3 cleans", "!!!", "日本"])
def test_a_name_must_make_an_id(root: Path, name: str) -> None:
    """It begins with a letter."""
    with pytest.raises(BadInput, match="makes no id"):
        new_drill(root, name, "clean")


def test_a_family_that_cant_be_told_is_asked_for(root: Path) -> None:
    """With those there are."""
    with pytest.raises(BadInput, match="add --family") as refused:
        new_drill(root, "Something")
    assert refused.value.nearest == FAMILIES
