"""Answers whose drills have their text: a catalogue's records come without it, as most questions don't need it."""

import sqlite3

from kb.ask import read
from kb.ask.chain import Chain
from kb.ask.route import Entry

__all__ = ["chain_with_text", "entries_with_text"]


def chain_with_text(db: sqlite3.Connection, found: Chain, tried: frozenset[str] = frozenset()) -> Chain:
    """A chain whose drills and fault have their text: what to say is in it, and what to look at first.

    What repeats a word that was `tried` isn't said.
    """
    fault = found.matter.fault
    told = fault._replace(sections=read.sections(db, "fault", [fault.id])[fault.id])
    routes = tuple(route._replace(entries=entries_with_text(db, route.entries, tried)) for route in found.routes)
    matter = found.matter._replace(fault=told)
    return found._replace(matter=matter, routes=routes, strengthen=entries_with_text(db, found.strengthen, tried))


def entries_with_text(
    db: sqlite3.Connection, entries: tuple[Entry, ...], tried: frozenset[str] = frozenset()
) -> tuple[Entry, ...]:
    """Entries whose drills have their text, but for cues that repeat a word that was `tried`."""
    texts = read.sections(db, "drill", {entry.drill.id for entry in entries})
    if tried:
        from kb.ask.tried import untried

        texts = {each: {**text, "Say": untried(text.get("Say", ""), tried)} for each, text in texts.items()}
    return tuple(entry._replace(drill=entry.drill._replace(sections=texts[entry.drill.id])) for entry in entries)
