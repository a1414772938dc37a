"""From what someone typed to an entry's id: an id, a name, another name, or a beginning of one."""

import sqlite3
from collections.abc import Iterable

from kb.errors import BadInput
from kb.words import fold

__all__ = ["resolve", "resolve_all", "resolve_any"]

Kind = str


def _matches(
    db: sqlite3.Connection, kind: Kind | None, key: str, lifts: frozenset[str], *, beginning: bool
) -> list[tuple[str, str]]:
    """What a key names, or begins to; only what serves one of `lifts` where there is any such."""
    where = "key >= ? and key < ?" if beginning else "key = ?"
    values: list[str] = [key, key + "\U0010ffff"] if beginning else [key]
    if kind is not None:
        where, values = where + " and kind = ?", [*values, kind]
    rows = db.execute(
        f"select distinct kind, id, lift_list from name where {where} order by kind, id", values
    ).fetchall()
    served = [row for row in rows if not lifts.isdisjoint(row[2].split())]
    return [(row[0], row[1]) for row in served or rows]


def _nearest(db: sqlite3.Connection, kind: Kind | None, key: str) -> tuple[str, ...]:
    from difflib import get_close_matches

    rows = db.execute("select key, id from name" + (" where kind = ?" if kind else ""), [kind] if kind else [])
    ids: dict[str, str] = dict(rows)
    close = get_close_matches(key, ids, n=6, cutoff=0.5)
    return tuple(dict.fromkeys(ids[each] for each in close))[:3]


def _with_parts(db: sqlite3.Connection, lift: str | None) -> frozenset[str]:
    parts = db.execute("select part from lift_part where lift = ?", (lift,)) if lift is not None else ()
    return frozenset({*([lift] if lift is not None else []), *(row[0] for row in parts)})


def resolve_any(
    db: sqlite3.Connection, text: str, *, kind: Kind | None = None, lift: str | None = None
) -> tuple[Kind, str]:
    """The kind and id of the entry meant: of that very id, else of that name, else of an unambiguous beginning.

    With a lift, of several by that name those are meant that serve it or one of its parts.
    Raises BadInput with the nearest ids when nothing, or more than one thing, is meant.
    """
    key = fold(text)
    what = kind or "entry"
    if not key:
        raise BadInput(f"an empty name is no {what}")
    lifts = _with_parts(db, lift)
    for own in _matches(db, kind, key, lifts, beginning=False):
        if fold(own[1]) == key:
            return own
    for beginning in (False, True):
        found = _matches(db, kind, key, lifts, beginning=beginning)
        if found and not beginning:  # a lift and the drill that is the whole of it may share a name: the lift is meant
            found = [each for each in found if each[0] == "lift"] or found
        if len(found) == 1:
            return found[0]
        if len(found) > 1:
            ids = tuple(dict.fromkeys(each for _, each in found))
            raise BadInput(f"{text!r} could mean several", nearest=ids[:6])
    raise BadInput(f"there is no {what} {text!r}", nearest=_nearest(db, kind, key))


def resolve(db: sqlite3.Connection, kind: Kind, text: str, *, lift: str | None = None) -> str:
    """The id of the entry of one kind that is meant, rather one of a lift; BadInput with the nearest ids otherwise."""
    return resolve_any(db, text, kind=kind, lift=lift)[1]


def resolve_all(db: sqlite3.Connection, kind: Kind, texts: Iterable[str]) -> tuple[str, ...]:
    """Each text's id, in order, repeats left out."""
    return tuple(dict.fromkeys(resolve(db, kind, text) for text in texts if text.strip()))
