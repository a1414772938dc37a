"""`drillpath serve`: where it listens, what it says, how it ends."""

import contextlib
import signal
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest
from building import small_library
from click.testing import CliRunner

from kb.commands.group import drillpath
from kb.errors import BadInput, DrillpathError
from kb.serve.listening import addresses, listen

ROOM = "0.0.0.0"  # noqa: S104  # as a coach types it


@pytest.fixture(scope="module")
def library(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A small library of one's own."""
    return small_library(tmp_path_factory.mktemp("served"))


@pytest.fixture
def taken() -> Iterator[int]:
    """A port at which something else listens."""
    with socket.create_server(("127.0.0.1", 0)) as other:
        yield other.getsockname()[1]


def test_a_port_in_use_is_said(library: Path, taken: int) -> None:
    """One sentence and exit 1."""
    got = CliRunner().invoke(drillpath, ["--library", str(library), "serve", "--port", str(taken)])
    assert (got.exit_code, got.stderr) == (1, f"Error: Port {taken} is in use; name another with --port.\n")


@pytest.mark.parametrize(
    ("host", "said"),
    [
        ("no.such.host.invalid", "There is no host 'no.such.host.invalid'"),
        ("192.0.2.7", "192.0.2.7 is no address of this machine"),
        ("bad..name", "There is no host 'bad..name'"),
        ("a b", "There is no host 'a b'"),
    ],
)
def test_a_bad_host_is_said(library: Path, host: str, said: str) -> None:
    """One sentence, which names what would do, and exit 2."""
    got = CliRunner().invoke(drillpath, ["--library", str(library), "serve", "--host", host])
    assert got.exit_code == 2
    assert said in got.stderr
    assert ROOM in got.stderr
    assert got.stderr.count("\n") == 1


@pytest.mark.parametrize("port", ["0", "-1", "65536", "web"])
def test_a_bad_port_is_said(library: Path, port: str) -> None:
    """Exit 2."""
    assert CliRunner().invoke(drillpath, ["--library", str(library), "serve", "--port", port]).exit_code == 2


def test_other_troubles_are_one_sentence_too(monkeypatch: pytest.MonkeyPatch) -> None:
    """A port that this account may not use, and whatever else a system may say."""
    for error, said in ((13, "may not use port 80"), (105, "can't listen at 127.0.0.1, port 80")):

        def refuse(*_: object, error: int = error) -> None:
            raise OSError(error, "no")

        monkeypatch.setattr("socket.socket.bind", refuse)
        with pytest.raises(DrillpathError, match=said) as found:
            listen("127.0.0.1", 80)
        assert not isinstance(found.value, BadInput)


def test_addresses_that_others_can_use(monkeypatch: pytest.MonkeyPatch) -> None:
    """On this machine alone there is one; for the whole room also the one that phones type."""
    assert addresses("127.0.0.1", 80) == ("http://localhost:80/",)
    assert addresses("hall.test", 80) == ("http://hall.test:80/",)
    assert addresses("::1", 80) == ("http://[::1]:80/",)
    monkeypatch.setattr("kb.serve.listening._outward", lambda: "192.0.2.5")
    assert addresses(ROOM, 80) == ("http://localhost:80/", "http://192.0.2.5:80/")
    monkeypatch.setattr("kb.serve.listening._outward", lambda: None)
    assert addresses("::", 80) == ("http://localhost:80/",)


def test_without_a_network_there_is_no_other_address(monkeypatch: pytest.MonkeyPatch) -> None:
    """And nothing is sent to find out."""
    from kb.serve import listening

    assert listening._outward() is None or listening._outward()[0].isdigit()  # type: ignore[index]

    def refuse(*_: object) -> None:
        raise OSError

    monkeypatch.setattr("socket.socket.connect", refuse)
    assert listening._outward() is None


def test_it_says_where_serves_and_ends_with_ctrl_c(library: Path, tmp_path: Path) -> None:
    """The whole command, as it is used."""
    with listen("127.0.0.1", 0) as free:
        port = free.getsockname()[1]
    arguments = [
        "-c",
        "from kb.cli import main; main()",
        "--library",
        str(library),
        "serve",
        "--port",
        str(port),
        "--sql",
    ]
    with (tmp_path / "said").open("w") as said:
        server = subprocess.Popen([sys.executable, *arguments], stderr=said, stdout=said)
    try:
        for _ in range(400):
            with (
                contextlib.suppress(OSError),
                urllib.request.urlopen(f"http://127.0.0.1:{port}/drill/tall-clean") as got,
            ):
                assert b"Tall clean" in got.read()
                break
            time.sleep(0.05)
        server.send_signal(signal.SIGINT)
        assert server.wait(30) == 0
    finally:
        server.kill()
    assert (tmp_path / "said").read_text() == (
        f"drillpath at http://localhost:{port}/ (Ctrl-C stops it)\n"
        f"The tables it is made from: http://localhost:{port}/catalogue (anyone may ask in SQL)\n"
    )


def test_it_opens_the_first_page_and_names_the_room_s_address(library: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """With --open, in the browser of this machine; with 0.0.0.0, the address for phones."""
    opened: list[str] = []
    monkeypatch.setattr("click.launch", opened.append)
    monkeypatch.setattr("kb.serve.running.run", lambda _, listening: listening.close())
    monkeypatch.setattr("kb.serve.listening._outward", lambda: "192.0.2.5")
    with listen("127.0.0.1", 0) as free:
        port = free.getsockname()[1]
    got = CliRunner().invoke(
        drillpath, ["--library", str(library), "serve", "--open", "--host", ROOM, "--port", str(port)]
    )
    assert got.exit_code == 0, got.output
    assert opened == [f"http://localhost:{port}/"]
    assert f"For others in the room: http://192.0.2.5:{port}/\n" in got.stderr


def test_interrupted_it_ends(library: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Ctrl-C is no error; threads that prepare pages give way sooner than usual."""
    import uvicorn

    from kb.serve.app import served
    from kb.serve.running import SWITCH_S, run

    before = sys.getswitchinterval()
    sockets: list[object] = []

    def interrupted(_: object, sockets: list[object]) -> None:
        kept.extend(sockets)
        raise KeyboardInterrupt

    kept = sockets
    monkeypatch.setattr(uvicorn.Server, "run", interrupted)
    try:
        with listen("127.0.0.1", 0) as opened:
            run(served(library / "out" / "catalogue.db"), opened)
            assert sockets == [opened]
        assert sys.getswitchinterval() == pytest.approx(SWITCH_S, rel=0.01)
    finally:
        sys.setswitchinterval(before)
