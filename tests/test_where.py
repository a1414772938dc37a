"""Which library is in use, and that its catalogue is never older than an entry."""

import os
import shutil
import time
from pathlib import Path

import pytest
from small_answers import SMALL

from kb import where
from kb.errors import BadInput, BrokenLibrary
from kb.make import build as build_module
from kb.where import Place, catalogue_of, place_of


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """A copy of the small library with its catalogue."""
    shutil.copytree(SMALL / "drills", tmp_path / "library" / "drills")
    build_module.build(tmp_path / "library", tmp_path / "library" / "out", None)
    return tmp_path / "library"


def place(root: Path) -> Place:
    """Where it is."""
    return place_of(str(root), {})


def asked(root: Path) -> tuple[list[str], str]:
    """What is said when its catalogue is asked, and the name that it has for a drill."""
    said: list[str] = []
    db = catalogue_of(place(root), said.append)
    name = db.execute("select name from drill where id = 'tall-clean'").fetchone()[0]
    db.close()
    return said, name


def change(root: Path, old: str = "name: Tall clean", new: str = "name: Taller clean") -> None:
    """Change an entry a moment after the catalogue was made."""
    path = root / "drills" / "clean" / "tall-clean.md"
    path.write_text(path.read_text(encoding="utf-8").replace(old, new), encoding="utf-8")
    later = time.time_ns() + 10**9
    os.utime(path, ns=(later, later))


def test_the_option_comes_before_the_environment(tmp_path: Path) -> None:
    """And both before what came with the program."""
    for name in ("one", "two"):
        (tmp_path / name / "drills").mkdir(parents=True)
    one, two = str(tmp_path / "one"), str(tmp_path / "two")
    environment = {"DRILLPATH_LIBRARY": two}
    assert place_of(one, environment) == Place(one, str(tmp_path / "one" / "out" / "catalogue.db"))
    assert place_of(None, environment).root == two
    assert place_of(None, {}).root == str(Path(where.HERE).parent)


@pytest.mark.parametrize(("option", "environment"), [("nowhere", {}), (None, {"DRILLPATH_LIBRARY": "nowhere"})])
def test_a_library_that_was_named_must_be_one(option: str | None, environment: dict[str, str]) -> None:
    """Nothing else is taken instead."""
    with pytest.raises(BadInput, match="names nowhere, which holds no folder drills/"):
        place_of(option, environment)


def test_never_the_working_directory_by_chance(root: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A library that happens to stand there isn't looked at."""
    monkeypatch.chdir(root)
    with pytest.raises(BadInput, match="no library here"):
        place_of(None, {}, package=str(tmp_path / "elsewhere" / "kb"))


def test_an_installed_program_has_its_own_copy(root: Path, tmp_path: Path) -> None:
    """With a catalogue that is never made again, whatever the files' times are."""
    package = tmp_path / "site" / "kb"
    shutil.copytree(root / "drills", package / "shipped" / "drills")
    shutil.copy(root / "out" / "catalogue.db", package / "shipped" / "catalogue.db")
    os.utime(package / "shipped" / "catalogue.db", ns=(0, 0))
    found = place_of(None, {}, package=str(package))
    assert found.shipped
    said: list[str] = []
    catalogue_of(found, said.append).close()
    assert said == []


def test_a_fresh_catalogue_is_opened_in_silence(root: Path) -> None:
    """Nothing is built."""
    assert asked(root) == ([], "Tall clean")


def test_the_first_question_makes_it(root: Path) -> None:
    """With one line."""
    shutil.rmtree(root / "out")
    assert asked(root) == (["No catalogue yet: making it."], "Tall clean")
    assert (root / "out" / "catalogue.db").is_file()
    assert not (root / "graphs").exists()


def test_a_changed_entry_makes_it_again(root: Path) -> None:
    """Once, though the entry's time lies ahead of the clock's."""
    change(root)
    assert asked(root) == (["The library has changed: making its catalogue again."], "Taller clean")


def test_an_entry_that_was_added_or_removed_makes_it_again(root: Path) -> None:
    """The folder is newer then."""
    (root / "drills" / "squat" / "back-squat.md").unlink()
    later = time.time_ns() + 10**9
    os.utime(root / "drills" / "squat", ns=(later, later))
    (root / "drills" / "notes.txt").write_text("no folder", encoding="utf-8")
    said, _ = asked(root)
    assert said == ["The library has changed: making its catalogue again."]


def test_a_catalogue_that_cant_be_read_is_made_again(root: Path) -> None:
    """Of another version, or no catalogue at all."""
    (root / "out" / "catalogue.db").write_bytes(b"not a catalogue, but long enough to be taken for some file" * 99)
    later = time.time_ns() + 10**9
    os.utime(root / "out" / "catalogue.db", ns=(later, later))
    assert asked(root) == (["The catalogue can't be read: making it again."], "Tall clean")


def test_a_broken_library_is_answered_from_before(root: Path) -> None:
    """With a warning; without an older catalogue there is no answer."""
    change(root, "stage: segment", "stage: nonsense")
    said, name = asked(root)
    assert said[1:] == ["Warning: the library has 1 problem (see `drillpath check`); this answer is from before."]
    assert name == "Tall clean"
    change(root, "stage: nonsense", "stage: nonsense\nspeed_: x")
    assert "2 problems" in asked(root)[0][1]
    shutil.rmtree(root / "out")
    with pytest.raises(BrokenLibrary):
        asked(root)


def test_where_it_cant_be_written_the_old_one_answers(root: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """With a warning."""

    def refused(*_: object) -> None:
        raise PermissionError("read-only")

    monkeypatch.setattr(build_module, "build", refused)
    change(root)
    said, name = asked(root)
    assert said[1] == "Warning: read-only; this answer is from before the library changed."
    assert name == "Tall clean"


def test_where_there_is_no_old_one_either_it_is_made_for_once(root: Path) -> None:
    """In a folder that is gone when the answer is given."""
    shutil.rmtree(root / "out")
    (root / "out").write_text("a file stands where the folder should", encoding="utf-8")
    said, name = asked(root)
    assert said[1].startswith("Warning: ")
    assert said[1].endswith("; the catalogue is made for this answer only.")
    assert name == "Tall clean"
