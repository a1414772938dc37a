"""A catalogue as it was read once, and everything that was set from it."""

import sqlite3
from asyncio import Future
from collections import defaultdict
from collections.abc import Iterator
from functools import cached_property
from pathlib import Path
from threading import Lock, local

from kb.ask import read
from kb.errors import DrillpathError
from kb.intake.class_file import demo_class
from kb.serve.answer import NO_CACHE, Answer, Set, answer_of, set_page
from kb.serve.sitemap import sitemap
from kb.show.page.address import SERVED
from kb.show.page.offline import keeper
from kb.show.page.pages import entry_paths, fault_paths, page_at, paths
from kb.show.page.prepared import Prepared, prepare
from kb.show.page.shared import drawn, shared_file, shared_names
from kb.show.page.stock import stock_of
from kb.terms import FaultId

__all__ = ["Reading"]

KINDS = {
    "css": "text/css; charset=utf-8",
    "js": "text/javascript; charset=utf-8",
    "svg": "image/svg+xml; charset=utf-8",
    "webmanifest": "application/manifest+json; charset=utf-8",
}
"""What a shared file is, by its ending; others are not served."""

ASSETS = Path(__file__).parent / "assets"

KEEP = "max-age=300"
"""How long a device may take a stylesheet, script or figure to be unchanged."""


class Reading:
    """One catalogue's entries, and the pages and files set from them so far.

    It is used by two threads at once: whatever they make twice is made alike, and answers to a fault's questions,
    which take longest, are made by one while the other waits.
    """

    def __init__(self, catalogue: Path) -> None:
        self.catalogue = catalogue
        self._local = local()
        self.stock = stock_of(self.db, demo_class(self.db))
        self.tables = _columns(self.db)
        self.kept: dict[str, Set] = {}
        self.files: dict[str, Answer] = {}
        self.closed = False
        self.under_way: dict[str, Future[Set]] = {}
        self.files_under_way: dict[str, Future[Answer]] = {}
        self._answers: dict[FaultId, Prepared] = {}
        self._locks: defaultdict[FaultId, Lock] = defaultdict(Lock)

    @property
    def db(self) -> sqlite3.Connection:
        """The catalogue, open for the thread that asks: a connection stays in its thread."""
        if not hasattr(self._local, "db"):
            self._local.db = read.open_catalogue(self.catalogue)
        opened: sqlite3.Connection = self._local.db
        return opened

    @cached_property
    def figures(self) -> dict[str, str]:
        """Every figure, drawn when the first is asked for."""
        return drawn(self.stock)

    def answers(self, fault: FaultId) -> Prepared:
        """The answers to a fault's default questions; KeyError if there is no such fault.

        DrillpathError once it is closed: what needs every fault's answers ends soon after.
        """
        if fault not in self._answers:
            self.stock.faults[fault]
            if self.closed:
                raise DrillpathError("the server is stopping")
            with self._locks[fault]:
                if fault not in self._answers:
                    self._answers[fault] = prepare(self.stock, fault)
        return self._answers[fault]

    def paths(self) -> Iterator[str]:
        """Every prepared page, those first that a class is taught from; each found when it is come to."""
        for fault in self.stock.faults:
            yield from fault_paths(self.stock, fault, self.answers)
        yield from entry_paths(self.stock)
        yield "library"

    def page(self, path: str) -> Set:
        """A prepared page, set; KeyError if there is none at that address."""
        if path not in self.kept:
            self.kept[path] = set_page(page_at(path, self.stock, self.answers))
        return self.kept[path]

    def file(self, name: str) -> Answer:
        """A file that pages share; KeyError if there is none of that name."""
        if name not in self.files:
            kind = KINDS[name.rpartition(".")[2]]
            self.files[name] = answer_of(self._bytes(name), kind, keep=NO_CACHE if name == "sw.js" else KEEP)
        return self.files[name]

    def sitemap(self, host: str) -> Answer:
        """Every prepared page's address on a host."""
        return answer_of(sitemap(host, map(self._address, paths(self.stock, self.answers))), "application/xml")

    def _bytes(self, name: str) -> bytes:
        if name == "assets/tables.css":
            return (ASSETS / "tables.css").read_bytes()
        if name == "sw.js":
            every = [(path, self._address(path)) for path in paths(self.stock, self.answers)]
            shared = ["/" + each for each in shared_names(self.stock, self.figures)]
            return keeper(self.stock.content_hash[:16], every, shared).encode()
        return shared_file(name, self.db, self.stock, self.answers, self.figures)

    def _address(self, path: str) -> str:
        return SERVED.to(*path.split("/", 1))


def _columns(db: sqlite3.Connection) -> dict[str, frozenset[str]]:
    """The columns of each table and view."""
    names = [name for (name,) in db.execute("select name from sqlite_master where type in ('table', 'view')")]
    rows = "select name from pragma_table_info(?)"
    return {name: frozenset(column for (column,) in db.execute(rows, (name,))) for name in names}
