"""From a coach's own words to the faults, then the drills, that they mean."""

import json
import sqlite3
from collections import Counter
from collections.abc import Iterable, Mapping
from math import log
from typing import NamedTuple

from kb.ask.cautions import caution_for
from kb.ask.speech import SAME, lifts_named, stem, stems
from kb.terms import LiftId
from kb.words import fold

__all__ = ["Findings", "Hit", "find"]

MOST = 6
"""Hits of each kind at most."""

WEIGHTS = {"names": 3.0, "text": 1.0}
"""What a word counts for where it stands; the names are what coaches call it."""

SAME_WORTH, NEAR_WORTH = 0.55, 0.7
"""What a word that means the same, or is spelt nearly so, is worth beside the word itself."""

WHOLE_NAME = 6.0
"""What it adds to match all of one of a fault's names, falling with what either says that the other doesn't."""


class Hit(NamedTuple):
    """A fault or drill that may be meant; `score` orders hits of one question, highest first."""

    kind: str
    id: str
    name: str
    lifts: tuple[str, ...]
    score: float


class Findings(NamedTuple):
    """What was found; with a caution, nothing else."""

    caution: str | None
    faults: tuple[Hit, ...] = ()
    drills: tuple[Hit, ...] = ()


class _Document(NamedTuple):
    """One fault's or drill's words: stems of each of its names, and of its text."""

    id: str
    name: str
    lifts: tuple[str, ...]
    names: tuple[frozenset[str], ...]
    text: frozenset[str]

    @property
    def words(self) -> frozenset[str]:
        return self.text.union(*self.names)


def _documents(db: sqlite3.Connection, kind: str) -> list[_Document]:
    lifts: dict[str, list[str]] = {}
    for entry_id, lift in db.execute(f"select {kind}, lift from {kind}_lift order by {kind}, lift"):
        lifts.setdefault(entry_id, []).append(lift)
    found = []
    rows = db.execute(
        f"select s.id, s.name, e.also, s.text from search s join {kind} e on e.id = s.id"
        " where s.kind = ? order by s.id",
        (kind,),
    )
    for entry_id, name, also, text in rows:
        names = (name, *json.loads(also), entry_id)
        found.append(
            _Document(
                entry_id,
                name,
                tuple(lifts.get(entry_id, ())),
                tuple(frozenset(stems(each)) for each in names),
                frozenset(stems(text)),
            )
        )
    return found


def _meanings() -> dict[str, frozenset[str]]:
    found: dict[str, set[str]] = {}
    for group in SAME:
        alike = {stem(word) for word in group}
        for word in alike:
            found.setdefault(word, set()).update(alike)
    return {word: frozenset(alike) for word, alike in found.items()}


def _near(word: str, vocabulary: Iterable[str]) -> frozenset[str]:
    """Words of the vocabulary spelt nearly as one that it lacks."""
    from difflib import get_close_matches

    return frozenset(get_close_matches(word, vocabulary, n=3, cutoff=0.75)) if len(word) > 2 else frozenset()


def _worths(word: str, vocabulary: frozenset[str], meanings: Mapping[str, frozenset[str]]) -> dict[str, float]:
    """The words a word may stand for, and what each is worth."""
    spelt = (
        {word: 1.0} if word in vocabulary or word in meanings else dict.fromkeys(_near(word, vocabulary), NEAR_WORTH)
    )
    worths = dict(spelt)
    for each, worth in spelt.items():
        for same in meanings.get(each, ()):
            worths[same] = max(worths.get(same, 0.0), worth * SAME_WORTH)
    return worths


def _score(document: _Document, asked: list[dict[str, float]], rarity: Mapping[str, float]) -> float:
    named = frozenset[str]().union(*document.names)
    total = 0.0
    for worths in asked:
        total += max(
            (
                worth * rarity.get(word, 0.0) * (WEIGHTS["names"] if word in named else WEIGHTS["text"])
                for word, worth in worths.items()
                if word in named or word in document.text
            ),
            default=0.0,
        )
    return total + max((_whole(name, asked, rarity) for name in document.names if name), default=0.0)


def _whole(name: frozenset[str], asked: list[dict[str, float]], rarity: Mapping[str, float]) -> float:
    """How nearly a name says what was asked, no more and no less: weighted Dice of the two, times its worth."""
    said = sum(max(rarity.get(word, 0.0) for word in worths) for worths in asked if worths)
    held = sum(rarity.get(word, 0.0) for word in name)
    if not said or not held:
        return 0.0
    from_asked = sum(
        max((worth * rarity.get(word, 0.0) for word, worth in worths.items() if word in name), default=0.0)
        for worths in asked
    )
    from_name = sum(
        rarity.get(word, 0.0) * max((worths.get(word, 0.0) for worths in asked), default=0.0) for word in name
    )
    return WHOLE_NAME * (from_asked + from_name) / (said + held)


def _ranked(kind: str, documents: list[_Document], text: str, lifts: frozenset[str]) -> tuple[Hit, ...]:
    counts = Counter(word for document in documents for word in document.words)
    rarity = {word: log(1 + len(documents) / count) for word, count in counts.items()}
    meanings = _meanings()
    asked = [_worths(word, frozenset(counts), meanings) for word in dict.fromkeys(stems(text))]
    hits = [
        Hit(kind, document.id, document.name, document.lifts, round(score, 3))
        for document in documents
        if (not lifts or lifts & set(document.lifts)) and (score := _score(document, asked, rarity)) > 0
    ]
    best = max((hit.score for hit in hits), default=0.0)
    kept = [hit for hit in hits if hit.score >= best / 3]
    return tuple(sorted(kept, key=lambda hit: (-hit.score, hit.id))[:MOST])


def _lifts_meant(db: sqlite3.Connection, text: str, lift: LiftId | None) -> frozenset[str]:
    """The lifts whose faults and drills count: the one asked for with its parts, else those the words name."""
    if lift is not None:
        return frozenset({lift, *(row[0] for row in db.execute("select part from lift_part where lift = ?", (lift,)))})
    named = lifts_named(text)
    return named | {"clean-and-jerk"} if {"clean", "jerk"} <= named else named


def find(db: sqlite3.Connection, text: str, *, lift: LiftId | None = None) -> Findings:
    """The faults, then the drills, that a coach's words mean, best first.

    Words of pain and the like are answered by the caution alone. Misspellings, plurals, word order and
    other names are allowed for; a lift named in the words, or given, leaves only what serves it.
    """
    caution = caution_for(text)
    if caution is not None:
        return Findings(caution)
    if not fold(text):
        return Findings(None)
    lifts = _lifts_meant(db, text, lift)
    return Findings(
        None,
        _ranked("fault", _documents(db, "fault"), text, lifts),
        _ranked("drill", _documents(db, "drill"), text, lifts),
    )
