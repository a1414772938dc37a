"""Every page as a file in a folder that opens from anywhere: a memory stick, a phone with no signal."""

import os
import shutil
import sqlite3
from collections.abc import Mapping
from pathlib import Path
from tempfile import mkdtemp
from typing import NamedTuple
from urllib.parse import quote

from kb.ask.class_.people import Class
from kb.errors import BadInput, DrillpathError
from kb.show.page.address import file_of
from kb.show.page.fault_files import all_here, beside, put_pages, uncollected
from kb.show.page.offline import keeper
from kb.show.page.pages import ALONE, HEALTH, NAMED, entry_paths
from kb.show.page.prepared import Prepared
from kb.show.page.shared import drawn, shared_file, shared_names
from kb.show.page.stock import Stock, stock_of
from kb.terms import FaultId

__all__ = ["Written", "put_site", "write_site"]

MARK = "sw.js"
"""A file that every folder of pages has: a folder without it, and with anything else, is never replaced."""

MANY = 20
"""Faults from which on a second process, which takes half a second to begin, pays."""


class Written(NamedTuple):
    """How many pages were written, of them chains, the bytes of all pages, and of the chains' pages."""

    pages: int
    chains: int
    size: int
    chains_size: int


def write_site(db: sqlite3.Connection, folder: Path, demo: Class | None = None) -> Written:
    """Write every prepared page and all they share into `folder`; `demo` is the class that comes with the program.

    The folder is made beside and renamed, so that nobody opens half of it; an older copy is replaced.

    Raises
    ------
    BadInput
        If the folder holds something else.
    DrillpathError
        If it can't be written.
    """
    folder = folder.absolute()
    _refuse_others(folder)
    beside = None
    try:
        folder.parent.mkdir(parents=True, exist_ok=True)
        beside = Path(mkdtemp(prefix=f".{folder.name}.", dir=folder.parent))
        new, old = beside / "new", beside / "old"
        with uncollected():
            written, _ = put_site(db, stock_of(db, demo), new)
        if folder.exists():
            folder.rename(old)
        new.rename(folder)
    except OSError as error:
        raise DrillpathError(f"{folder} can't be written: {error.strerror or error}") from error
    finally:
        if beside is not None:
            shutil.rmtree(beside, ignore_errors=True)
    return written


def _refuse_others(folder: Path) -> None:
    """BadInput for a folder that holds something else than pages: it would be lost."""
    if not folder.is_dir():
        return
    held = sorted(each.name for each in folder.iterdir())
    if held and MARK not in held:
        raise BadInput(f"{folder} holds something else than pages; name a new or an empty folder")
    ours = {*ALONE, *NAMED, HEALTH, "assets", "figures", "index", "manifest", "sw"}
    others = [name for name in held if name.partition(".")[0] not in ours]
    if others:
        raise BadInput(f"{folder} holds pages and also {others[0]}, which would be lost; name another folder")


def put_site(db: sqlite3.Connection, stock: Stock, folder: Path) -> tuple[Written, Mapping[FaultId, Prepared]]:
    """Write every prepared page and all they share into a new folder; and give the answers that they were made from."""
    for kind in (*NAMED, "assets", "figures"):
        (folder / kind).mkdir(parents=True)
    catalogue = db.execute("pragma database_list").fetchone()[2]
    if len(stock.faults) < MANY or (os.cpu_count() or 1) < 2:
        of_faults = all_here(stock, folder)
        sizes = put_pages(entry_paths(stock), stock, _none_yet, folder)
        figures = drawn(stock)
    else:
        with beside(stock, catalogue, folder) as rest:
            sizes = put_pages(entry_paths(stock), stock, _none_yet, folder)
            figures = drawn(stock)
            of_faults = rest()

    def answers(fault: FaultId) -> Prepared:
        return of_faults[fault].answers

    for files in of_faults.values():
        sizes.update(files.sizes)
    sizes.update(put_pages([HEALTH], stock, answers, folder))
    shared = list(shared_names(stock, figures))
    for name in shared:
        (folder / name).write_bytes(shared_file(name, db, stock, answers, figures))
    addresses = ((path, quote(file_of(path))) for path in sizes)
    (folder / MARK).write_text(keeper(stock.content_hash[:16], addresses, shared), "utf-8")
    chains = [size for path, size in sizes.items() if path.startswith("chain/")]
    written = Written(len(sizes), len(chains), sum(sizes.values()), sum(chains))
    return written, {fault: files.answers for fault, files in of_faults.items()}


def _none_yet(fault: FaultId) -> Prepared:
    raise LookupError(f"a page of an entry asked for the answers about {fault}")
