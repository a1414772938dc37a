"""What each address of the server answers with."""

import re
import sqlite3
from collections.abc import Callable
from difflib import get_close_matches
from urllib.parse import urlencode

from kb.ask.names import resolve_all
from kb.errors import BadInput
from kb.serve.address import Asked, Refusal
from kb.serve.answer import Answer, Set, answer_of, data_of, set_page
from kb.serve.desk import Desk
from kb.serve.reading import Reading
from kb.show.page.asking import asked_of
from kb.show.page.content.ask import ask_page
from kb.show.page.content.at_hand import at_hand_page
from kb.show.page.content.chain import answer_page
from kb.show.page.content.find import find_page
from kb.show.page.content.missing import missing_page
from kb.show.page.content.refused import refused_page
from kb.show.page.page import Link, Page
from kb.show.page.qr import qr_svg
from kb.terms import ItemId

__all__ = ["answer", "refused"]

Question = Callable[[Reading], Page]

ENTRIES = ("fault", "drill", "position", "lift", "equipment")
"""Kinds of page that are named after an entry."""

LONGEST_SAID = 120
"""Characters of a sentence that says back what was asked."""


async def answer(desk: Desk, asked: Asked, host: str) -> Answer:
    """The answer to what an address asks; `host` is the address of the root, as sitemaps need it.

    Raises Refusal where there is none, Busy where too many wait.
    """
    if asked.parts == ("sitemap.xml",):
        return await desk.ask(lambda now: now.sitemap(host), slow=True)
    if asked.parts == ("qr",):
        return _qr(host, asked.said("to"))
    question = QUESTIONS.get(asked.path)
    if question is not None and any(map(asked.said, question[0])):
        found = await _asked(desk, question[1](asked))
    elif _is_file(asked):
        return await _file(desk, asked)
    else:
        found = await _prepared(desk, asked)
    if asked.as_data and found.data is None:
        raise Refusal(found.page.status if found.page.status != 200 else 404, "This page holds no answer for programs.")
    return found.data if asked.as_data and found.data is not None else found.page


def _qr(host: str, to: str) -> Answer:
    """The address of one of our pages as a QR code; Refusal for any other address."""
    if not re.fullmatch(r"/(?!/)[!-~]*", to):
        raise Refusal(400, "A code leads to a page of this server: to=/chain/...")
    try:
        return answer_of(qr_svg(host + to).encode(), "image/svg+xml")
    except ValueError as trouble:
        raise Refusal(400, f"{str(trouble)[:1].upper()}{str(trouble)[1:]}.") from trouble


def refused(refusal: Refusal, *, as_data: bool) -> Answer:
    """A refusal as it goes out; for programs the same in JSON."""
    more = {405: ((b"allow", b"GET, HEAD"),), 503: ((b"retry-after", b"2"),)}.get(refusal.status, ())
    if as_data:
        said = {"version": 1, "error": refusal.why, "nearest": list(refusal.near)}
        return data_of(said, refusal.status, more)
    links = tuple(Link(each, *each.split("/", 1)) for each in refusal.near)
    return set_page(refused_page(refusal.status, refusal.why, links), more).page


async def _prepared(desk: Desk, asked: Asked) -> Set:
    """A page that is set once: any entry, any default chain; else the nearest that there are."""
    if asked.parts != ("home",):
        try:
            return await desk.page(asked.path)
        except KeyError:
            pass
    if asked.as_data:
        raise Refusal(404, "There is no such answer.")
    return set_page(await desk.ask(lambda now: _missing(now.db, asked)))


def _missing(db: sqlite3.Connection, asked: Asked) -> Page:
    """The page for an address that leads nowhere; names like its own before what its words may mean."""
    kind, *rest = asked.parts or ("",)
    page = missing_page(db, " ".join(asked.parts).replace(".", " "))
    if kind not in ENTRIES or not rest:
        return page
    names = dict(db.execute("select id, name from name where kind = ?", (kind,)))
    close = get_close_matches(rest[-1][:LONGEST_SAID], names, n=4, cutoff=0.5)
    near = [Link(names[each], kind, each) for each in close]
    more = [link for link in page.holds.near if (link.kind, link.name) not in {(kind, each) for each in close}]
    return page._replace(holds=page.holds._replace(near=(*near, *more)))


async def _file(desk: Desk, asked: Asked) -> Answer:
    try:
        return await desk.file(asked.path)
    except KeyError:
        raise Refusal(404, "There is no such file.") from None


def _is_file(asked: Asked) -> bool:
    return asked.parts[:1] in (("assets",), ("figures",)) or asked.path in ("sw.js", "manifest.webmanifest")


async def _asked(desk: Desk, question: Question) -> Set:
    try:
        return await desk.ask(lambda now: set_page(question(now)))
    except BadInput as trouble:
        raise Refusal(400, _sentence(trouble)) from trouble


def _find(asked: Asked) -> Question:
    words, cleared = asked.said("q"), asked.said("cleared") == "yes"
    query = {"q": words, **({"cleared": "yes"} if cleared else {})}
    return lambda now: find_page(now.db, words, cleared=cleared)._replace(query=urlencode(query))


def _chain(asked: Asked) -> Question:
    """A chain for everything an address can say; the form again where that can't be understood."""
    said = {field: asked.said(field) for field in asked.query}

    def answered(now: Reading) -> Page:
        try:
            meant = asked_of(now.db, now.stock, said)
        except BadInput as trouble:
            if asked.as_data:
                raise
            return ask_page(now.stock, said, _sentence(trouble))
        page = answer_page(now.stock, "ask", meant, now.answers(meant.fault.id))
        return page._replace(query=urlencode(said))

    return answered


def _at_hand(asked: Asked) -> Question:
    ticked = asked.said("have")

    def answered(now: Reading) -> Page:
        have = frozenset(map(ItemId, resolve_all(now.db, "equipment", ticked.split(","))))
        return at_hand_page(now.stock, have)._replace(query=urlencode({"have": ticked}))

    return answered


QUESTIONS: dict[str, tuple[tuple[str, ...], Callable[[Asked], Question]]] = {
    "find": (("q",), _find),
    "ask": (("fault",), _chain),
    "at-hand": (("have",), _at_hand),
}
"""Pages that answer a query: the field without which there is none, and the question."""


def _sentence(trouble: BadInput) -> str:
    said = str(trouble)
    said = said if len(said) <= LONGEST_SAID else f"{said[:LONGEST_SAID]} …"
    near = f" Did you mean {' or '.join(trouble.nearest)}?" if trouble.nearest else ""
    return f"{said[:1].upper()}{said[1:]}.{near}"
