"""All entries of a library together, cross-checked.

`load` reads every entry, keeps what each parsed to if it is told where, and reports all that is wrong at once.
"""

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from kb.errors import Problem
from kb.terms import Drill, DrillId, Fault, FaultId, Item, ItemId, Lift, LiftId, Position, PositionId

if TYPE_CHECKING:
    from kb.make.files import EntryFile

__all__ = ["Library", "Parsed", "Record", "Source", "load"]

Record = Lift | Position | Fault | Item | Drill


@dataclass(frozen=True, kw_only=True, slots=True)
class Source:
    """Where an entry was read: its file (relative to the library, with /) and the line of each part.

    `lines` maps a dotted path of front matter ("causes.1.earlier") or a section heading ("## Say") to
    its line; "" is the first line.
    """

    file: str
    lines: Mapping[str, int]

    def line(self, path: str) -> int:
        """The line of a part, or of the nearest part above it that has one."""
        while path and path not in self.lines:
            path = path.rpartition(".")[0]
        return self.lines.get(path, 1)


@dataclass(frozen=True, kw_only=True, slots=True)
class Parsed:
    """What one entry parsed to; `record` is None when its front matter can't be used."""

    record: Record | None
    source: Source
    problems: tuple[Problem, ...]


@dataclass(frozen=True, kw_only=True, slots=True)
class Library:
    """Every entry by kind and id, in id order, where each was read, and its structural problems.

    `files` are all that stand where an entry may, in order, also those that couldn't be used: what they
    are called is known, though not what they say.
    """

    root: Path
    lifts: Mapping[LiftId, Lift] = field(default_factory=dict)
    positions: Mapping[PositionId, Position] = field(default_factory=dict)
    faults: Mapping[FaultId, Fault] = field(default_factory=dict)
    items: Mapping[ItemId, Item] = field(default_factory=dict)
    drills: Mapping[DrillId, Drill] = field(default_factory=dict)
    sources: Mapping[str, Source] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()
    content_hash: str = ""
    files: tuple[str, ...] = ()

    @property
    def kits(self) -> Mapping[str, frozenset[ItemId]]:
        """Each named kit and its items; `full` is every item."""
        names = sorted({kit for item in self.items.values() for kit in item.kits})
        kits = {kit: frozenset(item.id for item in self.items.values() if kit in item.kits) for kit in names}
        return {**kits, "full": frozenset(self.items)}


def load(root: Path, *, parsed: Path | None = None) -> Library:
    """Read the library at `root`, the folder that holds drills/.

    Parameters
    ----------
    root
        The folder that holds drills/.
    parsed
        A file in which to keep what each entry parsed to, so that only changed entries are parsed the next
        time; a folder keeps it as entries.json. It may be deleted at any time.

    Returns
    -------
    Library
        With every structural problem there is, by file and line. Entries that can't be used are left out
        of the records; `content_hash` is the SHA-256 over each file's name and its bytes' SHA-256, in order.
    """
    from kb.make.files import find, read

    entries, problems = find(root)
    data: dict[str, bytes] = {}
    for entry in entries:
        found = read(root, entry)
        if isinstance(found, bytes):
            data[entry.file] = found
        else:
            problems.append(found)
    digests = {file: hashlib.sha256(bytes_).hexdigest() for file, bytes_ in data.items()}
    if parsed is not None and parsed.is_dir():
        parsed = parsed / "entries.json"
    results = _parsed(entries, data, digests, parsed)
    library = _assembled(root, entries, results)
    problems += (problem for result in results.values() for problem in result.problems)
    problems += _broken_rules(library)
    whole = hashlib.sha256("".join(f"{file}\0{digest}\n" for file, digest in digests.items()).encode())
    return replace(library, problems=tuple(sorted(set(problems))), content_hash=whole.hexdigest())


def _parsed(
    entries: "list[EntryFile]", data: Mapping[str, bytes], digests: Mapping[str, str], path: Path | None
) -> dict[str, Parsed]:
    """What each entry that could be read parsed to, by file; only what changed is parsed."""
    from kb.make import kept

    old = kept.read(path) if path is not None else {}
    new: dict[str, Any] = {}
    results: dict[str, Parsed] = {}
    for entry in entries:
        file = entry.file
        if file not in data:
            continue
        if file in old and old[file][0] == digests[file]:
            new[file] = old[file]
            results[file] = kept.parsed_from(entry.kind, file, old[file])
            continue
        from kb.make.entries import parse

        results[file] = parse(entry, data[file])
        if path is not None:
            new[file] = kept.plain_of(results[file], digests[file])
    if path is not None and new != old:
        kept.write(path, new)
    return results


def _assembled(root: Path, entries: "list[EntryFile]", results: Mapping[str, Parsed]) -> Library:
    """The records by kind and id; of entries that share an id, whatever their kinds, the first file's."""
    records: dict[str, dict[Any, Any]] = {"lift": {}, "position": {}, "fault": {}, "equipment": {}, "drill": {}}
    sources: dict[str, Source] = {}
    for entry in sorted(entries, key=lambda entry: (entry.id, entry.file)):
        if entry.id in sources:
            continue
        result = results.get(entry.file)
        sources[entry.id] = result.source if result else Source(file=entry.file, lines={"": 1})
        if result is not None and result.record is not None:
            records[entry.kind][entry.id] = result.record
    lifts = records["lift"]
    return Library(
        root=root,
        lifts={id_: _with_parts(lift, lifts) for id_, lift in lifts.items()},
        positions=records["position"],
        faults=records["fault"],
        items=records["equipment"],
        drills=records["drill"],
        sources=sources,
        files=tuple(entry.file for entry in entries),
    )


def _with_parts(lift: Lift, lifts: Mapping[LiftId, Lift]) -> Lift:
    """A lift of parts with their timelines in order; as it is while a part of it can't be used."""
    parts = [lifts[part] for part in lift.parts if part in lifts]
    if not parts or len(parts) < len(lift.parts):
        return lift
    timeline = tuple(timed for part in parts for timed in part.timeline)
    return lift._replace(timeline=timeline, part_points=tuple(part.points for part in parts))


def _broken_rules(library: Library) -> list[Problem]:
    from kb.make.structure.table import RULES

    return [problem for rule in RULES for problem in rule.function(library)]
