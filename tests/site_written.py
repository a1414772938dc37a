"""The shipped library's pages, written once a run: whichever worker comes first writes them, all others read them.

Beside the pages lie the answers that they were made from, so that nobody works them out again.
"""

import fcntl
from collections.abc import Callable
from contextlib import closing
from functools import cache
from pathlib import Path

import pytest

from kb.ask import read
from kb.intake.class_file import demo_class
from kb.make import catalogue as made
from kb.make.library import Library
from kb.show.page.carried import packed, unpacked
from kb.show.page.prepared import Prepared
from kb.show.page.site import put_site
from kb.show.page.stock import Stock, stock_of
from kb.terms import FaultId

__all__ = ["answers_of", "once", "site_of", "with_ways"]

ANSWERS, WAYS = "site-answers", "site-ways"


def once(folder: Path, make: Callable[[Path], object]) -> Path:
    """A folder that is made by whichever worker comes first, and is there when it is whole; all must name it alike."""
    folder.parent.mkdir(parents=True, exist_ok=True)
    with folder.with_suffix(".lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not folder.exists():
            begun = folder.with_suffix(".begun")
            make(begun)
            begun.rename(folder)
    return folder


def site_of(library: Library, factory: pytest.TempPathFactory) -> Path:
    """The folder of a library's pages, in a folder that all workers of a run share."""
    base = factory.getbasetemp()
    common = (base.parent if base.name.startswith("popen-") else base) / "pages"

    def make(folder: Path) -> None:
        beside = common / "site-catalogue.db"
        made.write(library, beside)
        with closing(read.open_catalogue(beside)) as db:
            stock = stock_of(db, demo_class(db))
            _, answers = put_site(db, stock, folder)
        (common / ANSWERS).mkdir()
        for fault, prepared in answers.items():
            (common / ANSWERS / fault).write_bytes(packed(prepared, stock))
        ways = {(lift, kit): stock.way(lift, kit) for lift in stock.lifts for kit in stock.kits}
        (common / WAYS).write_bytes(packed(ways, stock))

    return once(common / "site", make)


def answers_of(site: Path, stock: Stock) -> Callable[[FaultId], Prepared]:
    """The answers that a written site was made from, by their fault."""

    @cache
    def answers(fault: FaultId) -> Prepared:
        held: Prepared = unpacked((site.parent / ANSWERS / fault).read_bytes(), stock)
        return held

    return answers


def with_ways(stock: Stock, site: Path) -> Stock:
    """What pages are made from, with the paths from nothing that a written site was made from."""
    ways = unpacked((site.parent / WAYS).read_bytes(), stock)
    return stock._replace(way=lambda lift, kit: ways[lift, kit])
