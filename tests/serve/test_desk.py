"""The desk: one queue with an end, pages prepared ahead that keep nobody waiting, a catalogue that is built again."""

import asyncio
import os
import threading
from pathlib import Path
from typing import Any

import pytest
from building import again, rename, small_library
from serving import Visitor, small, visiting

from kb.ask import read
from kb.errors import DrillpathError
from kb.serve.desk import Busy, Desk
from kb.serve.reading import Reading
from kb.show.page.pages import paths


def test_more_than_may_wait_are_told_to_come_back() -> None:
    """503 and when; who waits is answered, and so is the next who asks once there is room."""
    go = threading.Event()

    async def crowd(visitor: Visitor) -> tuple[list[int], str, list[int]]:
        desk = visitor.app.desk
        await desk.reading()
        slow = asyncio.create_task(desk.ask(lambda _: go.wait(20)))
        await asyncio.sleep(0.01)
        waiting = [asyncio.create_task(visitor.ask(f"/find?q={n}")) for n in range(2)]
        await asyncio.sleep(0.01)
        refused = [await visitor.ask(each) for each in ("/find?q=3", "/catalogue/drill", "/drill/tall-clean", "/no")]
        go.set()
        assert await slow
        answered = [(await each).status for each in waiting]
        return (
            [got.status for got in refused],
            refused[0].headers["retry-after"],
            [*answered, (await visitor.ask("/find?q=3")).status],
        )

    with visiting(small(), limit=3) as visitor:
        refused, when, answered = visitor.run(crowd(visitor))
    assert refused == [503] * 4
    assert when.isdigit()
    assert answered == [200, 200, 200]


def test_a_page_that_is_set_is_answered_whoever_waits() -> None:
    """Pages at hand need no place in the queue."""

    async def asked(visitor: Visitor) -> list[int]:
        await visitor.ask("/drill/tall-clean")
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(visitor.app.desk, "waiting", 10_000)
            return [(await visitor.ask(each)).status for each in ("/drill/tall-clean", "/drill/high-hang-clean")]

    with visiting(small()) as visitor:
        assert visitor.run(asked(visitor)) == [200, 503]


def test_one_page_asked_for_by_many_is_set_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """The others wait for the same answer."""
    made: list[str] = []
    page = Reading.page

    def counted(self: Reading, path: str) -> Any:
        made.append(path)
        return page(self, path)

    monkeypatch.setattr(Reading, "page", counted)

    async def many(visitor: Visitor) -> set[int]:
        return {got.status for got in await asyncio.gather(*(visitor.ask("/lift/clean") for _ in range(30)))}

    with visiting(small(), limit=5) as visitor:
        assert visitor.run(many(visitor)) == {200}
    assert made == ["lift/clean"]


def test_all_pages_are_prepared() -> None:
    """Each once, those of faults first; afterwards none is set."""

    async def prepared(desk: Desk) -> tuple[int, Reading]:
        return await desk.prepare_all(), await desk.reading()

    with visiting(small()) as visitor:
        count, now = visitor.run(prepared(visitor.app.desk))
        every = list(paths(now.stock, now.answers))
        assert count == len(every)
        assert set(now.kept) == set(every)
        assert next(iter(now.kept)).startswith("fault/")


def test_preparing_gives_way() -> None:
    """While a visitor waits no page is begun; the visitor waits for one page at most, and goes on at once."""
    go, begun = threading.Event(), list[str]()

    async def asked(desk: Desk) -> tuple[int, int]:
        now = await desk.reading()
        page = now.page
        now.page = lambda path: begun.append(path) or page(path)  # type: ignore[method-assign,func-returns-value]
        slow = asyncio.create_task(desk.ask(lambda _: go.wait(20)))
        await asyncio.sleep(0)
        preparing = asyncio.create_task(desk.prepare_all())
        await asyncio.sleep(0.2)
        before = len(begun)
        go.set()
        await slow
        return before, await preparing

    with visiting(small()) as visitor:
        before, count = visitor.run(asked(visitor.app.desk))
    assert before == 0
    assert count == len(begun) > 50


