"""One written site, one server of it, one served app for all tests of pages in a browser."""

from collections.abc import Iterator
from contextlib import closing
from functools import cache
from pathlib import Path

import pytest
from pages_shown import Place, over_app, over_http
from site_written import site_of

from kb.ask import read
from kb.make import catalogue as made
from kb.make.library import Library, load
from kb.show.page.site import write_site

SMALL = Path(__file__).parents[1] / "data" / "small"


@pytest.fixture(scope="session")
def site(library: Library, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The shipped library's pages, written as files."""
    return site_of(library, tmp_path_factory)


@pytest.fixture(scope="session")
def small(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A catalogue of the small library."""
    path = tmp_path_factory.mktemp("small") / "catalogue.db"
    made.write(load(SMALL), path)
    return path


@pytest.fixture(scope="session")
def small_site(small: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The small library's pages, written as files."""
    folder = tmp_path_factory.mktemp("small-site") / "site"
    with closing(read.open_catalogue(small)) as db:
        write_site(db, folder)
    return folder


@pytest.fixture(scope="session")
def app(catalogue: Path, site: Path) -> Iterator[Place]:
    """The shipped library's pages, served."""
    with over_app(catalogue, site=site) as place:
        yield place


@pytest.fixture(scope="session")
def folder_served(site: Path) -> Iterator[Place]:
    """The written pages over HTTP."""
    with over_http(site) as place:
        yield place


@pytest.fixture(scope="session")
def place_of(request: pytest.FixtureRequest) -> object:
    """Where the pages of a row are, by the row's form."""

    @cache
    def place(form: str) -> Place:
        if form == "served":
            return request.getfixturevalue("app")
        if form == "http":
            return request.getfixturevalue("folder_served")
        return Place(request.getfixturevalue("site").as_uri() + "/", files=True)

    return place
