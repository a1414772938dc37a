"""A server asked in the same process, with nothing between that would tidy an address up before it is asked for."""

import asyncio
import json
from collections.abc import Coroutine, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, NamedTuple, TypeVar

from small_answers import built

from kb.serve.app import served
from kb.serve.front import Front

__all__ = ["Got", "Visitor", "small", "visiting"]

T = TypeVar("T")


class Got(NamedTuple):
    """What came back."""

    status: int
    headers: dict[str, str]
    body: bytes

    @property
    def text(self) -> str:
        return self.body.decode()

    @property
    def json(self) -> Any:
        return json.loads(self.body)


class Visitor(NamedTuple):
    """Who asks, with an event loop of their own."""

    app: Front
    runner: asyncio.Runner

    def run(self, job: Coroutine[Any, Any, T]) -> T:
        return self.runner.run(job)

    def get(self, address: str | bytes, method: str = "GET", **headers: str) -> Got:
        """The answer to an address, taken as it is."""
        return self.run(self.ask(address, method, **headers))

    async def ask(self, address: str | bytes, method: str = "GET", **headers: str) -> Got:
        raw = address.encode("latin-1") if isinstance(address, str) else address
        path, _, query = raw.partition(b"?")
        sent = [(name.replace("_", "-").encode(), value.encode("latin-1")) for name, value in headers.items()]
        scope = {
            "type": "http",
            "asgi": {"version": "3.0"},
            "http_version": "1.1",
            "method": method,
            "scheme": "http",
            "path": path.decode("latin-1"),
            "raw_path": path,
            "query_string": query,
            "headers": [(b"host", b"hall.test"), *sent],
            "server": ("127.0.0.1", 8055),
            "client": ("127.0.0.1", 50000),
        }
        events: list[dict[str, Any]] = []

        async def receive() -> dict[str, Any]:
            return {"type": "http.request", "body": b"", "more_body": False}

        async def send(event: dict[str, Any]) -> None:
            events.append(event)

        await self.app(scope, receive, send)
        start, *bodies = events
        said = {key.decode(): value.decode("latin-1") for key, value in start["headers"]}
        assert len(said) == len(start["headers"]), "a header was sent twice"
        return Got(start["status"], said, b"".join(event["body"] for event in bodies))


def small() -> Path:
    """The small library's catalogue."""
    return built() / "out" / "catalogue.db"


@contextmanager
def visiting(catalogue: Path, **settings: Any) -> Iterator[Visitor]:
    """A server over a catalogue, nothing prepared, until the end of the block."""
    with asyncio.Runner() as runner:
        app = served(catalogue, prepare=False, **settings)
        yield Visitor(app, runner)
        runner.run(app.desk.close())
