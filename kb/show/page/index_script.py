"""What the pages' own search and list of gear run on, as one plain script: it loads from a folder as from a server.

The tables are those that kb/ask/find.py uses, word for word, and find.js reads them the same way; a test asks
both the same questions.
"""

import sqlite3
from collections.abc import Mapping
from typing import Any

from kb import speech
from kb.ask import cautions, cleared, cues, denied, find, in_passing, mended, misspelt, never, read, youth
from kb.ask.minors import MINORS
from kb.show.coach_words import plain_markdown
from kb.show.is_it import is_it
from kb.show.page.inert import inert
from kb.show.page.stock import Stock
from kb.terms import Stage

__all__ = ["chains_script", "index_script"]


def chains_script(names: dict[str, str]) -> str:
    """The page of each prepared question, "fault cause lift kit", as a plain script."""
    return f"window.drillpathChains={inert(names, sort_keys=True)};\n"


def index_script(db: sqlite3.Connection, stock: Stock) -> str:
    """What is searched and what gear does, as a plain script."""
    texts = dict(db.execute("select id, text from search where kind = 'drill'"))
    keys: dict[str, list[str]] = {}
    for key, entry_id in db.execute("select key, id from name where kind in ('fault', 'drill') order by key"):
        keys.setdefault(entry_id, []).append(key)
    held: dict[str, Any] = {
        "looks": {fault: _looks(text) for fault, text in read.sections(db, "fault", stock.faults).items()},
        "faults": [_document(each, keys, "") for each in find.fault_documents(db)],
        "drills": [_document(each, keys, texts.get(each.id, "")) for each in find.drill_documents(db)],
        "points": {fault: sorted(points) for fault, points in find.points_of(db).items()},
        "speech": {
            "empty": sorted(speech.EMPTY),
            "irregular": speech.IRREGULAR,
            "pairs": {" ".join(pair): list(meant) for pair, meant in speech.PAIRS.items()},
            "endings": [list(pair) for pair in speech.ENDINGS],
            "same": [" ".join(group) for group in speech.SAME],
        },
        "cues": [[sorted(cue), list(fault)] for cue, fault in cues.cue_table()],
        "spots": [[list(points), sorted(words)] for points, words in cues.spot_table()],
        "caution": {
            "says": cautions.CAUTION,
            "urgent": cautions.URGENT,
            "atOnce": cautions.AT_ONCE.pattern,
            "today": cautions.TODAY,
            "sameDay": cautions.SAME_DAY.pattern,
            "word": cautions.WORD.pattern,
            "phrase": cautions.PHRASE.pattern,
            "spelt": misspelt.SPELT,
            "harmless": sorted(misspelt.HARMLESS),
            "denied": denied.DENIED.pattern,
            "hedged": denied.HEDGED.pattern,
            "sentence": denied.SENTENCE.pattern,
            "mended": mended.MENDED.pattern,
            "cleared": mended.CLEARED.pattern,
            "uncleared": mended.UNCLEARED.pattern,
            "mends": mended.MENDS.pattern,
            "unsettled": mended.UNSETTLED.pattern,
            "never": never.NEVER_CLEARED.pattern,
            "grownInYear": never.GROWN_IN_YEAR.pattern,
            "namedChild": never.NAMED_CHILD.pattern,
            "namedYouth": youth.NAMED_YOUTH.pattern,
            "neverSpelt": never.NEVER_SPELT,
            "ifCleared": cleared.TICKED,
            "mild": in_passing.MILD.pattern,
            "hard": in_passing.HARD.pattern,
            "signs": in_passing.SIGNS.pattern,
            "over": in_passing.OVER.pattern,
            "notOver": in_passing.NOT_OVER.pattern,
            "stays": in_passing.STAYS.pattern,
            "otherwise": cautions.OTHERWISE.pattern,
            "vital": in_passing.VITAL.pattern,
            "inPassing": in_passing.IN_PASSING,
            "leastWords": in_passing.LEAST_WORDS,
            "minors": [[minor.says, minor.speaks.pattern, minor.said.pattern, minor.stays.pattern] for minor in MINORS],
            "after": cautions.AFTER,
        },
        "gear": _gear(stock),
    }
    return f"window.drillpathIndex={inert(held, sort_keys=True)};\n"


def _document(each: find.Document, keys: dict[str, list[str]], text: str) -> list[Any]:
    """A fault's or drill's words: names as stems, what each stem counts for, a drill's text as stems, exact names."""
    weights: dict[str, list[str]] = {}
    for word, worth in each.words.items():
        weights.setdefault(f"{worth:g}", []).append(word)
    words = {worth: " ".join(sorted(stems)) for worth, stems in weights.items()}
    more = " ".join(sorted(set(speech.stems(text))))
    names = [" ".join(sorted(name)) for name in each.names]
    return [each.id, each.name, list(each.lifts), names, words, more, keys.get(each.id, [])]


def _looks(text: Mapping[str, str]) -> list[str]:
    """How a fault is known again, as it stands below what was found."""
    return [plain_markdown(each) for each in is_it(text)]


def _gear(stock: Stock) -> dict[str, Any]:
    """What decides whether a drill can be done: its gear, its loads, and what stands in with which cap of load."""
    return {
        "items": {
            item.id: [item.name, [[each.item, int(each.load)] for each in item.stand_ins]]
            for item in stock.items.values()
        },
        "stages": [stage.word for stage in Stage],
        "drills": [
            [
                drill.id,
                drill.name,
                drill.stage.word,
                int(drill.load[0]),
                list(drill.equipment),
                sorted({said.fault for said in drill.faults}),
            ]
            for drill in sorted(stock.drills.values(), key=lambda drill: drill.name)
        ],
        "kits": {kit: sorted(items) for kit, items in stock.kits.items()},
    }
