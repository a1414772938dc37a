"""Chains that sheets are tested on: every shipped one, the longest, longer than any, hostile; and a page as read."""

import re
from collections.abc import Mapping
from html.parser import HTMLParser

from kb.ask import read
from kb.ask.chain import Chain, NoChain, chain
from kb.ask.question import ChainQuestion
from kb.ask.shelf import Shelf
from kb.ask.with_text import chain_with_text

__all__ = ["EVIL", "Element", "answered", "every_chain", "longest", "made_hostile", "made_long", "read_page"]

EVIL = (
    '<script>document.title="gone"</script><img src=x onerror="document.title=1">'
    '<a href="javascript:1">x</a>{{ 7*7 }}{% raw %}</style><style>body{display:none}</style>]]>&lt;\x07"\'`'
)
"""What must stay text wherever an entry holds it."""

VOID = {"meta", "input", "br", "img", "link", "hr"}


def answered(db: read.sqlite3.Connection, shelf: Shelf, fault: str, kit: str = "full", **asked: object) -> Chain:
    """A chain of the shipped library, its drills with their text."""
    question = ChainQuestion(fault=shelf.faults[fault].id, have=shelf.kits[kit])._replace(**asked)  # type: ignore[index]
    return chain_with_text(db, chain(shelf, question))


def every_chain(
    db: read.sqlite3.Connection, shelf: Shelf, kits: tuple[str, ...] = ("full",), causes: int | None = None
) -> list[Chain]:
    """The chain for every fault and cause of a lift that has one; with `causes` for so many of each fault."""
    found = []
    for fault in shelf.faults.values():
        for cause in fault.causes[:causes]:
            for kit in kits:
                try:
                    found.append(answered(db, shelf, fault.id, kit, cause=cause.id))
                except NoChain:
                    continue
    return found


def _text(chain: Chain) -> int:
    return sum(len(text) for entry in chain.routes[0].entries for text in entry.drill.sections.values())


def longest(chains: list[Chain]) -> Chain:
    """The chain of most drills; of several, the one with most text."""
    return max(chains, key=lambda each: (len(each.routes[0].entries), _text(each)))


def made_long(chains: list[Chain], count: int) -> Chain:
    """A chain of so many drills, the wordiest of a lift with half of them work, as no question would give."""
    best = longest(chains)
    entries = {entry.drill.id: entry for each in chains for entry in each.routes[0].entries}
    wordy = sorted(entries.values(), key=lambda entry: -sum(len(text) for text in entry.drill.sections.values()))
    chosen = [entry._replace(work=n % 2 == 0) for n, entry in enumerate(wordy[:count])]
    route = best.routes[0]._replace(entries=tuple(chosen), sittings=((0, count),))
    return best._replace(routes=(route,))


def made_hostile(chain: Chain) -> Chain:
    """A chain whose every text is hostile."""
    route = chain.routes[0]
    entries = []
    for entry in route.entries:
        drill = entry.drill
        sections = dict.fromkeys((*drill.sections, "Do", "Look for", "Say", "Miss"), f"- {EVIL}\n\n{EVIL}")
        entries.append(
            entry._replace(
                drill=drill._replace(
                    name=EVIL,
                    sections=sections,
                    not_for=EVIL,
                    cautions=(EVIL,),
                    standard=drill.standard._replace(seen=EVIL),
                )
            )
        )
    fault, cause = chain.matter.fault._replace(name=EVIL), chain.matter.cause._replace(text=EVIL)
    return chain._replace(
        matter=chain.matter._replace(fault=fault, cause=cause, worked=fault),
        routes=(route._replace(entries=tuple(entries)),),
        finish=tuple(entry.drill for entry in entries[:1]),
    )


class Element:
    """An element of a page as read: its name, attributes, children and text."""

    def __init__(self, name: str, attributes: Mapping[str, str | None]) -> None:
        self.name, self.attributes = name, attributes
        self.children: list[Element | str] = []

    @property
    def classes(self) -> list[str]:
        """Its classes."""
        return (self.attributes.get("class") or "").split()

    @property
    def text(self) -> str:
        """Its words, white space closed up."""
        parts = [each if isinstance(each, str) else each.text for each in self.children]
        return re.sub(r"\s+", " ", "".join(parts)).strip()

    def all(self, name: str = "", cls: str = "") -> "list[Element]":
        """The elements within it of a name and a class, in order."""
        found = []
        for child in self.children:
            if isinstance(child, Element):
                if (not name or child.name == name) and (not cls or cls in child.classes):
                    found.append(child)
                found += child.all(name, cls)
        return found


class _Reader(HTMLParser):
    """Reads a page strictly: every element must be closed in its order."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.open = [Element("", {})]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        element = Element(tag, dict(attrs))
        assert len(element.attributes) == len(attrs), f"an attribute twice in {tag}"
        self.open[-1].children.append(element)
        if tag not in VOID:
            self.open.append(element)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.open[-1].children.append(Element(tag, dict(attrs)))

    def handle_endtag(self, tag: str) -> None:
        assert self.open[-1].name == tag, f"{tag} closed while {self.open[-1].name} is open"
        self.open.pop()

    def handle_data(self, data: str) -> None:
        self.open[-1].children.append(data)


def read_page(html: str) -> Element:
    """A page as elements; AssertionError where it isn't well formed."""
    reader = _Reader()
    reader.feed(html)
    reader.close()
    assert len(reader.open) == 1, f"{reader.open[-1].name} is never closed"
    return reader.open[0]
