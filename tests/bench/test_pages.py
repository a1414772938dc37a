"""A prepared page beside Datasette's own plain route with the same bytes; a hall of phones; the site as a folder.

Wanted: a prepared page at most 1.3 times the plain route; at 100 requests a second 99 of 100 within 50 ms; the site of
the shipped library in less than 20 s, its chains' pages at most 25 MB a thousand.
"""

import asyncio
import os
import socket
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest
from serving import Visitor, visiting

from kb.ask import read
from kb.serve.listening import listen
from kb.serve.whole import whole
from kb.show.page.site import write_site

CHAIN = "clean-bar-crashes.pulled-short.clean.full"
FAULTS = ("clean-bar-crashes", "early-arm-bend", "jerk-press-out", "hips-rise-first", "soft-elbows", "catches-high")
A_SECOND = 100
SECONDS = 5
ROUNDS = {"rounds": 200, "warmup_rounds": 20, "iterations": 1}


def _chains(visitor: Visitor, *faults: str) -> list[str]:
    now = visitor.run(visitor.app.desk.reading())
    return [f"/chain/{name}" for fault in faults for name in now.answers(fault).answers]  # type: ignore[arg-type]


def _plain(body: bytes) -> Any:
    """Datasette with one route of a plugin that gives back bytes it has."""
    from datasette import Response, hookimpl
    from datasette.app import Datasette
    from datasette.plugins import pm

    class Plain:
        __name__ = "plain"

        @hookimpl
        def register_routes(self) -> list[tuple[str, Any]]:
            return [(r"^/plain$", lambda: Response.html(body.decode()))]

    plain = Plain()
    pm.register(plain)
    try:
        return Datasette().app()
    finally:
        pm.unregister(plain)


@pytest.fixture(scope="module")
def visitor(catalogue: Path) -> Iterator[Visitor]:
    """A visitor to the shipped library's server."""
    with visiting(catalogue) as found:
        yield found


@pytest.fixture(scope="module")
def body(visitor: Visitor) -> bytes:
    """A chain's page, prepared."""
    return visitor.get(_chains(visitor, "clean-bar-crashes")[0]).body


def _scope(path: str) -> dict[str, Any]:
    raw = path.encode()
    return {
        "type": "http",
        "method": "GET",
        "scheme": "http",
        "http_version": "1.1",
        "query_string": b"",
        "path": path,
        "raw_path": raw,
        "headers": [(b"host", b"hall.test")],
    }


@pytest.mark.benchmark(group="a prepared page, asked in the process")
def test_floor_datasette_plain_route(benchmark, visitor: Visitor, body: bytes) -> None:
    """The floor: a plugin's route that has the bytes."""
    app = _plain(body)
    assert benchmark.pedantic(lambda: visitor.run(whole(app, _scope("/plain"))), **ROUNDS)[2] == body


@pytest.mark.benchmark(group="a prepared page, asked in the process")
def test_prepared_chain(benchmark, visitor: Visitor, body: bytes) -> None:
    """Ours."""
    chain = _chains(visitor, "clean-bar-crashes")[0]
    assert benchmark.pedantic(lambda: visitor.run(whole(visitor.app, _scope(chain))), **ROUNDS)[2] == body


@contextmanager
def _listening(app: Any) -> Iterator[int]:
    import uvicorn

    server = uvicorn.Server(uvicorn.Config(app, log_config=None, timeout_graceful_shutdown=1))
    with listen("127.0.0.1", 0) as opened:
        thread = threading.Thread(target=server.run, kwargs={"sockets": [opened]})
        thread.start()
        try:
            yield opened.getsockname()[1]
        finally:
            server.should_exit = True
            thread.join(30)


def _over(connection: socket.socket, path: str, size: int) -> bytes:
    """One answer over a connection that is kept: Datasette sends pieces without saying how many bytes there are."""
    connection.sendall(f"GET {path} HTTP/1.1\r\nHost: hall.test\r\n\r\n".encode())
    got = connection.recv(1 << 20)
    while len(got) < size or not got.endswith((b"</html>", b"0\r\n\r\n")):
        got += connection.recv(1 << 20)
    return got


@pytest.mark.benchmark(group="a prepared page, over loopback")
def test_floor_datasette_over_loopback(benchmark, body: bytes) -> None:
    """The floor, through a socket."""
    with _listening(_plain(body)) as port, socket.create_connection(("127.0.0.1", port)) as connection:
        assert body in benchmark.pedantic(lambda: _over(connection, "/plain", len(body)), **ROUNDS)


