"""An address as a server is asked for it: its parts and its query, bounded before anything is looked up."""

from collections.abc import Mapping
from typing import Any, NamedTuple
from urllib.parse import parse_qsl, unquote

__all__ = ["Asked", "Refusal", "asked_of"]

LONGEST_PATH = 500
LONGEST_QUERY = 2000
"""Characters, as sent."""

MOST_FIELDS = 60
"""Values in a query: a tick for each thing in the room, and then some."""


class Refusal(Exception):
    """What isn't answered: an HTTP status, one sentence, and the names nearest to what was asked for."""

    def __init__(self, status: int, why: str, near: tuple[str, ...] = ()) -> None:
        super().__init__(why)
        self.status = status
        self.why = why
        self.near = near


class Asked(NamedTuple):
    """The parts of a path, each decoded; the query's values by field; whether the answer is for a program."""

    parts: tuple[str, ...]
    query: Mapping[str, tuple[str, ...]]
    as_data: bool

    @property
    def path(self) -> str:
        """The path as pages are named by it, "home" for the root."""
        return "/".join(self.parts) or "home"

    def said(self, field: str) -> str:
        """A field's value; where it was given more than once, its values with commas between."""
        return ",".join(self.query.get(field, ()))


def asked_of(scope: Mapping[str, Any]) -> Asked:
    """What an ASGI scope asks for.

    Raises Refusal: 405 for anything but reading, 414 for what is too long, 400 for too many fields.
    """
    if scope["method"] not in ("GET", "HEAD"):
        raise Refusal(405, "Nothing can be changed here.")
    raw = (scope.get("raw_path") or scope["path"].encode()).partition(b"?")[0].decode("latin-1")
    query = scope.get("query_string", b"").decode("latin-1")
    if len(raw) > LONGEST_PATH or len(query) > LONGEST_QUERY:
        raise Refusal(414, "Ask for less at once: the address is too long.")
    # an encoded slash is no slash: it stays within its part, and no page has one in its name
    *folders, last = raw.removeprefix("/").removesuffix("/").split("/")
    as_data = last.endswith(".json")
    parts = (*folders, last.removesuffix(".json"))
    return Asked(tuple(unquote(part) for part in parts) if any(parts) else (), _fields(query), as_data)


def _fields(query: str) -> dict[str, tuple[str, ...]]:
    try:
        pairs = parse_qsl(query, errors="replace", max_num_fields=MOST_FIELDS)
    except ValueError:
        raise Refusal(400, f"Ask for less at once: at most {MOST_FIELDS} values.") from None
    fields: dict[str, tuple[str, ...]] = {}
    for name, value in pairs:
        fields[name] = (*fields.get(name, ()), value)
    return fields
