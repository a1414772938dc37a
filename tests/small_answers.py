"""The small library of the tests, built once, and answers from it: what kb/show and the commands are tested on."""

import atexit
import shutil
from functools import cache
from pathlib import Path
from tempfile import mkdtemp

from kb.ask import read
from kb.ask.chain import Chain, chain
from kb.ask.question import ChainQuestion
from kb.ask.shelf import Shelf
from kb.ask.with_text import chain_with_text
from kb.make.build import build
from kb.terms import FaultId, LiftId

__all__ = ["SMALL", "built", "small_chain", "small_shelf"]

SMALL = Path(__file__).parent / "data" / "small"
"""The library as it is committed: nothing is ever written there."""


@cache
def built() -> Path:
    """A copy of the small library with its catalogue, removed when the tests end."""
    root = Path(mkdtemp(prefix="drillpath-tests-"))
    atexit.register(shutil.rmtree, root, ignore_errors=True)
    shutil.copytree(SMALL / "drills", root / "drills")
    build(root, root / "out", None)
    return root


@cache
def small_shelf(lift: str = "clean") -> Shelf:
    """All that questions about one of its lifts need."""
    db = read.open_catalogue(built() / "out" / "catalogue.db")
    try:
        return read.shelf(db, LiftId(lift))
    finally:
        db.close()


def small_chain(fault: str, lift: str = "clean", kit: str = "full", **asked: object) -> Chain:
    """A chain of the small library, its drills with their text."""
    shelf = small_shelf(lift)
    question = ChainQuestion(fault=FaultId(fault), have=shelf.kits[kit])._replace(**asked)
    db = read.open_catalogue(built() / "out" / "catalogue.db")
    try:
        return chain_with_text(db, chain(shelf, question))
    finally:
        db.close()