@pytest.mark.benchmark(group="a prepared page, over loopback")
def test_prepared_chain_over_loopback(benchmark, catalogue: Path, visitor: Visitor, body: bytes) -> None:
    """Ours, through a socket."""
    from kb.serve.app import served

    chain = _chains(visitor, "clean-bar-crashes")[0]
    app = served(catalogue, prepare=False)
    with _listening(app) as port, socket.create_connection(("127.0.0.1", port)) as connection:
        assert body in benchmark.pedantic(lambda: _over(connection, chain, len(body)), **ROUNDS)


async def _one(port: int, path: str) -> float:
    """Seconds from wanting to connect to the last byte: each phone is a connection of its own."""
    begun = time.perf_counter()
    reader, writer = await asyncio.open_connection("127.0.0.1", port)
    writer.write(f"GET {path} HTTP/1.1\r\nHost: hall.test\r\nConnection: close\r\n\r\n".encode())
    got = await reader.read()
    writer.close()
    assert got.startswith(b"HTTP/1.1 200"), got[:80]
    return time.perf_counter() - begun


async def hall(port: int, chains: list[str], a_second: float, seconds: float) -> list[float]:
    """What each of many requests took, s: begun at a steady pace, however long those before take."""
    loop, tasks = asyncio.get_running_loop(), []
    begun = loop.time()
    for n in range(int(a_second * seconds)):
        await asyncio.sleep(max(0.0, begun + n / a_second - loop.time()))
        tasks.append(asyncio.create_task(_one(port, chains[n % len(chains)])))
    return sorted(await asyncio.gather(*tasks))


def _at(taken: list[float], share: float) -> float:
    return taken[min(len(taken) - 1, int(share * len(taken)))]


BYTES_ALONE = """
import asyncio, sys
async def answer(reader, writer):
    await reader.readuntil(b"\\r\\n\\r\\n")
    writer.write(b"HTTP/1.1 200 OK\\r\\n\\r\\n" + bytes(30_000))
    writer.close()
async def main():
    async with await asyncio.start_server(answer, "127.0.0.1", int(sys.argv[1])) as server:
        await server.serve_forever()
asyncio.run(main())
"""


@contextmanager
def _process(*arguments: str) -> Iterator[int]:
    """A server in a process of its own, at the port that is its last argument."""
    with listen("127.0.0.1", 0) as free:
        port = free.getsockname()[1]
    server = subprocess.Popen([sys.executable, *arguments, str(port)], stderr=subprocess.DEVNULL)
    try:
        for _ in range(600):
            try:
                socket.create_connection(("127.0.0.1", port)).close()
                break
            except OSError:
                time.sleep(0.1)
        yield port
    finally:
        server.terminate()
        server.wait(30)


def _told(what: str, taken: list[float]) -> None:
    figures = ", ".join(f"p{100 * share:g} {1000 * _at(taken, share):.1f} ms" for share in (0.5, 0.9, 0.99, 1))
    print(f"\n{len(taken)} {what} at {A_SECOND} a second: {figures}; load {os.getloadavg()[0]:.1f}")


def test_a_hundred_a_second(visitor: Visitor) -> None:
    """The command itself, chains at a steady pace, beside a process that only sends bytes to the same callers."""
    chains = _chains(visitor, *FAULTS)
    with _process("-c", BYTES_ALONE) as port:
        floor = asyncio.run(hall(port, ["/"], A_SECOND, SECONDS))
    with _process("-c", "from kb.cli import main; main()", "serve", "--port") as port:
        for path in (*chains, "/library"):  # all is prepared once the library's health is known
            asyncio.run(_one(port, path))
        taken = asyncio.run(hall(port, chains, A_SECOND, SECONDS))
    _told("answers of bytes alone", floor)
    _told("chains", taken)
    assert _at(taken, 0.99) <= 0.050


def test_the_site_of_the_shipped_library(db: read.sqlite3.Connection, tmp_path: Path) -> None:
    """Written whole."""
    begun, cpu = time.perf_counter(), time.process_time()
    written = write_site(db, tmp_path / "site")
    took, cpu = time.perf_counter() - begun, time.process_time() - cpu
    print(
        f"\n{written.pages} pages ({written.chains} chains) in {took:.1f} s, {cpu:.1f} s of this process;"
        f" {1000 * written.chains_size / written.chains / 1e6:.1f} MB a thousand chains; load {os.getloadavg()[0]:.1f}"
    )
    assert took < 20
    assert written.chains_size / written.chains <= 25_000
