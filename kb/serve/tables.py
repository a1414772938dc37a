"""The catalogue as data: Datasette over it, of which only the tables, views and canned questions can be reached."""

import re
from concurrent.futures import ThreadPoolExecutor
from difflib import get_close_matches
from typing import Any

from datasette.app import Datasette
from datasette.database import Database

from kb import __version__
from kb.serve.address import Asked, Refusal
from kb.serve.answer import DATA, HTML, NO_CACHE, Answer, answer_of, mark_of
from kb.serve.canned import CANNED
from kb.serve.desk import Desk
from kb.serve.reading import Reading
from kb.serve.whole import whole

__all__ = ["NAME", "Tables"]

NAME = "catalogue"
"""What the catalogue is called in addresses."""

OPEN = re.compile(rf"/{NAME}(\.(json|csv))?|/{NAME}/\w+(\.(json|csv))?|/{NAME}/\w+/[\w~,-]+(\.json)?")
"""Addresses of Datasette's that are let through; all others are ours to refuse."""

FILE = f"/{NAME}.db"
"""The catalogue itself, to take away, where visitors may ask in SQL."""

FACETING = ("_facet", "_facet_array", "_facet_date")
"""Fields that ask for a column's values."""

MOST_FACETS = 5
"""Each may take a fifth of a second."""

COUNTING_MS = 60_000
"""How long counting a table's rows may take, ms; they are counted once."""


class Tables:
    """Datasette and the catalogue that it has open.

    Datasette keeps connections by a database's name in each of its threads, so a catalogue that was built again gets
    new threads as well as a new database.
    """

    name = NAME

    def __init__(self, desk: Desk, datasette: Datasette, *, sql: bool) -> None:
        self.desk = desk
        self.datasette = datasette
        self.sql = sql
        self._app = datasette.app()
        self._of: Reading | None = None

    async def answer(self, scope: dict[str, Any], asked: Asked) -> Answer:
        """What Datasette answers; Refusal for addresses that are closed, and for what it refuses; Busy as any."""
        path = scope.get("raw_path", scope["path"].encode()).partition(b"?")[0].decode("latin-1")
        now = await self.desk.reading()
        self._check(path, asked, now)
        mark = mark_of(__version__.encode(), now.stock.content_hash.encode(), path.encode(), scope["query_string"])
        if mark in dict(scope["headers"]).get(b"if-none-match", b""):
            return Answer(b"", 200, mark, ((b"cache-control", NO_CACHE.encode()), (b"etag", mark)))
        with self.desk.seat():
            await self._follow(now)
            status, headers, body = await whole(self._app, {**scope, "method": "GET", "headers": _plain(scope)})
        return self._answered(status, headers, body, mark, asked)

    def _check(self, path: str, asked: Asked, now: Reading) -> None:
        if path == FILE and self.sql:
            return
        if not OPEN.fullmatch(path):
            raise Refusal(404, "There is no such table.")
        name = re.split(r"[/.]", path)[2] if path.count("/") > 1 else ""
        known = {*now.tables, *CANNED}
        if name and name not in known:
            close = get_close_matches(name, known, n=3)
            raise Refusal(404, "There is no such table.", tuple(f"{NAME}/{each}" for each in close))
        by = [value for field in FACETING for value in asked.query.get(field, ())]
        if len(by) > MOST_FACETS or not now.tables.get(name, frozenset()).issuperset(by):
            raise Refusal(400, f"A table is narrowed by at most {MOST_FACETS} of its own columns at once.")
        if not self.sql and (asked.said("sql") or asked.said("_where")):
            raise Refusal(403, "Questions in SQL are closed here; whoever runs the server can open them with --sql.")

    def _answered(self, status: int, headers: dict[bytes, bytes], body: bytes, mark: bytes, asked: Asked) -> Answer:
        kind = headers.get(b"content-type", HTML.encode()).decode("latin-1")
        if status in (301, 302):
            return answer_of(b"", kind, status=status, more=((b"location", headers[b"location"]),))
        if status != 200:
            # it calls some questions that make no sense its own failure
            raise Refusal(400 if status == 500 else status, "The tables can't answer that; look at what was asked.")
        more = tuple((key, value) for key, value in headers.items() if key == b"content-disposition")
        made = answer_of(body, DATA if asked.as_data else kind, more=more)
        return made._replace(
            mark=mark, headers=tuple((key, mark if key == b"etag" else value) for key, value in made.headers)
        )

    async def _follow(self, now: Reading) -> None:
        """Open the catalogue that the desk has open."""
        if self._of is now:
            return
        self._of = now  # at once: whoever asks meanwhile waits for the same threads
        threads = self.datasette.executor
        self.datasette.executor = ThreadPoolExecutor(max_workers=self.datasette.setting("num_sql_threads"))
        if NAME in self.datasette.databases:
            self.datasette.remove_database(NAME)
        opened = Database(self.datasette, path=str(now.catalogue), is_mutable=False)
        self.datasette.add_database(opened, name=NAME)
        await opened.table_counts(limit=COUNTING_MS)
        threads.shutdown(wait=False)


def _plain(scope: dict[str, Any]) -> list[tuple[bytes, bytes]]:
    """What Datasette is told of a visitor: the host. No cookie or key means anything here."""
    return [(key, value) for key, value in scope["headers"] if key == b"host"]
