"""An answer as it goes out over HTTP: its bytes, what they are, and by what a second visit knows them again."""

from collections.abc import Mapping
from hashlib import blake2b
from typing import Any, NamedTuple

from kb.show.page.address import SERVED
from kb.show.page.inert import inert
from kb.show.page.page import Page
from kb.show.page.render import html

__all__ = ["DATA", "HTML", "NO_CACHE", "Answer", "Set", "answer_of", "data_of", "mark_of", "set_page"]

HTML = "text/html; charset=utf-8"
DATA = "application/json; charset=utf-8"
NO_CACHE = "no-cache"
"""Keep it, and ask each time whether it is still right: an unchanged page costs a few bytes."""

Headers = tuple[tuple[bytes, bytes], ...]


class Answer(NamedTuple):
    """A body with its HTTP status, and its headers; `mark` is its ETag."""

    body: bytes
    status: int
    mark: bytes
    headers: Headers


class Set(NamedTuple):
    """A page as it goes out, and the same answer for programs if there is one."""

    page: Answer
    data: Answer | None


def answer_of(body: bytes, kind: str, *, status: int = 200, keep: str = NO_CACHE, more: Headers = ()) -> Answer:
    """An answer of one kind of content; `keep` says how long a device may keep it without asking."""
    mark = mark_of(body)
    headers = (
        (b"content-type", kind.encode()),
        (b"content-length", str(len(body)).encode()),
        (b"cache-control", keep.encode() if status == 200 else b"no-store"),
        *(((b"etag", mark),) if status == 200 else ()),
        *more,
    )
    return Answer(body, status, mark, headers)


def mark_of(*parts: bytes) -> bytes:
    """The ETag of what is made from some bytes and nothing else."""
    digest = blake2b(digest_size=12)
    for part in parts:
        digest.update(len(part).to_bytes(8, "big") + part)
    return f'"{digest.hexdigest()}"'.encode()


def data_of(data: Mapping[str, Any], status: int = 200, more: Headers = ()) -> Answer:
    """An answer for programs."""
    return answer_of(inert(data).encode(), DATA, status=status, more=more)


def set_page(page: Page, more: Headers = ()) -> Set:
    """A page, set as it is served."""
    made = answer_of(html(page, SERVED).encode(), HTML, status=page.status, more=more)
    return Set(made, None if page.data is None else data_of(page.data, page.status))
