"""From a coach's own words to the faults, then the drills, that they mean."""

import json
import sqlite3
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from itertools import chain
from math import log
from typing import NamedTuple

from kb.ask.cautions import care_of
from kb.ask.cues import points_named
from kb.ask.heard import LIFTS, Heard, heard
from kb.terms import LiftId
from kb.words import fold

__all__ = ["Document", "Findings", "Hit", "drill_documents", "fault_documents", "find", "points_of"]

MOST = 6
"""Hits of each kind at most."""

LONGEST = 1000
"""Characters that are searched for; a caution is looked for in all of them."""

NAMED, HEARD, LOOKS, CAUSED = 3.0, 2.0, 1.0, 0.75
"""What a word counts for where it stands: in a name, in what is heard of it, in what it looks like, in the rest."""

WHOLE_NAME = 16.0
"""What it adds to match all of one of a fault's names, falling with what either says that the other doesn't."""

NEAREST, LESS, BEST = 6, 0.8, 1.5
"""How many of its names count so, what each is worth beside the nearer one, and the nearest of all beside the rest:
several that half fit say something, one that fits says more."""

LIFT_WORD = 0.25
"""What a lift's own word counts for among faults: it says where to look, not for what."""

PARTICLE, PARTICLES = 0.7, ("off", "out", "over", "down", "before", "after", "under")
"""What little words of place count for; they stand in many names by chance."""

ELSEWHERE, HERE = 0.95, 1.05
"""What a fault's score is multiplied by if its part of the lift isn't one that the words speak of, or is."""

EXACT = 1.5
"""The same, if the words are one of its names."""

OTHER_LIFT = 0.4
"""The same, if the words name a lift that doesn't have it."""

READ = 24
"""Drills, best by their names, whose text is read."""


class Hit(NamedTuple):
    """A fault or drill that may be meant; `score` orders hits of one question, highest first."""

    kind: str
    id: str
    name: str
    lifts: tuple[str, ...]
    score: float


class Findings(NamedTuple):
    """What was found; with a caution, nothing else unless `care_of` lets the rest be answered.

    `may_clear`: it would be, were it said that the lifter is free of it and cleared.
    """

    caution: str | None
    faults: tuple[Hit, ...] = ()
    drills: tuple[Hit, ...] = ()
    may_clear: bool = False


class Document(NamedTuple):
    """One fault's or drill's words: the stems of each of its names, and every stem with what it counts for."""

    id: str
    name: str
    lifts: tuple[str, ...]
    names: Sequence[Sequence[str]]
    words: dict[str, float]


