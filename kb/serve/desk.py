"""Answers kept at hand: each page set once per catalogue, anything else set when it is asked for, in a worker.

One worker answers visitors; a bounded number of questions may wait for it, and one more is told to come back.
Another prepares pages ahead, one at a time, and starts none while a visitor waits.
"""

import asyncio
import sqlite3
from collections.abc import Callable, Iterator
from concurrent.futures import Executor, ThreadPoolExecutor
from contextlib import contextmanager
from pathlib import Path
from typing import TypeVar

from kb.errors import DrillpathError
from kb.serve.answer import Answer, Set
from kb.serve.reading import Reading

__all__ = ["Busy", "Desk"]

WAITING = 64
"""Questions that may wait for the worker."""

LONG = frozenset({"library", "class", "sw.js", "assets/chains.js"})
"""What needs every default question answered, or a class planned: it is set where pages are prepared, so that nobody
else waits for it."""

Made = TypeVar("Made")

UnderWay = dict[str, asyncio.Future[Made]]


class Busy(Exception):
    """More questions are waiting than can be answered soon."""


class Desk:
    """What the server knows: the catalogue as it was when last looked at, and the pages set from it.

    It holds state because a server does: a catalogue that is built again is noticed by its file's time, and read
    while the old one goes on answering.
    """

    def __init__(self, catalogue: Path, *, limit: int = WAITING) -> None:
        self.catalogue = catalogue
        self.limit = limit
        self.waiting = 0
        self._visitors = ThreadPoolExecutor(max_workers=1, thread_name_prefix="visitors")
        self._ahead = ThreadPoolExecutor(max_workers=1, thread_name_prefix="ahead")
        self._free = asyncio.Event()
        self._free.set()
        self._time = -1
        self._now: Reading | None = None
        self._opening: asyncio.Task[None] | None = None
        self._preparing: asyncio.Task[int] | None = None
        self._prepares = False

    async def reading(self) -> Reading:
        """The catalogue in use; DrillpathError if it can't be read and never could."""
        self._look()
        if self._now is None and self._opening is not None:
            await asyncio.shield(self._opening)
        if self._now is None:
            raise DrillpathError("the catalogue can't be read")
        return self._now

    async def page(self, path: str) -> Set:
        """A prepared page; KeyError if there is none at that address, Busy if too many wait already."""
        now = await self.reading()
        kept = now.kept.get(path)
        if kept is not None:
            return kept
        return await self._once(now.under_way, path, now.page)

    async def file(self, name: str) -> Answer:
        """A file that pages share; KeyError if there is none at that address, Busy if too many wait already."""
        now = await self.reading()
        kept = now.files.get(name)
        if kept is not None:
            return kept
        return await self._once(now.files_under_way, name, now.file)

    async def ask(self, question: Callable[[Reading], Made], *, slow: bool = False) -> Made:
        """A question put to the catalogue; Busy if too many wait already. A `slow` one keeps no other waiting."""
        now = await self.reading()
        with self.seat():
            worker = self._ahead if slow else self._visitors
            return await asyncio.get_running_loop().run_in_executor(worker, question, now)

    @contextmanager
    def seat(self) -> Iterator[None]:
        """A place among those who wait; Busy if there is none."""
        if self.waiting >= self.limit:
            raise Busy
        self.waiting += 1
        self._free.clear()
        try:
            yield
        finally:
            self.waiting -= 1
            if not self.waiting:
                self._free.set()

    async def prepare_all(self) -> int:
        """Set every prepared page, one at a time, none while a visitor waits; how many there are."""
        now = await self.reading()
        loop = asyncio.get_running_loop()
        await loop.run_in_executor(self._ahead, lambda: now.figures)
        paths, done = now.paths(), 0
        while self._now is now:
            await self._free.wait()
            path = await loop.run_in_executor(self._ahead, lambda: next(paths, None))
            if path is None:
                break
            await self._free.wait()
            await self._begun(now.under_way, path, now.page, self._ahead)
            done += 1
        return done

    def prepare(self) -> None:
        """Begin to set all pages, now and whenever the catalogue has been built again."""
        self._prepares = True
        self._preparing = asyncio.get_running_loop().create_task(self.prepare_all())

    def leave(self) -> None:
        """Begin to stop: what takes long is broken off, who waits for it is told."""
        if self._now is not None:
            self._now.closed = True

    async def close(self) -> None:
        """Let go of the workers."""
        self.leave()
        for task in (self._preparing, self._opening):
            if task is not None:
                task.cancel()
                await asyncio.gather(task, return_exceptions=True)
        for worker in (self._visitors, self._ahead):
            worker.shutdown(wait=False, cancel_futures=True)

    async def _once(self, under_way: UnderWay[Made], name: str, make: Callable[[str], Made]) -> Made:
        """Something set by a worker for the first who asks; the others need no place to wait for the same answer."""
        if name in under_way:
            return await asyncio.shield(under_way[name])
        with self.seat():
            return await self._begun(under_way, name, make, self._ahead if name in LONG else self._visitors)

    async def _begun(self, under_way: UnderWay[Made], name: str, make: Callable[[str], Made], worker: Executor) -> Made:
        if name not in under_way:
            job = asyncio.get_running_loop().run_in_executor(worker, make, name)
            under_way[name] = job
            job.add_done_callback(lambda _: under_way.pop(name, None))
        return await asyncio.shield(under_way[name])

    def _look(self) -> None:
        """Begin to read the catalogue if it has been built since it was last read."""
        try:
            time = self.catalogue.stat().st_mtime_ns
        except OSError:
            return  # it is being replaced: what is known still holds
        if time != self._time and (self._opening is None or self._opening.done()):
            self._opening = asyncio.get_running_loop().create_task(self._open(time))

    async def _open(self, time: int) -> None:
        self._time = time
        old = self._now
        try:
            self._now = await asyncio.get_running_loop().run_in_executor(self._ahead, Reading, self.catalogue)
        except (DrillpathError, sqlite3.Error):
            return  # what is known still holds; a catalogue that is mended is noticed again
        if self._prepares and old is not None:
            self.prepare()