def test_the_first_page_is_answered_while_the_rest_is_prepared() -> None:
    """A visitor who comes at once doesn't wait for all."""

    async def first(visitor: Visitor) -> tuple[int, int]:
        desk = visitor.app.desk
        desk.prepare()
        got = await visitor.ask("/fault/jerk-dips-forward")
        return got.status, len((await desk.reading()).kept)

    with visiting(small()) as visitor:
        status, kept = visitor.run(first(visitor))
    assert status == 200
    assert kept < 40


@pytest.fixture
def root(tmp_path: Path) -> Path:
    """A small library of one's own."""
    return small_library(tmp_path / "library")


async def _settled(visitor: Visitor, old: Reading) -> None:
    for _ in range(500):
        if await visitor.app.desk.reading() is not old:
            return
        await asyncio.sleep(0.01)


@pytest.mark.parametrize("prepared", [True, False])
def test_a_catalogue_that_is_built_again_is_noticed(root: Path, *, prepared: bool) -> None:
    """Pages, searches, files and tables are of the new one; what was prepared is prepared anew."""

    async def asked(visitor: Visitor) -> None:
        desk = visitor.app.desk
        desk.prepare() if prepared else None
        addresses = ("/drill/tall-clean", "/find?q=upright+clean", "/catalogue/drill/tall-clean", "/catalogue/drill")
        before = [await visitor.ask(each) for each in addresses]
        marks = [got.headers["etag"] for got in before]
        assert all("Upright clean" not in got.text for got in (before[0], before[2], before[3]))
        old = await desk.reading()
        rename(root, "Upright clean")
        assert "catalogue.db" in again(root)
        during = await visitor.ask("/drill/tall-clean")
        assert during.status == 200  # the old goes on answering
        await _settled(visitor, old)
        after = [await visitor.ask(each, if_none_match=mark) for each, mark in zip(addresses, marks, strict=True)]
        assert [got.status for got in after] == [200] * 4
        assert all("Upright clean" in got.text for got in after)

    with visiting(root / "out" / "catalogue.db") as visitor:
        visitor.run(asked(visitor))


def test_a_catalogue_that_breaks_leaves_the_old_one(root: Path) -> None:
    """What is known still holds, whether the file is gone or is no catalogue; when it is mended that is noticed."""
    catalogue = root / "out" / "catalogue.db"
    whole = catalogue.read_bytes()

    async def asked(visitor: Visitor) -> list[int]:
        statuses = [(await visitor.ask("/drill/tall-clean")).status]
        old = await visitor.app.desk.reading()
        for broken in (None, b"broken", whole[:5000]):
            catalogue.unlink()
            if broken is not None:
                catalogue.write_bytes(broken)
            for _ in range(3):
                statuses.append((await visitor.ask("/drill/high-hang-clean")).status)
                await asyncio.sleep(0.05)
            catalogue.touch()
        assert await visitor.app.desk.reading() is old
        catalogue.write_bytes(whole)
        os.utime(catalogue, ns=(1, 1))
        await _settled(visitor, old)
        assert await visitor.app.desk.reading() is not old
        return [*statuses, (await visitor.ask("/drill/tall-clean")).status]

    with visiting(catalogue) as visitor:
        assert set(visitor.run(asked(visitor))) == {200}


def test_a_question_that_needs_all_answers_keeps_no_other_waiting(monkeypatch: pytest.MonkeyPatch) -> None:
    """It waits where pages are prepared."""
    go = threading.Event()
    monkeypatch.setattr("kb.serve.reading.keeper", lambda *_: str(go.wait(20)))

    async def asked(visitor: Visitor) -> tuple[int, bool, int]:
        slow = asyncio.create_task(visitor.ask("/sw.js"))
        quick = await visitor.ask("/find?q=bar")
        waits = not slow.done()
        go.set()
        return quick.status, waits, (await slow).status

    with visiting(small()) as visitor:
        assert visitor.run(asked(visitor)) == (200, True, 200)


