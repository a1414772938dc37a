"""The catalogue's rows that no entry holds: what follows from all entries together, names and words to search."""

import sys
from array import array
from collections.abc import Iterable, Iterator, Mapping
from itertools import chain
from typing import Any

from kb.dials import spans
from kb.make.files import Kind
from kb.make.library import Library
from kb.make.order import groups_of, layers, must_pass, thin
from kb.make.rows import Entry, Row, Rows, compact, sections_of
from kb.make.steps import profiles, step_rows
from kb.speech import stems
from kb.terms import Catch, Drill, Fault, Item, Lift, Load, Position, Speed, Stage
from kb.words import fold

__all__ = ["DERIVED_ROWS", "step_tables"]


def _scale(_: Library) -> Iterator[Row]:
    for dial, members in (("stage", Stage), ("speed", Speed), ("load", Load), ("catch", Catch)):
        for member in members:
            yield dial, int(member), member.word


def _gateway(library: Library) -> Iterator[Row]:
    lifts = library.lifts.values()
    passed = must_pass(groups_of(library.drills), [lift.drill for lift in lifts])
    return ((lift.id, drill) for lift in lifts for drill in sorted(passed[lift.drill]))


def _layer(library: Library) -> Iterator[Row]:
    for lift in library.lifts.values():
        for stage, ids in layers(library.drills, lift).items():
            for n, drill in enumerate(ids):
                yield lift.id, drill, stage.word, n


def _thin_fault(library: Library) -> Iterator[Row]:
    for lift in library.lifts.values():
        for fault, cause, drills in thin(library, lift):
            yield fault, lift.id, cause, drills


def _entries(library: Library) -> Iterator[tuple[Kind, Entry]]:
    kinds: tuple[tuple[Kind, Mapping[Any, Entry]], ...] = (
        ("lift", library.lifts),
        ("position", library.positions),
        ("fault", library.faults),
        ("equipment", library.items),
        ("drill", library.drills),
    )
    for kind, entries in kinds:
        for entry in entries.values():
            yield kind, entry


def _lifts_of(entry: Entry) -> str:
    if isinstance(entry, (Fault, Drill)):
        return " ".join(dict.fromkeys(entry.lifts))
    return entry.id if isinstance(entry, Lift) else ""


def _name(library: Library) -> Iterator[Row]:
    rows = {
        (fold(name), kind, entry.id): name
        for kind, entry in _entries(library)
        for name in reversed((entry.name, *entry.also, entry.id))
    }
    lifts = {(kind, entry.id): _lifts_of(entry) for kind, entry in _entries(library)}
    for (key, kind, entry_id), name in sorted(rows.items()):
        yield key, kind, entry_id, name, lifts[kind, entry_id]


def _words(kind: Kind, entry: Entry) -> Iterator[str]:
    """All that an entry says in prose, names and sources aside."""
    yield from (text for heading, text in sections_of(kind, entry.sections).items() if heading != "Sources")
    if isinstance(entry, Fault):
        yield from (cause.text for cause in entry.causes)
        yield from (part for tell in entry.tells for part in (tell.do, tell.look))
    elif isinstance(entry, Drill):
        yield entry.standard.seen
        yield from (regression.eases for regression in entry.regressions)
    elif isinstance(entry, Position):
        yield from (entry.bar, entry.contact)
    elif isinstance(entry, Item):
        yield from (stand_in.lost for stand_in in entry.stand_ins)


def _search(library: Library) -> Iterator[Row]:
    for kind, entry in _entries(library):
        also = "\n".join((*entry.also, entry.id.replace("-", " ")))
        yield kind, entry.id, entry.name, also, "\n".join(_words(kind, entry))


def _said(library: Library) -> Iterator[Row]:
    """Stems worked out here, once, rather than whenever something is looked for."""
    for kind, entry in _entries(library):
        if not isinstance(entry, Fault | Drill):
            continue
        prose = entry.sections if isinstance(entry, Fault) else {}
        names = _stemmed([entry.name, *entry.also, entry.id])
        heard = _stemmed(line[2:] for line in prose.get("Heard", "").splitlines() if line.startswith("- "))
        causes = " ".join(cause.text for cause in entry.causes) if isinstance(entry, Fault) else ""
        looks = stems(prose.get("Looks like", ""))
        words = [sorted({*chain.from_iterable(each)}) for each in (names, heard, [looks], [stems(causes)])]
        phrases = dict.fromkeys((*names, *heard))
        text = () if isinstance(entry, Fault) else dict.fromkeys(stems("\n".join(_words(kind, entry))))
        yield kind, entry.id, compact(list(phrases)), compact(words), " ".join(text)


def _stemmed(phrases: Iterable[str]) -> list[tuple[str, ...]]:
    """The stems of each phrase that has any, each once."""
    stemmed = (tuple(sorted(set(stems(phrase)))) for phrase in phrases)
    return [each for each in stemmed if each]


def _little(row: "array[int]") -> bytes:
    if sys.byteorder == "big":  # pragma: no cover
        row = array("H", row)
        row.byteswap()
    return row.tobytes()


def step_tables(library: Library) -> tuple[list[Row], list[Row]]:
    """The rows of `profile` and of `step_row`, for every lift."""
    places: list[Row] = []
    steps: list[Row] = []
    for lift in library.lifts.values():
        found = profiles(lift, library.drills, library.items)
        places += [(lift.id, n, *map(int, dials)) for n, dials in enumerate(found)]
        sizes, least = step_rows(found, spans(lift))
        steps += [(lift.id, n, _little(a), _little(b)) for n, (a, b) in enumerate(zip(sizes, least, strict=True))]
    return places, steps


DERIVED_ROWS: Rows = {
    "scale": _scale,
    "gateway": _gateway,
    "layer": _layer,
    "thin_fault": _thin_fault,
    "name": _name,
    "said": _said,
    "search": _search,
}
"""Table to the function that gives its rows, in the order in which they are written."""
