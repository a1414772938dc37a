"""The claims that entries make in *Sources*, each with where it is from and who could check it."""

import re
from collections.abc import Collection, Iterator
from typing import NamedTuple

from kb.make.library import Library, Record

__all__ = ["Claim", "claims_of", "items", "records"]

_ITEM = re.compile(r"(?P<says>.+?)\s*\[(?P<source>[^\[\]|]+)\|(?P<checker>[^\[\]|]+)\]$", re.DOTALL)


class Claim(NamedTuple):
    """One factual claim of an entry, its source's key and who could check it."""

    says: str
    source: str
    checker: str


def items(text: str) -> list[str]:
    r"""The items of a list as written, each on one line; lines that belong to no item are left out.

    >>> items("- One\n  claim. [a | b]\n- Two. [c | d]")
    ['One claim. [a | b]', 'Two. [c | d]']
    """
    found: list[str] = []
    for line in text.splitlines():
        if line.startswith("- "):
            found.append(line[2:].strip())
        elif line.strip() and found:
            found[-1] += " " + line.strip()
    return found


def claims_of(text: str) -> Iterator[Claim | str]:
    """Each item of a section *Sources*: a claim, or the item as written where it isn't one.

    >>> list(claims_of("- The bar stays close. [common practice | coach]"))
    [Claim(says='The bar stays close.', source='common practice', checker='coach')]
    """
    for item in items(text):
        found = _ITEM.fullmatch(item)
        yield Claim(found["says"].strip(), found["source"].strip(), found["checker"].strip()) if found else item


def records(library: Library) -> Iterator[Record]:
    """Every entry of a library: lifts, positions, faults, equipment, drills, each by id."""
    kinds: tuple[Collection[Record], ...] = (
        *(library.lifts.values(), library.positions.values(), library.faults.values()),
        *(library.items.values(), library.drills.values()),
    )
    for kind in kinds:
        yield from sorted(kind, key=lambda record: record.id)
