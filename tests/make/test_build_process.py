"""Builds as whole processes: what they import, how long they take, and several at once."""

import subprocess
from pathlib import Path

import pytest
from building import again, command, entry, names_in, rename, small_library


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """The small library, built."""
    return small_library(tmp_path)


def imported(root: Path) -> set[str]:
    """Which of the heavy libraries a build from a new process imports."""
    run = subprocess.run(command(root, watch=True), capture_output=True, text=True, check=True)
    heavy = {"markdown_it", "networkx", "numpy", "pandas", "pydantic", "sqlite_utils", "yaml"}
    return heavy & set(run.stdout.split())


def test_heavy_libraries_are_imported_late(root: Path) -> None:
    """None when nothing changed; networkx only when a graph did; pandas and numpy never."""
    assert imported(root) == set()
    with entry(root).open("a", encoding="utf-8") as file:
        file.write("The stick tells you first.\n")
    assert imported(root) == {"markdown_it", "pydantic", "sqlite_utils", "yaml"}
    rename(root, "Renamed")
    assert imported(root) == {"markdown_it", "networkx", "pydantic", "sqlite_utils", "yaml"}


def test_nothing_changed_is_quick(root: Path) -> None:
    """The whole process in less than half a second of the processor's time, interpreter and all."""
    resource = pytest.importorskip("resource")
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(command(root), capture_output=True, check=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    assert after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime < 0.5


def test_two_at_once_and_a_reader(root: Path) -> None:
    """Builds that overlap all end well, and whoever reads meanwhile sees a whole catalogue each time."""
    catalogue = root / "out" / "catalogue.db"
    seen = set()
    for turn in range(3):
        rename(root, f"Name {turn}")
        builders = [subprocess.Popen(command(root), stdout=subprocess.PIPE, stderr=subprocess.PIPE) for _ in range(2)]
        while any(builder.poll() is None for builder in builders):
            seen.add(frozenset(names_in(catalogue)))
        for builder in builders:
            _, errors = builder.communicate()
            assert (builder.returncode, b"Traceback" in errors) == (0, False), errors
        assert f"Name {turn}" in names_in(catalogue)
    assert len({len(names) for names in seen}) == 1
    assert not list(root.rglob("*.aside*"))
    assert again(root) == []