def test_a_hall_of_phones_that_wait_for_one_file_keeps_nobody_out(monkeypatch: pytest.MonkeyPatch) -> None:
    """Who waits for what another waits for already needs no place."""
    go = threading.Event()
    monkeypatch.setattr("kb.serve.reading.keeper", lambda *_: str(go.wait(20)))

    async def asked(visitor: Visitor) -> tuple[int, set[int]]:
        phones = [asyncio.create_task(visitor.ask("/sw.js")) for _ in range(40)]
        await asyncio.sleep(0.01)
        quick = await visitor.ask("/find?q=bar")
        go.set()
        return quick.status, {(await each).status for each in phones}

    with visiting(small(), limit=3) as visitor:
        assert visitor.run(asked(visitor)) == (200, {200})


def test_a_server_that_stops_tells_who_waits() -> None:
    """What takes long is broken off: 503, and no trace of it; also where the server's patience ends first."""

    async def asked(visitor: Visitor) -> list[int]:
        await visitor.ask("/drill/tall-clean")
        go = threading.Event()
        held = asyncio.create_task(visitor.app.desk.ask(lambda _: go.wait(20), slow=True))
        slow = [asyncio.create_task(visitor.ask(each)) for each in ("/sw.js", "/library")]
        await asyncio.sleep(0.05)
        slow[1].cancel()
        visitor.app.desk.leave()
        go.set()
        assert await held
        return [(await each).status for each in slow]

    with visiting(small()) as visitor:
        visitor.app.desk.leave()
        assert visitor.run(asked(visitor)) == [503, 503]


@pytest.mark.parametrize("path", ["class", "library"])
def test_what_takes_long_keeps_nobody_waiting(path: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """While a class is planned, or the library's health looked into, other pages are set by the visitors' worker."""
    go, page = threading.Event(), Reading.page

    def slow(self: Reading, asked: str) -> Any:
        if asked == path:
            assert go.wait(20)
        return page(self, asked)

    async def asked(visitor: Visitor) -> list[int]:
        await visitor.app.desk.reading()
        first = asyncio.create_task(visitor.ask(f"/{path}"))
        await asyncio.sleep(0.01)
        others = [(await visitor.ask(each)).status for each in ("/drill/tall-clean", "/find?q=bar", "/lifts")]
        assert not first.done()
        go.set()
        return [*others, (await first).status]

    monkeypatch.setattr(Reading, "page", slow)
    with visiting(small()) as visitor:
        assert visitor.run(asked(visitor)) == [200] * 4


def test_a_place_is_given_back() -> None:
    """Also by who fails."""

    async def asked(desk: Desk) -> int:
        for _ in range(3):
            with pytest.raises(ZeroDivisionError):
                await desk.ask(lambda _: 1 // 0)
        with desk.seat(), desk.seat(), pytest.raises(Busy), desk.seat():
            pass
        return desk.waiting

    with visiting(small(), limit=2) as visitor:
        assert visitor.run(asked(visitor.app.desk)) == 0


def test_connections_stay_in_their_thread() -> None:
    """Each thread reads through its own."""
    now = Reading(small())
    found: list[Any] = []
    thread = threading.Thread(target=lambda: found.append(now.db))
    thread.start()
    thread.join()
    assert isinstance(now.db, read.sqlite3.Connection)
    assert found[0] is not now.db
    assert now.db is now.db
    with pytest.raises(KeyError):
        now.answers("moon")  # type: ignore[arg-type]
    now.closed = True
    with pytest.raises(DrillpathError):
        now.answers("clean-bar-crashes")  # type: ignore[arg-type]
