"""A library by its folder or by a revision: what is read of a repository, and what is said where there is none."""

import subprocess
from pathlib import Path

import pytest
from building import small_library

from kb.check.diff import revision
from kb.check.diff.revision import found_at
from kb.errors import BadInput
from kb.make.library import load

GIT = ("git", "-c", "user.name=A reader", "-c", "user.email=reader@example.org", "-c", "commit.gpgsign=false")


def _git(folder: Path, *arguments: str) -> None:
    subprocess.run([*GIT, "-C", str(folder), *arguments], check=True, capture_output=True)


@pytest.fixture
def repository(tmp_path: Path) -> Path:
    """A repository with the small library at a tag, and without one of its drills since; a link and a note among it."""
    root = small_library(tmp_path / "held" / "library")
    top = root.parent
    _git(top, "init", "-q")
    (root / "drills" / "squat" / "link.md").symlink_to("/etc/hostname")
    (root / "beside.md").write_text("Not of the library.\n", "utf-8")
    _git(top, "add", "-A")
    _git(top, "commit", "-qm", "first")
    _git(top, "tag", "first")
    (root / "drills" / "squat" / "link.md").unlink()
    (root / "drills" / "clean" / "clean-miss-practice.md").unlink()
    _git(top, "add", "-A")
    _git(top, "commit", "-qm", "second")
    return root


def test_a_revision_is_the_library_as_it_was(repository: Path) -> None:
    """All of drills/ below the library in use, ordinary files alone; the repository stands as it stood."""
    now = load(repository)
    with found_at("first", repository) as root:
        before = load(root)
        assert sorted(path.name for path in root.iterdir()) == ["drills"]
        assert not (root / "drills" / "squat" / "link.md").exists()
    assert set(before.drills) - set(now.drills) == {"clean-miss-practice"}
    assert not root.exists()
    with found_at("HEAD", repository) as root:
        assert load(root).content_hash == now.content_hash
    with found_at("first^{}", repository) as root:
        assert load(root).content_hash == before.content_hash


def test_a_folder_is_itself_or_holds_it(repository: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A folder that holds drills/, or drills/ itself, however it is named."""
    with found_at(str(repository), repository) as root:
        assert root == repository
    with found_at(str(repository / "drills"), repository) as root:
        assert load(root).drills
    monkeypatch.chdir(repository)
    with found_at(".", repository) as root:
        assert load(root).drills


def test_what_is_neither_is_said_in_a_sentence(repository: Path, tmp_path: Path) -> None:
    """No such revision, a folder without a library, no name for a revision, a revision before there was a library."""
    with pytest.raises(BadInput, match="'no-such' is no folder, and no revision"), found_at("no-such", repository):
        pass
    with pytest.raises(BadInput, match="holds no folder drills/"), found_at(str(tmp_path), repository):
        pass
    for named in ("--output=x", " ", "", "a\0b"):
        with pytest.raises(BadInput, match="no name for a revision"), found_at(named, repository):
            pass
    _git(repository, "checkout", "-q", "--orphan", "empty")
    _git(repository, "rm", "-rqf", "drills")
    _git(repository, "commit", "-qm", "none", "--allow-empty")
    with pytest.raises(BadInput, match="there was no folder drills/"), found_at("empty", repository):
        pass


def test_where_there_is_no_repository(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The library in use lies in none, or git isn't there at all."""
    monkeypatch.setenv("GIT_CEILING_DIRECTORIES", str(tmp_path.parent))
    with pytest.raises(BadInput, match="lies in no git repository"), found_at("main", tmp_path):
        pass
    monkeypatch.setenv("PATH", "")
    with pytest.raises(BadInput, match="without git"), found_at("main", tmp_path):
        pass


def test_what_is_too_large_isnt_unpacked(repository: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A revision may hold anything."""
    monkeypatch.setattr(revision, "LARGEST", 1_000)
    with pytest.raises(BadInput, match="is larger than"), found_at("first", repository):
        pass
