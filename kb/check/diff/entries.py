"""Entries that were added, removed, renamed or changed, and what of them."""

from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

from kb.make.library import Library
from kb.plain import to_plain

__all__ = ["Changed", "Entries", "Field", "Key", "entries_between", "in_new_names", "renamed_to"]

Key = tuple[str, str]
"""An entry's kind and id."""

_CALLED = {"for_positions": "for"}
"""Fields that an entry calls otherwise than its record does."""

_WORKED_OUT = frozenset({"id", "sections", "part_points"})
"""What isn't written as a field: it is the file's name, its text, or follows from other entries."""


class Field(NamedTuple):
    """A field of front matter that differs, its values as plain data; None where it isn't set."""

    name: str
    before: Any
    after: Any


class Changed(NamedTuple):
    """An entry on both sides: its id before and after, the fields and the sections that differ."""

    kind: str
    before: str
    after: str
    fields: tuple[Field, ...]
    sections: tuple[str, ...]


class Entries(NamedTuple):
    """Entries of either side alone, those whose id alone is another, and those that differ, each in order."""

    added: tuple[Key, ...]
    removed: tuple[Key, ...]
    renamed: tuple[Changed, ...]
    changed: tuple[Changed, ...]


def _records(library: Library) -> dict[Key, Any]:
    kinds: tuple[tuple[str, Mapping[Any, Any]], ...] = (
        ("lift", library.lifts),
        ("position", library.positions),
        ("fault", library.faults),
        ("equipment", library.items),
        ("drill", library.drills),
    )
    return {(kind, id_): record for kind, records in kinds for id_, record in records.items()}


def renamed_to(before: Library, after: Library) -> dict[Key, Key]:
    """Entries whose id is another now: of one kind, each on one side alone, and one keeps the other's id in `also`."""
    old, new = _records(before), _records(after)
    found: dict[Key, Key] = {}
    for gone in sorted(old.keys() - new.keys()):
        for come in sorted(new.keys() - old.keys() - set(found.values())):
            if gone[0] == come[0] and (gone[1] in new[come].also or come[1] in old[gone].also):
                found[gone] = come
                break
    return found


def in_new_names(value: Any, names: Mapping[str, str]) -> Any:
    """Plain data with each text that is an old id, and nothing else, as the new one."""
    if isinstance(value, str):
        return names.get(value, value)
    if isinstance(value, list):
        return [in_new_names(each, names) for each in value]
    if isinstance(value, dict):
        return {names.get(key, key): in_new_names(each, names) for key, each in value.items()}
    return value


def entries_between(before: Library, after: Library) -> Entries:
    """What differs between two libraries' entries."""
    old, new = _records(before), _records(after)
    renamed = renamed_to(before, after)
    names = {gone[1]: come[1] for gone, come in renamed.items()}
    both = [(key, key) for key in sorted(old.keys() & new.keys())]
    same = [
        Changed(was[0], was[1], now[1], *_between(old[was], new[now], names, other_names=was[1] != now[1]))
        for was, now in (*sorted(renamed.items()), *both)
    ]
    return Entries(
        added=tuple(sorted(new.keys() - old.keys() - set(renamed.values()))),
        removed=tuple(sorted(old.keys() - new.keys() - renamed.keys())),
        renamed=tuple(each for each in same if each.before != each.after),
        changed=tuple(each for each in same if each.before == each.after and (each.fields or each.sections)),
    )


def _between(
    before: Any, after: Any, names: Mapping[str, str], *, other_names: bool
) -> tuple[tuple[Field, ...], tuple[str, ...]]:
    old, new = to_plain(before), to_plain(after)
    ids = {before.id, after.id} if other_names else set()
    fields = tuple(_fields(old, new, names, ids))
    was, now = dict(before.sections), dict(after.sections)
    sections = tuple(sorted(each for each in was.keys() | now.keys() if was.get(each) != now.get(each)))
    return fields, sections


def _fields(old: Any, new: Any, names: Mapping[str, str], ids: set[str]) -> Iterator[Field]:
    for name in sorted((old.keys() | new.keys()) - _WORKED_OUT):
        was, now = old.get(name), new.get(name)
        if name == "also" and ids:  # that an old id is kept there says no more than that it is renamed
            was, now = ([each for each in said or [] if each not in ids] for said in (was, now))
        if in_new_names(was, names) != in_new_names(now, names):
            yield Field(_CALLED.get(name, name), was, now)
