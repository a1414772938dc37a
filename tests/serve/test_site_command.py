"""`drillpath site FOLDER`: every page as a file, nothing of anyone else's lost."""

import os
import shutil
import sqlite3
from concurrent.futures import BrokenExecutor, Future
from contextlib import closing
from pathlib import Path

import pytest
from building import files, small_library
from click.testing import CliRunner, Result

from kb.ask import read
from kb.commands.group import drillpath
from kb.errors import DrillpathError
from kb.show.page import fault_files, site
from kb.show.page.carried import unpacked
from kb.show.page.stock import stock_of


@pytest.fixture(scope="module")
def library(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A small library of one's own."""
    return small_library(tmp_path_factory.mktemp("sited"))


@pytest.fixture(scope="module")
def pages(library: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Its pages, as files."""
    folder = tmp_path_factory.mktemp("pages") / "deep" / "pages"
    got = written(library, folder)
    assert got.exit_code == 0, got.output
    assert got.stdout.endswith(f"open {folder}/index.html\n")
    return folder


def written(library: Path, folder: Path | str) -> Result:
    return CliRunner().invoke(drillpath, ["--library", str(library), "site", str(folder)])


def test_what_is_written(pages: Path) -> None:
    """Pages, answers beside them, all that they share; nothing is left beside the folder."""
    held = files(pages)
    assert {
        "index.html",
        "sw.js",
        "assets/style.css",
        "fault/clean-bar-crashes.html",
        "fault/clean-bar-crashes.json",
    } <= set(held)
    assert [each.name for each in pages.parent.iterdir()] == ["pages"]
    assert pages.stat().st_mode & 0o055 == 0o055 & ~_umask()


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask


@pytest.mark.no_cover
def test_again_is_the_same(library: Path, pages: Path) -> None:
    """An older copy is replaced by one of the same bytes; a page that is no more goes."""
    before = files(pages)
    (pages / "drill" / "old.html").write_text("old")
    assert written(library, pages).exit_code == 0
    assert files(pages) == before


def test_an_empty_folder_will_do(library: Path, pages: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Also the one where one is, by its short name."""
    (tmp_path / "empty").mkdir()
    monkeypatch.chdir(tmp_path)
    assert written(library, "empty").exit_code == 0
    assert files(tmp_path / "empty") == files(pages)


def test_a_folder_with_other_things_is_refused(library: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One sentence, exit 2, and they stay."""
    (tmp_path / "thesis.txt").write_text("mine")
    for folder in (tmp_path, "."):
        monkeypatch.chdir(tmp_path)
        got = written(library, folder)
        assert (got.exit_code, got.stderr.count("\n")) == (2, 1)
        assert "holds something else than pages" in got.stderr
    assert files(tmp_path).keys() == {"thesis.txt"}


def test_other_things_among_pages_are_not_lost(library: Path, pages: Path, tmp_path: Path) -> None:
    """A copy that someone has put something into is left alone."""
    shutil.copytree(pages, tmp_path / "pages")
    (tmp_path / "pages" / "notes.txt").write_text("mine")
    got = written(library, tmp_path / "pages")
    assert got.exit_code == 2
    assert "holds pages and also notes.txt" in got.stderr
    assert (tmp_path / "pages" / "notes.txt").read_text() == "mine"


def test_where_nothing_can_be_written(library: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One sentence, exit 1 or 2, nothing half written."""
    (tmp_path / "file").write_text("")
    assert written(library, tmp_path / "file").exit_code == 2
    got = written(library, tmp_path / "file" / "pages")
    assert (got.exit_code, got.stderr.count("\n")) == (1, 1)
    assert "can't be written" in got.stderr

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(site, "put_pages", full)
    got = written(library, tmp_path / "pages")
    assert (got.exit_code, "No space left on device" in got.stderr) == (1, True)
    assert [each.name for each in tmp_path.iterdir()] == ["file"]


@pytest.mark.no_cover
def test_two_processes_write_the_same(
    library: Path, pages: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """From a certain size on another process helps."""
    monkeypatch.setattr(site, "MANY", 1)
    monkeypatch.setattr("os.cpu_count", lambda: 2)
    with closing(read.open_catalogue(library / "out" / "catalogue.db")) as db:
        site.write_site(db, tmp_path / "pages")
    assert files(tmp_path / "pages") == files(pages)


class Broken:
    """Another process that can't be."""

    def __init__(self, **_: object) -> None:
        self.begun = 0

    def submit(self, *_: object) -> "Future[fault_files.FaultFiles]":
        job: Future[fault_files.FaultFiles] = Future()
        self.begun += 1
        if self.begun > 1:
            job.set_running_or_notify_cancel()
            job.set_exception(BrokenExecutor("ended"))
        return job

    def shutdown(self, *, cancel_futures: bool) -> None:
        assert cancel_futures


@pytest.mark.no_cover
def test_without_the_other_process_the_work_is_done_here(
    library: Path, pages: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whether it was never begun or has ended."""
    monkeypatch.setattr(site, "MANY", 1)
    monkeypatch.setattr("os.cpu_count", lambda: 2)
    monkeypatch.setattr(fault_files, "ProcessPoolExecutor", Broken)
    with closing(read.open_catalogue(library / "out" / "catalogue.db")) as db:
        site.write_site(db, tmp_path / "pages")
    assert files(tmp_path / "pages") == files(pages)


def test_what_the_other_process_does(library: Path, pages: Path, tmp_path: Path) -> None:
    """One fault's pages, from the catalogue's address."""
    for kind in ("fault", "chain", "session"):
        (tmp_path / kind).mkdir()
    catalogue = str(library / "out" / "catalogue.db")
    answers, sizes = fault_files._in_the_other("clean-bar-crashes", catalogue, tmp_path)  # type: ignore[arg-type]
    there = unpacked(answers, stock_of(read.open_catalogue(catalogue)))
    assert {f"chain/{name}" for name in there.answers} <= sizes.keys()
    assert "fault/clean-bar-crashes" in sizes
    for path, size in sizes.items():
        assert (tmp_path / f"{path}.html").read_bytes() == (pages / f"{path}.html").read_bytes()
        assert (tmp_path / f"{path}.html").stat().st_size == size


def test_pages_of_entries_need_no_answers() -> None:
    """They are written before there are any."""
    with pytest.raises(LookupError, match="early-arm-bend"):
        site._none_yet("early-arm-bend")  # type: ignore[arg-type]


def test_a_catalogue_that_cannot_be_read(tmp_path: Path) -> None:
    """What is wrong with it is said as anywhere."""
    with pytest.raises((DrillpathError, sqlite3.Error)):
        read.open_catalogue(tmp_path / "none.db")
