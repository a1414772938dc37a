"""Which entries stand as they were when someone last read them through: kept beside them in drills/reviewed.tsv.

A line an entry: its id, the start of its file's SHA-256, the day, and who. A second reader's eye is not a qualified
coach's review of the library, and nothing here says that it is.
"""

import hashlib
from collections.abc import Iterable, Mapping
from datetime import date
from pathlib import Path
from typing import NamedTuple

from kb.errors import BadInput, DrillpathError
from kb.make.library import Library

__all__ = ["FILE", "Review", "Unreviewed", "mark", "reviews", "unreviewed"]

FILE = "drills/reviewed.tsv"
HEAD = "id\thash\tdate\twho"
LETTERS = 16
"""Of a SHA-256's 64: two entries in a billion would not share them."""


class Review(NamedTuple):
    """An entry as it was read, the day, and who read it."""

    id: str
    digest: str
    on: str
    who: str


class Unreviewed(NamedTuple):
    """Entries never marked as read, and those changed since, in id order."""

    never: tuple[str, ...]
    changed: tuple[Review, ...]


def digest_of(library: Library, entry: str) -> str:
    """An entry as it stands, in a few letters."""
    data = (library.root / library.sources[entry].file).read_bytes()
    return hashlib.sha256(data).hexdigest()[:LETTERS]


def reviews(root: Path) -> Mapping[str, Review]:
    """What is kept of the library at `root`, by id; nothing if nothing was ever marked.

    Raises
    ------
    BadInput
        If a line isn't four fields with a date among them: it names the line.
    """
    try:
        text = (root / FILE).read_text(encoding="utf-8")
    except FileNotFoundError:
        return {}
    except (OSError, UnicodeDecodeError) as error:
        raise BadInput(f"{FILE} can't be read: {error}") from None
    found: dict[str, Review] = {}
    for number, line in enumerate(text.splitlines(), 1):
        if not line.strip() or line == HEAD:
            continue
        fields = line.split("\t")
        if len(fields) != len(Review._fields) or not _is_date(fields[2]):
            raise BadInput(f"{FILE}:{number} must be an id, a hash, a date as 2026-03-31 and who, with tabs between")
        found[fields[0]] = Review(*fields)
    return found


def _is_date(text: str) -> bool:
    try:
        return date.fromisoformat(text).isoformat() == text
    except ValueError:
        return False


def unreviewed(library: Library) -> Unreviewed:
    """The entries to read through; what is kept of entries that are no more says nothing."""
    kept = reviews(library.root)
    return Unreviewed(
        never=tuple(entry for entry in sorted(library.sources) if entry not in kept),
        changed=tuple(
            kept[entry]
            for entry in sorted(library.sources)
            if entry in kept and kept[entry].digest != digest_of(library, entry)
        ),
    )


def mark(library: Library, entries: Iterable[str], *, who: str, on: date) -> tuple[Review, ...]:
    """Note that some entries were read through as they stand; what was noted of entries that are no more goes.

    Raises
    ------
    BadInput
        For an entry that there isn't, with the nearest ids, or a name that can't be kept on a line.
    DrillpathError
        If it can't be written.
    """
    from kb.make.aside import put

    if not who.strip() or any(ord(letter) < ord(" ") for letter in who):
        raise BadInput("say who read them, on one line (--by WHO)")
    named = tuple(dict.fromkeys(entries))
    if not named:
        raise BadInput("name at least one entry that was read")
    for entry in named:
        if entry not in library.sources:
            raise BadInput(f"there is no entry {entry!r}", nearest=_nearest(entry, library))
    kept = {entry: review for entry, review in reviews(library.root).items() if entry in library.sources}
    new = tuple(Review(entry, digest_of(library, entry), on.isoformat(), who.strip()) for entry in named)
    kept |= {review.id: review for review in new}
    lines = [HEAD, *("\t".join(kept[entry]) for entry in sorted(kept))]
    try:
        put(library.root / FILE, "\n".join(lines) + "\n")
    except OSError as error:
        raise DrillpathError(f"{FILE} can't be written: {error.strerror or error}") from error
    return new


def _nearest(entry: str, library: Library) -> tuple[str, ...]:
    from difflib import get_close_matches

    return tuple(get_close_matches(entry, library.sources, n=3))
