"""A library's catalogue, asked by this process and by others beside it: many questions, in their order.

A temporary catalogue is built and asked as any question is, so that what is judged is what is answered.
"""

import os
from collections.abc import Callable, Iterator, Mapping, Sequence
from concurrent.futures import BrokenExecutor, Future, ProcessPoolExecutor
from contextlib import closing, contextmanager
from functools import cache
from multiprocessing import get_context
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import NamedTuple, TypeVar

from kb.ask import read
from kb.ask.shelf import Shelf
from kb.make.catalogue import write
from kb.make.library import Library
from kb.terms import LiftId

__all__ = ["FEW", "Catalogue", "Shelves", "each", "opened"]

Item = TypeVar("Item")
Told = TypeVar("Told")
Shelves = Mapping[LiftId, Shelf]

FEW = 12
"""Fewer items than this are not worth another process: it takes as long to start as they to ask."""

MOST = 7
"""Processes beside this one at most."""


class Catalogue(NamedTuple):
    """A library's shelves, the file they were read from, and the processes that may read it too."""

    library: Library
    shelves: Shelves
    path: str
    others: ProcessPoolExecutor


@contextmanager
def opened(library: Library) -> Iterator[Catalogue]:
    """A temporary catalogue of a library without structural problems, for as long as the block lasts."""
    with TemporaryDirectory(prefix="drillpath-check-") as folder:
        path = Path(folder) / "catalogue.db"
        write(library, path)
        # no process is started before there is something for it to do
        others = ProcessPoolExecutor(max_workers=_others(), mp_context=get_context("spawn"))
        try:
            yield Catalogue(library, _shelves(str(path)), str(path), others)
        finally:
            others.shutdown(cancel_futures=True)


def each(catalogue: Catalogue, ask: Callable[[Shelves, Item], Told], items: Sequence[Item]) -> list[Told]:
    """What `ask`, a module's function, says of each item, in order, whichever process asked it.

    The others begin with the first; this one takes from their work, from the last on, until both have met.
    """
    if len(items) < FEW:
        return [ask(catalogue.shelves, item) for item in items]
    jobs = [catalogue.others.submit(_there, ask, catalogue.path, item) for item in items]
    here = {n: ask(catalogue.shelves, items[n]) for n in reversed(range(len(items))) if jobs[n].cancel()}
    return [here[n] if n in here else _theirs(job, catalogue, ask, items[n]) for n, job in enumerate(jobs)]


def _theirs(job: "Future[Told]", catalogue: Catalogue, ask: Callable[[Shelves, Item], Told], item: Item) -> Told:
    try:
        return job.result()
    except BrokenExecutor:  # there can't be another process here, or it was ended
        return ask(catalogue.shelves, item)


def _others() -> int:
    return max(1, min(MOST, (os.cpu_count() or 1) - 1))


def _shelves(path: str) -> Shelves:
    with closing(read.open_catalogue(path)) as db:
        return {lift: read.shelf(db, lift) for lift in read.lifts(db)}


_kept = cache(_shelves)


def _there(ask: Callable[[Shelves, Item], Told], path: str, item: Item) -> Told:
    return ask(_kept(path), item)
