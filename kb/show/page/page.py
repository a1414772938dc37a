"""What a page is before it is set: where it stands, what it holds, which template sets it."""

from collections.abc import Mapping
from typing import Any, NamedTuple

__all__ = ["Link", "Page"]


class Link(NamedTuple):
    """A way to another page: its words, its kind and name, and something said beside it."""

    words: str
    kind: str
    name: str = ""
    beside: str = ""


class Page(NamedTuple):
    """A page. `holds` is the record that its template gets; `data` the same answer for programs, if it is one.

    `scripts` only improve: everything on the page is there without them. `query` is what the address asked, encoded,
    where the page answers that.
    """

    path: str
    title: str
    template: str
    holds: Any
    says: str = ""
    data: Mapping[str, Any] | None = None
    scripts: tuple[str, ...] = ()
    near: tuple[Link, ...] = ()
    status: int = 200
    query: str = ""
