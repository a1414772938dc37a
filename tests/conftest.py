"""What many tests share: the shipped library, a catalogue built from it, and its shelves."""

import gc
import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from browser import browser
from hypothesis import settings

from kb.ask import read
from kb.ask.shelf import Shelf
from kb.make import catalogue as made
from kb.make.library import Library, load
from kb.terms import LiftId

# what a whole run keeps is large and stays: it isn't looked through for rubbish every few hundred objects
gc.set_threshold(100_000, 50, 100)

# how long anything takes is measured in tests/bench/: a machine that is busy is no fault
settings.register_profile("no deadline", deadline=None)
settings.load_profile("no deadline")

__all__ = ["browser"]  # a fixture, shared by all

ROOT = Path(__file__).resolve().parents[1]


@pytest.fixture(scope="session")
def library() -> Library:
    """The shipped library; every test that uses it relies on its having no structural problems."""
    found = load(ROOT)
    assert not found.problems
    return found


@pytest.fixture(scope="session")
def catalogue(library: Library, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A catalogue of the shipped library, built once a session."""
    path = tmp_path_factory.mktemp("catalogue") / "catalogue.db"
    made.write(library, path)
    return path


@pytest.fixture(scope="session")
def db(catalogue: Path) -> Iterator[read.sqlite3.Connection]:
    """That catalogue, open."""
    opened = read.open_catalogue(catalogue)
    yield opened
    opened.close()


@pytest.fixture(scope="session")
def shelves(db: read.sqlite3.Connection) -> dict[LiftId, Shelf]:
    """Every lift's shelf, read from that catalogue."""
    return {lift: read.shelf(db, lift) for lift in read.lifts(db)}


@contextmanager
def _untraced(item: pytest.Item) -> Iterator[None]:
    """A test marked `no_cover` runs untraced in a worker too, where pytest-cov's pause lets an outer tracer go on."""
    tracer = sys.gettrace()
    if item.get_closest_marker("no_cover") is not None:
        sys.settrace(None)
    try:
        yield
    finally:
        sys.settrace(tracer)


@pytest.hookimpl(wrapper=True, trylast=True)
def pytest_runtest_setup(item: pytest.Item) -> Iterator[None]:
    """What such a test is given is made untraced as well."""
    with _untraced(item):
        return (yield)


@pytest.hookimpl(wrapper=True, trylast=True)
def pytest_runtest_call(item: pytest.Item) -> Iterator[None]:
    """The test itself."""
    with _untraced(item):
        return (yield)


def pytest_sessionfinish(session: pytest.Session) -> None:
    """Where DRILLPATH_NO_SKIPS is set, as in .ci/run, a test that was skipped fails the run."""
    reporter = session.config.pluginmanager.get_plugin("terminalreporter")
    if os.environ.get("DRILLPATH_NO_SKIPS") and reporter is not None and reporter.stats.get("skipped"):
        session.exitstatus = pytest.ExitCode.TESTS_FAILED
