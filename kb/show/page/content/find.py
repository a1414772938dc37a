"""What was found for a coach's words."""

import sqlite3
from typing import NamedTuple

from kb.ask.cautions import AFTER
from kb.ask.cleared import TICKED
from kb.ask.find import Findings, find
from kb.ask.read import sections
from kb.show.as_json import find_json
from kb.show.coach_words import listed, plain_markdown
from kb.show.is_it import is_it
from kb.show.page.page import Link, Page

__all__ = ["Found", "empty_page", "find_page"]


class Found(NamedTuple):
    """The words, and what they may mean; a caution stands alone, or first with `after` below it.

    `is_it` is how the first fault looks, and what is mistaken for it; `may_clear` and `cleared` whether
    it can be said, or was, that the lifter is free of it and cleared.
    """

    words: str
    caution: str
    after: str
    faults: tuple[Link, ...]
    drills: tuple[Link, ...]
    is_it: tuple[str, ...] = ()
    may_clear: bool = False
    cleared: bool = False
    if_cleared: str = TICKED


def find_page(db: sqlite3.Connection, words: str, *, cleared: bool = False) -> Page:
    """The page for some words; with none, the empty field."""
    if not words.strip():
        return empty_page()
    found = find(db, words, cleared=cleared)
    ids = [hit.id for hit in found.faults[:1]]
    first = sections(db, "fault", ids)[ids[0]] if ids else {}
    return _page(words, found, tuple(plain_markdown(text) for text in is_it(first)), cleared=cleared)


def empty_page() -> Page:
    """The page with its field empty."""
    return _page("", None, ())


def _page(words: str, found: Findings | None, looks: tuple[str, ...], *, cleared: bool = False) -> Page:
    faults, drills = (found.faults, found.drills) if found else ((), ())
    held = Found(
        words,
        found.caution or "" if found else "",
        AFTER,
        tuple(Link(hit.name, "fault", hit.id, listed(hit.lifts)) for hit in faults),
        tuple(Link(hit.name, "drill", hit.id, listed(hit.lifts)) for hit in drills),
        looks,
        found.may_clear if found else False,
        cleared,
    )
    data = find_json(found) if found else None
    return Page("find", "Find", "find", held, data=data, scripts=("index.js", "find.js"))