def _lifts(db: sqlite3.Connection, kind: str) -> dict[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    for entry_id, lift in db.execute(f"select {kind}, lift from {kind}_lift order by {kind}, lift"):
        found[entry_id] = (*found.get(entry_id, ()), lift)
    return found


PLACES = (CAUSED, LOOKS, HEARD, NAMED)
"""What a word counts for where it stands, the places that count for most last."""


def _held(words: Sequence[Sequence[str]]) -> dict[str, float]:
    """An entry's words; one that stands in several places counts for the best of them."""
    held: dict[str, float] = {}
    for worth, stems_there in zip(PLACES, reversed(words), strict=True):
        held |= dict.fromkeys(stems_there, worth)
    return held


def _documents(db: sqlite3.Connection, kind: str) -> list[Document]:
    lifts = _lifts(db, kind)
    rows = db.execute(
        f"select {kind}.id, name, '[' || phrases || ',' || words || ']' from {kind} join said on said.id = {kind}.id"
        f" where said.kind = ? order by {kind}.id",
        (kind,),
    ).fetchall()
    # taken apart all at once: a call for each would take as long again
    told = json.loads(f"[{','.join(row[2] for row in rows)}]")
    return [
        Document(entry_id, name, lifts.get(entry_id, ()), phrases, _held(words))
        for (entry_id, name, _), (phrases, words) in zip(rows, told, strict=True)
    ]


def fault_documents(db: sqlite3.Connection) -> list[Document]:
    """Every fault's words: its names, what is heard of it, what it looks like, its causes."""
    return _documents(db, "fault")


def drill_documents(db: sqlite3.Connection) -> list[Document]:
    """Every drill's words: its names alone."""
    return _documents(db, "drill")


class _Asked(NamedTuple):
    """A question's words against the words of one kind of entry."""

    worths: tuple[tuple[tuple[str, float], ...], ...]
    """For each word said, the words it may stand for, each with what it's worth times how rare it is."""
    best: dict[str, float]
    """For each of those words, what it's worth at most, times how rare it is."""
    standing: Mapping[str, Sequence[tuple[int, float]]]
    """For each of those words, the words said that it may stand for, by their place, with what it's worth for each."""
    said: float
    """How much was said."""
    rarity: Mapping[str, float]


def _asked(words: Heard, documents: Sequence[Document], lift_word: float) -> _Asked:
    counts = Counter(chain.from_iterable(document.words for document in documents))
    rarity = {word: log(1 + len(documents) / count) for word, count in counts.items()}
    for word in LIFTS:
        if word in rarity:
            rarity[word] *= lift_word
    for word in PARTICLES:
        if word in rarity:
            rarity[word] *= PARTICLE
    worths = []
    best: dict[str, float] = {}
    for each in words.worths:
        known = tuple((word, worth * rarity[word]) for word, worth in each.items() if word in rarity)
        if known:
            worths.append(known)
        for word, worth in known:
            best[word] = max(best.get(word, 0.0), worth)
    said = sum(max(worth for _, worth in each) for each in worths)
    standing: dict[str, list[tuple[int, float]]] = {}
    for at, meant in enumerate(worths):
        for word, worth in meant:
            standing.setdefault(word, []).append((at, worth))
    return _Asked(tuple(worths), best, standing, said, rarity)


def _score(document: Document, asked: _Asked) -> float:
    words, best = document.words, asked.best
    said: dict[int, float] = {}
    for word in words.keys() & best.keys():
        counts = words[word]
        for at, worth in asked.standing[word]:
            if worth * counts > said.get(at, 0.0):
                said[at] = worth * counts
    if not said:
        return 0.0
    rarity, whole = asked.rarity, []
    for name in document.names:
        common = [word for word in name if word in best]
        if common:
            held = sum([rarity[word] for word in name])
            whole.append(_whole(common, held, asked))
    nearest = sorted(whole, reverse=True)[:NEAREST]
    return sum(said.values()) + WHOLE_NAME * sum(near * (LESS**n if n else BEST) for n, near in enumerate(nearest))


def _whole(common: Sequence[str], held: float, asked: _Asked) -> float:
    """How nearly a name says what was asked, no more and no less: weighted Dice of the two, by the words in both."""
    from_asked: dict[int, float] = {}
    from_name = 0.0
    for word in common:
        from_name += asked.best[word]
        for at, worth in asked.standing[word]:
            if worth > from_asked.get(at, 0.0):
                from_asked[at] = worth
    return (sum(from_asked.values()) + from_name) / (asked.said + held)


def _exact(db: sqlite3.Connection, kind: str, text: str) -> frozenset[str]:
    rows = db.execute("select id from name where key = ? and kind = ?", (fold(text), kind))
    return frozenset(row[0] for row in rows)


def _best(kind: str, scored: Iterable[tuple[Document, float]], exact: frozenset[str]) -> tuple[Hit, ...]:
    hits = [
        Hit(kind, document.id, document.name, document.lifts, round(score * (EXACT if document.id in exact else 1), 3))
        for document, score in scored
        if score > 0
    ]
    best = max((hit.score for hit in hits), default=0.0)
    kept = [hit for hit in hits if hit.score >= best / 3]
    return tuple(sorted(kept, key=lambda hit: (-hit.score, hit.id))[:MOST])


def points_of(db: sqlite3.Connection) -> dict[str, set[str]]:
    """The points of a lift that each fault is seen at."""
    order: dict[str, list[str]] = {}
    for lift, point in db.execute("select lift, point from lift_point order by lift, n"):
        order.setdefault(lift, []).append(point)
    longest = max(order.values(), key=len, default=[])
    found: dict[str, set[str]] = {}
    for fault, first, last in db.execute("select fault, first, last from fault_phase"):
        whole = longest[longest.index(first) : longest.index(last) + 1] if {first, last} <= set(longest) else ()
        found.setdefault(fault, set()).update(whole, (first, last))
    return found


def _allowed(db: sqlite3.Connection, lift: LiftId | None) -> frozenset[str]:
    """The lift asked for, with its parts; nothing when none was."""
    if lift is None:
        return frozenset()
    return frozenset({lift, *(row[0] for row in db.execute("select part from lift_part where lift = ?", (lift,)))})


def _of_lift(document: Document, allowed: frozenset[str]) -> bool:
    return not allowed or not allowed.isdisjoint(document.lifts)


def _ranked_faults(
    db: sqlite3.Connection, documents: list[Document], words: Heard, lifts: frozenset[str], exact: frozenset[str]
) -> tuple[Hit, ...]:
    asked = _asked(words, documents, LIFT_WORD)
    meant, points = points_named(words.all), points_of(db)
    scored = []
    for document in documents:
        if _of_lift(document, lifts):
            score = _score(document, asked)
            if meant:
                score *= ELSEWHERE if meant.isdisjoint(points.get(document.id, ())) else HERE
            if words.lifts and words.lifts.isdisjoint(document.lifts):
                score *= OTHER_LIFT
            scored.append((document, score))
    return _best("fault", scored, exact)


def _ranked_drills(
    db: sqlite3.Connection, documents: list[Document], words: Heard, lifts: frozenset[str], exact: frozenset[str]
) -> tuple[Hit, ...]:
    """By their names first; the text is read of the best alone."""
    asked = _asked(words, documents, 1.0)
    served = [document for document in documents if _of_lift(document, lifts)]
    by_name = sorted(
        ((_score(document, asked), document) for document in served), key=lambda pair: (-pair[0], pair[1].id)
    )
    first = [document for score, document in by_name[:READ] if score]
    marks = ", ".join("?" * len(first))
    texts = db.execute(
        f"select id, text from said where kind = 'drill' and id in ({marks})", [each.id for each in first]
    )
    read = dict(texts.fetchall())
    whole = (each._replace(words=dict.fromkeys(read[each.id].split(), CAUSED) | each.words) for each in first)
    return _best("drill", ((document, _score(document, asked)) for document in whole), exact)


def find(db: sqlite3.Connection, text: str, *, lift: LiftId | None = None, cleared: bool = False) -> Findings:
    """The faults, then the drills, that a coach's words mean, best first.

    Words of pain and the like are answered by the caution alone, or first (`care_of` says when, and what `cleared`
    is). Misspellings, plurals, word order and other names are allowed for. A lift given leaves only what serves it or
    its parts; one that the words name puts the others' faults back.
    """
    caution, rest, may_clear = care_of(text, cleared=cleared)
    if rest is None:
        return Findings(caution, may_clear=may_clear)
    text = rest[:LONGEST]
    faults, drills = fault_documents(db), drill_documents(db)
    known = frozenset().union(*(document.words for document in (*faults, *drills)))
    words = heard(text, known)
    lifts = _allowed(db, lift)
    return Findings(
        caution,
        _ranked_faults(db, faults, words, lifts, _exact(db, "fault", text)),
        _ranked_drills(db, drills, words, lifts, _exact(db, "drill", text)),
    )
