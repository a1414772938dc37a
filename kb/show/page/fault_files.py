"""A fault's pages as files: its own, its chains' and its sessions', written by this process or by one beside it."""

import gc
from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import BrokenExecutor, Future, ProcessPoolExecutor
from contextlib import contextmanager
from functools import cache
from multiprocessing import get_context
from pathlib import Path
from typing import NamedTuple

from kb.ask import read
from kb.show.page.address import file_of, form_at
from kb.show.page.carried import packed, unpacked
from kb.show.page.inert import inert
from kb.show.page.pages import Answers, fault_paths, page_at
from kb.show.page.prepared import Prepared, prepare
from kb.show.page.render import html
from kb.show.page.stock import Stock, stock_of
from kb.terms import FaultId

__all__ = ["FaultFiles", "all_here", "beside", "put_pages", "uncollected"]


class FaultFiles(NamedTuple):
    """A fault's answers, and the bytes of each page that was written of them, by its path."""

    answers: Prepared
    sizes: dict[str, int]


def put_pages(paths: Iterable[str], stock: Stock, answers: Answers, folder: Path) -> dict[str, int]:
    """Write some pages and the answers beside them; each page's bytes, by its path."""
    sizes: dict[str, int] = {}
    for path in paths:
        page = page_at(path, stock, answers)
        text = html(page, form_at(path)).encode()
        (folder / file_of(path)).write_bytes(text)
        sizes[path] = len(text)
        if page.data is not None:
            (folder / f"{path}.json").write_text(inert(page.data), "utf-8")
    return sizes


def _files(fault: FaultId, stock: Stock, folder: Path) -> FaultFiles:
    answers = prepare(stock, fault)
    return FaultFiles(
        answers, put_pages(fault_paths(stock, fault, lambda _: answers), stock, lambda _: answers, folder)
    )


@cache
def _stock_at(catalogue: str) -> Stock:
    return stock_of(read.open_catalogue(catalogue))


def _in_the_other(fault: FaultId, catalogue: str, folder: Path) -> tuple[bytes, dict[str, int]]:
    stock = _stock_at(catalogue)
    files = _files(fault, stock, folder)
    return packed(files.answers, stock), files.sizes


@contextmanager
def uncollected() -> Iterator[None]:
    """Without collecting garbage that goes round in circles: answers and pages leave next to none.

    Looking for it took an eighth of the time.
    """
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()


@contextmanager
def beside(stock: Stock, catalogue: str, folder: Path) -> Iterator[Callable[[], dict[FaultId, FaultFiles]]]:
    """Begin to write every fault's pages in a process beside this one, which collects no garbage, as here.

    Within the block this process does something else; what is called at its end takes from the other's work, from the
    last fault on, until both have met, and gives what was written.
    """
    pool = ProcessPoolExecutor(max_workers=1, mp_context=get_context("spawn"), initializer=gc.disable)
    begun = {fault: pool.submit(_in_the_other, fault, catalogue, folder) for fault in stock.faults}

    def rest() -> dict[FaultId, FaultFiles]:
        done: dict[FaultId, FaultFiles] = {}
        for fault in reversed(begun):
            if begun[fault].cancel():
                done[fault] = _files(fault, stock, folder)
        return {fault: done[fault] if fault in done else _theirs(begun[fault], fault) for fault in begun}

    def _theirs(job: Future[tuple[bytes, dict[str, int]]], fault: FaultId) -> FaultFiles:
        try:
            answers, sizes = job.result()
            return FaultFiles(unpacked(answers, stock), sizes)
        except BrokenExecutor:  # there can't be another process here, or it was ended
            return _files(fault, stock, folder)

    try:
        yield rest
    finally:
        pool.shutdown(cancel_futures=True)


def all_here(stock: Stock, folder: Path) -> dict[FaultId, FaultFiles]:
    """Every fault's pages, written by this process alone."""
    return {fault: _files(fault, stock, folder) for fault in stock.faults}
