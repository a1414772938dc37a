"""What was found for a coach's words."""

import sqlite3
from typing import NamedTuple

from kb.ask.cautions import AFTER
from kb.ask.find import Findings, find
from kb.show.as_json import find_json
from kb.show.coach_words import listed
from kb.show.page.page import Link, Page

__all__ = ["Found", "empty_page", "find_page"]


class Found(NamedTuple):
    """The words, and what they may mean; a caution stands alone, or first with `after` below it."""

    words: str
    caution: str
    after: str
    faults: tuple[Link, ...]
    drills: tuple[Link, ...]


def find_page(db: sqlite3.Connection, words: str) -> Page:
    """The page for some words; with none, the empty field."""
    if not words.strip():
        return empty_page()
    found = find(db, words)
    return _page(words, found)


def empty_page() -> Page:
    """The page with its field empty."""
    return _page("", None)


def _page(words: str, found: Findings | None) -> Page:
    faults, drills = (found.faults, found.drills) if found else ((), ())
    held = Found(
        words,
        found.caution or "" if found else "",
        AFTER,
        tuple(Link(hit.name, "fault", hit.id, listed(hit.lifts)) for hit in faults),
        tuple(Link(hit.name, "drill", hit.id, listed(hit.lifts)) for hit in drills),
    )
    data = find_json(found) if found else None
    return Page("find", "Find", "find", held, data=data, scripts=("index.js", "find.js"))
