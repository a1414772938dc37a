"""Pages as people meet them: a written site, the same over HTTP, a served app, and visits by a browser."""

import socket
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal, NamedTuple, TypeVar

from browser import Chromium
from site_written import answers_of, with_ways

if TYPE_CHECKING:
    from playwright.sync_api import BrowserContext, ConsoleMessage, Page

    from kb.serve.desk import Desk

__all__ = ["KINDS", "Place", "Row", "Visit", "over_app", "over_http", "visit"]

T = TypeVar("T")

KINDS = {
    "home": "home",
    "faults": "faults",
    "lifts": "lifts",
    "drills": "drills",
    "ask": "ask",
    "find": "find",
    "at hand": "at-hand",
    "kit": "at-hand/stick",
    "graphs": "graph",
    "graph": "graph/clean",
    "library": "library",
    "fault": "fault/clean-bar-crashes",
    "fault of two lifts": "fault/early-arm-bend",
    "chain": "chain/clean-bar-crashes.drops-away.clean.stick",
    "no chain": "chain/clean-bar-crashes.scared-of-bar.clean.stick",
    "drill": "drill/tall-clean",
    "preparation": "drill/stick-pass-through",
    "position": "position/clean-receive",
    "lift": "lift/clean",
    "path": "path/clean-and-jerk.stick",
    "equipment": "equipment/broom",
    "session": "session/clean-bar-crashes.clean.hall",
    "plan": "plan/snatch.hall",
    "class": "class",
}
"""A page of each kind, by its path."""


class Place(NamedTuple):
    """Where pages are: a base to put paths behind, and whether they are files."""

    base: str
    files: bool

    def at(self, path: str, query: str = "") -> str:
        """The address of the page at a path."""
        if self.files:
            return f"{self.base}{'index' if path == 'home' else path}.html{query}"
        return f"{self.base}{'' if path == 'home' else path}{query}"


class Row(NamedTuple):
    """One way of looking: how wide, in which scheme, with script or not, and in which form pages are met."""

    form: Literal["served", "http", "file"]
    width: int
    scheme: Literal["light", "dark"]
    script: bool

    def options(self) -> dict[str, Any]:
        """The row as a browser takes it."""
        return {
            "viewport": {"width": self.width, "height": 844 if self.width < 600 else 900},
            "color_scheme": self.scheme,
            "java_script_enabled": self.script,
            "has_touch": self.width < 600,
            "service_workers": "block",  # what they keep has tests of its own
        }


class Visit(NamedTuple):
    """A browser at some pages, what it asked for, and what it complained about."""

    context: "BrowserContext"
    page: "Page"
    place: Place
    asked: list[str]
    complaints: list[str]

    def to(self, path: str, query: str = "") -> None:
        """Go to the page at a path."""
        self.page.goto(self.place.at(path, query))

    def elsewhere(self) -> list[str]:
        """What was asked for outside the place itself."""
        return [url for url in self.asked if not url.startswith((self.place.base, "data:", "about:"))]


def visit(browser: Chromium, place: Place, look: Callable[[Visit], T], **options: Any) -> T:
    """What `look` finds; nothing may be asked of another origin, and the page may complain of nothing."""

    def task(context: "BrowserContext") -> T:
        asked: list[str] = []
        complaints: list[str] = []
        context.on("request", lambda request: asked.append(request.url))
        context.on("weberror", lambda error: complaints.append(str(error.error)))
        context.on("console", lambda said: complaints.append(said.text) if _complains(said) else None)
        context.on("dialog", lambda dialog: (complaints.append(f"dialog: {dialog.message}"), dialog.dismiss()))
        context.set_default_timeout(20_000)
        context.set_default_navigation_timeout(90_000)  # a first page may wait for every answer there is
        it = Visit(context, context.new_page(), place, asked, complaints)
        found = look(it)
        assert not it.elsewhere(), it.elsewhere()
        assert not complaints, complaints
        return found

    return browser.in_context(task, **options)


def _complains(said: "ConsoleMessage") -> bool:
    return said.type in ("error", "warning") and "blocked by Playwright" not in said.text


class _Quiet(SimpleHTTPRequestHandler):
    def log_message(self, *_: object) -> None:
        """Nothing."""


@contextmanager
def over_http(folder: Path) -> Iterator[Place]:
    """A folder of pages over HTTP, until the end of the block."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(_Quiet, directory=str(folder)))
    server.daemon_threads = True
    server.block_on_close = False
    thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.05})
    thread.start()
    try:
        yield Place(f"http://127.0.0.1:{server.server_port}/", files=True)
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


def _know(desk: "Desk", site: Path) -> None:
    """Let a desk begin with its catalogue read and its questions answered, as it would answer them itself."""
    from kb.serve.reading import Reading

    reading = Reading(desk.catalogue)
    answers = answers_of(site, reading.stock)
    reading.stock = with_ways(reading.stock, site)
    reading._answers.update((fault, answers(fault)) for fault in reading.stock.faults)
    desk._time, desk._now = desk.catalogue.stat().st_mtime_ns, reading


@contextmanager
def over_app(catalogue: Path, *, prepare: bool = False, site: Path | None = None) -> Iterator[Place]:
    """The pages of a catalogue, served, until the end of the block; `site` is where the same were written, if so."""
    import uvicorn

    from kb.serve.app import served

    ready = threading.Event()

    class Server(uvicorn.Server):
        async def startup(self, sockets: list[socket.socket] | None = None) -> None:
            await super().startup(sockets=sockets)
            ready.set()

    app = served(catalogue, prepare=prepare)
    if site is not None:
        _know(app.desk, site)
    server = Server(uvicorn.Config(app, log_config=None, timeout_graceful_shutdown=1))
    with socket.create_server(("127.0.0.1", 0)) as listening:
        thread = threading.Thread(target=server.run, kwargs={"sockets": [listening]})
        thread.start()
        try:
            assert ready.wait(60)
            yield Place(f"http://127.0.0.1:{listening.getsockname()[1]}/", files=False)
        finally:
            server.should_exit = True
            thread.join(30)
