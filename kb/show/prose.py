"""The body of an entry, Markdown as entries use it, set in lines: paragraphs, lists and numbered steps."""

import re
from collections.abc import Iterator, Mapping

from kb.show.coach_words import plain_markdown
from kb.show.setting import Setting, hanging, titled

__all__ = ["prose", "sections_text"]

_ITEM = re.compile(r"(?:[-*]|\d+[.)]) +")


def _blocks(text: str) -> Iterator[str]:
    """Paragraphs and list items, each on one line; nothing for white space."""
    block: list[str] = []
    for line in text.splitlines():
        starts = _ITEM.match(line.strip()) is not None
        if block and (starts or not line.strip()):
            yield " ".join(block)
            block = []
        if line.strip():
            block.append(line.strip())
    if block:
        yield " ".join(block)


def prose(text: str, setting: Setting, *, indent: int = 0) -> list[str]:
    """Markdown as plain lines; an item hangs from its mark."""
    lines: list[str] = []
    for block in _blocks(plain_markdown(text)):
        item = _ITEM.match(block)
        mark = item.group() if item else ""
        if lines and not mark:
            lines.append("")
        lines += hanging(mark, block[len(mark) :], setting, indent=indent)
    return lines


def sections_text(sections: Mapping[str, str], setting: Setting, *, without: tuple[str, ...] = ()) -> list[str]:
    """Every section of an entry under its heading, in the order in which it was written."""
    lines: list[str] = []
    for heading, text in sections.items():
        if heading not in without:
            lines += titled(heading, prose(text, setting, indent=2), setting)
    return lines
