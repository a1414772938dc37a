"""There is no such page: the nearest that there are."""

import sqlite3
from typing import NamedTuple

from kb.ask.find import find
from kb.show.coach_words import human, listed
from kb.show.page.page import Link, Page

__all__ = ["Missing", "missing_page"]

LONGEST = 80
"""Characters of what was asked for that are said back."""


class Missing(NamedTuple):
    """What was asked for, and the nearest there is."""

    words: str
    caution: str
    near: tuple[Link, ...]


def missing_page(db: sqlite3.Connection, asked: str, *, status: int = 404) -> Page:
    """The page for an address that leads nowhere, or a question that can't be understood."""
    words = human(asked.rpartition("/")[2])[:LONGEST]
    found = find(db, words)
    near = [Link(hit.name, hit.kind, hit.id, listed(hit.lifts)) for hit in (*found.faults[:3], *found.drills[:3])]
    held = Missing(words, found.caution or "", tuple(near))
    return Page("missing", "There is no such page", "missing", held, status=status)
