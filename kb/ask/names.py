"""From what someone typed to an entry's id: an id, a name, another name, or a beginning of one."""

import sqlite3
from collections.abc import Iterable

from kb.errors import BadInput
from kb.words import fold

__all__ = ["resolve", "resolve_all", "resolve_any"]

Kind = str


def _matches(db: sqlite3.Connection, kind: Kind | None, key: str, *, beginning: bool) -> list[tuple[str, str]]:
    where = "key >= ? and key < ?" if beginning else "key = ?"
    values: list[str] = [key, key + "\U0010ffff"] if beginning else [key]
    if kind is not None:
        where, values = where + " and kind = ?", [*values, kind]
    return list(db.execute(f"select distinct kind, id from name where {where} order by kind, id", values))


def _nearest(db: sqlite3.Connection, kind: Kind | None, key: str) -> tuple[str, ...]:
    from difflib import get_close_matches

    rows = db.execute("select key, id from name" + (" where kind = ?" if kind else ""), [kind] if kind else [])
    ids: dict[str, str] = dict(rows)
    close = get_close_matches(key, ids, n=6, cutoff=0.5)
    return tuple(dict.fromkeys(ids[each] for each in close))[:3]


def resolve_any(db: sqlite3.Connection, text: str, *, kind: Kind | None = None) -> tuple[Kind, str]:
    """The kind and id of the entry meant: of that very id, else of that name, else of an unambiguous beginning.

    Raises BadInput with the nearest ids when nothing, or more than one thing, is meant.
    """
    key = fold(text)
    what = kind or "entry"
    if not key:
        raise BadInput(f"an empty name is no {what}")
    for own in _matches(db, kind, key, beginning=False):
        if fold(own[1]) == key:
            return own
    for beginning in (False, True):
        found = _matches(db, kind, key, beginning=beginning)
        if found and not beginning:  # a lift and the drill that is the whole of it may share a name: the lift is meant
            found = [each for each in found if each[0] == "lift"] or found
        if len(found) == 1:
            return found[0]
        if len(found) > 1:
            ids = tuple(dict.fromkeys(each for _, each in found))
            raise BadInput(f"{text!r} could mean several", nearest=ids[:6])
    raise BadInput(f"there is no {what} {text!r}", nearest=_nearest(db, kind, key))


def resolve(db: sqlite3.Connection, kind: Kind, text: str) -> str:
    """The id of the entry of one kind that is meant; BadInput with the nearest ids otherwise."""
    return resolve_any(db, text, kind=kind)[1]


def resolve_all(db: sqlite3.Connection, kind: Kind, texts: Iterable[str]) -> tuple[str, ...]:
    """Each text's id, in order, repeats left out."""
    return tuple(dict.fromkeys(resolve(db, kind, text) for text in texts if text.strip()))
